import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { complete, field, inBrowser, settled, shown, type, use, visit } from './visit.ts';

inBrowser();

const said = (page: Page, id: string): Promise<string> => page.locator(`#${id}`).getByRole('alert').innerText();
const isQuiet = async (page: Page, id: string): Promise<boolean> =>
  (await page.locator(`#${id}`).getByRole('alert').count()) === 0 &&
  (await field(page, id).getAttribute('aria-invalid')) === 'false';

describe('a figure that cannot be read', () => {
  it('is kept in the box, with a sentence; what reads it keeps its last answer and waits; a figure heals it', async () => {
    const page = await visit();
    const junk = ['-', 'about four', '4 +', '', '4 psi', '400', '<img src=x onerror=alert(1)>', '9'.repeat(5000)];
    for (const text of junk) {
      await type(page, 'bore', text);
      expect(await field(page, 'bore').inputValue()).toBe(text);
      expect(await field(page, 'bore').getAttribute('aria-invalid'), text).toBe('true');
      expect(await said(page, 'bore')).toMatch(/^[A-Z“].*\.$/s);
      expect(await page.locator('#displacement').innerText(), text).toContain('Waits for bore');
      expect(await shown(page, 'displacement'), text).toBe('368.4');
      expect(await page.locator('#verdict').innerText(), text).toMatch(/Waits for bore.*last good verdict/s);
      await complete(page); // nothing hangs on it either
      await type(page, 'bore', '4.07');
      expect(await isQuiet(page, 'bore'), text).toBe(true);
      expect(await page.locator('#displacement').innerText(), text).not.toContain('Waits');
      expect(await page.locator('#verdict').innerText(), text).not.toContain('Waits');
      expect(await shown(page, 'dynamicRatio'), text).toBe('7.84');
    }
  });

  it('that is half typed is read as far as it goes: "4." is four', async () => {
    const page = await visit();
    await type(page, 'bore', '4.');
    expect(await isQuiet(page, 'bore')).toBe(true);
    expect(await field(page, 'bore').inputValue()).toBe('4.000');
  });

  it('the figures and sweeps that read it say so as well', async () => {
    const page = await visit();
    await type(page, 'bore', 'about four');
    expect(await page.locator('#closing').innerText()).toContain('Waits for');
    await type(page, 'bore', '4.07');
    expect(await page.locator('#closing').innerText()).not.toContain('Waits for');
  });

  it('is given up with Escape', async () => {
    const page = await visit();
    await field(page, 'bore').fill('about four');
    await field(page, 'bore').press('Escape');
    await settled(page);
    expect(await field(page, 'bore').inputValue()).toBe('4.070');
    expect(await isQuiet(page, 'bore')).toBe(true);
  });

  it('does not stop other fields, and undo takes it away', async () => {
    const page = await visit();
    await type(page, 'chamberVolume', '66');
    await type(page, 'bore', 'about four');
    await type(page, 'relativeHumidity', '40');
    expect(await field(page, 'bore').inputValue()).toBe('about four');
    await use(page, 'Undo');
    expect(await field(page, 'bore').inputValue()).toBe('4.070');
    expect(await shown(page, 'staticRatio')).toBe('9.94'); // (754.7 + 84.4) / 84.4
  });
});

describe('figures that cannot be together', () => {
  it('a rod shorter than the throw is said at the rod, whichever of the two was typed', async () => {
    const page = await visit();
    await type(page, 'rod', '1.5');
    expect(await said(page, 'rod')).toBe('The rod is shorter than the crank throw, 1.770 in.');
    expect(await page.locator('#dynamicRatio').innerText()).toContain('Waits for rod');
    expect(await shown(page, 'displacement')).toBe('368.4');
    await type(page, 'rod', '5.85');
    expect(await isQuiet(page, 'rod')).toBe(true);
    await type(page, 'stroke', '12');
    expect(await said(page, 'rod')).toBe('The rod is shorter than the crank throw, 6.000 in.');
    await type(page, 'stroke', '3.54');
    expect(await isQuiet(page, 'rod')).toBe(true);
    expect(await shown(page, 'dynamicRatio')).toBe('7.84');
  });

  it('a figure outside what it can be trusted in is used all the same, with a word', async () => {
    const page = await visit();
    await type(page, 'crankingExponent', '1.45');
    expect(await isQuiet(page, 'crankingExponent')).toBe(true);
    expect(await page.locator('#crankingExponent').innerText()).toMatch(/1\.15 to 1\.35/);
    // 14.34 × (7.84185^1.45 − 1)
    expect(Number(await shown(page, 'crankingPressure'))).toBeCloseTo(14.34 * (7.84185 ** 1.45 - 1), -0.5);
  });
});
