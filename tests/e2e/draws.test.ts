import { errorFunction } from 'simple-statistics';
import type { Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { violations } from './pieces/axe.ts';
import { click, complete, field, inBrowser, profile, settled, type, use, visit } from './visit.ts';

inBrowser();

const figure = (page: Page, id = 'draws1'): Locator => page.locator(`figure#${id}`);
/** A notebook with draws in the chapter of dynamic compression. */
async function withDraws(width = 1280, height = 900): Promise<Page> {
  const page = await visit('', await profile({ viewport: { width, height }, hasTouch: width < 700 }));
  await page.locator('chapter-section:has(#chapter-compression)').getByRole('button', { name: 'Add draws' }).click();
  await drawn(page);
  return page;
}
/** Waits until all draws that were asked for are on the page. */
async function drawn(page: Page, id = 'draws1'): Promise<void> {
  await figure(page, id).scrollIntoViewIfNeeded();
  await figure(page, id).locator('.frame:not(.stale) svg > rect').first().waitFor();
  await complete(page);
  await settled(page);
}
/** What stands around the picture, without the list of all that could be drawn. */
const words = async (page: Page, id = 'draws1'): Promise<string> =>
  (await figure(page, id).locator('.drawn, .stale-note, .bare, .bars-head').allInnerTexts())
    .join(' ')
    .replaceAll(/[\s\u00a0\u202f]+/g, ' ');
const picture = (page: Page): Promise<string> =>
  figure(page).locator('svg[role=img]').getAttribute('aria-label').then(String);
/** Waits until the words, and the picture with them, are about something. */
async function says(page: Page, what: RegExp): Promise<string> {
  await expect.poll(() => words(page), { timeout: 15_000 }).toMatch(what);
  const places = /Nine draws of ten have [^.]*\.\d+ and [^.]*\.\d+/;
  if (places.test(await words(page)))
    await expect.poll(async () => (await picture(page)).includes(places.exec(await words(page))![0])).toBe(true);
  return words(page);
}
async function choose(page: Page, label: string): Promise<void> {
  await figure(page).getByRole('combobox', { name: 'What is drawn' }).selectOption({ label });
}
/** The share of a normal distribution under a place in deviations. */
const normalUnder = (z: number): number => (1 + errorFunction(z / Math.SQRT2)) / 2;
/** The rows of the table in place of the figure. */
async function rows(page: Page): Promise<string[][]> {
  await figure(page).getByRole('button', { name: 'Table' }).click();
  const found = await figure(page)
    .locator('tbody tr')
    .evaluateAll((all) => all.map((tr) => Array.from(tr.children, (td) => td.textContent.trim())));
  await figure(page).getByRole('button', { name: 'Figure' }).click();
  return found;
}
/** What the store says of a result with its ±. */
const stated = (page: Page, id: string): Promise<{ readonly value: number; readonly plusMinus: number }> =>
  page.evaluate((id) => {
    const { store } = document.querySelector('notebook-page') as never as {
      store: {
        catalogue: { cells: Map<string, object> };
        state(cell: object): { value: number };
        spread(cell: object): { plusMinus: number };
      };
    };
    const cell = store.catalogue.cells.get(id)!;
    return { value: store.state(cell).value, plusMinus: store.spread(cell).plusMinus };
  }, id);

describe('draws', () => {
  it('are added, and say what the ± of the answer says: nine of ten within 1.64 / 1.96 of it', async () => {
    const page = await withDraws();
    const said = /between (\d\.\d+) and (\d\.\d+), half of them under (\d\.\d+)/.exec(await words(page))!;
    const [low, high, middle] = said.slice(1).map(Number) as [number, number, number];
    const { value, plusMinus } = await stated(page, 'dynamicRatio');
    expect(middle).toBeCloseTo(value, 1);
    expect(Math.abs(low - (value - (1.645 / 1.96) * plusMinus))).toBeLessThan(0.01);
    expect(Math.abs(high - (value + (1.645 / 1.96) * plusMinus))).toBeLessThan(0.01);
    const all = await rows(page);
    expect(all.reduce((sum, row) => sum + Number(row[2]), 0)).toBeGreaterThan(9990);
    await expect.poll(() => picture(page)).toContain('10,000 draws');
  });

  it('tell the chance of each verdict, and never that all is well', async () => {
    const page = await withDraws();
    await type(page, 'chamberVolume', '70.6');
    await figure(page).scrollIntoViewIfNeeded();
    // Here nearly all of it lies between 7.54 and 8.04; at sea level the edges are lower.
    await says(page, /Fuel verdict, here: borderline (in every draw|over 99 %)/);
    await type(page, 'chamberVolume', '67');
    await figure(page).scrollIntoViewIfNeeded();
    const here = /here: borderline (\d+) %, beyond this fuel (\d+) %\./;
    const [, near, over] = here.exec(await says(page, here))!;
    expect(Math.abs(Number(near) + Number(over) - 100)).toBeLessThanOrEqual(1);
    // Its places tell the same: the edge lies among them.
    const { value, plusMinus } = await stated(page, 'dynamicRatio');
    expect(Math.abs(Number(over) / 100 - normalUnder((value - 8.04) / (plusMinus / 1.96)))).toBeLessThan(0.04);
    expect(await figure(page).innerText()).not.toMatch(/\bsafe/i);
  });

  it('follow what is typed, and stay the same draws', async () => {
    const page = await withDraws();
    const before = await says(page, /Nine draws of ten/);
    await type(page, 'chamberVolume', '66');
    await figure(page).scrollIntoViewIfNeeded();
    await says(page, /here: borderline \d+ %, beyond this fuel/);
    await use(page, 'Undo');
    await figure(page).scrollIntoViewIfNeeded();
    await expect.poll(() => words(page)).toBe(before);
  });

  it('say what moves the result most, largest first, as its own panel does', async () => {
    const page = await withDraws();
    const bars = figure(page).locator('.bars span:nth-child(3n + 1)');
    expect(await bars.first().innerText()).toMatch(/^Intake duration, advertised ± 2$/);
    await click(page, 'Why: Dynamic compression ratio');
    const panel = page.locator('why-panel .bars span:nth-child(3n + 1)');
    await expect.poll(() => panel.allInnerTexts()).toEqual((await bars.allInnerTexts()).slice(0, 6));
  });

  it('show another result, as many times as is asked, and refuse what is no number of times', async () => {
    const page = await withDraws();
    await choose(page, 'clearance volume');
    expect(await says(page, /clearance volume between/)).not.toMatch(/verdict|borderline/);
    const blank = figure(page).getByRole('textbox', { name: 'How many draws' });
    await blank.fill('2,000');
    await blank.blur();
    await expect.poll(() => picture(page)).toContain('2,000 draws');
    await blank.fill('many');
    await blank.blur();
    expect(await figure(page).getByRole('alert').innerText()).toBe(
      'Write how many times: a whole number from 100 to 100,000.',
    );
  });

  it('have nothing to draw where nothing has a ±, and lead to a field that could have one', async () => {
    const page = await withDraws();
    await choose(page, 'density altitude');
    const bare = figure(page).locator('.bare');
    expect(await bare.innerText()).toMatch(
      /^Nothing that density altitude stands on has a ±, so there is nothing to draw\./,
    );
    await bare.getByRole('link').click();
    const id = (await page.evaluate(() => document.activeElement?.closest('.field')?.id))!;
    expect(await field(page, id).count()).toBe(1);
    await page
      .locator(`#${id}`)
      .getByRole('button', { name: /^Tolerance of/ })
      .click();
    await page.locator(`#${id} input.tolerance`).fill('1');
    await page.locator(`#${id} input.tolerance`).press('Enter');
    await figure(page).scrollIntoViewIfNeeded();
    await says(page, /have density altitude between/);
  });

  it('are asked for in the panel of an answer, and shown again where they are there already', async () => {
    const page = await visit();
    await click(page, 'Why: Cranking pressure');
    const ask = page.locator('#crankingPressure + why-panel').getByRole('button', { name: 'Draw it 10,000 times' });
    await ask.click();
    await drawn(page);
    expect(await figure(page).getByRole('combobox').inputValue()).toBe('crankingPressure');
    await expect
      .poll(() =>
        figure(page)
          .getByRole('combobox')
          .evaluate((e) => e === document.activeElement),
      )
      .toBe(true);
    await ask.click();
    expect(await page.locator('draws-figure').count()).toBe(1);
  });

  it('are removed, and brought back by a step back', async () => {
    const page = await withDraws();
    await figure(page).getByRole('button', { name: 'Remove these draws' }).click();
    await settled(page);
    expect(await figure(page).count()).toBe(0);
    await use(page, 'Undo');
    await says(page, /Nine draws of ten/);
  });

  it('wait for a value that is missing, over the last good figure', async () => {
    const page = await withDraws();
    await type(page, 'stroke', 'long');
    await figure(page).scrollIntoViewIfNeeded();
    await says(page, /Waits for stroke\. This is the last good figure\./);
    expect(await figure(page).locator('.frame.stale svg > rect').count()).toBeGreaterThan(10);
  });

  it.each([
    [1280, 900],
    [390, 844],
  ])('are worked with keys alone, run off no side, and axe-core finds nothing against them, %s by %s', async (w, h) => {
    const page = await withDraws(w, h);
    const select = figure(page).getByRole('combobox');
    await select.focus();
    await page.keyboard.press('Tab');
    await page.keyboard.type('500');
    await page.keyboard.press('Tab');
    await drawn(page);
    await expect.poll(() => picture(page)).toContain('500 draws');
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(w);
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      expect(await violations(page, '#draws1')).toEqual([]);
    }
  });
});

describe('draws of what takes long', () => {
  it('begin once hands rest, tell how far they are, stop, and go on with what they have', async () => {
    const page = await visit();
    await page.locator('chapter-section:has(#chapter-compression)').getByRole('button', { name: 'Add draws' }).click();
    await figure(page).scrollIntoViewIfNeeded();
    await choose(page, 'peak power');
    const seconds = figure(page).getByRole('textbox', { name: 'Seconds of drawing' });
    await seconds.fill('20');
    await seconds.blur();
    const status = figure(page).getByRole('status');
    await expect
      .poll(() => status.innerText(), { timeout: 30_000 })
      .toMatch(/^Drawing: \d+ of 20 s, [1-9]\d* draws\. stop$/);
    expect(await words(page)).toMatch(/So far peak power came to|have peak power between/);
    await figure(page).getByRole('button', { name: 'stop' }).click();
    const stopped = /^Stopped: (\d+) of 20 s, (\d+) draws?\. go on$/.exec(await status.innerText())!;
    await page.waitForTimeout(1500);
    expect(await status.innerText()).toBe(stopped[0]);
    await figure(page).getByRole('button', { name: 'go on' }).click();
    const draws = async (): Promise<number> => Number(/(\d+) draws/.exec(await words(page))?.[1] ?? 0);
    await expect.poll(draws, { timeout: 30_000 }).toBeGreaterThan(Number(stopped[2]));
    await expect.poll(() => figure(page).locator('.bars i').count(), { timeout: 40_000 }).toBeGreaterThan(0);
  });
});
