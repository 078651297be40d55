import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { byHand } from './by-hand.ts';
import { violations } from './pieces/axe.ts';
import { finger } from './pieces/touch.ts';
import { click, field, inBrowser, profile, settled, visit } from './visit.ts';

inBrowser();

const turnTheCrank = 'Turn the crank through the whole cycle';
const onPhone = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true };

/** The opened crank view of a page. */
async function cranked(page: Page): Promise<Page> {
  await click(page, turnTheCrank);
  await page.waitForSelector('crank-view .crank-says:not(:empty)');
  await still(page); // it is scrolled to the top of the view
  return page;
}
/** Waits until the page has come to rest after a scroll. */
const still = (page: Page): Promise<void> =>
  page.evaluate(
    () =>
      new Promise((done) => {
        const look = (before: number): void =>
          void setTimeout(() => (scrollY === before ? done() : look(scrollY)), 150);
        look(-1);
      }),
  );
const says = (page: Page): Promise<string> => page.locator('.crank-says').innerText();
const turned = async (page: Page): Promise<number> => Number(await page.locator('crank-view .turn').inputValue());
/** Every number with this unit in a sentence. */
const numbers = (sentence: string, unit: string): number[] =>
  [...sentence.matchAll(new RegExp(`([\\d.]+)\\s*${unit}`, 'g'))].map(([, n]) => Number(n));

describe('the crank view', () => {
  it('stands at the closing at first, and says what is gone, what is left and what is swept', async () => {
    const page = await cranked(await visit());
    const sentence = await says(page);
    expect(sentence).toContain('The intake valve shuts here');
    const [left, swept, trapped] = numbers(sentence, 'cm³') as [number, number, number];
    // By plane geometry: what is left over the whole is the share not yet gone; trapped over clearance is the ratio.
    const [gone] = numbers(sentence, '%') as [number];
    expect(left / swept).toBeCloseTo(1 - gone / 100, 3);
    expect(trapped / (trapped - left)).toBeCloseTo(byHand({}).dynamicRatio, 2);
    expect((swept + trapped - left) / (trapped - left)).toBeCloseTo(byHand({}).staticRatio, 2);
  });

  it('is turned by keys, and every figure on a crank axis shows where it stands', async () => {
    const page = await cranked(await visit());
    const pin = page.locator('crank-view').getByRole('slider', { name: 'Crank angle, on the figure' });
    await pin.focus();
    for (let i = 0; i < 3; i++) await page.keyboard.press('ArrowLeft');
    await page.keyboard.press('PageDown');
    await expect.poll(() => turned(page)).toBe(601 - 13);
    expect(await pin.getAttribute('aria-valuenow')).toBe('588');
    expect(await says(page)).toMatch(/^Compression stroke, .*nothing is compressed yet\.$/);
    const cursor = page.locator('#figure-section-lifts .cursor');
    const before = await cursor.getAttribute('d');
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => cursor.getAttribute('d')).not.toBe(before);
    await page.locator('#figure-travel').scrollIntoViewIfNeeded();
    await page.waitForSelector('#figure-travel .cursor', { state: 'attached' });
  });

  it('turns by itself and halts where the intake valve shuts', async () => {
    const page = await cranked(await visit());
    await page.locator('crank-view .turn').fill('590');
    await click(page, 'Turn it');
    await page.getByRole('button', { name: 'Turn it', exact: true }).waitFor();
    await expect.poll(() => says(page)).toContain('The intake valve shuts here');
    expect(await turned(page)).toBe(601);
    expect(await page.locator('crank-view [role=status]').innerText()).toContain('The intake valve shuts here');
  });

  it('goes from event to event in the order of the cycle', async () => {
    const page = await cranked(await visit());
    await page.locator('crank-view .turn').fill('1');
    const met: string[] = [];
    for (let i = 0; i < 7; i++) {
      const next = page.locator('crank-view .next');
      met.push((await next.innerText()).replace('On to: ', ''));
      await next.click();
      await settled(page);
    }
    expect(met).toEqual([
      'exhaust opens',
      'intake opens',
      'top of the exhaust stroke',
      'exhaust shuts',
      'bottom of the intake stroke',
      'intake shuts',
      'firing top',
    ]);
  });

  it('says the pressure that the starter makes, once that is worked out', async () => {
    const page = await cranked(await visit());
    await page.locator('crank-view .turn').fill('719');
    await expect.poll(() => says(page)).toMatch(/Turned by the starter: \d+ psi\.$/);
    const [pressure] = numbers(await says(page), 'psi') as [number];
    // Heat and blow-by keep it under the reversible figure of the pocket calculator, gamma 1.4.
    expect(pressure).toBeGreaterThan(100);
    expect(pressure).toBeLessThan(14.34 * (byHand({}).dynamicRatio ** 1.4 - 1));
  });

  it('moves nothing in the notebook, and goes back to the plate', async () => {
    const page = await cranked(await visit());
    await page.locator('crank-view .turn').fill('100');
    expect(await field(page, 'chamberVolume').first().inputValue()).toBe('70.0');
    expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true);
    await click(page, 'Back to the closing');
    await page.waitForSelector('#figure-plate svg circle');
    expect(await page.locator('.cursor').count()).toBe(0);
  });

  it('steps but does not run by itself where motion is to be reduced', async () => {
    const page = await cranked(await visit('', await profile({ reducedMotion: 'reduce' })));
    expect(await page.getByRole('button', { name: 'Turn it', exact: true }).count()).toBe(0);
    await page.locator('crank-view .next').click();
    await expect.poll(() => turned(page)).toBe(0);
  });

  it('is turned by a finger on the crankpin, on a phone, without sideways scroll', async () => {
    const page = await cranked(await visit('', await profile({ ...onPhone, isFirst: true })));
    const pin = page.locator('crank-view').getByRole('slider', { name: 'Crank angle, on the figure' });
    await pin.evaluate((e) => e.scrollIntoView({ block: 'center', behavior: 'instant' }));
    await settled(page);
    const { x, y, width, height } = (await pin.boundingBox())!;
    const { drag } = await finger(page);
    const from = { x: x + width / 2, y: y + height / 2 };
    await drag(from, { x: from.x + 60, y: from.y });
    await expect.poll(() => turned(page)).not.toBe(601);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBe(0);
    expect(await violations(page, 'crank-view')).toEqual([]);
  });

  it('has nothing for axe to find, in the dark too', async () => {
    const page = await cranked(await visit('', await profile({ colorScheme: 'dark' })));
    expect(await violations(page, 'crank-view')).toEqual([]);
  });
});
