import { type Linkage, linkage } from '../linkage.ts';
import { cylinderVolume } from '../volumes.ts';
import { type Charge, chargeOf } from './charge.ts';
import type { EngineInput, Trim } from './engine-input.ts';
import { type GasState, gasState, type GasTables, gasTables } from './gas/tables.ts';
import { bankPhases, evenPhases, type Phase } from './neighbors.ts';
import { openingOf } from './openings.ts';
import { refuseEngine } from './refuse-engine.ts';
import type { SparkPoint } from './spark.ts';

/** A pipe: m, m2, velocity heads lost along it, K of its wall. */
export interface Duct {
  readonly length: number;
  readonly startArea: number;
  readonly endArea: number;
  readonly lossHeads: number;
  readonly wall: number;
}

/** An engine made ready for its cycles: SI, every field always there. One shape, so that the inner loops stay fast. */
export interface CycleEngine {
  readonly cylinders: number;
  readonly isVee: boolean;
  readonly valvesPerCylinder: number;
  readonly trim: Trim;
  readonly bore: number;
  readonly stroke: number;
  readonly staticRatio: number;
  readonly linkage: Linkage;
  /** m3, one cylinder's. */
  readonly swept: number;
  readonly clearance: number;

  readonly intakeArea: Float64Array;
  readonly exhaustArea: Float64Array;
  /** Crank degrees from firing top: the last closing of the intake before it, and the exhaust's opening after it. */
  readonly intakeCloses: number;
  readonly exhaustOpens: number;

  readonly airPressure: number;
  readonly airTemperature: number;
  /** Of the dry air outside, kg/m3. */
  readonly dryDensity: number;
  readonly equivalenceRatio: number;
  readonly gas: GasTables;
  readonly charge: Charge;
  readonly exhaustGamma: number;
  readonly exhaustR: number;

  readonly runner: Duct;
  readonly primary: Duct;
  readonly collector: Duct;
  readonly plenumVolume: number;
  /** Share of carburetor or throttle that feeds the computed cylinder's plenum, m2. */
  readonly inletArea: number;
  readonly intakePhases: readonly Phase[];
  readonly junctionVolume: number;
  /** Effective area of the collector's end, m2. */
  readonly outletArea: number;
  readonly exhaustPhases: readonly Phase[];

  /** Null: the advance of most torque. */
  readonly spark: readonly SparkPoint[] | null;
  /** Octane number of the fuel that bounds the advance of most torque; infinite where none does. */
  readonly heldTo: number;
  readonly burnTimeFactor: number;
  readonly burnCompleteness: number;
  readonly cylinderWall: number;
  readonly wallHeatFactor: number;
  readonly frictionFactor: number;
  readonly leakArea: number;
}

const junctionLength = 0.15; // m, of collector bore: where the primaries merge (common practice, no source)
const collectorCooler = 100; // K, its wall less the primary's
const street = { filling: 0.88, temperature: 1000, R: 297, airDensity: 1.18 }; // common practice

/**
 * Checks an engine's figures and works out what its cycles need.
 *
 * @param e the engine
 * @throws RangeError with a sentence, where a figure or the valves' timing makes no sense
 */
export function cycleEngine(e: EngineInput): CycleEngine {
  refuseEngine(e);
  const crank = linkage(e.stroke, e.rod, e.pinOffset);
  const swept = cylinderVolume(e.bore, crank.travel);
  const intakeArea = scaled(e.intakeArea, e.flowFactor);
  const exhaustArea = scaled(e.exhaustArea, e.flowFactor);
  const intake = openingOf(intakeArea, 'intake');
  const exhaust = openingOf(exhaustArea, 'exhaust');
  const intakeCloses = intake.closes < exhaust.opens ? intake.closes : intake.closes - 720;
  if (intakeCloses > -20 || exhaust.opens < 20)
    throw new RangeError('Both valves must be closed around firing top dead center.');

  const gas = gasTables(e.equivalenceRatio, e.waterRatio);
  const burnt: GasState = { u: 0, cv: 0, R: 0 };
  gasState(gas, 1150, 1.2e5, 0.98, burnt); // typical of the primary: nearly all burnt, as hot as it comes
  const planeCylinders = e.cylinders / e.planes;
  const collectorArea = area(e.collectorDiameter);

  return {
    cylinders: e.cylinders,
    isVee: e.isVee,
    valvesPerCylinder: e.valvesPerCylinder,
    trim: e.trim,
    bore: e.bore,
    stroke: e.stroke,
    staticRatio: e.staticRatio,
    linkage: crank,
    swept,
    clearance: swept / (e.staticRatio - 1),
    intakeArea,
    exhaustArea,
    intakeCloses,
    exhaustOpens: exhaust.opens,
    airPressure: e.airPressure,
    airTemperature: e.airTemperature,
    dryDensity: dryAirDensity(e.airPressure, e.airTemperature, e.waterRatio),
    equivalenceRatio: e.equivalenceRatio,
    gas,
    charge: chargeOf(e, gas),
    exhaustGamma: 1 + burnt.R / burnt.cv,
    exhaustR: burnt.R,
    runner: duct(e.runnerLength, e.runnerDiameter, e.portDiameter, e.runnerLoss, e.runnerWall),
    primary: duct(e.primaryLength, e.primaryDiameter, e.primaryDiameter, e.primaryLoss, e.primaryWall),
    collector: duct(e.collectorLength, e.collectorDiameter, e.collectorDiameter, 0, e.primaryWall - collectorCooler),
    plenumVolume: e.plenumVolume / e.planes,
    inletArea: e.inletArea / e.planes,
    intakePhases: evenPhases(planeCylinders),
    junctionVolume: junctionLength * collectorArea,
    outletArea: Math.min(0.95 * collectorArea, outletArea(e, swept * e.collectorCylinders)),
    exhaustPhases: e.crankLayout === 'crossPlane' ? bankPhases(e.bankBlend) : evenPhases(e.collectorCylinders),
    ...sparkOf(e.spark),
    burnTimeFactor: e.burnTimeFactor,
    burnCompleteness: e.burnCompleteness,
    cylinderWall: e.cylinderWall,
    wallHeatFactor: e.wallHeatFactor,
    frictionFactor: e.frictionFactor,
    leakArea: e.leakArea,
  };
}

const scaled = (areas: Float64Array, factor: number): Float64Array =>
  factor === 1 ? areas : areas.map((each) => each * factor);

function sparkOf(spark: EngineInput['spark']): Pick<CycleEngine, 'spark' | 'heldTo'> {
  if (spark === 'best') return { spark: null, heldTo: Infinity };
  return 'heldTo' in spark ? { spark: null, heldTo: spark.heldTo } : { spark, heldTo: Infinity };
}

const area = (diameter: number): number => (Math.PI / 4) * diameter ** 2;

const duct = (length: number, start: number, end: number, lossHeads: number, wall: number): Duct => ({
  length,
  startArea: area(start),
  endArea: area(end),
  lossHeads,
  wall,
});

/** Dry air's part of the density; vapor presses w / (w + 0.622) of the whole (ASHRAE Fundamentals 2017, ch. 1, eq. 20). */
function dryAirDensity(pressure: number, temperature: number, waterRatio: number): number {
  const dry = pressure / (1 + waterRatio / 0.621945);
  return dry / (287.05 * temperature);
}

/** A share of the collector, or for the street the orifice that gives a back pressure at rated flow in standard air. */
function outletArea(e: EngineInput, swept: number): number {
  if (e.trim === 'bare') return e.outletShare * area(e.collectorDiameter);
  const flow = swept * (e.ratedSpeed / (4 * Math.PI)) * street.airDensity * street.filling * 1.075; // and its fuel
  const pressure = 101_325 + e.backPressure / 2;
  return (flow * Math.sqrt(street.R * street.temperature)) / Math.sqrt(2 * e.backPressure * pressure);
}
