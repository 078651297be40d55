import { gasSize, readState, stateSize, writeState } from './cycle-state.ts';
import type { EngineCycle } from './cycle.ts';
import { Mixing } from './mixing.ts';
import type { Pipe } from './pipe/pipe.ts';

/** How a settling ended. */
export interface Settlement {
  readonly settled: boolean;
  readonly cycles: number;
}

const near = 0.004; // of the state's change over a cycle, by its size
const quiet = 0.003; // of trapped mass and work; half of it for the residual
const least = 4; // cycles from rest
const fewest = 2; // cycles from a state near by
const most = 40;
// In a very short pipe a wave can go on chattering, too small to matter: then it is enough that work and mass have kept
// still long after the mixing has dealt with all that is slow.
const patience = 20;
const steady = 8; // cycles
const steadily = 0.003;
const plain = 2; // cycles before any mixing: the first change is of another kind

/**
 * Repeats an engine's cycle until it repeats itself.
 *
 * The cycles are mixed, so that little change from one to the next means nothing by itself: what counts is how far the
 * gas at the end of a cycle is from the gas at its start, all pipes, volumes and the cylinder together.
 */
export class Settler {
  readonly cycle: EngineCycle;
  private readonly mixing: Mixing;
  private readonly state: Float64Array;
  private readonly result: Float64Array;

  constructor(cycle: EngineCycle) {
    this.cycle = cycle;
    this.mixing = new Mixing(stateSize(cycle), gasSize(cycle));
    this.state = new Float64Array(stateSize(cycle));
    this.result = new Float64Array(stateSize(cycle));
  }

  /**
   * Settles from the state the cycle is in.
   *
   * @param speed rad/s
   * @param isNear whether that state is the settled one of a neighboring speed or engine
   */
  settle(speed: number, isNear: boolean): Settlement {
    const { cycle, mixing, state, result } = this;
    const { chamber, engine } = cycle;
    mixing.restart();
    writeState(cycle, state);
    const works = new Float64Array(steady);
    const masses = new Float64Array(steady);
    let [mass, work, residual] = [0, 0, 0];
    for (let cycles = 1; cycles <= most; cycles++) {
      cycle.turn(speed);
      writeState(cycle, result);
      if (!Number.isFinite(chamber.work + chamber.trappedMass)) return { settled: false, cycles };
      this.weigh();
      const still =
        Math.abs(chamber.trappedMass / mass - 1) < 2 * quiet &&
        // 300 kPa more, so that a small work is not asked for closer than any friction is known
        Math.abs(chamber.work - work) < 2 * quiet * (Math.abs(work) + 3e5 * engine.swept) &&
        Math.abs(chamber.residual - residual) < quiet;
      if (cycles >= (isNear ? fewest : least) && still && mixing.distance(state, result) < near)
        return { settled: true, cycles };
      works[cycles % steady] = chamber.work / engine.swept;
      masses[cycles % steady] = chamber.trappedMass;
      if (cycles >= patience && spread(works) < steadily && spread(masses) < steadily) return { settled: true, cycles };
      [mass, work, residual] = [chamber.trappedMass, chamber.work, chamber.residual];
      mixing.mix(state, result, cycles > plain);
      if (!readState(cycle, state)) {
        mixing.refuse(state, result);
        readState(cycle, state);
      }
    }
    return { settled: false, cycles: most };
  }

  /** One over the size of each number of the gas: of a pipe by its mean and its count of cells, of a volume by itself. */
  private weigh(): void {
    const { cycle, result } = this;
    const { runner, primary, collector, chamber } = cycle;
    const { scale } = this.mixing;
    let at = 0;
    for (const pipe of [runner, primary, collector]) at = this.weighPipe(pipe, at);
    for (let volume = 0; volume < 2; volume++, at += 3) {
      scale[at] = scale[at + 2] = 1 / result[at]!;
      scale[at + 1] = 1 / result[at + 1]!;
    }
    const { m } = chamber.gas;
    scale[at] = scale[at + 2] = 1 / m;
    scale[at + 1] = 1 / (3e5 * m); // J/kg; the absolute energy itself may be nothing
  }

  private weighPipe(pipe: Pipe, from: number): number {
    const { result } = this;
    const { scale } = this.mixing;
    const { cells } = pipe;
    let rho = 0;
    let energy = 0;
    for (let i = from; i < from + cells; i++) {
      rho += result[i]! / cells;
      energy += result[i + 2 * cells]! / cells;
    }
    const share = 1 / Math.sqrt(cells);
    const sizes = [rho, Math.sqrt(rho * energy), energy, rho];
    sizes.forEach((size, kind) => scale.fill(share / size, from + kind * cells, from + (kind + 1) * cells));
    return from + pipe.size;
  }
}

/** Largest less smallest, over the largest size. */
function spread(values: Float64Array): number {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  return (high - low) / Math.max(Math.abs(low), Math.abs(high));
}
