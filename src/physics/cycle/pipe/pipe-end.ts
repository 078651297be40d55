import type { Column } from './column.ts';
import { flowFunction } from './orifice.ts';
import { densityRatio, stagnationRatio } from './powers.ts';
import { Search } from './search.ts';
import { wallPressure } from './wall.ts';

/** An opening smaller than this is shut, m2. */
const shut = 1e-9;
/** Share of the pipe's area from which an opening does not throttle what leaves. */
const open = 0.9;
/** How far the flow through the opening may be from the flow in the pipe, in the smaller of what each can pass. */
const tolerance = 1e-5;

/**
 * One end of a pipe: a reservoir behind an orifice, a wall, or an open mouth.
 *
 * In the pipe a wave runs from the end inward, with the two-shock relation between pressure and speed. Gas coming in
 * passes the orifice with its stagnation enthalpy kept and the throat at the pipe's pressure; gas going out is brought to
 * rest isentropically and passes the orifice to the reservoir. The pressure at the end is the one at which pipe and
 * orifice pass the same flow.
 *
 * Sources: E. F. Toro, Riemann Solvers and Numerical Methods for Fluid Dynamics, sec. 9.4.2 (two-shock relation);
 * R. S. Benson, The Thermodynamics and Gas Dynamics of Internal-Combustion Engines, vol. 1, 1982 (open end, nozzle and
 * valve at a pipe's end); both from memory.
 */
export class PipeEnd {
  /** Into the pipe, kg/s; negative: out of it. */
  flow = 0;
  /** Stagnation temperature of what crosses, K. */
  stagnation = 0;
  /** Burnt share of what crosses. */
  burnt = 0;
  /** Into the pipe, J/s: cp of the pipe times stagnation temperature times flow. */
  enthalpyFlow = 0;
  /** Burnt gas into the pipe, kg/s. */
  burntFlow = 0;
  /** At the end of the pipe, Pa. */
  pressure = 0;

  readonly #pipe: Column;
  /** 1 at the start, -1 at the end: what turns a speed into one that counts inward. */
  readonly #side: number;
  readonly #area: number;
  readonly #edge: number;
  readonly #flux: number;

  readonly #search = new Search();

  // What a solution is about, kept here because numbers handed to a function may be boxed: the pipe's gas at the face
  // with its speed inward, the two constants of its shock relation, the reservoir, and the opening.
  #rho = 0;
  #u = 0;
  #p = 0;
  #shockA = 0;
  #shockB = 0;
  #p0 = 0;
  #T0 = 0;
  #opening = 0;

  constructor(pipe: Column, side: 1 | -1) {
    this.#pipe = pipe;
    this.#side = side;
    this.#area = side > 0 ? pipe.startArea : pipe.endArea;
    this.#edge = side > 0 ? 0 : 8;
    this.#flux = side > 0 ? 0 : 4;
  }

  /** Forgets the last solution. */
  reset(): void {
    this.flow = this.stagnation = this.burnt = this.enthalpyFlow = this.burntFlow = this.pressure = 0;
    this.#search.reset();
  }

  /**
   * Finds what crosses the end, and leaves it for the pipe's update. The pipe must have been reconstructed.
   *
   * @param p0 stagnation pressure of the reservoir, Pa
   * @param T0 its temperature, K
   * @param burnt0 its burnt share
   * @param effectiveArea discharge coefficient included, m2; up to 1e-9 the end is a wall, above 0.9 of the pipe's area
   * gas leaves as from an open mouth, at the reservoir's pressure
   */
  solve(p0: number, T0: number, burnt0: number, effectiveArea: number): void {
    const { edges, gamma } = this.#pipe;
    const edge = this.#edge;
    const rho = edges[edge]!;
    const u = this.#side * edges[edge + 1]!;
    const p = edges[edge + 2]!;
    const shockA = 2 / ((gamma + 1) * rho);
    const shockB = (p * (gamma - 1)) / (gamma + 1);
    this.#rho = rho;
    this.#u = u;
    this.#p = p;
    this.#shockA = shockA;
    this.#shockB = shockB;
    this.#p0 = p0;
    this.#T0 = T0;
    this.#opening = effectiveArea;
    if (!(effectiveArea > shut)) this.#finish(wallPressure(u, p, shockA, shockB), 0, 0, T0, burnt0);
    else if (u + (p0 - p) * Math.sqrt(shockA / (p0 + shockB)) > 0) this.#comeIn(burnt0);
    else if (effectiveArea > open * this.#area) this.#leaveFreely();
    else this.#leaveThrottled();
  }

  #comeIn(burnt0: number): void {
    const p0 = this.#p0;
    const T0 = this.#T0;
    const rho = this.#rho;
    const u = this.#u;
    const p = this.#p;
    const shockA = this.#shockA;
    const shockB = this.#shockB;
    const { R, cp, gamma, flows } = this.#pipe;
    const area = this.#area;
    const search = this.#search;
    const sound = Math.sqrt((gamma * p) / rho);
    const full = (this.#opening * p0) / Math.sqrt(R * T0);
    const largest = rho * sound * area;
    const near = tolerance * (full < largest ? full : largest);
    const perT = 1 / (R * T0);
    const perHeat = 1 / (cp * T0);
    const perP0 = 1 / p0;
    search.begin(0.01 * (p < p0 ? p : p0), p0, p, sound / (1.5 * area));
    let through = 0;
    for (let on = true; on;) {
      const x = search.x;
      const speed = u + (x - p) * Math.sqrt(shockA / (x + shockB));
      const used = speed > 0 ? speed * speed * perHeat : 0; // of the enthalpy, twice; not more than half of it
      through = full * flowFunction(flows, x * perP0);
      const excess = (x * perT * area * speed) / (1 - 0.5 * (used < 1 ? used : 1)) - through;
      on = !(excess < near && excess > -near) && search.next(excess);
    }
    // the speed that carries this flow with this stagnation enthalpy: u = q (1 - u2 / (2 cp T0))
    const q = through / (search.x * perT * area);
    const speed = (2 * q) / (1 + Math.sqrt(1 + 2 * q * q * perHeat));
    this.#finish(search.x, through, speed, T0, burnt0);
  }

  #leaveFreely(): void {
    const rho = this.#rho;
    const u = this.#u;
    const p = this.#p;
    const shockA = this.#shockA;
    const shockB = this.#shockB;
    const { gamma, R, cp, powers, edges } = this.#pipe;
    let pressure = this.#p0;
    let speed = u + (pressure - p) * Math.sqrt(shockA / (pressure + shockB));
    let density = rho * densityRatio(powers, pressure / p);
    let mach = -speed / Math.sqrt((gamma * pressure) / density);
    if (mach > 1)
      for (let turn = 0; turn < 40 && Math.abs(mach - 1) > 1e-7; turn++) {
        // faster than sound cannot be told of the pressure outside: the end is sonic
        pressure *= 1 + ((mach - 1) * 2 * gamma) / (gamma + 1);
        speed = u + (pressure - p) * Math.sqrt(shockA / (pressure + shockB));
        density = rho * densityRatio(powers, pressure / p);
        mach = -speed / Math.sqrt((gamma * pressure) / density);
      }
    const stagnation = pressure / (R * density) + (speed * speed) / (2 * cp);
    this.#search.take(pressure);
    this.#finish(pressure, density * speed * this.#area, speed, stagnation, edges[this.#edge + 3]!);
  }

  #leaveThrottled(): void {
    const p0 = this.#p0;
    const rho = this.#rho;
    const u = this.#u;
    const p = this.#p;
    const shockA = this.#shockA;
    const shockB = this.#shockB;
    const opening = this.#opening;
    const { gamma, R, flows, powers, edges } = this.#pipe;
    const area = this.#area;
    const search = this.#search;
    const burnt = edges[this.#edge + 3]!;
    const wall = wallPressure(u, p, shockA, shockB);
    if (!(wall > p0)) {
      this.#finish(p0, 0, 0, this.#T0, burnt);
      return;
    }
    const sound = Math.sqrt((gamma * p) / rho);
    const near = tolerance * rho * sound * (opening < area ? opening : area);
    const perP = 1 / p;
    search.begin(p0, wall, p, sound / (1.5 * area));
    let through = 0;
    let density = 0;
    let stagnation = 0;
    for (let on = true; on;) {
      const x = search.x;
      const speed = u + (x - p) * Math.sqrt(shockA / (x + shockB));
      density = rho * densityRatio(powers, x * perP);
      const soundSquare = (gamma * x) / density;
      const subsonic = speed * speed < soundSquare;
      const machSquare = subsonic ? (speed * speed) / soundSquare : 1;
      stagnation = (soundSquare * (1 + 0.5 * (gamma - 1) * machSquare)) / (gamma * R);
      const still = x * stagnationRatio(powers, machSquare);
      through = ((opening * still) / Math.sqrt(R * stagnation)) * flowFunction(flows, p0 / still);
      const excess = through + (subsonic ? speed : -Math.sqrt(soundSquare)) * density * area;
      on = !(excess < near && excess > -near) && search.next(excess);
    }
    this.#finish(search.x, -through, -through / (density * area), stagnation, burnt);
  }

  #finish(pressure: number, flow: number, speed: number, stagnation: number, burnt: number): void {
    const { cp, fluxes } = this.#pipe;
    this.pressure = pressure;
    this.flow = flow;
    this.stagnation = stagnation;
    this.burnt = burnt;
    this.enthalpyFlow = flow * cp * stagnation;
    this.burntFlow = flow * burnt;
    const side = this.#side;
    const at = this.#flux;
    fluxes[at] = side * flow;
    fluxes[at + 1] = flow * speed + pressure * this.#area;
    fluxes[at + 2] = side * this.enthalpyFlow;
    fluxes[at + 3] = side * this.burntFlow;
  }
}
