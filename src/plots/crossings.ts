/** Where a line through points goes through zero, from its lowest x on; a point on zero counts once. */
export function crossings(xs: readonly number[], ys: readonly number[]): readonly number[] {
  const found: number[] = [];
  for (let i = 1; i < xs.length; i++) {
    const [a, b] = [ys[i - 1]!, ys[i]!];
    if (a === 0 && i === 1) continue; // it begins there: nothing changes sides
    if (a !== 0 && b !== 0 ? a * b < 0 : b === 0 && i < xs.length - 1 && a * ys[i + 1]! < 0)
      found.push(xs[i - 1]! + ((xs[i]! - xs[i - 1]!) * a) / (a - b));
  }
  return found;
}

/** The stretches of x where a band from low to high does not hold zero; its edges are straight between the points. */
export function spansWhere(
  xs: readonly number[],
  low: readonly number[],
  high: readonly number[],
): readonly (readonly [number, number])[] {
  const edges = [...crossings(xs, low), ...crossings(xs, high), xs[0]!, xs.at(-1)!].toSorted((a, b) => a - b);
  const at = (ys: readonly number[], x: number): number => {
    const i = Math.max(
      1,
      xs.findIndex((each) => each >= x),
    );
    const share = (x - xs[i - 1]!) / (xs[i]! - xs[i - 1]!);
    return ys[i - 1]! + (ys[i]! - ys[i - 1]!) * share;
  };
  const found: (readonly [number, number])[] = [];
  for (let i = 1; i < edges.length; i++) {
    const [from, to] = [edges[i - 1]!, edges[i]!];
    const middle = (from + to) / 2;
    if (to > from && (at(low, middle) >= 0 || at(high, middle) <= 0)) found.push([from, to]);
  }
  return found;
}

/** What some stretches leave of a span. */
export function leftBetween(
  stretches: readonly (readonly [number, number])[],
  [from, to]: readonly [number, number],
): readonly (readonly [number, number])[] {
  const edges = [from, ...stretches.flat(), to];
  return edges.flatMap((start, i) => (i % 2 === 0 && edges[i + 1]! > start ? [[start, edges[i + 1]!] as const] : []));
}
