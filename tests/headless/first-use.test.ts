import { existsSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type Answer, edge, folder, inCheckout, isAbout, run } from './command.ts';

inCheckout({ isBuilt: false });

describe('the first use', () => {
  const words = [edge, '--get', 'staticRatio'];
  const built = 'node_modules/.cache/headless/headless.mjs';

  it('builds what it needs, whoever else does so meanwhile, and tells of it on the error output alone', async () => {
    expect(existsSync(join(folder, built))).toBe(false);
    for (const { code, out, err } of await Promise.all([run(words), run(words)])) {
      expect(code).toBe(0);
      expect(err).toMatch(/Building/);
      isAbout((JSON.parse(out) as Record<string, Answer>).staticRatio!.value, '9.54');
    }
    expect(existsSync(join(folder, built))).toBe(true);
    expect(readdirSync(join(folder, 'node_modules/.cache'))).toEqual(['headless']);
  });

  it('is the only one that builds, until a source changes or goes', async () => {
    expect((await run(words)).err).toBe('');
    rmSync(join(folder, 'scenarios/milled-four.json'));
    expect((await run(words)).err).toMatch(/Building/);
    expect((await run(words)).err).toBe('');
  });
});
