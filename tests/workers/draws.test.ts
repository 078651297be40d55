import { describe, expect, it } from 'vitest';
import { type Cell, cell, drain, slow } from '../../src/graph/cell.ts';
import type { DrawsResult } from '../../src/graph/draws.ts';
import { drawSteps } from '../../src/graph/draws.ts';
import type { Answer, Exploration, Found, Task } from '../../src/graph/explorer.ts';
import { Live } from '../../src/graph/live.ts';
import { snapshot } from '../../src/graph/snapshot.ts';
import { spreads } from '../../src/graph/spread.ts';
import type { DrawsItem } from '../../src/notebook/document.ts';
import { drawsQuestion, drawsTask, sharesTask } from '../../src/notebook/draws.ts';
import { Pool } from '../../src/workers/pool.ts';
import { toy, typed } from '../graph/toy.ts';
import { catalogue, cellOf, example, opened } from '../notebook/notebooks.ts';
import { InProcessPort, settle, until } from './in-process-port.ts';

const item: DrawsItem = { id: 'd', type: 'draws', read: 'dynamicRatio', count: 400 };
async function asked<K extends Exploration>(pool: Pool, kind: K, task: Task<K>): Promise<Answer<K>> {
  const heard: Found<Answer<K>>[] = [];
  pool.explore(kind, task, (news) => heard.push(news), true);
  await until(() => ['ready', 'fault'].includes(heard.at(-1)?.is ?? ''), kind);
  const last = heard.at(-1)!;
  if (last.is !== 'ready') throw new Error(JSON.stringify(last));
  return last.result;
}

describe('draws in a worker', () => {
  it('are those of the page, to the last digit, of a ratio and of the verdicts on it', async () => {
    const store = opened(example);
    const pool = new Pool(() => new InProcessPort(catalogue.cells), 1);
    const question = drawsQuestion(store, item);
    const found = await asked(pool, 'draws', drawsTask(store, question));
    const reads = [question.read, ...question.judges];
    const here = drain(drawSteps(store.snapshot(), { tolerances: store.tolerances(), reads, count: 400, seed: 1 }));
    expect(reads.map((c) => c.id)).toEqual(['dynamicRatio', 'fuelVerdict', 'fuelVerdictLow']);
    expect(found).toEqual(here);
    expect(new Set(found[0]!.samples).size).toBe(400);
  });

  it('and shares too', async () => {
    const store = opened(example);
    const pool = new Pool(() => new InProcessPort(catalogue.cells), 1);
    const shares = await asked(pool, 'shares', sharesTask(store, drawsQuestion(store, item)));
    const read = cellOf('dynamicRatio');
    const wanted = spreads(store.snapshot(), [read], store.tolerances()).get(read)!.shares;
    expect(shares).toEqual(
      wanted.map((s) => ({ cell: s.cell.id, tolerance: s.tolerance, change: expect.closeTo(s.change, 12) })),
    );
    expect(shares.length).toBeGreaterThan(4);
  });

  it('go before what takes long, and end when they are told to', async () => {
    const gate = { open: false };
    const a = typed('a', 4);
    const work = slow({
      ...toy('work'),
      from: { a },
      *steps({ a }) {
        while (!gate.open) yield 0.5;
        return a;
      },
      rough: ({ a }) => a,
    });
    const twice = cell({ ...toy('twice'), from: { a }, compute: ({ a }) => 2 * a });
    const cells = new Map<string, Cell>([a, work, twice].map((c) => [c.id, c]));
    const pool = new Pool(() => new InProcessPort(cells), 1);
    const order: string[] = [];
    const ground = { inputs: { a: 4 }, held: {}, tolerances: { a: 1 }, from: 0, seed: 1 };
    const live = new Live(cells.values());
    pool.start({ owner: 1, cell: work, given: { a: 4 } }, (news) => news.is === 'ready' && order.push('first'));
    await settle();
    pool.start({ owner: 1, cell: work, given: { a: 5 } }, (news) => news.is === 'ready' && order.push('second'));
    const slowly: DrawsResult[] = [];
    const stop = pool.explore('draws', { ...ground, read: ['work'], count: 1e6, seconds: 60 }, (news) => {
      if (news.is === 'coming') slowly.push(news.result);
    });
    pool.explore(
      'draws',
      { ...ground, read: ['twice'], count: 5 },
      (news) => {
        if (news.is === 'ready') order.push('draws');
      },
      true,
    );
    gate.open = true;
    await until(() => slowly.length > 2, 'slow draws');
    expect(order).toEqual(['first', 'draws', 'second']);
    stop();
    await settle();
    const told = slowly.length;
    await settle();
    expect(slowly).toHaveLength(told);
    const [wanted] = drain(
      drawSteps(snapshot(live), { tolerances: new Map([[a, 1]]), reads: [work], count: told, seed: 1 }),
    );
    expect([...slowly.at(-1)![0]!.samples]).toEqual([...wanted!.samples].slice(0, slowly.at(-1)![0]!.samples.length));
  });
});
