import { describe, expect, it } from 'vitest';
import { click, field, inBrowser, profile, shown, type, use, visit } from './visit.ts';

inBrowser();

describe('a group of a chapter', () => {
  it('is folded until it is opened, and works out nothing before', async () => {
    const page = await visit();
    expect(await page.locator('#separationSpeed').count()).toBe(0);
    await click(page, 'Springs');
    expect(Number((await shown(page, 'separationSpeed')).replace(',', ''))).toBeGreaterThan(5000);
    await click(page, 'Springs');
    expect(await page.locator('#separationSpeed').count()).toBe(0);
  });

  it('opens for a link to one of its fields', async () => {
    const page = await visit();
    await click(page, 'Why: Intake clearance verdict');
    await page.locator('.why-panel').getByRole('link', { name: 'Least intake clearance' }).click();
    await expect.poll(() => field(page, 'intakeMinimum').evaluate((e) => e === document.activeElement)).toBe(true);
  });

  it('opens where a step that is taken back happened', async () => {
    const page = await visit();
    await click(page, 'Springs');
    await type(page, 'springRate', '250');
    await click(page, 'Springs');
    await use(page, 'Undo');
    await expect.poll(() => field(page, 'springRate').inputValue()).toBe('370');
  });

  it('says a caution about a folded field all the same', async () => {
    const page = await visit('', await profile({ viewport: { width: 390, height: 844 } }));
    await click(page, 'Springs');
    await type(page, 'springSolidHeight', '1.300');
    await click(page, 'Springs');
    // Installed 1.800 less 0.479 of lift leaves 0.021 over 1.300: under the 0.060 of common practice.
    const group = page.locator('chapter-group').filter({ hasText: 'Springs' });
    expect(await group.getByRole('status').innerText()).toContain('0.021');
    expect(await field(page, 'springSolidHeight').count()).toBe(0);
  });
});
