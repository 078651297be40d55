import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { roomOf } from '../../cells/index.ts';
import { type Cell, drain, type Input } from '../../src/graph/cell.ts';
import type { Rows, Table } from '../../src/graph/kind.ts';
import { NotSettled } from '../../src/graph/snapshot.ts';
import { Impossible } from '../../src/graph/state.ts';
import { sweepSteps } from '../../src/graph/sweep.ts';
import { type Document, layered } from '../../src/notebook/document.ts';
import { restore } from '../../src/notebook/restore.ts';
import { Store } from '../../src/notebook/store.ts';
import { addVariant, keepOnly, moveVariant, removeVariant, renameVariant } from '../../src/notebook/variants.ts';
import * as u from '../../src/units/unit.ts';
import {
  catalogue,
  cellOf,
  example,
  figureOf,
  inputOf,
  opened,
  quick,
  scenario,
  scenarios,
  valueOf,
} from './notebooks.ts';

const edit = (what: string, gesture?: unknown) => ({ what, ...(gesture === undefined ? {} : { gesture }) });
const degrees = (n: number): number => u.si(n, u.degree);
const set = (store: Store, id: string, value: unknown, gesture?: unknown): void =>
  store.set([[inputOf(id), value]], edit(id, gesture));
const put = (store: Store, id: string, value: unknown, mover?: number): void =>
  store.put(cellOf(id), value, edit(id), mover);
const text = (document: Document): string => JSON.stringify(document);
/** A document apart from where one looks, and from the order of its keys. */
const apart = (document: Document): string =>
  JSON.stringify({ ...document, chosen: null }, (_, part: unknown) =>
    typeof part === 'object' && part !== null && !Array.isArray(part)
      ? Object.fromEntries(Object.entries(part).toSorted(([a], [b]) => (a < b ? -1 : 1)))
      : part,
  );

describe('setting an input', () => {
  it('keeps only what differs from the base', () => {
    const store = opened(example);
    set(store, 'bore', 0.1);
    expect(store.document.inputs).toEqual({ bore: 0.1 });
    set(store, 'bore', inputOf('bore').initial);
    expect(store.document.inputs).toEqual({});
    expect(text(store.document)).toBe(text(example));
  });
  it('in a variant keeps only what differs from the document', () => {
    const store = opened(scenario('two-cams'), 'late');
    const { inputs } = store.document;
    set(store, 'chamberVolume', 70e-6);
    const late = () => store.document.variants[1]!.inputs;
    expect(store.document.inputs).toEqual(inputs);
    expect(late().chamberVolume).toBe(70e-6); // the base's own value differs from the document's
    set(store, 'chamberVolume', 65.5e-6);
    expect('chamberVolume' in late()).toBe(false);
    set(store, 'bore', inputOf('bore').initial);
    expect('bore' in late()).toBe(false);
  });
  it('in the document shows through in the variants that say nothing of it', () => {
    const store = opened(scenario('two-cams'), null);
    set(store, 'bore', 0.1);
    set(store, 'intakeDuration', degrees(300));
    store.choose('late');
    expect(valueOf(store, 'bore')).toBe(0.1);
    expect(valueOf(store, 'intakeDuration')).toBe(degrees(294));
  });
  it('of several at once is one step', () => {
    const store = opened(example);
    store.set(
      [
        [inputOf('bore'), 0.1],
        [inputOf('stroke'), 0.09],
      ],
      edit('paste'),
    );
    expect(store.canUndo).toBe('paste');
    store.undo();
    expect(text(store.document)).toBe(text(example));
  });
  it('to “not given” in a variant stands, although the document gives it', () => {
    const store = opened(scenario('two-cams'), null);
    set(store, 'deckHeight', 0.23);
    store.choose('late');
    expect(valueOf(store, 'deckHeight')).toBe(0.23);
    set(store, 'deckHeight', null);
    expect(store.document.variants[1]!.inputs.deckHeight).toBeNull();
    expect(valueOf(store, 'deckHeight')).toBeNull();
    const { document } = restore(JSON.parse(text(store.document)), catalogue, example);
    expect(valueOf(opened(document), 'deckHeight')).toBeNull();
    store.choose('early');
    expect(valueOf(store, 'deckHeight')).toBe(0.23);
  });
  it('to what it is already is no step', () => {
    const store = opened(example);
    set(store, 'bore', inputOf('bore').initial);
    expect(store.canUndo).toBeNull();
  });
  it('out of what physics allows faults what reads it, in words, and keeps the figure', () => {
    const store = opened(example);
    set(store, 'bore', 3);
    expect(store.document.inputs.bore).toBe(3);
    expect(store.state(cellOf('dynamicRatio'))).toMatchObject({ is: 'fault', fault: { at: 'bore', about: 'bore' } });
    store.undo();
    expect(figureOf(store, 'dynamicRatio')).toBe(figureOf(opened(example), 'dynamicRatio'));
  });
});

describe('a drag', () => {
  it('is one step, and answers follow each of its moves', () => {
    const store = opened(example);
    const drag = {};
    const ratios = [270, 272, 274, 276].map((duration) => {
      set(store, 'intakeDuration', degrees(duration), drag);
      return figureOf(store, 'dynamicRatio');
    });
    expect(ratios).toEqual(ratios.toSorted((a, b) => b - a));
    expect(new Set(ratios).size).toBe(4);
    expect(store.undo()).toEqual({ place: null, what: 'intakeDuration' });
    expect(text(store.document)).toBe(text(example));
    expect(figureOf(store, 'dynamicRatio')).toBe(ratios[0]);
    expect(store.undo()).toBeNull();
    store.redo();
    expect(figureOf(store, 'dynamicRatio')).toBe(ratios[3]);
  });
});

describe('holding a computed value', () => {
  it('makes its readers read it, says what it would be, and lets go again', () => {
    const store = opened(example);
    const before = figureOf(store, 'clearanceVolume');
    store.hold(cellOf('clearanceVolume'), 90e-6, edit('hold'));
    expect(figureOf(store, 'clearanceVolume')).toBe(90e-6);
    expect(figureOf(store, 'staticRatio')).toBeCloseTo(1 + figureOf(store, 'sweptVolume') / 90e-6, 12);
    expect(store.live.computed(cellOf('clearanceVolume'))).toMatchObject({ is: 'ready', value: before });
    store.letGo(cellOf('clearanceVolume'), edit('let go'));
    expect(figureOf(store, 'clearanceVolume')).toBe(before);
    expect(text(store.document)).toBe(text(example));
    store.undo();
    expect(figureOf(store, 'clearanceVolume')).toBe(90e-6);
  });
  it('in a variant holds there alone', () => {
    const store = opened(scenario('two-cams'), 'late');
    store.hold(cellOf('clearanceVolume'), 90e-6, edit('hold'));
    expect(store.document.variants.map((v) => v.held)).toEqual([{}, { clearanceVolume: 90e-6 }]);
    store.choose('early');
    expect(figureOf(store, 'clearanceVolume')).not.toBe(90e-6);
    store.choose('late');
    expect(figureOf(store, 'clearanceVolume')).toBe(90e-6);
  });
  it('of the document is let go in a variant alone, and held there again without a trace', () => {
    const document = scenario('two-cams');
    const store = opened(document, 'late');
    const deck = cellOf('deckClearance');
    store.letGo(deck, edit('let go'));
    expect(store.document.held).toEqual(document.held);
    expect(store.document.variants[1]!.held).toEqual({ deckClearance: null });
    expect(layered(store.document).held).toEqual({});
    expect(store.state(deck)).toMatchObject({ is: 'fault', fault: { at: 'deckClearance' } });
    store.choose('early');
    expect(figureOf(store, 'deckClearance')).toBe(document.held.deckClearance);
    store.choose('late');
    store.hold(deck, document.held.deckClearance, edit('hold'));
    expect(store.document.variants[1]!.held).toEqual({});
    expect(figureOf(store, 'deckClearance')).toBe(document.held.deckClearance);
  });
  it('let go in a variant survives a file', () => {
    const store = opened(scenario('two-cams'), 'late');
    store.letGo(cellOf('deckClearance'), edit('let go'));
    const { document, repairs } = restore(JSON.parse(text(store.document)), catalogue, example);
    expect(repairs).toEqual([]);
    expect(text(document)).toBe(text(store.document));
  });
});

describe('reset', () => {
  it('brings one field back to where the notebook was opened, as a step', () => {
    const store = opened(scenario('milled-four'));
    const start = figureOf(store, 'dynamicRatio');
    set(store, 'milling', 0);
    set(store, 'bore', 0.1);
    expect(store.isChanged(inputOf('milling'))).toBe(true);
    store.reset(inputOf('milling'), edit('reset'));
    expect(store.isChanged(inputOf('milling'))).toBe(false);
    expect(store.document.inputs).toEqual({ ...scenario('milled-four').inputs, bore: 0.1 });
    store.undo();
    expect(valueOf(store, 'milling')).toBe(0);
    store.undo();
    store.undo();
    expect(figureOf(store, 'dynamicRatio')).toBe(start);
  });
  it('brings back what was held, and lets go of what was not', () => {
    const document = scenario('milled-four');
    const store = opened(document);
    const [deck, static_] = [cellOf('deckClearance'), cellOf('clearanceVolume')];
    store.hold(deck, 0, edit('hold'));
    store.hold(static_, 80e-6, edit('hold'));
    expect([deck, static_].map((c) => store.isChanged(c))).toEqual([true, true]);
    store.reset(deck, edit('reset'));
    store.reset(static_, edit('reset'));
    expect(text(store.document)).toBe(text(document));
    expect([deck, static_].map((c) => store.isChanged(c))).toEqual([false, false]);
  });
  it('in a variant brings back what the variant had, or the document through it', () => {
    const document = scenario('two-cams');
    const store = opened(document, 'late');
    for (const id of ['intakeDuration', 'bore', 'chamberVolume']) {
      set(store, id, (inputOf(id).initial as number) * 1.01);
      store.reset(inputOf(id), edit('reset'));
      expect(store.isChanged(inputOf(id)), id).toBe(false);
    }
    store.letGo(cellOf('deckClearance'), edit('let go'));
    store.reset(cellOf('deckClearance'), edit('reset'));
    store.hold(cellOf('deckClearance'), 0, edit('hold'));
    store.reset(cellOf('deckClearance'), edit('reset'));
    expect(text(store.document)).toBe(text({ ...document, chosen: 'late' }));
  });
  it('of everything is one step', () => {
    const document = scenario('two-cams');
    const store = opened(document, 'early');
    set(store, 'bore', 0.1);
    store.choose('late');
    set(store, 'bore', 0.11);
    store.change(edit('title'), (draft) => void (draft.title = 'Another'));
    store.hold(cellOf('clearanceVolume'), 90e-6, edit('hold'));
    const before = text(store.document);
    store.resetAll();
    expect(text(store.document)).toBe(text(document));
    store.undo();
    expect(text(store.document)).toBe(before);
    expect(figureOf(store, 'clearanceVolume')).toBe(90e-6);
    store.redo();
    expect(text(store.document)).toBe(text(document));
    expect(store.undo()).toEqual({ place: null, what: 'Reset everything' });
  });
});

describe('opening another notebook', () => {
  it('is a step: one back returns to this one, and reset means this one again', () => {
    const [mine, other] = [scenario('milled-four'), scenario('mountain-six')];
    const store = opened(mine);
    const start = figureOf(store, 'dynamicRatio');
    set(store, 'milling', 0);
    store.open(other, 'Open Mountain six');
    expect(text(store.opened)).toBe(text(other));
    expect(figureOf(store, 'dynamicRatio')).toBe(figureOf(opened(other), 'dynamicRatio'));
    expect([...quick].filter((c) => store.isChanged(c))).toEqual([]);
    set(store, 'bore', 0.1);
    store.reset(inputOf('bore'), edit('reset'));
    expect(text(store.document)).toBe(text(other));
    store.undo();
    store.undo();
    expect(store.undo()).toEqual({ place: null, what: 'Open Mountain six' });
    expect(text(store.opened)).toBe(text(mine));
    expect(valueOf(store, 'milling')).toBe(0);
    expect(store.isChanged(inputOf('milling'))).toBe(true);
    store.resetAll();
    expect(figureOf(store, 'dynamicRatio')).toBe(start);
    expect(text(store.document)).toBe(text(mine));
  });
});

describe('moving the intake closing', () => {
  const entries = ['lobes', 'events'] as const;

  it.each(entries)('moves the cam, known by its %s, and all four events with it', (camEntry) => {
    const store = opened(example);
    set(store, 'camEntry', camEntry);
    put(store, 'intakeClosing', degrees(65));
    expect(store.document.inputs).toEqual({
      ...(camEntry === 'events' ? { camEntry } : {}),
      camAdvance: expect.any(Number),
    });
    expect(valueOf(store, 'camAdvance')).toBeCloseTo(degrees(-4), 12);
    const events = ['intakeOpening', 'intakeClosing', 'exhaustOpening', 'exhaustClosing'].map((id) =>
      figureOf(store, id),
    );
    [25, 65, 69, 29].forEach((event, i) => expect(events[i]).toBeCloseTo(degrees(event), 12));
  });
  it('moves both durations with the other mover, and leaves the centerline', () => {
    const store = opened(example);
    put(store, 'intakeClosing', degrees(65), 1);
    expect(Object.keys(store.document.inputs).toSorted()).toEqual(['intakeDuration', 'intakeDuration050']);
    expect(valueOf(store, 'intakeDuration')).toBeCloseTo(degrees(278), 12);
    expect(valueOf(store, 'intakeDuration050')).toBeCloseTo(degrees(228), 12);
    expect(figureOf(store, 'intakeClosing')).toBeCloseTo(degrees(65), 12);
    expect(figureOf(store, 'intakeOpening')).toBeCloseTo(degrees(33), 12);
    expect(figureOf(store, 'intakeClosing050')).toBeCloseTo(degrees(40), 12);
  });
  it.each([0, 1])('there and back is where it was, mover %i', (mover) => {
    const store = opened(example);
    put(store, 'intakeClosing', degrees(70), mover);
    put(store, 'intakeClosing', degrees(61), mover);
    for (const id of ['camAdvance', 'intakeDuration', 'intakeDuration050', 'dynamicRatio'])
      expect(Math.abs(figureOf(store, id) - figureOf(opened(example), id)), id).toBeLessThan(1e-13);
  });
  it('is one step, in the variant it was made in', () => {
    const store = opened(scenario('two-cams'), 'late');
    put(store, 'intakeClosing', degrees(65));
    expect(store.document.variants[1]!.inputs.camAdvance).toBeCloseTo(degrees(10), 12);
    expect('camAdvance' in store.document.inputs).toBe(false);
    store.undo();
    expect(text(store.document)).toBe(text({ ...scenario('two-cams'), chosen: 'late' }));
  });
  it('farther than the cam can go is refused in words, and nothing is written', () => {
    const store = opened(example);
    for (const closing of [degrees(300), NaN, Infinity])
      expect(() => put(store, 'intakeClosing', closing)).toThrow(Impossible);
    // Events as read with a wheel do not follow the durations.
    set(store, 'camEntry', 'events');
    expect(() => put(store, 'intakeClosing', degrees(65), 1)).toThrow(Impossible);
    store.undo();
    expect(store.canUndo).toBeNull();
    expect(text(store.document)).toBe(text(example));
  });
  it('is a new held value while it is held', () => {
    const store = opened(example);
    store.hold(cellOf('intakeClosing'), degrees(60), edit('hold'));
    put(store, 'intakeClosing', degrees(70));
    expect(store.document.inputs).toEqual({});
    expect(store.document.held.intakeClosing).toBe(degrees(70));
    expect(figureOf(store, 'dynamicRatio')).toBeLessThan(figureOf(opened(example), 'dynamicRatio'));
  });
  it('is the only way: a computed value that nothing moves is refused in words', () => {
    const store = opened(example);
    expect(() => put(store, 'dynamicRatio', 8)).toThrow(Impossible);
    expect(() => put(store, 'intakeClosing', degrees(65), 2)).toThrow(Impossible);
    expect(text(store.document)).toBe(text(example));
  });

  it.each(entries)('a sweep of it says at each point what dragging there says, cam known by its %s', (camEntry) => {
    const read = ['dynamicRatio', 'strokeLost', 'crankingPressure', 'overlap', 'fuelVerdict'].map(cellOf);
    const store = opened(scenario('milled-four'));
    set(store, 'camEntry', camEntry);
    const xs = Array.from({ length: 21 }, (_, i) => degrees(40 + 2 * i));
    const lines = drain(sweepSteps(store.snapshot(), { vary: cellOf('intakeClosing'), xs, read }))[0]!;
    xs.forEach((x, i) => {
      const dragged = opened(store.document);
      put(dragged, 'intakeClosing', x);
      read.forEach((cell, j) => {
        const value = valueOf(dragged, cell.id);
        const live = typeof value === 'number' ? value : (value as { readonly value: number }).value;
        expect(Math.abs(lines[j]![i]! / live - 1), `${cell.id} at ${i}`).toBeLessThan(1e-11);
      });
    });
  });
});

it('a sweep of any input, and of any held value, says at each point what setting it says', () => {
  const read = [cellOf('dynamicRatio'), cellOf('crankingPressure')];
  const varied = quick.filter((c) => c.kind.name === 'scalar' && c.slider !== undefined);
  expect(varied.length).toBeGreaterThan(50);
  for (const cell of varied) {
    const [low, high] = cell.slider!;
    const store = opened(scenario('mountain-six'));
    if (cell.role !== 'input') store.hold(cell, figureOf(store, cell.id), edit('hold'));
    const xs = [low, (2 * low + high) / 3, high];
    const lines = drain(sweepSteps(store.snapshot(), { vary: cell, xs, read }))[0]!;
    xs.forEach((x, i) => {
      put(store, cell.id, x);
      read.forEach((answer, j) => {
        const state = store.state(answer);
        if (state.is === 'ready') expect(lines[j]![i], `${answer.id} at ${cell.id} = ${x}`).toBe(state.value);
        else expect([state.is, lines[j]![i]], `${answer.id} at ${cell.id} = ${x}`).toEqual(['fault', NaN]);
      });
    });
  }
});

describe('something typed that is no value', () => {
  const typo = 'Write a length, such as 4.07 in.';
  it('faults its field and what reads it, which keep their last values; nothing is written', () => {
    const store = opened(example);
    const last = figureOf(store, 'dynamicRatio');
    const free = figureOf(store, 'airDensity');
    store.draft(inputOf('bore'), typo);
    expect(store.draftFault(inputOf('bore'))).toBe(typo);
    expect(store.state(inputOf('bore'))).toEqual({
      is: 'fault',
      last: inputOf('bore').initial,
      fault: { at: 'bore', about: 'bore', message: [typo] },
    });
    expect(store.state(cellOf('dynamicRatio'))).toMatchObject({ is: 'fault', last, fault: { at: 'bore' } });
    expect(figureOf(store, 'airDensity')).toBe(free);
    expect(text(store.document)).toBe(text(example));
    expect(store.canUndo).toBeNull();
  });
  it('stays while other fields change, and goes with the next value, undo, reset or another variant', () => {
    const bore = inputOf('bore');
    const ends: readonly ((store: Store) => void)[] = [
      (store) => store.draft(bore, null),
      (store) => set(store, 'bore', 0.1),
      (store) => store.reset(bore, edit('reset')),
      (store) => store.undo(),
      (store) => store.resetAll(),
      (store) => store.choose('late'),
      (store) => store.open(scenario('milled-four'), 'open'),
    ];
    for (const end of ends) {
      const store = opened(scenario('two-cams'));
      store.draft(bore, typo);
      set(store, 'stroke', 0.091);
      expect(store.state(cellOf('dynamicRatio')).is).toBe('fault');
      end(store);
      expect(store.draftFault(bore)).toBe(undefined);
      expect(store.state(cellOf('dynamicRatio')).is).toBe('ready');
    }
  });
  it('in one field does not keep another from being read, and both must be mended', () => {
    const store = opened(example);
    store.draft(inputOf('bore'), typo);
    store.draft(inputOf('chamberVolume'), typo);
    store.draft(inputOf('bore'), null);
    expect(store.state(cellOf('sweptVolume')).is).toBe('ready');
    expect(store.state(cellOf('staticRatio'))).toMatchObject({ is: 'fault', fault: { at: 'chamberVolume' } });
  });
});

describe('looking', () => {
  it('at anything, in any units and any order, never changes a value or the document', () => {
    const document = scenario('two-cams');
    const store = opened(document);
    const before = text(store.document);
    const figures = new Map(quick.map((c) => [c.id, store.state(c)]));
    for (const cell of quick) {
      store.watch([cell], () => {})();
      store.startValue(cell);
      store.isChanged(cell);
      store.spread(cell);
      store.systemOf(cell);
      const state = store.state(cell);
      if (state.is === 'ready') for (const system of ['us', 'si'] as const) cell.kind.text(state.value, system);
      if (cell.role !== 'input') store.live.computed(cell);
    }
    drain(
      sweepSteps(store.snapshot(), { vary: cellOf('intakeClosing'), xs: [0.5, 1], read: [cellOf('dynamicRatio')] }),
    );
    store.choose('late');
    store.choose('early');
    expect(text(store.document)).toBe(before);
    expect(store.canUndo).toBeNull();
    for (const cell of quick) expect(store.state(cell), cell.id).toEqual(figures.get(cell.id));
  });
  it('calls back those who watch what changed, and nobody after they left', () => {
    const store = new Store({ catalogue, open: { document: example, opened: example } });
    const heard: string[] = [];
    const leave = store.watch([cellOf('sweptVolume')], () => heard.push('swept'));
    store.watch([cellOf('airDensity')], () => heard.push('density'));
    store.watchAll(() => heard.push('all'));
    heard.length = 0;
    set(store, 'bore', 0.1);
    expect(heard).toEqual(['swept', 'all']);
    leave();
    heard.length = 0;
    set(store, 'bore', 0.101);
    expect(heard).toEqual(['all']);
  });
});

it('the ± of a result is the root of the sum of squares of its parts, follows the tolerances, and is remembered', () => {
  const store = opened(example);
  const [ratio, chamber] = [cellOf('dynamicRatio'), cellOf('chamberVolume')];
  const first = store.spread(ratio)!;
  expect(first.plusMinus).toBeCloseTo(Math.hypot(...first.shares.map((share) => share.change)), 15);
  expect(store.spread(ratio)).toBe(first);
  store.change(edit('±'), (draft) => void (draft.tolerances = { chamberVolume: 1e-6 }));
  const second = store.spread(ratio)!;
  expect(second.shares.map((share) => share.cell)).toEqual([chamber]);
  // d((V + c) / c) / dc = −V / c², for a cm³
  const slope =
    (figureOf(store, 'trappedVolume') - figureOf(store, 'clearanceVolume')) / figureOf(store, 'clearanceVolume') ** 2;
  expect(second.plusMinus).toBeCloseTo(slope * 1e-6, 4);
  store.change(edit('±'), (draft) => void (draft.tolerances = {}));
  expect(store.spread(ratio)).toEqual({ plusMinus: 0, shares: [] });
});

// ------------------------------------------------------------------------------------------------ any order of edits

/** What a store shows of each cell, apart from the last good values it remembers. */
function shown(store: Store, cell: Cell): string {
  const state = store.state(cell);
  return JSON.stringify(
    state.is === 'ready'
      ? [store.live.isHeld(cell), cell.kind.save(state.value)]
      : [store.live.isHeld(cell), state.is, state.is === 'fault' ? state.fault : null],
  );
}
const afresh = new Map<string, readonly string[]>();
/** The page shows what a notebook opened just now on the same document shows. */
function insistFresh(store: Store, looked: readonly Cell[], when: string): void {
  const key = `${looked.length} ${text(store.document)}`;
  let other = afresh.get(key);
  if (!other) {
    const fresh = opened(store.document, store.document.chosen, looked);
    other = looked.map((cell) => shown(fresh, cell));
  }
  // What was asked for last is kept: the starts come again and again.
  afresh.delete(key);
  afresh.set(key, other);
  if (afresh.size > 50) afresh.delete(afresh.keys().next().value!);
  looked.forEach((cell, i) => {
    const mine = shown(store, cell);
    if (mine !== other[i]) throw new Error(`${when}: ${cell.id} is ${mine}, and afresh ${other[i]}`);
  });
}

/** What is left behind restores without a repair, to the same document. */
function insistValid(store: Store): void {
  const { document, repairs } = restore(JSON.parse(text(store.document)), catalogue, example);
  if (repairs.length > 0) throw new Error(repairs.join(' '));
  if (text(document) !== text(store.document))
    throw new Error(`${text(store.document)}\ncomes back as\n${text(document)}`);
}

type Act = (store: Store, gesture: unknown) => void;
const figures = quick.filter((c) => c.kind.name === 'scalar');
const inputs = [...catalogue.cells.values()].filter((c): c is Input => c.role === 'input');
const derived = figures.filter((c) => c.role !== 'input');
const pick = <T>(list: readonly T[]) => fc.constantFrom(...list);
const within = ({ slider, hard }: Cell & { hard?: readonly [number, number] }, t: number): number => {
  const [low, high] = slider ?? hard ?? [0, 1];
  return u.tidy(low + (high - low) * t);
};
/** No row, one or two. */
const rowsOf = ({ columns }: Table, t: number): Rows =>
  [0.3, 0.6].filter((from) => t > from).map((from) => columns.map((_, i) => u.tidy((t + from) * (i + 1))));
const typed = fc.tuple(pick(inputs), fc.double({ min: -0.2, max: 1.2, noNaN: true })).map(([input, t]): Act => {
  const { kind } = input;
  const options = (kind as { options?: readonly { id: string }[] }).options;
  const value = options
    ? options[Math.floor(Math.abs(t) * 7) % options.length]!.id
    : kind.name === 'optional' && t < 0.3
      ? null
      : kind.name === 'table'
        ? rowsOf(kind as unknown as Table, t)
        : within(input, t);
  return (store, gesture) => store.set([[input, value]], edit(`set ${input.id}`, gesture));
});
const held = fc
  .tuple(pick(derived), fc.double({ min: 0.9, max: 1.1, noNaN: true }))
  .map(([cell, t]): Act => (store, gesture) => {
    const state = store.state(cell);
    store.hold(cell, state.is === 'ready' ? (state.value as number) * t : t, edit(`hold ${cell.id}`, gesture));
  });
const moved = fc
  .tuple(fc.double({ min: 20, max: 100, noNaN: true }), fc.boolean())
  .map(([closing, duration]): Act => (store, gesture) => {
    try {
      store.put(cellOf('intakeClosing'), degrees(closing), edit('closing', gesture), duration ? 1 : 0);
    } catch (error) {
      if (!(error instanceof Impossible || error instanceof NotSettled)) throw error;
    }
  });
const anyone = ({ document }: Store, n: number): string | null =>
  [null, ...document.variants.map((v) => v.id)][n % (document.variants.length + 1)]!;
const variant: fc.Arbitrary<Act> = fc.tuple(fc.nat({ max: 15 }), fc.nat({ max: 30 })).map(([n, which]) => (store) => {
  const id = anyone(store, which);
  if (n < 6) return store.choose(id);
  if (n < 10) return void addVariant(store);
  if (n < 11) return void renameVariant(store, id ?? '', ['', ' B ', 'b', 'Late cam', 'x'.repeat(61)][which % 5]!);
  if (n < 13) return moveVariant(store, id ?? '', (which % 5) - 2);
  if (n < 15) return removeVariant(store, id ?? '');
  keepOnly(store, id ?? '');
});
const other: fc.Arbitrary<Act> = fc.oneof(
  pick(derived).map(
    (cell): Act =>
      (store, gesture) =>
        store.letGo(cell, edit(`let go ${cell.id}`, gesture)),
  ),
  pick([...inputs, ...derived]).map(
    (cell): Act =>
      (store, gesture) =>
        store.reset(cell, edit(`reset ${cell.id}`, gesture)),
  ),
  fc.constant<Act>((store) => store.resetAll()),
  pick(Object.keys(scenarios)).map(
    (name): Act =>
      (store) =>
        store.open(scenario(name), `open ${name}`),
  ),
  pick(inputs).map(
    (input): Act =>
      (store) =>
        store.draft(input, 'Write a figure.'),
  ),
  pick(['us', 'si'] as const).map(
    (system): Act =>
      (store, gesture) =>
        store.change(edit('units', gesture), (draft) => {
          draft.units.system = system;
          draft.title = `In ${system}`;
        }),
  ),
);
const back: Act = (store) => void store.undo();
const forth: Act = (store) => void store.redo();
const act = fc.oneof(
  { weight: 6, arbitrary: typed },
  { weight: 3, arbitrary: held },
  { weight: 2, arbitrary: moved },
  { weight: 3, arbitrary: variant },
  { weight: 3, arbitrary: other },
  { weight: 4, arbitrary: fc.constantFrom(back, back, forth) },
);

/** What soaks draw more of. */
const times = process.env['SOAK'] ? 10 : 1;
const orders = 10_000 * times;
const patience = 150_000 * times; // a loaded machine is no fault
/** One in so many is long, looks at all that is computed at once, and is taken back and done again step by step. */
const wholly = 50;
/** What is computed at once, without valve motion and breathing: their curves take nearly all of the time. */
const light = quick.filter((cell) => !['valves', 'breathing', 'output'].includes(roomOf.get(cell.id)!));
const acts = (minLength: number, maxLength: number) =>
  fc.array(fc.tuple(act, fc.nat({ max: 3 })), { minLength, maxLength, size: 'max' });
const starts = Object.keys(scenarios).map((name) => {
  const document = scenario(name);
  return { document, said: apart(document) };
});
type Start = (typeof starts)[number];
const start = fc.nat({ max: starts.length - 1 }).map((i) => starts[i]!);

describe(`${orders} orders of edits, holds, variants, undo and redo`, () => {
  let [edits, variants] = [0, 0];
  function done({ document }: Start, list: readonly (readonly [Act, number])[], looked: readonly Cell[]): Store {
    const store = opened(document, document.chosen, looked);
    const gestures = [undefined, undefined, {}, {}];
    for (const [each, gesture] of list) each(store, gestures[gesture]);
    for (const input of inputs) if (store.draftFault(input) !== undefined) store.draft(input, null);
    insistValid(store);
    variants += store.document.variants.length;
    return store;
  }
  function takenBack(store: Store, { said }: Start): number {
    let steps = 0;
    while (store.canUndo !== null) {
      store.undo();
      steps++;
    }
    if (apart(store.document) !== said) throw new Error(`${apart(store.document)}\nis not the start\n${said}`);
    if (apart(store.opened) !== said) throw new Error('the start is not where reset goes back to');
    return steps;
  }

  it(
    'leave a valid document and a page that shows what it says, and can all be taken back',
    () => {
      const short = orders - orders / wholly;
      let run = 0;
      fc.assert(
        fc.property(start, acts(1, 5), (from, list) => {
          const store = done(from, list, light);
          // Where it ends or where it began: every second order looks at the other of the two.
          const atEnd = run++ % 2 === 0;
          if (atEnd) insistFresh(store, light, 'after the edits');
          edits += takenBack(store, from);
          if (!atEnd) insistFresh(store, light, 'after undoing everything');
        }),
        { numRuns: short, seed: 20260705 },
      );
      expect(run).toBe(short);
      expect(edits).toBeGreaterThan(1.2 * short);
      expect(variants).toBeGreaterThan(short / 2);
    },
    patience,
  );

  it(
    'can be done again just so, whatever is looked at',
    () => {
      fc.assert(
        fc.property(start, acts(1, 14), (from, list) => {
          const store = done(from, list, quick);
          insistFresh(store, quick, 'after the edits');
          const end = apart(store.document);
          const ahead: string[] = [];
          while (store.canRedo !== null) ahead.push(store.redo()!.what);
          for (const _ of ahead) store.undo();
          if (apart(store.document) !== end) throw new Error('redo and undo do not return');

          const steps = takenBack(store, from);
          insistFresh(store, quick, 'after undoing everything');
          for (let i = 0; i < steps; i++) store.redo();
          if (apart(store.document) !== end) throw new Error('redoing everything does not come to the end');
          insistFresh(store, quick, 'after redoing everything');
        }),
        { numRuns: orders / wholly, seed: 20260705 },
      );
    },
    patience,
  );

  it(
    '200 of them in a row are taken back one by one to the very start, and done again to the very end',
    () => {
      fc.assert(
        fc.property(start, acts(900, 900), ({ document }, list) => {
          const store = opened(document, document.chosen, light);
          const seen = [apart(store.document)];
          for (const [each] of list) {
            if (seen.length > 200) break;
            each(store, undefined);
            const now = apart(store.document);
            if (now === seen.at(-1)) continue;
            if (each === back) seen.pop();
            else seen.push(now);
          }
          expect(seen.length).toBe(201);
          // A step may have changed nothing that is told apart, such as opening again what is open.
          const walk = (to: string, step: () => unknown, next: () => unknown): void => {
            const was = apart(store.document);
            do step();
            while (apart(store.document) === was && next() !== null);
            if (apart(store.document) !== to) throw new Error(`${apart(store.document)}\nis not what it was\n${to}`);
          };
          const undo = (): unknown => store.undo();
          const redo = (): unknown => store.redo();
          for (const then of seen.slice(0, -1).toReversed()) walk(then, undo, () => store.canUndo);
          insistFresh(store, light, 'after undoing everything');
          for (const then of seen.slice(1)) walk(then, redo, () => store.canRedo);
          insistFresh(store, light, 'after redoing everything');
        }),
        { numRuns: 6 * times, seed: 20260706, endOnFailure: true },
      );
    },
    patience,
  );
});
