// Builds the cells for Node on first use and whenever a source is newer, then evaluates a notebook.
import { existsSync, readdirSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const out = join(root, 'node_modules/.cache/headless');
const built = join(out, 'headless.mjs');

const newest = (path) => {
  const at = statSync(path);
  return at.isDirectory() ? Math.max(...readdirSync(path).map((name) => newest(join(path, name)))) : at.mtimeMs;
};

if (
  !existsSync(built) ||
  ['src', 'cells', 'scenarios'].some((dir) => newest(join(root, dir)) > statSync(built).mtimeMs)
) {
  const { build, createLogger } = await import('vite');
  const log = createLogger('warn');
  for (const level of ['info', 'warn', 'warnOnce', 'error'])
    log[level] = (text) => void process.stderr.write(`${text}\n`);
  await build({
    configFile: false,
    root,
    customLogger: log,
    build: {
      ssr: join(root, 'src/headless.ts'),
      outDir: out,
      emptyOutDir: true,
      target: 'node20',
      rollupOptions: { output: { entryFileNames: 'headless.mjs' } },
    },
  });
}

const { run } = await import(pathToFileURL(built).href);
process.exitCode = run(process.argv.slice(2));
