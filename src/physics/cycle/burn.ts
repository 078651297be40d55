import { isentropicTemperature } from './gas/isentrope.ts';
import type { GasState, GasTables } from './gas/tables.ts';

const efficiency = 5; // a and m of Heywood, 1988, sec. 9.2.2 (from memory)
const form = 2;

/**
 * Wiebe's function: burned share of what burns.
 *
 * @param progress 0 at the start, 1 at the end of the burn; more is allowed
 * Source: Heywood, 1988, eq. 9.30 (from memory), a 5 and m 2.
 */
export function wiebe(progress: number): number {
  return progress <= 0 ? 0 : 1 - Math.exp(-efficiency * progress ** (form + 1)); // eq. 9.30
}

/** Progress at which a share, 0 to below 1, has burned: the inverse of `wiebe`. */
export function wiebeProgress(share: number): number {
  return (-Math.log(1 - share) / efficiency) ** (1 / (form + 1));
}

/**
 * Laminar flame speed of gasoline in air, m/s. Away from 0.8 to 1.4, and with much residual, floors of our own (5 cm/s
 * at room state, a fifth of the speed without residual) keep a flame that would go out burning slowly.
 *
 * @param equivalenceRatio fuel over what the air can burn
 * @param T of the unburned gas, K
 * @param p Pa
 * @param residual burned share of the unburned gas, by mole; by mass it is nearly the same
 * Source: D. B. Rhodes and J. C. Keck, SAE 850047, as Heywood, 1988, Table 9.3 and eqs. 9.33-9.35, 9.43 (from memory).
 */
export function laminarSpeed(equivalenceRatio: number, T: number, p: number, residual: number): number {
  const richness = equivalenceRatio;
  const centimeters = Math.max(5, 30.5 - 54.9 * (richness - 1.21) ** 2); // Table 9.3, cm/s at 298 K and 1 atm
  const warmth = 2.4 - 0.271 * richness ** 3.51;
  const pressure = -0.357 + 0.14 * richness ** 2.77;
  const dilution = Math.max(0.2, 1 - 2.06 * Math.max(0, residual) ** 0.77);
  return 0.01 * centimeters * (T / 298) ** warmth * (p / 101_325) ** pressure * dilution;
}

/** How long a charge takes to burn at the reference flame speeds, rad of crankshaft. */
export interface BurnAngles {
  /** From the spark to the first noticeable burning. */
  readonly delay: number;
  /** Wiebe's whole duration, of which half is 10 to 90 %. */
  readonly duration: number;
}

const degree = Math.PI / 180;
const reference = { bore: 0.09, pistonSpeed: 10, delay: 8 * degree, duration: 54 * degree }; // common practice, no source
// States of an ordinary charge at the spark and at top dead center.
const sparkSpeed = laminarSpeed(1.1, 680, 14e5, 0.07);
const centerSpeed = laminarSpeed(1.1, 760, 21e5, 0.07);
const turbulenceDecay = 35 * degree; // within the 25 to 35 degrees of common practice, no source

/**
 * Delay and duration of a burn as size and speed scale them: with the cube root of the mean piston speed and the power
 * 2/3 of the size, for which the bore stands.
 *
 * @param bore m
 * @param pistonSpeed mean, m/s
 * @param timeFactor of the chamber: 1 for a wedge, about 0.82 for a pent roof with its central plug
 * Source: S. D. Hires, R. J. Tabaczynski and J. M. Novak, SAE 780232 (from memory).
 */
export function burnAngles(bore: number, pistonSpeed: number, timeFactor: number): BurnAngles {
  const scale = timeFactor * Math.cbrt(pistonSpeed / reference.pistonSpeed) * (bore / reference.bore) ** (2 / 3);
  return { delay: reference.delay * scale, duration: reference.duration * scale };
}

/**
 * Share of the delay that passes per radian of crankshaft.
 *
 * @param angles of this engine at this speed
 * @param laminar flame speed now, m/s
 * @param angle rad after firing top dead center: the turbulence decays from there
 * Source: the angles' 2/3 power of the flame speed, SAE 780232 (from memory), followed along the way.
 */
export function delayRate(angles: BurnAngles, laminar: number, angle: number): number {
  return turbulentShare(laminar / sparkSpeed, angle) / angles.delay;
}

/** The same for the burn itself: how far `wiebe`'s progress goes per radian of crankshaft. */
export function burnRate(angles: BurnAngles, laminar: number, angle: number): number {
  return turbulentShare(laminar / centerSpeed, angle) / angles.duration;
}

function turbulentShare(laminarRatio: number, angle: number): number {
  const left = angle > 0 ? 1 / (1 + angle / turbulenceDecay) : 1;
  return Math.cbrt((laminarRatio * left) ** 2);
}

/** A burn followed along the way: a late spark meets less turbulence and a colder end gas, and burns more slowly. */
export class Flame {
  /** Temperature of the gas not yet burned, K. */
  endGas = 0;
  /** Share of the delay that has passed. */
  delayed = 0;
  /** Of `wiebe`. */
  progress = 0;
  private residual = 0;
  private angles: BurnAngles = { delay: 1, duration: 1 };
  private readonly tables: GasTables;
  private readonly completeness: number;
  private readonly work: GasState = { u: 0, cv: 0, R: 0 };

  /**
   * @param tables of the mixture that burns
   * @param completeness share of it that burns in the end
   */
  constructor(tables: GasTables, completeness: number) {
    this.tables = tables;
    this.completeness = completeness;
  }

  /**
   * The spark.
   *
   * @param angles of this engine at this speed
   * @param temperature of the charge, K
   * @param residual burned share of its mass
   */
  light(angles: BurnAngles, temperature: number, residual: number): void {
    this.angles = angles;
    this.endGas = temperature;
    this.residual = residual;
    this.delayed = 0;
    this.progress = 0;
  }

  /**
   * Burns for a step: first what is left of the delay, then the charge.
   *
   * @param angle at the start of the step, rad after firing top dead center
   * @param step rad
   * @param p Pa
   */
  advance(angle: number, step: number, p: number): void {
    if (this.progress > 1.5) return; // all but a ten-millionth has burned
    const laminar = laminarSpeed(this.tables.equivalenceRatio, this.endGas, p, this.residual);
    const midway = angle + step / 2;
    let left = step;
    if (this.delayed < 1) {
      const rate = delayRate(this.angles, laminar, midway);
      const needed = (1 - this.delayed) / rate;
      if (needed > step) {
        this.delayed += rate * step;
        return;
      }
      this.delayed = 1;
      left = step - needed;
    }
    this.progress += left * burnRate(this.angles, laminar, midway);
  }

  /** Follows the end gas through a small change of pressure, Pa, without heat or friction. */
  compress(from: number, to: number): void {
    this.endGas = isentropicTemperature(this.tables, this.endGas, from, to, this.residual, this.work);
  }

  /** Burned share of what was fresh at the spark. */
  burned(): number {
    return this.completeness * wiebe(this.progress);
  }
}
