import { describe, expect, it } from 'vitest';
import { linkage, pistonDrop } from '../../src/physics/linkage.ts';
import { type MotoredCylinder, motoredCompression, type PressureTrace } from '../../src/physics/motored.ts';
import { Solver } from './odex.ts';

const deg = Math.PI / 180;

/** An invented cylinder, cranked. */
const cylinder: MotoredCylinder = {
  bore: 0.101,
  linkage: linkage(0.092, 0.15, 0.001),
  clearance: 88e-6,
  closing: 61 * deg,
  stationPressure: 98.9e3,
  airTemperature: 300,
  wallTemperature: 344,
  speed: 21,
  leakArea: 0.5e-6,
};

const traced = (m: MotoredCylinder): { readonly trace: PressureTrace; readonly shares: readonly number[] } => {
  const run = motoredCompression(m);
  const shares: number[] = [];
  let turn = run.next();
  for (; !turn.done; turn = run.next()) shares.push(turn.value);
  return { trace: turn.value, shares };
};
const peak = (m: MotoredCylinder): number => Math.max(...traced(m).trace.pressure);

// The judge's own gas: nitrogen, oxygen and argon of NASA TM-4513, 1993, below 1000 K (a1 to a5, a7).
const R = 8.314462618 / 0.028959;
const gases = [
  [0.78124, 3.53100528, -0.000123660987, -5.02999437e-7, 2.43530612e-9, -1.40881235e-12, 2.96747468],
  [0.20946, 3.78245636, -0.00299673415, 9.847302e-6, -9.68129508e-9, 3.24372836e-12, 3.65767573],
  [0.0093, 2.5, 0, 0, 0, 0, 4.37967491],
] as const;
const cp = (T: number): number =>
  R * gases.reduce((sum, [x, a, b, c, d, e]) => sum + x * (a + b * T + c * T ** 2 + d * T ** 3 + e * T ** 4), 0);
const entropy = (T: number): number =>
  R *
  gases.reduce(
    (sum, [x, a, b, c, d, e, g]) =>
      sum + x * (a * Math.log(T) + b * T + (c * T ** 2) / 2 + (d * T ** 3) / 3 + (e * T ** 4) / 4 + g),
    0,
  );

/** Orifice flow by the Mach number in the opening instead of the pressure ratio; gas dynamics of any textbook. */
const orifice = (area: number, p: number, T: number, behind: number): number => {
  const k = cp(T) / (cp(T) - R);
  const mach = Math.min(1, Math.sqrt((2 / (k - 1)) * ((p / behind) ** ((k - 1) / k) - 1)));
  const stretch = 1 + ((k - 1) / 2) * mach ** 2;
  return ((area * p * mach) / Math.sqrt(R * T)) * Math.sqrt(k) * stretch ** (-(k + 1) / (2 * (k - 1)));
};

/**
 * Peak pressure from the same physics by another hand and another integrator: internal energy and mass are followed in
 * time instead of temperature by angle, and the piston is placed on a drawn crank. Only for traces above station pressure.
 */
const judged = (m: MotoredCylinder): number => {
  const { throw: r, rod, offset } = m.linkage;
  const shift = Math.asin(offset / (rod + r));
  const height = (turn: number): number => {
    const x = r * Math.sin(turn + shift) - offset;
    return r * Math.cos(turn + shift) + Math.sqrt((rod - x) * (rod + x));
  };
  const highest = height(0);
  const plate = (Math.PI * m.bore * m.bore) / 4;
  const start = m.closing - Math.PI;
  const turnAt = (t: number): number => start + m.speed * t;
  const volume = (turn: number): number => m.clearance + plate * (highest - height(turn));
  const growth = (turn: number): number => ((volume(turn + 1e-4) - volume(turn - 1e-4)) / 2e-4) * m.speed;

  // u(T) by the midpoint rule on a fine table, counted from 250 K.
  const table = [0];
  for (let i = 1; i <= 6500; i++) table.push(table[i - 1]! + 0.1 * (cp(250 + 0.1 * (i - 0.5)) - R));
  const energy = (T: number): number => {
    const i = Math.floor((T - 250) * 10);
    return table[i]! + (table[i + 1]! - table[i]!) * ((T - 250) * 10 - i);
  };
  const temperature = (u: number): number => {
    let [low, high] = [250, 899];
    for (let i = 0; i < 50; i++) {
      const middle = (low + high) / 2;
      if (energy(middle) < u) low = middle;
      else high = middle;
    }
    return low;
  };

  const w = 2.28 * 2 * m.linkage.travel * (m.speed / (2 * Math.PI));
  const solver = new Solver(2);
  solver.absoluteTolerance = [1e-13, 1e-7];
  solver.relativeTolerance = 1e-9;
  let largest = 0;
  const T0 = (m.airTemperature + m.wallTemperature) / 2;
  const mass0 = (m.stationPressure * volume(start)) / (R * T0);
  const state = (t: number, y: readonly number[]) => {
    const T = temperature(y[1]! / y[0]!);
    return { T, p: (y[0]! * R * T) / volume(turnAt(t)) };
  };
  const flow = (t: number, y: number[]): number[] => {
    const { T, p } = state(t, y);
    const turn = turnAt(t);
    const wall = 2 * plate + Math.PI * m.bore * (highest - height(turn));
    const h = (3.26 * m.bore ** -0.2 * (p / 1e3) ** 0.8 * w ** 0.8) / T ** 0.55;
    const out = p > m.stationPressure ? orifice(m.leakArea, p, T, m.stationPressure) : 0;
    return [-out, -h * wall * (T - m.wallTemperature) - p * growth(turn) - out * (y[1]! / y[0]! + R * T)];
  };
  // Odex takes long steps; the peak is read on a fine grid by going there in many pieces.
  let y = [mass0, mass0 * energy(T0)];
  let t = 0;
  for (const to of grid(start, -15 * deg, 3).concat(grid(-15 * deg, 5 * deg, 160))) {
    const next = (to - start) / m.speed;
    if (next > t) {
      const solved = solver.solve(flow, t, y, next);
      expect(solved.outcome).toBe(0); // converged
      y = solved.y;
    }
    t = next;
    largest = Math.max(largest, state(t, y).p);
  }
  return largest;
};
const grid = (from: number, to: number, pieces: number): number[] =>
  Array.from({ length: pieces }, (_, i) => from + ((i + 1) * (to - from)) / pieces);

describe('motoredCompression, against the same physics integrated by another hand with ODEX', () => {
  it.each([
    ['the cylinder as it is', {}],
    ['hardly any leak', { leakArea: 1e-9 }],
    ['worn rings', { leakArea: 3e-6 }],
    ['a slow starter', { speed: 12 }],
    ['a late closing in thin, cold air', { closing: 75 * deg, stationPressure: 77e3, airTemperature: 275 }],
  ])('has its peak within 0.1 %%: %s', (_what, change) => {
    const m = { ...cylinder, ...change };
    expect(Math.abs(peak(m) / judged(m) - 1)).toBeLessThan(0.001);
  });
});

describe('motoredCompression at its limits', () => {
  it('nears the isentropic peak, from tabulated entropy, when there is no time to lose heat or air', () => {
    const m = { ...cylinder, speed: 1e12 };
    const V = (angle: number): number => m.clearance + (Math.PI / 4) * m.bore ** 2 * pistonDrop(m.linkage, angle);
    const T0 = (m.airTemperature + m.wallTemperature) / 2;
    const squeeze = V(m.closing - Math.PI) / V(0);
    // Isentropic: s(T) - s(T0) = R ln(p/p0), with p/p0 = squeeze T/T0; halved in until it holds.
    let [low, high] = [T0, 950];
    for (let i = 0; i < 60; i++) {
      const T = (low + high) / 2;
      if (entropy(T) - entropy(T0) < R * Math.log((squeeze * T) / T0)) low = T;
      else high = T;
    }
    const isentropic = (m.stationPressure * squeeze * low) / T0;
    expect(Math.abs(peak(m) / isentropic - 1)).toBeLessThan(0.005);
    expect(peak(cylinder)).toBeLessThan(isentropic);
  });

  it('loses less and less to the rings as the leak closes, down to nothing', () => {
    const peaks = [2e-6, 1e-6, 0.5e-6, 0.1e-6, 0].map((leakArea) => peak({ ...cylinder, leakArea }));
    expect(peaks).toEqual(peaks.toSorted((a, b) => a - b));
    expect(peak({ ...cylinder, leakArea: 1e-12 }) / peaks.at(-1)!).toBeCloseTo(1, 6);
  });

  it('keeps station pressure when the way past the rings is wide open', () => {
    const { pressure } = traced({ ...cylinder, leakArea: 250e-6 }).trace;
    for (const p of pressure) expect(Math.abs(p / cylinder.stationPressure - 1)).toBeLessThan(0.01);
  });

  it('draws crankcase air back when the intake closes before the bottom and the pressure falls', () => {
    const early = { ...cylinder, closing: -40 * deg };
    const lowest = (leakArea: number): number => Math.min(...traced({ ...early, leakArea }).trace.pressure);
    expect(lowest(0)).toBeLessThan(0.95 * cylinder.stationPressure);
    expect(lowest(5e-6)).toBeGreaterThan(lowest(0));
    expect(lowest(5e-6)).toBeLessThan(cylinder.stationPressure);
  });
});

describe('the trace', () => {
  it('runs from the closing to 40 degrees past top, in steps of half a degree or less, from station pressure', () => {
    const { angle, pressure } = traced(cylinder).trace;
    expect(angle[0]).toBeCloseTo(-119 * deg, 12);
    expect(angle.at(-1)).toBeCloseTo(40 * deg, 12);
    expect(pressure).toHaveLength(angle.length);
    expect(pressure[0]! / cylinder.stationPressure).toBeCloseTo(1, 12);
    angle.forEach((a, i) => i > 0 && expect(a - angle[i - 1]!).toBeLessThan(0.5000001 * deg));
  });

  it('peaks shortly before top dead center, as heat and air are being lost there', () => {
    const { angle, pressure } = traced(cylinder).trace;
    const at = angle[pressure.indexOf(Math.max(...pressure))]!;
    expect(at).toBeLessThan(0);
    expect(at).toBeGreaterThan(-4 * deg);
  });

  it('is announced in rising shares, one about every 5 degrees', () => {
    const { shares } = traced(cylinder);
    expect(shares.length).toBeGreaterThan(28);
    expect(shares.length).toBeLessThan(35);
    expect(shares).toEqual(shares.toSorted((a, b) => a - b));
    expect(shares.every((share) => share > 0 && share < 1)).toBe(true);
  });
});

describe('motoredCompression refuses', () => {
  it.each([
    [{ bore: 0 }, 'The bore must be greater than zero.'],
    [{ clearance: -1e-6 }, 'No volume is left above the piston at top dead center.'],
    [{ closing: Math.PI }, 'The intake must close within 180 degrees of bottom dead center.'],
    [{ stationPressure: 0 }, 'The pressure of the air outside must be greater than zero.'],
    [{ speed: 0 }, 'The starter must turn the crankshaft.'],
    [{ airTemperature: 20 }, 'The temperatures of air and walls must lie between 200 and 1000 K.'],
    [{ wallTemperature: NaN }, 'The temperatures of air and walls must lie between 200 and 1000 K.'],
    [{ leakArea: -1e-7 }, 'The area past the rings cannot be negative.'],
    [{ leakArea: 1e-2 }, 'The rings leak so much at this speed that no pressure would build.'],
  ])('%o', (change, sentence) => {
    const run = motoredCompression({ ...cylinder, ...change });
    expect(() => run.next()).toThrow(new RangeError(sentence));
  });
});
