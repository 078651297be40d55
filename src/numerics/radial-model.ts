import { linearSystem } from './linear-system.ts';

/** Guesses the outputs at a place. */
type Model = (at: readonly number[]) => number[];

/**
 * A smooth guess between scattered samples of several outputs: the cube of the distance to each sample and a straight
 * line, through all samples or, with some give, close by them.
 *
 * @param places where the samples stand, each as many coordinates
 * @param outputs for each output its values, one a place; finite
 * @param give how much less than exactly the samples are met, so that noise in them is not followed; 0 meets them
 * @returns the guess, or null where there are too few samples, or they lie on one line or plane
 * Source: R. G. Regis and C. A. Shoemaker, INFORMS Journal on Computing 19 (2007) 497-509, the cubic case (from memory).
 */
export function radialModel(
  places: readonly (readonly number[])[],
  outputs: readonly (readonly number[])[],
  give = 0,
): Model | null {
  const n = places.length;
  const d = places[0]?.length ?? 0;
  if (n < d + 1) return null;
  const rows = places.map((here, i) =>
    Float64Array.from([...places.map((there, j) => (i === j ? give : cubed(here, there))), 1, ...here]),
  );
  for (let k = 0; k <= d; k++)
    rows.push(Float64Array.from([...places.map((p) => (k === 0 ? 1 : p[k - 1]!)), ...Array<number>(d + 1).fill(0)]));
  const weights = linearSystem(
    rows,
    outputs.map((values) => [...values, ...Array<number>(d + 1).fill(0)]),
  );
  if (!weights) return null;
  return (at) => {
    const near = places.map((p) => cubed(at, p));
    return weights.map((w) => {
      let sum = w[n]!;
      for (let i = 0; i < n; i++) sum += w[i]! * near[i]!;
      for (let k = 0; k < d; k++) sum += w[n + 1 + k]! * at[k]!;
      return sum;
    });
  };
}

function cubed(a: readonly number[], b: readonly number[]): number {
  let square = 0;
  for (let k = 0; k < a.length; k++) square += (a[k]! - b[k]!) ** 2;
  return square * Math.sqrt(square);
}
