import { describe, expect, inject, it } from 'vitest';
import { byHand } from './by-hand.ts';
import { complaintsSoFar, complete, field, inBrowser, profile, shown, type, visit } from './visit.ts';

inBrowser();

/** The strictest policy that the page can live with: nothing from elsewhere, no script but its own files. */
const policy =
  "default-src 'self'; script-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data: blob:; worker-src 'self'";

describe('the page’s policy', () => {
  it('lets nothing in but its own files', async () => {
    const page = await visit();
    expect(await page.locator('meta[http-equiv=Content-Security-Policy]').getAttribute('content')).toBe(policy);
  });

  it.each([
    ['stops a script that was slipped into it', true],
    ['is what stops it: without the policy it runs', false],
  ])('%s', async (_, isGuarded) => {
    const context = await profile();
    await context.route(inject('address'), async (route) => {
      const response = await route.fetch();
      const page = (await response.text()).replace(
        '</head>',
        '<script>document.documentElement.dataset.slipped = 1</script></head>',
      );
      await route.fulfill({
        response,
        body: isGuarded ? page : page.replace(/<meta[^>]*Content-Security-Policy[^>]*>/s, ''),
      });
    });
    const page = await visit('', context);
    expect(await page.locator('html').getAttribute('data-slipped')).toBe(isGuarded ? null : '1');
    expect(complaintsSoFar().filter((said) => said.includes('Content Security Policy'))).toHaveLength(
      isGuarded ? 1 : 0,
    );
    expect(await shown(page, 'dynamicRatio')).toBe('7.84');
  });

  it('stops what is fetched from elsewhere', async () => {
    const page = await visit();
    const violated = page.evaluate(
      () =>
        new Promise<string>((resolve) =>
          addEventListener('securitypolicyviolation', (event) => resolve(event.blockedURI), { once: true }),
        ),
    );
    await page.evaluate(() => {
      document.body.append(Object.assign(new Image(), { src: 'https://elsewhere.example/dot.png' }));
    });
    expect(await violated).toBe('https://elsewhere.example/dot.png');
    expect(complaintsSoFar()).toHaveLength(1);
  });
});

describe('the page', () => {
  it('asks nobody for anything but the host it came from, and sends no link there', async () => {
    const context = await profile();
    const asked: string[] = [];
    context.on('request', (request) => asked.push(request.url()));
    const page = await visit('', context);
    await type(page, 'chamberVolume', '66.6666');
    await complete(page);
    await page.keyboard.press('End');
    await page.locator('figure svg').last().waitFor();
    expect(asked.length).toBeGreaterThan(3);
    expect(asked.filter((url) => !url.startsWith(inject('address')) && !/^(data|blob):/.test(url))).toEqual([]);
    expect(asked.filter((url) => url.includes('66.66'))).toEqual([]);
  });

  it('works from a folder of another host, workers and figures included', async () => {
    const context = await profile();
    const page = await context.newPage();
    await page.goto(inject('inFolder'));
    await complete(page);
    await type(page, 'chamberVolume', '66');
    await complete(page);
    expect(Number(await shown(page, 'dynamicRatio'))).toBeCloseTo(byHand({ chamber: 66 }).dynamicRatio, 2);
    expect(Number(await shown(page, 'motoredPeak'))).toBeGreaterThan(98); // see the worker's own test
    await page.locator('figure#closing').scrollIntoViewIfNeeded();
    await page.locator('figure#closing svg').first().waitFor();
  });

  it('says what it needs where scripts are turned off', async () => {
    const page = await (await profile({ javaScriptEnabled: false })).newPage();
    await page.goto(inject('address'));
    expect(await page.locator('body').innerText()).toContain('it needs JavaScript');
  });

  it('opens on a first visit with the first answers in sight, and chapters open and close', async () => {
    const page = await visit('', await profile({ isFirst: true }));
    expect(await page.locator('#verdict').isVisible()).toBe(true);
    const { y, height } = (await page.locator('#verdict').boundingBox())!;
    expect(y + height).toBeLessThan(900);
    expect(await field(page, 'fuelGrade').count()).toBe(0);
    const cam = page.getByRole('button', { name: /Camshaft/ });
    expect(await cam.getAttribute('aria-expanded')).toBe('false');
    expect(await cam.innerText()).toMatch(/\d/); // it says in a line what it comes to
    await cam.click();
    await type(page, 'camAdvance', '-5');
    expect(Number(await shown(page, 'dynamicRatio'))).toBeCloseTo(byHand({ closing: 66 }).dynamicRatio, 2);
    await page.getByRole('button', { name: 'Close Camshaft' }).click();
    expect(await field(page, 'camAdvance').count()).toBe(0);
  });
});
