import type { Given } from '../../src/graph/cell.ts';
import { Impossible } from '../../src/graph/state.ts';
import { differenceBand } from '../../src/physics/cycle/band.ts';
import { engineRanges } from './engine-ranges.ts';
import { torqueBand } from './torque-band.ts';

/** What two builds are compared by. */
export const compared = { torqueBand, engineRanges };
type Build = Given<typeof compared> & { readonly name: string };

/** What the second build makes more than the first at the speeds both were worked out at, N m, and how sure that is. */
export function torqueDifference(first: Build, second: Build) {
  const both = first.engineRanges.flatMap((a) => {
    const b = second.engineRanges.find(({ speed }) => Math.abs(speed - a.speed) < 1e-6);
    return b ? [{ speed: a.speed, ...differenceBand(a, b) }] : [];
  });
  if (both.length < 2) throw new Impossible(['The curves of the two share too few speeds.']);
  return {
    first,
    second,
    differences: {
      x: both.map(({ speed }) => speed),
      difference: both.map(({ difference }) => difference),
      below: both.map(({ below }) => below),
      above: both.map(({ above }) => above),
    },
  };
}
