import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Cell, cell, input, slow } from '../../src/graph/cell.ts';
import { chapter, figure } from '../../src/graph/chapter.ts';
import { choice, type Curve, curve, remark, scalar } from '../../src/graph/kind.ts';
import { Memory } from '../../src/graph/memory.ts';
import { Impossible } from '../../src/graph/state.ts';
import { curvePair, valueOn } from '../../src/notebook/curve-pair.ts';
import type { Document } from '../../src/notebook/document.ts';
import { readGuide, type Trial } from '../../src/notebook/guide.ts';
import { filled, joined, keyOf, outcome, readsOf, startsOf } from '../../src/notebook/guide-says.ts';
import { wordsOf } from '../../src/notebook/guide-words.ts';
import { Others } from '../../src/notebook/others.ts';
import { Store } from '../../src/notebook/store.ts';
import { engineTorque, rotation } from '../../src/units/quantity.ts';
import * as u from '../../src/units/unit.ts';
import { HandRunner } from '../graph/hand-runner.ts';
import { toy, typed } from '../graph/toy.ts';
import { blank } from './notebooks.ts';

const rpm = u.si(1, u.revolutionsPerMinute);
const edit = { what: 'an edit' };
const bySpeed = (points: readonly (readonly [rpm: number, newtonMeters: number])[]): Curve => ({
  x: Float64Array.from(points, ([speed]) => speed * rpm),
  y: Float64Array.from(points, ([, torque]) => torque),
});

/** Two variants of a toy engine in SI units, whose curve a runner draws by hand; each is told by its `x`. */
function toys() {
  const x = typed('x', 1);
  const way = input({
    ...toy('way'),
    label: 'The way it goes',
    kind: choice([
      { id: 'up', label: 'Upwards' },
      { id: 'down', label: 'Downwards' },
    ]),
    initial: 'up',
  });
  const work = slow({
    ...toy('work'),
    kind: curve(rotation, engineTorque, 'Engine speed'),
    from: { x },
    *steps(): Generator<number, Curve, void> {
      yield 0.5;
      return bySpeed([]);
    },
  });
  const pull = cell({
    ...toy('pull'),
    label: 'Torque by engine speed',
    kind: curve(rotation, engineTorque, 'Engine speed'),
    from: { work },
    compute: ({ work }) => work,
  });
  const most = cell({
    ...toy('most'),
    label: 'Most torque',
    kind: scalar(engineTorque),
    from: { work, x },
    compute: ({ work, x }) => {
      if (x < 0) throw new Impossible(['There is none.']);
      return Math.max(...work.y);
    },
  });
  const twice = cell({ ...toy('twice'), label: 'Twice', from: { x }, compute: ({ x }) => 2 * x });
  const says = cell({ ...toy('says'), kind: remark, from: { x }, compute: () => null });
  const cells = new Map<string, Cell>([x, way, work, pull, most, twice, says].map((c) => [c.id, c as Cell]));
  const home = chapter({
    id: 'home',
    number: 1,
    title: 'Home',
    sentence: '',
    fields: [x],
    answers: [twice],
    says,
    figures: [figure({ id: 'figure-pull', form: 'output', caption: '', from: { pull } })],
  });
  const catalogue = { cells, chapters: [home] };
  const variants: Document['variants'] = [
    { id: 'one', name: 'First cam', inputs: {}, held: {} },
    { id: 'two', name: 'Second cam', inputs: { x: 2 }, held: {} },
  ];
  const document: Document = {
    ...blank,
    inputs: {},
    held: {},
    tolerances: {},
    pins: [],
    page: [],
    units: { system: 'si', fields: {} },
    variants,
    chosen: 'one',
  };
  const runner = new HandRunner();
  const memory = new Memory();
  const store = new Store({ catalogue, open: { document, opened: document }, runner, memory });
  const others = (store.others = new Others(store, { runner, memory }));
  /** Looks at what words read, as the panel does. */
  const say = (words: unknown): (() => string) => {
    const read = wordsOf(words, 'Here', { catalogue, variants });
    for (const { cell: c, of } of readsOf(read))
      if (of === undefined || of === store.document.chosen) store.watch([c], () => {});
      else others.watch(of, [c], () => {});
    return () => joined(filled(store, read));
  };
  /** Ends the work on the variant whose `x` it is. */
  const draw = (of: number, points: readonly (readonly [number, number])[]): void => {
    for (const job of runner.running) if (job.given.x === of) job.answer(bySpeed(points));
  };
  return { x, way, store, others, runner, catalogue, variants, say, draw };
}
const level = (torque: number, from = 1000, to = 3000) =>
  [
    [from, torque],
    [to, torque],
  ] as const;
const rising = [
  [1000, 100],
  [3000, 300],
] as const;

describe('a value in a guide’s words', () => {
  it('is that of the variant it names, whichever is chosen', () => {
    const { store, say } = toys();
    const words = say('{one:twice}, {two:twice}; {twice} of the {chosen}.');
    expect(words()).toBe('2.00, 4.00; 2.00 of the first cam.');
    store.choose('two');
    expect(words()).toBe('2.00, 4.00; 4.00 of the second cam.');
    store.put(store.catalogue.cells.get('x')!, 5, edit);
    expect(words()).toBe('2.00, 10.00; 10.00 of the second cam.');
  });
  it('is there for another variant even where nobody looks, if it is quick', () => {
    const { store, catalogue, variants } = toys();
    expect(joined(filled(store, wordsOf('{two:twice}', 'Here', { catalogue, variants })))).toBe('4.00');
  });
  it('is … while it is being worked out, a provisional one as well, and then follows', () => {
    const { x, store, runner, say, draw } = toys();
    const words = say('{one:most} and {two:most}');
    expect(words()).toBe('… and …');
    runner.jobs[0]!.provisional(bySpeed(level(90)), 0.5);
    expect(words()).toBe('… and …');
    draw(1, level(100));
    expect(words()).toBe('100 N m and …');
    draw(2, level(200));
    expect(words()).toBe('100 N m and 200 N m');
    store.put(x, 3, edit);
    expect(words()).toBe('… and 200 N m');
  });
  it('of a curve is read at a speed, straight between its points, and is missing beyond its ends', () => {
    const { say, draw } = toys();
    const at = (speed: number): string => `{one:pull@${speed * rpm}}`;
    const words = say(`${at(1000)}, ${at(1500)}, ${at(3000)}`);
    const beyond = say([`${at(3100)} there`, `only up to {one:most}`]);
    expect(beyond()).toBe('… there');
    draw(1, rising);
    expect(words()).toBe('100 N m, 150 N m, 300 N m');
    expect(beyond()).toBe('only up to 300 N m');
  });
  it('that there is none of leaves the word to the next wording; the last is said as it is', () => {
    const { x, store, say, draw } = toys();
    const [two, one] = [say(['It is {one:most}.', 'There is nothing to say.']), say('It is {one:most}.')];
    draw(1, rising);
    expect(two()).toBe('It is 300 N m.');
    store.put(x, -1, edit);
    draw(-1, rising);
    expect(two()).toBe('There is nothing to say.');
    expect(one()).toBe('It is ….');
  });
  it('of a variant that is gone is missing, and no sentence speaks of it', () => {
    const { store, say } = toys();
    const words = say(['{two:twice} and {cross pull one two}', 'gone']);
    store.change(edit, (draft) => void draft.variants.pop());
    expect(words()).toBe('gone');
  });
});

describe('two curves', () => {
  const wordings = [
    'cross at {cross pull one two}: under it the {below pull one two} by {belowBy pull one two}, over it the {above pull one two} by {aboveBy pull one two}',
    'cross at {crosses pull one two}: first the {below pull one two}, last the {above pull one two}',
    'do not cross: the {ahead pull one two} by {aheadBy pull one two}',
    'cannot be told apart',
  ];
  it.each([
    [
      'once',
      level(200),
      rising,
      'cross at 2000 rpm: under it the first cam by 100 N m, over it the second cam by 100 N m',
    ],
    [
      'twice',
      level(200, 1000, 5000),
      [...rising, [4000, 50]],
      'cross at 2000 rpm and 3400 rpm: first the first cam, last the first cam',
    ],
    [
      'three times',
      level(200, 1000, 5000),
      [...rising, [4000, 100], [5000, 300]],
      'cross at 2000 rpm, 3500 rpm and 4500 rpm: first the first cam, last the second cam',
    ],
    ['not at all', level(350), rising, 'do not cross: the first cam by 250 N m'],
    ['only touch', level(300, 1000, 5000), [...rising, [5000, 100]], 'do not cross: the first cam by 200 N m'],
    ['beyond what both reach', level(200, 1000, 1500), rising, 'do not cross: the first cam by 100 N m'],
    ['without a common speed', level(200, 4000, 5000), rising, 'cannot be told apart'],
    ['nowhere, being the same', rising, rising, 'cannot be told apart'],
  ] as const)('that cross %s are spoken of as they are', (_, one, two, words) => {
    const { say, draw } = toys();
    const said = say(wordings);
    expect(said()).toBe('…'); // which wording is true is not known yet
    draw(1, one);
    expect(said()).toBe('…');
    draw(2, two);
    expect(said()).toBe(words);
  });
  it('are spoken of anew after an edit: they cross no more', () => {
    const { x, store, say, draw } = toys();
    const said = say(wordings);
    draw(1, level(200));
    draw(2, rising);
    expect(said()).toMatch(/^cross at 2000 rpm/);
    store.put(x, 4, edit);
    expect(said()).toBe('…');
    draw(4, level(50));
    expect(said()).toBe('do not cross: the second cam by 250 N m');
  });
  it('are even where they cross, and have changed sides beyond', () => {
    const points = fc.array(fc.tuple(fc.integer({ min: 0, max: 40 }), fc.integer({ min: -9, max: 9 })), {
      minLength: 2,
      maxLength: 9,
    });
    const made = (rows: readonly (readonly [number, number])[]): Curve => {
      const all = [...new Map(rows)].toSorted(([a], [b]) => a - b);
      return { x: Float64Array.from(all, ([at]) => at), y: Float64Array.from(all, ([, y]) => y) };
    };
    fc.assert(
      fc.property(points, points, (a, b) => {
        const [one, other] = [made(a), made(b)];
        const lead = (at: number): number | null => {
          const [mine, theirs] = [valueOn(one, at), valueOn(other, at)];
          return mine === null || theirs === null ? null : mine - theirs;
        };
        const { crossings, leads } = curvePair(one, other);
        for (const at of crossings) expect(Math.abs(lead(at)!)).toBeLessThan(1e-9);
        // Between one crossing and the next nobody gives up the lead.
        const edges = [-Infinity, ...crossings, Infinity];
        let sides = 0;
        for (let i = 1; i < edges.length; i++) {
          const inside = Array.from({ length: 801 }, (_, k) => k / 20).filter(
            (at) => at > edges[i - 1]! && at < edges[i]!,
          );
          const even = (at: number): boolean => Math.abs(lead(at) ?? 0) < 1e-9;
          const signs = new Set(inside.filter((at) => !even(at)).map((at) => Math.sign(lead(at)!)));
          expect(signs.size).toBeLessThanOrEqual(1);
          sides += signs.size;
        }
        const sided = leads.filter((each) => each !== 0);
        expect(crossings.length % 2 === 1).toBe(sided.length > 0 && sided[0]! * sided.at(-1)! < 0);
        expect(sides).toBeLessThanOrEqual(crossings.length + 1);
      }),
    );
  });
});

describe('a trial', () => {
  const trialOf = ({ catalogue, variants }: ReturnType<typeof toys>, asked: object): Trial => {
    const step = { heading: 'A step', text: ['Words.'], try: { say: 'Do it.', done: 'Done: {one:twice}.', ...asked } };
    return readGuide({ name: 'A guide', steps: [step] }, catalogue, variants).steps[0]!.trial!;
  };

  it('that chooses a variant is done once it is chosen', () => {
    const made = toys();
    const trial = trialOf(made, { choose: 'two' });
    expect(outcome(made.store, trial, new Map())).toBeNull();
    made.store.choose('two');
    expect(outcome(made.store, trial, new Map())).toBe('Done: 2.00.');
  });
  it('that sets a choice says what it is set to, and what it was to be', () => {
    const made = toys();
    const { store, way } = made;
    const trial = trialOf(made, { move: 'way', to: 'down', watch: ['twice'] });
    const before = new Map<string, unknown>([
      ['way', 'up'],
      ['twice', 2],
    ]);
    expect(outcome(store, trial, before)).toBeNull();
    store.set([[way, 'down']], edit);
    expect(outcome(store, trial, before)).toBe('The way it goes: Downwards. Twice stays at 2.00. Done: 2.00.');
    const other = new Map(before).set('way', 'down');
    store.set([[way, 'up']], edit);
    expect(outcome(store, trial, other)).toContain('This step asks for Downwards.');
  });
  it('that watches what takes long says so, and what it comes to', () => {
    const made = toys();
    const { store, x, draw } = made;
    const trial = trialOf(made, { move: 'x', by: 1, watch: ['most', `pull@${2000 * rpm}`] });
    store.watch(
      startsOf(trial).map((at) => at.cell),
      () => {},
    );
    const before = new Map<string, unknown>([
      ['x', 1],
      ...startsOf(trial)
        .slice(1)
        .map((at) => [keyOf(at), 100] as const),
    ]);
    store.put(x, 2, edit);
    expect(outcome(store, trial, before)).toBe(
      'x went from 1.00 to 2.00. Most torque is being worked out. Torque at 2000 rpm is being worked out. Done: 4.00.',
    );
    draw(2, rising);
    const came = 'Most torque rose from 100 N m to 300 N m. Torque at 2000 rpm rose from 100 N m to 200 N m.';
    expect(outcome(store, trial, before)).toContain(came);
    // What it was before could not be told in time.
    expect(outcome(store, trial, new Map([['x', 1]]))).toContain('Most torque is 300 N m now.');
  });
  it('that opens a figure names its chapter, and nothing comes of it', () => {
    const made = toys();
    const trial = trialOf(made, { open: 'figure-pull' });
    expect(trial).toMatchObject({ is: 'open', chapter: 'home', figure: 'figure-pull' });
    expect(outcome(made.store, trial, new Map())).toBeNull();
  });
});

describe('a guide about variants with a mistake', () => {
  const good = { heading: 'A step', text: ['Words.'] };
  const trial = { say: 'Do it.', done: 'Done.' };
  it.each([
    ['a variant that is not there', { text: ['{three:twice}'] }, 'Step 1: its text: there is no variant “three”.'],
    ['a cell that is not there', { text: ['{two:thrice}'] }, 'Step 1: its text: nothing is called “thrice”.'],
    [
      'a whole curve',
      { text: ['{two:pull}'] },
      'Step 1: its text: Torque by engine speed cannot be said in a sentence.',
    ],
    ['a place on what is no curve', { text: ['{most@3}'] }, 'Step 1: its text: Most torque is no curve.'],
    ['a place that is none', { text: ['{pull@x}'] }, 'Step 1: its text: “x” is no place along Torque by engine speed.'],
    ['no place', { text: ['{pull@}'] }, 'Step 1: its text: “” is no place along Torque by engine speed.'],
    [
      'a crossing with one variant',
      { text: ['{cross pull one}'] },
      'Step 1: its text: “cross pull one” wants a curve and two variants.',
    ],
    ['a crossing of figures', { text: ['{cross most one two}'] }, 'Step 1: its text: Most torque is no curve.'],
    ['a crossing with a stranger', { text: ['{below pull one six}'] }, 'Step 1: its text: there is no variant “six”.'],
    [
      'an unknown word',
      { text: ['{across pull one two}'] },
      'Step 1: its text: nothing is called “across pull one two”.',
    ],
    ['no wording', { text: [[]] }, 'Step 1: its text is missing.'],
    ['an empty wording', { text: [['Words.', '']] }, 'Step 1: its text is missing.'],
    ['nothing to try', { try: trial }, 'Step 1: it is to ask for one thing: move, choose or open.'],
    [
      'two things to try',
      { try: { ...trial, choose: 'one', open: 'figure-pull' } },
      'Step 1: it is to ask for one thing',
    ],
    [
      'a variant to choose that is not there',
      { try: { ...trial, choose: 'six' } },
      'Step 1: there is no variant “six”.',
    ],
    ['a figure that is not there', { try: { ...trial, open: 'figure-x' } }, 'Step 1: no figure is called “figure-x”.'],
    ['a choice of what is no choice', { try: { ...trial, move: 'x', to: 'up', watch: [] } }, 'Step 1: x is no choice.'],
    [
      'a choice that is not to be had',
      { try: { ...trial, move: 'way', to: 'left', watch: [] } },
      'Step 1: “left” is not to be chosen for The way it goes.',
    ],
    [
      'a choice that is to be moved',
      { try: { ...trial, move: 'way', by: 1, watch: [] } },
      'Step 1: The way it goes is no field that can be moved.',
    ],
    [
      'a question of nobody',
      {
        question: {
          ask: 'What?',
          of: 'six',
          vary: 'x',
          by: 1,
          read: 'twice',
          choices: ['rise', 'fall'],
          right: 'Yes.',
          wrong: 'No.',
          because: { rise: 'a', fall: 'b', stay: 'c' },
        },
      },
      'Step 1: there is no variant “six”.',
    ],
  ])('is told of: %s', (_, change, sentence) => {
    const { catalogue, variants } = toys();
    const broken = { name: 'A guide', steps: [{ ...good, ...change }] };
    expect(() => readGuide(broken, catalogue, variants)).toThrow(sentence);
  });
});
