/** A point or an arrow in the plane of the crank: across, up. */
type Vector = readonly [number, number];

const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1]];
const cross = (a: Vector, b: Vector): number => a[0] * b[1] - a[1] * b[0];
const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1];

/** A crank drawn as circles and a line, as a judge of the closed formulas. The crank turns clockwise from straight up. */
export class WalkedPiston {
  readonly #radius: number;
  readonly #rod: number;
  readonly #line: number;

  /** Lengths in m; `line` is how far the cylinder's line stands from the shaft, toward the crankpin's downgoing side. */
  constructor(radius: number, rod: number, line: number) {
    this.#radius = radius;
    this.#rod = rod;
    this.#line = line;
  }

  #crankpin(turn: number): Vector {
    return [this.#radius * Math.sin(turn), this.#radius * Math.cos(turn)];
  }

  /** The rod's circle about the crankpin, met with the cylinder's line: the upper of the two points. */
  #pin(turn: number): Vector {
    const [x, y] = this.#crankpin(turn);
    return [this.#line, y + Math.sqrt((this.#rod + (x - this.#line)) * (this.#rod - (x - this.#line)))];
  }

  height(turn: number): number {
    return this.#pin(turn)[1];
  }

  /** Where crank and rod fall in one line, near a turn, by halving. */
  deadCenter(near: number): number {
    const bend = (turn: number): number => cross(this.#crankpin(turn), minus(this.#pin(turn), this.#crankpin(turn)));
    let [low, high] = [near - 0.5, near + 0.5];
    const first = Math.sign(bend(low));
    for (let i = 0; i < 60; i++) {
      const middle = (low + high) / 2;
      if (Math.sign(bend(middle)) === first) low = middle;
      else high = middle;
    }
    return (low + high) / 2;
  }

  /** How fast the pin climbs by turn: both ends of a rigid rod move alike along it. */
  #climb(turn: number): number {
    const crankpin = this.#crankpin(turn);
    const along = minus(this.#pin(turn), crankpin);
    return dot([crankpin[1], -crankpin[0]], along) / along[1];
  }

  /** How far the piston climbs from one turn to another: Simpson's rule over many small steps. */
  climbed(from: number, to: number, steps = 2000): number {
    const h = (to - from) / steps;
    let sum = this.#climb(from) + this.#climb(to);
    for (let i = 1; i < steps; i++) sum += this.#climb(from + i * h) * (i % 2 ? 4 : 2);
    return (sum * h) / 3;
  }
}
