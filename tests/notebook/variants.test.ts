import { describe, expect, it } from 'vitest';
import { type Document, layered } from '../../src/notebook/document.ts';
import { restore } from '../../src/notebook/restore.ts';
import type { Store } from '../../src/notebook/store.ts';
import { addVariant, keepOnly, moveVariant, removeVariant, renameVariant } from '../../src/notebook/variants.ts';
import { catalogue, cellOf, example, figureOf, inputOf, opened, quick, scenario } from './notebooks.ts';

const names = ({ document }: Store): readonly string[] => document.variants.map((v) => v.name);
const chosen = ({ document }: Store): string | undefined =>
  document.variants.find((v) => v.id === document.chosen)?.name;
const of = ({ document }: Store, name: string): Document['variants'][number] =>
  document.variants.find((v) => v.name === name)!;
const choose = (store: Store, name: string | null): void => store.choose(name === null ? null : of(store, name).id);
const set = (store: Store, id: string, value: unknown): void => store.set([[inputOf(id), value]], { what: id });
/** Where everything stands that is computed at once. */
const shown = (store: Store): readonly unknown[] =>
  quick.map((cell) => {
    const state = store.state(cell);
    return state.is === 'ready' ? state.value : state.is;
  });
const sentence = /^[A-Z].*\.$/;
/** What is done is one step that says what it was, and can be taken back and done again. */
function isOneStep(store: Store, what: string): void {
  const after = store.document;
  expect(store.canUndo).toBe(what);
  store.undo();
  store.redo();
  expect({ ...store.document, chosen: null }).toEqual({ ...after, chosen: null });
}

describe('adding a variant', () => {
  it('to a notebook without any makes two: what is there stays as A, and a copy, B, is looked at', () => {
    const store = opened(scenario('milled-four'));
    set(store, 'bore', 0.09);
    const before = store.document;
    const ratio = figureOf(store, 'dynamicRatio');
    expect(addVariant(store)).toBeNull();
    expect(names(store)).toEqual(['A', 'B']);
    expect(chosen(store)).toBe('B');
    expect(figureOf(store, 'dynamicRatio')).toBe(ratio);
    set(store, 'chamberVolume', 40e-6);
    store.letGo(cellOf('deckClearance'), { what: 'let go' });
    expect(of(store, 'B')).toMatchObject({ inputs: { chamberVolume: 40e-6 }, held: { deckClearance: null } });
    choose(store, 'A');
    expect(figureOf(store, 'dynamicRatio')).toBe(ratio);
    expect([store.document.inputs, store.document.held]).toEqual([before.inputs, before.held]);
  });
  it('is one step, after which there are none again', () => {
    const store = opened(example);
    addVariant(store);
    isOneStep(store, 'Added B: what was there is A now');
    store.undo();
    expect(store.document).toEqual(example);
  });
  it('starts from what is looked at, with what it lets go of, and says so', () => {
    const store = opened(scenario('two-cams'), 'late');
    store.letGo(cellOf('deckClearance'), { what: 'let go' });
    addVariant(store);
    expect(names(store)).toEqual(['Early cam', 'Late cam', 'C']);
    expect(chosen(store)).toBe('C');
    expect(of(store, 'C')).toMatchObject({ inputs: of(store, 'Late cam').inputs, held: { deckClearance: null } });
    isOneStep(store, 'Added C, a copy of Late cam');
    set(store, 'chamberVolume', 70e-6);
    expect('chamberVolume' in of(store, 'Late cam').inputs).toBe(false);
  });
  it('starts from the notebook itself where none is looked at', () => {
    const store = opened(scenario('two-cams'), null);
    addVariant(store);
    expect(of(store, 'C')).toMatchObject({ inputs: {}, held: {} });
    expect(store.canUndo).toBe('Added C');
  });
  it('never gives the name or the place in memory of another, nor of one that was there at the start', () => {
    const store = opened(scenario('two-cams'));
    renameVariant(store, 'late', 'c');
    addVariant(store);
    expect(names(store)).toEqual(['Early cam', 'c', 'D']);
    const { opened: first } = store;
    store.open(
      restore({ ...first, variants: [{ ...first.variants[0]!, id: 'variant1' }] }, catalogue, example).document,
      'open',
    );
    removeVariant(store, 'variant1');
    addVariant(store);
    expect(store.document.variants.map((v) => v.id)).toEqual(['variant2', 'variant3']);
  });
  it('stops with a sentence at as many as a notebook keeps', () => {
    const store = opened(example);
    for (let i = 0; i < 23; i++) expect(addVariant(store)).toBeNull();
    expect(names(store).join('')).toBe('ABCDEFGHIJKLMNOPQRSTUVWX');
    const full = store.document;
    expect(addVariant(store)).toMatch(/^A notebook holds at most 24 variants\. Remove one first\.$/);
    expect(store.document).toBe(full);
    const { document, repairs } = restore(JSON.parse(JSON.stringify(full)), catalogue, example);
    expect([repairs, document]).toEqual([[], full]);
  });
});

describe('renaming a variant', () => {
  it('is one step, and tidies spaces', () => {
    const store = opened(scenario('two-cams'));
    expect(renameVariant(store, 'late', '  288°   cam ')).toBeNull();
    expect(names(store)).toEqual(['Early cam', '288° cam']);
    isOneStep(store, 'Renamed Late cam to 288° cam');
  });
  it.each([
    ['nothing', ' ', /at least one letter/],
    ['the name of another', ' early CAM', /^Another variant is called “Early cam”\./],
    ['more than 60 characters', 'x'.repeat(61), /at most 60 characters/],
  ])('to %s is refused in a sentence', (_, name, why) => {
    const store = opened(scenario('two-cams'));
    const before = store.document;
    const said = renameVariant(store, 'late', name);
    expect(said).toMatch(why);
    expect(said).toMatch(sentence);
    expect(store.document).toBe(before);
  });
  it('to what it is called already is no step, and to its own name in capitals is one', () => {
    const store = opened(scenario('two-cams'));
    expect(renameVariant(store, 'late', 'Late cam')).toBeNull();
    expect(store.canUndo).toBeNull();
    expect(renameVariant(store, 'late', 'LATE CAM')).toBeNull();
    expect(names(store)).toEqual(['Early cam', 'LATE CAM']);
  });
});

/** Three cams: the two of the scenario, and a copy of the late one that is later still. */
function three(): Store {
  const store = opened(scenario('two-cams'), 'late');
  addVariant(store);
  set(store, 'intakeDuration', 5.3);
  return store;
}

describe('removing a variant', () => {
  it('looks at the one that takes its place, and at the last where it was the last', () => {
    const store = three();
    choose(store, 'Early cam');
    removeVariant(store, 'early');
    expect([names(store), chosen(store)]).toEqual([['Late cam', 'C'], 'Late cam']);
    isOneStep(store, 'Removed Early cam');
    const other = three();
    removeVariant(other, of(other, 'C').id);
    expect([names(other), chosen(other)]).toEqual([['Early cam', 'Late cam'], 'Late cam']);
  });
  it('that is not looked at leaves what is', () => {
    const store = three();
    const ratio = figureOf(store, 'dynamicRatio');
    removeVariant(store, 'early');
    expect(chosen(store)).toBe('C');
    expect(figureOf(store, 'dynamicRatio')).toBe(ratio);
  });
  it('brings it back with what it held', () => {
    const store = three();
    const before = store.document;
    removeVariant(store, 'late');
    store.undo();
    expect(store.document).toEqual(before);
  });
  it('of the last two, the notebook is the one that is left; what the other held is nowhere', () => {
    const store = opened(scenario('two-cams'), 'early');
    set(store, 'chamberVolume', 50e-6);
    choose(store, 'Late cam');
    const { held } = layered(store.document);
    const late = shown(store);
    choose(store, 'Early cam');
    expect(shown(store)).not.toEqual(late);
    removeVariant(store, 'early');
    expect(store.document).toMatchObject({ variants: [], chosen: null, held });
    expect(shown(store)).toEqual(late);
    isOneStep(store, 'Removed Early cam: the notebook is Late cam now');
  });
  it('that was alone leaves the notebook itself, as it was', () => {
    const cams = scenario('two-cams');
    const store = opened({ ...cams, variants: cams.variants.slice(0, 1), chosen: 'early' });
    removeVariant(store, 'early');
    expect(store.document).toEqual({ ...cams, variants: [], chosen: null });
  });
  it('that is not there does nothing', () => {
    const store = three();
    const before = store.document;
    removeVariant(store, 'nobody');
    moveVariant(store, 'nobody', 1);
    keepOnly(store, 'nobody');
    expect(renameVariant(store, 'nobody', 'X')).toBeNull();
    expect(store.document).toBe(before);
  });
});

describe('keeping only one variant', () => {
  it('makes the notebook what it was, holds and what is let go of included, and nothing that is shown changes', () => {
    const store = three();
    store.hold(cellOf('clearanceVolume'), 80e-6, { what: 'hold' });
    store.letGo(cellOf('deckClearance'), { what: 'let go' });
    const before = shown(store);
    keepOnly(store, of(store, 'C').id);
    expect(store.document).toMatchObject({ variants: [], chosen: null });
    expect(store.document.held).toEqual({ clearanceVolume: 80e-6 });
    expect(shown(store)).toEqual(before);
    isOneStep(store, 'Kept only C');
  });
  it('leaves out what is no different from where the notebook starts', () => {
    const store = opened(example);
    set(store, 'bore', 0.1);
    addVariant(store);
    set(store, 'bore', inputOf('bore').initial);
    keepOnly(store, of(store, 'B').id);
    expect(store.document.inputs).toEqual(example.inputs);
  });
});

describe('moving a variant', () => {
  it('changes the order alone, one step each, and stops at the ends', () => {
    const store = three();
    const id = of(store, 'C').id;
    moveVariant(store, id, -1);
    expect([names(store), chosen(store)]).toEqual([['Early cam', 'C', 'Late cam'], 'C']);
    isOneStep(store, 'Moved C to the left');
    moveVariant(store, id, -5);
    expect(names(store)).toEqual(['C', 'Early cam', 'Late cam']);
    moveVariant(store, id, -1);
    store.undo();
    expect(names(store)).toEqual(['Early cam', 'C', 'Late cam']);
    moveVariant(store, 'early', 1);
    expect(store.canUndo).toBe('Moved Early cam to the right');
  });
});
