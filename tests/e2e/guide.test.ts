import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import scenario from '../../scenarios/two-ratios.json';
import { complete, following, inBrowser, profile, settled, shown, tool, use, visit } from './visit.ts';

inBrowser();

/** The page with the guide's notebook open. */
async function guided(at: Partial<{ width: number; hasTouch: boolean }> = {}): Promise<Page> {
  const { width = 1280, hasTouch = false } = at;
  const page = await visit('', await profile({ isFirst: true, viewport: { width, height: 844 }, hasTouch }));
  await following(page, () => page.getByRole('link', { name: /^Why two compression ratios\?/ }).click());
  await page.locator('.guide').waitFor();
  await complete(page);
  return page;
}
const guide = (page: Page) => page.getByRole('region', { name: scenario.guide.name });
const heading = (page: Page) => guide(page).getByRole('heading', { level: 3 });
const note = (page: Page) => guide(page).getByRole('status');
const focused = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const at = document.activeElement as HTMLElement;
    return at.getAttribute('aria-label') ?? (at.innerText || at.id);
  });
/** Presses Tab, forward or back, until a control of this name has the focus. */
async function tabTo(page: Page, name: string, key = 'Tab'): Promise<void> {
  for (let i = 0; i < 30; i++) {
    await page.keyboard.press(key);
    if ((await focused(page)).replaceAll(/\s+/g, ' ').trim() === name) return;
  }
  throw new Error(`no way by keyboard to ${name}`);
}
const tried = (page: Page): Promise<void> =>
  page.waitForFunction(() => document.querySelector('.guide-note')?.textContent !== '').then(() => {});
const wide = (page: Page): Promise<number> => page.evaluate(() => document.documentElement.scrollWidth - innerWidth);

describe('the guide', () => {
  it('comes with its notebook and with no other', async () => {
    const page = await visit();
    expect(await page.locator('.guide').count()).toBe(0);
    await following(page, () => page.getByRole('link', { name: /^Why two compression ratios\?/ }).click());
    await page.locator('.guide').waitFor();
    await use(page, 'Undo');
    await page.waitForFunction(() => !document.querySelector('.guide'));
    await use(page, 'Redo');
    await page.locator('.guide').waitFor();
    await page.reload();
    await complete(page);
    await page.locator('.guide').waitFor();
  });

  it('is gone through by keyboard alone: each step is tried, and says what moved', async () => {
    const page = await guided();
    await heading(page).focus();
    const { steps } = scenario.guide;
    for (const [i, step] of steps.entries()) {
      await page.waitForFunction((h) => document.activeElement?.textContent?.includes(h), step.heading);
      expect(await guide(page).locator('[aria-current=step]').innerText()).toBe(String(i + 1));
      if (step.try) {
        await tabTo(page, `Go there: ${step.try.move === 'chamberVolume' ? 'chamber volume' : 'intake closing'}`);
        await page.keyboard.press('Enter');
        expect(await page.evaluate(() => document.activeElement?.id)).toBe(`three-${step.try.move}`);
        const aim = /(?:to|volume to) ([\d.]+)/.exec(await guide(page).locator('.guide-try').innerText())![1]!;
        await page.keyboard.press('Control+a');
        await page.keyboard.type(aim);
        await settled(page);
        await tried(page);
        expect(await note(page).innerText()).toMatch(new RegExp(` went from \\S+.* to ${aim.replace('.', '\\.')}`));
        expect(await note(page).innerText()).toContain(step.try.done);
        await tabTo(page, 'Next', 'Shift+Tab');
        await page.keyboard.press('Enter');
      }
    }
    await tabTo(page, 'It rises');
    await page.keyboard.press('Space');
    await tried(page);
    const before = await shown(page, 'crankingPressure');
    expect(await note(page).innerText()).toMatch(
      /^Not this time.* Cranking pressure falls from \d+ psi to \d+ psi\. Static/,
    );
    expect(await note(page).innerText()).toContain(`from ${before} psi`);
    await tabTo(page, 'It falls');
    await page.keyboard.press('Enter');
    expect(await note(page).innerText()).toMatch(/^Right\. Cranking pressure falls from/);
    expect(await guide(page).innerText()).toContain('Knock breaks pistons');
    // The guide wrote nothing: undo takes back what the reader did last.
    await tabTo(page, 'Back');
    await page.keyboard.press('Enter');
    expect(await heading(page).innerText()).toContain(steps.at(-2)!.heading);
    const chamber = page.locator('#three-chamberVolume');
    expect(await chamber.inputValue()).toBe('64.0');
    await use(page, 'Undo');
    expect(await chamber.inputValue()).toBe('68.0');
  });

  it('is closed and opened again where it was, and touches nothing of the reader’s', async () => {
    const page = await guided();
    await page.locator('#three-chamberVolume').fill('69');
    await page.locator('#three-chamberVolume').blur();
    await guide(page)
      .getByRole('button', { name: /^Step 3/ })
      .click();
    expect(await focused(page)).toContain('The ratio that squeezes');
    await guide(page).getByRole('button', { name: 'Close the guide' }).click();
    expect(await focused(page)).toBe('Open the guide');
    expect(await page.locator('#three-chamberVolume').inputValue()).toBe('69.0');
    await page.keyboard.press('Enter');
    expect(await focused(page)).toContain('The ratio that squeezes');
    expect(await tool(page, 'Undo').getAttribute('title')).toContain('chamber volume to 69.0');
  });

  it('keeps quiet while a hand drags, and speaks once it rests', async () => {
    const page = await guided();
    await page.evaluate(() => {
      const said: string[] = [];
      (globalThis as unknown as { said: string[] }).said = said;
      const status = document.querySelector('.guide-note')!;
      new MutationObserver(() => said.push(status.textContent ?? '')).observe(status, {
        childList: true,
        subtree: true,
        characterData: true,
      });
    });
    const slider = page.locator('.three').getByRole('slider', { name: 'Chamber volume' });
    for (let i = 0; i < 8; i++) await slider.press('ArrowLeft');
    await tried(page);
    await page.waitForTimeout(700); // longer than a hand's rest: nothing more may come
    expect(await page.evaluate(() => (globalThis as unknown as { said: string[] }).said.length)).toBe(1);
    expect(await note(page).innerText()).toContain('Chamber volume went from 72.0 cm³ to 68.0 cm³.');
  });

  it.each([1280, 390])('has no fault an accessibility checker finds, %i px wide', async (width) => {
    const page = await guided({ width });
    await guide(page)
      .getByRole('button', { name: /^Step 6/ })
      .click();
    await guide(page).getByRole('button', { name: 'It stays' }).click();
    await page.evaluate(readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8'));
    const found = await page.evaluate(() =>
      (
        globalThis as unknown as {
          axe: {
            run(part: string): Promise<{ violations: { id: string; nodes: { html: string }[] }[]; passes: unknown[] }>;
          };
        }
      ).axe.run('guide-panel'),
    );
    expect(found.passes.length).toBeGreaterThan(5);
    expect(found.violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.html).join()}`)).toEqual([]);
  });

  it('fits a phone: nothing scrolls sideways, and every button is a thumb wide', async () => {
    const page = await guided({ width: 390, hasTouch: true });
    for (let i = 0; i < scenario.guide.steps.length; i++) {
      await guide(page)
        .getByRole('button', { name: new RegExp(`^Step ${i + 1}`) })
        .click();
      await settled(page);
      expect(await wide(page), `step ${i + 1}`).toBeLessThanOrEqual(0);
      const boxes = await guide(page)
        .locator('button, a')
        .evaluateAll((all) =>
          all.map((b) => ({
            of: b.textContent.trim(),
            width: b.getBoundingClientRect().width,
            height: b.getBoundingClientRect().height,
          })),
        );
      expect(boxes.length).toBeGreaterThan(8);
      for (const { of, width, height } of boxes) expect(Math.min(width, height), of).toBeGreaterThanOrEqual(44);
    }
    await guide(page)
      .getByRole('button', { name: /^Step 3/ })
      .click();
    await guide(page).getByRole('link', { name: 'Go there: intake closing' }).tap();
    // The page scrolls there smoothly: the field comes to rest between the strip above and the tools below.
    await page.waitForFunction(() => {
      const of = (selector: string) => document.querySelector(selector)!.getBoundingClientRect();
      const { top, bottom } = of('#three-intakeClosing');
      return top >= of('.strip-in').bottom && bottom <= of('.toolbar').top;
    });
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('three-intakeClosing');
  });
});
