const depth = 3;
const longest = 3; // largest weight of an earlier change, so that no step flies off

/**
 * Speeds up the repetition x, g(x), g(g(x)), ... towards a state that repeats itself, by the mixture of the last few
 * results whose changes cancel best.
 *
 * Source: D. G. Anderson, Journal of the ACM 12 (1965) 547-560; H. F. Walker and P. Ni, SIAM Journal on Numerical Analysis
 * 49 (2011) 1715-1735, type II (both from memory).
 */
export class Mixing {
  /** One over the size of each judged number, to make changes comparable. Set by the user before each `mix`. */
  readonly scale: Float64Array;
  private readonly size: number;
  private readonly judged: number;
  private readonly steps: readonly Float64Array[];
  private readonly turns: readonly Float64Array[];
  private readonly change: Float64Array;
  private readonly spare: Float64Array;
  private readonly matrix = new Float64Array(depth * depth);
  private readonly right = new Float64Array(depth);
  private held = 0;
  private latest = -1;
  private begun = false;

  /**
   * @param size numbers in a state
   * @param judged how many of them, from the first, count in the choice of the mixture; the rest are mixed along
   */
  constructor(size: number, judged: number) {
    this.size = size;
    this.judged = judged;
    const rows = (): Float64Array[] => Array.from({ length: depth }, () => new Float64Array(size));
    this.steps = rows();
    this.turns = rows();
    this.change = new Float64Array(size);
    this.spare = new Float64Array(size);
    this.scale = new Float64Array(judged).fill(1);
  }

  /** Forgets all it has seen. */
  restart(): void {
    this.held = 0;
    this.latest = -1;
    this.begun = false;
  }

  /** Scaled length of the change from a state to what became of it. */
  distance(state: Float64Array, result: Float64Array): number {
    const { scale } = this;
    let sum = 0;
    for (let i = 0; i < this.judged; i++) {
      const d = (result[i]! - state[i]!) * scale[i]!;
      sum += d * d;
    }
    return Math.sqrt(sum);
  }

  /**
   * The state to try next.
   *
   * @param state the state the cycle began with; replaced by the next one
   * @param result what became of it; stays
   * @param free whether to mix at all: without it the next state is the result
   */
  mix(state: Float64Array, result: Float64Array, free: boolean): void {
    const { size, change } = this;
    if (this.begun) {
      const turn = this.turns[this.latest]!;
      for (let i = 0; i < size; i++) {
        const now = result[i]! - state[i]!;
        turn[i] = now - change[i]!;
        change[i] = now;
      }
      this.held = Math.min(depth, this.held + 1);
    } else for (let i = 0; i < size; i++) change[i] = result[i]! - state[i]!;
    this.begun = true;

    const next = this.spare;
    next.set(result);
    if (free && this.held > 0) {
      const weights = this.weights();
      for (let k = 0; k < this.held; k++) {
        const weight = weights[k]!;
        const step = this.steps[k]!;
        const turn = this.turns[k]!;
        for (let i = 0; i < size; i++) next[i]! -= weight * (step[i]! + turn[i]!);
      }
    }
    this.latest = (this.latest + 1) % depth;
    const step = this.steps[this.latest]!; // of the oldest, which gives way
    for (let i = 0; i < size; i++) step[i] = next[i]! - state[i]!;
    state.set(next);
  }

  /** After a mixture that is no possible state: the result itself, and nothing remembered. */
  refuse(state: Float64Array, result: Float64Array): void {
    state.set(result);
    this.restart();
  }

  /** Least squares over the held changes of the change, by the normal equations with a small ridge. */
  private weights(): Float64Array {
    const { held, judged, scale, turns, change, matrix, right } = this;
    for (let p = 0; p < held; p++) {
      const a = turns[p]!;
      for (let q = 0; q <= p; q++) {
        const b = turns[q]!;
        let sum = 0;
        for (let i = 0; i < judged; i++) sum += a[i]! * b[i]! * scale[i]! * scale[i]!;
        matrix[p * depth + q] = sum;
        matrix[q * depth + p] = sum;
      }
      let sum = 0;
      for (let i = 0; i < judged; i++) sum += a[i]! * change[i]! * scale[i]! * scale[i]!;
      right[p] = sum;
    }
    let trace = 0;
    for (let p = 0; p < held; p++) trace += matrix[p * depth + p]!;
    for (let p = 0; p < held; p++) matrix[p * depth + p]! += (1e-4 * trace) / held + 1e-30;
    eliminate(matrix, right, held);
    let largest = longest;
    for (let p = 0; p < held; p++) largest = Math.max(largest, Math.abs(right[p]!));
    for (let p = 0; p < held; p++) right[p]! *= longest / largest;
    return right;
  }
}

/** Gauss's elimination, in place, of a positive definite matrix of `depth` columns. */
function eliminate(matrix: Float64Array, right: Float64Array, n: number): void {
  for (let p = 0; p < n; p++)
    for (let q = p + 1; q < n; q++) {
      const share = matrix[q * depth + p]! / matrix[p * depth + p]!;
      for (let k = p; k < n; k++) matrix[q * depth + k]! -= share * matrix[p * depth + k]!;
      right[q]! -= share * right[p]!;
    }
  for (let p = n - 1; p >= 0; p--) {
    for (let q = p + 1; q < n; q++) right[p]! -= matrix[p * depth + q]! * right[q]!;
    right[p]! /= matrix[p * depth + p]!;
  }
}
