import type { Json } from '../graph/kind.ts';
import base1 from './bases/1.json' with { type: 'json' };
import base2 from './bases/2.json' with { type: 'json' };
import base3 from './bases/3.json' with { type: 'json' };
import base4 from './bases/4.json' with { type: 'json' };

/**
 * The numbered bases: every input's value when a release was made. A base never changes, so a document that says
 * only what differs from base N computes from the same inputs for good. A release that adds an input or changes a
 * starting value adds base N + 1.
 */
const bases: readonly Readonly<Record<string, Json>>[] = [base1, base2, base3, base4];

export const latestBase = bases.length;
export const isBase = (n: unknown): n is number =>
  Number.isInteger(n) && (n as number) >= 1 && (n as number) <= latestBase;

/** An input's value in base `n`; for an input that came later, its value in the first base that has it. */
export function baseValue(n: number, id: string): Json | undefined {
  for (let i = n - 1; i < bases.length; i++) {
    const base = bases[i]!;
    if (Object.hasOwn(base, id)) return base[id];
  }
  return undefined;
}
