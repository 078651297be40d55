import { maximumAt } from '../../numerics/maximum.ts';
import { type Linkage, pistonDrop } from '../linkage.ts';

/** How the crown looks under a valve: a relief cut parallel to the valve's face, or the flat crown itself. */
export type CrownAtValve = 'relief' | 'flat';

/** What lies between a closed valve and the crown at top dead center, along the bore. Lengths in m. */
export interface RestStack {
  /** Deck down to the crown; negative where the piston stands proud. */
  readonly deckClearance: number;
  /** Compressed. */
  readonly gasketThickness: number;
  /** From the head's deck face, before any milling, up to the closed valve's lowest edge. */
  readonly seatDepth: number;
  readonly milling: number;
  /** Below the crown; 0 for a flat one. */
  readonly reliefDepth: number;
  /** Between the valve and the bore, rad; 0 for a flat crown, whose gap is measured along the bore. */
  readonly valveAngle: number;
}

/**
 * Gap between a closed valve and the relief under it at top dead center, along the valve's axis, m.
 * Plane geometry, no source.
 */
export function restClearance(stack: RestStack): number {
  const along = stack.deckClearance + stack.gasketThickness + stack.seatDepth - stack.milling + stack.reliefDepth;
  return along * Math.cos(stack.valveAngle);
}

/**
 * Gap along the valve's axis between an open valve and a relief parallel to its face, m. Plane geometry, no source.
 *
 * @param rest gap with the valve closed and the piston at top dead center, along the valve's axis, m
 * @param drop of the piston, along the bore, m
 * @param lift of the valve, m
 * @param valveAngle between the valve and the bore, rad
 */
export function reliefClearance(rest: number, drop: number, lift: number, valveAngle: number): number {
  return rest + drop * Math.cos(valveAngle) - lift;
}

/**
 * Gap along the bore between the lowest edge of an open valve and a flat crown, m. Plane geometry, no source.
 *
 * @param rest gap with the valve closed and the piston at top dead center, along the bore, m
 * @param drop of the piston, m
 * @param lift of the valve along its own axis, m
 * @param valveAngle between the valve and the bore, rad
 */
export function flatCrownClearance(rest: number, drop: number, lift: number, valveAngle: number): number {
  return rest + drop - lift * Math.cos(valveAngle);
}

/** A valve that opens toward the piston. */
export interface ValveAbovePiston {
  readonly linkage: Linkage;
  /** Gap at top dead center with the valve closed, m: along the valve for a relief, along the bore for a flat crown. */
  readonly rest: number;
  readonly crown: CrownAtValve;
  /** Between the valve and the bore, rad. */
  readonly valveAngle: number;
  readonly side: 'intake' | 'exhaust';
  /** Peak of the lobe, rad of crankshaft: after top dead center for the intake, before it for the exhaust. */
  readonly centerline: number;
  /** Valve lift, m, at an angle from the peak of the lobe, rad of crankshaft, negative while opening. */
  readonly lift: (angleFromPeak: number) => number;
}

/** A gap in m and where it is, rad of crankshaft after the top dead center of the gas exchange, negative before it. */
export interface Clearance {
  readonly clearance: number;
  readonly angle: number;
}

/** Gap between valve and piston, m, at a crank angle from the top dead center of the gas exchange, rad. */
export function clearanceAt(valve: ValveAbovePiston, angle: number): number {
  const peak = valve.side === 'intake' ? valve.centerline : -valve.centerline;
  const lift = valve.lift(angle - peak);
  const gap = valve.crown === 'relief' ? reliefClearance : flatCrownClearance;
  return gap(valve.rest, pistonDrop(valve.linkage, angle), lift, valve.valveAngle);
}

const reach = Math.PI / 2; // further out the piston is half a stroke away
const steps = 120;

/**
 * Smallest gap between a valve and the piston around the top dead center of the gas exchange. The gap may have two low
 * places, one at top dead center and one where the valve chases the piston, so each is refined. Static geometry: rods
 * stretch, valves float, and a real margin is for them.
 */
export function smallestClearance(valve: ValveAbovePiston): Clearance {
  const step = (2 * reach) / steps;
  let least: Clearance = { clearance: NaN, angle: 0 }; // what stays if a figure is not a number
  let [before, here] = [Infinity, clearanceAt(valve, -reach)];
  for (let i = 0; i <= steps; i++) {
    const angle = -reach + i * step;
    const after = i < steps ? clearanceAt(valve, angle + step) : Infinity;
    if (here <= before && here < after) {
      const found = maximumAt((at) => -clearanceAt(valve, at), angle - step, angle + step, 2);
      const clearance = clearanceAt(valve, found);
      if (!(clearance >= least.clearance)) least = { clearance, angle: found };
    }
    before = here;
    here = after;
  }
  return least;
}

/** Volume that deepening the reliefs adds to the clearance volume, m3 a valve: a disk of the valve's diameter. */
export function reliefCutVolume(valveDiameter: number, cut: number): number {
  return (Math.PI / 4) * valveDiameter ** 2 * cut;
}
