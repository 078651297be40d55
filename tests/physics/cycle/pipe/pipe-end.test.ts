import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { root } from '../../../../src/numerics/root.ts';
import type { Pipe } from '../../../../src/physics/cycle/pipe/pipe.ts';
import { orificePsi } from './closed-forms.ts';
import { gamma, isentropic, R, smoothPipe } from './pipes.ts';

const area = 1e-3;
const cp = (gamma * R) / (gamma - 1);

/** Gas in a pipe, with its speed into the pipe as a Mach number, and what lies behind the end. */
interface Case {
  readonly p: number;
  readonly T: number;
  readonly mach: number;
  readonly p0: number;
  readonly T0: number;
  readonly share: number;
}

const decade = (low: number, high: number): fc.Arbitrary<number> =>
  fc.double({ min: Math.log(low), max: Math.log(high), noNaN: true }).map(Math.exp);
const anyCase = (mach: number): fc.Arbitrary<Case> =>
  fc.record({
    p: decade(2e3, 2e7),
    T: decade(150, 3500),
    mach: fc.double({ min: -mach, max: mach, noNaN: true }),
    p0: decade(2e3, 2e7),
    T0: decade(150, 3500),
    share: fc.oneof(fc.constantFrom(0, 0.9, 0.95, 1), fc.double({ min: 0, max: 1, noNaN: true })),
  });

/** A pipe full of the gas of a case, its start solved at the case's reservoir. */
function solved(
  { p, T, mach, p0, T0, share }: Case,
  pipe = smoothPipe({ cells: 2, length: 1, startArea: area }),
): Pipe {
  pipe.fill(p, T, 0.3, mach * Math.sqrt(gamma * R * T));
  pipe.reconstruct(0);
  pipe.start.solve(p0, T0, 0.8, share * area);
  return pipe;
}

/** The most that an opening, or the pipe itself, can pass either way, kg/s. */
const capacity = ({ p, T, p0, T0 }: Case): number => area * (p / Math.sqrt(R * T) + p0 / Math.sqrt(R * T0));

/**
 * The flow that a case should give, found by plain bisection with plain powers: the two-shock relation in the pipe, an
 * isentropic orifice, as the sources named at `PipeEnd` have it.
 */
function exactFlow({ p, T, mach, p0, T0, share }: Case): number {
  const rho = p / (R * T);
  const u = mach * Math.sqrt(gamma * R * T);
  const speed = (x: number): number =>
    u + (x - p) * Math.sqrt(2 / ((gamma + 1) * rho) / (x + (p * (gamma - 1)) / (gamma + 1)));
  const opening = share * area;
  if (speed(p0) > 0) {
    const through = (x: number): number => ((opening * p0) / Math.sqrt(R * T0)) * orificePsi(x / p0, gamma);
    const excess = (x: number): number =>
      (x / (R * (T0 - Math.min(speed(x) ** 2, cp * T0) / (2 * cp)))) * speed(x) * area - through(x);
    return through(root(excess, 0.01 * Math.min(p, p0), p0, 1e-14) ?? NaN);
  }
  const out = (x: number): { passed: number; brought: number } => {
    const density = rho * (x / p) ** (1 / gamma);
    const sound = Math.sqrt((gamma * x) / density);
    const square = Math.min(1, (speed(x) / sound) ** 2);
    const warmer = 1 + 0.5 * (gamma - 1) * square;
    const still = x * warmer ** (gamma / (gamma - 1));
    return {
      passed: ((opening * still) / Math.sqrt((warmer * sound ** 2) / gamma)) * orificePsi(p0 / still, gamma),
      brought: Math.max(speed(x), -sound) * density * area,
    };
  };
  const wall = root(speed, p0, 1e3 * (p + p0), 1e-14) ?? p0;
  return -out(root((x) => out(x).passed + out(x).brought, p0, wall, 1e-14) ?? p0).passed;
}

describe('the end of a pipe', () => {
  it('gives numbers for any gas in the pipe and any reservoir, whatever it was asked before', () => {
    fc.assert(
      fc.property(anyCase(3), anyCase(3), (before, now) => {
        const pipe = solved(before);
        const { start } = solved(now, pipe);
        for (const each of [start.flow, start.stagnation, start.burnt, start.enthalpyFlow, start.burntFlow])
          expect(Number.isFinite(each)).toBe(true);
        expect(start.pressure).toBeGreaterThan(0);
        expect([...pipe.fluxes].every(Number.isFinite)).toBe(true);
        expect(start.burnt).toBe(start.flow > 0 ? 0.8 : start.burnt);
        expect(Math.abs(start.flow)).toBeLessThan(20 * capacity(now));
      }),
      { numRuns: 4000, seed: 20260901 },
    );
  });

  it('lets through what pipe and opening agree on, whatever it was asked before', () => {
    fc.assert(
      fc.property(anyCase(0.9), anyCase(0.9), (before, now) => {
        fc.pre(now.share > 1e-5);
        const exact = exactFlow(now);
        fc.pre(exact > 0 || now.share <= 0.9); // gas leaves an open mouth otherwise
        const { start } = solved(now, solved(before));
        expect(Math.abs(start.flow - exact)).toBeLessThan(3e-5 * capacity(now));
      }),
      { numRuns: 3000, seed: 20260902 },
    );
  });

  it('lets in no less and out no more when the pressure behind it rises', () => {
    fc.assert(
      fc.property(anyCase(0.95), decade(1, 10), (low, rise) => {
        const high = { ...low, p0: low.p0 * rise };
        // An open mouth is held at the speed of sound, where the flow of the wave model is not quite at its largest: by
        // nothing to speak of, unless the pipe's gas is racing away from a mouth that it leaves all the same.
        const room = low.share <= 0.9 ? 3e-5 : low.mach > 0 ? 0.01 : 1e-4;
        expect(solved(high).start.flow - solved(low).start.flow).toBeGreaterThan(-room * capacity(high));
      }),
      { numRuns: 3000, seed: 20260903 },
    );
  });

  it('lets in what a choked opening passes, no matter how low the pressure in the pipe', () => {
    for (const p of [2e4, 5e4, 1e5]) {
      const { start } = solved({ p, T: 300, mach: 0, p0: 4e5, T0: 1200, share: 0.1 });
      const choked = ((0.1 * area * 4e5) / Math.sqrt(R * 1200)) * 0.6847314564; // J. B. Heywood, 1988, eq. C.9
      expect(start.flow / choked).toBeCloseTo(1, 5);
      expect(start.stagnation).toBe(1200);
      expect(start.burnt).toBe(0.8);
    }
  });

  it('lets out no more once the opening is choked, and takes the gas of the pipe with it', () => {
    const at = (p0: number) => solved({ p: 3e5, T: 900, mach: 0, p0, T0: 300, share: 0.2 }).start;
    expect(at(1e5).flow).toBeLessThan(0);
    expect(at(2e4).flow / at(1e5).flow).toBeCloseTo(1, 4);
    expect(at(2e4).burnt).toBe(0.3);
    // the reservoir's gas is the wave's: with so small an opening the pipe's gas hardly moves
    const small = solved({ p: 3e5, T: 900, mach: 0, p0: 1e5, T0: 300, share: 0.002 }).start;
    expect(-small.flow / (((0.002 * area * 3e5) / Math.sqrt(R * 900)) * 0.6847314564)).toBeCloseTo(1, 2);
    expect(small.stagnation).toBeCloseTo(900, 0);
  });

  it('has the pressure outside where gas leaves an open mouth below the speed of sound', () => {
    const { start } = solved({ p: 1.2e5, T: 400, mach: -0.2, p0: 1e5, T0: 300, share: 1 });
    expect(start.flow).toBeLessThan(0);
    expect(start.pressure).toBe(1e5);
  });

  it('lets gas out of an open mouth at no more than the speed of sound', () => {
    const at = (p0: number) => solved({ p: 4e5, T: 900, mach: -0.5, p0, T0: 300, share: 1 }).start;
    const { flow, pressure, stagnation } = at(5e4);
    expect(pressure).toBeGreaterThan(5e4);
    expect(at(2e4).flow / flow).toBeCloseTo(1, 6);
    const T = stagnation / (1 + 0.5 * (gamma - 1)); // at Mach 1
    expect(-flow / ((area * pressure * Math.sqrt(gamma)) / Math.sqrt(R * T))).toBeCloseTo(1, 5);
  });

  it('is a wall at no opening: nothing crosses, and a shock comes back as the gas dynamics of a moving shock has it', () => {
    for (const shock of [1.01, 1.3, 2, 4]) {
      // NACA Report 1135, eqs. 93 to 95: gas that meets a shock of this Mach number is brought to rest from that speed
      const mach = -(2 / (gamma + 1)) * (shock - 1 / shock);
      const { start } = solved({ p: 1e5, T: 300, mach, p0: 5e5, T0: 300, share: 0 });
      expect(start.pressure / 1e5).toBeCloseTo(1 + ((2 * gamma) / (gamma + 1)) * (shock ** 2 - 1), 9);
      expect([start.flow, start.enthalpyFlow, start.burntFlow]).toEqual([0, 0, 0]);
    }
  });

  it('is a wall to gas that leaves it as well: the pressure falls as in a simple expansion, nearly', () => {
    for (const mach of [0.02, 0.1, 0.3]) {
      const { start } = solved({ p: 1e5, T: 300, mach, p0: 5e5, T0: 300, share: 0 });
      const exact = (1 - 0.5 * (gamma - 1) * mach) ** ((2 * gamma) / (gamma - 1));
      expect(Math.abs(start.pressure / 1e5 - exact)).toBeLessThan(0.1 * mach ** 3);
    }
  });

  it('sucks gas in through a mouth without loss: its stagnation state is the reservoir', () => {
    const { start } = solved({ p: 0.95e5, T: 295, mach: 0.15, p0: 1e5, T0: 300, share: 1 });
    const u = (start.flow * R * isentropic(300, start.pressure / 1e5)) / (start.pressure * area);
    expect(start.flow).toBeGreaterThan(0);
    expect((u * u) / (2 * cp) + isentropic(300, start.pressure / 1e5)).toBeCloseTo(300, 2);
  });

  it('gives what it gave before once it has been reset', () => {
    const now: Case = { p: 1.1e5, T: 350, mach: 0.1, p0: 1.3e5, T0: 400, share: 0.4 };
    const fresh = solved(now).start;
    const pipe = solved({ p: 3e5, T: 900, mach: -0.3, p0: 1e5, T0: 300, share: 0.2 });
    pipe.start.reset();
    expect(pipe.start.flow).toBe(0);
    expect(solved(now, pipe).start.flow).toBe(fresh.flow);
  });
});
