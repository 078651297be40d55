import { describe, expect, it } from 'vitest';
import { cell, type Cell } from '../../src/graph/cell.ts';
import { compile, downstream, upstream } from '../../src/graph/compile.ts';
import { structure } from '../../src/graph/kind.ts';
import type { ModelError } from '../../src/graph/model-error.ts';
import { toy, typed } from './toy.ts';

const a = typed('a', 1);
const b = typed('b', 1);
const one = cell({ ...toy('one'), from: { a }, compute: ({ a }) => a });
const two = cell({ ...toy('two'), from: { one, again: one, b }, compute: ({ one, b }) => one + b });
const three = cell({ ...toy('three'), from: { two, a }, compute: ({ two, a }) => two + a });
const beside = cell({ ...toy('beside'), from: { b }, compute: ({ b }) => b });

const graph = compile([three, beside]);
const slot = (c: Cell): number => graph.slotOf.get(c)!;
const marked = (marks: Uint8Array): string[] => graph.order.filter((_, i) => marks[i] === 1).map((c) => c.id);

describe('a compiled graph', () => {
  it('holds each cell once, after all it reads, and nothing that was not asked for', () => {
    const ids = graph.order.map((c) => c.id);
    expect(ids.toSorted()).toEqual(['a', 'b', 'beside', 'one', 'three', 'two']);
    for (const [i, c] of graph.order.entries()) {
      expect(slot(c)).toBe(i);
      expect(graph.byId.get(c.id)).toBe(c);
      for (const s of graph.sources[i]!) expect(s).toBeLessThan(i);
    }
    expect(compile([two]).order).not.toContain(three);
    expect(compile([]).order).toEqual([]);
  });

  it('knows under which names a cell reads, and who reads it, each reader once', () => {
    expect(graph.names[slot(two)]).toEqual(['one', 'again', 'b']);
    expect(graph.sources[slot(two)]).toEqual([slot(one), slot(one), slot(b)]);
    expect(graph.readers[slot(one)]).toEqual([slot(two)]);
    expect(new Set(graph.readers[slot(a)])).toEqual(new Set([slot(one), slot(three)]));
    expect(graph.readers[slot(three)]).toEqual([]);
  });

  it('knows what is downstream, up to where nothing passes', () => {
    expect(marked(downstream(graph, [slot(a)])).toSorted()).toEqual(['a', 'one', 'three', 'two']);
    expect(marked(downstream(graph, [slot(a)], (s) => s === slot(two))).toSorted()).toEqual(['a', 'one', 'three']);
    expect(marked(downstream(graph, [slot(one)], (s) => s === slot(two)))).toEqual(['one']);
    // What one starts from passes on even if it would stop others.
    expect(marked(downstream(graph, [slot(two)], (s) => s === slot(two)))).toEqual(['two', 'three']);
    expect(marked(downstream(graph, []))).toEqual([]);
  });

  it('knows what stands below, up to what stands by itself', () => {
    expect(marked(upstream(graph, [slot(two)])).toSorted()).toEqual(['a', 'b', 'one', 'two']);
    expect(marked(upstream(graph, [slot(three)], (s) => s === slot(two))).toSorted()).toEqual(['a', 'three', 'two']);
  });

  it('holds what says how good a value is, though the value does not stand on it', () => {
    const beyond = cell({ ...toy('beyond'), from: { b }, modelError: 0.5, compute: ({ b }) => b });
    const off = cell({
      ...toy('off'),
      kind: structure<ModelError>(),
      from: { a, beyond },
      compute: ({ beyond }) => ({ plusMinus: beyond, shares: [] }),
    });
    const rough = cell({ ...toy('rough'), from: { a }, modelError: off, compute: ({ a }) => a });
    const reader = cell({ ...toy('reader'), from: { rough }, compute: ({ rough }) => rough });
    const all = compile([reader]);
    const slotIn = (c: Cell): number => all.slotOf.get(c)!;
    expect(all.order.map((c) => c.id)).toEqual(['a', 'rough', 'reader', 'b', 'beyond', 'off']);
    expect(all.sources[slotIn(rough)]).toEqual([slotIn(a)]);
    expect(upstream(all, [slotIn(reader)])[slotIn(off)]).toBe(0);
    expect(downstream(all, [slotIn(b)])[slotIn(rough)]).toBe(0);
  });

  it('is not too deep for a chain of thousands', () => {
    const link = (last: Cell<number>, i: number): Cell<number> =>
      cell({ ...toy(`c${i}`), from: { last }, compute: ({ last }) => last });
    const end = Array.from({ length: 3000 }).reduce<Cell<number>>((last, _, i) => link(last, i), a);
    expect(compile([end]).order).toHaveLength(3001);
  });
});

describe('a graph is refused', () => {
  it('when a cell stands on itself', () => {
    const from: Record<string, Cell> = { a };
    const first = cell({ ...toy('first'), from, compute: () => 1 });
    const second = cell({ ...toy('second'), from: { first }, compute: ({ first }) => first });
    from['second'] = second; // as files that import each other might come to
    expect(() => compile([second])).toThrow('"second" stands on itself');
  });

  it('when two cells have one name', () => {
    const other = cell({ ...toy('one'), from: { b }, compute: ({ b }) => b });
    expect(() => compile([two, other])).toThrow('two cells are called "one"');
    expect(() => compile([two, one])).not.toThrow();
  });

  it('when a cell it reads is not there yet', () => {
    const from = { a, later: undefined as unknown as Cell<number> };
    const early = cell({ ...toy('early'), from, compute: ({ a }) => a });
    expect(() => compile([early])).toThrow(
      '"early" reads "later", which is not there yet: do two cell files import each other?',
    );
  });
});
