import type { EngineInput } from './engine-input.ts';

/** Something of which nobody knows the figure for a single engine, and how far it may be from the usual. */
export interface StatedRange {
  readonly id: 'flow' | 'burnTime' | 'completeness' | 'wallHeat' | 'runnerWall' | 'friction' | 'losses' | 'bank';
  /**
   * How torque follows the steps: along one curve, along two straight lines as the steps to either end are not alike, or
   * to one side only.
   */
  readonly form: 'curve' | 'halves' | 'oneSided';
  /**
   * An engine somewhere in the range.
   *
   * @param engine as it is
   * @param steps -1 the low end, 0 the engine as it is, 1 the high end, or any figure between or a little beyond
   */
  with(engine: EngineInput, steps: number): EngineInput;
}

/**
 * What is not known of an engine though all of it that can be measured is. The ends are guesses of what two engines in
 * three lie inside (common practice, no source): valve flow within 5 % of what bench or guess say, burning time 0.8 to
 * 1.25 of the usual, 0.93 to 0.98 of the charge burned, heat to the cylinder's walls 0.8 to 1.5, runner walls 25 K
 * either way, friction 0.8 to 1.2, losses of runner and primary 0.5 to 1.5, and a cross plane's bank from how the crank
 * has it half of the way to an evenly firing one. All of the way is two steps: there the computed engine shows a hole
 * near 2500 rpm that engines do not have. A table of spark goes with the burning time: it is set for the burn that an
 * engine turns out to have.
 */
export const statedRanges: readonly StatedRange[] = [
  { id: 'flow', form: 'curve', with: (e, steps) => ({ ...e, flowFactor: e.flowFactor * (1 + 0.05 * steps) }) },
  {
    id: 'burnTime',
    form: 'curve',
    with: (e, steps) => {
      const factor = 1.25 ** steps;
      return { ...e, burnTimeFactor: e.burnTimeFactor * factor, spark: litFor(factor, e.spark) };
    },
  },
  {
    id: 'completeness',
    form: 'halves',
    with: (e, steps) => ({
      ...e,
      burnCompleteness: Math.min(1, e.burnCompleteness + (steps < 0 ? 0.03 : 0.02) * steps),
    }),
  },
  {
    id: 'wallHeat',
    form: 'halves',
    with: (e, steps) => ({ ...e, wallHeatFactor: e.wallHeatFactor * (steps < 0 ? 1.25 : 1.5) ** steps }),
  },
  { id: 'runnerWall', form: 'curve', with: (e, steps) => ({ ...e, runnerWall: e.runnerWall + 25 * steps }) },
  {
    id: 'friction',
    form: 'curve',
    with: (e, steps) => ({ ...e, frictionFactor: e.frictionFactor * (1 + 0.2 * steps) }),
  },
  {
    id: 'losses',
    form: 'curve',
    with: (e, steps) => {
      const factor = Math.max(0, 1 + 0.5 * steps);
      return { ...e, runnerLoss: e.runnerLoss * factor, primaryLoss: e.primaryLoss * factor };
    },
  },
  {
    id: 'bank',
    form: 'oneSided',
    with: (e, steps) => ({ ...e, bankBlend: Math.min(1, e.bankBlend + 0.5 * Math.max(0, steps)) }),
  },
];

const halfBurned = (9 * Math.PI) / 180; // after top, where it is about best (common practice, no source)

/** A table for a burn that takes so many times as long: half has burned where it had. What is looked for anew stays. */
function litFor(factor: number, spark: EngineInput['spark']): EngineInput['spark'] {
  if (spark === 'best' || 'heldTo' in spark) return spark;
  return spark.map(({ speed, advance }) => ({ speed, advance: factor * (advance + halfBurned) - halfBurned }));
}
