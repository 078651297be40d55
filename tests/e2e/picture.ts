import { join } from 'node:path';
import { inject, test } from 'vitest';
import { launch } from './browser.ts';

test('the README’s picture, from the built page', async () => {
  const browser = await launch();
  const page = await browser.newPage({ viewport: { width: 1280, height: 960 }, deviceScaleFactor: 1 });
  await page.goto(inject('address'));
  await page.waitForSelector('html[data-complete]');
  await page.waitForSelector('.plate svg circle');
  await page.waitForTimeout(300);
  await page.screenshot({ path: join(import.meta.dirname, 'page.png') });
  await browser.close();
});
