import { readFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { expect, it } from 'vitest';

const folder = join(import.meta.dirname, '../../../src/physics/cycle');

/** What a file brings along when it is loaded: all it imports but types, and what that imports. */
function broughtBy(file: string, seen = new Set<string>()): Set<string> {
  const text = readFileSync(file, 'utf8');
  for (const [, name] of text.matchAll(/^import (?!type )[^;]*?from '(\.[^']+)'/gm)) {
    const other = join(dirname(file), name!);
    if (seen.has(other)) continue;
    seen.add(other);
    broughtBy(other, seen);
  }
  return seen;
}
const names = (file: string): string[] => [...broughtBy(join(folder, file))].map((found) => basename(found)).toSorted();

it('what the page asks of sparks and bands brings no gas dynamics along', () => {
  expect(names('spark-advice.ts')).toEqual([]);
  expect(names('band.ts')).toEqual(['ranges.ts']);
  expect(names('refuse-engine.ts')).toEqual([]);
  expect(names('engine-input.ts')).toEqual([]);
  expect(names('speed.ts')).toContain('chamber.ts');
});
