import { describe, expect, it } from 'vitest';
import { NotSettled } from '../../src/graph/snapshot.ts';
import type { SweepItem } from '../../src/notebook/document.ts';
import {
  edgesAlong,
  isSlow,
  judgesOf,
  presentPoint,
  questionOf,
  results,
  sweepNow,
  taskOf,
  variables,
} from '../../src/notebook/sweeps.ts';
import { catalogue, cellOf, example, figureOf, inputOf, opened, scenario, scenarios } from './notebooks.ts';

const closing: SweepItem = { id: 's', type: 'sweep', read: 'dynamicRatio', vary: 'intakeClosing', from: 0.7, to: 1.4 };
const asked = (item: SweepItem) => questionOf(item, catalogue);

describe('a question', () => {
  it('goes from end to end, both included, either way round', () => {
    for (const item of [closing, { ...closing, from: 1.4, to: 0.7 }]) {
      const { xs } = asked(item);
      expect(xs[0]).toBe(item.from);
      expect(xs.at(-1)).toBeCloseTo(item.to, 13);
      expect(new Set(xs).size).toBe(xs.length);
    }
  });
  it.each(Object.keys(scenarios))('of %s lies on what the page says at its present setting', (name) => {
    const store = opened(scenario(name));
    for (const item of store.document.page) {
      if (item.type !== 'sweep') continue;
      const question = asked(item);
      expect(isSlow(store.snapshot(), question)).toBe(false);
      const { x, y } = presentPoint(store.snapshot(), question);
      expect(x).toBe(figureOf(store, item.vary));
      for (const [id, value] of Object.entries(item.fixed ?? {})) store.set([[inputOf(id), value]], { what: id });
      expect(Math.abs(y / figureOf(store, item.read) - 1)).toBeLessThan(1e-12);
    }
  });
  it('has no present point where nothing can be read', () => {
    const store = opened({ ...example, held: {} });
    expect(presentPoint(store.snapshot(), asked(closing)).y).toBeNaN();
    expect(() => sweepNow(store.snapshot(), asked(closing))).toThrow(NotSettled);
    store.draft(inputOf('camAdvance'), 'Write an angle.');
    expect(presentPoint(store.snapshot(), asked(closing))).toEqual({ x: NaN, y: NaN });
  });
  it('becomes a task with every input, and what is held in the variant one looks at', () => {
    const store = opened(scenario('two-cams'), 'late');
    store.letGo(cellOf('deckClearance'), { what: 'let go' });
    store.hold(cellOf('clearanceVolume'), 80e-6, { what: 'hold' });
    const family = { vary: 'chamberVolume', values: [60e-6, 70e-6] };
    const task = taskOf(store, asked({ ...closing, family, fixed: { pressureEntry: 'standard' } }));
    const inputs = [...catalogue.cells.values()].filter((c) => c.role === 'input');
    expect(Object.keys(task.inputs).toSorted()).toEqual(inputs.map((c) => c.id).toSorted());
    for (const input of inputs) expect(store.state(input), input.id).toMatchObject({ value: task.inputs[input.id] });
    expect(task.held).toEqual({ clearanceVolume: 80e-6 });
    expect(task).toMatchObject({
      vary: 'intakeClosing',
      read: ['dynamicRatio'],
      family,
      fixed: { pressureEntry: 'standard' },
    });
    expect(structuredClone(task)).toEqual(task);
  });
});

describe('the judge of a result', () => {
  it('is the verdict that reads it, and a verdict is its own', () => {
    expect(judgesOf(catalogue, cellOf('dynamicRatio'))[0]?.id).toBe('fuelVerdict');
    expect(judgesOf(catalogue, cellOf('squishGap'))[0]?.id).toBe('squishVerdict');
    expect(judgesOf(catalogue, cellOf('fuelVerdictLow'))[0]?.id).toBe('fuelVerdictLow');
    // It reads the altitude and the octane too, but judges a ratio.
    for (const id of ['airDensity', 'altitude', 'pumpOctane', 'staticRatio'])
      expect(judgesOf(catalogue, cellOf(id)), id).toEqual([]);
  });
  it('has edges that stand still where nothing moves them, and rise with the altitude', () => {
    const store = opened(scenario('mountain-six'));
    const judge = judgesOf(catalogue, cellOf('dynamicRatio'))[0]!;
    const {
      edges: [start, end],
    } = edgesAlong(store.snapshot(), asked(closing), judge);
    expect([new Set(start), new Set(end)].map((edge) => [...edge].map((v) => v.toFixed(2)))).toEqual([
      ['7.48'],
      ['7.98'],
    ]);
    const height: SweepItem = { ...closing, vary: 'altitude', from: 0, to: 3048 };
    const {
      edges: [rising],
    } = edgesAlong(store.snapshot(), asked(height), judge);
    // 0.20 of ratio for each 3,000 ft (914.4 m), from 7.00 at sea level on 87 AKI: common practice, no source
    expect(rising![0]).toBeCloseTo(7, 12);
    expect(rising!.at(-1)).toBeCloseTo(7 + 0.2 * (3048 / 914.4), 12);
  });
  it('has no edges where it has no answer', () => {
    const store = opened({ ...example, held: {} });
    expect(edgesAlong(store.snapshot(), asked(closing), judgesOf(catalogue, cellOf('dynamicRatio'))[0]!).edges).toEqual(
      [],
    );
  });
});

describe('what can be asked', () => {
  it('is any figure the result stands on, and nothing else', () => {
    const store = opened(example);
    const ids = variables(store, cellOf('dynamicRatio')).map((c) => c.id);
    for (const id of ['bore', 'intakeClosing', 'deckHeight', 'clearanceVolume']) expect(ids).toContain(id);
    for (const id of ['dynamicRatio', 'camEntry', 'linkage', 'airTemperature', 'crankingPressure', 'exhaustDuration'])
      expect(ids).not.toContain(id);
    for (const c of variables(store, cellOf('crankingPressure'))) expect(c.id).not.toBe('crankingPressure');
  });
  it('is about figures and verdicts that something else decides', () => {
    for (const c of results(catalogue)) expect(['scalar', 'verdict']).toContain(c.kind.name);
    const ids = results(catalogue).map((c) => c.id);
    expect(ids).toContain('motoredPeak');
    for (const id of ['bore', 'linkage', 'motoredPressure', 'cardAgreement']) expect(ids).not.toContain(id);
  });
});
