import { describe, expect, it } from 'vitest';
import { compared } from '../../cells/index.ts';
import type { Cell } from '../../src/graph/cell.ts';
import { say } from '../../src/units/phrase.ts';
import { cautionsBeside, cautionsOf, cautionsChanged } from '../../src/notebook/cautions.ts';
import { comingOut, goingIn, slowUnder } from '../../src/notebook/comparison.ts';
import type { Document } from '../../src/notebook/document.ts';
import type { Store } from '../../src/notebook/store.ts';
import { addVariant } from '../../src/notebook/variants.ts';
import { catalogue, cellOf, example, inputOf, opened, quick, scenario } from './notebooks.ts';

const idsOf = (cells: readonly Cell[]): readonly string[] => cells.map((c) => c.id);
const given = (document: Document, ids: readonly (string | null)[] = document.variants.map((v) => v.id)) =>
  idsOf(goingIn(document, catalogue, ids));
const set = (store: Store, id: string, value: unknown): void => store.set([[inputOf(id), value]], { what: id });
/** The example twice over, A and B, with B looked at. */
function two(): Store {
  const store = opened(example);
  addVariant(store);
  return store;
}

describe('what differs going in', () => {
  it('is nothing between two copies', () => {
    expect(given(two().document)).toEqual([]);
  });
  it('is what one of them sets otherwise, in the order of the page, whichever says it', () => {
    const store = two();
    set(store, 'chamberVolume', 66e-6);
    set(store, 'bore', 0.1);
    expect(given(store.document)).toEqual(['bore', 'chamberVolume']);
    store.choose(store.document.variants[0]!.id);
    set(store, 'bore', 0.1); // alike again, each by its own word
    expect(given(store.document)).toEqual(['chamberVolume']);
  });
  it('is what one of them holds otherwise, or lets go of', () => {
    const store = two();
    store.hold(cellOf('clearanceVolume'), 80e-6, { what: 'hold' });
    expect(given(store.document)).toEqual(['clearanceVolume']);
    store.letGo(cellOf('deckClearance'), { what: 'let go' });
    expect(given(store.document)).toEqual(['deckClearance', 'clearanceVolume']);
  });
  it('against the notebook itself is what a variant says', () => {
    const store = two();
    set(store, 'bore', 0.1);
    store.choose(null);
    set(store, 'stroke', 0.08);
    expect(given(store.document, [null, store.document.variants[1]!.id])).toEqual(['bore']);
  });
  it('is not what one of them says and the others have from where every notebook starts', () => {
    const store = two();
    const b = store.document.chosen;
    store.choose(null);
    set(store, 'bore', 0.1);
    store.choose(b);
    set(store, 'bore', inputOf('bore').initial);
    expect(given(store.document)).toEqual(['bore']);
    store.choose(null);
    set(store, 'bore', inputOf('bore').initial);
    expect(store.document.variants[1]!.inputs).toHaveProperty('bore');
    expect(given(store.document)).toEqual([]);
  });
  it('leaves out a field that no variant’s choices ask for', () => {
    const store = two();
    const b = store.document.chosen;
    store.choose(null);
    set(store, 'sparkEntry', 'table');
    store.choose(b);
    set(store, 'totalSpark', 0.5);
    expect(given(store.document)).toEqual([]);
    set(store, 'sparkEntry', 'total');
    expect(given(store.document)).toEqual(['sparkEntry', 'totalSpark']);
  });
});

describe('what comes out', () => {
  const whole = { ...catalogue, compared };
  it('is the pinned answers and what variants are told apart by, each once', () => {
    const out = idsOf(comingOut({ ...example, pins: ['strokeLost', 'staticRatio'] }, whole, []));
    expect(out[0]).toBe('strokeLost');
    expect(out.slice(1)).toEqual(idsOf(compared));
    expect(new Set(out).size).toBe(out.length);
  });
  it('is not named twice where it goes in', () => {
    const store = two();
    store.hold(cellOf('staticRatio'), 9, { what: 'hold' });
    const inside = goingIn(
      store.document,
      whole,
      store.document.variants.map((v) => v.id),
    );
    expect(idsOf(inside)).toEqual(['staticRatio']);
    expect(idsOf(comingOut(store.document, whole, inside))).not.toContain('staticRatio');
  });
  it('tells what takes long from what does not', () => {
    const store = opened(example);
    const late = compared.filter((c) => !store.live.isQuick(c));
    expect(idsOf(late)).toEqual(['peakTorque', 'peakTorqueSpeed', 'peakPower', 'peakPowerSpeed']);
    expect(
      slowUnder(
        store,
        compared.filter((c) => !late.includes(c)),
      ),
    ).toEqual([]);
    const slow = slowUnder(store, late);
    expect(slow.length).toBeGreaterThan(0);
    expect(slow.every((c) => c.role === 'slow')).toBe(true);
  });
});

describe('cautions beside another engine', () => {
  const cautions = cautionsOf(catalogue).filter((c) => quick.includes(c));
  const brings = (engine: Store, other: Store): readonly string[] =>
    cautionsBeside(
      cautions,
      (c) => engine.state(c),
      (c) => other.state(c),
    ).map(({ words }) => say(words, 'us'));

  it.each([
    ['chamberVolume', 60e-6],
    ['gasketThickness', 0.0004],
    ['intakeLobeLift', 0.0105],
    ['bore', 0.107],
  ])('are those that changing one thing would switch on: %s', (id, value) => {
    const [engine, other] = [opened(example), opened(example)];
    const { on } = cautionsChanged(other.snapshot(), catalogue, [{ cell: inputOf(id), value }]);
    // The table says by other means where an answer is lost or out of its range.
    const told = on.map((words) => say(words, 'us')).filter((text) => !text.includes('outside the range'));
    expect(brings(engine, other)).toEqual([]);
    set(engine, id, value);
    expect(brings(engine, other).toSorted()).toEqual(told.toSorted());
    expect(told.length).toBeGreaterThan(0);
  });
  it('are a worse word of a verdict, not a better one', () => {
    const [early, late] = [opened(scenario('two-cams'), 'early'), opened(scenario('two-cams'), 'late')];
    const isOfFuel = (text: string): boolean => text.startsWith('Beyond this fuel');
    expect(brings(early, late).filter(isOfFuel).length).toBe(2); // here, and taken down
    expect(brings(late, early).filter(isOfFuel)).toEqual([]);
  });
  it('are not those that both have', () => {
    const [engine, other] = [opened(example), opened(example)];
    set(engine, 'bore', 0.107);
    expect(brings(engine, other)).not.toEqual([]);
    set(other, 'bore', 0.107);
    expect(brings(engine, other)).toEqual([]);
  });
  it('name what they are about, and how bad it is', () => {
    const [engine, other] = [opened(example), opened(example)];
    set(engine, 'chamberVolume', 60e-6);
    const found = cautionsBeside(
      cautions,
      (c) => engine.state(c),
      (c) => other.state(c),
    );
    expect(found.find((c) => c.about.id === 'fuelVerdict')?.tone).toBe('beyond');
  });
  it('say nothing of what has not settled', () => {
    const engine = opened(scenario('two-cams'), 'early');
    const waiting = { is: 'waiting', last: undefined, done: 0 } as const;
    expect(
      cautionsBeside(
        cautions,
        (c) => engine.state(c),
        () => waiting,
      ),
    ).toEqual([]);
    expect(
      cautionsBeside(
        cautions,
        () => waiting,
        (c) => engine.state(c),
      ),
    ).toEqual([]);
  });
});
