import { describe, expect, it } from 'vitest';
import { root } from '../../../../src/numerics/root.ts';
import type { Pipe } from '../../../../src/physics/cycle/pipe/pipe.ts';
import { areaRatio, fanno, orificePsi } from './closed-forms.ts';
import { gamma, R, smoothPipe, step } from './pipes.ts';

const [p0, T0] = [1e5, 300];

/** Lets gas flow from a reservoir at the start to another pressure behind an opening at the end until it is steady. */
function settle(pipe: Pipe, outside: number, opening: number, steps = 30_000): Pipe {
  pipe.fill(p0, T0, 0);
  for (let i = 0; i < steps; i++)
    step(pipe, () => {
      pipe.start.solve(p0, T0, 0, pipe.startArea);
      pipe.end.solve(outside, T0, 0, opening);
    });
  expect(pipe.floors).toBe(0);
  return pipe;
}

const machIn = (pipe: Pipe, cell: number): number =>
  pipe.u[cell]! / Math.sqrt((gamma * pipe.p[cell]!) / pipe.rho[cell]!);

const area = 1.385e-3;

describe('steady flow through a mouth, a smooth pipe and a valve', () => {
  it.each([
    [2e-4, 95e3],
    [5e-4, 95e3],
    [9e-4, 95e3],
    [5e-4, 70e3],
    [9e-4, 60e3],
    [5e-4, 30e3],
  ])('of %d m2 to %d Pa is what the valve would pass from the reservoir, to a thousandth', (opening, outside) => {
    const pipe = settle(smoothPipe({ cells: 16, length: 0.25, startArea: area }), outside, opening);
    const exact = ((opening * p0) / Math.sqrt(R * T0)) * orificePsi(outside / p0, gamma);
    expect(Math.abs(-pipe.end.flow / exact - 1)).toBeLessThan(0.001);
    expect(Math.abs(pipe.start.flow / exact - 1)).toBeLessThan(0.001);
    expect(pipe.end.stagnation).toBeCloseTo(T0, 1);
    expect(pipe.end.enthalpyFlow).toBeCloseTo(((pipe.end.flow * gamma * R) / (gamma - 1)) * pipe.end.stagnation, 6);
  });
});

describe('the wall', () => {
  // Fanno flow: 4 f L / D, or as many velocity heads, between two Mach numbers
  it.each([
    ['friction', { friction: 0.01, lossHeads: 0 }, (4 * 0.01 * 1) / Math.sqrt((4 * area) / Math.PI)],
    ['bends', { friction: 0, lossHeads: 0.8 }, 0.8],
  ])('by %s slows the flow as Fanno has it, to a hundredth', (_name, wall, heads) => {
    for (const opening of [3e-4, 7e-4]) {
      const pipe = settle(smoothPipe({ cells: 40, length: 1, startArea: area, ...wall }), 60e3, opening);
      const lost = fanno(machIn(pipe, 2), gamma) - fanno(machIn(pipe, 37), gamma);
      expect(lost / ((heads * 35) / 40)).toBeGreaterThan(0.99);
      expect(lost / ((heads * 35) / 40)).toBeLessThan(1.01);
    }
  });

  it('takes no energy by friction', () => {
    const pipe = settle(smoothPipe({ cells: 20, length: 1, startArea: area, friction: 0.01 }), 60e3, 6e-4);
    expect(pipe.end.stagnation).toBeCloseTo(T0, 1);
  });

  it('warms the gas as the Reynolds analogy has it, with 3 m/s added to the speed', () => {
    const [friction, factor, wall] = [0.008, 1.5, 360];
    const pipe = settle(
      smoothPipe({ cells: 40, length: 1, startArea: area, friction, heatFactor: factor, wallTemperature: wall }),
      99e3,
      3e-4,
    );
    const warmth = (cell: number): number => pipe.p[cell]! / (pipe.rho[cell]! * R);
    // h = f/2 rho (u + 3) cp, so dT/dx = (2 f / D) (1 + 3/u) (Tw - T), and u goes with T
    const diameter = Math.sqrt((4 * area) / Math.PI);
    let T = warmth(2);
    const perKelvin = pipe.u[2]! / T;
    const parts = 10_000;
    for (let i = 0; i < parts; i++)
      T += (((2 * friction * factor) / diameter) * (1 + 3 / (perKelvin * T)) * (wall - T) * 35) / 40 / parts;
    expect(T - warmth(2)).toBeGreaterThan(15);
    expect(Math.abs((warmth(37) - warmth(2)) / (T - warmth(2)) - 1)).toBeLessThan(0.01);
  });
});

it.each([
  ['narrows', 2e-3, 1e-3],
  ['widens', 1e-3, 2e-3],
])(
  'a pipe that %s changes pressure and speed as an isentropic nozzle does, to 2 thousandths',
  (_name, startArea, endArea) => {
    const pipe = settle(smoothPipe({ cells: 40, length: 0.4, startArea, endArea }), 80e3, 7e-4);
    const passed = pipe.start.flow / (p0 / Math.sqrt(R * T0));
    const throat = passed / orificePsi(0, gamma); // the area in which this flow would be sonic
    for (const cell of [3, 20, 36]) {
      const share = (cell + 0.5) / 40;
      const here = (Math.sqrt(startArea) + share * (Math.sqrt(endArea) - Math.sqrt(startArea))) ** 2;
      const mach = root((each) => areaRatio(each, gamma) - here / throat, 1e-6, 1)!;
      const p = p0 * (1 + 0.5 * (gamma - 1) * mach ** 2) ** (-gamma / (gamma - 1));
      expect(mach).toBeGreaterThan(0.15);
      expect(Math.abs((pipe.p[cell]! - p) / (p0 - p))).toBeLessThan(0.01);
      expect(Math.abs(pipe.p[cell]! / p - 1)).toBeLessThan(0.002);
      expect(Math.abs(machIn(pipe, cell) / mach - 1)).toBeLessThan(0.005);
    }
  },
);
