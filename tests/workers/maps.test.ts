import { describe, expect, it } from 'vitest';
import { drain } from '../../src/graph/cell.ts';
import type { Found, Task } from '../../src/graph/explorer.ts';
import { type MapResult, mapSteps } from '../../src/graph/map.ts';
import type { MapItem } from '../../src/notebook/document.ts';
import { type MapQuestion, mapFound, mapQuestionOf, mapTaskOf } from '../../src/notebook/maps.ts';
import type { Store } from '../../src/notebook/store.ts';
import { say } from '../../src/units/phrase.ts';
import * as u from '../../src/units/unit.ts';
import { Pool } from '../../src/workers/pool.ts';
import { catalogue, cellOf, example, inputOf, opened, scenario, valueOf } from '../notebook/notebooks.ts';
import { InProcessPort, settle, until } from './in-process-port.ts';

const slow: MapItem = {
  id: 'm',
  type: 'map',
  read: 'motoredPeak',
  x: { vary: 'intakeClosing', from: 0.8, to: 1.3 },
  y: { vary: 'crankingSpeed', from: u.si(150, u.revolutionsPerMinute), to: u.si(300, u.revolutionsPerMinute) },
};
/** The question with 3 points each way: each one is a whole compression. */
function fewer(store: Store, item: MapItem): MapQuestion {
  const question = mapQuestionOf(item, catalogue, store.snapshot());
  const few = ({ from, to }: MapItem['x']): number[] => [from, (from + to) / 2, to];
  return {
    ...question,
    x: { ...question.x, values: few(item.x) },
    y: { ...question.y, values: few(item.y) },
  };
}
type News = Found<MapResult>;
async function mapped(pool: Pool, task: Task<'map'>): Promise<readonly News[]> {
  const heard: News[] = [];
  pool.explore('map', task, (news) => heard.push(news));
  await until(() => ['ready', 'fault'].includes(heard.at(-1)?.is ?? ''), 'the map', 20_000);
  return heard;
}
const pooled = (): Pool => new Pool(() => new InProcessPort(catalogue.cells), 1);
const inline = (store: Store, { x, y, read, fixed }: MapQuestion): MapResult =>
  drain(mapSteps(store.snapshot(), { x, y, fixed, read: [read] }));

describe('a map in a worker', () => {
  it.each([
    ['by moving the cam', {}],
    ['with something kept fixed', { fixed: { pressureEntry: 'standard' } }],
    ['over a held figure', { x: { vary: 'clearanceVolume', from: 70e-6, to: 90e-6 } }],
  ] as const)('%s is what it is inline, and tells what stands on its way', async (_, more) => {
    const store = opened(scenario('two-cams'), 'late');
    const item: MapItem = { ...slow, ...more };
    if (item.x.vary === 'clearanceVolume') store.hold(cellOf('clearanceVolume'), 80e-6, { what: 'hold' });
    const question = fewer(store, item);
    expect(question.isSlow).toBe(true);
    const heard = await mapped(pooled(), mapTaskOf(store, question));
    const last = heard.at(-1)!;
    if (last.is !== 'ready') throw new Error(JSON.stringify(last));
    const here = inline(store, question);
    expect(last.result).toEqual(here);
    expect(new Set(here.rows[0]).size).toBe(9); // nothing flat
    const coming = heard.flatMap((news) => (news.is === 'coming' ? [news.result] : []));
    expect(coming.length).toBeGreaterThanOrEqual(8);
    for (const { rows, stands } of coming)
      for (const [place, is] of stands.entries())
        if (is === 1) expect(rows[0]![place]).toBe(here.rows[0]![place]);
        else expect(rows[0]![place]).toBeNaN();
  });

  it('says at a point what the page says there', async () => {
    const store = opened(example, null, [cellOf('motoredPeak')]);
    const question = fewer(store, slow);
    const last = (await mapped(pooled(), mapTaskOf(store, question))).at(-1)!;
    if (last.is !== 'ready') throw new Error(JSON.stringify(last));
    store.put(question.x.vary, question.x.values[2]!, { what: 'closing' });
    store.set([[inputOf('crankingSpeed'), question.y.values[1]!]], { what: 'speed' });
    const { values } = mapFound(question, last.result);
    expect(Math.abs(values[5]! / (valueOf(store, 'motoredPeak') as number) - 1)).toBeLessThan(1e-9);
  });

  it('is taken up where it was stopped', async () => {
    const store = opened(example);
    const question = fewer(store, slow);
    const pool = pooled();
    const heard: News[] = [];
    const stop = pool.explore('map', mapTaskOf(store, question), (news) => heard.push(news));
    await until(() => heard.filter((news) => news.is === 'coming').length >= 4, 'the corners', 20_000);
    stop();
    const known = heard.flatMap((news) => (news.is === 'coming' ? [news.result] : [])).at(-1)!;
    await settle();
    const rest = await mapped(pool, mapTaskOf(store, question, known));
    const before = known.stands.reduce((sum, is) => sum + is, 0);
    expect(rest.filter((news) => news.is === 'coming').length).toBe(9 - before);
    const last = rest.at(-1)!;
    expect(last.is === 'ready' && last.result).toEqual(inline(store, question));
  });

  it('that cannot be had says so in words', async () => {
    const store = opened(example);
    const task = mapTaskOf(store, fewer(store, slow));
    const last = (await mapped(pooled(), { ...task, y: { vary: 'camAdvance', values: [0, 0.1] } })).at(-1)!;
    expect(last.is === 'fault' && say(last.message, 'us')).toMatch(/both move cam advance/);
  });
});
