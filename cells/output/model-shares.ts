import type { ModelError } from '../../src/graph/model-error.ts';
import { interpolate } from '../../src/numerics/interpolate.ts';
import { type RangeEffects, shareOf } from '../../src/physics/cycle/band.ts';
import { type StatedRange, statedRanges } from '../../src/physics/cycle/ranges.ts';
import { revolutionsPerMinute, si } from '../../src/units/unit.ts';

const labels: Readonly<Record<StatedRange['id'], string>> = {
  flow: 'Flow of the valves',
  burnTime: 'How fast it burns',
  completeness: 'How much of the charge burns',
  wallHeat: 'Heat to the cylinder walls',
  runnerWall: 'Heat of the runners',
  friction: 'Friction',
  losses: 'Losses of the pipes',
  bank: 'The bank’s uneven firing',
};

/**
 * What single engines scatter by about such a curve, as a share of torque: levels that were compared with outside
 * figures (common practice, no source).
 */
export const scatter = (speed: number): number => (speed < si(2000, revolutionsPerMinute) - 1e-6 ? 0.12 : 0.08);

/** A figure of the ranges at a speed, straight between the speeds they were worked out at. */
export const atSpeed = (
  ranges: readonly RangeEffects[],
  speed: number,
  pick: (effects: RangeEffects) => number,
): number =>
  interpolate(
    ranges.map((effects) => effects.speed),
    ranges.map(pick),
    speed,
  );

/** The ± of a torque at a speed, N m, and its shares; where single engines scatter by more, that is a share of its own. */
export function torqueErrorAt(ranges: readonly RangeEffects[], speed: number, torque: number): ModelError {
  const shares = statedRanges.map(({ id }, k) => ({
    label: labels[id],
    change: atSpeed(ranges, speed, (effects) => shareOf(effects, k)),
  }));
  const known = Math.hypot(...shares.map((share) => share.change));
  const least = scatter(speed) * Math.abs(torque);
  const rest = Math.sqrt(Math.max(0, least ** 2 - known ** 2));
  return {
    plusMinus: Math.max(known, least),
    shares: [...shares, { label: 'What single engines scatter by besides', change: rest }]
      .filter((share) => share.change > 0)
      .toSorted((a, b) => b.change - a.change),
  };
}

/** The same of a power, W. */
export const timesSpeed = ({ plusMinus, shares }: ModelError, speed: number): ModelError => ({
  plusMinus: plusMinus * speed,
  shares: shares.map(({ label, change }) => ({ label, change: change * speed })),
});
