import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inletMachIndex, meanInletMach, meanOpenArea } from '../../../src/physics/flow/inlet-mach.ts';
import { runnerSpeed } from '../../../src/physics/flow/runner.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

it('the mean of a raised cosine is half its height', () => {
  const angles = Float64Array.from({ length: 361 }, (_, i) => (i * Math.PI) / 180);
  const areas = angles.map((a) => 1e-3 * (a < 4 ? Math.sin((Math.PI * a) / 4) ** 2 : 0));
  expect(meanOpenArea(angles, areas, 4)).toBeCloseTo(0.5e-3, 7);
});

describe('both inlet Mach numbers', () => {
  const engine = fc.record({
    bore: between(0.06, 0.11),
    stroke: between(0.06, 0.11),
    valveDiameter: between(0.025, 0.055),
    flowCoefficient: between(0.2, 0.5),
    speed: between(50, 900), // rad/s
    duration: between(Math.PI, 5.5),
    ve: between(0.5, 1.1),
  });
  const sound = 343;

  it('count a volume through an area in a time: half a turn for Z, the opening for the mean', () => {
    fc.assert(
      fc.property(engine, ({ bore, stroke, valveDiameter, flowCoefficient, speed, duration, ve }) => {
        const swept = (Math.PI / 4) * bore ** 2 * stroke;
        const area = flowCoefficient * (Math.PI / 4) * valveDiameter ** 2;
        const through = (volume: number, turned: number): number => volume / area / (turned / speed) / sound;
        const index = inletMachIndex({
          bore,
          valveDiameter,
          flowCoefficient,
          meanPistonSpeed: (stroke * speed) / Math.PI,
          soundSpeed: sound,
        });
        expect(index / through(swept, Math.PI)).toBeCloseTo(1, 12);
        expect(meanInletMach(index, duration, ve) / through(ve * swept, duration)).toBeCloseTo(1, 12);
      }),
      { seed: 20260803, numRuns: 200 },
    );
  });
});

it('the air in a runner half as wide as the bore runs four times as fast as the piston', () =>
  expect(runnerSpeed(0.1, 0.05, 16)).toBeCloseTo(64, 12));
