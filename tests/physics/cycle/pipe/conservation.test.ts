import { describe, expect, it } from 'vitest';
import { randomFrom } from '../../valve/random.ts';
import type { Pipe } from '../../../../src/physics/cycle/pipe/pipe.ts';
import { gamma, R, smoothPipe, step, walls } from './pipes.ts';

/** A pipe in which nothing matches: jumps of pressure, temperature, speed and burnt share. */
function stirred(pipe: Pipe, seed: number): Pipe {
  const random = randomFrom(seed);
  for (let i = 0; i < pipe.cells; i++)
    pipe.set(i, random(0.5e5, 3e5), random(250, 1500), random(0, 1), random(-80, 80));
  return pipe;
}

const shapes: readonly (readonly [string, number, number])[] = [
  ['an even pipe', 1e-3, 1e-3],
  ['a widening pipe', 1e-3, 3e-3],
  ['a narrowing pipe', 3e-3, 1e-3],
];

describe.each(shapes)('%s with its ends closed', (_name, startArea, endArea) => {
  it('keeps its mass, its energy and its burnt gas to 1e-12 through a thousand steps, friction or not', () => {
    for (const friction of [0, 0.01]) {
      const pipe = stirred(
        smoothPipe({ cells: 20, length: 0.5, startArea, endArea, friction, lossHeads: 50 * friction }),
        3,
      );
      const before = [pipe.mass(), pipe.energy(), pipe.burntMass()];
      for (let i = 0; i < 1000; i++) step(pipe, walls);
      const after = [pipe.mass(), pipe.energy(), pipe.burntMass()];
      after.forEach((each, i) => expect(Math.abs(each / before[i]! - 1)).toBeLessThan(1e-12));
      expect(pipe.floors).toBe(0);
    }
  });

  it('leaves gas at rest at rest, also where hot gas meets cold', () => {
    const pipe = smoothPipe({ cells: 12, length: 0.3, startArea, endArea, friction: 0.01 });
    for (let i = 0; i < 12; i++) pipe.set(i, 1e5, i < 6 ? 300 : 900, i < 6 ? 0 : 1);
    for (let i = 0; i < 2000; i++) step(pipe, walls);
    for (let i = 0; i < 12; i++) {
      expect(Math.abs(pipe.u[i]!)).toBeLessThan(1e-8);
      expect(pipe.p[i]! / 1e5).toBeCloseTo(1, 10);
      expect(pipe.p[i]! / pipe.rho[i]! / R / (i < 6 ? 300 : 900)).toBeCloseTo(1, 9);
      expect(pipe.burnt[i]!).toBeCloseTo(i < 6 ? 0 : 1, 9);
    }
  });
});

it('a pipe open to both sides gains what its ends say has come in, of mass, energy and burnt gas, to 1e-12', () => {
  const pipe = stirred(smoothPipe({ cells: 16, length: 0.4, startArea: 1e-3, endArea: 2e-3, friction: 0.008 }), 8);
  const before = [pipe.mass(), pipe.energy(), pipe.burntMass()];
  const gained = [0, 0, 0];
  let gross = 0;
  for (let i = 0; i < 2000; i++) {
    const t = i / 2000;
    const dt = step(pipe, () => {
      pipe.start.solve(1e5 * (1 + 0.4 * Math.sin(20 * t)), 300, 0.1, 0.95e-3);
      pipe.end.solve(1.5e5 * (1 + 0.5 * Math.cos(33 * t)), 900, 0.9, Math.max(0, 1.4e-3 * Math.sin(11 * t)));
    });
    for (const end of [pipe.start, pipe.end]) {
      gained[0]! += dt * end.flow;
      gained[1]! += dt * end.enthalpyFlow;
      gained[2]! += dt * end.burntFlow;
      gross += dt * Math.abs(end.flow);
    }
  }
  expect(gross).toBeGreaterThan(5 * pipe.mass()); // it has been filled and emptied
  const after = [pipe.mass(), pipe.energy(), pipe.burntMass()];
  after.forEach((each, i) => expect(Math.abs((each - before[i]! - gained[i]!) / each)).toBeLessThan(1e-12));
  expect(pipe.floors).toBe(0);
});

describe('burnt gas', () => {
  it('stays within 0 and 1 where hot gas, cold gas and waves mix', () => {
    const pipe = stirred(smoothPipe({ cells: 20, length: 0.5, startArea: 1e-3 }), 21);
    for (let i = 0; i < 20; i++) pipe.set(i, i < 10 ? 2.5e5 : 1e5, i < 10 ? 1200 : 300, i < 10 ? 1 : 0);
    for (let i = 0; i < 1500; i++) {
      step(pipe, () => {
        pipe.start.solve(1e5 * (1 + Math.sin(i / 40)) + 4e4, 1200, 1, 6e-4);
        pipe.end.solve(1e5, 300, 0, 0.95e-3);
      });
      for (const share of pipe.burnt) {
        expect(share).toBeGreaterThan(-1e-9);
        expect(share).toBeLessThan(1 + 1e-9);
      }
    }
  });

  it('travels with the gas: a slug comes through after the length over the speed', () => {
    const pipe = smoothPipe({ cells: 100, length: 1, startArea: 1e-3 });
    const u = 50;
    pipe.fill(1e5, 300, 0, u);
    let t = 0;
    const front = (): number => pipe.burntMass() / (1e5 / (R * 300)) / 1e-3;
    while (t < 0.01) {
      t += step(pipe, () => {
        // a reservoir that keeps the speed: at its stagnation state, and behind the end the pressure of the pipe
        const mach = u / Math.sqrt(gamma * R * 300);
        const warm = 1 + 0.5 * (gamma - 1) * mach ** 2;
        pipe.start.solve(1e5 * warm ** (gamma / (gamma - 1)), 300 * warm, 1, 1e-3);
        pipe.end.solve(1e5, 300, 0, 1e-3);
      });
    }
    expect(front()).toBeCloseTo(u * t, 3);
    expect(pipe.u[50]).toBeCloseTo(u, 2);
  });
});

it('a pipe turned end for end does the same the other way round', () => {
  const [there, back] = [
    smoothPipe({ cells: 15, length: 0.4, startArea: 1e-3, endArea: 2e-3, friction: 0.01, heatFactor: 1 }),
    smoothPipe({ cells: 15, length: 0.4, startArea: 2e-3, endArea: 1e-3, friction: 0.01, heatFactor: 1 }),
  ];
  stirred(there, 5);
  for (let i = 0; i < 15; i++) {
    const k = 14 - i;
    back.set(i, there.p[k]!, there.p[k]! / (there.rho[k]! * R), there.burnt[k]!, -there.u[k]!);
  }
  for (let i = 0; i < 300; i++) {
    step(there, () => {
      there.start.solve(1.2e5, 300, 0.2, 0.95e-3);
      there.end.solve(0.9e5, 700, 0.7, 4e-4);
    });
    step(back, () => {
      back.end.solve(1.2e5, 300, 0.2, 0.95e-3);
      back.start.solve(0.9e5, 700, 0.7, 4e-4);
    });
  }
  for (let i = 0; i < 15; i++) {
    expect(back.p[i]! / there.p[14 - i]!).toBeCloseTo(1, 9);
    expect(back.rho[i]! / there.rho[14 - i]!).toBeCloseTo(1, 9);
    expect(back.u[i]! + there.u[14 - i]!).toBeCloseTo(0, 6);
    expect(back.burnt[i]! - there.burnt[14 - i]!).toBeCloseTo(0, 9);
  }
});
