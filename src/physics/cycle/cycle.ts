import { Chamber } from './chamber.ts';
import type { CycleEngine } from './engine.ts';
import type { Grid } from './grid.ts';
import { cycleDegrees } from './neighbors.ts';
import { type FlowTable, flowTable, orificeFlow } from './pipe/orifice.ts';
import type { Pipe } from './pipe/pipe.ts';
import { SparkSearch } from './spark-search.ts';
import { sparkAt } from './spark.ts';
import { rest, type Tract, tractOf } from './tract.ts';
import type { Volume } from './volume.ts';

const degree = Math.PI / 180;
const airR = 287.05; // J/(kg K)
// What an opening's edge leaves of a pipe's area: inward at a mouth, at a valve, and into the junction.
const mouth = 0.95;
const valve = 0.98;
const joined = 0.999;

/**
 * An engine's cycle by crank angle: one cylinder with its runner, primary and collector, a plenum and a junction with the
 * other cylinders as copies of it. A cycle is walked degree by degree in as many steps as the waves ask for.
 *
 * After `reset` what follows depends on nothing that was computed before.
 */
export class EngineCycle implements Tract {
  readonly engine: CycleEngine;
  readonly runner: Pipe;
  readonly primary: Pipe;
  readonly collector: Pipe;
  readonly plenum: Volume;
  readonly junction: Volume;
  readonly chamber: Chamber;
  /** Pa in the cylinder at each whole degree of the last cycle, from 180 before firing top to 540 after it. */
  readonly pressure = new Float64Array(cycleDegrees + 1);
  /** Pa in the junction when the intake last closed. */
  behind = 0.5;
  /** Time steps the last cycle took. */
  steps = 0;

  private readonly grid: Grid;
  private readonly inflow: FlowTable;
  /** Of the best spark, where the engine asks for that. */
  readonly search: SparkSearch;

  constructor(engine: CycleEngine, grid: Grid) {
    this.engine = engine;
    this.grid = grid;
    const tract = tractOf(engine, grid);
    this.runner = tract.runner;
    this.primary = tract.primary;
    this.collector = tract.collector;
    this.plenum = tract.plenum;
    this.junction = tract.junction;
    this.chamber = new Chamber(engine);
    this.inflow = flowTable(engine.charge.gamma);
    this.search = new SparkSearch(engine);
    this.reset();
  }

  /** The one state from which everything that is shown begins: rest, and neighbors that flow evenly. */
  reset(): void {
    rest(this, this.engine);
    this.chamber.fill(this.engine.airPressure, 360, 0.06);
    this.chamber.gas.floors = 0;
    this.search.reset();
  }

  /** How often anything had to be held at a floor since `reset`; 0, or the result is worth nothing. */
  get floors(): number {
    const parts = [this.runner, this.primary, this.collector, this.plenum, this.junction, this.chamber.gas];
    return parts.reduce((sum, part) => sum + part.floors, 0);
  }

  /**
   * Walks one cycle.
   *
   * @param speed rad/s
   * @param look called after each whole degree with how many of them have passed, 1 to 720
   */
  turn(speed: number, look: ((degrees: number) => void) | null = null): void {
    const { engine, chamber, plenum, junction, search, pressure } = this;
    chamber.begin(speed);
    // Set for now; the search waits for what is trapped.
    chamber.spark = (engine.spark ? sparkAt(engine.spark, speed) : search.advance) / degree;
    let waiting = true;
    this.steps = 0;
    pressure[0] = chamber.gas.p;
    for (let at = 0; at < cycleDegrees; at++) {
      plenum.neighbors.enter(at);
      junction.neighbors.enter(at);
      chamber.look();
      if (waiting && chamber.closed) {
        this.behind = junction.pressure;
        if (engine.spark === null) {
          search.find(chamber, junction.pressure, speed);
          chamber.spark = search.advance / degree;
        }
        waiting = false;
      }
      this.walk(at, speed);
      plenum.neighbors.leave();
      junction.neighbors.leave();
      pressure[at + 1] = chamber.gas.p;
      if (look) look(at + 1);
    }
    search.learn(chamber.knock);
  }

  /** One degree, in steps as long as the waves let them be. */
  private walk(at: number, speed: number): void {
    const { engine, runner, primary, collector, plenum, junction, chamber, grid } = this;
    const { intakeArea, exhaustArea, charge } = engine;
    const gas = chamber.gas;
    const degreeSpeed = speed / degree;
    const largestRunner = valve * runner.endArea;
    const largestPrimary = valve * primary.startArea;
    const i0 = intakeArea[at]!;
    const i1 = intakeArea[at + 1]!;
    const e0 = exhaustArea[at]!;
    const e1 = exhaustArea[at + 1]!;
    const widest = (i0 > i1 ? i0 : i1) + (e0 > e1 ? e0 : e1);
    const plenumMouths = (plenum.neighbors.count + 1) * runner.startArea + engine.inletArea;
    const junctionMouths = (junction.neighbors.count + 1) * primary.endArea + collector.startArea;

    let done = 0;
    while (done < 1) {
      // The longest step: by the waves in the pipes, and by what can leave a volume in it.
      let step = (grid.courant * runner.dx) / runner.wave;
      let limit = (grid.courant * primary.dx) / primary.wave;
      if (limit < step) step = limit;
      limit = (grid.courant * collector.dx) / collector.wave;
      if (limit < step) step = limit;
      limit = (0.3 * gas.V) / (widest * Math.sqrt(1.35 * gas.R * gas.T) + 1e-12);
      if (limit < step) step = limit;
      limit = (0.7 * engine.plenumVolume) / (plenumMouths * plenum.sound);
      if (limit < step) step = limit;
      limit = (0.8 * engine.junctionVolume) / (junctionMouths * junction.sound);
      if (limit < step) step = limit;
      // Full steps and a rest: with equal steps instead, one more of them would change the result by a jump, and the
      // cycles would not settle.
      let degrees = step * degreeSpeed;
      const last = degrees > 1 - done - 1e-6;
      if (last) degrees = 1 - done;
      step = degrees / degreeSpeed;

      const middle = done + 0.5 * degrees;
      let intake = i0 + middle * (i1 - i0);
      let exhaust = e0 + middle * (e1 - e0);
      if (intake > largestRunner) intake = largestRunner;
      if (exhaust > largestPrimary) exhaust = largestPrimary;
      const fresh = 1 - gas.burnt;
      const inRunner = gas.burnt / (fresh / charge.completed + gas.burnt); // share once the film is counted out

      runner.reconstruct(step);
      primary.reconstruct(step);
      collector.reconstruct(step);
      runner.start.solve(plenum.pressure, plenum.temperature, plenum.burnt, mouth * runner.startArea);
      runner.end.solve(gas.p, gas.T, inRunner, intake);
      primary.start.solve(gas.p, gas.T, gas.burnt, exhaust);
      primary.end.solve(junction.pressure, junction.temperature, junction.burnt, joined * primary.endArea);
      collector.start.solve(junction.pressure, junction.temperature, junction.burnt, mouth * collector.startArea);
      collector.end.solve(engine.airPressure, engine.airTemperature, 0, engine.outletArea);
      runner.update(step);
      primary.update(step);
      collector.update(step);

      this.breathe(step);
      plenum.exchange(runner.start, step, degrees);
      junction.exchange(primary.end, step, degrees);
      junction.mass -= collector.start.flow * step;
      junction.energy -= collector.start.enthalpyFlow * step;
      junction.burntMass -= collector.start.burntFlow * step;
      chamber.exchange(runner.end, primary.start, step);
      chamber.advance(step, last ? at + 1 - 180 - chamber.angle : degrees);
      plenum.refresh();
      junction.refresh();
      this.steps++;
      done = last ? 1 : done + degrees;
    }
  }

  /** Carburetor or throttle: air in with its vapor and the fuel that is vapor already; or the plenum's gas out. */
  private breathe(step: number): void {
    const { engine, plenum } = this;
    const { airPressure, airTemperature, charge } = engine;
    const air = orificeFlow(
      this.inflow,
      airR,
      airPressure,
      airTemperature,
      plenum.pressure,
      plenum.temperature,
      engine.inletArea,
    );
    const mass = air * charge.perAir * step;
    plenum.mass += mass;
    plenum.energy += mass * plenum.cp * (mass > 0 ? charge.temperature : plenum.temperature);
    if (mass < 0) plenum.burntMass += mass * plenum.burnt;
  }
}
