import { describe, expect, it } from 'vitest';
import type { Pipe } from '../../../../src/physics/cycle/pipe/pipe.ts';
import { gamma, R, smoothPipe, step, usualStep, walls } from './pipes.ts';
import { type GasState, meeting, type Meeting } from './riemann.ts';

// The shock tubes are given in numbers around 1; a pressure of 1 is here 100 kPa, and speeds follow.
const pressure = 1e5;
const speed = Math.sqrt(pressure);

/** Toro, Riemann Solvers, table 4.1: left and right of the middle, and when to look. */
interface Tube {
  readonly left: GasState;
  readonly right: GasState;
  readonly time: number;
}
const sod: Tube = { left: { rho: 1, u: 0, p: 1 }, right: { rho: 0.125, u: 0, p: 0.1 }, time: 0.2 };
const strong: Tube = { left: { rho: 1, u: 0, p: 1000 }, right: { rho: 1, u: 0, p: 0.01 }, time: 0.012 };

function run({ left, right, time }: Tube, cells: number): Pipe {
  const pipe = smoothPipe({ cells, length: 1, startArea: 1 });
  for (let i = 0; i < cells; i++) {
    const { rho, u, p } = 2 * i < cells ? left : right;
    pipe.set(i, p * pressure, (p * pressure) / (rho * R), i < cells / 2 ? 0 : 1, u * speed);
  }
  const end = time / speed;
  for (let t = 0; t < end - 1e-12;) t += step(pipe, walls, Math.min(usualStep(pipe), end - t));
  expect(pipe.floors).toBe(0);
  return pipe;
}

/** Mean over the middle half of a stretch of the tube, in the tube's units. */
function plateau(of: Float64Array, unit: number, from: number, to: number): number {
  const [low, high] = [from + (to - from) / 4, to - (to - from) / 4];
  const inside = [...of].filter((_, i) => (i + 0.5) / of.length > low && (i + 0.5) / of.length < high);
  expect(inside.length).toBeGreaterThan(3);
  return inside.reduce((sum, each) => sum + each, 0) / inside.length / unit;
}

/** Where the gas between rarefaction and contact is found in the end. */
const middle = ({ time }: Tube, exact: Meeting): readonly [number, number] => [
  0.5 + exact.leftWave[1] * time,
  0.5 + exact.u * time,
];

const densityError = (tube: Tube, cells: number): number => {
  const exact = meeting(tube.left, tube.right, gamma);
  const pipe = run(tube, cells);
  return pipe.rho.reduce(
    (sum, rho, i) => sum + Math.abs(rho - exact.at(((i + 0.5) / cells - 0.5) / tube.time).rho) / cells,
    0,
  );
};

describe('a shock tube', () => {
  it("has Sod's pressure and speed between the waves to 0.2 and 0.3 % with 100 cells", () => {
    const exact = meeting(sod.left, sod.right, gamma);
    const pipe = run(sod, 100);
    expect(Math.abs(plateau(pipe.p, pressure, ...middle(sod, exact)) / exact.p - 1)).toBeLessThan(0.002);
    expect(Math.abs(plateau(pipe.u, speed, ...middle(sod, exact)) / exact.u - 1)).toBeLessThan(0.003);
  });

  it('has the densities on either side of the contact, and burnt gas only behind it', () => {
    const exact = meeting(sod.left, sod.right, gamma);
    const pipe = run(sod, 200);
    const contact = 0.5 + exact.u * sod.time;
    const front = 0.5 + exact.rightWave[0] * sod.time;
    expect(plateau(pipe.rho, 1, ...middle(sod, exact)) / exact.rhoLeft).toBeCloseTo(1, 2);
    expect(plateau(pipe.rho, 1, contact, front) / exact.rhoRight).toBeCloseTo(1, 2);
    expect(plateau(pipe.burnt, 1, ...middle(sod, exact))).toBeLessThan(1e-3);
    expect(plateau(pipe.burnt, 1, contact, front)).toBeGreaterThan(1 - 1e-3);
  });

  it('comes nearer to the exact density with every finer grid, as fast as a shock allows', () => {
    const errors = [50, 100, 200, 400].map((cells) => densityError(sod, cells));
    for (let i = 1; i < errors.length; i++) expect(errors[i]! / errors[i - 1]!).toBeLessThan(0.6);
    expect(errors[1]).toBeLessThan(0.006);
  });

  it("has the pressure and speed of Toro's strong shock to 0.3 % with 200 cells", () => {
    const exact = meeting(strong.left, strong.right, gamma);
    const pipe = run(strong, 200);
    expect(Math.abs(plateau(pipe.p, pressure, ...middle(strong, exact)) / exact.p - 1)).toBeLessThan(0.003);
    expect(Math.abs(plateau(pipe.u, speed, ...middle(strong, exact)) / exact.u - 1)).toBeLessThan(0.003);
  });
});
