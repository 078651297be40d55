/** A round valve head in a round relief. Lengths in m. */
export interface HeadInRelief {
  readonly valveDiameter: number;
  readonly reliefDiameter: number;
  /**
   * How far the middle of the relief lies from the middle of the valve with the piston at top dead center, measured
   * across the bore in the plane of bore and valve; positive toward the side the valve moves to as it opens.
   */
  readonly offset: number;
  /** Between the valve and the bore, rad. */
  readonly valveAngle: number;
  /** How far the piston is below top dead center when the two are nearest, m. */
  readonly drop: number;
}

/**
 * Gap between the rim of a valve head and the wall of its relief where they are nearest, m; negative: they touch.
 *
 * The relief is taken for a cylinder about a line parallel to the valve. A piston that sinks along the bore carries such
 * a relief sideways under a valve that stands at an angle, away from the side the valve moves to. Left out: an offset
 * out of the plane of bore and valve, the radius in the relief's corner, and the rocking of the piston.
 * Plane geometry, no source.
 */
export function radialClearance({ valveDiameter, reliefDiameter, offset, valveAngle, drop }: HeadInRelief): number {
  const apart = offset * Math.cos(valveAngle) - drop * Math.sin(valveAngle);
  return (reliefDiameter - valveDiameter) / 2 - Math.abs(apart);
}
