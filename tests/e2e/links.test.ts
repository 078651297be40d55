import type { BrowserContext, Page } from 'playwright-core';
import { describe, expect, inject, it } from 'vitest';
import { byHand } from './by-hand.ts';
import { click, field, following, inBrowser, kept, once, profile, shown, type, use, visit } from './visit.ts';

inBrowser();

const title = (page: Page): Promise<string> => page.getByRole('heading', { level: 1 }).innerText();
const chamber = (page: Page): Promise<string> => field(page, 'chamberVolume').inputValue();
const notices = async (page: Page): Promise<string> =>
  (await page.getByRole('main').getByRole('status').allInnerTexts()).join('\n');
const link = (page: Page): Promise<string> => page.getByRole('textbox', { name: 'Link', exact: true }).inputValue();
const press = (page: Page, name: string): Promise<void> =>
  following(page, () => page.getByRole('button', { name }).click());

/** The part of the page's link that holds the notebook, with its #. */
async function fragment(page: Page): Promise<string> {
  await use(page, 'Share');
  await page.waitForFunction(() =>
    document.querySelector<HTMLInputElement>('[aria-label=Link]')?.value.includes('#1.'),
  );
  return new URL(await link(page)).hash;
}
/** A link with another chamber than the example's, made in a profile of its own. */
const sent = once(async () => {
  const page = await visit();
  await type(page, 'chamberVolume', '66');
  return fragment(page);
});
/** What the browser of a reader keeps who has a notebook of their own: the chamber is 74.5. */
const keeps = once(async () => {
  const context = await profile();
  const page = await visit('', context);
  await type(page, 'chamberVolume', '74.5');
  await kept(page, '0.0000745');
  return context.storageState();
});
const reader = async (): Promise<BrowserContext> => profile({ storageState: await keeps() });

describe('a copied link', () => {
  it('opens elsewhere and shows the same: figures, units, sweeps, held values, the chosen variant', async () => {
    const context = await profile({ permissions: ['clipboard-read', 'clipboard-write'] });
    const page = await visit('', context);
    await use(page, /^US units/);
    await type(page, 'bore', '103.5');
    await page
      .getByRole('combobox', { name: 'What is shown' })
      .first()
      .selectOption({ label: 'share of the stroke lost' });
    await click(page, 'let go of Deck clearance');
    await type(page, 'deckClearance', '0.25');
    const look = async (page: Page): Promise<string[]> =>
      Promise.all([
        title(page),
        field(page, 'bore').inputValue(),
        field(page, 'deckClearance').inputValue(),
        shown(page, 'displacement'),
        shown(page, 'dynamicRatio'),
        page.locator('#verdict').innerText(),
        page.getByRole('combobox', { name: 'What is shown' }).first().inputValue(),
      ]);
    await use(page, 'Share');
    await page.getByRole('button', { name: /^Copy link/ }).click();
    await page.getByText('Copied.').waitFor();
    const copied = await page.evaluate(() => navigator.clipboard.readText());
    expect(copied).toBe(await link(page));
    expect(copied.length).toBeLessThan(2000);
    const other = await (await profile()).newPage();
    await other.goto(copied);
    await other.getByText('This is a copy from a link').waitFor();
    expect(await look(other)).toEqual(await look(page));
    expect(await notices(other)).not.toContain('the sender saw');
  });

  it('carries the variant that is looked at', async () => {
    const page = await visit();
    await following(page, () => page.getByRole('link', { name: /^One block, two cams/ }).click());
    await click(page, 'Late cam');
    const other = await visit(await fragment(page));
    expect(await shown(other, 'dynamicRatio')).toBe('7.46');
    expect(await other.getByRole('button', { name: 'Late cam', exact: true }).getAttribute('aria-pressed')).toBe(
      'true',
    );
  });

  it('follows what is changed while the panel is open', async () => {
    const page = await visit();
    const first = await fragment(page);
    await type(page, 'chamberVolume', '66');
    await page.waitForFunction(
      (first) => !document.querySelector<HTMLInputElement>('[aria-label=Link]')!.value.endsWith(first),
      first,
    );
    expect(await chamber(await visit(new URL(await link(page)).hash))).toBe('66.0');
  });

  it('is selected to be copied by hand where the clipboard is refused', async () => {
    const context = await profile();
    await context.addInitScript(() => {
      const writeText = (): Promise<void> => Promise.reject(new DOMException('no', 'NotAllowedError'));
      Object.defineProperty(navigator, 'clipboard', { value: { writeText } });
    });
    const page = await visit('', context);
    await fragment(page);
    await page.getByRole('button', { name: /^Copy link/ }).click();
    await page.getByText('copy it from here').waitFor();
    expect(
      await page.evaluate(() => getSelection()?.toString() || (document.activeElement as HTMLInputElement).value),
    ).toBe(await link(page));
  });

  it('says on the reader’s own machine that nobody else can open it, and takes the published address instead', async () => {
    const page = await visit();
    const hash = await fragment(page);
    expect(await link(page)).toBe(inject('address') + hash);
    expect(await page.getByRole('group', { name: 'Share this notebook' }).innerText()).toContain(
      'Nobody else can open it.',
    );
    const address = page.getByRole('textbox', { name: 'Address where the page is published' });
    await address.fill('engines.example');
    await address.blur();
    await page.getByText('Write a whole address').waitFor();
    await address.fill('https://engines.example/notebook/#old');
    await address.blur();
    await page.getByText('Write a whole address').waitFor({ state: 'detached' });
    expect(await link(page)).toBe(`https://engines.example/notebook/${hash}`);
    expect(await page.getByRole('group', { name: 'Share this notebook' }).innerText()).not.toContain(
      'Nobody else can open it.',
    );
    await page.reload();
    await use(page, 'Share'); // it is asked for once
    await page.waitForFunction(() =>
      document
        .querySelector<HTMLInputElement>('[aria-label=Link]')
        ?.value.startsWith('https://engines.example/notebook/#1.'),
    );
  });
});

describe('a link that is opened', () => {
  it('is a copy: what the reader had is where it was', async () => {
    const hash = await sent();
    const context = await reader();
    const page = await visit(hash, context);
    expect(await chamber(page)).toBe('66.0');
    expect(Number(await shown(page, 'dynamicRatio'))).toBeCloseTo(byHand({ chamber: 66 }).dynamicRatio, 2);
    await type(page, 'bore', '4.03');
    await page.getByText('This copy is kept until its tab is closed.').waitFor();
    await page.close();
    const mine = await visit('', context);
    expect([await chamber(mine), await field(mine, 'bore').inputValue()]).toEqual(['74.5', '4.070']);
  });

  it('keeps its edits through a reload, wherever on the page the reader has jumped meanwhile', async () => {
    const hash = await sent();
    const context = await reader();
    const page = await visit(hash, context);
    await type(page, 'bore', '4.03');
    await page.getByText('This copy is kept until its tab is closed.').waitFor();
    await page
      .getByRole('navigation', { name: 'Pinned answers and tools' })
      .getByRole('link', { name: 'Closing Angle' })
      .click();
    await page.waitForURL(/#1\./);
    await page.reload();
    await page.getByText('This is a copy from a link').waitFor();
    expect([await chamber(page), await field(page, 'bore').inputValue()]).toEqual(['66.0', '4.030']);
  });

  it('is left for the reader’s own, and a step back from there does not put the copy in its place', async () => {
    const hash = await sent();
    const context = await reader();
    const page = await visit(hash, context);
    await press(page, 'Back to mine');
    expect(await chamber(page)).toBe('74.5');
    expect(page.url()).not.toContain('#1.');
    await page.keyboard.press('Control+z');
    await page.reload();
    await page.getByRole('heading', { level: 1 }).waitFor();
    expect(await chamber(page)).toBe('74.5');
    await use(page, 'Reset');
    expect(await chamber(page)).toBe('70.0'); // to where the reader’s own began
  });

  it('is kept as the reader’s own, and what that was can be had back', async () => {
    const hash = await sent();
    const context = await reader();
    const page = await visit(hash, context);
    await page.getByRole('button', { name: 'Keep as mine' }).click();
    await page.getByText('put aside').waitFor();
    expect(page.url()).not.toContain('#1.');
    const next = await visit('', context);
    expect(await chamber(next)).toBe('66.0');
    await next.getByText('put aside').waitFor(); // on a later visit, too
    await press(page, 'Get it back');
    expect(await chamber(page)).toBe('74.5');
    await kept(page, '0.0000745');
    await page.reload();
    expect(await chamber(page)).toBe('74.5');
    expect(await page.getByText('put aside').count()).toBe(0);
  });

  it('can be followed in the same tab', async () => {
    const hash = await sent();
    const page = await visit('', await reader());
    await following(page, () => page.evaluate((hash) => void (location.hash = hash), hash));
    expect(await chamber(page)).toBe('66.0');
    await press(page, 'Back to mine');
    expect(await chamber(page)).toBe('74.5');
  });

  it('is left with the browser’s own way back as well', async () => {
    const hash = await sent();
    const page = await visit('', await reader());
    await following(page, () => page.evaluate((hash) => void (location.hash = hash), hash));
    await following(page, () => page.goBack());
    expect(await chamber(page)).toBe('74.5');
    await following(page, () => page.goForward());
    expect(await chamber(page)).toBe('66.0');
  });
});

describe('a link that is none', () => {
  it.each([
    ['broken', (hash: string) => hash.slice(0, 40) + (hash[40] === 'A' ? 'B' : 'A') + hash.slice(41)],
    ['cut short', (hash: string) => hash.slice(0, -12)],
    ['cut to its first sign', () => '#1.'],
    ['with signs that do not belong', (hash: string) => hash.replace('.', '.%3Cscript%3E')],
    ['of a later release', (hash: string) => hash.replace('#1.', '#7.')],
    ['of a million signs', () => `#1.${'A'.repeat(1_000_000)}`],
  ])('%s: gets a sentence, and the reader sees their own notebook', async (_, spoil) => {
    const hash = spoil(await sent());
    const context = await reader();
    const page = await visit(hash, context);
    expect(await notices(page)).toMatch(/[Ll]ink.*\. What you had is shown instead\./s);
    expect(await chamber(page)).toBe('74.5');
  });

  it('leaves what is edited after it the reader’s own', async () => {
    const page = await visit('#1.AAAA', await reader());
    await click(page, 'Dismiss');
    expect(await notices(page)).not.toContain('What you had is shown');
    await type(page, 'bore', '4.03');
    await kept(page, '0.102362'); // 4.030 in
  });

  it('some other fragment is no link at all', async () => {
    const page = await visit('#somewhere');
    expect(await title(page)).toBe('Edge of premium');
    expect(await page.getByRole('button', { name: 'Dismiss' }).count()).toBe(0);
  });
});
