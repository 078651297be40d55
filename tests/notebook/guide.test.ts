import { describe, expect, it } from 'vitest';
import { answerOf } from '../../src/notebook/guide-answer.ts';
import { type FieldTrial, type GuideStep, readGuide } from '../../src/notebook/guide.ts';
import { aimOf, filled, joined, outcome } from '../../src/notebook/guide-says.ts';
import { pack, unpack } from '../../src/notebook/link.ts';
import { restore } from '../../src/notebook/restore.ts';
import type { Store } from '../../src/notebook/store.ts';
import * as u from '../../src/units/unit.ts';
import scenario from '../../scenarios/two-ratios.json';
import { catalogue, cellOf, example, figureOf, opened } from './notebooks.ts';

const guide = readGuide(scenario.guide, catalogue);
const fresh = (): Store => opened(restore(scenario, catalogue, example).document);
const put = (store: Store, id: string, to: number): void => store.put(cellOf(id), to, { what: id });
/** The step that watches a cell, and its trial. */
function stepWith(id: string): GuideStep & { readonly trial: FieldTrial } {
  const step = guide.steps.find(({ trial }) => trial?.is === 'field' && trial.watch[0]?.cell.id === id);
  return step as GuideStep & { readonly trial: FieldTrial };
}

/**
 * The engine of the file worked out apart, in inches: plane geometry of crank and rod (Heywood eq. 2.5), volumes of
 * cylinders, the U.S. Standard Atmosphere's 14.696 psi at the sea, and a power of 1.25 (common practice, no source).
 */
function byHand({ chamber, closing }: { readonly chamber: number; readonly closing: number }) {
  const disc = (d: number): number => (Math.PI * d * d) / 4;
  const left = (chamber + 6) / 2.54 ** 3 + disc(4.16) * 0.041 + disc(4.07) * 0.012 + (disc(4.07) - disc(4.046)) * 0.28;
  const [crank, rod] = [1.77, 5.85];
  const turn = ((180 + closing) * Math.PI) / 180;
  const down = crank + rod - crank * Math.cos(turn) - Math.sqrt(rod ** 2 - (crank * Math.sin(turn)) ** 2);
  const dynamic = 1 + (disc(4.07) * down) / left;
  return {
    static: 1 + (disc(4.07) * 3.54) / left,
    dynamic,
    psi: 14.696 * (dynamic ** 1.25 - 1),
    lost: 1 - down / 3.54,
  };
}
const psi = (pascal: number): number => u.toUnit(pascal, u.psi);

describe('the guide’s engine', () => {
  it('gives what crank, rod and cylinders give by hand', () => {
    const hand = byHand({ chamber: 72, closing: 61 });
    const store = fresh();
    expect(figureOf(store, 'staticRatio')).toBeCloseTo(hand.static, 2);
    expect(figureOf(store, 'dynamicRatio')).toBeCloseTo(hand.dynamic, 2);
    expect(figureOf(store, 'strokeLost')).toBeCloseTo(hand.lost, 4);
    expect(psi(figureOf(store, 'crankingPressure'))).toBeCloseTo(hand.psi, 1);
  });
});

describe('the words of the guide', () => {
  it('are short: one or two sentences, and one thing to do, a step', () => {
    expect(guide.steps.length).toBe(6);
    for (const { text, trial, question } of guide.steps) {
      expect(text.length).toBeLessThanOrEqual(2);
      expect([trial, question].filter((x) => x !== undefined).length).toBe(1);
    }
  });
  it('hold the page’s own figures, and follow them', () => {
    const store = fresh();
    const { text } = stepWith('dynamicRatio');
    const said = (): string => text.map((words) => joined(filled(store, words))).join(' ');
    expect(said()).toContain(`the ratio is ${byHand({ chamber: 72, closing: 61 }).dynamic.toFixed(2)}:`);
    put(store, 'intakeClosing', u.si(70, u.degree));
    expect(said()).toContain(`the ratio is ${byHand({ chamber: 72, closing: 70 }).dynamic.toFixed(2)}:`);
    expect(said()).not.toMatch(/[{}…]/);
  });
  it('name where the step leads from where the reader stands', () => {
    const store = fresh();
    const { trial } = stepWith('dynamicRatio');
    const aim = aimOf(trial.move, figureOf(store, 'intakeClosing'), trial.to);
    expect(joined(filled(store, trial.say, aim))).toContain('to 71°');
  });
  it('say … for a value that is not there', () => {
    const store = fresh();
    put(store, 'crownVolume', u.si(-95, u.cubicCentimeter));
    const { text } = stepWith('dynamicRatio');
    expect(joined(filled(store, text[0]!))).toContain('the ratio is …');
  });
});

describe('what the reader tried', () => {
  const { trial } = stepWith('dynamicRatio');
  const began = (store: Store) =>
    new Map([trial.move, ...trial.watch.map(({ cell }) => cell)].map(({ id }) => [id, figureOf(store, id)] as const));

  it('is silent until something moves, then says what did, from where to where', () => {
    const store = fresh();
    const before = began(store);
    expect(outcome(store, trial, before)).toBeNull();
    put(store, 'intakeClosing', u.si(71, u.degree));
    const [now, then] = [byHand({ chamber: 72, closing: 61 }), byHand({ chamber: 72, closing: 71 })];
    expect(outcome(store, trial, before)).toBe(
      `Intake closing went from 61° to 71°. Dynamic compression ratio fell from ${now.dynamic.toFixed(2)} to ` +
        `${then.dynamic.toFixed(2)}. Static compression ratio stays at ${now.static.toFixed(2)}. ` +
        'The same engine on paper, with less squeeze.',
    );
  });
  it('says how far to go where the reader stopped short or went the other way', () => {
    for (const [closing, verb] of [
      [66, 'fell'],
      [50, 'rose'],
    ] as const) {
      const store = fresh();
      const before = began(store);
      put(store, 'intakeClosing', u.si(closing, u.degree));
      expect(outcome(store, trial, before)).toContain(`Dynamic compression ratio ${verb} from 7.69`);
      expect(outcome(store, trial, before)).toContain('This step asks for 71°.');
    }
  });
  it('is gone once undo has taken it back', () => {
    const store = fresh();
    const before = began(store);
    put(store, 'intakeClosing', u.si(71, u.degree));
    store.undo();
    expect(outcome(store, trial, before)).toBeNull();
  });
});

describe('the check question', () => {
  const { question } = guide.steps.at(-1)!;

  it.each([
    [72, 61],
    [64, 71],
    [66, 48],
  ])('with %i cm³ closing at %i° is answered as by hand, and the notebook stays as it was', (chamber, closing) => {
    const store = fresh();
    put(store, 'chamberVolume', u.si(chamber, u.cubicCentimeter));
    put(store, 'intakeClosing', u.si(closing, u.degree));
    const { document } = store;
    const answer = answerOf(store, question!);
    if (answer === null || typeof answer === 'string') throw new Error(answer ?? 'slow');
    const [now, then] = [byHand({ chamber, closing }), byHand({ chamber, closing: closing + 10 })];
    expect(then.psi).toBeLessThan(now.psi);
    expect(answer.way).toBe('fall');
    expect(psi(answer.from)).toBeCloseTo(now.psi, 1);
    expect(psi(answer.to)).toBeCloseTo(then.psi, 1);
    expect(answer.figures).toBe(
      `Cranking pressure falls from ${now.psi.toFixed(0)} psi to ${then.psi.toFixed(0)} psi. ` +
        `Static compression ratio stays at ${now.static.toFixed(2)}.`,
    );
    expect(store.document).toBe(document);
  });
  it('is worked out, not written down: asked the other way round, the answer turns round', () => {
    const answer = answerOf(fresh(), { ...question!, by: -question!.by });
    expect(answer).toMatchObject({ way: 'rise' });
    const still = answerOf(fresh(), { ...question!, read: cellOf('staticRatio'), beside: undefined });
    expect(still).toMatchObject({ way: 'stay' });
  });
  it('says so where the engine has no answer', () => {
    const store = fresh();
    put(store, 'crownVolume', u.si(-95, u.cubicCentimeter));
    expect(answerOf(store, question!)).toMatch(/no answer/);
  });
});

describe('a guide with a mistake', () => {
  type Loose = Record<string, unknown>;
  const broken = (change: (steps: Record<string, Loose>[]) => void): (() => unknown) => {
    const copy = structuredClone(scenario.guide) as unknown as { steps: Record<string, Loose>[] };
    change(copy.steps);
    return () => readGuide(copy, catalogue);
  };
  it.each([
    [
      'a value of no cell',
      (s) => (s[1]!.text = ['It is {dynamicRato}.'] as never),
      'Step 2: its text: nothing is called “dynamicRato”.',
    ],
    [
      'a goal where nothing is asked',
      (s) => (s[1]!.text = ['To {goal}.'] as never),
      'Step 2: its text: nothing is called “goal”.',
    ],
    [
      'a cell that nothing moves',
      (s) => (s[2]!.try!.move = 'dynamicRatio'),
      'Step 3: Dynamic compression ratio is no field that can be moved.',
    ],
    ['something unknown to watch', (s) => (s[2]!.try!.watch = ['foo']), 'Step 3: nothing is called “foo”.'],
    ['no way to go', (s) => (s[2]!.try!.by = 0), 'Step 3: it does not say by how much something is to move.'],
    [
      'a choice that cannot be checked',
      (s) => (s[5]!.question!.choices = ['fall', 'explode']),
      'Step 6: “explode” is no choice; they are rise, fall, stay.',
    ],
    [
      'an answer without a reason',
      (s) => (s[5]!.question!.because = { fall: 'so' }),
      'Step 6: its reason for “rise” is missing.',
    ],
    ['no heading', (s) => delete (s[0] as Loose).heading, 'Step 1: its heading is missing.'],
  ] as readonly (readonly [string, (steps: Record<string, Loose>[]) => unknown, string])[])(
    'is told of: %s',
    (_, change, sentence) => expect(broken((steps) => void change(steps))).toThrow(sentence),
  );
  it('that is none at all is told of too', () => {
    for (const nothing of [null, 3, 'guide', [], { name: 'x', steps: [] }])
      expect(() => readGuide(nothing, catalogue)).toThrow(/guide/);
  });
});

describe('the guide and the notebook', () => {
  const { guide: _, ...plain } = scenario;

  it.each([
    ['as it is', scenario.guide],
    ['nonsense', 'nonsense'],
    ['null', null],
  ])('opening leaves the guide behind (%s) and changes nothing else', (_name, guide) => {
    const { document, repairs } = restore({ ...plain, guide }, catalogue, example);
    expect(repairs).toEqual([]);
    expect(JSON.stringify(document)).toBe(JSON.stringify(plain));
  });
  it('a link made from it is an ordinary link', async () => {
    const link = await pack(fresh().document, example);
    expect(link.length).toBeLessThan(2000);
    expect(await unpack(link)).not.toHaveProperty('saved.guide');
  });
});
