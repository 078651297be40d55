// Benchmarks on a built bundle, as times and ratios. Nothing here fails: it prints, a person judges.
import { spawn, spawnSync } from 'node:child_process';
import { dirname, join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'vite';

const root = join(dirname(fileURLToPath(import.meta.url)), '../..');
const out = join(root, 'node_modules/.cache/bench');
/** What tests/bench/NAME.bench.ts exports, built as for the page. */
async function built(name) {
  await build({
    configFile: false,
    root,
    logLevel: 'warn',
    build: {
      ssr: join(root, `tests/bench/${name}.bench.ts`),
      outDir: join(out, name),
      emptyOutDir: true,
      target: 'node20',
      minify: true,
      rollupOptions: { output: { entryFileNames: `${name}.mjs` } },
    },
  });
  return import(pathToFileURL(join(out, name, `${name}.mjs`)).href);
}
const graph = await built('graph');

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
const ms = (n) => `${(n / 1000).toFixed(2)} ms`;

const [sweep, inline] = [graph.sweep(), graph.sweepInline()];
if (Math.abs(sweep() - inline()) > 1e-9) throw new Error('the inline sweep computes something else');
const [a, b] = medians([sweep, inline], 60, 20);
console.log(
  `sweep 200 x 5, dynamic ratio against intake closing: ${us(a)}; inline ${us(b)}; ratio ${(a / b).toFixed(2)} (bars: 1000 µs, 5)`,
);
const [map, mapInline] = [graph.map(), graph.mapInline()];
if (Math.abs(map() - mapInline()) > 1e-9) throw new Error('the inline map computes something else');
const [wide, plain] = medians([map, mapInline], 40, 1);
console.log(
  `map 200 x 200, dynamic ratio over intake closing and chamber volume: ${ms(wide)}; inline ${ms(plain)}; ratio ${(wide / plain).toFixed(2)} (bar: 50 ms)`,
);
for (const [what, make, bar] of [
  ['all results of compression, hydraulic', graph.drawsOfCompression, 60],
  ['intake valve to piston, the lobe found anew', graph.drawsOfClearance, 1500],
  ['overlap area, both lobes found anew', graph.drawsOfOverlap, 1500],
]) {
  const [times, run] = [[], make()];
  for (let round = -3; round < 9; round++) {
    const start = performance.now();
    run();
    if (round >= 0) times.push((performance.now() - start) * 1000);
  }
  console.log(`10,000 draws of ${what}: ${ms(times.toSorted((a, b) => a - b)[4])} (bar: ${bar} ms)`);
}
const [one, edit, all] = medians([graph.oneInput(), graph.oneEdit(), graph.oneInputOfAll()], 60, 200);
console.log(
  `one input to all quick results of the first six chapters: ${us(one)} on the graph, ${us(edit)} with document and undo; ratio ${(edit / one).toFixed(2)} (bar: 100 µs); of all nine: ${us(all)}`,
);
const [lift] = medians([graph.liftAndClearance()], 60, 20);
console.log(`lift and clearance recompute, one valve input to all quick results: ${us(lift)} (bar: 2000 µs)`);

// The step of 200 cells of a pipe against the same in C, turn by turn, each time from the same wave on.
const [cells, steps, rounds] = [200, 1000, 400];
const { interior } = await built('interior');
const pipe = interior(cells);
const program = join(out, 'interior', 'interior');
const source = join(root, 'tests/bench/interior.c');
const [gcc, ...flags] = ['gcc', '-O3', '-march=native', '-o', program, source, '-lm'];
const compiler = spawnSync(gcc, flags, { encoding: 'utf8' });
const each = (times) => times.toSorted((a, b) => a - b)[times.length >> 1] / (cells * steps);
const [ours, theirs] = [[], []];
if (compiler.error) {
  for (let round = -40; round < rounds; round++) {
    const took = pipe.run(steps);
    if (round >= 0) ours.push(took);
  }
  console.log(
    `step of ${cells} cells of a pipe: ${each(ours).toFixed(1)} ns a cell; not compared with C, as there is no gcc`,
  );
} else {
  if (compiler.status !== 0) throw new Error(`interior.c: ${compiler.stderr}`);
  const child = spawn(program, [String(cells)], { stdio: ['pipe', 'pipe', 'inherit'] });
  const answers = createInterface({ input: child.stdout })[Symbol.asyncIterator]();
  const ask = async (line) => {
    child.stdin.write(`${line}\n`);
    const { value, done } = await answers.next();
    if (done) throw new Error('interior.c has ended');
    return value;
  };
  pipe.run(steps);
  await ask(`run ${steps}`);
  const state = pipe.state();
  const other = Float64Array.from((await ask('state')).trim().split(' '), Number);
  // The farthest apart of rho, of rho u, of energy and of rho burnt, in the largest of each.
  const apart = [0, 1, 2, 3].map((k) => {
    const [a, b] = [state, other].map((all) => all.subarray(k * cells, (k + 1) * cells));
    return Math.max(...a.map((x, i) => Math.abs(x - b[i]))) / Math.max(...a.map(Math.abs));
  });
  if (other.length !== state.length || !apart.every((share) => share < 1e-9))
    throw new Error(`interior.c computes something else: ${apart.join(', ')} apart`);
  for (let round = -40; round < rounds; round++) {
    const [our, their] = [pipe.run(steps), Number(await ask(`run ${steps}`))];
    if (round < 0) continue;
    ours.push(our);
    theirs.push(their);
  }
  child.stdin.end();
  const [a, b] = [each(ours), each(theirs)];
  console.log(
    `step of ${cells} cells of a pipe: ${a.toFixed(1)} ns a cell; in C ${b.toFixed(1)} ns; ratio ${(a / b).toFixed(2)} (bar: 1.5); ${Math.max(...apart).toExponential(0)} apart after ${steps} steps`,
  );
}
