import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { byHand } from './by-hand.ts';
import { complete, field, following, inBrowser, kept, profile, settled, shown, type, use, visit } from './visit.ts';

inBrowser();

const title = (page: Page): Promise<string> => page.getByRole('heading', { level: 1 }).innerText();
const chamber = (page: Page): Promise<string> => field(page, 'chamberVolume').inputValue();
const notices = async (page: Page): Promise<string> =>
  (await page.getByRole('main').getByRole('status').allInnerTexts()).join('\n');

describe('what was edited', () => {
  it('is there again after a reload, units, sweeps and open chapters too', async () => {
    const page = await visit();
    await use(page, /^US units/);
    await type(page, 'chamberVolume', '66');
    await page.getByRole('button', { name: 'Add a sweep here' }).first().click();
    await page.getByRole('button', { name: 'Close Fuel' }).click();
    await settled(page);
    await page.reload(); // at once: it is saved on the way out
    await complete(page);
    expect(await chamber(page)).toBe('66.0');
    expect(await field(page, 'bore').inputValue()).toBe('103.38');
    expect(await page.locator('figure#sweep1').count()).toBe(1);
    expect(await page.getByRole('button', { name: 'Close Fuel' }).count()).toBe(0);
    expect(await page.getByRole('button', { name: 'Close Camshaft' }).count()).toBe(1);
    await use(page, 'Reset'); // and where it began is known
    expect(await chamber(page)).toBe('70.0');
  });

  it('is not undone by another tab in which nothing was edited', async () => {
    const context = await profile();
    const idle = await visit('', context);
    const page = await visit('', context);
    await type(page, 'chamberVolume', '66');
    await kept(page, '0.000066');
    for (const tab of [page, idle]) await tab.goto('about:blank'); // both leave, the idle one last
    expect(await chamber(await visit('', context))).toBe('66.0');
  });

  it('says that it is saved', async () => {
    const page = await visit();
    await type(page, 'chamberVolume', '66');
    await page.getByText('Saved in this browser.').waitFor();
  });
});

describe('a browser that keeps nothing', () => {
  it('because its storage is full, is said, and nothing is lost that is on the page', async () => {
    const context = await profile();
    await context.addInitScript(() => {
      Storage.prototype.setItem = () => {
        throw new DOMException('full', 'QuotaExceededError');
      };
    });
    const page = await visit('', context);
    await type(page, 'chamberVolume', '66');
    await type(page, 'bore', '4.03');
    await page.getByText(/storage is full, so this is not saved. Save a file, or copy the link/).waitFor();
    expect(await chamber(page)).toBe('66.0');
    await use(page, 'Undo');
    expect(Number(await shown(page, 'dynamicRatio'))).toBeCloseTo(byHand({ chamber: 66 }).dynamicRatio, 2);
    await following(page, () => page.getByRole('link', { name: /^Mountain six/ }).click());
    await use(page, 'Undo');
    expect([await title(page), await chamber(page)]).toEqual(['Edge of premium', '66.0']);
  });

  it('because it is not allowed to, is said', async () => {
    const context = await profile();
    await context.addInitScript(() => {
      for (const name of ['localStorage', 'sessionStorage'])
        Object.defineProperty(window, name, {
          get() {
            throw new DOMException('denied', 'SecurityError');
          },
        });
    });
    const page = await visit('', context);
    await page
      .getByRole('group', { name: 'The three that decide it' })
      .getByRole('textbox', { name: 'Chamber volume' })
      .fill('66');
    await page.getByText('This browser keeps nothing for this page.').waitFor();
  });

  it('or keeps something that is no notebook, opens with the example', async () => {
    const context = await profile();
    await context.addInitScript(() => {
      if (location.protocol === 'http:') localStorage.setItem('closing-angle/mine', '{"document":[1,');
    });
    expect(await title(await visit('', context))).toBe('Edge of premium');
  });
});

describe('a file', () => {
  const save = async (page: Page): Promise<{ readonly name: string; readonly text: string }> => {
    await use(page, 'Share');
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: /^Save a file/ }).click(),
    ]);
    return { name: download.suggestedFilename(), text: await readFile(await download.path(), 'utf8') };
  };
  const open = async (page: Page, name: string, text: string): Promise<void> => {
    if ((await page.getByRole('group', { name: 'Share this notebook' }).count()) === 0) await use(page, 'Share');
    const [chooser] = await Promise.all([
      page.waitForEvent('filechooser'),
      page.getByRole('button', { name: /^Open a file/ }).click(),
    ]);
    await chooser.setFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
  };

  it('is saved, and opened elsewhere shows the same', async () => {
    const page = await visit();
    await type(page, 'chamberVolume', '66');
    const { name, text } = await save(page);
    expect(name).toBe('edge-of-premium.json');
    const other = await visit();
    await type(other, 'chamberVolume', '74.5');
    await following(other, () => open(other, name, text));
    expect(await chamber(other)).toBe('66.0');
    expect(await shown(other, 'dynamicRatio')).toBe(await shown(page, 'dynamicRatio'));
    await following(other, () => other.getByRole('button', { name: 'Get it back' }).click());
    expect(await chamber(other)).toBe('74.5');
  });

  it('that is none gets a sentence, and what was open stays', async () => {
    const page = await visit();
    await type(page, 'chamberVolume', '66');
    for (const [name, text] of [
      ['words.json', 'bore 4.07'],
      ['cut-short.json', '{"version":1,"inputs":{'],
      ['a-list.json', '[1,2,3]'],
      ['empty.json', ''],
    ] as const) {
      await open(page, name, text);
      await page.getByText(`“${name}” is not a notebook file.`).waitFor();
      expect([await title(page), await chamber(page)]).toEqual(['Edge of premium', '66.0']);
    }
  });

  it('that is spoiled in parts is opened without them, and says what is left out', async () => {
    const page = await visit();
    const { text } = await save(page);
    const spoiled = {
      ...(JSON.parse(text) as object),
      title: 'Spoiled',
      inputs: { bore: 'wide', nonsense: 3, chamberVolume: 0.000066 },
    };
    await following(page, () => open(page, 'spoiled.json', JSON.stringify(spoiled)));
    expect([await title(page), await chamber(page), await field(page, 'bore').inputValue()]).toEqual([
      'Spoiled',
      '66.0',
      '4.070',
    ]);
    await page.getByText('Bore could not be read').waitFor();
    expect(await notices(page)).toContain('Nothing is called “nonsense” here');
  });

  it('of a newer release is shown as far as it is known, and what is kept for it is not written over', async () => {
    const page = await visit();
    await type(page, 'chamberVolume', '74.5');
    await kept(page, '0.0000745');
    const { text } = await save(page);
    await following(page, () => open(page, 'newer.json', text.replace('"version": 1', '"version": 9')));
    await page.getByText('A newer release wrote this notebook.').waitFor();
    await type(page, 'bore', '4.03');
    await page.reload();
    await complete(page);
    expect([await chamber(page), await field(page, 'bore').inputValue()]).toEqual(['74.5', '4.070']);
  });

  it('of a newer release, left by a step back, leaves what is edited after that kept as ever', async () => {
    const page = await visit();
    const { text } = await save(page);
    await following(page, () => open(page, 'newer.json', text.replace('"version": 1', '"version": 9')));
    await use(page, 'Undo');
    await type(page, 'chamberVolume', '66');
    await kept(page, '0.000066');
    expect(await chamber(page)).toBe('66.0');
  });
});
