import { Chamber } from './chamber.ts';
import type { CycleEngine } from './engine.ts';
import { flowTable, orificeFlow } from './pipe/orifice.ts';

const degree = Math.PI / 180;
const crankStep = 3; // degrees
const guess = 30;
const apart = 5; // degrees between the three sparks that are tried
const [least, most] = [-20, 75];
const givenAway = 0.0008;

/**
 * The least advance for best torque. The trapped gas is burned alone, without the pipes, with one spark and another, and
 * the work up to bottom dead center compared. Near the best the work changes little: as on a dynamometer, where no more
 * could be told apart, the least advance within a twelfth of a percent is taken. That also makes up for what a later
 * spark does for the gas exchange, which is not looked at.
 */
export class SparkSearch {
  /** The last one found, rad before top. */
  advance = guess * degree;
  private readonly engine: CycleEngine;
  private readonly trial: Chamber;
  private readonly outflow: ReturnType<typeof flowTable>;

  constructor(engine: CycleEngine) {
    this.engine = engine;
    this.trial = new Chamber(engine);
    this.outflow = flowTable(engine.exhaustGamma);
  }

  /** Forgets what it found. */
  reset(): void {
    this.advance = guess * degree;
  }

  /**
   * Finds the advance for what a chamber has just trapped, near the last one found.
   *
   * @param trapped the chamber, its valves just closed
   * @param backPressure behind the exhaust valve, Pa
   * @param speed rad/s
   */
  find(trapped: Chamber, backPressure: number, speed: number): void {
    let middle = Math.min(most - apart, Math.max(least + apart, this.advance / degree));
    let low = this.workWith(middle - apart, trapped, backPressure, speed);
    let at = this.workWith(middle, trapped, backPressure, speed);
    let high = this.workWith(middle + apart, trapped, backPressure, speed);
    while (high > at && middle + 2 * apart <= most) {
      middle += apart;
      low = at;
      at = high;
      high = this.workWith(middle + apart, trapped, backPressure, speed);
    }
    while (low > at && middle - 2 * apart >= least) {
      middle -= apart;
      high = at;
      at = low;
      low = this.workWith(middle - apart, trapped, backPressure, speed);
    }
    // The top of the parabola through the three, and how far before it the given-away share is reached.
    const bend = (low - 2 * at + high) / apart ** 2;
    const toward = bend < 0 ? (0.5 * (low - high)) / (apart * bend) : 0;
    const less = bend < 0 && at > 0 ? Math.sqrt((-2 * givenAway * at) / bend) : 0;
    const best = middle + Math.max(-apart, Math.min(apart, toward));
    this.advance = (best - Math.min(apart, less)) * degree;
  }

  /** Work on the piston from the closing to bottom dead center, J. */
  private workWith(spark: number, trapped: Chamber, backPressure: number, speed: number): number {
    const { trial } = this;
    trial.takeTrapped(trapped, speed);
    trial.spark = spark;
    const perDegree = degree / speed;
    while (trial.angle < 180) {
      const degrees = Math.min(crankStep, 180 - trial.angle);
      trial.look();
      if (!trial.closed) this.blowDown(backPressure, degrees * perDegree);
      trial.advance(degrees * perDegree, degrees);
    }
    return trial.work;
  }

  /** Gas out of the opening exhaust valve, never past the pressure behind it. */
  private blowDown(behind: number, step: number): void {
    const { trial, engine } = this;
    const { gas } = trial;
    if (!(gas.p > behind)) return;
    const place = Math.floor(trial.angle + 180);
    const area = engine.exhaustArea[place + 1]!;
    const mass = orificeFlow(this.outflow, gas.R, gas.p, gas.T, behind, gas.T, area) * step;
    const largest = (gas.m * (gas.p - behind)) / (1.3 * gas.p);
    gas.add(-Math.min(mass, largest), gas.burnt, gas.enthalpy());
  }
}
