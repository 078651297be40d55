import { root } from '../../numerics/root.ts';
import type { Chamber } from './chamber.ts';
import { ClosedBurn } from './closed-burn.ts';
import type { CycleEngine } from './engine.ts';
import { moistureRelief, octaneRequirement } from './knock.ts';

const degree = Math.PI / 180;
const guess = 30;
const apart = 5; // degrees between the three sparks that are tried
const [least, most] = [-20, 75];
const givenAway = 0.0008;
const closeEnough = 0.01; // degrees

/**
 * The least advance for best torque, or as much of it as the fuel bears. The trapped gas is burned alone, without the
 * pipes, with one spark and another, and the work up to bottom dead center compared. Near the best the work changes
 * little: as on a dynamometer, where no more could be told apart, the least advance within a twelfth of a percent is
 * taken. That also makes up for some of what a later spark does for the gas exchange, which is not looked at.
 */
export class SparkSearch {
  /** The last one found, rad before top. */
  advance = guess * degree;
  /** The same without regard to the fuel. */
  best = guess * degree;
  /** Knock integral of the last whole cycle over that of the gas burned alone. */
  excess = 1;
  private readonly engine: CycleEngine;
  private readonly trial: ClosedBurn;

  constructor(engine: CycleEngine) {
    this.engine = engine;
    this.trial = new ClosedBurn(engine);
  }

  /** Forgets what it found. */
  reset(): void {
    this.advance = this.best = guess * degree;
    this.excess = 1;
  }

  /**
   * Finds the advance for what a chamber has just trapped, near the last one found.
   *
   * @param trapped the chamber, its valves just closed
   * @param backPressure behind the exhaust valve, Pa
   * @param speed rad/s
   */
  find(trapped: Chamber, backPressure: number, speed: number): void {
    this.trial.take(trapped, backPressure, speed);
    const best = this.bestNear(this.advance / degree, false);
    this.best = best * degree;
    this.advance = degree * (this.engine.heldTo < Infinity ? this.held(best) : best);
  }

  /** Compares the knock integral of the cycle for which an advance was found with that of the gas burned alone. */
  learn(knock: number): void {
    if (this.engine.heldTo < Infinity) this.excess = this.trial.excess(knock);
  }

  /**
   * The least advance for best torque of an engine that runs another. Nothing of it is kept.
   *
   * @param trapped the chamber, its cycle ended and settled
   * @param backPressure behind the exhaust valve, Pa
   * @param speed rad/s
   * @returns rad before top
   */
  bestFor(trapped: Chamber, backPressure: number, speed: number): number {
    this.trial.take(trapped, backPressure, speed);
    this.trial.compare(trapped.spark);
    return this.bestNear(trapped.spark, true) * degree;
  }

  private bestNear(near: number, often: boolean): number {
    const workWith = (spark: number): number => {
      if (often) this.trial.burnOften(spark);
      else this.trial.burn(spark);
      return this.trial.work;
    };
    let middle = Math.min(most - apart, Math.max(least + apart, near));
    let low = workWith(middle - apart);
    let at = workWith(middle);
    let high = workWith(middle + apart);
    while (high > at && middle + 2 * apart <= most) {
      middle += apart;
      low = at;
      at = high;
      high = workWith(middle + apart);
    }
    while (low > at && middle - 2 * apart >= least) {
      middle -= apart;
      high = at;
      at = low;
      low = workWith(middle - apart);
    }
    // The top of the parabola through the three, and how far before it the given-away share is reached.
    const bend = (low - 2 * at + high) / apart ** 2;
    const toward = bend < 0 ? (0.5 * (low - high)) / (apart * bend) : 0;
    const less = bend < 0 && at > 0 ? Math.sqrt((-2 * givenAway * at) / bend) : 0;
    const best = middle + Math.max(-apart, Math.min(apart, toward));
    return best - Math.min(apart, less);
  }

  /** The best where the fuel bears it, or the advance at which knock is just due. Degrees before top. */
  private held(best: number): number {
    const over = (spark: number): number => this.octaneWith(spark) - this.engine.heldTo;
    let high = best;
    let low = best;
    // A number a degree is usual: go back a little further than that until the fuel bears it.
    for (let by = over(low); by > 0; by = over(low)) {
      if (low <= least) return least;
      high = low;
      low = Math.max(least, low - 1.2 * by - 0.5);
    }
    if (low === best) return best;
    const due = root(over, low, high, closeEnough / Math.max(Math.abs(low), Math.abs(high))) ?? low;
    this.trial.burn(due);
    return due;
  }

  private octaneWith(spark: number): number {
    this.trial.burn(spark);
    return octaneRequirement(this.trial.knock * this.excess) + moistureRelief(this.engine.gas.waterRatio);
  }
}
