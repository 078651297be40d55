import { advance } from './advance.ts';
import { block, Column, leastDensity, leastPressure, type PipeSpec } from './column.ts';
import { makeEdges } from './edges.ts';
import { PipeEnd } from './pipe-end.ts';

/** How many numbers of a cell are its state: rho, rho u, total energy and rho burnt, per volume. */
const conserved = [block.rho, block.momentum, block.energy, block.burntDensity] as const;

/**
 * A pipe with gas flowing through it. A step is: `reconstruct(dt)`, solve both ends, `update(dt)`, with
 * dt up to about 0.8 dx / wave. `fill` it first.
 */
export class Pipe extends Column {
  /** The two ends; a speed or a flow counts into the pipe there. */
  readonly start: PipeEnd;
  readonly end: PipeEnd;
  /** How many numbers `write` writes. */
  readonly size: number;

  constructor(spec: PipeSpec) {
    super(spec);
    this.start = new PipeEnd(this, 1);
    this.end = new PipeEnd(this, -1);
    this.size = conserved.length * spec.cells;
  }

  /**
   * The same gas everywhere.
   *
   * @param p Pa
   * @param T K
   * @param burnt mass share of burnt gas
   * @param u m/s, towards the end
   */
  fill(p: number, T: number, burnt: number, u = 0): void {
    for (let i = 0; i < this.cells; i++) this.set(i, p, T, burnt, u);
  }

  /** The same for one cell, counted from 0 at the start. */
  set(cell: number, p: number, T: number, burnt: number, u = 0): void {
    const rho = p / (this.R * T);
    this.#put(cell, rho, rho * u, p / (this.gamma - 1) + 0.5 * rho * u * u, rho * burnt);
    this.#findWave();
  }

  /** Gets the edges ready for the ends to be solved at: half a step of dt, s, has passed there. */
  reconstruct(dt: number): void {
    makeEdges(this, dt);
  }

  /** The step itself, after both ends have been solved; dt in s, the one given to `reconstruct`. */
  update(dt: number): void {
    advance(this, dt);
  }

  /** Mass of the gas, kg. */
  mass(): number {
    return this.#total(block.rho);
  }

  /** Its energy, J: cv T and of motion. */
  energy(): number {
    return this.#total(block.energy);
  }

  /** Mass of the burnt gas in it, kg. */
  burntMass(): number {
    return this.#total(block.burntDensity);
  }

  /**
   * Writes the state for keeping or mixing: the densities of all cells, then all rho u, all energies, all rho burnt, per
   * volume. The ends' memory of their last solution, which only saves them work, is not in it.
   *
   * @returns the index after the last number written
   */
  write(into: Float64Array, at: number): number {
    const { state, cells } = this;
    let to = at;
    for (const each of conserved) {
      const from = each * (cells + 2) + 1;
      for (let i = 0; i < cells; i++) into[to++] = state[from + i]!;
    }
    return to;
  }

  /**
   * Whether such numbers are a gas that an engine's pipe may hold: more than 10 kPa and 0.02 kg/m3 in every cell. A
   * mixture of states need not be.
   *
   * @param from as written by `write`, or a mixture of such
   */
  readable(from: Float64Array, at: number): boolean {
    const { cells, gamma } = this;
    for (let i = at; i < at + cells; i++) {
      const rho = from[i]!;
      const momentum = from[i + cells]!;
      const p = (gamma - 1) * (from[i + 2 * cells]! - (0.5 * momentum * momentum) / rho);
      if (!(rho > 20 * leastDensity && p > 20 * leastPressure)) return false;
    }
    return true;
  }

  /** Takes on a written state; a share of burnt gas outside 0 to 1 becomes 0 or 1. Returns the index after it. */
  read(from: Float64Array, at: number): number {
    const { cells } = this;
    for (let i = 0; i < cells; i++) {
      const k = at + i;
      const rho = from[k]!;
      const burnt = Math.min(Math.max(from[k + 3 * cells]!, 0), rho);
      this.#put(i, rho, from[k + cells]!, from[k + 2 * cells]!, burnt);
    }
    this.#findWave();
    return at + this.size;
  }

  /** Takes on the state of a pipe with another number of cells: for each cell that of the nearest, per volume. */
  resampleFrom(other: Pipe): void {
    const { cells } = this;
    for (let i = 0; i < cells; i++) {
      const k = Math.min(other.cells - 1, Math.floor(((i + 0.5) * other.cells) / cells)) + 1;
      const [rho, momentum, energy, burnt] = conserved.map((each) => other.state[each * (other.cells + 2) + k]!);
      this.#put(i, rho!, momentum!, energy!, burnt!);
    }
    this.#findWave();
  }

  #total(each: number): number {
    const { state, cells } = this;
    const stride = cells + 2;
    let sum = 0;
    for (let i = 1; i <= cells; i++) sum += state[each * stride + i]! / state[block.perVolume * stride + i]!;
    return sum;
  }

  #put(cell: number, rho: number, momentum: number, energy: number, burntDensity: number): void {
    const { state, gamma } = this;
    const stride = this.cells + 2;
    const i = cell + 1;
    const u = momentum / rho;
    const p = (gamma - 1) * (energy - 0.5 * momentum * u);
    state[i] = rho;
    state[block.momentum * stride + i] = momentum;
    state[block.energy * stride + i] = energy;
    state[block.burntDensity * stride + i] = burntDensity;
    state[block.u * stride + i] = u;
    state[block.p * stride + i] = p;
    state[block.burnt * stride + i] = burntDensity / rho;
    state[block.sound * stride + i] = Math.sqrt((gamma * p) / rho);
    state[block.lightness * stride + i] = 1 / rho;
  }

  #findWave(): void {
    const { u, state, cells } = this;
    const sound = block.sound * (cells + 2) + 1;
    this.wave = u.reduce((fastest, each, i) => Math.max(fastest, Math.abs(each) + state[sound + i]!), 0);
  }
}
