import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drain } from '../../src/graph/cell.ts';
import { designSteps } from '../../src/graph/designs.ts';
import type { Explorer } from '../../src/graph/explorer.ts';
import { frontOf } from '../../src/graph/front.ts';
import { isGood } from '../../src/graph/problem.ts';
import { bestQuestionOf } from '../../src/notebook/bests.ts';
import type { BestItem, BestLimit } from '../../src/notebook/document.ts';
import { keepDesign } from '../../src/notebook/keep-design.ts';
import { Looking } from '../../src/notebook/looking.ts';
import { restore } from '../../src/notebook/restore.ts';
import { leftOutBy, shownDesigns } from '../../src/notebook/shown-designs.ts';
import { Store } from '../../src/notebook/store.ts';
import { say } from '../../src/units/phrase.ts';
import * as u from '../../src/units/unit.ts';
import { Pool } from '../../src/workers/pool.ts';
import { InProcessPort, until } from '../workers/in-process-port.ts';
import {
  blank,
  catalogue,
  cellOf,
  example,
  figureOf,
  inputOf,
  opened,
  scenario,
  valueOf,
  wordOf,
} from './notebooks.ts';

const degrees = (n: number): number => u.si(n, u.degree);
const inches = (n: number): number => u.si(n, u.inch);

/** Ratio against clearance: a deeper relief gives the valve room and takes some of the ratio. */
const trade: BestItem = {
  id: 'best1',
  type: 'best',
  aims: [
    { sense: 'most', read: 'dynamicRatio' },
    { sense: 'most', read: 'intakeClearance' },
  ],
  vary: [
    { id: 'intakeClosing', from: degrees(52), to: degrees(68) },
    { id: 'reliefCut', from: 0, to: inches(0.06) },
  ],
  limits: [],
  budget: 150,
};
/** One aim, within limits of each sort. */
const limited: BestItem = {
  ...trade,
  aims: [{ sense: 'most', read: 'crankingPressure' }],
  vary: [...trade.vary, { id: 'chamberVolume', from: u.si(62, u.cubicCentimeter), to: u.si(78, u.cubicCentimeter) }],
  limits: [
    { read: 'fuelVerdict', worst: 'borderline' },
    { read: 'intakeClearance', least: inches(0.11) },
    { read: 'staticRatio', most: 9.8 },
  ],
  budget: 80,
};
/** Looks to the end. */
async function looked(store: Store, item: BestItem, explorer: Explorer | null = null): Promise<Looking> {
  const looking = new Looking(store, item, explorer, () => {});
  await until(() => looking.ending !== null, 'the end', 60_000);
  return looking;
}
const shownOf = (looking: Looking) => shownDesigns(looking.question!, looking.found);

describe('the front of two aims', () => {
  const across = 33;
  it('is the one that a fine grid shows, to within what its aims change from one place to the next', async () => {
    const store = opened(example);
    const { found } = await looked(store, trade);
    const question = bestQuestionOf(trade, catalogue, store.snapshot());
    const along = ({ from, to }: BestItem['vary'][number]): number[] =>
      Array.from({ length: across }, (_, i) => from + ((to - from) * i) / (across - 1));
    const [xs, ys] = [along(trade.vary[0]!), along(trade.vary[1]!)];
    const designs = xs.flatMap((x) => ys.map((y) => [x, y]));
    const all = drain(designSteps(store.snapshot(), question.vary, designs, question.readings)).map((aims) => ({
      aims,
    }));
    const grid = frontOf(all, [1, 1]);
    const front = frontOf(found.tried.filter(isGood), [1, 1]);
    expect(grid.length).toBeGreaterThan(20);
    // The largest change between neighbors, either way.
    const steps = [0, 1].map((k) =>
      Math.max(
        ...all.flatMap(({ aims }, i) => [
          i % across > 0 ? Math.abs(aims[k]! - all[i - 1]!.aims[k]!) : 0,
          i >= across ? Math.abs(aims[k]! - all[i - across]!.aims[k]!) : 0,
        ]),
      ),
    );
    for (const q of grid) expect(front.some((p) => p.aims.every((v, k) => v >= q.aims[k]! - steps[k]!))).toBe(true);
    // None of those found is beaten by the grid by more than half of that in both.
    for (const p of front) expect(grid.some((q) => q.aims.every((v, k) => v > p.aims[k]! + steps[k]! / 2))).toBe(false);
  });
});

describe('what is shown', () => {
  const keeps = (store: Store, limit: BestLimit): boolean => {
    if ('worst' in limit) return wordOf(store, limit.read) !== 'beyond';
    const value = figureOf(store, limit.read);
    return 'least' in limit ? value >= limit.least : value <= limit.most;
  };
  it('keeps to all limits, and is worth what it says, once it is kept and opened', async () => {
    const store = opened(example);
    const looking = await looked(store, limited);
    const shown = shownOf(looking);
    expect(shown).toHaveLength(10);
    expect(looking.found.tried).toHaveLength(limited.budget);
    for (const [i, design] of shown.entries()) expect(keepDesign(store, looking, design.at, `no. ${i + 1}`)).toBe(null);
    const text = JSON.stringify(store.document);
    const again = restore(JSON.parse(text), catalogue, example);
    expect(again.repairs).toEqual([]);
    for (const [i, design] of shown.entries()) {
      const fresh = opened(again.document, `best${i + 1}`);
      expect(figureOf(fresh, 'crankingPressure')).toBe(design.aims[0]);
      limited.vary.forEach(({ id }, k) => expect(figureOf(fresh, id)).toBeCloseTo(design.at[k]!, 12));
      for (const limit of limited.limits) expect(keeps(fresh, limit)).toBe(true);
    }
  });
  it('is in the digits of the page', async () => {
    const looking = await looked(opened(example), limited);
    // 0.1 degree, 0.001 in, 0.1 cm3; the first is the present setting, as it is.
    const grid = [degrees(0.1), inches(0.001), 1e-7];
    for (const { at } of looking.found.tried.slice(1))
      at.forEach((v, k) => expect(Math.abs(v / grid[k]! - Math.round(v / grid[k]!))).toBeLessThan(1e-6));
  });
  it('is never worse than the present setting, which is tried first', async () => {
    const store = opened(example);
    const looking = await looked(store, { ...limited, limits: [], budget: 12 });
    expect(looking.found.tried[0]!.aims[0]).toBe(figureOf(store, 'crankingPressure'));
    expect(shownOf(looking)[0]!.aims[0]).toBeGreaterThanOrEqual(figureOf(store, 'crankingPressure'));
  });
  it('counts what was left out, by the limit that did it', async () => {
    const { question, found } = await looked(opened(example), limited);
    const counts = leftOutBy(question!, found);
    expect(counts.reduce((sum, n) => sum + n, 0)).toBe(found.leftOut.length);
    expect(counts.filter((n) => n > 0).length).toBeGreaterThan(1);
  });
});

describe('a design that is kept', () => {
  it('holds only what differs, in one step that can be taken back; what is looked at stays', async () => {
    const store = opened(example);
    const before = store.document;
    const looking = await looked(store, { ...limited, budget: 10 });
    keepDesign(store, looking, looking.found.tried[3]!.at, 'Best of 10, no. 1');
    expect(store.document.variants.map((v) => v.name)).toEqual(['A', 'Best of 10, no. 1']);
    const [plain, kept] = store.document.variants;
    expect(plain).toMatchObject({ inputs: {}, held: {} });
    // The closing is moved by advancing the cam.
    expect(Object.keys(kept!.inputs).toSorted()).toEqual(['camAdvance', 'chamberVolume', 'reliefCut']);
    expect(kept!.held).toEqual({});
    expect(store.document.chosen).toBe(plain!.id);
    store.undo();
    expect(store.document).toEqual(before);
  });
  it('stands on the variant that was looked at, not on the notebook itself', async () => {
    const store = opened(scenario('two-cams'), 'late');
    const looking = await looked(store, { ...limited, limits: [], budget: 10 });
    keepDesign(store, looking, looking.found.tried[2]!.at, 'Late, better');
    const kept = store.document.variants.at(-1)!;
    expect(kept.inputs.intakeDuration).toBe(store.document.variants[1]!.inputs.intakeDuration);
    store.choose(kept.id);
    expect(figureOf(store, 'crankingPressure')).toBe(looking.found.tried[2]!.aims[0]);
  });
  it('is what was found, though the engine is another by now', async () => {
    const store = opened(example);
    const looking = await looked(store, { ...limited, budget: 10 });
    const [design] = shownOf(looking);
    store.set([[inputOf('bore'), inches(4.1)]], { what: 'bore' });
    store.letGo(cellOf('deckClearance'), { what: 'let go' });
    expect(looking.isPast).toBe(true);
    keepDesign(store, looking, design!.at, 'as it was');
    store.choose(store.document.variants.at(-1)!.id);
    expect(figureOf(store, 'crankingPressure')).toBe(design!.aims[0]);
  });
  it('lets go of what the notebook has come to hold since', async () => {
    const store = opened(example);
    const looking = await looked(store, { ...limited, budget: 10 });
    const [design] = shownOf(looking);
    store.hold(cellOf('clearanceVolume'), 99e-6, { what: 'hold' });
    keepDesign(store, looking, design!.at, 'as it was');
    store.choose(store.document.variants.at(-1)!.id);
    expect(figureOf(store, 'crankingPressure')).toBe(design!.aims[0]);
  });
  it('changes a held value by holding it', async () => {
    const store = opened(example);
    const item: BestItem = {
      ...limited,
      limits: [],
      budget: 10,
      vary: [{ id: 'deckClearance', from: 0, to: inches(0.03) }],
    };
    const looking = await looked(store, item);
    const [design] = shownOf(looking);
    expect(design!.at[0]).toBeLessThan(inches(0.002)); // the less room, the more pressure
    keepDesign(store, looking, design!.at, 'decked');
    const kept = store.document.variants.at(-1)!;
    expect([kept.inputs, kept.held]).toEqual([{}, { deckClearance: design!.at[0] }]);
  });
  it('has a name and an id of its own; where there is no room, words say so', async () => {
    const store = opened(example);
    const looking = await looked(store, { ...limited, limits: [], budget: 10 });
    const { at } = looking.found.tried[1]!;
    for (let i = 0; i < 23; i++) expect(keepDesign(store, looking, at, 'x'.repeat(60))).toBe(null);
    const { variants } = store.document;
    expect(variants).toHaveLength(24);
    expect(new Set(variants.map((v) => v.id)).size).toBe(24);
    expect(new Set(variants.map((v) => v.name)).size).toBe(24);
    expect(Math.max(...variants.map((v) => v.name.length))).toBeLessThanOrEqual(60);
    expect(keepDesign(store, looking, at, 'one more')).toMatch(/^A notebook holds at most 24 variants\. .*\.$/);
    expect(store.document.variants).toBe(variants);
  });
});

describe('a look', () => {
  it('asked again says the same', async () => {
    const [one, two] = [await looked(opened(example), limited), await looked(opened(example), limited)];
    expect(one.found.tried).toEqual(two.found.tried);
  });
  it('is told to stop, and what it found stands', async () => {
    const looking = new Looking(opened(example), { ...limited, budget: 1000 }, null, () => {});
    await until(() => looking.found.tried.length >= 12, 'some designs');
    looking.stop();
    expect(looking.ending).toEqual({ is: 'stopped' });
    const { length } = looking.found.tried;
    const { done } = looking;
    expect(shownOf(looking).length).toBeGreaterThan(0);
    for (let i = 0; i < 20; i++) await new Promise((go) => setTimeout(go, 5));
    expect(looking.found.tried).toHaveLength(length);
    expect(looking.done).toBe(done);
  });
  it('is stopped by an edit of the engine, and by nothing else', async () => {
    const store = opened(example);
    const looking = new Looking(store, { ...limited, budget: 1000 }, null, () => {});
    await until(() => looking.found.tried.length >= 6, 'some designs');
    store.change({ what: 'title' }, (draft) => void (draft.title = 'Another'));
    expect(looking.ending).toBe(null);
    store.set([[inputOf('bore'), inches(4.1)]], { what: 'bore' });
    expect(looking.ending).toEqual({ is: 'edited' });
    expect(looking.found.tried.length).toBeGreaterThan(0);
  });
  it.each<[string, Partial<BestItem>, RegExp]>([
    [
      'two inputs that are one',
      { vary: [trade.vary[0]!, { id: 'camAdvance', from: 0, to: 0.1 }] },
      /^These cannot be varied together: both move cam advance/,
    ],
    [
      'an aim that nothing moves',
      { aims: [{ sense: 'most', read: 'displacement' }] },
      /^Nothing that is changed here moves displacement\.$/,
    ],
    [
      'an input that moves nothing',
      { vary: [trade.vary[0]!, { id: 'airTemperature', from: 280, to: 300 }] },
      /^Changing air temperature moves nothing of this\.$/,
    ],
  ])('for %s says why it cannot be', async (_, more, words) => {
    const { ending } = await looked(opened(example), { ...trade, ...more });
    if (ending?.is !== 'fault') throw new Error(`it is ${ending?.is}`);
    expect(say(ending.message, 'us')).toMatch(words);
  });
  it('of an engine without an answer says what is wrong with it', async () => {
    const { ending } = await looked(opened({ ...example, held: {} }), trade);
    if (ending?.is !== 'fault') throw new Error(`it is ${ending?.is}`);
    expect(say(ending.message, 'us')).toMatch(/^Give deck height/);
  });
});

describe('a look at slow results', () => {
  const few = { curveFrom: 3000, curveTo: 4000, curveStep: 500 };
  const document = {
    ...example,
    inputs: {
      ...example.inputs,
      ...Object.fromEntries(Object.entries(few).map(([id, rpm]) => [id, u.si(rpm, u.revolutionsPerMinute)])),
    },
  };
  const torque: BestItem = {
    ...limited,
    aims: [
      {
        sense: 'most',
        read: 'torqueCurve',
        from: u.si(3000, u.revolutionsPerMinute),
        to: u.si(4000, u.revolutionsPerMinute),
      },
    ],
    vary: [trade.vary[0]!, limited.vary[2]!],
    limits: [{ read: 'fuelVerdict', worst: 'borderline' }],
    budget: 10,
  };
  const pool = (size: number): Pool => new Pool(() => new InProcessPort(catalogue.cells), size);

  it('goes to workers, any number of them, and comes to what it comes to inline; opened, a variant has it about so', async () => {
    const store = opened(document);
    const [one, three] = [await looked(store, torque, pool(1)), await looked(opened(document), torque, pool(3))];
    expect(one.ending).toEqual({ is: 'done' });
    expect(one.found.tried).toHaveLength(10);
    expect(one.found.tried).toEqual(three.found.tried);
    const question = one.question!;
    const designs = one.found.tried.map(({ at }) => at);
    const inline = drain(designSteps(store.snapshot(), question.vary, designs, question.readings));
    expect(inline).toEqual(designs.map((at) => one.rowOf(at)));
    expect(new Set(inline.map(([mean]) => mean)).size).toBe(10);
    // Nothing slow was spent on what a quick limit rules out.
    expect(one.found.tried.every(({ excess }) => excess[0]! <= 0)).toBe(true);
    expect(one.found.leftOut.length).toBeGreaterThan(0);

    const [first] = shownOf(one);
    keepDesign(store, one, first!.at, 'Best of 10, no. 1');
    const fresh = opened(store.document, 'best1', [cellOf('torqueCurve')]);
    const { y } = valueOf(fresh, 'torqueCurve') as { readonly y: Float64Array };
    const mean = (y[0]! / 2 + y[1]! + y[2]! / 2) / 2;
    // The rough way is within 2 % of the full one.
    expect(Math.abs(first!.aims[0]! / mean - 1)).toBeLessThan(0.02);
    expect(wordOf(opened(store.document, 'best1'), 'fuelVerdict')).not.toBe('beyond');
  }, 120_000);
  it('that nobody can work out says so', async () => {
    const { ending } = await looked(opened(document), torque);
    expect(ending?.is).toBe('fault');
  });
  it('is stopped elsewhere too: nothing more is worked out', async () => {
    const port = new InProcessPort(catalogue.cells);
    const looking = new Looking(opened(document), torque, new Pool(() => port, 1), () => {});
    await until(() => looking.done >= 1, 'one design', 60_000);
    looking.stop();
    const { length } = port.asked.filter((ask) => ask.do === 'explore');
    const { done } = looking;
    for (let i = 0; i < 20; i++) await new Promise((go) => setTimeout(go, 10));
    expect(port.asked.filter((ask) => ask.do === 'explore')).toHaveLength(length);
    expect(looking.done).toBe(done);
    // What had come of the batch under way stands as well.
    expect(looking.found.tried).toHaveLength(done);
    expect(shownOf(looking).length).toBeGreaterThan(0);
    expect(looking.ending).toEqual({ is: 'stopped' });
  });
});

describe('as it is kept in a file', () => {
  const read = (item: unknown) => restore({ ...blank, page: [item] }, catalogue, example);
  it('is read as it was written', () => {
    for (const item of [trade, limited]) {
      const { document, repairs } = read(item);
      expect(repairs).toEqual([]);
      expect(document.page[0]).toEqual(item);
    }
  });
  it.each<[string, object]>([
    ['no aim', { aims: [] }],
    ['three aims', { aims: [trade.aims[0], trade.aims[0], trade.aims[1]] }],
    ['an aim of no sense', { aims: [{ read: 'dynamicRatio', sense: 'much' }] }],
    ['an aim that is a choice', { aims: [{ read: 'fuelGrade', sense: 'most' }] }],
    ['a curve without a range', { aims: [{ read: 'torqueCurve', sense: 'most' }] }],
    ['a curve over nothing', { aims: [{ read: 'torqueCurve', sense: 'most', from: 300, to: 300 }] }],
    ['nothing to change', { vary: [] }],
    [
      'five to change',
      { vary: ['bore', 'stroke', 'rod', 'chamberVolume', 'deckHeight'].map((id) => ({ id, from: 0, to: 1 })) },
    ],
    ['one changed twice', { vary: [trade.vary[0], trade.vary[0]] }],
    ['a range of no width', { vary: [{ id: 'bore', from: 0.1, to: 0.1 }] }],
    ['a range without an end', { vary: [{ id: 'bore', from: 0.1, to: null }] }],
    ['a cell nobody knows', { vary: [{ id: 'boer', from: 0.1, to: 0.2 }] }],
    ['a list with a hole', { vary: Array(2) }],
    ['a verdict at worst a word it has not', { limits: [{ read: 'fuelVerdict', worst: 'fine' }] }],
    ['a figure at worst a word', { limits: [{ read: 'staticRatio', worst: 'borderline' }] }],
    ['a limit that is none', { limits: [{ read: 'staticRatio', least: 'much' }] }],
    ['a budget that is no figure', { budget: 'many' }],
  ])('with %s is left out, with a sentence', (_, spoil) => {
    const { document, repairs } = read({ ...trade, ...spoil });
    expect(document.page.some((item) => item.type === 'best')).toBe(false);
    expect(repairs).toEqual(['Part 1 of the page could not be read and is left out.']);
  });
  it('with anything at all in one of its places is sound or left out', () => {
    const places = fc.constantFrom<readonly (string | number)[]>(
      ['aims'],
      ['aims', 0],
      ['aims', 1, 'read'],
      ['aims', 0, 'from'],
      ['vary'],
      ['vary', 0],
      ['vary', 1, 'id'],
      ['vary', 0, 'to'],
      ['limits'],
      ['limits', 1],
      ['limits', 0, 'worst'],
      ['limits', 2, 'most'],
      ['budget'],
      ['id'],
    );
    fc.assert(
      fc.property(places, fc.anything(), (place, junk) => {
        const item = structuredClone({ ...trade, limits: limited.limits }) as unknown as Record<string, unknown>;
        const inside = place
          .slice(0, -1)
          .reduce((part, step) => part[step] as typeof part, item as Record<string | number, unknown>);
        inside[place.at(-1)!] = junk;
        const made = read(item);
        const again = restore(JSON.parse(JSON.stringify(made.document)), catalogue, example);
        expect(again.repairs).toEqual([]);
        expect(JSON.stringify(again.document)).toBe(JSON.stringify(made.document));
      }),
    );
  });
  it('with a budget out of reason has one within', () => {
    for (const [given, kept] of [
      [1e9, 1000],
      [-5, 1],
      [33.4, 33],
    ] as const)
      expect(read({ ...trade, budget: given }).document.page[0]).toMatchObject({ budget: kept });
  });
});
