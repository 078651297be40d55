import { describe, expect, it } from 'vitest';
import type { Document } from '../../src/notebook/document.ts';
import { History } from '../../src/notebook/history.ts';
import { example, scenario } from './notebooks.ts';

const open = (document: Document): History => new History({ document, opened: document });
const setBore = (history: History, bore: number, gesture?: unknown): boolean =>
  history.edit(
    ({ document }) => {
      const variant = document.variants.find((v) => v.id === document.chosen);
      (variant ?? document).inputs.bore = bore;
    },
    { what: `bore ${bore}`, place: 'bore', ...(gesture === undefined ? {} : { gesture }) },
  );
const boreOf = ({ document }: History): unknown => document.inputs.bore;

describe('a gesture', () => {
  it('is one step, whatever it passed through', () => {
    const history = open(example);
    const drag = {};
    for (const bore of [0.1, 0.101, 0.102, 0.103]) setBore(history, bore, drag);
    expect(boreOf(history)).toBe(0.103);
    expect(history.undoWhat).toBe('bore 0.103');
    expect(history.undo()).toEqual({ place: 'bore', what: 'bore 0.103' });
    expect(history.document).toEqual(example);
    expect(history.undo()).toBeNull();
    expect(history.redo()).toEqual({ place: 'bore', what: 'bore 0.103' });
    expect(boreOf(history)).toBe(0.103);
  });
  it('that sets several values takes them back in reverse order', () => {
    const history = open(example);
    const paste = {};
    history.edit(({ document }) => void document.variants.push({ id: 'a', name: 'A', inputs: {}, held: {} }), {
      what: 'add',
      gesture: paste,
    });
    history.edit(({ document }) => void (document.variants[0]!.inputs.bore = 0.1), { what: 'set', gesture: paste });
    history.edit(({ document }) => void document.variants.push({ id: 'b', name: 'B', inputs: {}, held: {} }), {
      what: 'add',
      gesture: paste,
    });
    const end = history.document;
    history.undo();
    expect(history.document).toEqual(example);
    history.redo();
    expect(history.document).toEqual(end);
  });
  it('ends where another begins, and edits without one are steps of their own', () => {
    const history = open(example);
    const [first, second] = [{}, {}];
    setBore(history, 0.1, first);
    setBore(history, 0.101, second);
    setBore(history, 0.102, second);
    setBore(history, 0.103);
    setBore(history, 0.104);
    const seen: unknown[] = [];
    while (history.undo()) seen.push(boreOf(history));
    expect(seen).toEqual([0.103, 0.102, 0.1, undefined]);
  });
  it('is over once it was taken back: the same one goes on as a new step', () => {
    const history = open(example);
    const drag = {};
    setBore(history, 0.1, drag);
    history.undo();
    history.redo();
    setBore(history, 0.101, drag);
    history.undo();
    expect(boreOf(history)).toBe(0.1);
  });
  it('does not run on into another variant', () => {
    const history = open(scenario('two-cams'));
    const drag = {};
    setBore(history, 0.1, drag);
    history.choose('late');
    setBore(history, 0.101, drag);
    history.undo();
    expect(history.document.variants.map((v) => v.inputs.bore)).toEqual([0.1, undefined]);
  });
});

describe('undo and redo', () => {
  it('are named after what they take back and bring back', () => {
    const history = open(example);
    expect([history.undoWhat, history.redoWhat]).toEqual([null, null]);
    setBore(history, 0.1);
    setBore(history, 0.101);
    expect([history.undoWhat, history.redoWhat]).toEqual(['bore 0.101', null]);
    history.undo();
    expect([history.undoWhat, history.redoWhat]).toEqual(['bore 0.1', 'bore 0.101']);
    history.undo();
    expect([history.undoWhat, history.redoWhat]).toEqual([null, 'bore 0.1']);
    expect(history.undo()).toBeNull();
  });
  it('a new edit forgets what was taken back; one that changes nothing forgets nothing', () => {
    const history = open(example);
    setBore(history, 0.1);
    history.undo();
    expect(history.edit(() => {}, { what: 'nothing' })).toBe(false);
    expect(history.redoWhat).toBe('bore 0.1');
    setBore(history, 0.105);
    expect(history.redoWhat).toBeNull();
    expect(history.redo()).toBeNull();
    expect(boreOf(history)).toBe(0.105);
  });
  it('go to the variant where it happened, wherever one looks', () => {
    const history = open(scenario('two-cams'));
    setBore(history, 0.1); // in early
    history.choose('late');
    setBore(history, 0.101);
    history.choose(null);
    setBore(history, 0.102);
    history.choose('late');
    const looks: (string | null)[] = [];
    while (history.undo()) looks.push(history.document.chosen);
    expect(looks).toEqual([null, 'late', 'early']);
    history.choose(null);
    const again: (string | null)[] = [];
    while (history.redo()) again.push(history.document.chosen);
    expect(again).toEqual(['early', 'late', null]);
    expect(history.document.variants.map((v) => v.inputs.bore)).toEqual([0.1, 0.101]);
    expect(boreOf(history)).toBe(0.102);
  });
  it('looking at another variant is no step and forgets nothing', () => {
    const history = open(scenario('two-cams'));
    setBore(history, 0.1);
    history.undo();
    history.choose('late');
    expect([history.undoWhat, history.redoWhat]).toEqual([null, 'bore 0.1']);
  });
  it('a variant added and looked at in one step is gone after undo, and looked at after redo', () => {
    const history = open(scenario('two-cams'));
    history.edit(
      ({ document }) => {
        document.variants.push({ id: 'third', name: 'Third', inputs: {}, held: {} });
        document.chosen = 'third';
      },
      { what: 'add' },
    );
    setBore(history, 0.1);
    history.undo();
    expect(history.document.chosen).toBe('third');
    history.undo();
    expect(history.document).toEqual(scenario('two-cams'));
    history.redo();
    expect(history.document.chosen).toBe('third');
  });
  it('a variant removed while it is looked at comes back and is looked at', () => {
    const history = open(scenario('two-cams'));
    history.edit(
      ({ document }) => {
        document.variants = document.variants.filter((v) => v.id !== 'early');
        document.chosen = null;
      },
      { what: 'remove' },
    );
    history.undo();
    expect(history.document).toEqual(scenario('two-cams'));
    history.redo();
    expect(history.document.chosen).toBeNull();
    expect(history.document.variants.map((v) => v.id)).toEqual(['late']);
  });
});

it('reaches five hundred steps back and no further', () => {
  const history = open(example);
  for (let i = 1; i <= 600; i++) setBore(history, i);
  let steps = 0;
  while (history.undo()) steps++;
  expect(steps).toBe(500);
  expect(boreOf(history)).toBe(100);
});

it('another document in the place of this one is a step: what was opened comes and goes with it', () => {
  const [mine, other] = [scenario('milled-four'), scenario('two-cams')];
  const history = open(mine);
  setBore(history, 0.1);
  history.edit(
    (draft) => {
      draft.document = structuredClone(other) as typeof draft.document;
      draft.opened = structuredClone(other) as typeof draft.opened;
    },
    { what: 'open' },
  );
  history.choose('late');
  setBore(history, 0.2);
  expect(history.opened).toEqual(other);
  history.undo();
  expect(history.document).toEqual({ ...other, chosen: 'late' });
  history.undo();
  expect([history.opened, boreOf(history)]).toEqual([mine, 0.1]);
  history.redo();
  expect([history.opened, history.document]).toEqual([other, other]);
});

it('never writes into a document it was given', () => {
  const mine = structuredClone(scenario('two-cams'));
  const before = JSON.stringify(mine);
  const history = open(mine);
  setBore(history, 0.1);
  history.choose(null);
  setBore(history, 0.1);
  history.undo();
  expect(JSON.stringify(mine)).toBe(before);
});
