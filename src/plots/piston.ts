/** Crank and rod as a form is given them: the same figures as the cell's. Lengths in m, angles in rad. */
export interface Linkage {
  readonly throw: number;
  readonly rod: number;
  readonly offset: number;
  readonly topAngle: number;
  readonly top: number;
  readonly travel: number;
}

/** Where the piston stands below its top, m, at a crank angle from top dead center: the drawing's own plane geometry. */
export function pistonDrop(l: Linkage, angle: number): number {
  const [px, py] = crankpin(l, angle);
  return l.top - (px + Math.sqrt(l.rod ** 2 - (py - l.offset) ** 2));
}

/** The crankpin, m from the crankshaft: along the bore and across it. */
export const crankpin = (l: Linkage, angle: number): [number, number] => [
  l.throw * Math.cos(angle + l.topAngle),
  l.throw * Math.sin(angle + l.topAngle),
];
