import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { catalogue, chapters } from '../../cells/index.ts';
import { type Cell, drain, type Input } from '../../src/graph/cell.ts';
import type { Choice, Sense } from '../../src/graph/kind.ts';
import { Live } from '../../src/graph/live.ts';

const rooms = import.meta.glob<Record<string, unknown>>('../../cells/*/*.ts', { eager: true });
const isCell = (thing: unknown): thing is Cell => typeof thing === 'object' && thing !== null && 'role' in thing;
const kebab = (id: string) => id.replace(/[A-Z]/g, (c) => `-${c.toLowerCase()}`);
const cells = [...catalogue.values()];
/** Sets of cells that several read together, by the name they are exported under. */
const shared = new Map(
  Object.values(rooms).flatMap((room) =>
    Object.entries(room).flatMap(([name, thing]) =>
      name.endsWith('Train') ? [[name, Object.values(thing as Record<string, Cell>).map((c) => c.id)] as const] : [],
    ),
  ),
);

it('the catalogue holds every chapter’s cells, each once', () => {
  const exported = Object.values(rooms).flatMap((room) => Object.values(room).filter(isCell));
  expect(cells.length).toBe(exported.length);
  expect(cells.length).toBeGreaterThan(90);
  expect(chapters.map((c) => c.number)).toEqual(chapters.map((_, i) => i + 1));
});

describe.each(Object.entries(rooms).filter(([, room]) => Object.values(room).some(isCell)))('%s', (path, room) => {
  const file = path.split('/').at(-1)!.replace('.ts', '');
  const own = Object.entries(room).filter((entry): entry is [string, Cell] => isCell(entry[1]));

  it('is named after its cell', () => {
    for (const [name, c] of own) expect(c.id).toBe(name);
    if (file !== 'inputs') expect(own.map(([name]) => kebab(name))).toEqual([file]);
  });
  it('reads every cell it imports, and no other', () => {
    const text = readFileSync(new URL(path, import.meta.url), 'utf8');
    const imported = [...text.matchAll(/import \{([^}]*)\} from '(?:\.\/|\.\.\/\w+\/)([\w-]+)\.ts'/g)]
      .flatMap(([, names]) => names!.split(',').map((s) => s.trim()))
      .flatMap((name) => shared.get(name) ?? name)
      .filter((name) => catalogue.has(name));
    const named = own.flatMap(([, c]) =>
      c.role === 'input'
        ? []
        : [
            ...Object.values(c.from),
            ...c.movedBy.flatMap((m) => m.inputs as readonly Cell[]),
            ...(c.about ? [c.about] : []),
            ...(typeof c.modelError === 'object' ? [c.modelError] : []),
          ].map((s) => s.id),
    );
    expect([...new Set(imported)].toSorted()).toEqual([...new Set(named)].toSorted());
  });
});

describe.each(cells.map((c) => [c.id, c] as const))('%s', (_, c) => {
  it('explains itself in words', () => {
    expect(c.label).toMatch(/^[A-Z0-9]/);
    expect(c.label.endsWith(':')).toBe(false);
    expect(c.note).toMatch(/^[A-Z0-9].*\.$/s);
  });
  if (c.role === 'input') {
    it('starts inside what physics allows, with a slider inside that', () => {
      expect(c.kind.sound(c.initial)).toBe(true);
      if (typeof c.initial !== 'number') return expect(c.hard === undefined || c.initial === null).toBe(true);
      const [low, high] = c.hard!;
      expect(c.initial).toBeGreaterThanOrEqual(low);
      expect(c.initial).toBeLessThanOrEqual(high);
      expect(c.slider![0]).toBeGreaterThanOrEqual(low);
      expect(c.slider![1]).toBeLessThanOrEqual(high);
      expect(c.initial).toBeGreaterThanOrEqual(c.slider![0]);
      expect(c.initial).toBeLessThanOrEqual(c.slider![1]);
    });
    return;
  }
  it('says where its formula comes from, in the names it reads', () => {
    expect(c.source.at).not.toBe('');
    expect(c.formula).not.toBe('');
    const sense = (c.kind as { sense?: Sense }).sense;
    if (sense) expect(sense.words).toContain('dead center');
    // A word of the formula that names a cell must be one it reads.
    for (const word of c.formula.match(/[a-zA-Z][a-zA-Z0-9]+/g) ?? [])
      if (catalogue.has(word) && !(word in c.from)) expect(['stroke', 'rod'], `${c.id}: ${word}`).toContain(word);
  });
  if (c.examples.length > 0)
    it.each(c.examples)('worked case $#', ({ given, gives, within }) => {
      const got = c.role === 'cell' ? c.compute(given as never) : drain(c.steps(given as never));
      expect(typeof got).toBe(typeof gives);
      if (typeof got === 'number') expect(Math.abs(got - (gives as number))).toBeLessThanOrEqual(within);
      else expect(got).toEqual(gives);
    });
});

describe.each(
  cells.flatMap((c) =>
    c.role === 'cell' ? c.movedBy.filter((m) => m.straight).map((m) => [c.id, m.label, c, m] as const) : [],
  ),
)('%s, moved by %s', (_, __, c, mover) => {
  it('rises in a straight line whatever else stands how', () => {
    const live = new Live(cells);
    live.look([c]);
    const inputs = mover.inputs.map((i) => [i, i.initial, i.slider!] as const);
    const at = (share: number): number => {
      for (const [input, , [low, high]] of inputs) live.set(input, low + (high - low) * share);
      live.run();
      return (live.state(c) as { value: number }).value;
    };
    const choices = cells.filter((other) => other.role === 'input' && other.kind.name === 'choice');
    for (const choice of choices as readonly Input<string>[])
      for (const { id } of (choice.kind as unknown as Choice).options) {
        live.set(choice, id);
        const [start, slope] = [at(0), at(1) - at(0)];
        for (const share of [0.1, 0.35, 0.5, 0.8]) expect(at(share)).toBeCloseTo(start + slope * share, 12);
      }
  });
});
