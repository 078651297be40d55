import { expect, it } from 'vitest';
import type { Cell } from '../../src/graph/cell.ts';
import type { Answer, Found, Task } from '../../src/graph/explorer.ts';
import type { Store } from '../../src/notebook/store.ts';
import { groundOf } from '../../src/notebook/sweeps.ts';
import { say } from '../../src/units/phrase.ts';
import { revolutionsPerMinute, si } from '../../src/units/unit.ts';
import { Pool } from '../../src/workers/pool.ts';
import { catalogue, cellOf, figureOf, inputOf, opened, scenario } from '../notebook/notebooks.ts';
import { InProcessPort } from './in-process-port.ts';

/** What a worker makes of a target, and how far it said it was on the way. */
function sought(task: Task<'solve'>): Promise<{ readonly last: Found<Answer<'solve'>>; readonly shares: number[] }> {
  const shares: number[] = [];
  const pool = new Pool(() => new InProcessPort(catalogue.cells), 1);
  return new Promise((done) =>
    pool.explore('solve', task, (news) => {
      if (news.is === 'waiting') shares.push(news.done);
      else if (news.is !== 'coming') done({ last: news, shares });
    }),
  );
}
const taskOf = (store: Store, read: string, target: number, vary: string, range: readonly [number, number]) => ({
  ...groundOf(store),
  ...(store.state(cellOf(read)).is === 'ready' ? { known: figureOf(store, read) } : {}),
  vary,
  read,
  target,
  range,
});
async function settingFor(store: Store, ...ask: [string, number, string, readonly [number, number]]): Promise<number> {
  const { last, shares } = await sought(taskOf(store, ...ask));
  if (last.is !== 'ready') throw new Error(JSON.stringify(last));
  expect(shares).toEqual(shares.toSorted((a, b) => a - b));
  expect(last.result.values).toHaveLength(1);
  return last.result.values[0]!;
}
const looking = (...ids: string[]): readonly Cell[] => ids.map(cellOf);

it('the setting that a worker finds for a slow result is one at which the page says what was asked for', async () => {
  const store = opened(scenario('two-cams'), 'late', looking('motoredPeak'));
  const [low, high] = inputOf('chamberVolume').slider!;
  const before = figureOf(store, 'motoredPeak');
  const found = await settingFor(store, 'motoredPeak', before * 1.05, 'chamberVolume', [low, high]);
  expect(found).toBeLessThan(figureOf(store, 'chamberVolume'));
  store.set([[inputOf('chamberVolume'), found]], { what: 'chamber' });
  expect(Math.abs(figureOf(store, 'motoredPeak') / (before * 1.05) - 1)).toBeLessThan(2e-3);
});

it('eight percent more torque by the bore alone is found on the quick grid, to half a percent', async () => {
  const store = opened(scenario('edge-of-premium'), null, looking('peakTorque'));
  store.set([[inputOf('curveStep'), si(1000, revolutionsPerMinute)]], { what: 'fewer speeds' });
  const [torque, bore] = [figureOf(store, 'peakTorque'), figureOf(store, 'bore')];
  const found = await settingFor(store, 'peakTorque', torque * 1.08, 'bore', [bore * 0.9, bore * 1.15]);
  // At one mean pressure torque goes with the square of the bore: some four percent of it.
  expect(found / bore).toBeGreaterThan(1.02);
  expect(found / bore).toBeLessThan(1.07);
  store.set([[inputOf('bore'), found]], { what: 'bore' });
  expect(Math.abs(figureOf(store, 'peakTorque') / (torque * 1.08) - 1)).toBeLessThan(0.005);
}, 120_000);

it('a target that cannot be looked for says why, in words', async () => {
  const store = opened({ ...scenario('edge-of-premium'), held: {} }); // no deck clearance
  const { last } = await sought(taskOf(store, 'motoredPeak', 1e6, 'crankingSpeed', [15, 30]));
  expect(last.is === 'fault' && say(last.message, 'us')).toMatch(/^Give deck height/);
});
