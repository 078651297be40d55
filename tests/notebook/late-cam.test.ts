import { describe, expect, it } from 'vitest';
import type { Curve, CurveKind } from '../../src/graph/kind.ts';
import { Memory } from '../../src/graph/memory.ts';
import type { Document } from '../../src/notebook/document.ts';
import { type Answer, answerOf, askElsewhere, type Said } from '../../src/notebook/guide-answer.ts';
import { type Question, readGuide } from '../../src/notebook/guide.ts';
import { filled, joined, readsOf } from '../../src/notebook/guide-says.ts';
import type { GuideWords, ValuePlace } from '../../src/notebook/guide-words.ts';
import { Others } from '../../src/notebook/others.ts';
import { restore } from '../../src/notebook/restore.ts';
import { Store } from '../../src/notebook/store.ts';
import { format } from '../../src/units/format.ts';
import * as u from '../../src/units/unit.ts';
import { Pool } from '../../src/workers/pool.ts';
import scenario from '../../scenarios/two-cams.json';
import { figures as roughly, rough } from '../cells/roughly.ts';
import { InProcessPort, settle, until } from '../workers/in-process-port.ts';
import { catalogue, cellOf, example, figureOf, inputOf, opened, valueOf } from './notebooks.ts';

const rpm = u.si(1, u.revolutionsPerMinute);
const degree = u.si(1, u.degree);
/** The starting point with few speeds on its curve, so that a test can wait for it. */
const { document: whole } = restore(scenario, catalogue, example);
const few: Document = {
  ...whole,
  inputs: { ...whole.inputs, curveFrom: 2500 * rpm, curveTo: 6500 * rpm, curveStep: 1000 * rpm },
};
const guide = readGuide(scenario.guide, catalogue, whole.variants);
const { steps } = guide;
const question = steps.at(-1)!.question!;

/** A notebook with its other variant, whose what-ifs are worked out by workers without a thread. */
function guided(document = few, chosen = 'early'): Store {
  const memory = new Memory();
  const pool = new Pool(() => new InProcessPort(catalogue.cells), 1);
  const store = new Store({
    catalogue,
    open: { document: { ...document, chosen }, opened: document },
    explorer: pool,
    memory,
  });
  store.others = new Others(store, { memory });
  return store;
}
/** Looks at what words read, and says them. */
function say(store: Store, words: GuideWords): string {
  for (const { cell, of } of readsOf(words))
    if (of === undefined || of === store.document.chosen) store.watch([cell], () => {});
    else store.others!.watch(of, [cell], () => {});
  return joined(filled(store, words));
}

describe('what the late cam buys', () => {
  it('is told in six or seven short steps, something to try in each but the last, which asks', () => {
    expect([6, 7]).toContain(steps.length);
    for (const [i, { text, trial, question: asked }] of steps.entries()) {
      expect(text.length).toBeLessThanOrEqual(2);
      expect(trial === undefined).toBe(i === steps.length - 1);
      expect(asked === undefined).toBe(i < steps.length - 1);
      for (const wordings of text)
        for (const words of wordings)
          expect(
            words
              .map((w) => (typeof w === 'string' ? w : '0'))
              .join('')
              .split(/\s+/).length,
          ).toBeLessThan(60);
    }
    expect(steps.flatMap(({ trial }) => trial?.is ?? [])).toEqual(['choose', 'open', 'field', 'open', 'field']);
  });
  it('speaks of speeds that its words name: the place of a curve is the one before it', () => {
    for (const { text } of steps)
      for (const [first] of text)
        for (const [i, word] of first!.entries()) {
          if (typeof word === 'string' || word.is !== 'value' || word.at === undefined) continue;
          const before = text.flatMap((wordings) => wordings[0]!.slice(0, wordings[0] === first ? i : undefined));
          const named = before
            .flatMap((w) => (typeof w === 'string' ? [...w.matchAll(/(\d+) rpm/g)] : []))
            .map((m) => m[1]);
          expect(named).toContain((word.at / rpm).toFixed(0));
        }
  });

  const store = guided();
  const fresh: Readonly<Record<string, Store>> = { early: opened(few, 'early', []), late: opened(few, 'late', []) };
  /** The value of a place, from a notebook that is open on its variant and nothing else. */
  function apart({ cell, of = 'early', at }: ValuePlace): string {
    const own = fresh[of]!;
    own.watch([cell], () => {});
    const value = valueOf(own, cell.id);
    if (at === undefined) return cell.kind.text(value, 'us');
    const { x, y } = value as Curve;
    return format(y[x.findIndex((each) => Math.abs(each - at) < 1e-6)]!, (cell.kind as unknown as CurveKind).y, 'us');
  }
  it.each(steps.map((step, i) => [i + 1, step] as const))(
    'says in step %i what a notebook open on each variant says',
    (_, { text, trial }) => {
      let values = 0;
      for (const wordings of [...text, ...(trial && trial.is !== 'open' ? [trial.done] : [])]) {
        say(store, wordings);
        const parts = filled(store, wordings);
        const sentence = wordings.find((words) => words.length === parts.length)!;
        for (const [k, word] of sentence.entries()) {
          if (typeof word === 'string' || word.is !== 'value') continue;
          if (word.at !== undefined && (word.at / rpm - 2500) % 1000 > 1) continue; // not one of the few speeds
          expect(parts[k]!.text, word.cell.id).toBe(apart(word));
          values++;
        }
        expect(joined(parts)).not.toMatch(/[{}…]|NaN/);
      }
      expect(values > 0 || text.length === 1).toBe(true);
    },
    120_000,
  );
  it('crosses between the speeds where the lead changes sides, and says who is ahead', () => {
    const [early, late] = ['early', 'late'].map((id) => {
      fresh[id]!.watch([cellOf('torqueCurve')], () => {});
      return valueOf(fresh[id]!, 'torqueCurve') as Curve;
    }) as [Curve, Curve];
    const leads = Array.from(early.y, (y, i) => u.toUnit(y - late.y[i]!, u.poundFoot));
    expect(leads.map(Math.sign)).toEqual([1, 1, 1, -1, -1]);
    // Straight from 4500 to 5500 rpm, by similar triangles.
    const at = Number((4500 + (1000 * leads[2]!) / (leads[2]! - leads[3]!)).toPrecision(3));
    expect(say(store, steps[1]!.text[0]!)).toBe(
      `The torque curves cross at ${at} rpm. Below it the early cam is ahead, by ${Math.max(...leads).toFixed(0)} lbf ft at most; above it the late cam, by ${(-Math.min(...leads)).toFixed(0)} lbf ft.`,
    );
  });
  it('stays sense where the cams are the same, a speed is beyond the curve, or the best spark runs', () => {
    const other = guided({
      ...few,
      variants: few.variants.map((v) => ({ ...few.variants[0]!, id: v.id, name: v.name })),
    });
    expect(say(other, steps[1]!.text[0]!)).toBe(
      'As the engines stand there are no two torque curves to set against each other.',
    );
    other.set([[inputOf('curveTo'), 2600 * rpm]], { what: 'shorter' });
    expect(say(other, steps[3]!.text[0]!)).toBe(
      'The curve of chapter 9 does not reach 6500 rpm now, so that there is nothing to say of it.',
    );
    other.set([[inputOf('sparkEntry'), 'best']], { what: 'best' });
    expect(say(other, steps[4]!.text[1]!)).toMatch(/^One of the two runs its best spark/);
  }, 120_000);
});

/** Asks, and waits for the answer; how far it was on the way. */
async function asked(store: Store, of: Question): Promise<{ readonly said: Said; readonly shares: readonly number[] }> {
  const shares: number[] = [];
  return new Promise((done) => {
    askElsewhere(store, of, { done: (share) => shares.push(share), said: (said) => done({ said, shares }) });
  });
}

describe('a question whose answer takes long', () => {
  it('is not answered on the page, but elsewhere, from the page’s own figure and for the variant it names', async () => {
    const store = guided(few, 'late');
    store.others!.watch('early', [question.read, question.beside!], () => {});
    const { document } = store;
    expect(answerOf(store, question)).toBeNull();
    const { said, shares } = await asked(store, question);
    const { way, from, to, figures } = said as Answer;
    const apart = opened(few, 'early', [question.read, question.beside!]);
    expect(from).toBe(figureOf(apart, 'peakPower'));
    const speeds = { curveFrom: 2500 * rpm, curveTo: 6500 * rpm, curveStep: 1000 * rpm };
    const [[before, octane], [after, less]] = [108, 112].map((at) =>
      roughly(
        rough({ ...speeds, intakeCenterline: at * degree }, 'two-cams', 'early'),
        'peakPower',
        'octaneRequirement',
      ),
    ) as [[number, number], [number, number]];
    expect(to - from).toBeCloseTo(after - before, 6);
    expect(way).toBe('rise'); // a retarded cam gives more at the top (common practice, no source)
    const hp = (watt: number): string => u.toUnit(watt, u.horsepower).toFixed(0);
    expect(figures).toContain(`Peak power rises from ${hp(from)} hp to about ${hp(to)} hp.`);
    expect(figures).toMatch(/ Octane requirement at its worst falls from [\d.]+ to about [\d.]+\.$/);
    expect(less).toBeLessThan(octane);
    expect(shares.length).toBeGreaterThan(0);
    expect(shares).toEqual(shares.toSorted((a, b) => a - b));
    expect(store.document).toBe(document);
  }, 120_000);
  it('turns round with the change, and is told from the quick figures where the page has none yet', async () => {
    const store = guided(few, 'late');
    const { said } = await asked(store, { ...question, by: -question.by });
    expect(said).toMatchObject({ way: 'fall' });
  }, 120_000);
  it('goes without what cannot be said beside it', async () => {
    const store = guided({ ...few, inputs: { ...few.inputs, sparkEntry: 'best' } });
    const { said } = await asked(store, question);
    expect((said as Answer).figures).toMatch(/^Peak power rises from \d+ hp to about \d+ hp\.$/);
  }, 120_000);
  it('is dropped when it is stopped: nothing more is heard', async () => {
    const store = guided();
    let heard = 0;
    const stop = askElsewhere(store, question, { done: () => heard++, said: () => heard++ });
    stop();
    await settle();
    expect(heard).toBe(0);
  });
  it('says in words why there is no answer', async () => {
    const store = guided({ ...few, inputs: { ...few.inputs, crownVolume: -95e-6 } });
    const { said } = await asked(store, question);
    expect(said).toMatch(/\. Undo, or reset, and ask again\.$/);
    const lone = new Store({ catalogue, open: { document: few, opened: few } });
    let heard: Said = '';
    askElsewhere(lone, { ...question, of: undefined }, { done: () => {}, said: (s) => (heard = s) });
    await until(() => heard !== '', 'an answer');
    expect(heard).toMatch(/no answer/);
  });
});
