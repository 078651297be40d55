import type { Slow } from './cell.ts';

const kept = 64;

/** Remembers the last results of each slow cell by what it was given: undo and variants come back at once. */
export class Memory {
  private readonly results = new Map<Slow, Map<string, unknown>>();

  /** What a cell was given, as text. */
  key(cell: Slow, given: Readonly<Record<string, unknown>>): string {
    return JSON.stringify(Object.entries(cell.from).map(([name, source]) => source.kind.save(given[name])));
  }
  recall(cell: Slow, key: string): { readonly value: unknown } | undefined {
    const mine = this.results.get(cell);
    if (!mine?.has(key)) return undefined;
    const value = mine.get(key);
    this.keep(cell, key, value); // what is asked for again is kept longest
    return { value };
  }
  keep(cell: Slow, key: string, value: unknown): void {
    const mine = this.results.get(cell) ?? new Map<string, unknown>();
    this.results.set(cell, mine);
    mine.delete(key);
    mine.set(key, value);
    if (mine.size > kept) mine.delete(mine.keys().next().value!);
  }
}
