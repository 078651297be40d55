import { slowInParts } from '../../src/graph/cell.ts';
import { structure } from '../../src/graph/kind.ts';
import { Impossible } from '../../src/graph/state.ts';
import type { RangeEffects } from '../../src/physics/cycle/band.ts';
import { common } from '../../src/references.ts';
import { cycleInput } from './cycle-input.ts';
import { cycle } from './cycle.ts';
import { curveFrom, curveStep, curveTo } from './inputs.ts';
import { speedsOf } from './rows.ts';

const most = 12; // speeds: the ranges move a curve slowly

/** At most a dozen of the curve’s speeds, both ends among them. */
const fewOf = (speeds: readonly number[]): readonly number[] => {
  const count = Math.min(most, speeds.length);
  return Array.from(
    { length: count },
    (_, i) => speeds[Math.round((i * (speeds.length - 1)) / Math.max(1, count - 1))]!,
  );
};

/** An end whose cycles do not settle has no figure. */
const isSettled = ({ torque, atLow, atHigh }: RangeEffects): boolean =>
  [torque, ...atLow, ...atHigh].every(Number.isFinite);

export const engineRanges = slowInParts({
  id: 'engineRanges',
  label: 'What the model’s own guesses are worth',
  note: 'The torque again with each of the model’s assumptions at either end of the range that about two engines in three lie inside.',
  kind: structure<readonly RangeEffects[]>(),
  from: { cycleInput, curveFrom, curveTo, curveStep },
  source: common('the ranges: flow, burn, heat, friction, losses, the bank'),
  formula:
    'torque of the engine of cycleInput at either end of each range, less its torque, from curveFrom to curveTo by curveStep',
  idle: true,
  parts: {
    list: ({ curveFrom, curveTo, curveStep }): readonly number[] => fewOf(speedsOf(curveFrom, curveTo, curveStep)),
    one: ({ cycleInput }, speed): Generator<number, RangeEffects, void> => cycle().rangeEffects(cycleInput, speed),
    join: (_, results: readonly (RangeEffects | undefined)[]): readonly RangeEffects[] | undefined => {
      if (!results.every((each) => each !== undefined)) return undefined;
      const sound = results.filter(isSettled);
      if (sound.length === 0) throw new Impossible(['At none of these speeds do all ends of the ranges settle.']);
      return sound;
    },
  },
});
