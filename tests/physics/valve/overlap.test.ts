import { describe, expect, it } from 'vitest';
import { durationAt, type Lobe, lobeLift } from '../../../src/physics/valve/lobe.ts';
import { lobeFromCard } from '../../../src/physics/valve/lobe-card.ts';
import { overlapAreas, overlapFactor, residualFraction } from '../../../src/physics/valve/overlap.ts';
import { Solver } from '../odex.ts';

const inch = 0.0254;
const deg = Math.PI / 180;
const lobeOf = (lift: number, seat: number, at050: number): Lobe =>
  lobeFromCard({
    lobeLift: lift * inch,
    seatLift: 0.006 * inch,
    seatDuration: seat * deg,
    duration050: at050 * deg,
  }) as Lobe;

describe('overlapAreas', () => {
  it('are those of two triangles, where the lifts are straight lines', () => {
    // Intake 0.1 m/rad from -0.2, exhaust the same slope down to 0.3: equal at 0.05, each triangle 0.25 wide.
    const areas = overlapAreas(
      (x) => 0.1 * (x + 0.2),
      (x) => 0.1 * (0.3 - x),
      -0.2,
      0.3,
    )!;
    expect(areas.equalAt).toBeCloseTo(0.05, 12);
    expect(areas.intake).toBeCloseTo((0.1 * 0.25 ** 2) / 2, 12);
    expect(areas.exhaust).toBeCloseTo((0.1 * 0.25 ** 2) / 2, 12);
  });

  it('are those an integration with ODEX of the lesser lift gives', () => {
    const [inlet, outlet] = [lobeOf(0.29, 256, 206), lobeOf(0.295, 262, 212)];
    const intake = (angle: number): number => 1.52 * lobeLift(inlet, angle - 108 * deg);
    const exhaust = (angle: number): number => 1.52 * lobeLift(outlet, angle + 116 * deg);
    const opens = 108 * deg - durationAt(inlet, 0) / 2;
    const closes = durationAt(outlet, 0) / 2 - 116 * deg;
    const areas = overlapAreas(intake, exhaust, opens, closes)!;
    const solver = new Solver(1);
    solver.absoluteTolerance = solver.relativeTolerance = 1e-11;
    const integrated = (f: (angle: number) => number, from: number, to: number): number =>
      solver.solve((angle) => [f(angle)], from, [0], to).y[0]!;
    expect(intake(areas.equalAt)).toBeCloseTo(exhaust(areas.equalAt), 12);
    expect(areas.intake / integrated(intake, opens, areas.equalAt)).toBeCloseTo(1, 5);
    expect(areas.exhaust / integrated(exhaust, areas.equalAt, closes)).toBeCloseTo(1, 5);

    // Usual engines have 0.1 to 3 degrees per meter (from memory, no source).
    const factor = overlapFactor(1.8 * inch, 1.4 * inch, areas, 754.7e-6) / deg;
    expect(factor).toBeGreaterThan(0.1);
    expect(factor).toBeLessThan(3);
  });

  it('are none where the intake opens after the exhaust has closed', () => {
    const [intake, exhaust] = [(x: number) => Math.max(0, x - 0.1), (x: number) => Math.max(0, -0.1 - x)];
    expect(overlapAreas(intake, exhaust, 0.1, -0.1)).toBeNull();
  });
});

describe('residualFraction', () => {
  const idle = {
    overlapFactor: 1.2 * deg,
    speed: 80,
    intakePressure: 45e3,
    exhaustPressure: 102e3,
    equivalenceRatio: 1,
    compressionRatio: 9.5,
  };

  it('falls with speed, with compression and with an opened throttle, and grows with overlap', () => {
    const at = (change: Partial<typeof idle>): number => residualFraction({ ...idle, ...change });
    expect(at({ speed: 300 })).toBeLessThan(at({}));
    expect(at({ compressionRatio: 12 })).toBeLessThan(at({}));
    expect(at({ intakePressure: 95e3 })).toBeLessThan(at({}));
    expect(at({ overlapFactor: 2 * deg })).toBeGreaterThan(at({}));
  });

  it('keeps only what the clearance volume holds when nothing drives a backflow', () =>
    expect(residualFraction({ ...idle, intakePressure: 102e3 })).toBeCloseTo(0.632 / 9.5, 12));
});
