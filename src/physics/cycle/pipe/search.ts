/** How often a search tries before it takes what it has. */
const most = 60;
/** After how many tries every other one halves, so that a bad slope cannot hold it up. */
const patience = 6;

/**
 * Finds where a rising function crosses zero between two bounds, again and again for a function that changes little from
 * one time to the next: it begins where the last two answers point, with the slope of last time, and goes on by the
 * secant, halving where that would leave the bounds or leads nowhere. Two tries are usual.
 */
export class Search {
  /** Where to look next; in the end the answer. */
  x = 0;
  /** The answer before the last. */
  #before = 0;
  #perSlope = 0;
  #low = 0;
  #high = 0;
  #last = 0;
  #was = 0;
  #turns = 0;

  /** Forgets all answers. */
  reset(): void {
    this.x = this.#before = this.#perSlope = 0;
  }

  /** Takes an answer that was found otherwise. */
  take(answer: number): void {
    this.#before = this.x;
    this.x = answer;
  }

  /**
   * Sets the bounds of a new search and the first `x`.
   *
   * @param guess where to begin, and
   * @param perSlope what change of x for one of the value to expect there, when nothing better is known
   */
  begin(low: number, high: number, guess: number, perSlope: number): void {
    const answer = this.x;
    let x = 2 * answer - this.#before;
    if (!(x > low && x < high)) x = answer;
    if (!(x > low && x < high)) x = guess;
    if (!(x > low && x < high)) x = 0.5 * (low + high);
    this.#before = answer;
    this.x = x;
    this.#low = low;
    this.#high = high;
    if (!(this.#perSlope > 0)) this.#perSlope = perSlope;
    this.#turns = 0;
  }

  /** Told the value of the function at `x`, moves `x`; false when it has tried often enough. */
  next(value: number): boolean {
    const x = this.x;
    if (value > 0) this.#high = x;
    else this.#low = x;
    let halve = false;
    if (this.#turns > 0) {
      const perSlope = (x - this.#last) / (value - this.#was);
      if (perSlope > 0 && perSlope < Infinity) this.#perSlope = perSlope;
      else halve = true; // locally not rising, or too flat to tell
      if (this.#turns > patience && this.#turns % 2 === 0) halve = true;
    }
    this.#last = x;
    this.#was = value;
    const next = x - value * this.#perSlope;
    const inside = next > this.#low && next < this.#high;
    this.x = inside && !halve ? next : 0.5 * (this.#low + this.#high);
    return ++this.#turns < most;
  }
}
