import type { Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { violations } from './pieces/axe.ts';
import { inBrowser, profile, settled, shown, type, visit } from './visit.ts';

inBrowser();

const wide = { width: 1280, height: 900 };
const narrow = { width: 390, height: 844 };

const panel = (page: Page): Locator => page.locator('figure#best1');
const button = (page: Page, name: string): Locator => panel(page).getByRole('button', { name, exact: true });
const dots = (page: Page): Locator => panel(page).getByRole('radio');
async function choose(page: Page, list: string, label: string): Promise<void> {
  await panel(page).getByRole('combobox', { name: list, exact: true }).selectOption({ label });
  await settled(page);
}
async function write(page: Page, blank: string, text: string): Promise<void> {
  const box = panel(page).getByRole('textbox', { name: blank, exact: true });
  await box.fill(text);
  await box.blur();
  await settled(page);
}
/** What is told of the design that is looked at, by name. */
async function told(page: Page): Promise<Map<string, string>> {
  const rows = await panel(page)
    .locator('.design li')
    .evaluateAll((all) => all.map((li) => [li.querySelector('span')!.textContent, li.querySelector('b')!.textContent]));
  return new Map(rows as [string, string][]);
}
/** A page with a look for the best: ratio against clearance, forty designs, worked out while one waits. */
async function quick(size = wide, more: object = {}): Promise<Page> {
  const page = await visit('', await profile({ viewport: size, open: 'compression', ...more }));
  await page.getByRole('button', { name: 'Add the best of many here' }).first().click();
  await settled(page);
  await choose(page, 'what is wanted', 'dynamic compression ratio');
  await choose(page, 'Second aim: what is wanted', 'intake valve to piston, least');
  await choose(page, 'Changed, 2', 'cut all reliefs deeper by');
  await choose(page, 'Limit 1', 'no other limit');
  await write(page, 'How many designs', '40');
  return page;
}
async function look(page: Page): Promise<void> {
  await button(page, 'Look for it').click();
  await button(page, 'Look again').waitFor();
  await settled(page);
}

describe('a look for the best', () => {
  it.each([wide, narrow])(
    'runs to its end, and what is kept of it says on the page what it said there ($width px)',
    async (size) => {
      const page = await quick(size);
      await look(page);
      expect(await panel(page).getByRole('status').innerText()).toMatch(/^Worked out: 40\./);
      expect(await dots(page).count()).toBeGreaterThan(8);
      await dots(page).nth(0).press('ArrowRight');
      await dots(page).nth(1).press('ArrowDown');
      const design = await told(page);
      expect([...design.keys()].slice(0, 4)).toEqual([
        'Intake closing',
        'Cut all reliefs deeper by',
        'Dynamic compression ratio',
        'Intake valve to piston, least',
      ]);
      const ratio = await shown(page, 'dynamicRatio');
      await button(page, 'Keep as a variant').click();
      await settled(page);
      expect(await shown(page, 'dynamicRatio')).toBe(ratio); // what is looked at stays
      await page
        .getByRole('button', { name: /^Best of 40, no\. 3/ })
        .first()
        .click();
      await settled(page);
      expect(await shown(page, 'dynamicRatio')).toBe(design.get('Dynamic compression ratio'));
      // It stands on the page as it was found, and the look says that it was of another engine.
      expect(await panel(page).getByRole('status').innerText()).toContain('The engine was changed since.');
    },
  );

  it('keeps in one step, which is taken back', async () => {
    const page = await quick();
    await look(page);
    await button(page, 'Keep as a variant').click();
    await settled(page);
    const kept = page.getByRole('button', { name: /^Best of 40, no\. 1/ });
    expect(await kept.count()).toBeGreaterThan(0);
    await page.keyboard.press('Control+z');
    await settled(page);
    expect(await kept.count()).toBe(0);
    expect(await dots(page).count()).toBeGreaterThan(8);
  });

  it('shows a front on which each is better in one and worse in the other, from the keyboard alone', async () => {
    const page = await quick();
    await button(page, 'Look for it').focus();
    await page.keyboard.press('Enter');
    await button(page, 'Look again').waitFor();
    await dots(page).nth(0).focus();
    const seen: [number, number][] = [];
    const count = await dots(page).count();
    for (let i = 0; i < count; i++) {
      const design = await told(page);
      seen.push([
        Number.parseFloat(design.get('Dynamic compression ratio')!),
        Number.parseFloat(design.get('Intake valve to piston, least')!),
      ]);
      expect(await panel(page).locator('.which').innerText()).toBe(`No. ${i + 1} of ${count}`);
      await page.keyboard.press('ArrowRight');
      await settled(page);
      await page.evaluate(() => new Promise(requestAnimationFrame));
    }
    const [ratios, gaps] = [seen.map(([r]) => r), seen.map(([, g]) => g)];
    expect(ratios).toEqual(ratios.toSorted((a, b) => b - a));
    expect(gaps).toEqual(gaps.toSorted((a, b) => a - b));
    await page.keyboard.press('Home');
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => document.activeElement?.textContent?.trim())).toBe('Keep as a variant');
  });

  it('is pointed at: the nearest dot is meant', async () => {
    const page = await quick(narrow, { hasTouch: true, isMobile: true });
    await look(page);
    const box = (await dots(page).nth(4).boundingBox())!;
    await page.touchscreen.tap(box.x + box.width / 2, box.y + box.height / 2);
    await settled(page);
    await expect.poll(() => panel(page).locator('.which').innerText()).toMatch(/^No\. 5 of/);
  });

  it('has a table of what it found', async () => {
    const page = await quick();
    await look(page);
    const count = await dots(page).count();
    await button(page, 'Table').click();
    expect(await panel(page).locator('tbody tr').count()).toBe(count);
    expect(await panel(page).locator('thead th').allInnerTexts()).toContain('Dynamic compression ratio');
  });

  it('of slow results shows how far it is, is stopped, and keeps what stands', async () => {
    const page = await visit('', await profile({ open: 'compression' }));
    await page.getByRole('button', { name: 'Add the best of many here' }).first().click();
    await settled(page);
    await button(page, 'Look for it').click();
    const bar = panel(page).getByRole('progressbar');
    await bar.waitFor();
    expect(await bar.getAttribute('aria-valuemax')).toBe('120');
    await expect
      .poll(async () => Number(await bar.getAttribute('aria-valuenow')), { timeout: 40_000 })
      .toBeGreaterThan(1);
    expect(await panel(page).locator('.look').innerText()).toMatch(/ of 120 designs, about \d+ (s|min) to go\./);
    await dots(page).first().waitFor();
    await button(page, 'Stop').click();
    await expect
      .poll(() => panel(page).getByRole('status').innerText())
      .toMatch(/^Stopped\. What was found stands\. Worked out: \d+\./);
    expect(await panel(page).getByRole('progressbar').count()).toBe(0);
    expect(await button(page, 'Look again').evaluate((e) => e === document.activeElement)).toBe(true);
    expect(await dots(page).count()).toBeGreaterThan(0);
    expect((await told(page)).get('Fuel verdict, here')).toMatch(/comfortable|borderline/);
  });

  it('is stopped by an edit of the engine, and says so', async () => {
    const page = await visit('', await profile({ open: 'compression' }));
    await page.getByRole('button', { name: 'Add the best of many here' }).first().click();
    await settled(page);
    await button(page, 'Look for it').click();
    await panel(page).getByRole('progressbar').waitFor();
    await type(page, 'bore', '4.060');
    await expect
      .poll(() => panel(page).getByRole('status').innerText())
      .toMatch(/^The engine was changed, and that stopped the look\./);
  });

  it('that cannot be says why, in words', async () => {
    const page = await quick();
    await write(page, 'How many designs', '5');
    expect(await panel(page).getByRole('alert').innerText()).toBe(
      'Write how many designs to try: a whole number from 10 to 1000.',
    );
    await choose(page, 'Changed, 2', 'cam advance, crank degrees');
    await button(page, 'Look for it').click();
    await expect.poll(() => panel(page).getByRole('status').innerText()).toMatch(/both move cam advance/);
  });

  it.each([
    ['light', wide],
    ['dark', narrow],
  ] as const)('is for everybody: nothing for axe to find (%s)', async (colorScheme, size) => {
    const page = await quick(size, { colorScheme });
    expect(await violations(page, 'figure#best1')).toEqual([]);
    await look(page);
    expect(await violations(page, 'figure#best1')).toEqual([]);
  });
});
