// Builds the cells for Node on first use and whenever a source is newer, then evaluates a notebook.
import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, statSync, utimesSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const out = join(root, 'node_modules/.cache/headless');
const built = join(out, 'headless.mjs');

/** When something last changed there; a folder itself changes when a file in it is renamed or removed. */
const newest = (path) => {
  const at = statSync(path);
  const inside = at.isDirectory() ? readdirSync(path).map((name) => newest(join(path, name))) : [];
  return Math.max(at.mtimeMs, ...inside);
};

if (
  !existsSync(built) ||
  ['src', 'cells', 'scenarios'].some((dir) => newest(join(root, dir)) > statSync(built).mtimeMs)
) {
  const started = new Date();
  const fresh = `${out}-${process.pid}`;
  const { build } = await import('vite');
  process.stderr.write('Building the cells, once.\n');
  await build({
    configFile: false,
    root,
    logLevel: 'silent', // what it tells goes to the standard output, by ways that cannot be turned aside
    build: {
      ssr: join(root, 'src/headless.ts'),
      outDir: fresh,
      emptyOutDir: true,
      target: 'node20',
      rollupOptions: { output: { entryFileNames: 'headless.mjs' } },
    },
  });
  // Put in its place at once: another call may be reading the one before.
  mkdirSync(out, { recursive: true });
  utimesSync(join(fresh, 'headless.mjs'), started, started);
  renameSync(join(fresh, 'headless.mjs'), built);
  rmSync(fresh, { recursive: true });
}

const { run } = await import(pathToFileURL(built).href);
process.exitCode = run(process.argv.slice(2));
