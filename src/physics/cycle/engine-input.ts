import type { HeldSpark, SparkPoint } from './spark.ts';

/** How the pistons of a V8's bank follow one another. */
export type CrankLayout = 'even' | 'crossPlane';

/** Bare: nothing behind the collector, nothing on the front. Street: a muffled system and the accessories' drag. */
export type Trim = 'bare' | 'street';

/** One engine at full throttle, all in SI. Lengths in m, areas in m2, volumes in m3, temperatures in K. */
export interface EngineInput {
  readonly cylinders: number;
  readonly bore: number;
  readonly stroke: number;
  readonly rod: number;
  /** Toward the major thrust face. */
  readonly pinOffset: number;
  readonly staticRatio: number;
  /** Two cylinders on a crankpin: fewer main bearings. */
  readonly isVee: boolean;
  readonly valvesPerCylinder: number;

  /** Effective area of the intake valves of one cylinder at each crank degree; entry i at i - 180 from firing top, 722. */
  readonly intakeArea: Float64Array;
  /** The same for the exhaust. */
  readonly exhaustArea: Float64Array;

  /** Effective area of carburetor or throttle, the whole engine's. */
  readonly inletArea: number;
  /** Manifold planes: 1, or 2 that serve every other cylinder of the firing order. */
  readonly planes: 1 | 2;
  /** The whole manifold's. */
  readonly plenumVolume: number;
  /** From the plenum to the valve, head port included. */
  readonly runnerLength: number;
  readonly runnerDiameter: number;
  /** At the valve. */
  readonly portDiameter: number;
  /** Entry and bends, in velocity heads. */
  readonly runnerLoss: number;

  /** From the valve to the collector, head port included. */
  readonly primaryLength: number;
  readonly primaryDiameter: number;
  /** Bends, in velocity heads. */
  readonly primaryLoss: number;
  /** How many cylinders share a collector. */
  readonly collectorCylinders: number;
  readonly crankLayout: CrankLayout;
  readonly collectorLength: number;
  readonly collectorDiameter: number;
  /** Effective open share of the collector's end, of a bare engine. */
  readonly outletShare: number;
  readonly trim: Trim;
  /** A street exhaust is sized to hold this back, Pa, at this speed, rad/s. */
  readonly backPressure: number;
  readonly ratedSpeed: number;

  /** Pa absolute */
  readonly airPressure: number;
  readonly airTemperature: number;
  /** kg of vapor to one of dry air */
  readonly waterRatio: number;

  readonly equivalenceRatio: number;
  /** Share of the fuel that is vapor before it reaches the valve. */
  readonly vaporizedShare: number;
  /** K the charge is warmed by before the runners, by a heated manifold floor. */
  readonly chargeHeating: number;

  /** A table of advance, or the advance of most torque at each speed, all of it or as much as a fuel bears. */
  readonly spark: 'best' | readonly SparkPoint[] | HeldSpark;
  /** Burning time over that of a wedge chamber: about 0.82 for a pent roof. */
  readonly burnTimeFactor: number;

  readonly cylinderWall: number;
  readonly runnerWall: number;
  readonly primaryWall: number;
  /** Effective area of the way past the rings of one cylinder. */
  readonly leakArea: number;

  /** On the effective areas of both valves. This and the next two are 1, but to see what a wrong guess matters. */
  readonly flowFactor: number;
  /** On rubbing friction. */
  readonly frictionFactor: number;
  /** On the heat from the gas to the cylinder's walls. */
  readonly wallHeatFactor: number;
  /** Share of the charge that burns in the end; the rest hides in crevices and quenches at walls. */
  readonly burnCompleteness: number;
  /** Of a cross plane's bank: 0, its cylinders fire as the crank has them; 1, as if evenly. */
  readonly bankBlend: number;
}

/**
 * Ordinary figures for what a builder seldom knows. Loss figures of manifolds and pipes, wall temperatures, the share of
 * vapor, the heating and the share that burns are common practice, no source.
 */
export const ordinary = {
  castRunnerLoss: 0.6,
  straightRunnerLoss: 0.25,
  moldedRunnerLoss: 0.3,
  primaryLoss: 0.4,
  openOutlet: 0.95,
  cylinderWall: 450,
  primaryWall: 750,
  carburetor: { vaporizedShare: 0.5, chargeHeating: 8, runnerWall: 345 },
  injection: { vaporizedShare: 0, chargeHeating: 0, runnerWall: 335 },
  pentRoofBurn: 0.82,
  flowFactor: 1,
  frictionFactor: 1,
  wallHeatFactor: 1,
  burnCompleteness: 0.96,
  bankBlend: 0,
} as const;

/**
 * Effective area past the rings of a cylinder in good order, m2: blow-by of 0.3 to 1.2 % of the charge between 3000 and
 * 5000 rpm (common practice, no source).
 *
 * @param bore m
 */
export function ringLeakArea(bore: number): number {
  return 0.15e-6 * (bore / 0.1);
}
