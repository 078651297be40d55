import { describe, expect, it } from 'vitest';
import { cycleEngine } from '../../../src/physics/cycle/engine.ts';
import type { EngineInput } from '../../../src/physics/cycle/engine-input.ts';
import { areaEntries, openingOf } from '../../../src/physics/cycle/openings.ts';
import { rpm, streetEight, built } from './street-engines.ts';

const input = built(streetEight);

describe('an engine made ready', () => {
  const engine = cycleEngine(input);

  it('closes its intake and opens its exhaust where the tables say', () => {
    // Seat timing at 0.006 in is 61 after bottom and 73 before it; the test's lobe has a tail below that lift.
    expect(engine.intakeCloses).toBeGreaterThan(-119);
    expect(engine.intakeCloses).toBeLessThan(-95);
    expect(engine.exhaustOpens).toBeLessThan(107);
    expect(engine.exhaustOpens).toBeGreaterThan(83);
  });

  it('has the clearance its ratio asks for', () =>
    expect((engine.swept + engine.clearance) / engine.clearance).toBeCloseTo(9.54, 12));

  it('feeds fuel in the ratio of the mixture', () => {
    // 12 x 8.26 and 1.008 x 15.5 to one mole of fuel, 8.26 + 15.5 / 4 of oxygen at 4.773 moles of air of 28.96 each
    const air = (8.26 + 15.5 / 4) * 4.773 * 28.96;
    const fuel = 8.26 * 12.011 + 15.5 * 1.008;
    expect(engine.gas.fuelRatio).toBeCloseTo((1.15 * fuel) / air, 3);
  });

  it('has a runner gas near air with some vapor, and a thinner, hotter one in the exhaust', () => {
    expect(engine.charge.gamma).toBeGreaterThan(1.34);
    expect(engine.charge.gamma).toBeLessThan(1.4);
    expect(engine.charge.R).toBeLessThan(287); // fuel vapor is heavy
    expect(engine.exhaustGamma).toBeGreaterThan(1.25);
    expect(engine.exhaustGamma).toBeLessThan(1.32);
  });

  it('has half the manifold to a plane with two planes', () => {
    const split = cycleEngine({ ...input, planes: 2 });
    expect(split.plenumVolume).toBeCloseTo(engine.plenumVolume / 2, 12);
    expect(split.inletArea).toBeCloseTo(engine.inletArea / 2, 12);
    expect(split.intakePhases.map((phase) => phase.delay)).toEqual([180, 360, 540]);
  });

  it('for the street has an exhaust that takes 25 kPa at rated flow, by the formula of the incompressible orifice', () => {
    const street = cycleEngine({ ...input, trim: 'street' });
    const flow = street.swept * 4 * (5500 / 120) * 1.18 * 0.88 * 1.075; // kg/s a collector
    const density = (101_325 + 12_500) / (297 * 1000);
    expect((flow / street.outletArea) ** 2 / (2 * density)).toBeCloseTo(25e3, 0);
    expect(street.outletArea).toBeLessThan(engine.outletArea);
  });

  it('has the same fields, in the same order, whatever it is', () =>
    expect(Object.keys(cycleEngine({ ...input, spark: 'best', planes: 2, trim: 'street' }))).toEqual(
      Object.keys(engine),
    ));
});

describe('an opening', () => {
  it('that goes around the end of the table is found', () => {
    const area = Float64Array.from({ length: areaEntries }, (_, i) => (i % 720 < 30 || i % 720 >= 700 ? 1e-4 : 0));
    expect(openingOf(area, 'intake')).toEqual({ opens: 520, closes: -150 });
  });
});

describe('what cannot be is refused with a sentence', () => {
  const flat = new Float64Array(areaEntries);
  const cases: readonly (readonly [Partial<EngineInput>, string])[] = [
    [{ cylinders: 0 }, 'The engine needs 1 to 16 cylinders.'],
    [{ cylinders: 2.5 }, 'The engine needs 1 to 16 cylinders.'],
    [{ bore: Number.NaN }, 'The bore must lie between 20 and 300 mm.'],
    [{ staticRatio: 1 }, 'The static ratio must lie between 2 and 30.'],
    [{ rod: 0.02 }, 'The rod must be longer than half the stroke plus the pin offset, or the crank cannot turn.'],
    [{ intakeArea: flat }, 'The intake valve must open and close once in two turns.'],
    [{ exhaustArea: flat.slice(1) }, "The exhaust valve's area needs 722 entries."],
    [{ exhaustArea: flat.map(() => -1) }, 'An area of the exhaust valve is not a possible figure.'],
    [
      { intakeArea: flat.map((_, i) => input.intakeArea[(i + 620) % 720]!) },
      'Both valves must be closed around firing top dead center.',
    ],
    [{ inletArea: 0 }, 'The carburetor or throttle must let some air in.'],
    [
      { cylinders: 5, planes: 2, collectorCylinders: 5, crankLayout: 'even' },
      'Two planes need an even number of cylinders.',
    ],
    [{ runnerLength: 0 }, 'The intake runner must be between 10 mm and 5 m long.'],
    [{ primaryDiameter: 1 }, 'The exhaust primary must be 8 to 300 mm wide.'],
    [{ collectorCylinders: 3, crankLayout: 'even' }, 'The cylinders must divide evenly among the collectors.'],
    [{ collectorCylinders: 8 }, 'A cross-plane crank is known here only for eight cylinders on two collectors.'],
    [{ backPressure: -1 }, 'The exhaust must hold back between 0 and 200 kPa.'],
    [{ ratedSpeed: 10 * rpm }, 'The rated speed must lie between 50 and 2000 rad/s.'],
    [{ airPressure: 101 }, 'The pressure of the air must lie between 20 and 200 kPa.'],
    [{ airTemperature: 25 }, 'The air must be between 220 and 340 K.'],
    [{ equivalenceRatio: 14.7 }, 'The mixture must lie between half and twice the stoichiometric fuel.'],
    [{ vaporizedShare: 1.1 }, 'The share of vapor must lie between 0 and 1.'],
    [{ primaryWall: 100 }, 'A wall must be between 220 and 1300 K.'],
    [{ leakArea: 1 }, 'The way past the rings must lie between 0 and 20 mm2.'],
  ];
  for (const [wrong, sentence] of cases)
    it(sentence, () => expect(() => cycleEngine({ ...input, ...wrong })).toThrow(new RangeError(sentence)));
});
