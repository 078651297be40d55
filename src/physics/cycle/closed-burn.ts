import { Chamber } from './chamber.ts';
import type { CycleEngine } from './engine.ts';
import { flowTable, orificeFlow } from './pipe/orifice.ts';

const degree = Math.PI / 180;
const crankStep = 3; // degrees
const trace = 1e-6; // of the knock integral: a spark after the burn's time leaves none

/** A trapped charge burned alone, without the pipes, with one spark and another. */
export class ClosedBurn {
  /** On the piston from the closing to bottom dead center, J. */
  work = 0.5;
  /** Integral of `knockRate`. */
  knock = 0.5;
  private readonly engine: CycleEngine;
  private readonly burnStep: number;
  private readonly trial: Chamber;
  private readonly outflow: ReturnType<typeof flowTable>;
  private pressure = 0.5;
  private temperature = 0.5;
  private residual = 0.5;
  private behind = 0.5;
  private remains = 0.5;
  private speed = 0.5;

  /**
   * @param engine whose charge it is
   * @param burnStep degrees while it burns, where that is to be finer than otherwise: 1 tells a tenth of an octane number
   * apart
   */
  constructor(engine: CycleEngine, burnStep = crankStep) {
    this.engine = engine;
    this.burnStep = burnStep;
    this.trial = new Chamber(engine);
    this.outflow = flowTable(engine.exhaustGamma);
  }

  /**
   * Takes what a chamber has trapped.
   *
   * @param trapped the chamber
   * @param behind the exhaust valve, Pa
   * @param speed rad/s
   */
  take(trapped: Chamber, behind: number, speed: number): void {
    this.pressure = trapped.trappedPressure;
    this.temperature = trapped.trappedTemperature;
    this.residual = trapped.residual;
    this.behind = behind;
    this.speed = speed;
  }

  /**
   * Burns it and leaves `work` and `knock`.
   *
   * @param spark degrees before firing top
   */
  burn(spark: number): void {
    this.burnWith(spark, this.residual, this.temperature);
  }

  /** Burns it with the spark that the engine has run, to compare others with. */
  compare(spark: number): void {
    this.burn(spark);
    this.remains = this.expel();
  }

  /**
   * The same as `burn`, as if the engine had always run that spark. Another spark leaves the burned gas that stays behind
   * hotter or cooler: it fills the same room with less mass or more, and the fresh charge keeps its own. What the pipes
   * make of another exhaust is not looked at.
   */
  burnOften(spark: number): void {
    this.burn(spark);
    const left = (this.residual * this.remains) / this.expel();
    const whole = 1 - this.residual + left;
    this.burnWith(spark, left / whole, this.temperature / whole);
  }

  /** Knock integral of a whole cycle with the spark last tried, over that of the gas burned alone. */
  excess(knock: number): number {
    return (knock + trace) / (this.knock + trace);
  }

  private burnWith(spark: number, residual: number, temperature: number): void {
    const { trial } = this;
    trial.trap(this.pressure, temperature, residual, this.speed);
    trial.spark = spark;
    this.walk(180);
    this.work = trial.work;
    this.knock = trial.knock;
  }

  /** Pushes the burned gas out and returns the temperature of what is left at top dead center, K. */
  private expel(): number {
    this.walk(360);
    return this.trial.gas.T;
  }

  private walk(to: number): void {
    const { trial, speed } = this;
    const perDegree = degree / speed;
    while (trial.angle < to) {
      const degrees = Math.min(this.step(), to - trial.angle);
      trial.look();
      if (!trial.closed) this.blowDown(degrees * perDegree);
      trial.advance(degrees * perDegree, degrees);
    }
  }

  private step(): number {
    const { trial, burnStep } = this;
    if (!(burnStep < crankStep)) return crankStep;
    const toSpark = -trial.spark - trial.angle;
    if (toSpark > 1e-6) return Math.min(crankStep, toSpark);
    return trial.burning ? burnStep : crankStep;
  }

  /** Gas out of the opening exhaust valve, never past the pressure behind it. */
  private blowDown(step: number): void {
    const { trial, engine, behind } = this;
    const { gas } = trial;
    if (!(gas.p > behind)) return;
    const place = Math.floor(trial.angle + 180);
    const area = engine.exhaustArea[place + 1]!;
    const mass = orificeFlow(this.outflow, gas.R, gas.p, gas.T, behind, gas.T, area) * step;
    const largest = (gas.m * (gas.p - behind)) / (1.3 * gas.p);
    gas.add(-Math.min(mass, largest), gas.burnt, gas.enthalpy());
  }
}
