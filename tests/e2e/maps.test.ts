import type { Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { byHand } from './by-hand.ts';
import { violations } from './pieces/axe.ts';
import { field, inBrowser, profile, rest, settled, shown, tool, type, use, visit } from './visit.ts';

inBrowser();

const map = (page: Page): Locator => page.locator('map-figure').first();
/** The point of a map: a slider over the picture. */
const point = (page: Page): Locator => map(page).getByRole('slider');
/** A page with a map in the chapter of dynamic compression. */
async function withMap(context = profile()): Promise<Page> {
  const page = await visit('', await context);
  const chapter = page.locator('section[aria-labelledby=chapter-compression]');
  await chapter.getByRole('button', { name: 'Add a map here' }).click();
  await map(page).scrollIntoViewIfNeeded();
  await whole(page);
  return page;
}
/** Waits until what a quick map shows is of what stands now. */
async function whole(page: Page): Promise<void> {
  await settled(page);
  await expect.poll(() => map(page).locator('.frame:not(.stale, .empty)').count()).toBe(1);
}
async function choose(page: Page, list: string, id: string): Promise<void> {
  await map(page).getByRole('combobox', { name: list, exact: true }).selectOption(id);
  await settled(page);
}
async function write(page: Page, blank: string, text: string): Promise<void> {
  const box = map(page).getByRole('textbox', { name: blank, exact: true });
  await box.fill(text);
  await box.blur();
  await settled(page);
}
/** A map's table: what stands over its columns, and its rows with what stands before them. */
async function table(page: Page): Promise<{ readonly xs: string[]; readonly rows: string[][] }> {
  await whole(page);
  await map(page).getByRole('button', { name: 'Table' }).click();
  const found = map(page).getByRole('table');
  const [, ...xs] = await found.locator('thead th').allInnerTexts();
  const rows = await found
    .locator('tbody tr')
    .evaluateAll((all) => all.map((tr) => Array.from(tr.children, (td) => td.textContent.trim())));
  await map(page).getByRole('button', { name: 'Figure' }).click();
  await whole(page);
  return { xs, rows };
}
const figures = (texts: readonly string[]): number[] => texts.map((text) => Number.parseFloat(text.replace('−', '-')));

describe('a map', () => {
  it('has a table that the README’s way of working it out comes to', async () => {
    const page = await withMap();
    const { xs, rows } = await table(page);
    expect(figures(xs)).toEqual([40, 45, 50, 55, 60, 65, 70, 75, 80]);
    expect(rows).toHaveLength(9);
    for (const [chamber, ...ratios] of rows)
      for (const [k, closing] of figures(xs).entries())
        expect(Number(ratios[k])).toBeCloseTo(byHand({ closing, chamber: Number(chamber) }).dynamicRatio, 2);
    // The highest chamber stands on top, as on the map.
    expect(Number(rows[0]![0])).toBeGreaterThan(Number(rows[8]![0]));
  });

  it('follows an edit, and comes back with a step back', async () => {
    const page = await withMap();
    const before = await table(page);
    await type(page, 'bore', '4.2');
    const after = await table(page);
    expect(Number(after.rows[4]![5])).toBeGreaterThan(Number(before.rows[4]![5]) + 0.2);
    await use(page, 'Undo');
    expect(await table(page)).toEqual(before);
  });

  it('that takes more than a moment follows a hand that keeps moving, and is of the present once it rests', async () => {
    const page = await withMap();
    await choose(page, 'What is shown', 'intakeClearance');
    await choose(page, 'Up', 'rockerRatio');
    await whole(page);
    const lines = (): Promise<string> => map(page).locator('svg .ground').innerHTML();
    const before = await lines();
    // A hand that moves on with every picture, sooner than any map of this is there.
    const seen = await page.evaluate(async () => {
      interface Notebook {
        readonly store: {
          readonly catalogue: { readonly cells: ReadonlyMap<string, unknown> };
          set(values: readonly (readonly [unknown, number])[], edit: object): void;
        };
      }
      const { store } = document.querySelector('notebook-page') as unknown as Notebook;
      const lift = store.catalogue.cells.get('intakeLobeLift');
      const ground = document.querySelector('map-figure svg .ground')!;
      const seen = new Set<string>();
      for (let i = 0; i < 400 && seen.size < 3; i++) {
        store.set([[lift, 0.0078 + i * 2e-6]], { what: 'Set the lift', gesture: store });
        await new Promise(requestAnimationFrame);
        seen.add(ground.innerHTML);
      }
      return seen.size;
    });
    expect(seen).toBe(3); // it did not wait for the hand to rest
    await whole(page);
    const after = await lines();
    expect(after).not.toBe(before);
    await use(page, 'Undo');
    await whole(page);
    expect(await lines()).toBe(before);
  });

  it('says in its caption what one figure is worth in the other', async () => {
    const page = await withMap();
    const caption = await map(page).locator('figcaption').innerText();
    const [, degrees, volume] = /(\d+)° more intake closing makes up for ([\d.]+) cm³ less chamber volume/.exec(
      caption,
    )!;
    // Both ends of that step lie on the edge that is nearest: 61° with 70 cm³ is between the two.
    const edge = (chamber: number): number => byHand({ closing: 60, chamber }).dynamicRatio;
    const on = [66, 67, 68, 69, 70, 71, 72, 73].map((chamber) => {
      const later = byHand({ closing: 60 + Number(degrees), chamber: chamber - Number(volume) }).dynamicRatio;
      return Math.abs(later - edge(chamber));
    });
    expect(Math.min(...on)).toBeLessThan(0.03);
  });

  it('waits for what it stands on, and shows the last good figure under the reason', async () => {
    const page = await withMap();
    await type(page, 'rod', '1.5');
    await expect.poll(() => map(page).locator('.stale-note').innerText()).toContain('Waits for rod length');
    expect(await map(page).locator('.frame.stale svg path').count()).toBeGreaterThan(5);
    await use(page, 'Undo');
    await whole(page);
    expect(await map(page).locator('.stale-note').count()).toBe(0);
  });

  it('is removed, and brought back by a step back', async () => {
    const page = await withMap();
    await map(page).getByRole('button', { name: 'Remove this map' }).click();
    await settled(page);
    expect(await map(page).count()).toBe(0);
    await page.keyboard.press('Control+z');
    await settled(page);
    expect(await point(page).getAttribute('aria-valuenow')).toBe('61');
  });

  it('is saved as the figure and the table it is', async () => {
    const page = await withMap();
    const saved = async (name: string): Promise<string> => {
      const coming = page.waitForEvent('download');
      await map(page).getByRole('button', { name }).click();
      const stream = await (await coming).createReadStream();
      const chunks: Buffer[] = [];
      for await (const chunk of stream) chunks.push(chunk as Buffer);
      return Buffer.concat(chunks).toString('utf8');
    };
    const csv = await saved('CSV');
    expect(csv.trim().split('\n').length).toBeGreaterThan(9);
    expect(csv).toContain('Chamber volume');
    const svg = await saved('SVG');
    for (const words of ['comfortable', 'borderline', 'beyond this fuel', '7.84']) expect(svg).toContain(words);
    expect(svg).not.toContain('var(--');
  });
});

describe('the point on a map', () => {
  it('stands where the engine stands, and says so', async () => {
    const page = await withMap();
    expect(await point(page).getAttribute('aria-valuetext')).toBe(
      'Intake closing 61 degrees after bottom dead center, chamber volume 70.0 cm³: dynamic compression ratio 7.84',
    );
    await type(page, 'chamberVolume', '66');
    expect(await point(page).getAttribute('aria-valuetext')).toContain('chamber volume 66.0 cm³');
  });

  it('is dragged with the mouse, which writes both inputs, and one step takes the drag back', async () => {
    const page = await withMap();
    const { x, y, width, height } = (await point(page).boundingBox())!;
    await page.mouse.move(x + width / 2, y + height / 2);
    await page.mouse.down();
    const seen: [number, number][] = [];
    for (const by of [30, 60, 90]) {
      await page.mouse.move(x + width / 2 + by, y + height / 2 + by / 2);
      await rest(page);
      await settled(page);
      const closing = Number(await field(page, 'intakeClosing').inputValue());
      const chamber = Number(await field(page, 'chamberVolume').inputValue());
      seen.push([closing, chamber]);
      expect(Number(await shown(page, 'dynamicRatio'))).toBeCloseTo(byHand({ closing, chamber }).dynamicRatio, 2);
      expect(Number(await point(page).getAttribute('aria-valuenow'))).toBeCloseTo(closing, 9);
    }
    await page.mouse.up();
    await settled(page);
    for (const [i, [closing, chamber]] of seen.entries()) {
      const [before, under] = seen[i - 1] ?? [61, 70];
      expect(closing).toBeGreaterThan(before);
      expect(chamber).toBeLessThan(under);
    }
    // It went where the hand went.
    const after = (await point(page).boundingBox())!;
    expect(Math.abs(after.x - x - 90)).toBeLessThan(6);
    expect(Math.abs(after.y - y - 45)).toBeLessThan(6);
    await use(page, 'Undo');
    expect(await field(page, 'intakeClosing').inputValue()).toBe('61');
    expect(await field(page, 'chamberVolume').inputValue()).toBe('70.0');
    expect(await tool(page, 'Undo').getAttribute('title')).toBe('Added a map');
  });

  it('goes where the map is clicked', async () => {
    const page = await withMap();
    const { x, y } = (await point(page).boundingBox())!;
    await page.mouse.click(x + 22 - 120, y + 22 - 60);
    await settled(page);
    const after = (await point(page).boundingBox())!;
    expect(Math.abs(after.x - x + 120)).toBeLessThan(6);
    expect(Math.abs(after.y - y + 60)).toBeLessThan(6);
    expect(Number(await field(page, 'intakeClosing').inputValue())).toBeLessThan(58);
    expect(Number(await field(page, 'chamberVolume').inputValue())).toBeGreaterThan(75);
    await use(page, 'Undo');
    expect(await field(page, 'chamberVolume').inputValue()).toBe('70.0');
  });

  it('is moved with keys both ways, ten times as far with shift, and stays on the map', async () => {
    const page = await withMap();
    const at = async (): Promise<[string, string]> => {
      await settled(page);
      return [await field(page, 'intakeClosing').inputValue(), await field(page, 'chamberVolume').inputValue()];
    };
    await point(page).press('ArrowRight');
    expect(await at()).toEqual(['61.5', '70.0']);
    await point(page).press('ArrowDown');
    expect(await at()).toEqual(['61.5', '69.5']);
    await point(page).press('Shift+ArrowLeft');
    expect(await at()).toEqual(['56.5', '69.5']);
    for (let i = 0; i < 8; i++) await point(page).press('Shift+ArrowUp');
    expect(await at()).toEqual(['56.5', '100.0']);
    await point(page).press('ArrowUp');
    expect(await at()).toEqual(['56.5', '100.0']);
  });

  it('counts every key, also those that come faster than pictures, as one step', async () => {
    const page = await withMap();
    await point(page).evaluate((point) => {
      for (const key of ['ArrowRight', 'ArrowRight', 'ArrowUp', 'ArrowRight'])
        point.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true }));
    });
    await settled(page);
    expect(await field(page, 'intakeClosing').inputValue()).toBe('62.5');
    expect(await field(page, 'chamberVolume').inputValue()).toBe('70.5');
    await use(page, 'Undo');
    expect(await field(page, 'intakeClosing').inputValue()).toBe('61');
  });
});

describe('the sentence of a map', () => {
  it('names its ends, which can be typed, and refuses those that are none', async () => {
    const page = await withMap();
    await write(page, 'Across from', '50');
    await write(page, 'Up to', '80');
    const { xs, rows } = await table(page);
    expect([figures(xs)[0], figures(xs)[8]]).toEqual([50, 80]);
    expect([rows[0]![0], rows[8]![0]]).toEqual(['80.0', '40.0']);
    for (const junk of ['early', '', '80']) {
      await write(page, 'Across from', junk);
      expect(await map(page).getByRole('alert').innerText()).toMatch(/^[A-Z“].*\.$/s);
    }
    await write(page, 'Across from', '45');
    expect(await map(page).getByRole('alert').count()).toBe(0);
  });

  it('is told to show something else over something else', async () => {
    const page = await withMap();
    await choose(page, 'What is shown', 'staticRatio');
    await choose(page, 'Across', 'bore');
    await choose(page, 'Up', 'chamberVolume');
    await write(page, 'Across from', '4.03');
    await write(page, 'Across to', '4.11');
    const { xs, rows } = await table(page);
    expect(figures(xs)).toEqual([4.03, 4.04, 4.05, 4.06, 4.07, 4.08, 4.09, 4.1, 4.11]);
    for (const [chamber, ...ratios] of rows) {
      expect(Number(ratios[4])).toBeCloseTo(byHand({ chamber: Number(chamber) }).staticRatio, 2); // 4.07 in
      expect(figures(ratios)).toEqual(figures(ratios).toSorted((a, b) => a - b));
    }
  });

  it('says why two that move one input do not go together', async () => {
    const page = await withMap();
    await choose(page, 'Up', 'camAdvance');
    await expect.poll(() => map(page).locator('.stale-note').innerText()).toMatch(/both move cam advance/);
    await use(page, 'Undo');
    await whole(page);
    expect(await map(page).locator('svg path').count()).toBeGreaterThan(5);
  });
});

describe('a slow map', () => {
  it('stands at 7 by 7 first, is refined with a time that is told, stops, goes on, and comes back at once', async () => {
    const page = await visit('', await profile({ open: 'output' }));
    const chapter = page.locator('section[aria-labelledby=chapter-output]');
    for (const fold of await chapter.locator('.fold').all()) await fold.click();
    // A curve of three speeds is enough of one here.
    for (const [id, figure] of Object.entries({ curveFrom: '3000', curveTo: '4000', curveStep: '500' }))
      await type(page, id, figure);
    await chapter.getByRole('button', { name: 'Add a map here' }).click();
    await map(page).scrollIntoViewIfNeeded();
    await choose(page, 'What is shown', 'peakTorque');
    await choose(page, 'Across', 'primaryLength');
    await choose(page, 'Up', 'runnerLength');
    const note = map(page).locator('.stale-note');
    const standing = async (): Promise<number> =>
      Number(/^(\d+) of 169 points stand/.exec(await note.innerText())?.[1]);
    Number(/^(\d+) of 169 points stand/.exec(await note.innerText())?.[1]);
    await expect.poll(standing, { timeout: 90_000, interval: 200 }).toBeGreaterThanOrEqual(49);
    expect(await map(page).locator('svg circle').count()).toBeGreaterThanOrEqual(49);
    await expect.poll(() => note.innerText(), { timeout: 20_000 }).toMatch(/stand, about \d+ (s|min) more\./);
    const lines = await map(page).locator('svg path[stroke="var(--ink-2)"]').count();
    expect(lines).toBeGreaterThan(1);
    await expect.poll(standing, { timeout: 20_000, interval: 200 }).toBeGreaterThan(51);

    await map(page).getByRole('button', { name: 'stop' }).click();
    await expect.poll(() => note.innerText()).toMatch(/points stand\.\s*go on$/);
    const stopped = await standing();
    await page.waitForTimeout(1500);
    expect(await standing()).toBe(stopped);
    await map(page).getByRole('button', { name: 'go on' }).click();
    await expect.poll(standing, { timeout: 20_000, interval: 200 }).toBeGreaterThan(stopped);
    await map(page).getByRole('button', { name: 'stop' }).click();

    // The point moves on the map as it is, and what stood before an edit stands again after a step back.
    const kept = await standing();
    await point(page).press('ArrowRight');
    await settled(page);
    expect(await standing()).toBe(kept);
    await type(page, 'bore', '4.2');
    await expect.poll(standing).toBeLessThan(kept);
    await use(page, 'Undo');
    await expect.poll(standing).toBeGreaterThanOrEqual(kept);
  }, 180_000);
});

describe('axe-core finds nothing', () => {
  it.each([
    ['wide, light', 1280, 'light'],
    ['narrow, dark', 390, 'dark'],
  ] as const)('against a map and its table, %s', async (_, width, colorScheme) => {
    const page = await withMap(profile({ viewport: { width, height: 900 }, hasTouch: width < 700, colorScheme }));
    expect(await violations(page, 'map-figure')).toEqual([]);
    const box = (await map(page).locator('svg').boundingBox())!;
    expect(box.x + box.width).toBeLessThanOrEqual(width);
    await map(page).getByRole('button', { name: 'Table' }).click();
    expect(await violations(page, 'map-figure')).toEqual([]);
  });
});
