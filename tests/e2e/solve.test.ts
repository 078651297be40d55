import type { Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { violations } from './pieces/axe.ts';
import { click, field, inBrowser, profile, settled, shown, tool, use, visit } from './visit.ts';

inBrowser();

const sizes = [
  [1280, 900],
  [390, 844],
] as const;
const sized = (width: number, height: number) => profile({ viewport: { width, height }, hasTouch: width < 700 });

/** The line that makes an answer what is asked for, once somebody asked why. */
async function lineOf(page: Page, label: string): Promise<Locator> {
  await click(page, `Why: ${label}`);
  const make = page.locator('make-line').first();
  await make.waitFor();
  return make;
}
const pick = (make: Locator, name: string, id: string) =>
  make.getByRole('combobox', { name, exact: true }).selectOption(id);
async function aim(make: Locator, name: string, figure: string): Promise<void> {
  const box = make.getByRole('textbox', { name, exact: true });
  await box.fill(figure);
  await box.blur();
  await settled(make.page());
}
/** Without the words of its lists. */
const words = (make: Locator): Promise<string> =>
  make.evaluate((e) => {
    const copy = e.cloneNode(true) as Element;
    for (const list of copy.querySelectorAll('select')) list.remove();
    return copy.textContent.replaceAll(/\s+/g, ' ');
  });
async function found(page: Page): Promise<string[]> {
  const all: string[] = [];
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    all.push(...(await violations(page, 'chapter-section:has(make-line)')).map((one) => `${colorScheme}: ${one}`));
  }
  return all;
}
const ratio = 'Make dynamic compression ratio';

describe.each(sizes)('an answer is made what is asked for, %s by %s', (width, height) => {
  it('by the gasket, with the caution that turns on and the one it takes away, in one step back', async () => {
    const page = await visit('', await sized(width, height));
    const before = await field(page, 'gasketThickness').inputValue();
    const make = await lineOf(page, 'Dynamic compression ratio');
    await pick(make, 'By changing', 'gasketThickness');
    await aim(make, ratio, '7.5');
    expect(await words(make)).toMatch(
      /It turns on: Lazy\. A squish gap of 0\.\d+ in is over 0\.060 in\..*It takes away: fuel verdict, here: borderline\./,
    );
    await make.getByRole('button', { name: /^Set 0\.\d+ in$/ }).click();
    expect(await shown(page, 'dynamicRatio')).toBe('7.50');
    expect(await shown(page, 'squishVerdict')).toBe('lazy');
    await use(page, 'Undo');
    expect(await field(page, 'gasketThickness').inputValue()).toBe(before);
    expect(await tool(page, 'Undo').isEnabled()).toBe(false);
  });

  it('two at once, 9.0 dynamic and 0.040 in squish, by hands on the keys alone, in one step back', async () => {
    const page = await visit('', await sized(width, height));
    const fields = ['gasketThickness', 'chamberVolume'];
    const before = await Promise.all(fields.map((id) => field(page, id).inputValue()));
    const make = await lineOf(page, 'Dynamic compression ratio');
    await make.getByRole('textbox', { name: ratio }).focus();
    const type = async (text: string): Promise<void> => {
      await page.keyboard.press('ControlOrMeta+a');
      await page.keyboard.type(text);
      await page.keyboard.press('Tab');
    };
    await type('9');
    await page.keyboard.type('chamber volume');
    await make.getByRole('button', { name: 'and another' }).focus();
    await page.keyboard.press('Enter');
    const second = make.getByRole('combobox', { name: 'Another result' });
    await expect.poll(() => second.evaluate((e) => e === document.activeElement)).toBe(true);
    await page.keyboard.type('squish gap');
    await page.keyboard.press('Tab');
    await type('0.040');
    await page.keyboard.type('gasket thickness');
    await settled(page);
    expect(await words(make)).toMatch(/: chamber 60\.\d cm³ and gasket 0\.028 in\. It turns on: Beyond this fuel/);
    await make.getByRole('button', { name: 'Set both' }).focus();
    await page.keyboard.press('Enter');
    expect(await shown(page, 'dynamicRatio')).toBe('9.00');
    expect(await shown(page, 'squishGap')).toBe('0.040');
    await use(page, 'Undo');
    expect(await Promise.all(fields.map((id) => field(page, id).inputValue()))).toEqual(before);
    expect(await tool(page, 'Undo').isEnabled()).toBe(false);
  });

  it('axe finds nothing against an answer for two, nor does it stick out', async () => {
    const page = await visit('', await sized(width, height));
    const make = await lineOf(page, 'Dynamic compression ratio');
    await make.getByRole('button', { name: 'and another' }).click();
    await aim(make, ratio, '8');
    await make.getByRole('button', { name: 'Set both' }).waitFor();
    expect(await found(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
  });
});

it('several answers are all listed, each with what it does: a pin offset to either side lengthens the stroke', async () => {
  const page = await visit();
  const make = await lineOf(page, 'Piston stroke, between dead centers');
  await pick(make, 'By changing', 'pinOffset');
  // √((l + r)² − e²) − √((l − r)² − e²) of 5.85 and 1.77 in is 3.5403 in at an offset e of 0.0726 in.
  await aim(make, 'Make piston stroke, between dead centers', '3.5403');
  expect(await make.locator('.offer').count()).toBe(2);
  for (const [i, figure] of ['−0.073', '0.073'].entries())
    expect(await words(make.locator('.offer').nth(i))).toMatch(
      new RegExp(`${figure} in\\. It turns on.*Set ${figure} in`),
    );
});

it('an answer for slow work says the quick cautions with it, and names the slow ones for later', async () => {
  const page = await visit('', await profile({ open: 'output' }));
  const now = Number(await shown(page, 'peakPower'));
  const make = await lineOf(page, 'Peak power');
  await pick(make, 'By changing', 'chamberVolume');
  await aim(make, 'Make peak power', String(Math.round(now * 1.015)));
  await make.getByRole('button', { name: 'Look for it' }).click();
  await make.getByRole('button', { name: /^Set \d+\.\d cm³$/ }).waitFor({ timeout: 40_000 });
  expect(await words(make)).toMatch(/It turns on: .*Beyond this fuel here.*Known once it is set: .*Found on a quicker/);
});

describe('what cannot be had is said', () => {
  it('of wild targets and words, of one and of two', async () => {
    const page = await visit();
    const make = await lineOf(page, 'Dynamic compression ratio');
    await pick(make, 'By changing', 'gasketThickness');
    for (const target of ['-3', '1e9', '0']) {
      await aim(make, ratio, target);
      expect(await words(make), target).toMatch(/out of reach\. The nearest is \d+\.\d+, at 0\.\d+ in\./);
    }
    await make.getByRole('button', { name: 'and another' }).click();
    for (const target of ['-3', '1e9', '0']) {
      await aim(make, ratio, target);
      expect(await words(make), target).toMatch(
        /out of reach\. The nearest is dynamic compression ratio \d+\.\d+ and squish gap 0\.\d+ in, at /,
      );
    }
    await aim(make, ratio, 'plenty');
    expect(await make.getByRole('alert').innerText()).toContain('“plenty” is not a figure');
    await aim(make, ratio, '8');
    await aim(make, 'Make squish gap as well', 'close');
    expect(await make.getByRole('alert').innerText()).toContain('“close” is not a figure');
    await make.getByRole('button', { name: 'only this one' }).click();
    expect(await make.getByRole('combobox', { name: 'Another result' }).count()).toBe(0);
  });

  it('two volumes that move the same thing, in a plain sentence', async () => {
    const page = await visit();
    const make = await lineOf(page, 'Dynamic compression ratio');
    await make.getByRole('button', { name: 'and another' }).click();
    await pick(make, 'Another result', 'staticRatio');
    await pick(make, 'By changing', 'crownVolume');
    await pick(make, 'By changing as well', 'chamberVolume');
    await aim(make, ratio, '9');
    expect(await words(make)).toMatch(/out of reach\. .* Both changes move the same thing: they cannot set/);
  });

  it('two at once of which one is worked out slowly', async () => {
    const page = await visit('', await profile({ open: 'output' }));
    const make = await lineOf(page, 'Peak power');
    await make.getByRole('button', { name: 'and another' }).click();
    await pick(make, 'Another result', 'squishGap');
    await aim(make, 'Make squish gap as well', '0.04');
    expect(await words(make)).toContain('Two at once is for results that are worked out at once.');
  });
});
