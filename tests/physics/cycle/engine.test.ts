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

  it('has the same fields, in the same order, whatever it is', () => {
    for (const spark of ['best', { heldTo: 91 }] as const)
      expect(Object.keys(cycleEngine({ ...input, spark, planes: 2, trim: 'street' }))).toEqual(Object.keys(engine));
  });

  it('has valves that flow as much more as they are said to, at the same angles', () => {
    const more = cycleEngine({ ...input, flowFactor: 1.05 });
    expect(more.intakeArea[600]! / engine.intakeArea[600]!).toBeCloseTo(1.05, 12);
    expect(more.exhaustArea[420]! / engine.exhaustArea[420]!).toBeCloseTo(1.05, 12);
    expect(more.intakeCloses).toBe(engine.intakeCloses);
  });

  it('has an octane number to hold its spark to only where it is told one', () => {
    expect(cycleEngine({ ...input, spark: { heldTo: 91 } }).heldTo).toBe(91);
    for (const spark of ['best', input.spark] as const) expect(cycleEngine({ ...input, spark }).heldTo).toBe(Infinity);
  });
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
    [{ spark: { heldTo: 30 } }, 'The octane number of the fuel must lie between 40 and 150.'],
    [{ spark: { heldTo: Number.NaN } }, 'The octane number of the fuel must lie between 40 and 150.'],
    [{ flowFactor: 0 }, 'The valves must flow between half and twice as much as said.'],
    [{ frictionFactor: -1 }, 'The friction must lie between 0 and 5 times the usual.'],
    [{ wallHeatFactor: 8 }, 'The heat to the walls must lie between 0 and 5 times the usual.'],
    [{ burnCompleteness: 1.1 }, 'Between three tenths and all of the charge must burn.'],
    [{ bankBlend: 2 }, 'The share of an even bank must lie between 0 and 1.'],
  ];
  for (const [wrong, sentence] of cases)
    it(sentence, () => expect(() => cycleEngine({ ...input, ...wrong })).toThrow(new RangeError(sentence)));
});
