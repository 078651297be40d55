import { ClosedBurn } from './closed-burn.ts';
import type { EngineCycle } from './cycle.ts';
import { moistureRelief, octaneRequirement } from './knock.ts';
import type { SparkTrial } from './spark-trial.ts';

const degree = Math.PI / 180;
const [under, over] = [30, 8]; // degrees around the best spark
const count = 9;
const burnStep = 1; // degrees

/**
 * The trapped charge of a settled cycle burned with other sparks: torque by what that changes in the work of the closed
 * part, octane by the knock integral, both made to agree with the cycle at its own spark. Left out is what the pipes make
 * of a hotter or cooler exhaust. Against whole cycles of six engines, fifteen degrees away: octane within 0.4; torque
 * within 0.7 % rms from 2500 rpm up and 1.3 % below, at worst, with a long cam on an open exhaust, 2.7 and 4.5 %.
 */
export class SparkTrials {
  private readonly cycle: EngineCycle;
  private readonly trial: ClosedBurn;

  constructor(cycle: EngineCycle) {
    this.cycle = cycle;
    this.trial = new ClosedBurn(cycle.engine, burnStep);
  }

  /**
   * About nine, with rising advance, from 30 degrees under the best to 8 over, the engine's own among them.
   *
   * @param speed rad/s at which the cycle is settled
   * @param torque of the engine there, N m
   */
  of(speed: number, torque: number): { readonly bestSpark: number; readonly sparks: readonly SparkTrial[] } {
    const { cycle, trial } = this;
    const { chamber, behind, engine, search } = cycle;
    const own = chamber.spark;
    const runsBest = engine.spark === null && search.advance === search.best;
    const bestSpark = runsBest ? search.best : search.bestFor(chamber, behind, speed);
    trial.take(chamber, behind, speed);
    trial.compare(own);
    const { work } = trial;
    const excess = trial.excess(chamber.knock);
    const relief = moistureRelief(engine.gas.waterRatio);
    const perWork = engine.cylinders / (4 * Math.PI);
    const sparks = advancesAround(bestSpark / degree, own).map((advance): SparkTrial => {
      trial.burnOften(advance);
      return {
        advance: advance * degree,
        torque: torque + (trial.work - work) * perWork,
        octane: octaneRequirement(trial.knock * excess) + relief,
      };
    });
    return { bestSpark, sparks };
  }
}

/** Evenly around the best, with the engine's own in the place of the nearest, or before or after all. */
function advancesAround(best: number, own: number): readonly number[] {
  const even = Array.from({ length: count }, (_, i) => best - under + (i * (under + over)) / (count - 1));
  if (own < even[0]!) return [own, ...even];
  if (own > even.at(-1)!) return [...even, own];
  const nearest = even.reduce((at, each, i) => (Math.abs(each - own) < Math.abs(even[at]! - own) ? i : at), 0);
  return even.with(nearest, own);
}
