import { Pipe } from '../../src/physics/cycle/pipe/pipe.ts';

/** The step of a pipe with a wall at either end: what interior.c does too, with the same measures. */
export interface Interior {
  /** Sets the gas back, takes so many steps, and tells the nanoseconds they took. */
  readonly run: (steps: number) => number;
  /** rho, rho u, energy and rho burnt of all cells, block by block. */
  readonly state: () => Float64Array;
}

/**
 * A pipe of so many cells, after the step has been made warm on a short one, as the page's pipes are. Started on 200
 * cells V8 may compile the loop over the cells in the middle of it and keep that for good, with its numbers boxed: half
 * the speed, in one process out of twenty.
 */
export function interior(cells: number): Interior {
  const short = waveIn(20);
  for (let i = 0; i < 20; i++) short.run(1000);
  return waveIn(cells);
}

/** A smooth wave in a uniform pipe, of pressure, temperature and burnt share: every term of the step but taper is at work. */
function waveIn(cells: number): Interior {
  const area = 0.25 * Math.PI * 0.04 ** 2;
  const pipe = new Pipe({
    cells,
    length: 0.8,
    startArea: area,
    endArea: area,
    gamma: 1.35,
    R: 287,
    friction: 0.008,
    heatFactor: 1.5,
    wallTemperature: 345,
    lossHeads: 0.5,
  });
  for (let i = 0; i < cells; i++) {
    const along = Math.cos((Math.PI * (i + 0.5)) / cells);
    pipe.set(i, 1e5 * (1 + 0.2 * along), 400 + 30 * along, 0.5 + 0.4 * along);
  }
  const first = new Float64Array(pipe.size);
  pipe.write(first, 0);
  const run = (steps: number): number => {
    pipe.read(first, 0);
    const start = performance.now();
    for (let n = 0; n < steps; n++) {
      const dt = (0.8 * pipe.dx) / pipe.wave;
      pipe.reconstruct(dt);
      pipe.start.solve(1e5, 400, 0, 0);
      pipe.end.solve(1e5, 400, 0, 0);
      pipe.update(dt);
    }
    const took = (performance.now() - start) * 1e6;
    if (pipe.floors > 0) throw new Error('the wave needed a floor: its steps are not the usual ones');
    return took;
  };
  const state = (): Float64Array => {
    const now = new Float64Array(pipe.size);
    pipe.write(now, 0);
    return now;
  };
  return { run, state };
}
