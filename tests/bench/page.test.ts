import { gzipSync } from 'node:zlib';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import type { Browser, CDPSession, Page } from 'playwright-core';
import { launch } from '../e2e/browser.ts';

// Benchmarks of the built page. They print; a person judges against the bars named in the output.
let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser.close());

const median = (all: readonly number[]): number => all.toSorted((a, b) => a - b)[all.length >> 1]!;

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly ts: number;
  readonly dur?: number;
  readonly tid: number;
  readonly args: { readonly name?: string };
}

/** Busy time of the page's main thread (ms) in each window between two marks. */
async function busy(cdp: CDPSession, moves: number, move: (i: number) => Promise<void>): Promise<number[]> {
  const events: TraceEvent[] = [];
  cdp.on('Tracing.dataCollected', ({ value }) => events.push(...(value as unknown as TraceEvent[])));
  await cdp.send('Tracing.start', {
    categories: 'devtools.timeline,disabled-by-default-devtools.timeline,toplevel,blink.user_timing',
    transferMode: 'ReportEvents',
  });
  for (let i = 0; i < moves; i++) await move(i);
  const done = new Promise((resolve) => cdp.once('Tracing.tracingComplete', resolve));
  await cdp.send('Tracing.end');
  await done;
  const main = events.find((e) => e.name === 'thread_name' && e.args.name === 'CrRendererMain')!.tid;
  const marks = events
    .filter((e) => e.name.startsWith('bench-'))
    .map((e) => e.ts)
    .toSorted((a, b) => a - b);
  const tasks = events.filter((e) => e.tid === main && e.name === 'RunTask' && e.dur !== undefined);
  return marks
    .slice(0, -1)
    .map((from, i) =>
      tasks.filter((t) => t.ts >= from && t.ts < marks[i + 1]!).reduce((sum, t) => sum + t.dur! / 1000, 0),
    );
}

async function open(width: number, height: number): Promise<{ page: Page; cdp: CDPSession }> {
  const page = await browser.newPage({ viewport: { width, height } });
  await page.goto(inject('address'));
  await page.waitForSelector('html[data-complete]');
  await page.waitForTimeout(500);
  return { page, cdp: await page.context().newCDPSession(page) };
}

/** Drags the opening's intake-closing slider, one move at a time. */
async function dragging(page: Page): Promise<(i: number) => Promise<void>> {
  const slider = page.locator('.three input.slide').nth(1);
  const box = (await slider.boundingBox())!;
  const y = box.y + box.height / 2;
  await page.mouse.move(box.x + box.width * 0.5, y);
  await page.mouse.down();
  return async (i) => {
    await page.evaluate((n) => performance.mark(`bench-${n}`), i);
    await page.mouse.move(box.x + box.width * (0.5 + 0.3 * Math.sin(i / 4)), y);
    await page.waitForTimeout(90);
  };
}

test.each([
  [1, 16.7],
  [4, 50],
])(
  'main thread for one move of a slider, whole start page in 1280 x 2400, CPU slowed %s times',
  async (slowed, bar) => {
    const { page, cdp } = await open(1280, 2400);
    await cdp.send('Emulation.setCPUThrottlingRate', { rate: slowed });
    const move = await dragging(page);
    for (let i = 0; i < 10; i++) await move(i);
    const times = await busy(cdp, 40, move);
    await page.mouse.up();
    console.log(
      `CPU / ${slowed}: ${median(times).toFixed(1)} ms median, ${Math.max(...times).toFixed(1)} worst (bar ${bar})`,
    );
    expect(times.length).toBe(39);
    await page.close();
  },
);

/** How long each frame was (ms) while something went on. */
async function frames(page: Page, doing: () => Promise<void>): Promise<number[]> {
  await page.evaluate(() => {
    const state = { last: 0, gaps: [] as number[] };
    Object.assign(globalThis, { bench: state });
    const tick = (t: number): void => {
      if (state.last) state.gaps.push(t - state.last);
      state.last = t;
      requestAnimationFrame(tick);
    };
    requestAnimationFrame(tick);
  });
  await doing();
  return page.evaluate(() => (globalThis as unknown as { bench: { gaps: number[] } }).bench.gaps);
}
const told = (gaps: readonly number[]): string =>
  `${gaps.length} frames, worst ${Math.max(...gaps).toFixed(1)} ms, over 33 ms: ${gaps.filter((g) => g > 33).length}`;

test('frames while the open page is scrolled', async () => {
  const { page } = await open(1280, 900);
  const gaps = await frames(page, async () => {
    for (let i = 0; i < 60; i++) {
      await page.mouse.wheel(0, 120);
      await page.waitForTimeout(16);
    }
  });
  console.log(`scrolling: ${told(gaps)}`);
  expect(gaps.length).toBeGreaterThan(20);
  await page.close();
});

test('frames while the crank is turned, with section and lifts in sight', async () => {
  const { page } = await open(1280, 1400);
  await page.getByRole('button', { name: 'Turn the crank' }).click();
  const slider = page.locator('crank-view .turn');
  const box = (await slider.boundingBox())!;
  const y = box.y + box.height / 2;
  await page.waitForTimeout(500);
  await page.mouse.move(box.x + box.width * 0.2, y);
  await page.mouse.down();
  const gaps = await frames(page, async () => {
    for (let i = 0; i < 60; i++) {
      await page.mouse.move(box.x + box.width * (0.2 + i / 100), y);
      await page.waitForTimeout(16);
    }
  });
  await page.mouse.up();
  console.log(`turning the crank: ${told(gaps)} (bar: none)`);
  expect(gaps.length).toBeGreaterThan(60);
  await page.close();
});

/** Times (ms) from an edit to the first look of the torque curve and to what stays; the longest task of the page meanwhile. */
async function curveTimes(page: Page, edits: readonly (readonly [id: string, value: number])[]) {
  return page.evaluate(async (edits) => {
    interface Cells {
      get(id: string): unknown;
    }
    interface Seen {
      readonly is: string;
    }
    const { store } = document.querySelector('notebook-page') as unknown as {
      readonly store: {
        readonly catalogue: { readonly cells: Cells };
        readonly live: { state(cell: unknown): Seen };
        set(values: readonly (readonly [unknown, number])[], edit: { readonly what: string }): void;
        watchAll(call: () => void): () => void;
      };
    };
    const cell = (id: string): unknown => store.catalogue.cells.get(id);
    const curve = cell('torqueCurve');
    let longest = 0;
    const observer = new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) longest = Math.max(longest, entry.duration);
    });
    observer.observe({ type: 'longtask' });
    const times: [first: number, last: number][] = [];
    for (const [id, value] of edits) {
      const start = performance.now();
      let first = 0;
      await new Promise<void>((done) => {
        const stop = store.watchAll(() => {
          const { is } = store.live.state(curve);
          if (is === 'coming' && first === 0) first = performance.now() - start;
          if (is !== 'ready' || first === 0) return;
          times.push([first, performance.now() - start]);
          stop();
          done();
        });
        store.set([[cell(id), value]], { what: 'bench' });
      });
    }
    observer.disconnect();
    return { times, longest };
  }, edits);
}

test.each([
  ['Edge of premium', 200, 60],
  ['Milled four', 260, 60],
])('the torque curve of %s', async (title, cold, warm) => {
  const context = await browser.newContext({ viewport: { width: 1280, height: 900 } });
  await context.addInitScript(() => localStorage.setItem('closing-angle/opened', 'output'));
  const page = await context.newPage();
  await page.goto(inject('address'));
  await page.waitForSelector('html[data-complete]');
  if (title !== 'Edge of premium') await page.getByRole('link', { name: title }).click();
  await page.locator('#chapter-output').scrollIntoViewIfNeeded();
  await page.waitForSelector('#figure-output svg circle');
  await page.waitForTimeout(4000);
  const first = ({ times }: { readonly times: readonly (readonly [number, number])[] }): number =>
    median(times.map(([t]) => t));
  const near = await curveTimes(
    page,
    Array.from({ length: 7 }, (_, i) => ['totalSpark', 0.55 + i * 1e-4]),
  );
  // Pipes of another length are cut into other cells: no state fits, each speed begins from rest.
  const far = await curveTimes(
    page,
    Array.from({ length: 7 }, (_, i) => ['runnerLength', (i % 2 ? 0.24 : 0.29) + i * 1e-5]),
  );
  console.log(
    `torque curve of ${title}, 12 speeds, workers of the page: first look ${first(far).toFixed(0)} ms cold (bar ${cold}), ${first(near).toFixed(0)} ms warm (bar ${warm}); what stays after ${median(far.times.map(([, t]) => t)).toFixed(0)} ms; longest task of the page ${Math.max(near.longest, far.longest).toFixed(0)} ms (bar 50)`,
  );
  expect(far.times.length).toBe(7);
  await context.close();
});

test('scripts before the first readout, and to the first figure', async () => {
  const folder = inject('folder');
  const html = readFileSync(join(folder, 'index.html'), 'utf8');
  const size = (file: string): number => gzipSync(readFileSync(join(folder, file))).length;
  const first = [...html.matchAll(/(?:src|href)="\.\/(assets\/[^"]+\.js)"/g)].map(([, file]) => file!);
  const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
  const asked = new Set<string>();
  page.on('request', (r) => r.url().endsWith('.js') && asked.add(`assets/${r.url().split('/').at(-1)!}`));
  await page.goto(inject('address'));
  await page.waitForSelector('figure svg circle');
  await page.waitForSelector('html[data-complete]');
  const page1 = [...asked].filter(
    (f) => !f.includes('worker') && readdirSync(join(folder, 'assets')).includes(f.slice(7)),
  );
  const sum = (files: readonly string[]): string => (files.reduce((n, f) => n + size(f), 0) / 1000).toFixed(1);
  console.log(
    `scripts (gzip): ${sum(first)} kB before the first readout (bar 60), ${sum(page1)} kB with every figure of the first screens (bar 180)`,
  );
  expect(first.length).toBeGreaterThan(0);
  await page.close();
});
