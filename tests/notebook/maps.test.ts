import { describe, expect, it } from 'vitest';
import { type Cell, cell, drain } from '../../src/graph/cell.ts';
import type { Verdict } from '../../src/graph/kind.ts';
import { NotSettled } from '../../src/graph/snapshot.ts';
import { Impossible } from '../../src/graph/state.ts';
import type { MapItem } from '../../src/notebook/document.ts';
import {
  isMovableOn,
  type MapFound,
  mapFound,
  mapKeyOf,
  mapNow,
  type MapQuestion,
  mapQuestionOf,
  mapTaskOf,
  presentOn,
  putOn,
} from '../../src/notebook/maps.ts';
import { Store } from '../../src/notebook/store.ts';
import { contourLines } from '../../src/plots/contour.ts';
import { combined, filledIn, type Grid, type Place } from '../../src/plots/grid.ts';
import { toy, typed } from '../graph/toy.ts';
import { catalogue, cellOf, example, figureOf, inputOf, opened, scenario, valueOf } from './notebooks.ts';

const degree = Math.PI / 180;
const ratio: MapItem = {
  id: 'm',
  type: 'map',
  read: 'dynamicRatio',
  x: { vary: 'intakeClosing', from: 40 * degree, to: 80 * degree },
  y: { vary: 'chamberVolume', from: 60e-6, to: 80e-6 },
};
/** Where the fuel's edges rise, and what it judges stays. */
const height: MapItem = { ...ratio, read: 'fuelVerdict', y: { vary: 'altitude', from: 0, to: 3000 } };
const asked = (store: Store, item: MapItem): MapQuestion => mapQuestionOf(item, catalogue, store.snapshot());
const found = (store: Store, item: MapItem): MapFound => drain(mapNow(store.snapshot(), asked(store, item)));
const keyOf = (store: Store, item: MapItem): string => mapKeyOf(store, store.snapshot(), asked(store, item));
const gridOf = ({ x, y }: MapQuestion, { values }: MapFound): Grid => ({
  across: x.values.length,
  up: y.values.length,
  values,
});
/** A place on a map, SI. */
const on = ({ x, y }: MapItem, { across, up }: Grid, [u, v]: Place): { x: number; y: number } => ({
  x: x.from + ((x.to - x.from) * u) / (across - 1),
  y: y.from + ((y.to - y.from) * v) / (up - 1),
});
/** Some places of lines, a few of each. */
const some = (lines: readonly (readonly Place[])[]): Place[] =>
  lines.flatMap((line) => line.filter((_, i) => i % 19 === 0));
/** A fifth of the last digit that a ratio is shown with. */
const close = 0.002;

describe('a map', () => {
  it.each([
    ['by moving the cam, over an input', 'edge-of-premium', ratio],
    ['the other way round', 'edge-of-premium', { ...ratio, x: ratio.y, y: ratio.x }],
    ['with its ends swapped', 'two-cams', { ...ratio, x: { ...ratio.x, from: ratio.x.to, to: ratio.x.from } }],
    ['over two inputs', 'milled-four', { ...ratio, x: { vary: 'bore', from: 0.08, to: 0.1 } }],
    [
      'where one axis moves the other’s cell',
      'edge-of-premium',
      { ...ratio, y: { vary: 'intakeDuration', from: 250 * degree, to: 290 * degree } },
    ],
  ] as const)('%s says at each place what the page says there', (_, name, item) => {
    const store = opened(scenario(name));
    const question = asked(store, item);
    expect(question.isSlow).toBe(false);
    const { values, stands } = found(store, item);
    expect(stands.every((is) => is === 1)).toBe(true);
    const across = question.x.values.length;
    const flat = new Set<number>();
    for (let place = 0; place < values.length; place += 211) {
      const to = { x: question.x.values[place % across]!, y: question.y.values[Math.floor(place / across)]! };
      const fresh = opened(scenario(name));
      putOn(fresh, question, to, { what: 'there' });
      expect(Math.abs(figureOf(fresh, item.x.vary) / to.x - 1)).toBeLessThan(1e-9);
      expect(Math.abs(figureOf(fresh, item.y.vary) / to.y - 1)).toBeLessThan(1e-9);
      expect(Math.abs(figureOf(fresh, 'dynamicRatio') / values[place]! - 1)).toBeLessThan(1e-9);
      flat.add(values[place]!);
    }
    expect(flat.size).toBeGreaterThan(15);
  });

  it('has its lines where the page comes to their value', () => {
    const store = opened(example);
    const question = asked(store, ratio);
    const grid = gridOf(question, found(store, ratio));
    for (const level of [7, 7.5, 8]) {
      const places = some(contourLines(grid, level));
      expect(places.length).toBeGreaterThan(2);
      for (const place of places) {
        putOn(store, question, on(ratio, grid, place), { what: 'there' });
        expect(Math.abs(figureOf(store, 'dynamicRatio') - level)).toBeLessThan(close);
      }
    }
  });

  it.each([
    ['still', ratio, 'fuelVerdict'],
    ['rising with the altitude', height, 'fuelVerdict'],
    [
      'of another judge',
      {
        ...ratio,
        read: 'squishGap',
        x: { vary: 'deckClearance', from: 0, to: 0.002 },
        y: { vary: 'gasketThickness', from: 0.0005, to: 0.002 },
      },
      'squishVerdict',
    ],
  ] as const)('has its edges where the verdict turns: edges %s', (_, item, judge) => {
    const store = opened(example);
    const question = asked(store, item);
    const map = found(store, item);
    const grid = gridOf(question, map);
    const { points, edges } = map.judged.find((j) => j.judge.id === judge)!;
    expect(edges.length).toBeGreaterThan(1);
    let looked = 0;
    for (const [i, values] of edges.entries()) {
      const less = combined(grid, { across: points[0], up: points[1], values }, (value, edge) => value - edge);
      for (const place of some(contourLines(filledIn(less), 0))) {
        looked++;
        putOn(store, question, on(item, grid, place), { what: 'there' });
        const { value, edges: now } = valueOf(store, judge) as Verdict;
        expect(Math.abs(value - now[i]!)).toBeLessThan(item.read === 'squishGap' ? 1e-7 : close);
      }
    }
    expect(looked).toBeGreaterThan(5);
  });

  it('has gaps where the page has no answer', () => {
    const short: MapItem = { ...ratio, x: { vary: 'rod', from: 0.03, to: 0.15 } };
    const store = opened(example);
    const { values } = found(store, short);
    const question = asked(store, short);
    const across = question.x.values.length;
    for (let place = 0; place < values.length; place += 97) {
      store.set([[inputOf('rod'), question.x.values[place % across]!]], { what: 'rod' });
      expect(Number.isNaN(values[place]!)).toBe(store.state(cellOf('dynamicRatio')).is === 'fault');
    }
    expect(values.some(Number.isNaN) && values.some(Number.isFinite)).toBe(true);
  });

  it('keeps what is fixed, in the map alone', () => {
    const store = opened(example);
    const item = { ...ratio, fixed: { bore: 0.09 } };
    const { values } = found(store, item);
    store.set([[inputOf('bore'), 0.09]], { what: 'bore' });
    expect(Array.from(values)).toEqual(Array.from(found(store, ratio).values));
  });
  it('has the edges of what is fixed', () => {
    const store = opened(example);
    const of = (fixed: Record<string, number>): number[] => {
      const [here] = found(store, { ...ratio, read: 'fuelVerdict', fixed }).judged;
      return here!.edges.map((edge) => edge[0]!);
    };
    const [high, low] = [of({ altitude: 3048 }), of({ altitude: 0 })];
    // 0.20 of ratio for each 3,000 ft (914.4 m): common practice, no source
    high.forEach((edge, i) => expect(edge - low[i]!).toBeCloseTo((0.2 * 3048) / 914.4, 9));
  });

  it('waits for what it stands on, and is drawn without a judge that has none', () => {
    const store = opened({ ...example, held: {} }); // no deck clearance
    expect(() => asked(store, ratio)).toThrow(NotSettled);
    const other = opened(example);
    expect(asked(other, ratio).judges.map((j) => j.id)).toEqual(['fuelVerdict', 'fuelVerdictLow']);
    other.draft(inputOf('lowestAltitude'), 'Write a height.');
    expect(asked(other, ratio).judges.map((j) => j.id)).toEqual(['fuelVerdict']);
  });
  it('whose axes would move one input is not to be had, in words', () => {
    const store = opened(example);
    const item = { ...ratio, y: { vary: 'camAdvance', from: 0, to: 0.1 } };
    expect(() => asked(store, item)).toThrow(Impossible);
    expect(() => asked(store, item)).toThrow(/both move cam advance/);
  });
});

describe('the point on a map', () => {
  it('is where the notebook stands, with the value of there', () => {
    const store = opened(example);
    const at = presentOn(store.snapshot(), asked(store, ratio));
    expect(at).toEqual({
      x: figureOf(store, 'intakeClosing'),
      y: figureOf(store, 'chamberVolume'),
      z: figureOf(store, 'dynamicRatio'),
    });
  });
  it('is moved in one step, which one step takes back', () => {
    const store = opened(example);
    const before = store.document;
    putOn(store, asked(store, ratio), { x: 65 * degree, y: 66e-6 }, { what: 'there', place: 'm' });
    expect(figureOf(store, 'intakeClosing')).toBeCloseTo(65 * degree, 12);
    expect(figureOf(store, 'chamberVolume')).toBe(66e-6);
    expect(store.canUndo).toBe('there');
    store.undo();
    expect(store.document).toEqual(before);
    expect(store.canUndo).toBeNull();
  });
  it('moves a held figure as held, together with an input', () => {
    const store = opened(example);
    store.hold(cellOf('clearanceVolume'), 80e-6, { what: 'hold' });
    const item = { ...ratio, y: { vary: 'clearanceVolume', from: 70e-6, to: 90e-6 } };
    putOn(store, asked(store, item), { x: 62 * degree, y: 75e-6 }, { what: 'there' });
    expect(figureOf(store, 'clearanceVolume')).toBe(75e-6);
    expect(figureOf(store, 'intakeClosing')).toBeCloseTo(62 * degree, 12);
    store.undo();
    expect(figureOf(store, 'clearanceVolume')).toBe(80e-6);
    expect(figureOf(store, 'intakeClosing')).toBeCloseTo(61 * degree, 12);
  });
  it('stays where it is if it cannot go there, or nothing moves it', () => {
    const store = opened(example);
    const before = store.document;
    const question = asked(store, ratio);
    expect(isMovableOn(store.snapshot(), question)).toBe(true);
    expect(() => putOn(store, question, { x: 3.4, y: 66e-6 }, { what: 'there' })).toThrow(Impossible);
    const computed = asked(store, { ...ratio, y: { vary: 'clearanceVolume', from: 70e-6, to: 90e-6 } });
    expect(isMovableOn(store.snapshot(), computed)).toBe(false);
    expect(() => putOn(store, computed, { x: 1.1, y: 75e-6 }, { what: 'there' })).toThrow(Impossible);
    expect(store.document).toBe(before);
  });
});

describe('a map’s key', () => {
  it('stays as the point is moved, and as what it does not stand on is changed', () => {
    const store = opened(example);
    const key = keyOf(store, ratio);
    putOn(store, asked(store, ratio), { x: 65 * degree, y: 66e-6 }, { what: 'there' });
    expect(keyOf(store, ratio)).toBe(key);
    store.set([[inputOf('crankingSpeed'), 25]], { what: 'speed' });
    expect(keyOf(store, ratio)).toBe(key);
    expect(keyOf(store, { ...ratio, id: 'other' })).toBe(key);
  });
  it.each<[string, (store: Store) => void]>([
    ['an input', (store) => store.set([[inputOf('bore'), 0.1]], { what: 'bore' })],
    ['what the judge reads', (store) => store.set([[inputOf('altitude'), 2000]], { what: 'altitude' })],
    ['a held figure', (store) => store.hold(cellOf('gasketVolume'), 9e-6, { what: 'hold' })],
  ])('is another with %s changed, and the same when it is taken back', (_, change) => {
    const store = opened(example);
    const [key, before] = [keyOf(store, ratio), found(store, ratio)];
    change(store);
    expect(keyOf(store, ratio)).not.toBe(key);
    const after = found(store, ratio);
    expect(JSON.stringify([after.values, after.judged.map((j) => j.edges)])).not.toBe(
      JSON.stringify([before.values, before.judged.map((j) => j.edges)]),
    );
    store.undo();
    expect(keyOf(store, ratio)).toBe(key);
  });
  it('keeps what parts two inputs that are moved together', () => {
    const [a, b] = [typed('a', 1), typed('b', 2)];
    const c = typed('c', 3);
    const both = cell({
      ...toy('both'),
      from: { a, b },
      movedBy: [{ label: 'both', inputs: [a, b] }],
      compute: (g) => g.a + g.b,
    });
    const out = cell({ ...toy('out'), from: { a, both, c }, compute: (g) => g.a * g.both + g.c });
    const cells = new Map<string, Cell>([a, b, c, both, out].map((each) => [each.id, each]));
    const toys = { cells, chapters: [] };
    const document = { ...example, inputs: {}, held: {}, tolerances: {}, pins: [], page: [] };
    const store = new Store({ catalogue: toys, open: { document, opened: document } });
    const item: MapItem = {
      ...ratio,
      read: 'out',
      x: { vary: 'both', from: 3, to: 6 },
      y: { vary: 'c', from: 0, to: 1 },
    };
    const look = (): [string, number] => {
      const at = store.snapshot();
      const question = mapQuestionOf(item, toys, at);
      return [mapKeyOf(store, at, question), drain(mapNow(at, question)).values[0]!];
    };
    const [key, value] = look();
    store.set([[b, 5]], { what: 'b' });
    const [after, other] = look();
    expect(other).not.toBeCloseTo(value, 6);
    expect(after).not.toBe(key);
  });
});

describe('a slow map', () => {
  const slow: MapItem = { ...ratio, read: 'motoredPeak', y: { vary: 'crankingSpeed', from: 15, to: 30 } };
  it('has 13 points each way and becomes a task that any thread can take', () => {
    const store = opened(scenario('two-cams'), 'late');
    const question = asked(store, slow);
    expect(question.isSlow).toBe(true);
    expect([question.x.values.length, question.y.values.length]).toEqual([13, 13]);
    const task = mapTaskOf(store, question);
    expect(task.read).toEqual([{ cell: 'motoredPeak' }]);
    expect(task.inputs.bore).toBe(figureOf(store, 'bore'));
    expect(structuredClone(task)).toEqual(task);
  });
  it('shows what came back, its value not told before it is there', () => {
    const store = opened(example);
    const question = asked(store, slow);
    const rows = [new Float64Array(169).fill(NaN)];
    const stands = new Uint8Array(169);
    [rows[0]![0], stands[0]] = [12, 1];
    const map = mapFound(question, { rows, stands });
    expect([map.values[0], map.stands[0], map.stands[1], map.judged]).toEqual([12, 1, 0, []]);
    expect(presentOn(store.snapshot(), question).z).toBeNaN();
    expect(presentOn(store.snapshot(), question).y).toBe(figureOf(store, 'crankingSpeed'));
  });
});
