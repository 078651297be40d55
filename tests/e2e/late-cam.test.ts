import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import scenario from '../../scenarios/two-cams.json';
import { violations } from './pieces/axe.ts';
import { complete, following, inBrowser, profile, settled, shown, use, visit } from './visit.ts';

inBrowser();

const { guide: told } = scenario;
/** The page with the guide's notebook open. */
async function guided({ open = '', width = 1280 } = {}): Promise<Page> {
  const isPhone = width < 700;
  const at = { viewport: { width, height: isPhone ? 844 : 900 }, hasTouch: isPhone };
  const page = await visit('', await profile(open === '' ? { isFirst: true, ...at } : { open, ...at }));
  await following(page, () => page.getByRole('link', { name: /^One block, two cams/ }).click());
  await page.locator('.guide').waitFor();
  await settled(page);
  return page;
}
const guide = (page: Page) => page.getByRole('region', { name: told.name });
const note = (page: Page) => guide(page).getByRole('status');
const words = async (page: Page): Promise<string> => (await guide(page).locator('p').allInnerTexts()).join('\n');
const value = async (page: Page, i: number): Promise<string> => guide(page).locator('.guide-value').nth(i).innerText();
async function step(page: Page, n: number): Promise<void> {
  await guide(page)
    .getByRole('button', { name: new RegExp(`^Step ${n}`) })
    .click();
  await come(page);
}
/** Waits until the step shown says all its values. */
async function come(page: Page): Promise<void> {
  await page.waitForFunction(() => !/…/.test(document.querySelector('.guide')!.textContent), undefined, {
    timeout: 50_000,
  });
  await complete(page);
}
const focused = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const at = document.activeElement as HTMLElement;
    return (at.getAttribute('aria-label') ?? at.innerText).replaceAll(/\s+/g, ' ').trim();
  });
/** Presses Tab, forward or back, until a control of this name has the focus. */
async function tabTo(page: Page, name: string, key = 'Tab'): Promise<void> {
  for (let i = 0; i < 40; i++) {
    await page.keyboard.press(key);
    if ((await focused(page)) === name) return;
  }
  throw new Error(`no way by keyboard to ${name}`);
}
/** Whether the curve has been worked out, of the variant that is looked at. */
const isWorked = (page: Page): Promise<boolean> =>
  page.evaluate(() => {
    interface Found {
      readonly store: {
        readonly catalogue: { readonly cells: ReadonlyMap<string, unknown> };
        readonly live: { state(cell: unknown): { readonly is: string } };
      };
    }
    const { store } = document.querySelector('notebook-page') as unknown as Found;
    return store.live.state(store.catalogue.cells.get('engineBySpeed')).is === 'ready';
  });

describe('the guide of two cams', () => {
  it('is gone through by keyboard alone, there and back again', async () => {
    const page = await guided();
    const next = async (): Promise<void> => {
      await tabTo(page, 'Next', 'Shift+Tab');
      await page.keyboard.press('Enter');
      await come(page);
    };
    /** From the step's heading. */
    const go = async (to: string): Promise<void> => {
      await tabTo(page, `Go there: ${to}`);
      await page.keyboard.press('Enter');
    };
    const back = async (n: number): Promise<void> => {
      // The page glides there, and the guide is out of sight only then.
      await page.locator('.guide-back').waitFor();
      await page.keyboard.press('Escape');
      expect(await focused(page)).toBe(`Step ${n} of 6: ${told.steps[n - 1]!.heading}`);
      await page.locator('.guide-back').waitFor({ state: 'detached' });
      await come(page);
    };
    await guide(page).getByRole('heading', { level: 3 }).focus();
    await go('Late cam');
    expect(await focused(page)).toBe('Late cam');
    await page.keyboard.press('Enter');
    await expect.poll(() => note(page).innerText()).toMatch(/^The page is about the late cam now\./);
    await next();

    await go('the figure in chapter 9');
    await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('figure-output');
    await back(2);
    await tabTo(page, 'Next');
    await page.keyboard.press('Enter');
    await come(page);

    await go('intake centerline');
    await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('field-intakeCenterline');
    await page.keyboard.press('Control+a');
    await page.keyboard.type('104');
    await settled(page);
    await back(3);
    await expect
      .poll(() => note(page).innerText(), { timeout: 20_000 })
      .toMatch(
        /^Intake centerline went from 108° to 104°\. Dynamic compression ratio rose from 7\.46 to 7\.74\. Charge pushed back at 2500 rpm fell from \S+ % to \S+ %\. Torque at 2500 rpm rose from \d+ lbf ft to \d+ lbf ft\. The valve shuts sooner/,
      );
    await use(page, 'Undo');
    await expect.poll(() => note(page).innerText()).toBe('');
    await guide(page).getByRole('heading', { level: 3 }).focus();
    await tabTo(page, 'Next');
    await page.keyboard.press('Enter');
    await come(page);

    await go('the figure in chapter 11');
    await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('figure-waves');
    await back(4);
    await tabTo(page, 'Next');
    await page.keyboard.press('Enter');
    await come(page);

    await go('spark advance is given as');
    await expect.poll(() => page.evaluate(() => (document.activeElement as HTMLInputElement).value)).toBe('total');
    await page.keyboard.press('ArrowLeft'); // round to the last
    await settled(page);
    await back(5);
    await expect
      .poll(() => note(page).innerText(), { timeout: 20_000 })
      .toMatch(
        /^Spark advance is given as: Held to this fuel\. Octane requirement at its worst \w+ .*Torque lost to the spark at most fell from .*Peak power rose from/,
      );
    await tabTo(page, 'Next');
    await page.keyboard.press('Enter');
    await come(page);

    await tabTo(page, 'It falls');
    await page.keyboard.press('Space');
    await expect
      .poll(() => note(page).innerText(), { timeout: 40_000 })
      .toMatch(/^Not this time.* Peak power rises from \d+ hp to about \d+ hp\. Octane requirement/);
    await tabTo(page, 'It rises', 'Shift+Tab');
    await page.keyboard.press('Enter');
    expect(await note(page).innerText()).toMatch(/^Right\. Peak power rises/);
    expect(await words(page)).toContain('Knock breaks pistons');
  }, 180_000);

  it('says the figures that the page shows once the variant they are of is chosen', async () => {
    const page = await guided({ open: 'compression output spark inside' });
    await page.locator('#chapter-output').scrollIntoViewIfNeeded();
    await complete(page);
    const read: string[][] = [];
    for (let n = 1; n <= 5; n++) {
      await page.locator('.guide').scrollIntoViewIfNeeded();
      await step(page, n);
      read.push(await guide(page).locator('p:not(.guide-note) .guide-value').allInnerTexts());
    }
    const figures = async (): Promise<Readonly<Record<string, string>>> => {
      const found: Record<string, string> = {};
      const ids = ['intakeClosing', 'staticRatio', 'dynamicRatio', 'peakPower', 'peakPowerSpeed', 'closingPressure'];
      for (const id of [...ids, 'octaneRequirement']) {
        const row = page.locator(`#${id}`);
        await row.scrollIntoViewIfNeeded();
        await complete(page);
        found[id] = id === 'intakeClosing' ? await row.locator('input.num').inputValue() : await shown(page, id);
      }
      for (const [figure, column] of [
        ['figure-output', 1],
        ['figure-filling', 1],
      ] as const) {
        const place = page.locator(`#${figure}`);
        await place.scrollIntoViewIfNeeded();
        await complete(page);
        await place.getByRole('button', { name: 'Table' }).click();
        for (const row of await place.locator('tbody tr').allInnerTexts()) {
          const cells = row.split('\t');
          found[`${figure} ${cells[0]!.trim()}`] = cells[column]!.trim();
        }
        await place.getByRole('button', { name: 'Figure' }).click();
      }
      return found;
    };
    const early = await figures();
    await page.getByRole('button', { name: 'Late cam', exact: true }).first().click();
    await complete(page);
    const late = await figures();
    const numbers = (texts: readonly string[]): string[] => texts.map((t) => t.replace(/[^\d.−]/g, ''));
    const [closing, crossing, low, high, fuel] = read.map(numbers) as [
      string[],
      string[],
      string[],
      string[],
      string[],
    ];
    const both = (id: string): string[] => [early[id]!, late[id]!].map((t) => t.replace(/[^\d.−]/g, ''));
    expect(closing).toEqual([...both('intakeClosing'), ...both('staticRatio'), ...both('dynamicRatio')]);
    expect([crossing[5], crossing[7]]).toEqual(both('peakPower'));
    expect([crossing[6], crossing[8]]).toEqual(both('peakPowerSpeed'));
    expect(low.slice(2, 6)).toEqual([...both('figure-filling 2500'), ...both('figure-output 2500')]);
    expect(high.slice(2, 4)).toEqual(both('figure-filling 6500'));
    expect(high.slice(5, 7)).toEqual(both('closingPressure'));
    expect(fuel.slice(4, 6)).toEqual(both('octaneRequirement'));
    // Where the lead changes sides in the two tables.
    const rows = Object.keys(early).flatMap((key) => /^figure-output (\d+)/.exec(key)?.[1] ?? []);
    const lead = (speed: string): number =>
      Number.parseFloat(early[`figure-output ${speed}`]!) - Number.parseFloat(late[`figure-output ${speed}`]!);
    const after = rows.findIndex((speed) => lead(speed) < 0);
    expect(Number(crossing[0])).toBeGreaterThan(Number(rows[after - 1]));
    expect(Number(crossing[0])).toBeLessThan(Number(rows[after]));
  }, 180_000);

  it('asks for long work only while a step that says it is in sight', async () => {
    const page = await guided();
    await page.waitForTimeout(900); // hands rest after half a second
    expect(await isWorked(page)).toBe(false);
    await step(page, 2);
    expect(await isWorked(page)).toBe(true);
    await page.locator('#chapter-compression').evaluate((chapter) => chapter.scrollIntoView({ block: 'start' }));
    await page.waitForFunction(() => document.querySelector('.guide')!.getBoundingClientRect().bottom < -250);
    await page.evaluate(() => {
      interface Found {
        readonly store: {
          readonly catalogue: { readonly cells: ReadonlyMap<string, unknown> };
          set(values: readonly (readonly [unknown, unknown])[], edit: object): void;
        };
      }
      const { store } = document.querySelector('notebook-page') as unknown as Found;
      store.set([[store.catalogue.cells.get('chamberVolume'), 66e-6]], { what: 'Set it' });
    });
    await page.waitForTimeout(900);
    expect(await isWorked(page)).toBe(false);
    await page.evaluate(() => scrollTo(0, 0));
    await come(page);
    expect(await isWorked(page)).toBe(true);
  });

  it('stops working out an answer, and works it out when it is asked again', async () => {
    const page = await guided();
    await step(page, 6);
    await guide(page).getByRole('button', { name: 'It stays' }).click();
    await guide(page).getByRole('button', { name: 'stop' }).click();
    expect(await guide(page).locator('[aria-pressed=true]').count()).toBe(0);
    expect(await guide(page).locator('.guide-note').textContent()).toBe('');
    await guide(page).getByRole('button', { name: 'It rises' }).click();
    await expect.poll(() => note(page).innerText(), { timeout: 40_000 }).toMatch(/^Right\./);
    // It was of the engine as it stood.
    await use(page, 'Undo');
    await expect.poll(() => page.locator('.guide').count()).toBe(0);
  });

  it.each([1280, 390])(
    'fits, %i px wide, and has no fault an accessibility checker finds',
    async (width) => {
      const page = await guided({ width });
      for (let n = 1; n <= told.steps.length; n++) {
        await step(page, n);
        if (n === 6) {
          await guide(page).getByRole('button', { name: 'It stays' }).click();
          await expect.poll(() => note(page).innerText(), { timeout: 40_000 }).toContain('Peak power');
        }
        expect(
          await page.evaluate(() => document.documentElement.scrollWidth - innerWidth),
          `step ${n}`,
        ).toBeLessThanOrEqual(0);
        expect(await violations(page, 'guide-panel'), `step ${n}`).toEqual([]);
        const buttons = await guide(page)
          .locator('button, a')
          .evaluateAll((all) =>
            all.map((b) => Math.min(b.getBoundingClientRect().width, b.getBoundingClientRect().height)),
          );
        expect(buttons.length).toBeGreaterThan(8);
        if (width < 700) expect(Math.min(...buttons), `step ${n}`).toBeGreaterThanOrEqual(44);
      }
      // On the way back from far down as well.
      await step(page, 4);
      await guide(page)
        .getByRole('link', { name: /^Go there/ })
        .click();
      const back = page.locator('.guide-back');
      await back.waitFor();
      const [tools, box] = [await page.locator('.toolbar').boundingBox(), (await back.boundingBox())!];
      if (width < 700) expect(box.y + box.height).toBeLessThanOrEqual(tools!.y);
      // As the window stands: in a taller one the guide would be in sight, and the button gone.
      const found = await page.evaluate(() =>
        (
          globalThis as unknown as {
            axe: { run(part: string): Promise<{ violations: { id: string }[]; passes: unknown[] }> };
          }
        ).axe.run('.guide-back'),
      );
      expect(found.violations.map(({ id }) => id)).toEqual([]);
      expect(found.passes.length).toBeGreaterThan(2);
      await back.click();
      await back.waitFor({ state: 'detached' });
      expect(await value(page, 0)).toMatch(/%$/);
    },
    180_000,
  );
});
