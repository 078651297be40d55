import * as units from './unit.ts';
import type { Unit } from './unit.ts';

const all = Object.values(units).filter((u): u is Unit => typeof u === 'object' && u.symbol !== '');

/** Every unit by every way to write it. */
export const unitsBySpelling: ReadonlyMap<string, Unit> = new Map(
  all.flatMap((u) => [u.symbol, ...u.spellings].map((s) => [s, u] as const)),
);

const folded: ReadonlyMap<string, Unit> = new Map([...unitsBySpelling].map(([s, u]) => [s.toLowerCase(), u]));

/** The unit written so, or undefined. An exact match wins; then upper and lower case are let go. */
export const unitNamed = (spelling: string): Unit | undefined =>
  unitsBySpelling.get(spelling) ?? folded.get(spelling.toLowerCase());
