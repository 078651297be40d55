import type { Browser, BrowserContext, BrowserContextOptions, Locator, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, inject } from 'vitest';
import { launch } from './browser.ts';

/** What the tests read of the page's element. */
interface Notebook extends Element {
  readonly store: { readonly revision: number; readonly document: object };
}

let browser: Browser;
const contexts: BrowserContext[] = [];
let complaints: string[] = [];

/** One browser for the tests of a file; each test must leave the console without an error. */
export function inBrowser(): void {
  beforeAll(async () => {
    browser = await launch();
  });
  afterAll(() => browser?.close());
  afterEach(async () => {
    const heard = complaints;
    complaints = [];
    await Promise.all(contexts.splice(0).map((context) => context.close()));
    expect(heard).toEqual([]);
  });
}

/** What was complained of until now in this test; it is not held against it any more. */
export function complaintsSoFar(): readonly string[] {
  return complaints.splice(0);
}

/**
 * A browser profile of its own; it has been nowhere, save that the chapters of what is computed at once are open, and
 * those that are named besides, unless a first visit is asked for.
 */
export async function profile({
  isFirst = false,
  open = '',
  ...options
}: BrowserContextOptions & { readonly isFirst?: boolean; readonly open?: string } = {}): Promise<BrowserContext> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, ...options });
  if (!isFirst)
    await context.addInitScript((chapters) => {
      if (location.protocol === 'http:' && !localStorage.getItem('closing-angle/opened'))
        localStorage.setItem('closing-angle/opened', chapters);
    }, `block chamber cam compression air fuel valves ${open}`);
  contexts.push(context);
  context.setDefaultTimeout(20_000);
  context.on('page', (page) => {
    page.on('pageerror', (error) => complaints.push(`${error.name}: ${error.message}`));
    page.on('console', (message) => {
      if (message.type() === 'error') complaints.push(message.text());
    });
  });
  return context;
}

/** Opens the notebook and waits until all of it is there. */
export async function visit(at = '', context?: BrowserContext): Promise<Page> {
  const page = await (context ?? (await profile())).newPage();
  await page.goto(inject('address') + at);
  await complete(page);
  return page;
}

/** Waits until what was done last is painted: the quick figures. */
export const settled = (page: Page): Promise<void> => marked(page, 'settled');
/** Waits until nothing is left to compute, slow figures included. */
export const complete = (page: Page): Promise<void> => marked(page, 'complete');

const marked = (page: Page, mark: 'settled' | 'complete'): Promise<void> =>
  page.evaluate(
    (mark) =>
      new Promise<void>((done) => {
        const look = (): void => {
          const revision = document.querySelector<Notebook>('notebook-page')?.store.revision;
          if (document.documentElement.dataset[mark] === String(revision)) done();
          else requestAnimationFrame(look);
        };
        look();
      }),
    mark,
  );

/** The value of an answer as it is shown, by the cell's id. */
export async function shown(page: Page, id: string): Promise<string> {
  await settled(page);
  return (await page.locator(`#${id} .val`).innerText()).trim();
}
/** What the field of a cell shows, by the cell's id. */
export const field = (page: Page, id: string): Locator => page.locator(`#${id} input.num`);

/** Types a figure into a field in place of what is there, and leaves it. */
export async function type(page: Page, id: string, figure: string): Promise<void> {
  await field(page, id).fill(figure);
  await field(page, id).blur();
  await settled(page);
}

export async function click(page: Page, name: string | RegExp): Promise<void> {
  await page.getByRole('button', { name, exact: typeof name === 'string' }).click();
  await settled(page);
}
/** The tools at the head of the page: undo, redo, reset, units, share. */
export const tool = (page: Page, name: string | RegExp): Locator =>
  page.getByRole('group', { name: 'Notebook', exact: true }).getByRole('button', { name });
export async function use(page: Page, name: string | RegExp): Promise<void> {
  await tool(page, name).click();
  await settled(page);
}

/** Does something that takes a while to begin (a file is read, a chapter loaded), and waits until its figures are painted. */
export async function following(page: Page, act: () => Promise<unknown>): Promise<void> {
  // By the document itself: slow work that ends meanwhile makes a revision as well, and says nothing of what was asked.
  const before = await page.evaluateHandle(() => document.querySelector<Notebook>('notebook-page')!.store.document);
  await act();
  await page.waitForFunction(
    (before) => {
      const { store } = document.querySelector<Notebook>('notebook-page')!;
      return store.document !== before && document.documentElement.dataset.settled === String(store.revision);
    },
    before,
    { polling: 'raf' },
  );
  await before.dispose();
}

/** Waits until the browser keeps the reader's own notebook with this in it. */
export async function kept(page: Page, text: string): Promise<void> {
  await page.waitForFunction((text) => localStorage.getItem('closing-angle/mine')?.includes(text), text);
}

/** Makes something when it is first asked for, and gives the same again after that. */
export function once<T>(make: () => Promise<T>): () => Promise<T> {
  let made: Promise<T> | undefined;
  return () => (made ??= make());
}

/** Lets a second pass on the page's clock, without waiting for it: a hand that rests. */
export const rest = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const now = performance.now.bind(performance);
    performance.now = () => now() + 1000;
  });
