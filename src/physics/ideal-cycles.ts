import { root } from '../numerics/root.ts';
import { rungeKutta } from '../numerics/runge-kutta.ts';

/** A gas that fills an ideal cycle; of fixed composition, its energy a function of temperature alone. */
export interface CycleGas {
  /** J/kg/K */
  readonly gasConstant: number;
  /** J/kg, from any datum, at a temperature in K. */
  readonly internalEnergy: (T: number) => number;
  /** At constant volume, J/kg/K, at a temperature in K. */
  readonly specificHeat: (T: number) => number;
}

/** Corners of an Otto cycle, in order: 1 before compression, 2 after it, 3 after the heat, 4 after expansion. */
export interface OttoCycle {
  /** K */
  readonly T2: number;
  readonly T3: number;
  readonly T4: number;
  /** Pa */
  readonly p2: number;
  readonly p3: number;
  /** Net, J/kg. */
  readonly work: number;
  readonly efficiency: number;
  /** Net work over the volume swept, Pa. */
  readonly meanPressure: number;
}

/**
 * Efficiency of the Otto cycle on a gas of constant specific heats.
 *
 * @param ratio compression ratio
 * @param gamma ratio of the specific heats
 * Source: Heywood, 1988, eq. 5.31 (from memory).
 */
export function ottoEfficiency(ratio: number, gamma: number): number {
  return 1 - ratio ** (1 - gamma); // eq. 5.31
}

/** A gas of constant specific heats, from its gas constant, J/kg/K, and the ratio of the heats. */
export function perfectGas(gasConstant: number, gamma: number): CycleGas {
  const cv = gasConstant / (gamma - 1);
  return { gasConstant, internalEnergy: (T) => cv * T, specificHeat: () => cv };
}

/**
 * Temperature, K, at the end of a compression or expansion without heat or friction: dT/dlnV = -R T / cv.
 *
 * @param gas what is compressed
 * @param T K, at the start
 * @param volumeRatio volume at the end over that at the start
 */
export function isentropicEnd(gas: CycleGas, T: number, volumeRatio: number): number {
  const state = Float64Array.of(T);
  const advance = rungeKutta(1, (_, now, rate) => {
    rate[0] = (-gas.gasConstant * now[0]!) / gas.specificHeat(now[0]!);
  });
  const steps = 100;
  const step = Math.log(volumeRatio) / steps;
  for (let i = 0; i < steps; i++) advance(i * step, step, state);
  return state[0]!;
}

/**
 * The Otto cycle: compression and expansion without heat, and heat added at constant volume.
 *
 * @param gas what goes through it, the same all along
 * @param ratio compression ratio
 * @param T1 before compression, K
 * @param p1 before compression, Pa
 * @param heat added, J/kg, not below zero
 * @throws RangeError when the ratio is not above 1 or the gas would pass 6000 K
 * Source: Heywood, 1988, sec. 5.5.
 */
export function ottoCycle(gas: CycleGas, ratio: number, T1: number, p1: number, heat: number): OttoCycle {
  if (!(ratio > 1)) throw new RangeError('The compression ratio must be above 1.');
  const u = gas.internalEnergy;
  const T2 = isentropicEnd(gas, T1, 1 / ratio);
  const T3 = root((T) => u(T) - u(T2) - heat, T2, 6000);
  if (T3 === null) throw new RangeError('That much heat would take the gas past 6000 K.');
  const T4 = isentropicEnd(gas, T3, ratio);
  const work = heat - (u(T4) - u(T1));
  const swept = ((gas.gasConstant * T1) / p1) * (1 - 1 / ratio); // m3/kg
  return {
    T2,
    T3,
    T4,
    p2: p1 * ratio * (T2 / T1),
    p3: p1 * ratio * (T3 / T1),
    work,
    efficiency: work / heat,
    meanPressure: work / swept,
  };
}
