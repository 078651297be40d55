import type { Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { byHand } from './by-hand.ts';
import { complete, field, inBrowser, profile, rest, settled, shown, tool, type, use, visit } from './visit.ts';

inBrowser();

const sweep = (page: Page, id = 'closing'): Locator => page.locator(`figure#${id}`);
/** The mark of a sweep: a slider over the picture. */
const mark = (page: Page, id = 'closing'): Locator => sweep(page, id).getByRole('slider');
async function now(mark: Locator): Promise<number> {
  return Number(await mark.getAttribute('aria-valuenow'));
}
async function choose(page: Page, list: string, label: string, id: string): Promise<void> {
  await sweep(page, id).getByRole('combobox', { name: list }).selectOption({ label });
  await settled(page);
}
async function write(page: Page, blank: string, text: string, id = 'closing'): Promise<void> {
  const box = sweep(page, id).getByRole('textbox', { name: blank });
  await box.fill(text);
  await box.blur();
  await settled(page);
}
/** The rows of a sweep's table, by what stands in their first cell. */
async function table(
  page: Page,
  id = 'closing',
): Promise<{ readonly heads: string[]; readonly rows: Map<string, string[]> }> {
  await sweep(page, id).getByRole('button', { name: 'Table' }).click();
  const found = sweep(page, id).getByRole('table');
  const rows = await found
    .locator('tbody tr')
    .evaluateAll((all) => all.map((tr) => Array.from(tr.children, (td) => td.textContent.trim())));
  const heads = await found.locator('thead th').allInnerTexts();
  await sweep(page, id).getByRole('button', { name: 'Figure' }).click();
  return { heads, rows: new Map(rows.map(([first, ...rest]) => [first!, rest])) };
}

describe('the mark of a sweep', () => {
  it('stands where the engine stands, and says so', async () => {
    const page = await visit();
    expect(await now(mark(page))).toBeCloseTo(61, 9);
    expect(await mark(page).getAttribute('aria-valuetext')).toBe(
      '61 degrees after bottom dead center, dynamic compression ratio 7.84',
    );
    await type(page, 'intakeClosing', '66');
    expect(await now(mark(page))).toBeCloseTo(66, 9);
  });

  it('is dragged with the mouse, which writes the input, and one step takes the drag back', async () => {
    const page = await visit();
    await mark(page).scrollIntoViewIfNeeded();
    await sweep(page).locator('svg').first().waitFor(); // figures out of sight are drawn when they come into view
    const { x, y, width, height } = (await mark(page).boundingBox())!;
    await page.mouse.move(x + width / 2, y + height / 2);
    await page.mouse.down();
    const seen: number[] = [];
    for (const by of [30, 60, 90]) {
      await page.mouse.move(x + width / 2 + by, y + height / 2);
      await rest(page);
      await settled(page);
      seen.push(await now(mark(page)));
      const closing = seen.at(-1)!;
      expect(Number(await field(page, 'intakeClosing').inputValue())).toBeCloseTo(closing, 9);
      expect(Number(await shown(page, 'dynamicRatio'))).toBeCloseTo(byHand({ closing }).dynamicRatio, 2);
    }
    await page.mouse.up();
    await settled(page);
    expect(seen[0]!).toBeGreaterThan(61);
    expect(seen.toSorted((a, b) => a - b)).toEqual(seen);
    expect(new Set(seen).size).toBe(3);
    // It moved the cam, not what is ground into it.
    expect(Number((await field(page, 'camAdvance').inputValue()).replace('−', '-'))).toBeCloseTo(61 - seen[2]!, 9);
    expect(await field(page, 'intakeDuration').inputValue()).toBe('270');
    await use(page, 'Undo');
    expect(await field(page, 'intakeClosing').inputValue()).toBe('61');
    expect(await tool(page, 'Undo').isDisabled()).toBe(true);
  });

  it('is moved with keys, half a degree or five at a time, and stays inside the sweep', async () => {
    const page = await visit();
    await mark(page).press('ArrowRight');
    await settled(page);
    expect(await field(page, 'intakeClosing').inputValue()).toBe('61.5');
    expect(Number(await shown(page, 'dynamicRatio'))).toBeCloseTo(byHand({ closing: 61.5 }).dynamicRatio, 2);
    await mark(page).press('Shift+ArrowLeft');
    await settled(page);
    expect(await field(page, 'intakeClosing').inputValue()).toBe('56.5');
    for (let i = 0; i < 6; i++) {
      await mark(page).press('PageUp');
      await settled(page);
    }
    expect(await field(page, 'intakeClosing').inputValue()).toBe('80');
  });

  it('counts every key, also those that come faster than pictures', async () => {
    const page = await visit();
    await mark(page).evaluate((mark) => {
      for (let i = 0; i < 4; i++)
        mark.dispatchEvent(new KeyboardEvent('keydown', { key: 'ArrowRight', bubbles: true }));
    });
    await settled(page);
    expect(await field(page, 'intakeClosing').inputValue()).toBe('63');
  });

  it('moves an input of its own as well: the altitude', async () => {
    const page = await visit();
    await mark(page, 'height').press('ArrowRight');
    await settled(page);
    expect(await field(page, 'altitude').inputValue()).toBe('700');
  });
});

describe('the sentence of a sweep', () => {
  it('names its ends, which can be typed', async () => {
    const page = await visit();
    await write(page, 'Sweep from', '50');
    await write(page, 'Sweep to', '70');
    expect(await mark(page).getAttribute('aria-valuemin')).toBe('50');
    expect(await mark(page).getAttribute('aria-valuemax')).toBe('70');
    await use(page, 'Undo');
    await use(page, 'Undo');
    expect(await mark(page).getAttribute('aria-valuemin')).toBe('40');
  });

  it('refuses ends that are none, and keeps the sweep', async () => {
    const page = await visit();
    for (const junk of ['early', '', '80']) {
      await write(page, 'Sweep from', junk);
      expect(await sweep(page).getByRole('alert').innerText()).toMatch(/^[A-Z“].*\.$/s);
      expect(await mark(page).getAttribute('aria-valuemin')).toBe('40');
    }
    await write(page, 'Sweep from', '45');
    expect(await sweep(page).getByRole('alert').count()).toBe(0);
    expect(await mark(page).getAttribute('aria-valuemin')).toBe('45');
  });

  it('draws one line for each value of a family, held against the README’s way of working them out', async () => {
    const page = await visit();
    await write(page, 'Values of Chamber volume', '64, 70; 77.5');
    const { heads, rows } = await table(page);
    expect(heads.slice(1)).toEqual(['64.0 cm³', '70.0 cm³', '77.5 cm³']);
    expect(rows.size).toBeGreaterThan(15);
    for (const [closing, ratios] of rows)
      for (const [i, chamber] of [64, 70, 77.5].entries())
        expect(Number(ratios[i])).toBeCloseTo(byHand({ chamber, closing: Number.parseFloat(closing) }).dynamicRatio, 2);
    await write(page, 'Values of Chamber volume', '64, big');
    expect(await sweep(page).getByRole('alert').innerText()).toMatch(/^big: /);
  });

  it('is told to show something else against something else', async () => {
    const page = await visit();
    await choose(page, 'What is shown', 'static compression ratio', 'closing');
    await choose(page, 'Against what', 'chamber volume', 'closing');
    await write(page, 'Sweep from', '60');
    await write(page, 'Sweep to', '80');
    const { rows } = await table(page);
    expect(rows.size).toBeGreaterThan(15);
    for (const [chamber, [ratio]] of rows)
      expect(Number(ratio)).toBeCloseTo(byHand({ chamber: Number.parseFloat(chamber) }).staticRatio, 2);
    await mark(page).press('ArrowRight');
    await settled(page);
    expect(await field(page, 'chamberVolume').inputValue()).toBe('70.5');
  });
});

describe('a sweep', () => {
  it('is added where it is asked for, removed, and brought back by a step back', async () => {
    const page = await visit();
    const all = (): Promise<number> => page.getByRole('button', { name: 'Remove this sweep' }).count();
    const before = await all();
    await page.getByRole('button', { name: 'Add a sweep here' }).first().click();
    await settled(page);
    expect(await all()).toBe(before + 1);
    await sweep(page, 'sweep1').getByRole('button', { name: 'Remove this sweep' }).click();
    await settled(page);
    expect(await all()).toBe(before);
    await page.keyboard.press('Control+z');
    await settled(page);
    expect(await sweep(page, 'sweep1').count()).toBe(1);
    expect(await now(mark(page, 'sweep1'))).toBeCloseTo(61, 9);
  });

  it('of a slow result arrives from the worker and follows an edit', async () => {
    const page = await visit();
    await page.getByRole('button', { name: 'Add a sweep here' }).last().click();
    await choose(page, 'What is shown', 'motored compression, peak', 'sweep1');
    await choose(page, 'Against what', 'cranking speed', 'sweep1');
    await complete(page);
    const peaks = [...(await table(page, 'sweep1')).rows.values()].map(([peak]) => Number(peak));
    expect(peaks.length).toBeGreaterThan(15);
    // The faster the starter turns, the less time there is to leak and to cool.
    expect(peaks.toSorted((a, b) => a - b)).toEqual(peaks);
    expect(new Set(peaks).size).toBeGreaterThan(10);
    const said = (): Promise<string | null> => mark(page, 'sweep1').getAttribute('aria-valuetext');
    expect(await said()).toContain(`peak ${await shown(page, 'motoredPeak')}`);
    await type(page, 'chamberVolume', '60');
    await complete(page);
    expect(await said()).toContain(`peak ${await shown(page, 'motoredPeak')}`);
    const tighter = [...(await table(page, 'sweep1')).rows.values()].map(([peak]) => Number(peak));
    expect(tighter.every((peak, i) => peak > peaks[i]!)).toBe(true);
  });

  it('of a slow result that nobody can compute says so, and the page goes on', async () => {
    const context = await profile();
    await context.route(/slow\.worker/, (route) => route.abort());
    const page = await visit('', context);
    await page.getByRole('button', { name: 'Add a sweep here' }).last().click();
    await choose(page, 'What is shown', 'motored compression, peak', 'sweep1');
    await complete(page);
    expect(await sweep(page, 'sweep1').innerText()).toContain('could not start its calculation in the background');
    await type(page, 'chamberVolume', '66');
    expect(Number(await shown(page, 'dynamicRatio'))).toBeCloseTo(byHand({ chamber: 66 }).dynamicRatio, 2);
  });
});
