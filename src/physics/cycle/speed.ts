import { readState, stateSize, writeState } from './cycle-state.ts';
import type { CycleEngine } from './engine.ts';
import { EngineCycle } from './cycle.ts';
import { frictionPressure } from './friction.ts';
import { type GridName, grids } from './grid.ts';
import { moistureRelief, octaneRequirement } from './knock.ts';
import { cycleDegrees } from './neighbors.ts';
import { type CycleRecord, recordOf } from './record.ts';
import { type Settlement, Settler } from './settle.ts';
import type { SparkTrial } from './spark-trial.ts';
import { SparkTrials } from './spark-trials.ts';

/** A pressure-volume loop: one entry a crank degree, from 180 before firing top to 540 after it. */
export interface Loop {
  /** rad from firing top dead center */
  readonly angle: Float64Array;
  /** Pa absolute */
  readonly pressure: Float64Array;
  /** m3 */
  readonly volume: Float64Array;
}

/** A whole state to begin a neighboring speed or engine from. */
export interface CycleState {
  /** Cells of runner, primary and collector: a state fits only pipes cut the same way. */
  readonly cells: readonly [number, number, number];
  readonly numbers: Float64Array;
}

/** An engine at full throttle and one speed, its cycles settled. SI; pressures absolute, mean pressures over swept volume. */
export interface SpeedResult {
  /** rad/s */
  readonly speed: number;
  /** Whether the cycles came to repeat themselves and nothing was held at a floor: otherwise the rest is worth nothing. */
  readonly settled: boolean;
  readonly cycles: number;
  readonly grid: GridName;
  /** Begun from another speed's or engine's state: quicker, but the last digits depend on it. */
  readonly fromNear: boolean;

  /** Of the whole engine, N m and W. */
  readonly torque: number;
  readonly power: number;
  /** Mean effective pressures, Pa: brake = indicated - friction; indicated contains pumping, negative where it costs. */
  readonly brakePressure: number;
  readonly indicatedPressure: number;
  readonly pumpingPressure: number;
  /** Rubbing, auxiliaries and, of a street engine, accessories. */
  readonly frictionPressure: number;

  /** Dry air taken in, less what went back, over the swept volume's fill with the dry air outside. */
  readonly volumetricEfficiency: number;
  /** Burnt share of the charge when the intake has closed. */
  readonly residual: number;
  /** kg a cylinder and cycle: dry air when the intake has closed; charge pushed back into the runner; blow-by. */
  readonly trappedAir: number;
  readonly backflow: number;
  readonly blowBy: number;
  /** kg/s of the whole engine. */
  readonly airFlow: number;
  readonly fuelFlow: number;
  /** kg/J; infinite where there is no power. */
  readonly specificFuel: number;

  /** rad before firing top. */
  readonly spark: number;
  /** rad after firing top where half of what burns has burned; null where it never has. */
  readonly halfBurned: number | null;
  /** Pa, and rad after firing top. */
  readonly peakPressure: number;
  readonly peakAngle: number;
  /** Octane number at which knock would just be due. */
  readonly octaneRequirement: number;
  /** The least advance for best torque with what is trapped, whatever spark the engine runs, rad before firing top. */
  readonly bestSpark: number;
  /** What is trapped, burned with other sparks: rising advance, from 30 degrees under the best to 8 over. */
  readonly sparks: readonly SparkTrial[];

  /** K when the intake has closed. */
  readonly trappedTemperature: number;
  /** Pa and K at bottom dead center after the intake stroke. */
  readonly plenumPressure: number;
  readonly collectorTemperature: number;
  /** Mass in less mass out over a cycle, of what is trapped: how nearly the cycles repeat themselves. */
  readonly imbalance: number;
  readonly loop: Loop;
}

/** One engine on one grid, speed by speed. It keeps its work space, and nothing that a later result depends on. */
export class EngineRun {
  readonly engine: CycleEngine;
  readonly grid: GridName;
  private readonly cycle: EngineCycle;
  private readonly settler: Settler;
  private readonly trials: SparkTrials;
  private speed = 0.5;

  constructor(engine: CycleEngine, grid: GridName) {
    this.engine = engine;
    this.grid = grid;
    this.cycle = new EngineCycle(engine, grids[grid]);
    this.settler = new Settler(this.cycle);
    this.trials = new SparkTrials(this.cycle);
  }

  /**
   * Settles the engine's cycles at a speed.
   *
   * Without a state to begin from it begins from rest, always the same: the result, to the last digit, is then one of
   * engine, speed and grid alone, whatever was computed before. So what stays on show is to be computed from rest; a
   * state is for what is shown only until then.
   *
   * @param speed rad/s
   * @param near the state of a neighboring speed or engine, as `state` gave it; one that does not fit is left aside
   * @throws RangeError when the speed is not between 20 and 2000 rad/s
   */
  at(speed: number, near: CycleState | null = null): SpeedResult {
    return this.result(speed, this.settle(speed, near));
  }

  /** Its torque alone, N m, a little quicker; not a number where the cycles do not settle. */
  torqueAt(speed: number, near: CycleState | null = null): number {
    return this.settle(speed, near).settled ? this.pressures(speed).torque : Number.NaN;
  }

  /** The state the last result left, to begin a neighbor from. */
  state(): CycleState {
    const { cycle } = this;
    const numbers = new Float64Array(stateSize(cycle));
    writeState(cycle, numbers);
    return { cells: cellsOf(cycle), numbers };
  }

  /** One more cycle after the last result, recorded. */
  record(): CycleRecord {
    const { cycle } = this;
    const { numbers } = this.state();
    const record = recordOf(cycle, this.speed);
    readState(cycle, numbers);
    return record;
  }

  private settle(speed: number, near: CycleState | null): Settlement & { readonly fromNear: boolean } {
    if (!(speed >= 20 && speed <= 2000)) throw new RangeError('The speed must lie between 20 and 2000 rad/s.');
    this.speed = speed;
    this.cycle.reset();
    const fromNear = near !== null && this.takes(near);
    const { settled, cycles } = this.settler.settle(speed, fromNear);
    return { settled: settled && this.cycle.floors === 0, cycles, fromNear };
  }

  private takes(near: CycleState): boolean {
    const cells = cellsOf(this.cycle);
    return (
      near.numbers.length === stateSize(this.cycle) &&
      near.cells.every((count, i) => count === cells[i]) &&
      readState(this.cycle, near.numbers)
    );
  }

  /** Of the last cycle: mean effective pressures, Pa, and the whole engine's torque, N m. */
  private pressures(speed: number) {
    const { engine, cycle } = this;
    const indicated = cycle.chamber.work / engine.swept;
    const friction = frictionPressure(engine, speed);
    const brake = indicated - friction;
    return { indicated, friction, brake, torque: (brake * (engine.swept * engine.cylinders)) / (4 * Math.PI) };
  }

  private result(speed: number, ended: ReturnType<EngineRun['settle']>): SpeedResult {
    const { engine, cycle, grid } = this;
    const { settled, cycles, fromNear } = ended;
    const { chamber, plenum, junction } = cycle;
    const { swept, gas, cylinders } = engine;
    const { indicated, friction, brake, torque } = this.pressures(speed);
    const power = torque * speed;
    const airFlow = (chamber.air * cylinders * speed) / (4 * Math.PI);
    const fuelFlow = airFlow * gas.fuelRatio;
    return {
      speed,
      settled,
      cycles,
      grid,
      fromNear,
      torque,
      power,
      brakePressure: brake,
      indicatedPressure: indicated,
      pumpingPressure: chamber.pumping / swept,
      frictionPressure: friction,
      volumetricEfficiency: chamber.air / (engine.dryDensity * swept),
      residual: chamber.residual,
      trappedAir: chamber.trappedMass * (1 - chamber.residual) * gas.airShare,
      backflow: chamber.backflow,
      blowBy: chamber.leaked,
      airFlow,
      fuelFlow,
      specificFuel: power > 0 ? fuelFlow / power : Infinity,
      spark: (chamber.spark * Math.PI) / 180,
      halfBurned: Number.isNaN(chamber.halfBurned) ? null : (chamber.halfBurned * Math.PI) / 180,
      peakPressure: chamber.peak,
      peakAngle: (chamber.peakAngle * Math.PI) / 180,
      octaneRequirement: octaneRequirement(chamber.knock) + moistureRelief(gas.waterRatio),
      ...this.trials.of(speed, torque),
      trappedTemperature: chamber.trappedTemperature,
      plenumPressure: plenum.pressure,
      collectorTemperature: junction.temperature,
      imbalance: (chamber.massIn - chamber.massOut) / chamber.trappedMass,
      loop: this.loop(),
    };
  }

  private loop(): Loop {
    const { chamber, pressure } = this.cycle;
    const angle = new Float64Array(cycleDegrees + 1);
    const volume = new Float64Array(cycleDegrees + 1);
    for (let i = 0; i <= cycleDegrees; i++) {
      angle[i] = ((i - 180) * Math.PI) / 180;
      volume[i] = chamber.volumeAt(i - 180);
    }
    return { angle, pressure: pressure.slice(), volume };
  }
}

const cellsOf = (cycle: EngineCycle): readonly [number, number, number] => [
  cycle.runner.cells,
  cycle.primary.cells,
  cycle.collector.cells,
];
