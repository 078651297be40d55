import type { EngineInput } from './engine-input.ts';
import { gasoline, type GasTables } from './gas/tables.ts';

/** The gas of plenum and runner, and what the fuel takes from it. */
export interface Charge {
  readonly gamma: number;
  /** J/(kg K) */
  readonly R: number;
  /** kg of it to one kg of dry air */
  readonly perAir: number;
  /** kg of complete charge that one kg becomes at the valve, with the fuel that came as a film. */
  readonly completed: number;
  /** K in the plenum, of what comes through carburetor or throttle. */
  readonly temperature: number;
  /** J the film takes from a kg of complete charge as it evaporates in the cylinder. */
  readonly filmHeat: number;
}

const air = { R: 287.05, cp: 1006 }; // J/(kg K), dry, room temperature
const vapor = { R: 461.5, cp: 1870 }; // of water
const fuelCp = 1700; // J/(kg K), gasoline vapor, from memory
const molar = 8.3145; // J/(mol K)
// Shares of the heat of evaporation that the gas gives; the walls give the rest. Guesses of the order of common practice.
const runnerShare = 0.6;
const cylinderShare = 0.4;

/** The runner's gas: air, its moisture, and the share of the fuel that is vapor there, with constant specific heats. */
export function chargeOf(e: EngineInput, gas: GasTables): Charge {
  const fuel = gas.fuelRatio;
  const fuelVapor = e.vaporizedShare * fuel;
  const perAir = 1 + fuelVapor + e.waterRatio;
  const R = (air.R + fuelVapor * (molar / gasoline.molarMass) + e.waterRatio * vapor.R) / perAir;
  const cp = (air.cp + fuelVapor * fuelCp + e.waterRatio * vapor.cp) / perAir;
  const latent = gasoline.latentHeat;
  return {
    gamma: cp / (cp - R),
    R,
    perAir,
    completed: (1 + fuel + e.waterRatio) / perAir,
    temperature: e.airTemperature + e.chargeHeating - (runnerShare * fuelVapor * latent) / cp,
    filmHeat: (1 - e.vaporizedShare) * cylinderShare * fuel * latent * gas.airShare,
  };
}
