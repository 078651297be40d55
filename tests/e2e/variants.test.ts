import { readFile } from 'node:fs/promises';
import type { Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { byHand } from './by-hand.ts';
import { violations } from './pieces/axe.ts';
import { click, complete, field, following, inBrowser, profile, settled, shown, type, use, visit } from './visit.ts';

inBrowser();

const onPhone = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true };
const sizes = [
  ['a desk', { viewport: { width: 1280, height: 900 } }],
  ['a phone', onPhone],
] as const;

const chips = (page: Page): Locator => page.getByRole('list', { name: 'Variants' }).getByRole('button');
const names = (page: Page): Promise<string[]> =>
  chips(page).evaluateAll((all) => all.map((e) => e.textContent.trim()).filter((name) => name !== 'Add a variant'));
const chosen = async (page: Page): Promise<string> =>
  (await page.locator('.chips [aria-pressed=true]').innerText()).trim();
const alert = (page: Page): Promise<string> => page.locator('#variants').getByRole('alert').innerText();
const toast = (page: Page): Promise<string> => page.locator('toast-line').innerText();
const table = (page: Page): Locator => page.locator('comparison-table table');
/** What stands in the row of this name, one text a variant, its lines apart by a bar. */
async function row(page: Page, name: string | RegExp): Promise<string[]> {
  const cells = table(page)
    .getByRole('row')
    .filter({ has: page.getByRole('rowheader', { name }) })
    .locator('td');
  return (await cells.allInnerTexts()).map((text) =>
    text
      .trim()
      .replaceAll(/\s*\n+\s*/g, ' | ')
      .replaceAll('\u00a0', ' '),
  );
}
const rows = (page: Page, body: string): Promise<string[]> =>
  table(page)
    .locator(`${body} th`)
    .evaluateAll((all) => all.map((e) => e.textContent.trim()));
/** Brings the table into sight and waits until the quick figures of all variants stand there. */
async function compare(page: Page): Promise<void> {
  await table(page).evaluate((e) => e.scrollIntoView({ block: 'start', behavior: 'instant' }));
  await expect.poll(() => row(page, 'Static compression ratio')).not.toContain('…');
}
const cams = async (page: Page): Promise<void> => {
  await following(page, () => page.getByRole('link', { name: /^One block, two cams/ }).click());
  await chips(page).first().waitFor();
};
const rename = async (page: Page, from: string, to: string): Promise<void> => {
  await click(page, `Rename ${from}`);
  await page.getByRole('textbox', { name: `Name of ${from}` }).fill(to);
  await page.keyboard.press('Enter');
  await settled(page);
};

describe('three cams on one short block', () => {
  it.each(sizes)(
    'stand side by side after at most 30 clicks and typed figures, and go as a link, at %s',
    async (_, how) => {
      let actions = 0;
      const context = await profile({ ...how, isFirst: true, permissions: ['clipboard-read', 'clipboard-write'] });
      const page = await visit('', context);
      const press = (name: string | RegExp): Promise<void> => (actions++, click(page, name));
      const write = (id: string, figure: string): Promise<void> => (actions++, type(page, id, figure));
      const call = async (from: string, to: string): Promise<void> => {
        await press(`Rename ${from}`);
        actions++;
        await page.getByRole('textbox', { name: `Name of ${from}` }).fill(to);
        await page.getByRole('textbox', { name: `Name of ${from}` }).blur();
        await settled(page);
      };
      const grind = async (card: Readonly<Record<string, string>>): Promise<void> => {
        for (const [id, figure] of Object.entries(card)) await write(id, figure);
      };
      await press(/^3\s*Camshaft/);
      await press('Add a variant');
      await call('B', 'Street 276');
      await grind({
        intakeDuration: '276',
        exhaustDuration: '284',
        intakeDuration050: '228',
        exhaustDuration050: '234',
        lobeSeparation: '110',
        intakeCenterline: '106',
      });
      await press('Add a variant');
      await call('C', 'Strip 292');
      await grind({
        intakeDuration: '292',
        exhaustDuration: '300',
        intakeDuration050: '242',
        exhaustDuration050: '248',
        lobeSeparation: '108',
        intakeCenterline: '104',
      });
      await press('A');
      await call('A', 'As it is');
      await press('Share');
      await press(/^Copy link/);
      await page.getByText('Copied.').waitFor();
      console.info(`${actions} actions`);
      expect(actions).toBeLessThanOrEqual(30);

      const link = await page.evaluate(() => navigator.clipboard.readText());
      const other = await (await profile({ ...how, isFirst: true })).newPage();
      await other.goto(link);
      await other.getByText('This is a copy from a link').waitFor();
      expect(await names(other)).toEqual(['As it is', 'Street 276', 'Strip 292']);
      expect(await chosen(other)).toBe('As it is');
      await compare(other);
      expect(await rows(other, 'tbody:first-of-type')).toEqual([
        'Intake duration, advertised',
        'Intake duration at 0.050 in',
        'Exhaust duration, advertised',
        'Exhaust duration at 0.050 in',
        'Lobe separation, cam degrees',
        'Intake centerline, ATDC',
      ]);
      expect(await row(other, /^Intake duration, advertised/)).toEqual(['270°', '276° | +6°', '292° | +22°']);
      // Half the duration past the centerline, which is counted from the top: bottom is 180 degrees on.
      const closings = [270 / 2 + 106, 276 / 2 + 106, 292 / 2 + 104].map((from) => from - 180);
      expect(await row(other, /^Intake closing/)).toEqual(
        closings.map((at, i) => `${at}°${i === 0 ? '' : ` | +${at - closings[0]!}°`}`),
      );
      const hand = closings.map((closing) => byHand({ closing }));
      const figures = async (name: string): Promise<number[]> => (await row(other, name)).map(Number.parseFloat);
      for (const [i, ratio] of (await figures('Dynamic compression ratio')).entries())
        expect(ratio).toBeCloseTo(hand[i]!.dynamicRatio, 2);
      for (const [i, pressure] of (await figures('Cranking pressure, psi')).entries())
        expect(Math.abs(pressure - hand[i]!.crankingPressure)).toBeLessThan(1);
      expect(await row(other, 'Static compression ratio')).toEqual(['9.54', '9.54', '9.54']);
    },
    150_000,
  );
});

describe('variants', () => {
  it('begin with one press: what was there is A, and what is changed then belongs to B alone', async () => {
    const page = await visit();
    expect(await table(page).count()).toBe(0);
    await click(page, 'Add a variant');
    expect([await names(page), await chosen(page)]).toEqual([['A', 'B'], 'B']);
    expect(await toast(page)).toContain('Added B: what was there is A now.');
    await type(page, 'chamberVolume', '66');
    expect(await page.locator('#variants').innerText()).toContain('What you change belongs to B alone.');
    // It is said where things are changed as well.
    for (const place of ['.kicker', '[aria-labelledby=chapter-chamber] .head'])
      expect((await page.locator(place).innerText()).replaceAll(/\s+/g, ' ')).toMatch(/What you change belongs to B/);
    await click(page, 'A');
    expect(await field(page, 'chamberVolume').inputValue()).toBe('70.0');
    await use(page, 'Undo');
    expect([await chosen(page), await field(page, 'chamberVolume').inputValue()]).toEqual(['B', '70.0']);
    await use(page, 'Undo');
    expect(await page.locator('#variants').innerText()).toMatch(/^Add a variant, such as/);
    expect(await table(page).count()).toBe(0);
  });

  it('share what none of them says: it is changed for all of them at once', async () => {
    const page = await visit();
    await cams(page);
    await click(page, 'Late cam');
    await click(page, 'Change what all share');
    expect(await names(page)).toEqual(['The notebook', 'Early cam', 'Late cam']);
    await type(page, 'chamberVolume', '60');
    await click(page, 'Back to Late cam');
    expect([await chosen(page), await field(page, 'chamberVolume').inputValue()]).toEqual(['Late cam', '60.0']);
    await click(page, 'Early cam');
    expect(await field(page, 'chamberVolume').inputValue()).toBe('60.0');
  });

  it('are renamed in place; no name, and the name of another, get a sentence', async () => {
    const page = await visit();
    await cams(page);
    await rename(page, 'Early cam', '256');
    expect([await names(page), await chosen(page)]).toEqual([['256', 'Late cam'], '256']);
    await rename(page, '256', ' late CAM ');
    expect(await alert(page)).toBe('Another variant is called “Late cam”. Write a name of its own.');
    await page.getByRole('textbox', { name: 'Name of 256' }).fill('');
    await page.keyboard.press('Enter');
    expect(await alert(page)).toBe('A variant has a name: write at least one letter.');
    await page.keyboard.press('Escape');
    await settled(page);
    expect(await names(page)).toEqual(['256', 'Late cam']);
    expect(await page.locator('#variants').getByRole('alert').count()).toBe(0);
    await use(page, 'Undo');
    expect(await names(page)).toEqual(['Early cam', 'Late cam']);
  });

  it('are copied, moved and removed, and each can be taken back', async () => {
    const page = await visit();
    await cams(page);
    await click(page, 'Late cam');
    await click(page, 'Add a variant');
    expect(await toast(page)).toContain('Added C, a copy of Late cam.');
    expect(await shown(page, 'dynamicRatio')).toBe('7.46');
    await click(page, 'Move left C');
    await click(page, 'Move left C');
    expect(await names(page)).toEqual(['C', 'Early cam', 'Late cam']);
    expect(await page.getByRole('button', { name: 'Move left C' }).isDisabled()).toBe(true);
    await click(page, 'Remove C');
    expect([await names(page), await chosen(page)]).toEqual([['Early cam', 'Late cam'], 'Early cam']);
    await page.locator('toast-line').getByRole('button', { name: 'Undo' }).click();
    await settled(page);
    expect([await names(page), await chosen(page)]).toEqual([['C', 'Early cam', 'Late cam'], 'C']);
    expect(await shown(page, 'dynamicRatio')).toBe('7.46');
  });

  it('of the last two, the notebook is the one that is left', async () => {
    const page = await visit();
    await cams(page);
    await click(page, 'Remove Early cam');
    expect(await toast(page)).toContain('Removed Early cam: the notebook is Late cam now.');
    expect(await shown(page, 'dynamicRatio')).toBe('7.46');
    expect(await chips(page).count()).toBe(0);
    expect(await page.locator('.whose').count()).toBe(0);
    await use(page, 'Undo');
    await click(page, 'Keep only Early cam');
    expect(await shown(page, 'dynamicRatio')).toBe('8.67');
    expect(await chips(page).count()).toBe(0);
  });

  it('are worked with keys alone, and the focus is never lost', async () => {
    const page = await visit('', await profile({ isFirst: true }));
    const focused = (): Promise<string> =>
      page.evaluate(() => {
        const e = document.activeElement!;
        return (e.getAttribute('aria-label') ?? e.textContent).trim();
      });
    const key = async (...keys: readonly string[]): Promise<void> => {
      for (const each of keys) await page.keyboard.press(each);
      await settled(page);
    };
    await page.getByRole('button', { name: 'Add a variant' }).focus();
    await key('Enter');
    await page.locator('.chips [aria-pressed=true]').focus();
    await key('Tab', 'Enter');
    expect(await names(page)).toEqual(['A', 'B', 'C']);
    await page.getByRole('button', { name: 'Rename C' }).focus();
    await key('Enter');
    expect(await focused()).toBe('Name of C');
    await page.keyboard.type('Later');
    await key('Enter');
    expect(await focused()).toBe('Later');
    await key('Shift+ArrowLeft', 'Shift+ArrowLeft');
    expect([await names(page), await focused()]).toEqual([['Later', 'A', 'B'], 'Later']);
    await key('Tab', 'Space');
    expect([await chosen(page), await focused()]).toEqual(['A', 'A']);
    await page.getByRole('button', { name: 'Move right A' }).focus();
    await key('Enter');
    expect([await names(page), await focused()]).toEqual([['Later', 'B', 'A'], 'A']); // the button has nowhere to go on to
    await page.getByRole('button', { name: 'Remove A' }).focus();
    await key('Enter');
    expect([await names(page), await focused()]).toEqual([['Later', 'B'], 'B']);
    await page.getByRole('button', { name: 'Keep only B' }).focus();
    await key('Enter');
    expect(await focused()).toBe('Add a variant');
  });
});

describe('side by side', () => {
  it('what differs is blue and leads to its field in that variant; what is equal is paler', async () => {
    const page = await visit();
    await cams(page);
    await compare(page);
    const color = (of: Locator): Promise<string> => of.evaluate((e) => getComputedStyle(e).color);
    const of = (name: string): Locator =>
      table(page)
        .getByRole('row')
        .filter({ has: page.getByRole('rowheader', { name }) })
        .locator('td');
    const blue = await color(page.locator('.blue').first());
    expect(await color(of('Lobe separation').last().locator('a'))).toBe(blue);
    const [ink, pale] = [await color(of('Dynamic compression ratio').last()), await color(of('Static').last())];
    expect(pale).not.toBe(ink);
    expect(await color(page.locator('body'))).toBe(ink);
    await of('Lobe separation').last().locator('a').click();
    await settled(page);
    expect(await chosen(page)).toBe('Late cam');
    await expect.poll(() => field(page, 'lobeSeparation').evaluate((e) => e === document.activeElement)).toBe(true);
    await page.keyboard.type('1');
    await type(page, 'lobeSeparation', '112');
    await compare(page);
    expect(await rows(page, 'tbody:first-of-type')).not.toContain('Lobe separation, cam degrees');
  });

  it('differences are against the first, or against whichever is asked for', async () => {
    const page = await visit();
    await cams(page);
    await compare(page);
    expect(await row(page, 'Dynamic compression ratio')).toEqual(['8.67', '7.46 | −1.21, −14 %']);
    expect(await row(page, /^Overlap/)).toEqual(['35°', '78° | +43°']); // no share of an angle
    await page.getByRole('combobox', { name: 'Differences against' }).selectOption('Late cam');
    await settled(page);
    expect(await row(page, 'Dynamic compression ratio')).toEqual(['8.67 | +1.21, +16 %', '7.46']);
    expect(await row(page, 'Fuel verdict, here')).toEqual(['beyond this fuel', 'comfortable']);
    expect(await page.locator('comparison-table .answers').innerText()).toMatch(
      /Early cam brings 2:\s+Fuel verdict, here: Beyond this fuel here, on 91 AKI[^]*Fuel verdict, taken down: Beyond/,
    );
  });

  it('a measured figure that one holds is blue there, and computed in the other', async () => {
    const page = await visit();
    await click(page, 'Add a variant');
    await click(page, 'Why: Static compression ratio');
    await click(page, 'Hold at 9.54');
    await type(page, 'chamberVolume', '66');
    await compare(page);
    const [computed, held] = await row(page, 'Static compression ratio');
    expect(held).toBe('9.54 | held');
    expect(computed).toBe('9.54 | computed');
    expect(await rows(page, '.out')).not.toContain('Static compression ratio');
  });

  it('a fault in one is said in its column, and the others stand', async () => {
    const page = await visit();
    await click(page, 'Add a variant');
    await type(page, 'rod', '1.5');
    await compare(page);
    expect(await row(page, 'Dynamic compression ratio')).toEqual([
      '7.84',
      'no value | waits for rod length, center to center',
    ]);
  });

  it('goes into a file as rows of figures and differences', async () => {
    const page = await visit();
    await cams(page);
    await compare(page);
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.locator('comparison-table').getByRole('button', { name: 'CSV' }).click(),
    ]);
    expect(download.suggestedFilename()).toBe('one-block-two-cams-side-by-side.csv');
    const lines = (await readFile(await download.path(), 'utf8')).split('\r\n');
    expect(lines[0]).toBe('# Early cam, Late cam, side by side');
    expect(lines[1]).toBe(',Unit,Early cam,Late cam,Late cam less Early cam');
    expect(lines).toContain('Intake closing,° ABDC,56,75,+19');
    expect(lines).toContain('Dynamic compression ratio,,8.67,7.46,-1.21');
  });

  it('on a phone goes by under a thumb while the names of its rows stay, and the page is no wider', async () => {
    const page = await visit('', await profile(onPhone));
    await cams(page);
    for (let i = 0; i < 3; i++) await click(page, 'Add a variant');
    await compare(page);
    const wrap = page.locator('comparison-table .tablewrap');
    const place = async (): Promise<number[]> => [
      (await table(page).locator('.out th').first().boundingBox())!.x,
      (await table(page).locator('.out td').last().boundingBox())!.x,
    ];
    const [name, last] = await place();
    await wrap.evaluate((e) => (e.scrollLeft = 150));
    const [after, moved] = await place();
    expect(after).toBe(name);
    expect(last! - moved!).toBeGreaterThan(100);
    for (const width of [320, 390, 700, 1100, 1280]) {
      await page.setViewportSize({ width, height: 844 });
      await settled(page);
      expect(
        await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth),
        String(width),
      ).toBeLessThanOrEqual(0);
    }
  });

  it('what takes long begins where it is in sight, says how far it has come, and is what its chapter says', async () => {
    // The torque figure would ask for the other cam itself.
    const page = await visit('', await profile({ open: 'compression' }));
    const busy = (): Promise<boolean> =>
      page.evaluate(() => {
        interface Found {
          readonly store: { readonly others: { readonly busy: boolean } };
        }
        return (document.querySelector('notebook-page') as unknown as Found).store.others.busy;
      });
    await cams(page);
    await compare(page);
    await table(page)
      .locator('.out')
      .evaluate((e) => e.scrollIntoView({ block: 'end', behavior: 'instant' }));
    await page.waitForTimeout(1500);
    expect([await busy(), (await row(page, 'Peak torque, lbf ft'))[1]]).toEqual([false, '…']);
    await table(page).locator('.late').scrollIntoViewIfNeeded();
    await expect.poll(busy).toBe(true);
    expect((await row(page, 'Being worked out'))[1]).toMatch(/^\d+ %$/);
    await expect.poll(() => rows(page, '.late'), { timeout: 100_000 }).not.toContain('Being worked out');
    const told = await row(page, 'Peak power, hp');
    await page.locator('chapter-section button[aria-expanded=false]', { hasText: 'Torque and power' }).click();
    for (const [i, name] of ['Early cam', 'Late cam'].entries()) {
      await click(page, name);
      await complete(page);
      expect(told[i]!.split(' ')[0]).toBe(await shown(page, 'peakPower'));
    }
  }, 180_000);

  it.each([
    ['light', 1280, 900],
    ['dark', 390, 844],
  ] as const)('has nothing for axe to find, %s, %s wide', async (colorScheme, width, height) => {
    const page = await visit('', await profile({ colorScheme, viewport: { width, height }, isFirst: true }));
    await cams(page);
    await click(page, 'Add a variant');
    await click(page, 'Rename C');
    await page.getByRole('textbox', { name: 'Name of C' }).fill('');
    await page.keyboard.press('Enter');
    await compare(page);
    expect(await violations(page, 'main')).toEqual([]);
  });

  it('on a phone its words are as large to a thumb as others are', async () => {
    const page = await visit('', await profile({ ...onPhone, isFirst: true }));
    await cams(page);
    await compare(page);
    const small = await page
      .locator('.chips button, .pick')
      .evaluateAll((all) =>
        all.filter((e) => e.getBoundingClientRect().height < 43.5).map((e) => e.textContent.trim()),
      );
    expect(small).toEqual([]);
    const missed = await page.locator('variants-panel .link, comparison-table td a').evaluateAll((all) =>
      all
        .filter((e) => {
          e.scrollIntoView({ block: 'center', behavior: 'instant' });
          const { left, right, top, bottom } = e.getBoundingClientRect();
          return ![-13, 13].some((by) =>
            e.contains(document.elementFromPoint((left + right) / 2, (top + bottom) / 2 + by)),
          );
        })
        .map((e) => e.textContent.trim()),
    );
    expect(missed).toEqual([]);
  });
});
