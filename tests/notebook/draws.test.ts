import { describe, expect, it } from 'vitest';
import type { Drawn } from '../../src/graph/draws.ts';
import { NotSettled } from '../../src/graph/snapshot.ts';
import type { DrawsItem } from '../../src/notebook/document.ts';
import { couldVary, drawsQuestion, drawsTask, joined, sharesTask, summaryOf } from '../../src/notebook/draws.ts';
import { restore } from '../../src/notebook/restore.ts';
import { blank, catalogue, cellOf, example, inputOf, opened, scenario } from './notebooks.ts';

const item: DrawsItem = { id: 'd', type: 'draws', read: 'dynamicRatio' };
const drawn = (samples: number[], more: Partial<Drawn> = {}): Drawn => ({
  here: 1,
  samples: Float64Array.from(samples),
  words: {},
  why: null,
  ...more,
});

describe('what is asked of draws', () => {
  it('is the result and the verdicts on it, and every ± that they stand on', () => {
    const { read, judges, varied, isSlow } = drawsQuestion(opened(example), item);
    expect([read, ...judges].map((c) => c.id)).toEqual(['dynamicRatio', 'fuelVerdict', 'fuelVerdictLow']);
    // Neither the exhaust's durations nor what the held deck hides.
    expect(varied.map((v) => v.cell.id).toSorted()).toEqual(
      Object.keys(example.tolerances)
        .filter((id) => !id.startsWith('exhaust'))
        .toSorted(),
    );
    expect(isSlow).toBe(false);
  });
  it('is slow where the path holds the engine, and then it is given a time', () => {
    const store = opened(example);
    const power = drawsQuestion(store, { ...item, read: 'peakPower', seconds: 12 });
    expect(power.isSlow).toBe(true);
    expect(drawsTask(store, power)).toMatchObject({ seconds: 12, count: 10_000, from: 0 });
    expect(drawsTask(store, power, 40)).toMatchObject({ seconds: 12, count: 9960, from: 40 });
    const task = drawsTask(store, drawsQuestion(store, { ...item, count: 500 }));
    expect(task.count).toBe(500);
    expect(task.seconds).toBeUndefined();
  });
  it('is a task with what it stands on and no more, so that nothing else makes it begin anew', () => {
    const store = opened(example);
    const key = (): string => {
      const question = drawsQuestion(store, item);
      return JSON.stringify([drawsTask(store, question), sharesTask(store, question)]);
    };
    const before = key();
    store.set([[inputOf('runnerLength'), 0.25]], { what: 'elsewhere' });
    expect(key()).toBe(before);
    store.set([[inputOf('bore'), 0.1031]], { what: 'bore' });
    expect(key()).not.toBe(before);
    const bored = key();
    store.change({ what: 'a ± elsewhere' }, (draft) => void (draft.tolerances['runnerLength'] = 0.001));
    expect(key()).toBe(bored);
    store.change({ what: 'a ±' }, (draft) => void (draft.tolerances['bore'] = 0.001));
    expect(key()).not.toBe(bored);
  });
  it('waits for what has no value', () => {
    const store = opened(example);
    store.draft(inputOf('stroke'), 'Write a length.');
    expect(() => drawsQuestion(store, item)).toThrow(NotSettled);
  });
  it('names a field to give a ± to: one that the result stands on and that is not hidden by what is held', () => {
    for (const tolerances of [{}, { bore: 0 }])
      expect(drawsQuestion(opened({ ...example, tolerances }), item).varied).toEqual([]);
    const store = opened({ ...example, tolerances: {} });
    for (const id of ['dynamicRatio', 'densityAltitude', 'peakPower', 'overlap']) {
      const field = couldVary(store, cellOf(id))!;
      expect([id, field.kind.name]).toEqual([id, 'scalar']);
      store.change({ what: 'a ±' }, (draft) => void (draft.tolerances = { [field.id]: 1e-4 }));
      expect(drawsQuestion(store, { ...item, read: id }).varied.map((v) => v.cell.id)).toEqual([field.id]);
    }
  });
});

describe('what draws come to', () => {
  it('leaves out what has no answer, and has places under which a share of the answers lies', () => {
    const samples = Array.from({ length: 999 }, (_, i) => (i % 4 === 3 ? NaN : Math.sin(i)));
    const { sorted, low, middle, high, draws, ends } = summaryOf(drawn(samples));
    const answers = samples.filter((x) => !Number.isNaN(x)).toSorted((a, b) => a - b);
    expect(draws).toBe(999);
    expect(sorted).toEqual(answers);
    // Between the two answers that its rank falls between, in proportion: Hyndman and Fan, The American Statistician 50
    // (1996), definition 7 (from memory).
    const placed = (share: number): number => {
      const rank = share * (answers.length - 1);
      const [under, over] = [answers[Math.floor(rank)]!, answers[Math.ceil(rank)]!];
      return under + (over - under) * (rank % 1);
    };
    expect([low, middle, high, ...ends]).toEqual(
      [0.05, 0.5, 0.95, 0.001, 0.999].map((share) => expect.closeTo(placed(share), 12)),
    );
  });
  it('doubts its ends as far as their ranks may be off, less with more draws', () => {
    const even = (n: number): Drawn => drawn(Array.from({ length: n }, (_, i) => i / (n - 1)));
    // Of even figures from 0 to 1 a place is its share, and its standard error sqrt(0.05 × 0.95 / n).
    expect(summaryOf(even(101)).doubt).toBeCloseTo(Math.sqrt(0.0475 / 101), 9);
    expect(summaryOf(even(10_001)).doubt).toBeCloseTo(Math.sqrt(0.0475 / 10_001), 9);
  });
  it('is nothing where no draw has an answer', () => {
    expect(summaryOf(drawn([NaN, NaN]))).toMatchObject({ draws: 2, sorted: [], low: NaN });
  });
  it('goes on with the draws that follow: figures in a row, words added up, the first reason kept', () => {
    const first = [drawn([1, 2], { words: { fine: 2 } })];
    const more = [drawn([3, NaN], { words: { fine: 1, over: 1 }, why: ['No.'] })];
    expect(joined(null, first)).toBe(first);
    expect(joined(first, more)).toEqual([drawn([1, 2, 3, NaN], { words: { fine: 3, over: 1 }, why: ['No.'] })]);
    expect(joined(more, [drawn([5], { why: ['Later.'] })])[0]!.why).toEqual(['No.']);
  });
});

describe('draws that were kept', () => {
  const kept = (thing: object) => {
    const page = [...example.page, thing];
    const { document, repairs } = restore({ ...example, page }, catalogue, blank);
    return { item: document.page.find((p) => p.type === 'draws'), repairs };
  };
  it('come back as they were', () => {
    for (const whole of [item, { ...item, count: 500 }, { ...item, read: 'fuelVerdict', seconds: 600 }])
      expect(kept(whole)).toEqual({ item: whole, repairs: [] });
  });
  it.each([
    ['of nothing known', { read: 'nothing' }],
    ['of an input', { read: 'bore' }],
    ['of a curve', { read: 'motoredPressure' }],
    ['of no cell', { read: 7 }],
    ['too few', { count: 99 }],
    ['too many', { count: 1e9 }],
    ['half a draw', { count: 1000.5 }],
    ['a word', { count: '1000' }],
    ['no time', { seconds: 0 }],
    ['forever', { seconds: Infinity }],
  ])('are left out with a sentence where they make no sense: %s', (_, wrong) => {
    const { item: found, repairs } = kept({ ...item, ...wrong });
    expect(found).toBeUndefined();
    expect(repairs).toEqual([`Part ${example.page.length + 1} of the page could not be read and is left out.`]);
  });
  it('may ask for any scalar result or verdict of the catalogue', () => {
    const store = opened(scenario('two-cams'));
    let asked = 0;
    for (const cell of catalogue.cells.values()) {
      if (cell.role === 'input' || (cell.kind.name !== 'scalar' && cell.kind.name !== 'verdict')) continue;
      const { item: found } = kept({ ...item, read: cell.id });
      const question = drawsQuestion(store, found as DrawsItem);
      expect(question.varied.every((v) => v.cell.id in store.document.tolerances)).toBe(true);
      asked++;
    }
    expect(asked).toBeGreaterThan(100);
  });
});
