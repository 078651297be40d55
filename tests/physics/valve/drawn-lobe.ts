/**
 * A lift curve by another hand, as a judge: its coefficients from five equations by elimination, its width and exponent
 * by halving. Lengths and angles in any unit, the answers in the same.
 */
export class DrawnLobe {
  readonly #exponents: readonly number[];
  readonly #coefficients: readonly number[];
  readonly lift: number;
  readonly halfWidth: number;

  constructor(p: number, spacing: number, lift: number, halfWidth: number) {
    this.#exponents = [2, p, p + spacing, p + 2 * spacing, p + 3 * spacing];
    this.#coefficients = eliminated(this.#exponents);
    this.lift = lift;
    this.halfWidth = halfWidth;
  }

  liftAt(angle: number): number {
    const x = Math.min(1, Math.abs(angle) / this.halfWidth);
    let y = 1;
    for (let i = 0; i < 5; i++) y += this.#coefficients[i]! * Math.pow(x, this.#exponents[i]!);
    return this.lift * y;
  }

  /** Crank angle at or above a lift. */
  duration(lift: number): number {
    let [inside, outside] = [0, this.halfWidth];
    for (let i = 0; i < 45; i++) {
      const middle = (inside + outside) / 2;
      if (this.liftAt(middle) > lift) inside = middle;
      else outside = middle;
    }
    return inside + outside;
  }
}

/** Value and four derivatives zero at 1, row by row; derivatives of x^n at 1 are n (n - 1) (n - 2) ... */
function eliminated(exponents: readonly number[]): readonly number[] {
  const rows = [0, 1, 2, 3, 4].map((order) => {
    const derivative = (n: number): number => {
      let product = 1;
      for (let k = 0; k < order; k++) product *= n - k;
      return product;
    };
    return [...exponents.map(derivative), order === 0 ? -1 : 0];
  });
  for (let column = 0; column < 5; column++) {
    const best = rows.slice(column).reduce((a, b) => (Math.abs(b[column]!) > Math.abs(a[column]!) ? b : a));
    rows.splice(rows.indexOf(best), 1);
    rows.splice(column, 0, best);
    for (const row of rows) {
      if (row === best) continue;
      const share = row[column]! / best[column]!;
      for (let k = column; k <= 5; k++) row[k]! -= share * best[k]!;
    }
  }
  return rows.map((row, i) => row[5]! / row[i]!);
}

/** What share of the lower duration the upper one is, for one pair of exponent and spacing. */
export function shareOf(p: number, spacing: number, lift: number, upper: number, lower: number): number {
  const lobe = new DrawnLobe(p, spacing, lift, 1);
  return lobe.duration(upper) / lobe.duration(lower);
}

/** The lobe of spacing 2 with a duration at each of two lifts. */
export function fitted(lift: number, lower: readonly [number, number], upper: readonly [number, number]): DrawnLobe {
  let [thin, full] = [2.05, 70];
  for (let i = 0; i < 60; i++) {
    const p = (thin + full) / 2;
    if (shareOf(p, 2, lift, upper[0], lower[0]) < upper[1] / lower[1]) thin = p;
    else full = p;
  }
  return new DrawnLobe(thin, 2, lift, lower[1] / new DrawnLobe(thin, 2, lift, 1).duration(lower[0]));
}
