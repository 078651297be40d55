import type { Page } from 'playwright-core';
import { describe, expect, inject, it } from 'vitest';
import { byHand } from './by-hand.ts';
import { complete, field, inBrowser, profile, rest, settled, shown, type, use, visit } from './visit.ts';

inBrowser();

const verdict = async (page: Page): Promise<string> =>
  (await page.locator('#verdict').innerText()).replaceAll(/\s+/g, ' ');
/** The three answers that chamber and closing move, held against the README's way of working them out. */
async function agrees(page: Page, engine: Parameters<typeof byHand>[0]): Promise<void> {
  const hand = byHand(engine);
  expect(Number(await shown(page, 'staticRatio'))).toBeCloseTo(hand.staticRatio, 2);
  expect(Number(await shown(page, 'dynamicRatio'))).toBeCloseTo(hand.dynamicRatio, 2);
  expect(Math.abs(Number(await shown(page, 'crankingPressure')) - hand.crankingPressure)).toBeLessThan(1);
}

describe('the example', () => {
  it('opens with the README’s results', async () => {
    const page = await visit();
    expect(await page.getByRole('heading', { level: 1 }).innerText()).toBe('Edge of premium');
    expect(await shown(page, 'displacement')).toBe('368.4');
    expect(await shown(page, 'staticRatio')).toBe('9.54');
    expect(await shown(page, 'dynamicRatio')).toBe('7.84');
    expect(await shown(page, 'crankingPressure')).toBe('174');
    expect(await verdict(page)).toMatch(/Borderline here, on 91 AKI at 650 ft\..*inside the band from 7\.54 to 8\.04/);
  });

  it('keeps its pinned answers in view at the end of the page', async () => {
    const page = await visit();
    await page.keyboard.press('End');
    const pinned = page.getByRole('navigation', { name: 'Pinned answers and tools' });
    await pinned.getByRole('link', { name: 'Dynamic compression ratio: ' }).click();
    await page.waitForFunction(() => {
      const { top, bottom } = document.querySelector('#dynamicRatio')!.getBoundingClientRect();
      return top >= 0 && bottom <= innerHeight;
    });
    for (const figure of ['368.4', '9.54', '7.84', '174', 'borderline'])
      expect((await pinned.innerText()).toLowerCase()).toContain(figure);
  });

  it('says in SI units what it says in US units, and keeps the same', async () => {
    const page = await visit();
    const kept = async (): Promise<string> =>
      page.evaluate(() => {
        const { inputs, held, tolerances } = (
          document.querySelector('notebook-page') as never as { store: { document: Record<string, unknown> } }
        ).store.document;
        return JSON.stringify({ inputs, held, tolerances });
      });
    await type(page, 'bore', '4 1/16');
    const before = await kept();
    await use(page, /^US units/);
    expect(await field(page, 'bore').inputValue()).toBe('103.19'); // 4.0625 in of 25.4 mm
    expect(await field(page, 'airTemperature').inputValue()).toBe('29.4'); // 85 °F
    expect(await shown(page, 'displacement')).toBe('6015'); // π/4 × 10.31875² × 8.9916 × 8 cm³
    expect(await page.locator('#displacement .unit').innerText()).toContain('cm³');
    expect(await kept()).toBe(before);
    await use(page, /^SI units/);
    expect(await field(page, 'bore').inputValue()).toBe('4.063'); // to its three digits
    expect(await kept()).toBe(before);
  });

  it('takes a figure in a unit of its own', async () => {
    const page = await visit();
    await type(page, 'bore', '103.378 mm');
    expect(await field(page, 'bore').inputValue()).toBe('4.070');
    await type(page, 'bore', '4 in + 0.07 in');
    expect(await field(page, 'bore').inputValue()).toBe('4.070');
    expect(await shown(page, 'displacement')).toBe('368.4');
  });
});

describe('a chamber that is typed', () => {
  it('moves static and dynamic ratio, cranking pressure and the verdict', async () => {
    const page = await visit();
    await type(page, 'chamberVolume', '66');
    await agrees(page, { chamber: 66 });
    expect(await verdict(page)).toMatch(/^Beyond this fuel here/); // 8.17 is over 8.04
    await type(page, 'chamberVolume', '74.5');
    await agrees(page, { chamber: 74.5 });
    expect(await verdict(page)).toMatch(/^Comfortable here/); // 7.51 is under 7.54
  });

  it('is the same field in the opening and in its chapter', async () => {
    const page = await visit();
    await page
      .getByRole('group', { name: 'The three that decide it' })
      .getByRole('textbox', { name: 'Chamber volume' })
      .fill('66');
    await settled(page);
    expect(await field(page, 'chamberVolume').inputValue()).toBe('66.0');
    await agrees(page, { chamber: 66 });
  });
});

describe('a closing that is typed', () => {
  it('moves the cam, or the duration where that is asked for', async () => {
    const page = await visit();
    await type(page, 'intakeClosing', '66');
    expect(await field(page, 'camAdvance').inputValue()).toBe('−5'); // later by five degrees
    await agrees(page, { closing: 66 });
    await type(page, 'camAdvance', '0');
    await page.locator('#intakeClosing').getByRole('button', { name: 'the duration instead' }).click();
    await type(page, 'intakeClosing', '66');
    expect(await field(page, 'camAdvance').inputValue()).toBe('0');
    expect(await field(page, 'intakeDuration').inputValue()).toBe('280'); // half of ten degrees on each side
    await agrees(page, { closing: 66 });
  });
});

describe('keys and slider', () => {
  it('arrow keys step on the grid, ten steps with shift', async () => {
    const page = await visit();
    const chamber = field(page, 'chamberVolume');
    await type(page, 'chamberVolume', '70.2');
    await chamber.press('ArrowUp');
    await settled(page);
    expect(await chamber.inputValue()).toBe('70.5'); // back onto the grid
    await chamber.press('Shift+ArrowUp');
    await settled(page);
    expect(await chamber.inputValue()).toBe('75.5');
    await agrees(page, { chamber: 75.5 });
    await chamber.press('PageDown');
    await chamber.press('ArrowDown');
    await settled(page);
    expect(await chamber.inputValue()).toBe('70.0');
    await agrees(page, { chamber: 70 });
  });

  it('the slider answers to keys as the field does', async () => {
    const page = await visit();
    const slider = page.locator('#chamberVolume').getByRole('slider');
    await slider.press('ArrowRight');
    await slider.press('Shift+ArrowRight');
    await settled(page);
    expect(await field(page, 'chamberVolume').inputValue()).toBe('75.5');
    expect(await slider.getAttribute('aria-valuetext')).toBe('75.5 cm³');
  });

  it('the slider is dragged, every figure follows under the hand, and one step takes it all back', async () => {
    const page = await visit();
    const slider = page
      .getByRole('group', { name: 'The three that decide it' })
      .getByRole('slider', { name: 'Chamber volume' });
    const { x, y, width, height } = (await slider.boundingBox())!;
    const [low, high] = [Number(await slider.getAttribute('min')), Number(await slider.getAttribute('max'))];
    const at = (chamber: number): number => x + (width * (chamber - low)) / (high - low);
    await page.mouse.move(at(70), y + height / 2);
    await page.mouse.down();
    const seen: number[] = [];
    for (const chamber of [68, 65, 62, 60]) {
      await page.mouse.move(at(chamber), y + height / 2);
      await rest(page);
      await settled(page);
      const now = Number(await field(page, 'chamberVolume').inputValue());
      seen.push(now);
      expect(Number(await shown(page, 'dynamicRatio'))).toBeCloseTo(byHand({ chamber: now }).dynamicRatio, 2);
    }
    await page.mouse.up();
    expect(seen.toSorted((a, b) => b - a)).toEqual(seen);
    expect(new Set(seen).size).toBe(4);
    await use(page, 'Undo');
    expect(await field(page, 'chamberVolume').inputValue()).toBe('70.0');
    await agrees(page, {});
  });
});

describe('slow figures', () => {
  it('arrive from the worker: a turn of the starter', async () => {
    const page = await visit();
    await complete(page);
    // Less than the gas law makes of the seat ratio with nothing lost, 14.34 × (7.84^1.4 − 1) = 241, more than the
    // isothermal 14.34 × (7.84 − 1) = 98.
    const peak = Number(await shown(page, 'motoredPeak'));
    expect(peak).toBeGreaterThan(98);
    expect(peak).toBeLessThan(241);
    await type(page, 'chamberVolume', '66');
    await complete(page);
    expect(Number(await shown(page, 'motoredPeak'))).toBeGreaterThan(peak);
  });

  it('can be stopped, and go on', async () => {
    let open = (): void => {};
    const letGo = new Promise<void>((resolve) => (open = resolve));
    const context = await profile();
    await context.route(/slow\.worker/, async (route) => {
      await letGo; // nothing is computed before this
      await route.continue();
    });
    const page = await context.newPage();
    await page.goto(inject('address'));
    const row = page.locator('#motoredPressure');
    await row.getByRole('button', { name: 'stop' }).click();
    await settled(page); // others may be at work
    expect(await row.innerText()).toContain('Stopped.');
    open();
    await type(page, 'cylinders', '6');
    expect(await row.innerText()).toContain('Stopped.');
    await row.getByRole('button', { name: 'go on' }).click();
    await complete(page);
    expect(Number(await shown(page, 'motoredPeak'))).toBeGreaterThan(98);
  });
});
