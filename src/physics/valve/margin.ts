import { root } from '../../numerics/root.ts';
import { smallestClearance, type ValveAbovePiston } from './clearance.ts';

/**
 * How far a figure can be turned up before a clearance that falls with it meets its minimum.
 *
 * @param clearance in m, of the figure; falling
 * @param minimum m
 * @param range of the figure that is looked at
 * @returns the figure, or the end of the range that the minimum lies beyond
 */
export function turnedUp(
  clearance: (figure: number) => number,
  minimum: number,
  [low, high]: readonly [number, number],
): number {
  if (!(clearance(low) > minimum)) return low;
  if (clearance(high) >= minimum) return high;
  return root((figure) => clearance(figure) - minimum, low, high, 1e-10) ?? NaN;
}

const reach = Math.PI / 3;

/**
 * How much earlier (intake) or later (exhaust) a valve's lobe can be turned before the valve is at its minimum from the
 * piston, rad of crankshaft: negative where it is under already. Looked at up to 60 degrees either way.
 */
export function turnLeft(valve: ValveAbovePiston, minimum: number): number {
  return turnedUp((turn) => smallestClearance({ ...valve, centerline: valve.centerline - turn }).clearance, minimum, [
    -reach,
    reach,
  ]);
}

/**
 * What can still be taken off between valve and piston, along the bore, m: from the head's face or the block's deck,
 * together. Negative where the valve is under its minimum already.
 */
export function cutLeft(valve: ValveAbovePiston, minimum: number): number {
  const along = valve.crown === 'relief' ? Math.cos(valve.valveAngle) : 1;
  return (smallestClearance(valve).clearance - minimum) / along;
}
