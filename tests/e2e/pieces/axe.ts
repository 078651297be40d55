import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const source = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
/** WCAG 2.1 A and AA, and what is good practice besides. */
const rules = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'best-practice'];

interface Found {
  readonly violations: readonly {
    readonly id: string;
    readonly nodes: readonly { readonly html: string; readonly failureSummary?: string }[];
  }[];
  readonly passes: readonly unknown[];
}

/** What axe-core finds against a page as it stands, or a part of it, one line each. All is brought into view first, and drawn. */
export async function violations(page: Page, part = 'html'): Promise<string[]> {
  const size = page.viewportSize()!;
  const height = await page.evaluate(() => document.documentElement.scrollHeight);
  // What is drawn for the first time takes more room than before.
  await page.setViewportSize({ width: size.width, height: Math.min(Math.round(height * 1.25), 30_000) });
  await drawn(page);
  await page.evaluate(source);
  const found = await page.evaluate(
    ({ rules, part }) =>
      (globalThis as unknown as { axe: { run(part: string, options: unknown): Promise<Found> } }).axe.run(part, {
        runOnly: rules,
        resultTypes: ['violations'],
      }),
    { rules, part },
  );
  await page.setViewportSize(size);
  if (found.passes.length < 10) throw new Error('axe-core looked at next to nothing');
  return found.violations.flatMap(({ id, nodes }) =>
    nodes.map((n) => `${id}: ${n.html.slice(0, 160)} ${(n.failureSummary ?? '').split('\n').slice(1, 2).join('')}`),
  );
}

/** Waits until every figure that has something to show, or those of a part, has drawn it; they do once in sight. */
export async function drawn(page: Page, part = 'body'): Promise<void> {
  await page.waitForFunction(
    (part) =>
      Array.from(document.querySelectorAll(part))
        .flatMap((e) => Array.from(e.querySelectorAll('drawn-figure, line-plot')))
        .every(
          (e) =>
            e.querySelector('table') !== null ||
            e.querySelector('svg path') !== null ||
            e.querySelector('.frame.empty') !== null,
        ),
    part,
    { polling: 'raf' },
  );
}
const frames = (page: Page): Promise<void> =>
  page.evaluate(async () => {
    for (let i = 0; i < 4; i++) await new Promise(requestAnimationFrame);
  });
/** Makes the window as tall as the page for a moment, so that every figure is drawn as it now is. */
export async function drawAll(page: Page): Promise<void> {
  const size = page.viewportSize()!;
  const height = await page.evaluate(() => document.documentElement.scrollHeight);
  await page.setViewportSize({ width: size.width, height: Math.min(height + 100, 30_000) });
  await drawn(page);
  await frames(page); // what comes into sight is drawn anew then
  await page.setViewportSize(size);
}
