import { meanPistonSpeed } from '../volumes.ts';
import { pistonDrop } from '../linkage.ts';
import { type BurnAngles, burnAngles, Flame, wiebeProgress } from './burn.ts';
import { Cylinder } from './cylinder.ts';
import type { CycleEngine } from './engine.ts';
import { type GasState, gasState } from './gas/tables.ts';
import { knockRate } from './knock.ts';
import { flowFunction, type FlowTable, flowTable } from './pipe/orifice.ts';
import type { PipeEnd } from './pipe/pipe-end.ts';
import { closedSpeed, combustionSpeed, gasExchangeSpeed, unfiredPressure, wallArea, woschni } from './wall-heat.ts';

const degree = Math.PI / 180;
const leakGamma = 1.35;
const leakR = 290; // J/(kg K), near enough to fresh and burnt gas alike
const knockEnd = wiebeProgress(0.85); // what is left then is too little to be heard (common practice, no source)
const halfway = wiebeProgress(0.5);

/**
 * What happens in one cylinder in a time step: gas through the valves and past the rings, heat to the walls, work on the
 * piston, fire. Angles in crank degrees from firing top dead center, because cycles are walked by whole degrees; the rest
 * in SI. Nothing here allocates but the constructor.
 */
export class Chamber {
  readonly gas: Cylinder;
  /** Crank degrees, -180 to 540. */
  angle = -180.5;
  /** Crank degrees before top at which it is lit in this cycle. */
  spark = 30.5;
  /** Between the intake's closing and the exhaust's opening. */
  closed = false;
  lit = false;

  /** When the intake closed: kg, share, K, Pa. */
  trappedMass = 0.5;
  residual = 0.5;
  trappedTemperature = 0.5;
  trappedPressure = 0.5;

  /** Sums over the cycle. Work on the piston, all of it and from bottom to bottom around the gas exchange, J. */
  work = 0.5;
  pumping = 0.5;
  heat = 0.5;
  /** Dry air in through the intake valve, kg; what went back is taken off, and counted too. */
  air = 0.5;
  backflow = 0.5;
  leaked = 0.5;
  massIn = 0.5;
  massOut = 0.5;
  enthalpyIn = 0.5;
  knock = 0.5;
  /** Pa, and degrees after top. */
  peak = 0.5;
  peakAngle = 0.5;
  /** Degrees after top where half of what burns has burned; not a number before. */
  halfBurned = 0.5;

  private readonly engine: CycleEngine;
  private readonly flame: Flame;
  private readonly work0: GasState = { u: 0, cv: 0, R: 0 };
  private readonly leakTable: FlowTable = flowTable(leakGamma);
  private readonly pistonArea: number;
  private pistonSpeed = 0.5;
  private angles: BurnAngles = { delay: 1, duration: 1 };
  private drop = 0.5;
  private transfer = 0.5;
  private closingVolume = 0.5;
  private burntAtSpark = 0.5;
  /** Share of the step in which the end gas may knock. */
  private knocking = 0.5;

  constructor(engine: CycleEngine) {
    this.engine = engine;
    this.gas = new Cylinder(engine.gas);
    this.flame = new Flame(engine.gas, engine.burnCompleteness);
    this.pistonArea = (Math.PI / 4) * engine.bore ** 2;
  }

  /** Gas at the crank angle where cycles begin. */
  fill(p: number, T: number, burnt: number): void {
    this.gas.fill(p, T, burnt, this.volumeAt(-180));
  }

  /** Begins a cycle at 180 degrees before firing top, at a speed in rad/s. */
  begin(speed: number): void {
    this.rewind(speed, -180);
    this.work = this.pumping = this.heat = this.air = this.backflow = this.leaked = 0;
    this.massIn = this.massOut = this.enthalpyIn = this.knock = this.peak = this.peakAngle = 0;
  }

  /**
   * Fills it as if its intake had just closed, to try a spark.
   *
   * @param p Pa
   * @param T K
   * @param burnt share
   * @param speed rad/s
   */
  trap(p: number, T: number, burnt: number, speed: number): void {
    const from = Math.max(-180, this.engine.intakeCloses);
    this.gas.fill(p, T, burnt, this.volumeAt(from));
    this.rewind(speed, from);
    this.work = this.knock = 0;
  }

  private rewind(speed: number, angle: number): void {
    const { engine } = this;
    this.pistonSpeed = meanPistonSpeed(engine.stroke, speed);
    this.angles = burnAngles(engine.bore, this.pistonSpeed, engine.burnTimeFactor);
    this.angle = angle;
    this.drop = pistonDrop(engine.linkage, angle * degree);
    this.gas.V = this.volumeAt(angle);
    this.closed = this.lit = false;
    this.halfBurned = Number.NaN;
  }

  /** Volume above the piston, m3, at a crank angle in degrees. */
  volumeAt(angle: number): number {
    return this.engine.clearance + this.pistonArea * pistonDrop(this.engine.linkage, angle * degree);
  }

  /** Whether it is lit and has not burned through. */
  get burning(): boolean {
    return this.lit && this.flame.progress < 1;
  }

  /** Sees whether the valves are closed now, keeps what they trapped, and brings the heat transfer up to date. */
  look(): void {
    const { engine, gas, angle } = this;
    const closed = angle >= engine.intakeCloses && angle < engine.exhaustOpens;
    if (closed && !this.closed) {
      this.trappedMass = gas.m;
      this.residual = gas.burnt;
      this.trappedTemperature = gas.T;
      this.trappedPressure = gas.p;
      this.closingVolume = gas.V;
    }
    this.closed = closed;
    let gasSpeed: number;
    if (!closed) gasSpeed = gasExchangeSpeed(this.pistonSpeed);
    else {
      gasSpeed = closedSpeed(this.pistonSpeed);
      if (this.lit && this.flame.progress > 0) {
        const unfired = unfiredPressure(this.trappedPressure, this.closingVolume / gas.V);
        const perVolume = this.trappedTemperature / (this.trappedPressure * this.closingVolume);
        gasSpeed += combustionSpeed(engine.swept, perVolume, gas.p - unfired);
      }
    }
    this.transfer = engine.wallHeatFactor * woschni(engine.bore, gas.p, gas.T, gasSpeed);
  }

  /**
   * Gas through both valves, for a time step in s. A pipe counts its fuel film out and its fresh gas incomplete: here the
   * film joins, evaporating partly at the gas's expense.
   *
   * @param intake the runner's end at the valve, solved
   * @param exhaust the primary's
   */
  exchange(intake: PipeEnd, exhaust: PipeEnd, step: number): void {
    const { gas, engine, work0 } = this;
    const { completed, filmHeat } = engine.charge;
    const share = gas.burnt;
    const p = gas.p;
    const enthalpy = gas.enthalpy(); // what leaves in this step leaves as the gas was

    const drawn = -intake.flow * step;
    if (drawn > 0) {
      const fresh = drawn * (1 - intake.burnt) * completed;
      const mass = fresh + drawn * intake.burnt;
      const burnt = 1 - fresh / mass;
      gasState(engine.gas, intake.stagnation, p, burnt, work0);
      const brought = work0.u + work0.R * intake.stagnation - (1 - burnt) * filmHeat;
      gas.add(mass, burnt, brought);
      this.air += fresh * engine.gas.airShare;
      this.massIn += mass;
      this.enthalpyIn += mass * brought;
    } else if (drawn < 0) {
      const mass = drawn / ((1 - share) / completed + share);
      gas.add(mass, share, enthalpy);
      this.air += mass * (1 - share) * engine.gas.airShare;
      this.backflow -= mass;
      this.massIn += mass;
      this.enthalpyIn += mass * enthalpy;
    }

    const expelled = exhaust.flow * step;
    if (expelled > 0) {
      gas.add(-expelled, share, enthalpy);
      this.enthalpyIn -= expelled * enthalpy;
    } else if (expelled < 0) {
      gasState(engine.gas, exhaust.stagnation, p, exhaust.burnt, work0);
      const brought = work0.u + work0.R * exhaust.stagnation;
      gas.add(-expelled, exhaust.burnt, brought);
      this.enthalpyIn -= expelled * brought;
    }
    this.massOut += expelled;
  }

  /** The rest of a time step in s, `degrees` long on the crank. */
  advance(step: number, degrees: number): void {
    const { engine, gas, angle } = this;
    const before = gas.p;
    if (engine.leakArea > 0 && before > engine.airPressure) this.leak(step);

    const drop = pistonDrop(engine.linkage, (angle + degrees) * degree);
    const wall = wallArea(engine.bore, 0.5 * (drop + this.drop));
    const heat = this.transfer * wall * (gas.T - engine.cylinderWall) * step;
    gas.U -= heat;
    const moved = drop - this.drop;
    const growth = (this.pistonArea * moved) / gas.V; // of the volume, as a share
    const gamma = 1 + gas.R / gas.cv;
    let work = gas.expand(engine.clearance + this.pistonArea * drop);
    this.drop = drop;
    this.heat += heat;

    this.knocking = 0;
    if (this.closed) {
      const after = angle + degrees;
      if (!this.lit && after > -this.spark) this.light();
      if (this.lit) this.burn(angle, degrees);
    }
    gas.state();
    const p = gas.p;
    // The piston felt half of what fire, heat and flow made of the pressure beside its own doing; that work is taken off
    // the energy now and shows in the pressure from the next step on.
    const alone = before * (1 - gamma * growth * (1 - 0.5 * (gamma + 1) * growth));
    const beside = 0.5 * (p - alone) * this.pistonArea * moved;
    gas.U -= beside;
    work += beside;
    this.work += work;
    if (angle >= 180) this.pumping += work;
    this.angle = angle + degrees;
    if (p > this.peak) {
      this.peak = p;
      this.peakAngle = this.angle;
    }
    if (this.lit && this.closed) {
      const { endGas } = this.flame;
      this.flame.compress(before, p);
      if (this.knocking > 0)
        this.knock += knockRate(0.5 * (before + p), 0.5 * (endGas + this.flame.endGas)) * this.knocking * step;
    }
  }

  /** Past the rings; gas cools to the walls on its way, but takes along the heat it had. */
  private leak(step: number): void {
    const { engine, gas } = this;
    const flux = gas.p / Math.sqrt(leakR * engine.cylinderWall);
    const mass = engine.leakArea * flux * flowFunction(this.leakTable, engine.airPressure / gas.p) * step;
    const enthalpy = gas.enthalpy();
    gas.add(-mass, gas.burnt, enthalpy);
    this.leaked += mass;
    this.massOut += mass;
    this.enthalpyIn -= mass * enthalpy;
  }

  private light(): void {
    this.flame.light(this.angles, this.gas.T, this.residual);
    this.burntAtSpark = this.gas.burnt;
    this.lit = true;
  }

  private burn(angle: number, degrees: number): void {
    const { flame, gas } = this;
    const from = Math.max(angle, -this.spark);
    const length = angle + degrees - from;
    const progress = flame.progress;
    flame.advance(from * degree, length * degree, gas.p);
    gas.burnt = this.burntAtSpark + (1 - this.burntAtSpark) * flame.burned();
    if (progress < knockEnd) {
      const grown = flame.progress - progress;
      const share = flame.progress > knockEnd ? (knockEnd - progress) / grown : 1;
      this.knocking = (share * length) / degrees;
    }
    if (progress < halfway && flame.progress >= halfway) {
      const past = (flame.progress - halfway) / (flame.progress - progress);
      this.halfBurned = angle + degrees - past * length;
    }
  }
}
