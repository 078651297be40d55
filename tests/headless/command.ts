import { execFile } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect } from 'vitest';

const root = join(import.meta.dirname, '../..');
export const [edge, cams, six] = ['edge-of-premium', 'two-cams', 'mountain-six'].map(
  (name) => `scenarios/${name}.json`,
) as [string, string, string];

/** How a call ended. */
interface Ended {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}
/** A checkout of one test file's own, in which nothing is built yet and nobody edits meanwhile. */
export const folder = mkdtempSync(join(tmpdir(), 'checkout-'));
/** The tests of a file run there; the first use, which builds, is behind them unless it is what they are about. */
export function inCheckout({ isBuilt = true } = {}): void {
  beforeAll(async () => {
    checkOut();
    if (isBuilt) await run(['--list']);
  });
  afterAll(() => rmSync(folder, { recursive: true }));
}
function checkOut(): void {
  for (const part of ['src', 'cells', 'scenarios', 'package.json'])
    cpSync(join(root, part), join(folder, part), { recursive: true });
  const { dependencies } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as {
    readonly dependencies: object;
  };
  for (const name of [...Object.keys(dependencies), 'vite']) {
    mkdirSync(join(folder, 'node_modules', name, '..'), { recursive: true });
    symlinkSync(join(root, 'node_modules', name), join(folder, 'node_modules', name));
  }
}
/** Runs the command as a child, as anyone would from the top folder. */
export const run = (words: readonly string[]): Promise<Ended> =>
  new Promise((resolve) => {
    execFile(process.execPath, ['src/evaluate.mjs', ...words], { cwd: folder, maxBuffer: 1e8 }, (error, out, err) =>
      resolve({ code: error ? Number(error.code) : 0, out, err }),
    );
  });

export interface Answer {
  readonly value: unknown;
  readonly unit: string;
  readonly xUnit?: string;
  readonly state: string;
  readonly message?: string;
}
interface Swept {
  readonly id: string;
  readonly unit: string;
  readonly x: readonly number[];
  readonly results: Readonly<Record<string, { readonly unit: string; readonly y: readonly (number | null)[] }>>;
}
/** What a good call prints: nothing but JSON, on the standard output alone. */
export async function evaluate(...words: readonly string[]): Promise<Readonly<Record<string, Answer>>> {
  const { code, out, err } = await run(words);
  expect(err).toBe('');
  expect(code).toBe(0);
  return JSON.parse(out);
}
export async function swept(...words: readonly string[]): Promise<Swept> {
  return ((await evaluate(...words)) as unknown as { readonly sweep: Swept }).sweep;
}
export const value = async (id: string, ...words: readonly string[]): Promise<number> =>
  (await evaluate(...words, '--get', id))[id]!.value as number;
/** A figure held to the digits of a printed one. */
export function isAbout(figure: unknown, printed: string): void {
  expect(Number(figure).toFixed(printed.split('.')[1]?.length ?? 0)).toBe(printed);
}

/** A sentence with every sort of space as a plain one. */
export const plain = (sentence: unknown): string => String(sentence).replaceAll(/\s/g, ' ');
