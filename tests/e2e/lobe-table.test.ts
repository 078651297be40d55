import type { Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { click, inBrowser, profile, settled, shown, tool, use, visit } from './visit.ts';

inBrowser();

/** The chapter of the valves, its lobes taken from tables. */
async function onTables(options: Parameters<typeof profile>[0] = {}): Promise<Page> {
  const page = await visit('', await profile(options));
  page.setDefaultTimeout(6000);
  await page.locator('#chapter-valves').click();
  await click(page, 'Lift, duration and area');
  await page.locator('#lobeSource').getByLabel('From a table of lift').check();
  await settled(page);
  return page;
}
const box = (page: Page, id = 'intakeLobeTable'): Locator => page.locator(`#${id} textarea`);
const said = async (page: Page, id = 'intakeLobeTable'): Promise<string> =>
  (await page.locator(`#${id}`).getByRole('status').first().innerText()).trim();
const fault = async (page: Page, id = 'intakeLobeTable'): Promise<string> =>
  (await page.locator(`#${id}`).getByRole('alert').allInnerTexts()).join(' ').trim();
async function paste(page: Page, text: string, id = 'intakeLobeTable'): Promise<void> {
  await box(page, id).fill(text);
  await box(page, id).blur();
  await settled(page);
}
/** An invented lobe of 0.310 in, the square of a raised cosine over 150 cam degrees, its peak at 75. */
const height = (angle: number): number => 0.31 * ((1 - Math.cos((2 * Math.PI * angle) / 150)) / 2) ** 2;
const rows = Array.from({ length: 31 }, (_, i) => [i * 5, height(i * 5).toFixed(5)]);
const table = ['Cam degrees\tLift', ...rows.map((row) => row.join('\t'))].join('\n');

describe('a table of lift', () => {
  it('is asked for, read, and made the lobe', async () => {
    const page = await onTables();
    expect(await page.locator('#intakeLobeLift').count()).toBe(0);
    expect(await fault(page)).toBe('Paste the lift table of the intake lobe.');
    expect(await shown(page, 'dynamicRatio')).toBe('7.84'); // the card's timing goes on
    await paste(page, table);
    expect(await fault(page)).toBe('');
    expect(await said(page)).toBe(
      '31 rows, peak lift 0.310 in at 75°. A heading line was passed over; the figures were read as angle (°) and lift (in).',
    );
    expect(await shown(page, 'intakeValveLift')).toBe('0.471'); // 0.310 × 1.52
    expect(await fault(page, 'exhaustLobeTable')).toBe('Paste the lift table of the exhaust lobe.');
  });

  it('is one step back and one step forth', async () => {
    const page = await onTables();
    await paste(page, table);
    await use(page, 'Undo');
    expect(await box(page).inputValue()).toBe('');
    expect(await fault(page)).toBe('Paste the lift table of the intake lobe.');
    await use(page, 'Redo');
    expect((await box(page).inputValue()).split('\n')[15]).toBe('75\t0.31');
    await use(page, 'Undo');
    await use(page, 'Undo');
    expect(await page.locator('#intakeLobeTable').count()).toBe(0);
    expect(await tool(page, 'Undo').isDisabled()).toBe(true);
  });

  it('with a line that cannot be read says which, keeps what was typed, and the table before it stands', async () => {
    const page = await onTables();
    await paste(page, table);
    const bad = table.replace('75\t0.31000', '75\thigh');
    await paste(page, bad);
    expect(await fault(page)).toBe(
      'Line 17: “high” is not a figure or a unit known here. The table before it is still used.',
    );
    expect(await box(page).inputValue()).toBe(bad);
    expect(await box(page).getAttribute('aria-invalid')).toBe('true');
    expect(await shown(page, 'intakeValveLift')).toBe('0.471');
    // Neither the other source nor another field loses it.
    await page.locator('#lobeSource').getByLabel('From the card').check();
    await settled(page);
    await page.locator('#lobeSource').getByLabel('From a table of lift').check();
    await settled(page);
    expect(await box(page).inputValue()).toBe(bad);
    await box(page).press('Escape');
    expect(await box(page).inputValue()).toMatch(/^0\t0\n5\t/);
    expect(await fault(page)).toBe('');
  });

  it('that is no lobe is kept, with a sentence that names the row', async () => {
    const page = await onTables();
    await paste(page, '0 0\n5 0.1\n15 0.2\n10 0.1\n20 0');
    expect(await fault(page)).toBe('Row 4 of the lobe table stands before row 3: sort the rows by angle.');
    expect(await box(page).inputValue()).toBe('0\t0\n5\t0.1\n15\t0.2\n10\t0.1\n20\t0');
    await click(page, 'reset Intake lobe table');
    expect(await box(page).inputValue()).toBe('');
  });

  it('is shown, and read, in the unit that is shown', async () => {
    const page = await onTables();
    await paste(page, table);
    await use(page, /Change to SI/);
    expect(await page.getByLabel('Intake lobe table: angle (°), lift (mm)').count()).toBe(1);
    expect((await box(page).inputValue()).split('\n')[15]).toBe('75\t7.874');
    expect(await said(page)).toMatch(/^31 rows, peak lift 7\.87 mm at 75°\./);
    await paste(page, '0;0\n10;1,5\n20;6,35\n30;1,5\n40;0');
    expect(await said(page)).toBe('5 rows, peak lift 6.35 mm at 20°.');
    await paste(page, '0;0\n10;1,500\n20;6,35\n30;1,5\n40;0');
    expect(await fault(page)).toMatch(/^Line 2: 1,500 can be read two ways/);
  });

  it('can be used by keyboard and by finger: a button of its own, and controls of 44 px', async () => {
    const page = await onTables({ viewport: { width: 390, height: 844 }, hasTouch: true });
    await box(page).fill('0:0 10:0.1 20:0.3 30:0.1 40:0');
    expect(await said(page)).toBe('Not read yet.');
    await box(page).press('Tab');
    expect(await page.evaluate(() => document.activeElement?.textContent?.trim())).toBe('Use this table');
    await settled(page);
    expect(await said(page)).toBe('5 rows, peak lift 0.300 in at 20°.');
    for (const part of [box(page), page.locator('#intakeLobeTable .take')]) {
      const at = (await part.boundingBox())!;
      expect(at.height).toBeGreaterThanOrEqual(44);
      expect(at.x + at.width).toBeLessThanOrEqual(390);
    }
  });
});
