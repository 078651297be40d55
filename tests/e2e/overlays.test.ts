import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { violations } from './pieces/axe.ts';
import { click, complete, following, inBrowser, profile, settled, type, visit } from './visit.ts';

inBrowser();

/** One block with two cams; the chapter of output open besides the usual ones. */
async function twoCams(open = 'output'): Promise<Page> {
  const page = await visit('', await profile({ open }));
  await following(page, () => page.getByRole('link', { name: /^One block, two cams/ }).click());
  return page;
}
type Column = readonly number[];
/** The columns of a figure's table by their heads, once it shows a variant. */
async function columns(page: Page, id: string, variant: string): Promise<Readonly<Record<string, Column>>> {
  const figure = page.locator(`#${id}`);
  await figure.scrollIntoViewIfNeeded();
  await figure.locator('svg text', { hasText: variant }).first().waitFor({ timeout: 40_000 });
  await complete(page);
  await figure.getByRole('button', { name: 'Table' }).click();
  await figure.locator('tbody tr').first().waitFor();
  const heads = await figure.locator('thead th').allInnerTexts();
  const rows = (await figure.locator('tbody tr').allInnerTexts()).map((row) =>
    row.split('\t').map((cell) => Number.parseFloat(cell.replace('−', '-'))),
  );
  await figure.getByRole('button', { name: 'Figure' }).click();
  await settled(page);
  return Object.fromEntries(heads.map((head, i) => [head, rows.map((row) => row[i]!)]));
}

describe('a sweep shows the other variant as well', () => {
  it('at what the page says of it once it is chosen', async () => {
    const page = await twoCams();
    const early = await columns(page, 'height', 'Late cam');
    expect(Object.keys(early).slice(1)).toEqual(['Early cam', 'Late cam']);
    // The early cam shuts the valve sooner: more is trapped, and more pressure is cranked up, at any height.
    early['Early cam']!.forEach((pressure, i) => expect(pressure).toBeGreaterThan(early['Late cam']![i]! + 10));
    await click(page, 'Late cam');
    const late = await columns(page, 'height', 'Early cam');
    expect(Object.keys(late).slice(1)).toEqual(['Late cam', 'Early cam']);
    for (const cam of ['Early cam', 'Late cam']) expect(late[cam]).toEqual(early[cam]);
  });

  it('and follows an edit of what both stand on, the other’s lines dashed and named', async () => {
    const page = await twoCams();
    const before = await columns(page, 'height', 'Late cam');
    const figure = page.locator('#height');
    await expect.poll(() => figure.locator('.lines path[stroke-dasharray="8 4"]').count()).toBe(1);
    expect(await figure.locator('.marks text', { hasText: 'cam' }).allTextContents()).toEqual([
      'Early cam',
      'Late cam',
    ]);
    await click(page, 'Late cam');
    await type(page, 'camAdvance', '8'); // in the late one alone
    await click(page, 'Early cam');
    const after = await columns(page, 'height', 'Late cam');
    expect(after['Early cam']).toEqual(before['Early cam']);
    expect(after['Late cam']).not.toEqual(before['Late cam']);
  });

  it('says so where it comes to the same', async () => {
    const page = await twoCams();
    const figure = page.locator('#closing');
    await figure.scrollIntoViewIfNeeded();
    // At one closing the two have the same chamber, and so the same ratio.
    await expect.poll(() => figure.locator('figcaption').innerText()).toContain('On the same lines: Late cam.');
    expect(await figure.locator('.lines path[stroke-dasharray]').count()).toBe(0);
  });
});

it('torque and octane show the other variant’s lines, dashed and named', async () => {
  const page = await twoCams('output spark');
  for (const id of ['figure-output', 'figure-octane']) {
    const figure = page.locator(`#${id}`);
    await figure.scrollIntoViewIfNeeded();
    await expect
      .poll(() => figure.locator('svg path[stroke-dasharray="8 4"]').count(), { timeout: 40_000 })
      .toBeGreaterThan(0);
    expect(await figure.locator('svg text', { hasText: 'cam' }).allTextContents()).toEqual(['Early cam', 'Late cam']);
  }
  const early = await columns(page, 'figure-output', 'Late cam');
  await click(page, 'Late cam');
  const late = await columns(page, 'figure-output', 'Early cam');
  expect(late['Torque, lbf ft']).toEqual(early['Torque, Late cam']);
  expect(late['Torque, Early cam']).toEqual(early['Torque, lbf ft']);
});

it('a slow sweep asks for the other variant when its own points are there', async () => {
  const page = await twoCams();
  const chapter = page.locator('section[aria-labelledby=chapter-compression]');
  await chapter.getByRole('button', { name: 'Add a sweep here' }).click();
  const sweep = chapter.locator('sweep-figure').last();
  await sweep.getByRole('combobox', { name: 'What is shown' }).selectOption('motoredPeak');
  await sweep.scrollIntoViewIfNeeded();
  await sweep.getByRole('combobox', { name: 'Against what' }).selectOption('chamberVolume');
  await expect.poll(() => sweep.locator('.lines path[stroke-dasharray="8 4"]').count(), { timeout: 40_000 }).toBe(1);
});

describe('the difference of two builds', () => {
  const difference = (page: Page) => page.locator('#figure-difference');

  it('stands there only where there are two, and no figure loses its number by it', async () => {
    const page = await visit('', await profile({ open: 'output' }));
    const numbers = async (): Promise<number[]> =>
      (await page.locator('figcaption b').allInnerTexts()).map((text) => Number(/\d+/.exec(text)![0]));
    expect(await difference(page).count()).toBe(0);
    expect(await numbers()).toEqual((await numbers()).map((_, i) => i + 1));
    await following(page, () => page.getByRole('link', { name: /^One block, two cams/ }).click());
    await difference(page).waitFor();
    expect(await numbers()).toEqual((await numbers()).map((_, i) => i + 1));
  });

  it('is worked out in sight, shows where one overtakes the other, and turns round with the choice', async () => {
    const page = await twoCams();
    const figure = difference(page);
    await figure.scrollIntoViewIfNeeded();
    await expect.poll(() => figure.innerText(), { timeout: 30_000 }).toMatch(/\d+ % done/);
    await expect.poll(() => figure.locator('svg').getAttribute('aria-label'), { timeout: 60_000 }).toMatch(/rpm/);
    await expect.poll(() => figure.locator('.to-come').count(), { timeout: 60_000 }).toBe(0);
    const words = await figure.locator('svg text').allTextContents();
    expect(words).toContain('Late cam ahead');
    expect(words).toContain('Early cam ahead');
    // The notebook's own sentence: their torque curves cross near 4900 rpm.
    const crossing = words.flatMap((text) => /^(\d+) rpm$/.exec(text)?.[1] ?? []).map(Number);
    expect(crossing.some((rpm) => Math.abs(rpm - 4900) < 250)).toBe(true);
    const rows = await columns(page, 'figure-difference', 'Late cam ahead');
    await click(page, 'Late cam');
    const turned = await columns(page, 'figure-difference', 'Late cam ahead');
    for (const cam of ['Early cam', 'Late cam']) expect(turned[cam]).toEqual(rows[cam]);
    turned['Difference, lbf ft']!.forEach((d, i) => expect(d + rows['Difference, lbf ft']![i]!).toBeCloseTo(0, 9));
    expect(Math.max(...turned['Difference, lbf ft']!.map(Math.abs))).toBeGreaterThan(30);
    expect(await violations(page, '#figure-difference')).toEqual([]);
  });
});
