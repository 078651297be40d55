import { defineConfig } from 'vitest/config';

const browser = {
  globalSetup: 'tests/e2e/server.ts',
  testTimeout: 60_000,
  hookTimeout: 120_000,
  fileParallelism: false,
};

export default defineConfig({
  root: 'src', // keeps index.html out of the top folder
  base: './', // any static host, any sub-path
  build: {
    outDir: '../dist',
    emptyOutDir: true,
    target: 'es2022',
    // What every first screen needs is one file: it packs smaller than ten.
    rolldownOptions: {
      output: {
        codeSplitting: {
          groups: [
            {
              name: 'first',
              test: /src\/(units|graph\/(?!best|designs|draws|explor|field|front|guess|map|problem|scout|slices|solve|sweep|typed)|notebook\/(document|store|history)|views\/(frame|words|piece))|preload/,
            },
          ],
        },
      },
    },
  },
  worker: { format: 'es' },
  test: {
    root: '.',
    reporters: ['dot', './tests/counts.ts'],
    projects: [
      {
        test: {
          name: 'unit',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/e2e/**', 'tests/bench/**'],
          setupFiles: 'tests/seeded.ts',
          testTimeout: 30_000, // a loaded machine is no fault
        },
      },
      { test: { name: 'e2e', include: ['tests/e2e/**/*.test.ts'], ...browser } },
      // Not part of the test command: benchmarks, and the README's picture.
      { test: { name: 'bench', include: ['tests/bench/**/*.test.ts'], ...browser, disableConsoleIntercept: true } },
      { test: { name: 'picture', include: ['tests/e2e/picture.ts'], ...browser } },
    ],
  },
});
