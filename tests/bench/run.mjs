// Benchmarks on a built bundle, as times and ratios. Nothing here fails: it prints, a person judges.
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'vite';

const root = join(dirname(fileURLToPath(import.meta.url)), '../..');
const out = join(root, 'node_modules/.cache/bench');
await build({
  configFile: false,
  root,
  logLevel: 'warn',
  build: {
    ssr: join(root, 'tests/bench/graph.bench.ts'),
    outDir: out,
    emptyOutDir: true,
    target: 'node20',
    minify: true,
    rollupOptions: { output: { entryFileNames: 'graph.mjs' } },
  },
});
const graph = await import(pathToFileURL(join(out, 'graph.mjs')).href);

/**
 * Medians in microseconds of several functions, run in turn so that a drift of the machine meets all of them. The first
 * rounds are not counted: a page compiles what it runs often well before a hand has moved for a second.
 */
function medians(functions, rounds, batch) {
  const times = functions.map(() => []);
  for (let round = -60; round < rounds; round++)
    functions.forEach((f, k) => {
      const start = performance.now();
      for (let i = 0; i < batch; i++) f();
      if (round >= 0) times[k].push(((performance.now() - start) * 1000) / batch);
    });
  return times.map((t) => t.toSorted((a, b) => a - b)[t.length >> 1]);
}
const us = (n) => `${n.toFixed(1)} µs`;

const [sweep, inline] = [graph.sweep(), graph.sweepInline()];
if (Math.abs(sweep() - inline()) > 1e-9) throw new Error('the inline sweep computes something else');
const [a, b] = medians([sweep, inline], 60, 20);
console.log(
  `sweep 200 x 5, dynamic ratio against intake closing: ${us(a)}; inline ${us(b)}; ratio ${(a / b).toFixed(2)} (bars: 1000 µs, 5)`,
);
const [one, edit, all] = medians([graph.oneInput(), graph.oneEdit(), graph.oneInputOfAll()], 60, 200);
console.log(
  `one input to all quick results but the valves': ${us(one)} on the graph, ${us(edit)} with document and undo; ratio ${(edit / one).toFixed(2)} (bar: 100 µs); the valves' looked at too: ${us(all)}`,
);
const [lift] = medians([graph.liftAndClearance()], 60, 20);
console.log(`lift and clearance recompute, one valve input to all quick results: ${us(lift)} (bar: 2000 µs)`);
