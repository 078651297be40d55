import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { violations } from './pieces/axe.ts';
import { click, complete, field, following, inBrowser, profile, shown, type, visit } from './visit.ts';

inBrowser();

/** The chapters of breathing and output open, besides the usual ones. */
const opened = (options: Parameters<typeof profile>[0] = {}): ReturnType<typeof profile> =>
  profile({ open: 'breathing output', ...options });

/** Torque by speed, as the figure's own table says it. */
async function curve(page: Page): Promise<readonly (readonly [rpm: number, torque: number, power: number])[]> {
  const figure = page.locator('#figure-output');
  await figure.scrollIntoViewIfNeeded();
  await complete(page);
  await figure.getByRole('button', { name: 'Table' }).click();
  await figure.locator('tbody tr').first().waitFor();
  const rows = await figure.locator('tbody tr').allInnerTexts();
  await figure.getByRole('button', { name: 'Figure' }).click();
  return rows.map((row) => row.split('\t').map((cell) => Number.parseFloat(cell)) as [number, number, number]);
}

describe('the torque curve', () => {
  it('comes from the workers, whole, and follows an edit', async () => {
    const page = await visit('', await opened());
    const before = await curve(page);
    expect(before.map(([rpm]) => rpm)).toEqual(Array.from({ length: 12 }, (_, i) => 1000 + 500 * i));
    // An eight of 368 cubic inches on 91: builders would look for 1.0 to 1.1 lbf ft to the cubic inch.
    const most = Math.max(...before.map(([, torque]) => torque));
    expect(most).toBeGreaterThan(350);
    expect(most).toBeLessThan(410);
    for (const [rpm, torque, power] of before) expect(Math.abs((torque * rpm) / 5252.113 - power)).toBeLessThan(1.5);
    await type(page, 'carburetorFlow', '400');
    const after = await curve(page);
    expect(after.at(-1)![1]).toBeLessThan(before.at(-1)![1] * 0.97);
    expect(Math.abs(after[0]![1] / before[0]![1] - 1)).toBeLessThan(0.02);
  });

  it('is asked for only where it is read: a closed chapter far below costs nothing', async () => {
    const page = await visit('', await profile({ isFirst: true }));
    const worked = (): Promise<number> =>
      page.evaluate(() => {
        interface Found {
          readonly store: {
            readonly catalogue: { readonly cells: ReadonlyMap<string, unknown> };
            readonly live: { state(cell: unknown): { readonly is: string } };
          };
        }
        const { store } = document.querySelector('notebook-page') as unknown as Found;
        return store.live.state(store.catalogue.cells.get('engineBySpeed')).is === 'ready' ? 1 : 0;
      });
    expect(await worked()).toBe(0);
    await page.locator('#chapter-output').scrollIntoViewIfNeeded();
    await expect.poll(worked, { timeout: 20_000 }).toBe(1);
    expect(await page.locator('.folded').filter({ hasText: 'Torque and power' }).innerText()).toMatch(
      /About \d{3} lbf ft at \d{4} rpm and \d{3} hp at \d{4} rpm\./,
    );
  });

  it('of the late cam crosses the early one’s: less low, more high', async () => {
    const page = await visit('', await opened());
    await following(page, () => page.getByRole('link', { name: /^One block, two cams/ }).click());
    await click(page, 'Early cam');
    const early = await curve(page);
    await click(page, 'Late cam');
    const late = await curve(page);
    const at = (rows: typeof early, speed: number): number => rows.find(([rpm]) => rpm === speed)![1];
    expect(at(early, 2500)).toBeGreaterThan(at(late, 2500) + 15);
    expect(at(late, 6500)).toBeGreaterThan(at(early, 6500) + 15);
  });

  it('says what is wrong with a spark table, and works with a good one', async () => {
    const page = await visit('', await opened());
    await page.locator('#sparkEntry').getByLabel('A table').check();
    const table = page.locator('#sparkAdvance');
    expect(await table.getByRole('alert').innerText()).toBe('Paste the spark table: engine speed and advance.');
    await table.locator('textarea').fill('1000 12\n3000 34\n2000 30');
    await table.locator('textarea').blur();
    await expect.poll(() => table.getByRole('alert').innerText()).toMatch(/^Row 3 of the spark table is not faster/);
    await table.locator('textarea').fill('1000 12\n3000 34');
    await table.locator('textarea').blur();
    await complete(page);
    expect(Number.parseFloat(await shown(page, 'peakTorque'))).toBeGreaterThan(350);
  });

  it('can be swept: peak power against the closing, its points dotted as they come', async () => {
    const page = await visit('', await opened());
    const chapter = page.locator('section[aria-labelledby=chapter-output]');
    await chapter.getByRole('button', { name: 'Add a sweep here' }).click();
    const sweep = chapter.locator('sweep-figure');
    await sweep.getByRole('combobox', { name: 'What is shown' }).selectOption('peakPower');
    // Power stands on the lobes; the closing moves with them, and so it can be swept.
    expect(await sweep.getByRole('combobox', { name: 'Against what' }).inputValue()).toBe('intakeClosing');
    await page.locator('sweep-figure').last().scrollIntoViewIfNeeded();
    await expect.poll(() => sweep.locator('svg .lines circle').count(), { timeout: 40_000 }).toBeGreaterThan(3);
  });

  it('has nothing for axe to find, on a phone in the dark with its groups open', async () => {
    const page = await visit('', await opened({ viewport: { width: 390, height: 844 }, colorScheme: 'dark' }));
    await page.locator('#chapter-output').scrollIntoViewIfNeeded();
    for (const name of ['What the model assumes', 'The engine itself, and the speeds of the curve'])
      await click(page, name);
    await curve(page);
    expect(await violations(page, 'section[aria-labelledby=chapter-output]')).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBe(0);
    expect(await field(page, 'curveTo').inputValue()).toBe('6500');
  });
});
