import { root } from '../numerics/root.ts';

/**
 * Where a function of one figure vanishes between two places at which its signs differ, or null where it jumps over
 * zero (a pole, a step) or has no answer (NaN) on the way.
 */
export function crossing(f: (x: number) => number, low: number, high: number): number | null {
  const found = root(f, low, high, 1e-14);
  if (found === null) return null;
  // A crossing leaves next to nothing of what stands at the ends; a jump does not.
  return Math.abs(f(found)) <= 1e-6 * (Math.abs(f(low)) + Math.abs(f(high))) ? found : null;
}
