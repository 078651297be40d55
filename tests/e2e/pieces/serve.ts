import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import { build, preview } from 'vite';

const modules = join(import.meta.dirname, '../../../node_modules');

/** Builds the page of pieces as the notebook is built, and serves it; `close` takes both away. */
export async function servePieces(): Promise<{ readonly address: string; readonly close: () => Promise<void> }> {
  const outDir = join(modules, '.cache', `pieces-${process.pid}`);
  const mode = process.env.NODE_ENV; // a runner of tests says "test" there
  process.env.NODE_ENV = 'production';
  try {
    await build({
      root: import.meta.dirname,
      base: './',
      configFile: false,
      logLevel: 'warn',
      build: { outDir, emptyOutDir: true, target: 'es2022', chunkSizeWarningLimit: 2000 },
    });
  } finally {
    process.env.NODE_ENV = mode;
  }
  const server = await preview({
    configFile: false,
    logLevel: 'error',
    build: { outDir },
    preview: { host: '127.0.0.1', port: 0 },
  });
  return {
    address: server.resolvedUrls!.local[0]!,
    close: async () => {
      await server.close();
      await rm(outDir, { recursive: true, force: true });
    },
  };
}
