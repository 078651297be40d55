import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Cell } from '../../src/graph/cell.ts';
import { latestBase } from '../../src/notebook/base.ts';
import type { Catalogue } from '../../src/notebook/catalogue.ts';
import type { Document, MapItem } from '../../src/notebook/document.ts';
import { restore, type Restored } from '../../src/notebook/restore.ts';
import type { Store } from '../../src/notebook/store.ts';
import { say } from '../../src/units/phrase.ts';
import {
  blank,
  catalogue,
  cellOf,
  example,
  figureOf,
  inputOf,
  opened,
  quick,
  scenario,
  scenarios,
} from './notebooks.ts';

const mended = (anything: unknown): Restored => restore(anything, catalogue, example);
const clone = <T>(thing: T): T => structuredClone(thing);
type Loose = Record<string, unknown>;

/** `expect` takes its time, and a fuzz has millions of questions. */
function insist(is: boolean, what: () => string): void {
  if (!is) throw new Error(what());
}
const same = (a: unknown, b: unknown): boolean => a === b || JSON.stringify(a) === JSON.stringify(b);

/** What every restored document must be, whatever it was made of. */
function expectSound({ document, repairs }: Restored): void {
  for (const repair of repairs) insist(/^[A-Z0-9].*\.$/s.test(repair), () => `no sentence: ${repair}`);
  const text = JSON.stringify(document, (key, value: unknown) => {
    const plain = typeof value === 'number' ? Number.isFinite(value) : ['string', 'object'].includes(typeof value);
    insist(plain, () => `${key} is ${String(value)}, which no file can keep`);
    return value;
  });
  const again = mended(JSON.parse(text));
  insist(again.repairs.length === 0 && !again.newer, () => again.repairs.join('\n'));
  const after = JSON.stringify(again.document);
  insist(after === text, () => `${after}\nis not\n${text}`);
}
/** No value that is passed off as one is none; where there is none, words say why. */
function expectSoundValues(document: Document): Store {
  const store = opened(document);
  for (const cell of quick) {
    const state = store.state(cell);
    if (state.is === 'ready') insist(hasNoHoles(state.value), () => `${cell.id}: ${JSON.stringify(state.value)}`);
    else {
      if (state.is !== 'fault') throw new Error(`${cell.id} is ${state.is}`);
      for (const system of ['us', 'si'] as const) {
        const words = say(state.fault.message, system);
        insist(/^[A-Z].*\.$/s.test(words), () => `${cell.id}: ${words}`);
      }
    }
  }
  return store;
}
const hasNoHoles = (value: unknown): boolean =>
  typeof value === 'number'
    ? Number.isFinite(value)
    : value instanceof Float64Array
      ? value.every(Number.isFinite)
      : typeof value === 'object' && value !== null
        ? Object.values(value).every(hasNoHoles)
        : value !== undefined;

const noNotebooks = [
  undefined,
  null,
  true,
  0,
  NaN,
  '',
  'a notebook',
  [],
  [{ version: 1 }],
  () => {},
  Symbol('notebook'),
  10n,
] as const;
describe('what is no notebook at all', () => {
  it.each(noNotebooks.map((thing) => [thing]))('%s is said to be none, and the example is shown', (thing) => {
    const { document, repairs, newer } = mended(thing);
    expect(document).toEqual(example);
    expect(repairs).toEqual(['This was not a notebook, so the example is shown.']);
    expect(newer).toBe(false);
  });
});

describe('a notebook that says little', () => {
  it('is empty and sound, with the title, pins and page of the example', () => {
    const made = mended({});
    expectSound(made);
    expect(made.repairs).toEqual([]);
    expect(made.document).toEqual({
      ...blank,
      version: 1,
      base: latestBase,
      title: example.title,
      sentence: '',
      inputs: {},
      held: {},
      units: { system: 'us', fields: {} },
      tolerances: {},
      variants: [],
      chosen: null,
      pins: example.pins,
      page: example.page,
    });
  });
});

const whole = { ...(scenarios['two-cams'] as Loose) };
const map: MapItem = {
  id: 'm',
  type: 'map',
  read: 'dynamicRatio',
  x: { vary: 'intakeClosing', from: 0.7, to: 1.4 },
  y: { vary: 'chamberVolume', from: 85e-6, to: 60e-6 },
  fixed: { pressureEntry: 'standard' },
};
it('a map that is sound is left alone', () => {
  const { document, repairs } = mended({ ...clone(whole), page: [map] });
  expect(repairs).toEqual([]);
  expect(document.page[0]).toEqual(map);
});
/** A file with one field made something else, and what is said of it. */
const spoiled: readonly (readonly [what: string, Loose, sentence: RegExp])[] = [
  ['a version that is no figure', { version: '1' }, /version could not be read/],
  ['a base nobody knows', { base: 99 }, /starting values are unknown/],
  ['a base that is no whole number', { base: 1.5 }, /starting values are unknown/],
  ['a title that is no text', { title: 7 }, /title could not be read/],
  ['a title without end', { title: 'x'.repeat(5000) }, /title was too long/],
  ['a sentence that is a list', { sentence: ['x'] }, /opening sentence could not be read/],
  ['inputs in a list', { inputs: [1, 2] }, /inputs could not be read/],
  ['an input that is text', { inputs: { bore: '4.07 in' } }, /Bore could not be read/],
  ['an input that is not a figure', { inputs: { bore: NaN } }, /Bore could not be read/],
  ['an input without end', { inputs: { bore: Infinity } }, /Bore could not be read/],
  ['a choice that is none', { inputs: { fuelGrade: '92' } }, /Fuel grade could not be read/],
  ['an input nobody knows', { inputs: { boer: 0.1 } }, /Nothing is called “boer” here/],
  ['an answer that is typed', { inputs: { dynamicRatio: 8 } }, /Dynamic compression ratio cannot be typed/],
  ['an input that is held', { held: { bore: 0.1 } }, /Bore cannot be held/],
  ['a held verdict', { held: { fuelVerdict: { word: 'comfortable' } } }, /Fuel verdict, here could not be read/],
  ['a held curve with a hole', { held: { motoredPressure: { x: [0, 1], y: [1, NaN] } } }, /could not be read/],
  ['units of no system', { units: { system: 'imperial', fields: {} } }, /system of units could not be read/],
  ['a field in no system', { units: { system: 'si', fields: { bore: 'cubits' } } }, /unit of “bore” could not be read/],
  ['a negative ±', { tolerances: { bore: -1 } }, /± of “Bore” could not be read/],
  ['a ± of a choice', { tolerances: { fuelGrade: 1 } }, /± of “Fuel grade” could not be read/],
  ['a variant that is a figure', { variants: [7] }, /Variant 1 could not be read/],
  [
    'two variants of one name',
    { variants: [{ id: 'a' }, { id: 'a' }], chosen: 'a' },
    /Variant 2 had no name of its own/,
  ],
  ['far too many variants', { variants: Array.from({ length: 99 }, (_, i) => ({ id: `v${i}` })) }, /Only the first 24/],
  ['a chosen variant that is not there', { chosen: 'third' }, /chosen variant is not there/],
  ['a pin nobody knows', { pins: ['dynamicRatio', 'horsepower'] }, /pinned answer is not known/],
  ['a page that is text', { page: 'block, chamber' }, /page could not be read/],
  ['a part of the page of no sort', { page: [{ id: 'x', type: 'picture' }] }, /Part 1 of the page could not be read/],
  [
    'a chapter twice',
    {
      page: [
        { id: 'a', type: 'chapter', chapter: 'cam' },
        { id: 'b', type: 'chapter', chapter: 'cam' },
      ],
    },
    /Part 2/,
  ],
  [
    'a sweep of a choice',
    { page: [{ id: 'x', type: 'sweep', read: 'staticRatio', vary: 'fuelGrade', from: 0, to: 1 }] },
    /Part 1/,
  ],
  [
    'a sweep of no width',
    { page: [{ id: 'x', type: 'sweep', read: 'staticRatio', vary: 'bore', from: 1, to: 1 }] },
    /Part 1/,
  ],
  [
    'a sweep that fixes what cannot be read',
    { page: [{ id: 'x', type: 'sweep', read: 'staticRatio', vary: 'bore', from: 0.1, to: 0.2, fixed: ['stroke'] }] },
    /Part 1/,
  ],
  ...Object.entries<Loose>({
    'of an input': { read: 'bore' },
    'of a cell nobody knows': { read: 'ratio' },
    'of a choice': { read: 'fuelGrade' },
    'of a drawing': { read: 'linkage' },
    'with one axis': { y: undefined },
    'with an axis in words': { x: 'intakeClosing' },
    'over a choice': { x: { vary: 'fuelGrade', from: 0, to: 1 } },
    'over one cell twice': { y: { vary: 'intakeClosing', from: 1, to: 2 } },
    'of no width': { x: { vary: 'intakeClosing', from: 1, to: 1 } },
    'without an end': { x: { vary: 'intakeClosing', from: 1 } },
    'wider than figures go': { x: { vary: 'intakeClosing', from: -1.7e308, to: 1.7e308 } },
    'that fixes what is no input': { fixed: { staticRatio: 9 } },
  }).map(([what, spoil]) => [`a map ${what}`, { page: [{ ...map, ...spoil }] }, /Part 1/] as const),
];
describe('a notebook with one thing spoiled', () => {
  it.each(spoiled)('%s is mended with a sentence, and the rest is left alone', (_, spoil, said) => {
    const made = mended({ ...clone(whole), ...spoil });
    expectSound(made);
    expect(made.repairs.filter((repair) => said.test(repair)).length).toBeGreaterThan(0);
    expect(made.newer).toBe(false);
    const touched = new Set([...Object.keys(spoil), ...('variants' in spoil ? ['chosen'] : [])]);
    for (const key of Object.keys(whole).filter((k) => !touched.has(k)))
      expect(made.document[key as keyof Document], key).toEqual(whole[key]);
  });

  it('keeps what is sound beside what is not, field by field', () => {
    const { document } = mended({
      ...clone(whole),
      inputs: { bore: 'wide', stroke: 0.09, constructor: 1, fuelGrade: '87' },
      pins: ['staticRatio', 7, 'dynamicRatio', 'staticRatio'],
    });
    expect(document.inputs).toEqual({ stroke: 0.09, fuelGrade: '87' });
    expect(document.pins).toEqual(['staticRatio', 'dynamicRatio']);
  });
});

it('names that every object has do not count as cells', () => {
  const evil = JSON.parse(
    '{"version":1,"__proto__":{"title":"x"},"inputs":{"__proto__":{"bore":1},"constructor":1,"toString":2},"held":{"__proto__":null},"tolerances":{"__proto__":1}}',
  ) as unknown;
  const made = mended(evil);
  expectSound(made);
  expect(made.repairs.length).toBeGreaterThanOrEqual(4);
  expect(Object.keys(made.document.inputs)).toEqual([]);
  expect(({} as Loose).bore).toBe(undefined);
  expect(opened(made.document).document.title).toBe(example.title);
});

describe('a notebook from a newer release', () => {
  const newest = { ...clone(whole), version: 2, base: 7, gearbox: { speeds: 4 }, page: [{ id: 'map', type: 'map' }] };
  const made = mended(newest);
  it('opens with what is known, and says that it is newer', () => {
    expect(made.newer).toBe(true);
    expect(made.repairs[0]).toMatch(/^A newer release wrote this notebook\./);
    expectSound(made);
    expect(made.document.variants).toEqual(whole.variants);
  });
  it('has every chapter that is known, although its page names none', () =>
    expect(made.document.page.map((item) => item.id)).toEqual(catalogue.chapters.map((c) => c.id)));
});

it('a cell renamed since is found by its earlier name', () => {
  const renamed = { ...cellOf('bore'), id: 'boreAsHoned', formerly: ['bore'] } as Cell;
  const later: Catalogue = {
    ...catalogue,
    cells: new Map([...catalogue.cells].map(([id, cell]) => (id === 'bore' ? [renamed.id, renamed] : [id, cell]))),
  };
  const { document, repairs } = restore(scenarios['milled-four'], later, example);
  expect(repairs).toEqual([]);
  expect(document.inputs.boreAsHoned).toBe(scenario('milled-four').inputs.bore);
  expect(document.tolerances.boreAsHoned).toBe(scenario('milled-four').tolerances.bore);
});

describe('chapters that a page does not name', () => {
  it('follow in their order, under names that nothing else on the page has', () => {
    const page = [
      { id: 'fuel', type: 'sweep', read: 'staticRatio', vary: 'bore', from: 0.09, to: 0.11 },
      { id: 'cam', type: 'chapter', chapter: 'cam' },
    ];
    const made = mended({ ...clone(whole), page });
    expectSound(made);
    const { page: items } = made.document;
    expect(new Set(items.map((item) => item.id)).size).toBe(items.length);
    expect(items.slice(0, 2)).toEqual(page);
    expect(items.flatMap((item) => (item.type === 'chapter' ? [item.chapter] : []))).toEqual([
      'cam',
      ...catalogue.chapters.map((c) => c.id).filter((id) => id !== 'cam'),
    ]);
  });
  it('have room on a page that is full', () => {
    const sweep = { type: 'sweep', read: 'staticRatio', vary: 'bore', from: 0.09, to: 0.11 };
    const made = mended({ ...clone(whole), page: Array.from({ length: 99 }, (_, i) => ({ ...sweep, id: `s${i}` })) });
    expectSound(made);
    expect(made.document.page.filter((item) => item.type === 'chapter')).toHaveLength(catalogue.chapters.length);
    expect(made.repairs.some((repair) => repair.includes('left out'))).toBe(true);
  });
  it('two parts of one long name keep apart', () => {
    const sweep = { type: 'sweep', read: 'staticRatio', vary: 'bore', from: 0.09, to: 0.11, id: 'n'.repeat(60) };
    const made = mended({ ...clone(whole), page: [sweep, sweep, sweep] });
    expectSound(made);
    expect(made.document.page.filter((item) => item.type === 'sweep')).toHaveLength(3);
  });
});

it('answers that came along are kept as they are, what is none is dropped', () => {
  const answers = { release: '0.1.0', values: { dynamicRatio: 7.84, fuelVerdict: 'borderline' } };
  const made = mended({
    ...clone(whole),
    answers: { ...answers, values: { ...answers.values, staticRatio: NaN, nobody: 1 } },
  });
  expectSound(made);
  expect(made.document.answers).toEqual(answers);
  for (const junk of [7, [], { release: 7, values: {} }, { release: 'x' }])
    expect(mended({ ...clone(whole), answers: junk }).document.answers).toBe(undefined);
});

// ------------------------------------------------------------------------------------------------ mutated documents

type Step = string | number;
type Path = readonly Step[];
const places = (thing: unknown, path: Path = []): Path[] =>
  typeof thing === 'object' && thing !== null
    ? Object.entries(thing).flatMap(([key, part]) => {
        const here = [...path, Array.isArray(thing) ? Number(key) : key];
        return [here, ...places(part, here)];
      })
    : [];
const at = (thing: unknown, path: Path): unknown =>
  path.reduce<unknown>(
    (part, step) => (typeof part === 'object' && part !== null ? (part as Loose)[step] : undefined),
    thing,
  );
/** Writes an own field whatever its name. Where the place is gone by now nothing happens. */
function write(thing: unknown, path: Path, value: unknown): void {
  const parent = at(thing, path.slice(0, -1));
  if (ArrayBuffer.isView(parent)) return; // junk of fixed size
  if (Array.isArray(parent) && typeof path.at(-1) === 'string') parent.push(value); // a list has no names
  else if (typeof parent === 'object' && parent !== null)
    Object.defineProperty(parent, path.at(-1)!, { value, writable: true, enumerable: true, configurable: true });
}
function remove(thing: unknown, path: Path): void {
  const parent = at(thing, path.slice(0, -1));
  if (ArrayBuffer.isView(parent)) return; // junk of fixed size
  if (Array.isArray(parent)) parent.splice(Number(path.at(-1)), 1);
  else if (typeof parent === 'object' && parent !== null) delete (parent as Loose)[path.at(-1)!];
}

const deep = JSON.parse(`${'['.repeat(300)}${']'.repeat(300)}`) as unknown;
const junk = fc.oneof(
  fc.constantFrom<unknown>(
    null,
    true,
    0,
    -1,
    1e308,
    -1e-320,
    NaN,
    Infinity,
    -Infinity,
    '',
    ' ',
    'NaN',
    '__proto__',
    'constructor',
    'x'.repeat(30_000),
    '\u0000\ud800',
    deep,
    undefined,
    () => 1,
    Symbol('junk'),
    10n,
    new Date(0),
    new Float64Array(3),
    new Map([['bore', 1]]),
  ),
  fc.jsonValue({ maxDepth: 3 }),
  fc.double(),
  fc.anything({ withNullPrototype: true, withSparseArray: true, maxDepth: 2 }),
);
const change = fc.record({
  place: fc.nat(),
  other: fc.nat(),
  how: fc.constantFrom('delete', 'replace', 'replace', 'swap', 'wrap', 'nest', 'field', 'proto'),
  value: junk,
  name: fc.constantFrom('__proto__', 'constructor', 'bore', 'dynamicRatio', 'id', 'x'.repeat(9000), ''),
});
type Change = typeof change extends fc.Arbitrary<infer C> ? C : never;

/** Does it, and tells which places of the sound document it touched. */
function mutate(thing: unknown, { place, other, how, value, name }: Change): Path[] {
  const all = places(thing);
  if (all.length === 0) return [];
  const [here, there] = [all[place % all.length]!, all[other % all.length]!];
  if (how === 'delete') remove(thing, here);
  else if (how === 'replace') write(thing, here, value);
  else if (how === 'wrap') write(thing, here, [at(thing, here)]);
  else if (how === 'nest') write(thing, here, { [String(here.at(-1))]: at(thing, here) });
  else if (how === 'field') write(thing, [...here, name], value);
  else if (how === 'proto') write(thing, [...here, '__proto__'], value);
  else {
    const [a, b] = [at(thing, here), at(thing, there)];
    // Not into itself: that would be a ring, which no file holds.
    if (holds(a, b) || holds(b, a)) return [here];
    write(thing, here, b);
    write(thing, there, a);
    return [here, there];
  }
  return how === 'field' ? [[...here, name]] : [here];
}
const holds = (a: unknown, b: unknown): boolean =>
  a === b || (typeof a === 'object' && a !== null && Object.values(a).some((part) => holds(part, b)));

/** Every field that no change touched is in the restored document as it was. */
function expectUntouched(sound: Loose, { document }: Restored, touched: readonly Path[]): void {
  const inReach = (path: Path): boolean =>
    touched.some((t) => t.every((step, i) => i >= path.length || step === path[i]));
  const whole = (path: Path): boolean => !inReach(path);
  /** Neither the place nor what holds it: what lies deeper may be touched. */
  const stands = (path: Path): boolean =>
    !touched.some((t) => t.length <= path.length && t.every((s, i) => s === path[i]));

  for (const key of ['base', 'title', 'sentence'] as const)
    if (whole([key])) insist(same(document[key], sound[key]), () => key);
  if (whole(['chosen']) && whole(['variants'])) insist(document.chosen === sound.chosen, () => 'chosen');
  if (whole(['units'])) insist(same(document.units, sound.units), () => 'units');
  const entries = (path: Path, found: Readonly<Loose>): void => {
    if (!stands(path)) return;
    for (const [id, saved] of Object.entries(at(sound, path) as Loose))
      if (whole([...path, id])) insist(same(found[id], saved), () => [...path, id].join('.'));
  };
  for (const key of ['inputs', 'held', 'tolerances'] as const) entries([key], document[key]);
  // An entry taken out of a list moves the ones behind it, so parts of lists are looked for by what they are.
  const parts = (key: 'variants' | 'page' | 'pins', found: readonly unknown[]): void => {
    if (!stands([key])) return;
    for (const [i, part] of (sound[key] as readonly unknown[]).entries())
      if (whole([key, i]) && !touched.some((t) => t[0] === key && t.length === 2 && Number(t[1]) < i))
        insist(
          found.some((f) => same(f, part)),
          () => `${key} ${i}`,
        );
  };
  parts('variants', document.variants);
  parts('page', document.page);
  parts('pins', document.pins);
  for (const [i, variant] of (sound.variants as readonly Loose[]).entries()) {
    const id = ['variants', i, 'id'];
    const found = document.variants.find((v) => v.id === variant.id);
    if (!whole(id) || !stands(['variants', i]) || !found || touched.some((t) => t[0] === 'variants' && t.length <= 2))
      continue;
    for (const key of ['inputs', 'held'] as const) entries(['variants', i, key], found[key]);
  }
}

it('10,000 spoiled notebooks: nothing throws, what comes out is sound, what was not touched stays', () => {
  let mendings = 0;
  let lived = 0;
  fc.assert(
    fc.property(
      fc.constantFrom(...Object.keys(scenarios)),
      fc.array(change, { minLength: 1, maxLength: 4 }),
      fc.boolean(),
      (name, changes, first) => {
        const sound = { ...(scenarios[name] as Loose) };
        sound.page = [...(sound.page as readonly unknown[]), map];
        const spoilt = clone(sound);
        const touched = changes.flatMap((each) => mutate(spoilt, each));
        const made = mended(spoilt);
        if (made.repairs.length > 0) mendings++;
        expectSound(made);
        expectUntouched(sound, made, touched);
        if (first && lived++ % 5 === 0) expectSoundValues(made.document);
      },
    ),
    { numRuns: 10_000, seed: 20260701 },
  );
  expect(mendings).toBeGreaterThan(5000); // else the junk was not junk
  expect(lived).toBeGreaterThan(4000);
}, 120_000);

it('figures out of all reason leave faults in words and no holes', () => {
  const figure = fc.oneof(
    fc.double({ min: -1e100, max: 1e100, noNaN: true }),
    fc.constantFrom(0, 1e100, -1e100, 1e-100, 1, -1),
  );
  const inputs = [...catalogue.cells.values()].filter((c) => c.role === 'input' && c.kind.name === 'scalar');
  const others = quick.filter((c) => c.role !== 'input' && c.kind.name === 'scalar');
  fc.assert(
    fc.property(
      fc.constantFrom(...Object.keys(scenarios)),
      fc.dictionary(fc.constantFrom(...inputs.map((c) => c.id)), figure, { maxKeys: 4 }),
      fc.dictionary(fc.constantFrom(...others.map((c) => c.id)), figure, { maxKeys: 3 }),
      (name, typed, held) => {
        const base = scenario(name);
        const made = mended({ ...base, inputs: { ...base.inputs, ...typed }, held: { ...base.held, ...held } });
        expect(made.repairs).toEqual([]);
        const store = expectSoundValues(made.document);
        for (const cell of quick) {
          const state = store.state(cell);
          const words = state.is === 'ready' ? cell.kind.text(state.value, 'us') : '';
          expect(words, cell.id).not.toMatch(/NaN|Infinity|undefined/);
        }
      },
    ),
    { numRuns: 400, seed: 20260702 },
  );
}, 120_000);

it('an engine with its intake closing moved still restores to the same figures', () => {
  const store = opened(scenario('mountain-six'));
  store.put(cellOf('intakeClosing'), 1.1, { what: 'closing' });
  store.set([[inputOf('pinOffset'), -0.001]], { what: 'pin' });
  const again = opened(mended(JSON.parse(JSON.stringify(store.document))).document);
  for (const cell of quick.filter((c) => c.kind.name === 'scalar'))
    expect(figureOf(again, cell.id), cell.id).toBe(figureOf(store, cell.id));
});
