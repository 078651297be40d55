import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { drawn, violations } from './pieces/axe.ts';
import type { Pieces } from './pieces/pieces.ts';
import { servePieces } from './pieces/serve.ts';
import { click, inBrowser, profile, settled, type, visit } from './visit.ts';

inBrowser();
let served: Awaited<ReturnType<typeof servePieces>>;
beforeAll(async () => {
  served = await servePieces();
});
afterAll(() => served?.close());

const sizes = [
  [1280, 900],
  [390, 844],
] as const;
const schemes = ['light', 'dark'] as const;

/** The page of pieces, once all of them stand in the state they are to show. */
async function pieces(at = '', width = 1280, height = 900): Promise<Page> {
  const page = await (await profile({ viewport: { width, height }, hasTouch: width < 700 })).newPage();
  await page.goto(served.address + at);
  await page.waitForSelector('html[data-standing]');
  return page;
}
/** What is found by day and by night. */
async function found(page: Page, part?: string): Promise<string[]> {
  const all: string[] = [];
  for (const colorScheme of schemes) {
    await page.emulateMedia({ colorScheme });
    all.push(...(await violations(page, part)).map((one) => `${colorScheme}: ${one}`));
  }
  return all;
}

describe('axe-core finds nothing', () => {
  it.each(sizes)('against any piece in any state, %s by %s', async (width, height) => {
    expect(await found(await pieces('', width, height))).toEqual([]);
  });
  it.each(['published', 'wrong', 'long'])('against the share panel: %s', async (state) => {
    expect(await found(await pieces(`?share=${state}`), '#piece-share')).toEqual([]);
  });
  it.each(sizes)('against the page with notices and a fault, %s by %s', async (width, height) => {
    expect(await found(await pieces('?whole', width, height))).toEqual([]);
  });
  it.each(sizes)('against the notebook as it opens, %s by %s', async (width, height) => {
    expect(await found(await visit('', await profile({ viewport: { width, height }, isFirst: true })))).toEqual([]);
  });
  it.each(sizes)('against the notebook with everything open, %s by %s', async (width, height) => {
    const page = await visit('', await profile({ viewport: { width, height } }));
    for (const fold of await page.locator('.fold').all()) await fold.click();
    await click(page, 'Why: Dynamic compression ratio');
    await page.locator('#closing').getByRole('button', { name: 'Table' }).click();
    await page.locator('#figure-plate').getByRole('button', { name: 'Table' }).click();
    await page.getByRole('button', { name: 'Share', exact: true }).click();
    await page.getByRole('group', { name: 'Share this notebook' }).waitFor();
    await settled(page);
    expect(await found(page)).toEqual([]);
  });
});

describe('a piece shows its state', () => {
  it('in words: fields, answers and why', async () => {
    const page = await pieces();
    const says: Readonly<Record<string, RegExp>> = {
      'field-changed': /reset/,
      'field-out': /Figured all the same.*59 to 95 °F/s,
      'field-fault': /The rod is shorter than the crank throw, 1\.770 in\./,
      'field-unread': /cannot be read/,
      'field-held': /Held, as measured.*let go/s,
      'field-free': /Computed\. What you type is held/,
      'field-moved': /Moves the cam, now at −5°.*the duration instead/s,
      'row-ready': /Displacement.*368\.4/s,
      'row-coming': /50 % done\..*stop.*174/s, // 1.2 MPa is 174 psi
      'row-waiting': /…?.*62 % done\..*stop/s,
      'row-stopped': /Stopped\..*go on/s,
      'row-again': /20 % done/,
      'row-elsewhere': /693\.2.*Waits for rod length/s,
      'row-held': /9\.60.*Held, as measured\. Computed it would be 9\.54/s,
      'row-out': /Not valid here: made for air temperature from 59 to 95 °F/,
      'row-none': /not given/,
      why: /It reads.*Trapped volume.*Where it comes from.*What moves it most.*66\.9°\. It turns on no caution\..*Set 66\.9°/s,
      'why-reach': /out of reach\. The nearest is/,
      'why-unread': /“more” is not a figure/,
      'why-slow': /Make it.*Looking for it: 40 %\. stop/s,
      do: /Set the chamber to 66 cm³, at (?!9\.54)\d+\.\d\d now.*A stand-in, to see how it looks\..*It is set\./s,
      'do-waits': /Set what the compression says.*It waits for /s,
      'do-refused': /Give the measured peak first\./,
      words: /comfortable.*borderline.*beyond this fuel/s,
      toast: /Set intake closing to 66\.9°\..*Undo/s,
      sentence: /The two ends of a sweep differ\./,
      share: /nobody else can open its link/,
      'verdict-comfortable': /Comfortable here/,
      'verdict-borderline': /Borderline here/,
      'verdict-beyond': /Beyond this fuel here/,
      'verdict-stale': /Waits for rod length.*last good verdict/s,
      'plate-stale': /Waits for rod length.*last good figure/s,
      'travel-stale': /Waits for rod length.*last good figure/s,
      'sweep-stale': /Waits for rod length.*last good figure/s,
      'motored-stale': /Waits for rod length.*last good figure/s,
      'motored-again': /Being worked out anew/,
      'sweep-slow': /Working it out: 40 %/,
      'plate-table': /At the closing.*61°.*693\.2 cm³/s,
      'scale-table': /Caution begins.*7\.54.*7\.50/s,
      'sweep-table': /66\.0 cm³.*70\.0 cm³.*74\.0 cm³/s,
      map: /comfortable.*borderline.*beyond this fuel.*° more intake closing makes up for [\d.]+ cm³ less chamber volume/s,
      'map-low': /Dashed: the edges at the lowest altitude/,
      'map-plain': /For the same cranking pressure/,
      'map-table': /across and down.*80\.0.*60\.0/s,
      'map-stale': /Waits for rod length.*last good figure/s,
      'map-both': /These cannot be varied together: both move cam advance/,
      'map-slow': /117 of 169 points stand\..*stop/s,
      'map-slow-bare': /0 of 169 points stand\..*stop/s,
      'sweep-variants': /Thin, with their names: the other variants\./,
      'sweep-multiples': /Early cam.*Late cam/s,
      'motored-table': /Crank angle/,
      best: /Look for it.*a hint, not a promise/s,
      'best-found': /Look again.*Worked out: 30\..*No\. 1 of.*Keep as a variant.*none beats another in both/s,
      'best-one': /No\. 1 of.*cranking pressure.*Keep as a variant.*best that differ/is,
      'best-slow': /Stop.*0 of 30 designs/s,
      'best-none': /Nothing that is changed here moves displacement\./,
      closed: /Short block.*368\.4.*Camshaft.*270°.*Fuel/s,
    };
    await page.setViewportSize({ width: 1280, height: 20_000 });
    await drawn(page);
    for (const [id, words] of Object.entries(says))
      expect((await page.locator(`#piece-${id}`).innerText()).replaceAll('\u00a0', ' '), id).toMatch(words);
  });

  it('in ink: what is not of the present is dimmed, and nothing else', async () => {
    const page = await pieces();
    await page.setViewportSize({ width: 1280, height: 20_000 });
    await drawn(page);
    const dimmed = await page.evaluate(() =>
      Array.from(document.querySelectorAll('[id^=piece-]'))
        .filter((piece) =>
          Array.from(piece.querySelectorAll('figure > .frame')).some((f) => Number(getComputedStyle(f).opacity) < 1),
        )
        .map((piece) => piece.id.replace('piece-', '')),
    );
    expect(dimmed).toEqual([
      'plate-stale',
      'travel-stale',
      'sweep-stale',
      'sweep-slow',
      'map-stale',
      'draws-stale',
      'draws-slow',
      'motored-stale',
      'motored-again',
    ]);
  });

  it('a sweep has a band for each caution, and dashed edges where the lowest altitude’s differ', async () => {
    const page = await pieces();
    await page.setViewportSize({ width: 1280, height: 20_000 });
    await drawn(page);
    const look = async (id: string): Promise<[number, number, string]> => {
      const piece = page.locator(`#piece-${id}`);
      return [
        await piece.locator('.bands path').count(),
        await piece.locator('.marks path[stroke-dasharray="6 4"]').count(),
        (await piece.locator('svg text').allTextContents()).join(', '),
      ];
    };
    const [bands, dashed, words] = await look('sweep');
    expect([bands, dashed]).toEqual([2, 0]);
    expect(words).toMatch(/comfortable.*borderline.*beyond this fuel/);
    const [, low, lowWords] = await look('sweep-low');
    expect(low).toBe(2);
    expect(lowWords).toContain('borderline, taken down');
  });

  it('the lines of another variant are dashed and named; of more than a dozen each variant has a figure', async () => {
    const page = await pieces();
    await page.setViewportSize({ width: 1280, height: 20_000 });
    await drawn(page);
    const two = page.locator('#piece-sweep-variants');
    await expect.poll(() => two.locator('.lines path[stroke-dasharray="8 4"]').count()).toBe(1);
    expect((await two.locator('.marks text').allTextContents()).filter((t) => t.endsWith('cam'))).toEqual([
      'Early cam',
      'Late cam',
    ]);
    const many = page.locator('#piece-sweep-multiples');
    expect(await many.locator('line-plot').count()).toBe(2);
    for (const plot of await many.locator('line-plot').all())
      expect(await plot.locator('.lines path[stroke]:not([stroke="var(--paper)"])').count()).toBeGreaterThanOrEqual(7);
    expect(await many.locator('[stroke-dasharray="8 4"]').count()).toBe(0);
  });

  it('a slow cell’s answer stands in its row once the message has come', async () => {
    const page = await pieces();
    const row = page.locator('#piece-row-waiting');
    expect(await row.locator('#motoredPeak .val').innerText()).toBe('…');
    expect(await row.locator('#motoredPressure').getAttribute('aria-busy')).toBe('true');
    await page.evaluate(() => (globalThis as unknown as { pieces: Pieces }).pieces.answer());
    await expect.poll(() => row.innerText()).not.toContain('% done');
    // Between the isothermal 98 psi and the 241 of the gas law with nothing lost.
    const peak = Number(await row.locator('#motoredPeak .val').innerText());
    expect(peak).toBeGreaterThan(98);
    expect(peak).toBeLessThan(241);
    expect(await row.locator('#motoredPressure').getAttribute('aria-busy')).toBe('false');
  });

  it('the share panel says what stands in the way of a link', async () => {
    const panel = async (state: string): Promise<string> =>
      (await pieces(`?share=${state}`)).locator('share-panel').innerText();
    expect(await panel('wrong')).toContain('Write a whole address that begins with https:// or http://.');
    expect(await panel('long')).toMatch(/too long for a link \(\d+ characters\)\. Send the file instead\./);
    const page = await pieces('?share=published');
    expect(await page.getByRole('textbox', { name: 'Link', exact: true }).inputValue()).toMatch(
      /^https:\/\/engine\.example\/notebook\/#1\./,
    );
    expect(await page.locator('share-panel').innerText()).not.toContain('Nobody else can open it');
  });
});

it('the notebook itself has a notice and a list to start from', async () => {
  const page = await visit();
  await type(page, 'chamberVolume', '66');
  await page.getByRole('link', { name: /^Mountain six/ }).click();
  await page.getByRole('button', { name: 'Get it back' }).waitFor();
  expect(await page.getByRole('navigation', { name: 'Start from another' }).getByRole('link').count()).toBe(4);
  expect(await violations(page)).toEqual([]);
});
