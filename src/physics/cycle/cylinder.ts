import { type GasState, gasState, type GasTables } from './gas/tables.ts';

const coldest = 100; // K
const hottest = 6000;
const closeEnough = 1e-4; // K
const mostPasses = 30;

/**
 * The gas in a cylinder, one zone: what is in it is its mass, its absolute internal energy and the burned share of its
 * mass; temperature and pressure follow. As the energy is absolute, burning changes the share alone.
 *
 * After any change call `state`. Nothing here allocates.
 */
export class Cylinder {
  /** kg */
  m = 1;
  /** Absolute internal energy of all of it, J. */
  U = 0;
  /** Burned share of the mass. */
  burnt = 0;
  /** m3 */
  V = 1;
  /** K */
  T = 300;
  /** Pa */
  p = 1e5;
  /** J/kg/K */
  R = 287;
  /** J/kg/K */
  cv = 718;
  /** How often the temperature had to be stopped from leaving all bounds: must stay 0. */
  floors = 0;
  private readonly tables: GasTables;
  private readonly gas: GasState = { u: 0, cv: 0, R: 0 };

  /** @param tables of the mixture it is fed */
  constructor(tables: GasTables) {
    this.tables = tables;
  }

  /** Fills a volume, m3, at a pressure, Pa, and a temperature, K, with gas of a burned share. */
  fill(p: number, T: number, burnt: number, V: number): void {
    const { gas } = this;
    gasState(this.tables, T, p, burnt, gas);
    this.m = (p * V) / (gas.R * T);
    this.U = this.m * gas.u;
    this.burnt = burnt;
    this.V = V;
    this.T = T;
    this.p = p;
    this.R = gas.R;
    this.cv = gas.cv;
  }

  /** Works out temperature and pressure from mass, energy, burned share and volume, by Newton's method on the tables. */
  state(): void {
    const { tables, gas, m, V, burnt } = this;
    const u = this.U / m;
    let T = this.T;
    let p = (m * this.R * T) / V;
    for (let pass = 0; pass < mostPasses; pass++) {
      gasState(tables, T, p, burnt, gas);
      const change = (u - gas.u) / gas.cv;
      T += change;
      if (!(T > coldest)) T = coldest;
      else if (T > hottest) T = hottest;
      p = (m * gas.R * T) / V;
      if (change < closeEnough && change > -closeEnough) break;
    }
    if (T === coldest || T === hottest) this.floors++;
    this.T = T;
    this.p = p;
    this.R = gas.R;
    this.cv = gas.cv;
  }

  /** Enthalpy of what leaves, J/kg, absolute. */
  enthalpy(): number {
    return this.U / this.m + this.R * this.T;
  }

  /**
   * Takes gas in, or with a negative mass lets it out.
   *
   * @param mass kg
   * @param burnt burned share of it
   * @param enthalpy of it, J/kg, absolute
   */
  add(mass: number, burnt: number, enthalpy: number): void {
    const before = this.m;
    this.m += mass;
    this.burnt = (before * this.burnt + mass * burnt) / this.m;
    this.U += mass * enthalpy;
  }

  /**
   * Moves the piston, at the pressure midway as the gas's own isentrope foretells it.
   *
   * @param V volume after the step, m3
   * @returns work on the piston, J
   */
  expand(V: number): number {
    const change = V - this.V;
    const midway = this.p * (1 - (0.5 * (1 + this.R / this.cv) * change) / this.V);
    const work = midway * change;
    this.U -= work;
    this.V = V;
    return work;
  }
}
