import { describe, expect, it } from 'vitest';
import { cycleEngine } from '../../../src/physics/cycle/engine.ts';
import type { EngineInput } from '../../../src/physics/cycle/engine-input.ts';
import { EngineRun, type SpeedResult } from '../../../src/physics/cycle/speed.ts';
import { randomFrom } from '../valve/random.ts';
import { air, areas, built, degree, inch, mountainSix, rpm } from './street-engines.ts';

const count = process.env['SOAK'] ? 300 : 20;

/** Anything between a moped's single and a truck's twelve, much of it badly matched. */
function drawn(between: (min: number, max: number) => number): { readonly input: EngineInput; readonly speed: number } {
  const log = (min: number, max: number): number => min * (max / min) ** between(0, 1);
  const one = <T>(of: readonly T[]): T => of[Math.min(of.length - 1, Math.floor(between(0, of.length)))]!;
  const cylinders = one([1, 2, 3, 4, 5, 6, 8, 12]);
  const bore = between(60, 120) / 25.4;
  const stroke = bore * between(0.7, 1.3);
  const valve = (size: number, centerline: number) => {
    const diameter = bore * size;
    const seat = between(220, 320);
    const lobeLift = diameter * between(0.18, 0.32);
    return { diameter, lobeLift, rocker: 1, seat, at050: seat - between(38, 60), centerline, bench: null };
  };
  const collectorCylinders = cylinders > 4 && cylinders % 2 === 0 ? cylinders / 2 : cylinders;
  const runner = bore * between(0.25, 0.6);
  const primary = bore * between(0.25, 0.6);
  const input: EngineInput = {
    ...built({
      ...mountainSix,
      cylinders,
      bore,
      stroke,
      rod: stroke * between(1.4, 2.1),
      ratio: between(7, 14),
      runner: [log(2, 30), runner],
      primary: [log(3, 60), primary],
      carburetor: log(60, 1200),
      richness: between(0.8, 1.35),
      spark: between(5, 50),
    }),
    intakeArea: areas(valve(between(0.35, 0.5), between(96, 118)), 'intake'),
    exhaustArea: areas(valve(between(0.3, 0.42), between(100, 122)), 'exhaust'),
    pinOffset: between(-0.001, 0.001),
    isVee: collectorCylinders !== cylinders,
    collectorCylinders,
    crankLayout: cylinders === 8 && between(0, 1) < 0.5 ? 'crossPlane' : 'even',
    planes: cylinders % 2 === 0 && between(0, 1) < 0.4 ? 2 : 1,
    portDiameter: runner * inch * between(0.9, 1.1),
    plenumVolume: log(5, 600) * inch ** 3,
    collectorLength: log(4, 60) * inch,
    outletShare: log(0.2, 0.95),
    trim: between(0, 1) < 0.3 ? 'street' : 'bare',
    ...air(between(20, 31), between(-20, 120), between(0, 95)),
  };
  const chance = between(0, 1);
  const spark = chance < 0.25 ? { heldTo: between(75, 105) } : chance < 0.5 ? 'best' : input.spark;
  return { input: { ...input, spark }, speed: log(800, 8000) * rpm };
}

const numbers = (r: SpeedResult): readonly number[] => [
  ...Object.values(r).filter((value) => typeof value === 'number' && value !== Infinity),
  ...r.loop.pressure,
  ...r.sparks.flatMap((trial) => Object.values(trial)),
];

describe(`${count} engines drawn from a wide box`, () => {
  const between = randomFrom(5);
  const results = Array.from({ length: count }, () => {
    const { input, speed } = drawn(between);
    return new EngineRun(cycleEngine(input), 'coarse').at(speed);
  });

  it('come to figures, all of them', () =>
    expect(results.filter((r) => !numbers(r).every(Number.isFinite)).map((r) => r.speed)).toEqual([]));

  it('settle without anything held at a floor, but for one in twenty-five at most', () =>
    expect(results.filter((r) => !r.settled).length).toBeLessThanOrEqual(Math.ceil(count / 25)));

  it('breathe, burn and push within what gas can do', () => {
    for (const r of results) {
      expect(r.volumetricEfficiency).toBeGreaterThan(0.02);
      expect(r.volumetricEfficiency).toBeLessThan(1.5);
      expect(r.residual).toBeGreaterThan(0);
      expect(r.residual).toBeLessThan(0.75);
      expect(r.spark).toBeGreaterThan(-25 * degree);
      expect(Math.min(...r.loop.pressure)).toBeGreaterThan(5e3);
      expect(r.peakPressure).toBeLessThan(2e7);
    }
  });
});
