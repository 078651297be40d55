import type { Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { byHand } from './by-hand.ts';
import { drawAll } from './pieces/axe.ts';
import { finger } from './pieces/touch.ts';
import { click, complete, field, inBrowser, profile, settled, shown, type, use, visit } from './visit.ts';

inBrowser();

const onPhone = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true };
const three = (page: Page): Locator => page.getByRole('group', { name: 'The three that decide it' });
/** The middle of a part of a figure, once that is drawn in the middle of the window. */
async function middle(page: Page, figure: string, of: Locator): Promise<{ x: number; y: number }> {
  const center = (e: Element): void => e.scrollIntoView({ block: 'center', behavior: 'instant' });
  await page.locator(figure).evaluate(center);
  await page.waitForSelector(`${figure} svg path`, { state: 'attached' });
  await of.evaluate(center);
  await settled(page);
  const { x, y, width, height } = (await of.boundingBox())!;
  return { x: x + width / 2, y: y + height / 2 };
}
const scrolled = (page: Page): Promise<number> => page.evaluate(() => scrollY);
const closing = async (page: Page): Promise<number> =>
  Number(await three(page).getByRole('textbox', { name: 'Intake closing' }).inputValue());

describe('a finger', () => {
  it('slides a slider, and the answers follow while it is down', async () => {
    const page = await visit('', await profile({ ...onPhone, isFirst: true }));
    const { drag } = await finger(page);
    const slider = three(page).getByRole('slider', { name: /^Chamber volume/ });
    const { x, y } = await middle(page, '#figure-plate', slider);
    const strip = page.locator('.pins a[href="#dynamicRatio"] b');
    await drag({ x, y }, { x: x - 60, y }, async () => {
      await settled(page);
      const chamber = Number(await slider.inputValue());
      expect(chamber).toBeLessThan(70);
      expect(Number(await strip.innerText())).toBeCloseTo(byHand({ chamber }).dynamicRatio, 2);
    });
    await use(page, 'Undo');
    expect(await slider.inputValue()).toBe('70');
  });

  it('drags the mark of a sweep, which writes the input, and the page stays where it is', async () => {
    const page = await visit('', await profile({ ...onPhone, isFirst: true }));
    const { drag } = await finger(page);
    const { x, y } = await middle(page, '#closing', page.locator('#closing').getByRole('slider'));
    const top = async (): Promise<number> => (await page.locator('#closing svg').boundingBox())!.y;
    const before = await top();
    await drag({ x, y }, { x: x + 50, y: y + 60 });
    await settled(page);
    expect(await closing(page)).toBeGreaterThan(63);
    expect(Math.abs((await top()) - before)).toBeLessThan(3);
    await use(page, 'Undo');
    expect(await closing(page)).toBe(61);
  });

  it('drags the crankpin of the plate', async () => {
    const page = await visit('', await profile({ ...onPhone, isFirst: true }));
    const { drag } = await finger(page);
    const pin = page.locator('#figure-plate').getByRole('slider');
    for (const [dx, dy, from, to] of [
      [-18, -90, 40, 40], // up along its circle, and past the end of its slider: earlier
      [12, 6, 64, 80], // round to the right, at the lower left of its circle: later
    ] as const) {
      const { x, y } = await middle(page, '#figure-plate', pin);
      const before = await scrolled(page);
      await drag({ x, y }, { x: x + dx, y: y + dy });
      await settled(page);
      expect(await closing(page)).toBeGreaterThanOrEqual(from);
      expect(await closing(page)).toBeLessThanOrEqual(to);
      expect(await scrolled(page)).toBe(before);
      await use(page, 'Undo');
      expect(await closing(page)).toBe(61);
    }
  });

  it('and a step back shows where it was, without leaving a field that is in sight', async () => {
    const page = await visit('', await profile({ ...onPhone, isFirst: true }));
    await three(page).getByRole('textbox', { name: 'Intake closing' }).fill('66');
    await settled(page);
    await use(page, 'Undo');
    expect(await scrolled(page)).toBe(0);
    expect(await three(page).locator('.washed').count()).toBe(1);
    await type(page, 'crankingExponent', '1.3');
    await page.evaluate(() => scrollTo({ top: 0, behavior: 'instant' }));
    await use(page, 'Undo');
    await expect.poll(() => isInSight(field(page, 'crankingExponent'))).toBe(true);
  });

  it('scrolls the page from anywhere on a figure but its mark', async () => {
    const page = await visit('', await profile({ ...onPhone, isFirst: true }));
    const { drag } = await finger(page);
    for (const figure of ['#closing', '#figure-plate']) {
      const { x, y } = await middle(page, figure, page.locator(`${figure} svg`));
      const before = await scrolled(page);
      await drag({ x: x + 60, y: y + 40 }, { x: x + 60, y: y - 160 });
      await expect.poll(() => scrolled(page)).toBeGreaterThan(before + 100);
    }
    expect(await closing(page)).toBe(61);
  });
});

/** What a control is, shortly, for a list that a person reads when it is wrong. */
const named = `(e => [e.tagName.toLowerCase(), e.getAttribute('aria-label') ?? e.id, e.textContent.trim().slice(0, 30)].join(' '))`;

describe('keys alone', () => {
  it.each([
    [1280, 900],
    [390, 844],
  ])(
    'reach every control in the order of reading, and it is seen where they are, at %s by %s',
    async (width, height) => {
      const page = await visit('', await profile({ viewport: { width, height } }));
      await drawAll(page);
      const wanted: string[] = await page.evaluate(`(() => {
      const can = [...document.querySelectorAll('a[href], button, input, select, textarea, [tabindex]')]
        .filter(e => !e.disabled && e.getAttribute('tabindex') !== '-1' && e.checkVisibility({ visibilityProperty: true }));
      globalThis.can = can.filter(e => e.type !== 'radio' || e.checked);
      if (document.querySelector('[tabindex]:not([tabindex="0"], [tabindex="-1"])')) throw new Error('a tabindex of its own');
      return globalThis.can.map(${named});
    })()`);
      expect(wanted.length).toBeGreaterThan(200);
      const reached: string[] = [];
      const unseen: string[] = [];
      for (let i = 0; i < wanted.length; i++) {
        await page.keyboard.press('Tab');
        const [name, place, seen] = await page.evaluate<[string, number, boolean]>(`(() => {
        const e = document.activeElement;
        const rings = [getComputedStyle(e), getComputedStyle(e, '::after'), getComputedStyle(e.nextElementSibling ?? e)];
        const seen = rings.some(s => s.outlineStyle !== 'none' && parseFloat(s.outlineWidth) >= 2);
        return [${named}(e), globalThis.can.indexOf(e), seen];
      })()`);
        reached.push(name);
        if (!seen) unseen.push(name);
        expect(place, `after ${reached.at(-2)} comes ${name}`).toBe(i);
      }
      expect(reached).toEqual(wanted);
      expect(unseen).toEqual([]);
    },
  );

  it('find the opening’s fields after the skip link', async () => {
    const page = await visit('', await profile({ isFirst: true }));
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await page.keyboard.press('Tab');
    expect(
      await three(page)
        .getByRole('textbox', { name: 'Chamber volume' })
        .evaluate((e) => e === document.activeElement),
    ).toBe(true);
  });

  it('close the share panel with Escape, and are back where they were', async () => {
    const page = await visit('', await profile({ isFirst: true }));
    const share = page.getByRole('button', { name: 'Share', exact: true });
    await share.press('Enter');
    const panel = page.getByRole('group', { name: 'Share this notebook' });
    await panel.getByRole('button', { name: /^Save a file/ }).focus();
    expect(await share.getAttribute('aria-expanded')).toBe('true');
    await page.keyboard.press('Escape');
    await settled(page);
    expect(await panel.count()).toBe(0);
    expect(await share.evaluate((e) => e === document.activeElement)).toBe(true);
  });

  it('hear of every slider its name, its figure and its unit', async () => {
    const page = await visit();
    for (const slider of await page.getByRole('slider').all()) {
      const label = (await slider.getAttribute('aria-label')) ?? '';
      const text = (await slider.getAttribute('aria-valuetext')) ?? '';
      expect(label).toMatch(/^[A-Z].*, (slider|on the figure)$/);
      expect(text, label).toMatch(/^−?\d+(\.\d+)?( \S.*)?$/);
      const now = Number((await slider.getAttribute('aria-valuenow')) ?? (await slider.inputValue()));
      expect(Math.abs(Number.parseFloat(text.replace('−', '-')) - now), label).toBeLessThan(0.06);
      // Angles in words: nobody can hear °.
      expect(text, label).not.toMatch(/°(?!F|C)/);
    }
    const said = (name: RegExp): Promise<string | null> =>
      page.locator('.chapter').getByRole('slider', { name }).getAttribute('aria-valuetext');
    expect(await said(/^Intake closing, slider/)).toBe('61 degrees after bottom dead center');
    expect(await said(/^Chamber volume, slider/)).toBe('70.0 cm³');
    expect(await said(/^Intake duration, advertised, slider/)).toBe('270 degrees');
  });
});

describe('what was just done', () => {
  const toast = (page: Page): Locator => page.locator('toast-line');

  it('is said across the page, with one way back: sweeps', async () => {
    const page = await visit();
    const sweeps = (): Promise<number> => page.locator('sweep-figure').count();
    const before = await sweeps();
    await page.getByRole('button', { name: 'Add a sweep here' }).nth(1).click();
    await settled(page);
    expect(await toast(page).innerText()).toContain('Added a sweep.');
    await page
      .locator('#sweep1')
      .getByRole('combobox', { name: 'What is shown' })
      .selectOption({ label: 'static compression ratio' });
    await page.locator('#sweep1').getByRole('button', { name: 'Remove this sweep' }).click();
    await settled(page);
    expect(await sweeps()).toBe(before);
    expect(await toast(page).innerText()).toContain('Removed a sweep.');
    await toast(page).getByRole('button', { name: 'Undo' }).click();
    await settled(page);
    expect(await sweeps()).toBe(before + 1);
    expect(
      await page
        .locator('#sweep1')
        .getByRole('combobox', { name: 'What is shown' })
        .evaluate((e) => (e as HTMLSelectElement).selectedOptions[0]!.text),
    ).toBe('static compression ratio');
    expect((await toast(page).innerText()).trim()).toBe('');
  });

  it('is said: a value held and let go', async () => {
    const page = await visit();
    await click(page, 'Why: Static compression ratio');
    await click(page, 'Hold at 9.54');
    expect(await toast(page).innerText()).toContain('Held static compression ratio.');
    expect(await page.locator('#staticRatio').innerText()).toMatch(/Held, as measured/);
    await click(page, 'let go of Static compression ratio');
    expect(await toast(page).innerText()).toContain('Let go of static compression ratio.');
    await toast(page).getByRole('button', { name: 'Undo' }).click();
    await settled(page);
    expect(await page.locator('#staticRatio').innerText()).toMatch(/Held, as measured/);
  });

  it('is said: the answer to “make it … by changing …”, which is what the README’s way makes of it', async () => {
    const page = await visit();
    await click(page, 'Why: Dynamic compression ratio');
    const make = page.getByRole('textbox', { name: 'Make dynamic compression ratio' });
    await make.fill('7.5');
    await make.press('Enter');
    await settled(page);
    const offer = page.getByRole('button', { name: /^Set [\d.]+°$/ });
    const at = Number.parseFloat((await offer.innerText()).replace('Set ', ''));
    expect(byHand({ closing: at }).dynamicRatio).toBeCloseTo(7.5, 2);
    await offer.click();
    await settled(page);
    expect(await shown(page, 'dynamicRatio')).toBe('7.50');
    expect(await toast(page).innerText()).toContain(`Set intake closing to ${at}°.`);
  });

  it('leaves after a while, but not from under the pointer or the focus', async () => {
    const context = await profile();
    await context.clock.install();
    const page = await context.newPage();
    await page.goto((await visit()).url());
    await page.clock.runFor(2000);
    await page.getByRole('button', { name: 'Add a sweep here' }).nth(1).click();
    await page.clock.runFor(100);
    const line = toast(page).locator('.toast');
    await line.hover();
    await page.clock.runFor(20_000);
    expect(await line.count()).toBe(1);
    await page.mouse.move(5, 300);
    await line.getByRole('button').focus();
    await page.clock.runFor(20_000);
    expect(await line.count()).toBe(1);
    await page.locator('#bore input.num').focus();
    await page.clock.runFor(10_000);
    expect(await line.count()).toBe(0);
  });
});

describe('a fault', () => {
  it('dims the figures that stand on it, each under one line that leads to the field', async () => {
    const page = await visit();
    await type(page, 'rod', '1.5');
    const figures = page.locator('figure.fig');
    const states = await figures.evaluateAll((all) =>
      all.map((f) => {
        const note = f.querySelector('.stale-note');
        return {
          id: f.id,
          dimmed: Number(getComputedStyle(f.querySelector('.frame')!).opacity) < 0.7,
          note: (note?.textContent ?? '').replaceAll(/\s+/g, ' ').trim(),
          inked: note ? getComputedStyle(note).opacity === '1' : false,
        };
      }),
    );
    const waiting = states.filter((s) => s.dimmed).map((s) => s.id);
    expect(waiting).toEqual([
      'figure-plate',
      'figure-travel',
      'closing',
      'height',
      'figure-motoredPressure',
      'figure-scale',
      'figure-margins',
      'figure-lifts',
      'figure-gaps',
    ]);
    for (const { dimmed, note, inked } of states) {
      expect(note !== '').toBe(dimmed);
      if (dimmed) expect(inked).toBe(true);
    }
    for (const { note } of states.filter((s) => s.dimmed))
      expect(note).toMatch(/^Waits for rod length, center to center\. This is the last good figure\.$/);
    await page.locator('#closing .stale-note').getByRole('link').click();
    await settled(page);
    expect(await field(page, 'rod').evaluate((e) => e === document.activeElement)).toBe(true);
    await type(page, 'rod', '5.85');
    await complete(page);
    expect(await page.locator('figure.fig .stale, .stale-note').count()).toBe(0);
  });
});

/** True if all of it can be seen: in the window, and under nothing. */
const isInSight = (of: Locator): Promise<boolean> =>
  of.evaluate((e) => {
    const { left, right, top, bottom } = e.getBoundingClientRect();
    const hit = document.elementFromPoint((left + right) / 2, (top + bottom) / 2);
    return top >= 0 && bottom <= innerHeight && hit !== null && (e.contains(hit) || hit.contains(e));
  });

describe('a pinned answer', () => {
  it.each([
    ['Displacement: ', 'displacement', { viewport: { width: 1280, height: 900 } }],
    ['Displacement: ', 'displacement', onPhone],
    ['Static compression ratio: ', 'staticRatio', onPhone],
    ['Fuel verdict, here: ', 'fuelVerdict', onPhone],
  ])('jumps to its row, opening its chapter first: %s', async (name, id, how) => {
    const page = await visit('', await profile({ ...how, isFirst: true }));
    const pins = page.getByRole('navigation', { name: 'Pinned answers and tools' });
    await pins.getByRole('link', { name }).click();
    const row = page.locator(`#${id} > span`).first();
    await expect.poll(async () => (await row.count()) === 1 && (await isInSight(row))).toBe(true);
    // The next Tab goes on from there.
    expect(await page.evaluate((id) => document.activeElement?.closest(`#${id}`) !== null, id)).toBe(true);
  });
});

describe('a chapter', () => {
  it('closes to one line that says what it comes to, and stays as it was left', async () => {
    const context = await profile({ isFirst: true });
    const page = await visit('', context);
    const heading = (name: RegExp): Locator => page.getByRole('heading', { name });
    await page.getByRole('button', { name: 'Close Short block' }).click();
    await settled(page);
    const block = page.locator('chapter-section').first();
    await expect
      .poll(() => block.innerText())
      .toMatch(/Short block.*8 cylinders, 4\.070 in by 3\.540 in: 368\.4 in³\./s);
    await type(page, 'chamberVolume', '66');
    await page.getByRole('button', { name: /^3\s*Camshaft/ }).click();
    await settled(page);
    expect(await field(page, 'camAdvance').inputValue()).toBe('0');
    await page.reload();
    await complete(page);
    expect(await field(page, 'bore').count()).toBe(0);
    expect(await field(page, 'camAdvance').count()).toBe(1);
    expect(await heading(/Short block/).count()).toBe(1);
    await page.getByRole('button', { name: /^1\s*Short block/ }).click();
    await settled(page);
    expect(await field(page, 'bore').inputValue()).toBe('4.070');
  });

  it('closed says the new figure when something it stands on moves', async () => {
    const page = await visit('', await profile({ isFirst: true }));
    await page.getByRole('button', { name: 'Close Chamber' }).click();
    await three(page).getByRole('textbox', { name: 'Chamber volume' }).fill('66');
    await settled(page);
    // (754.7 + 84.4) / 84.4, as the README figures it, with 4 cm³ less
    expect(await page.locator('chapter-section').nth(1).innerText()).toMatch(/84\.4 cm³ left at the top: 9\.94 to 1/);
  });
});

describe('slow figures', () => {
  it('of edits in quick succession, only the last one’s answer is ever shown', async () => {
    const page = await visit();
    const first = await shown(page, 'motoredPeak');
    await page.evaluate(() => {
      const row = document.querySelector('#motoredPeak')!;
      const seen: string[] = [];
      Object.assign(globalThis, { seen });
      new MutationObserver(() => {
        const isPresent = !row.classList.contains('wait');
        const text = row.querySelector('.val')!.textContent.trim();
        if (isPresent && seen.at(-1) !== text) seen.push(text);
      }).observe(row, { subtree: true, childList: true, characterData: true, attributes: true });
    });
    await page.evaluate(() => {
      const box = document.querySelector<HTMLInputElement>('#chamberVolume input.num')!;
      for (let i = 0; i < 12; i++) box.dispatchEvent(new KeyboardEvent('keydown', { key: 'ArrowDown', bubbles: true }));
    });
    await complete(page);
    const last = await shown(page, 'motoredPeak');
    const seen = await page.evaluate(() => (globalThis as unknown as { seen: string[] }).seen);
    expect(Number(last)).toBeGreaterThan(Number(first)); // a smaller chamber
    expect(seen.at(-1)).toBe(last);
    for (const text of seen) expect([first, last]).toContain(text);
    const chamber = await field(page, 'chamberVolume').inputValue();
    const other = await visit();
    await type(other, 'chamberVolume', chamber);
    await complete(other);
    expect(last).toBe(await shown(other, 'motoredPeak'));
  });
});
