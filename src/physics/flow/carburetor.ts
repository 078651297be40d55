import { dropAtFlow, flowPerArea } from './orifice.ts';
import { ratedAir, type StillAir } from './still-air.ts';

/**
 * Effective area of a carburetor, wide open, from its rating, m2.
 *
 * @param flow m3/s of standard air
 * @param drop pressure drop it is rated at, Pa: 1.5 inHg for four barrels, 3.0 for one or two by custom
 */
export function carburetorArea(flow: number, drop: number): number {
  return flow / flowPerArea(drop, ratedAir);
}

/**
 * Pressure drop across a carburetor, wide open, at a steady flow, Pa; null where it chokes before. Left out: pulses,
 * which make the drop of an engine with few cylinders larger.
 *
 * @param area effective, m2
 * @param flow m3/s, at the density in front
 * @param air in front
 */
export function carburetorDrop(area: number, flow: number, air: StillAir): number | null {
  return dropAtFlow(flow / area, air);
}
