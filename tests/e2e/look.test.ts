import { readFile } from 'node:fs/promises';
import type { Locator, Page } from 'playwright-core';
import { describe, expect, inject, it } from 'vitest';
import { drawAll } from './pieces/axe.ts';
import { click, complete, field, inBrowser, profile, settled, shown, type, use, visit } from './visit.ts';

inBrowser();

const sizes = [
  [1280, 900],
  [390, 844],
] as const;
const onPhone = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true };

/** True if every corner of it but a hair is in the window and under nothing. */
const isSeen = (of: Locator): Promise<boolean> =>
  of.evaluate((e) => {
    const { left, right, top, bottom, width, height } = e.getBoundingClientRect();
    const corners = [
      [left + 2, top + 2],
      [right - 2, top + 2],
      [left + 2, bottom - 2],
      [right - 2, bottom - 2],
    ] as const;
    const isOnTop = ([x, y]: readonly [number, number]): boolean => {
      const hit = document.elementFromPoint(x, y);
      return hit !== null && (e.contains(hit) || hit.contains(e));
    };
    return (
      width > 0 &&
      height > 0 &&
      top >= 0 &&
      left >= 0 &&
      bottom <= innerHeight &&
      right <= innerWidth &&
      corners.every(isOnTop)
    );
  });

describe.each(sizes)('the first screen at %s by %s', (width, height) => {
  it.each(['light', 'dark'] as const)('answers the three questions without scrolling, %s', async (colorScheme) => {
    const page = await visit('', await profile({ viewport: { width, height }, colorScheme, isFirst: true }));
    const pin = (id: string, part = 'b'): Locator => page.locator(`.pins a[href="#${id}"] ${part}`);
    for (const [id, figure, label] of [
      ['displacement', '368.4', 'Displacement'],
      ['staticRatio', '9.54', 'Static'],
      ['dynamicRatio', '7.84', 'Dynamic'],
    ] as const) {
      const name = pin(id, 'span:not(.vh)').filter({ visible: true });
      expect(await name.innerText()).toContain(label);
      expect(await isSeen(name), label).toBe(true);
      expect(await pin(id).innerText()).toBe(figure);
      expect(await isSeen(pin(id)), id).toBe(true);
    }
    const verdict = page.locator('#verdict .word').first();
    expect(await verdict.innerText()).toBe('Borderline');
    expect(await isSeen(verdict)).toBe(true);
    expect(await isSeen(page.locator('#verdict p').first())).toBe(true);
    for (const control of await page.locator('#three :is(.num, .slide, .opts)').all())
      expect(await isSeen(control)).toBe(true);
    const [ink, paper] = await page.evaluate(() => {
      const { color, backgroundColor } = getComputedStyle(document.body);
      return [color, backgroundColor].map((c) => Number(/\d+/.exec(c)![0]));
    });
    expect(ink! < paper!).toBe(colorScheme === 'light');
  });

  it('keeps the plate where it is while the verdict grows and shrinks above it', async () => {
    const page = await visit('', await profile({ viewport: { width, height }, isFirst: true }));
    const tops: number[] = [];
    const lengths = new Set<number>();
    for (const chamber of ['84', '70', '66', '74.5']) {
      await page.locator('#three-chamberVolume').fill(chamber);
      await settled(page);
      lengths.add((await page.locator('#verdict').innerText()).length);
      tops.push((await page.locator('.plate').boundingBox())!.y);
    }
    expect(lengths.size).toBe(4);
    expect(Math.max(...tops) - Math.min(...tops)).toBeLessThan(width < 700 ? 30 : 1);
  });

  it('holds still from the first paint until all of it is there', async () => {
    for (const delay of [0, 400]) {
      const context = await profile({ viewport: { width, height }, isFirst: true });
      await context.addInitScript(() => {
        const shifts: { value: number; what: string }[] = [];
        Object.assign(globalThis, { shifts });
        new PerformanceObserver((list) => {
          for (const entry of list.getEntries() as (PerformanceEntry & {
            value: number;
            sources: { node: Node | null }[];
          })[])
            shifts.push({
              value: entry.value,
              what: entry.sources
                .map(({ node }) => (node instanceof Element ? `${node.localName}.${node.className}` : ''))
                .join(),
            });
        }).observe({ type: 'layout-shift', buffered: true });
      });
      // As on a slow line: what is loaded behind the first readouts comes late.
      await context.route(/assets\/(?!index).*\.js$/, async (route) => {
        await new Promise((late) => setTimeout(late, delay));
        await route.continue();
      });
      const page = await visit('', context);
      await page.waitForTimeout(300);
      const shifts = await page.evaluate(() => (globalThis as unknown as { shifts: { value: number }[] }).shifts);
      expect(
        shifts.reduce((sum, { value }) => sum + value, 0),
        JSON.stringify(shifts),
      ).toBeLessThan(0.02);
    }
  });
});

describe('the page is never wider than the window', () => {
  const wide = (page: Page): Promise<string[]> =>
    page.evaluate(() => {
      const { scrollWidth, clientWidth } = document.documentElement;
      if (scrollWidth <= clientWidth) return [];
      return Array.from(document.querySelectorAll('body *'))
        .filter((e) => e.getBoundingClientRect().right > clientWidth + 0.5)
        .map((e) => `${clientWidth}: ${e.localName}.${e.getAttribute('class')} ${e.textContent.trim().slice(0, 30)}`)
        .slice(-5);
    });

  it('with every chapter, a table and a why open', async () => {
    const page = await visit();
    await click(page, 'Why: Cranking pressure');
    await page.locator('#closing').getByRole('button', { name: 'Table' }).click();
    await type(page, 'rod', '1.5');
    for (const width of [320, 390, 700, 701, 880, 881, 1100, 1101, 1280, 1600]) {
      await page.setViewportSize({ width, height: 900 });
      await settled(page);
      expect(await wide(page), String(width)).toEqual([]);
    }
  });

  it('with the longest words: a figure of more digits, beyond this fuel, in SI units', async () => {
    const page = await visit();
    await page.getByRole('link', { name: /^One block, two cams/ }).click();
    await page.getByRole('button', { name: 'Early cam', exact: true }).waitFor();
    await type(page, 'cylinders', '12');
    await use(page, /^US units/);
    await drawAll(page);
    for (const width of [320, 390, 700, 880, 1100]) {
      await page.setViewportSize({ width, height: 900 });
      await settled(page);
      await expect.poll(() => wide(page), { message: String(width) }).toEqual([]);
    }
  });

  it('and the strip’s words never reach its tools, whatever the verdict', async () => {
    const page = await visit();
    const apart = (): Promise<boolean> =>
      page.evaluate(() => {
        const box = (of: string): DOMRect[] =>
          Array.from(document.querySelectorAll(of), (e) => e.getBoundingClientRect());
        const tools = box('.toolbar button');
        return box('.mark, .pins b, .pins i, .pins a > span:not(.vh)').every((a) =>
          tools.every((b) => a.right <= b.left || a.left >= b.right || a.bottom <= b.top || a.top >= b.bottom),
        );
      });
    for (const [chamber, word] of [
      ['84', 'comfortable'],
      ['70', 'borderline'],
    ] as const) {
      await type(page, 'chamberVolume', chamber);
      expect(await page.locator('.pins').innerText()).toContain(word);
      for (let width = 640; width <= 1400; width += 20) {
        await page.setViewportSize({ width, height: 900 });
        expect(await apart(), `${word} at ${width}`).toBe(true);
      }
    }
  });

  it('at 200 % zoom of a window of 1280, where all of it is still there', async () => {
    const page = await visit(
      '',
      await profile({ viewport: { width: 640, height: 450 }, deviceScaleFactor: 2, isFirst: true }),
    );
    expect(await wide(page)).toEqual([]);
    for (const name of ['Undo', 'Reset', 'Share'])
      expect(await page.getByRole('button', { name, exact: true }).isVisible()).toBe(true);
    for (const pin of await page.locator('.pins a').all()) expect(await isSeen(pin)).toBe(true);
  });

  it('and pins stand apart from one another on a phone', async () => {
    const page = await visit();
    for (const chamber of ['84', '70']) {
      await type(page, 'chamberVolume', chamber); // comfortable is the longest word
      for (const width of [320, 360, 390, 700]) {
        await page.setViewportSize({ width, height: 844 });
        const boxes = await page
          .locator('.pins b')
          .evaluateAll((all) => all.map((b) => b.getBoundingClientRect()).map(({ left, right }) => ({ left, right })));
        expect(boxes.length).toBe(5);
        expect(boxes.at(-1)!.right).toBeLessThan(width - 8);
        for (const [i, { left }] of boxes.entries())
          expect(left - (boxes[i - 1]?.right ?? 0), `${width}`).toBeGreaterThanOrEqual(3.5);
      }
    }
  });
});

describe('on a phone', () => {
  it('fields, sliders, choices, pins and tools are as large as a thumb', async () => {
    const page = await visit('', await profile(onPhone));
    await drawAll(page);
    const small = await page.evaluate(() =>
      Array.from(
        document.querySelectorAll(
          '.num, .slide, .opts label, .pins a, .toolbar button, .handle, .folded, .start a, .button',
        ),
      )
        .filter((e) => e.checkVisibility())
        .map((e) => ({ e, box: e.getBoundingClientRect() }))
        .filter(({ box }) => box.height < 43.5 || box.width < 24)
        .map(({ e, box }) => `${e.className} ${e.textContent.trim().slice(0, 20)}: ${box.width} by ${box.height}`),
    );
    expect(small).toEqual([]);
  });

  it('words in running rows answer to a thumb beside them', async () => {
    const page = await visit('', await profile({ ...onPhone, isFirst: true }));
    const missed = await page.evaluate(() => {
      const words = Array.from(document.querySelectorAll('.why, .figtools button, .tol button, .link')).filter((e) =>
        e.checkVisibility(),
      );
      return words
        .filter((e) => {
          e.scrollIntoView({ block: 'center', behavior: 'instant' });
          const { left, right, top, bottom } = e.getBoundingClientRect();
          const x = (left + right) / 2;
          const y = (top + bottom) / 2;
          // A neighbor may take some of one side; a thumb's width of it is left.
          return ![-13, 13].some((by) => e.contains(document.elementFromPoint(x, y + by)));
        })
        .map((e) => e.textContent.trim());
    });
    expect(missed).toEqual([]);
  });
});

describe('what a reader has set for all pages', () => {
  it('less motion: a jump is at once', async () => {
    const page = await visit('', await profile({ reducedMotion: 'reduce', isFirst: true }));
    expect(await page.evaluate(() => getComputedStyle(document.documentElement).scrollBehavior)).toBe('auto');
    await page.locator('.pins a[href="#crankingPressure"]').click();
    await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
    const place = (): Promise<number> => page.evaluate(() => scrollY);
    const at = await place();
    await page.waitForTimeout(150);
    expect(await place()).toBe(at);
    expect(await isSeen(page.locator('#crankingPressure .val'))).toBe(true);
    const other = await visit('', await profile({ reducedMotion: 'no-preference', isFirst: true }));
    expect(await other.evaluate(() => getComputedStyle(document.documentElement).scrollBehavior)).toBe('smooth');
  });

  it('more contrast: what was paler ink is ink', async () => {
    const colors = async (contrast: 'more' | 'no-preference'): Promise<string[]> => {
      const page = await visit('', await profile({ contrast, isFirst: true }));
      return page.evaluate(() =>
        ['body', '.kicker', '.unit', '.fig figcaption', 'h2 .n'].map(
          (of) => getComputedStyle(document.querySelector(of)!).color,
        ),
      );
    };
    expect(new Set(await colors('more')).size).toBe(1);
    expect(new Set(await colors('no-preference')).size).toBe(3);
  });

  it.each(['light', 'dark'] as const)(
    'colors of their own: no control and no line of a figure is lost, %s',
    async (colorScheme) => {
      const page = await visit('', await profile({ forcedColors: 'active', colorScheme }));
      await drawAll(page);
      const lost = await page.evaluate(() => {
        const ground = getComputedStyle(document.body).backgroundColor;
        const none = (color: string): boolean => color === ground || /^rgba\(.*, 0\)$/.test(color);
        const marks = (s: CSSStyleDeclaration): boolean =>
          (Number.parseFloat(s.borderBottomWidth) > 0 &&
            s.borderBottomStyle !== 'none' &&
            !none(s.borderBottomColor)) ||
          s.backgroundImage !== 'none' ||
          !none(s.backgroundColor);
        const controls = Array.from(
          document.querySelectorAll('button, a[href], input, select, [role=slider], .flag, .sw'),
        )
          .filter((e) => e.checkVisibility() && !e.matches('.skip, .opts input'))
          .filter((e) => {
            const style = getComputedStyle(e);
            const says = e.textContent.trim() !== '' && !none(style.color);
            return !says && !marks(style) && !marks(getComputedStyle(e, '::before'));
          });
        // The paper casing of a line is of the ground's color, and so are the fills of a drawing.
        const lines = Array.from(
          document.querySelectorAll<SVGElement>(
            '.lines path:nth-child(even), .axis, .hair, .marks text, line, .plate svg text',
          ),
        )
          .filter((e) => e.checkVisibility())
          .filter((e) => none(e.localName === 'text' ? getComputedStyle(e).fill : getComputedStyle(e).stroke));
        const chosen = Array.from(document.querySelectorAll('.opts label')).map((label) => [
          label.querySelector('input')!.checked,
          none(getComputedStyle(label.querySelector('span')!).backgroundColor),
        ]);
        return {
          controls: controls.map((e) => e.outerHTML.slice(0, 120)),
          lines: lines.map((e) => e.outerHTML.slice(0, 120)),
          unmarked: chosen.filter(([isChosen, isPlain]) => isChosen === isPlain).length,
          looked: chosen.length > 10,
        };
      });
      expect(lost).toEqual({ controls: [], lines: [], unmarked: 0, looked: true });
      // The track of a slider is drawn with gradients, which a browser would take away here.
      expect(
        await page
          .locator('.slide')
          .first()
          .evaluate((e) => getComputedStyle(e).backgroundImage),
      ).toContain('gradient');
    },
  );

  it('a language that writes 4,03: the comma is a decimal mark, and 1,500 is asked about', async () => {
    const page = await visit('', await profile({ locale: 'de-DE' }));
    await type(page, 'bore', '4,03');
    expect(await field(page, 'bore').inputValue()).toBe('4.030');
    // π/4 × 4.03² × 3.54 × 8
    expect(Number(await shown(page, 'displacement'))).toBeCloseTo((Math.PI / 4) * 4.03 ** 2 * 3.54 * 8, 1);
    await type(page, 'engineSpeed', '1,500');
    expect(await page.locator('#engineSpeed').getByRole('alert').innerText()).toMatch(
      /1,500 can be read.*1500.*1\.500?/s,
    );
    expect(await page.locator('#meanPistonSpeed').innerText()).toContain('Waits for engine speed');
  });
});

describe('US and SI', () => {
  it('change every figure on the page, drawings and sweeps as well', async () => {
    const page = await visit();
    await drawAll(page);
    const texts = async (id: string): Promise<string> =>
      (await page.locator(`#${id} svg text`).allTextContents()).join(' ').replaceAll('\u00a0', ' ');
    expect(await texts('figure-plate')).toContain('2.837 in of stroke left');
    expect(await texts('height')).toContain('Altitude here, ft');
    await use(page, /^US units/);
    await drawAll(page);
    expect(await texts('figure-plate')).toMatch(/72\.0[567] mm of stroke left/); // 2.837 × 25.4, the third decimal rounded
    expect(await texts('height')).toContain('Altitude here, m');
    expect(await texts('figure-travel')).toContain('Piston below top dead center, mm');
    const us = await page
      .locator('.unit')
      .evaluateAll((all) =>
        all.map((e) => e.textContent.trim()).filter((unit) => /^(in|in²|in³|ft|psi|inHg|°F|ft\/min)\b/.test(unit)),
      );
    expect(us).toEqual([]);
  });
});

describe('a figure can be taken away', () => {
  // A browser lets a page start some ten downloads in a few seconds.
  it.each([
    ['drawings', ['figure-plate', 'figure-travel', 'figure-stack', 'figure-scale']],
    ['lines', ['closing', 'height', 'figure-motoredPressure']],
  ])('as a picture that needs nothing else, and as the rows of its table: %s', async (_, figures) => {
    const page = await visit();
    await drawAll(page);
    const take = async (id: string, name: string): Promise<{ name: string; text: string }> => {
      const [download] = await Promise.all([
        page.waitForEvent('download'),
        page.locator(`#${id}`).getByRole('button', { name, exact: true }).click(),
      ]);
      return { name: download.suggestedFilename(), text: await readFile(await download.path(), 'utf8') };
    };
    for (const id of figures) {
      const picture = await take(id, 'SVG');
      expect(picture.name).toMatch(/^[a-z0-9-]+\.svg$/);
      const read = await page.evaluate((text) => {
        const { documentElement: root } = new DOMParser().parseFromString(text, 'image/svg+xml');
        return {
          name: root.nodeName,
          faults: root.querySelectorAll('parsererror').length,
          paths: root.querySelectorAll('path, rect').length,
          size: [root.getAttribute('width'), root.getAttribute('height')].map(Number),
        };
      }, picture.text);
      expect(read, id).toMatchObject({ name: 'svg', faults: 0 });
      expect(read.paths, id).toBeGreaterThan(3);
      for (const size of read.size) expect(size).toBeGreaterThan(50);
      expect(picture.text, id).not.toMatch(/var\(|NaN|undefined|url\((?!#)/);

      const rows = await take(id, 'CSV');
      expect(rows.name).toBe(picture.name.replace('.svg', '.csv'));
      await page.locator(`#${id}`).getByRole('button', { name: 'Table', exact: true }).click();
      const table = await page.locator(`#${id} tr`).evaluateAll((all) =>
        all.map((tr) =>
          Array.from(tr.children, (cell) =>
            cell.textContent
              .trim()
              .replaceAll('−', '-')
              .replaceAll(/[\u00a0\u202f]/g, ' '),
          ),
        ),
      );
      const quoted = (text: string): string => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
      const [title, ...lines] = rows.text.split('\r\n');
      expect(title).toMatch(/^# \S/);
      expect(lines).toEqual([...table.map((row) => row.map(quoted).join(',')), '']);
      expect(table.length).toBeGreaterThan(3);
    }
  });
});

it('served from a folder of another host it looks the same and asks for nothing elsewhere', async () => {
  const page = await (await profile({ isFirst: true })).newPage();
  const asked: string[] = [];
  page.on('request', (request) => asked.push(request.url()));
  await page.goto(inject('inFolder'));
  await complete(page);
  expect(await page.locator('#verdict .word').first().innerText()).toBe('Borderline');
  expect(
    asked.filter((url) => !url.startsWith(inject('inFolder')) && !url.startsWith('data:') && !url.startsWith('blob:')),
  ).toEqual([]);
});

it('is at rest when nothing moves, also with a figure’s table open', async () => {
  const page = await visit();
  await page.locator('#figure-plate').getByRole('button', { name: 'Table', exact: true }).click();
  await page.locator('#figure-plate table').waitFor();
  await complete(page);
  const asked = await page.evaluate(
    () =>
      new Promise<number>((done) => {
        const ask = window.requestAnimationFrame.bind(window);
        let others = 0;
        window.requestAnimationFrame = (call) => {
          others++;
          return ask(call);
        };
        let left = 30;
        const next = (): void => void (--left > 0 ? ask(next) : done(others));
        ask(next);
      }),
  );
  // The last of what was under way may ask once or twice; a page that draws for ever asks in every frame.
  expect(asked).toBeLessThan(5);
});
