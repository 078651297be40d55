import { describe, expect, it } from 'vitest';
import type { Pure } from '../../src/graph/cell.ts';
import type { Curve } from '../../src/graph/kind.ts';
import type { CycleRecord } from '../../src/physics/cycle/record.ts';
import { say, type Phrase } from '../../src/units/phrase.ts';
import * as u from '../../src/units/unit.ts';
import { cellOf, figureOf, inputOf, opened, scenario, valueOf } from '../notebook/notebooks.ts';
import { read, rough } from './roughly.ts';

const degree = u.si(1, u.degree);
const rpm = u.si(1, u.revolutionsPerMinute);

describe('one cycle at the engine speed', () => {
  const store = opened(scenario('edge-of-premium'), undefined, []);
  store.set([[inputOf('engineSpeed'), 4500 * rpm]], { what: 'speed' });
  store.watch(
    ['cycleRecord', 'cylinderLoop', 'volumetricEfficiencyAtSpeed', 'fuelFlowAtSpeed', 'insideSays'].map(cellOf),
    () => {},
  );
  const record = valueOf(store, 'cycleRecord') as CycleRecord;

  it('is recorded every second degree, with the pressure of the loop', () => {
    const loop = valueOf(store, 'cylinderLoop') as { readonly pressure: readonly number[] };
    expect(record.angle).toBeInstanceOf(Float64Array);
    expect(record.angle.length).toBe(361);
    record.angle.forEach((angle, i) => {
      expect(angle / degree).toBeCloseTo(2 * i - 180, 9);
      expect(Math.abs(record.cylinderPressure[i]! / loop.pressure[2 * i]! - 1)).toBeLessThan(0.02);
    });
    expect(record.outside).toBe(figureOf(store, 'stationPressure'));
    for (const pipe of [record.runner, record.primary]) expect(pipe.pressure.length).toBe(361 * pipe.place.length);
  });
  it('draws in the air that the filling says, and the fuel that goes with it', () => {
    // Over one cycle: the flow through the intake valve is the charge of one cylinder, air, fuel vapor and water.
    const seconds = (4 * Math.PI) / (4500 * rpm) / 360;
    const drawn = record.intakeFlow.slice(0, 360).reduce((sum, flow) => sum + flow * seconds, 0);
    const [swept, density] = ['sweptVolume', 'airDensity'].map((id) => figureOf(store, id)) as [number, number];
    const air = figureOf(store, 'volumetricEfficiencyAtSpeed') * swept * density;
    expect(drawn / air).toBeGreaterThan(1.0); // with its fuel: up to one part in twelve more
    expect(drawn / air).toBeLessThan(1.12);
  });
  it('says itself in one line', () =>
    expect(say(valueOf(store, 'insideSays') as Phrase, 'us')).toMatch(
      /^At 4500 rpm the cylinder is \d+\.\d % full, \d+\.\d % of its charge is burnt gas, and the engine gives \d+ lbf ft\.$/,
    ));
  it('is not kept of a first look', () => {
    const cell = cellOf('cycleRecord') as Pure;
    expect(() => cell.compute({ engineAtSpeed: { record: null } } as never)).toThrow(/first look/);
    const live = rough({});
    live.look([cellOf('cycleRecord')]);
    live.run();
    expect(live.state(cellOf('cycleRecord')).is).toBe('fault');
  });
});

describe('what the flame meets', () => {
  const few = { curveFrom: 1500 * rpm, curveTo: 4500 * rpm, curveStep: 1500 * rpm };
  const ids = ['burnAngleCurve', 'trappedTemperatureCurve', 'residualCurve'] as const;
  const at = (given: Readonly<Record<string, unknown>>): [Curve, Curve, Curve] =>
    read(rough({ ...few, ...given }), ...ids) as [Curve, Curve, Curve];
  it('takes longer to burn half with more burnt gas left, and is warm by then', () => {
    const [tight, wide] = [at({ lobeSeparation: 114 * degree }), at({ lobeSeparation: 104 * degree })];
    const [low] = [0];
    expect(wide[2].y[low]).toBeGreaterThan(tight[2].y[low]! + 0.01);
    expect(wide[0].y[low]).toBeGreaterThan(tight[0].y[low]!);
    for (const { y } of [tight[0], wide[0]])
      for (const angle of y) {
        expect(angle / degree).toBeGreaterThan(20); // common practice: spark to half burned, 25 to 50 degrees
        expect(angle / degree).toBeLessThan(60);
      }
    const outside = u.si(85, u.fahrenheit);
    for (const kelvin of wide[1].y) {
      expect(kelvin).toBeGreaterThan(outside + 20);
      expect(kelvin).toBeLessThan(outside + 200);
    }
  });
  it('a speed where nothing burned by half is left out', () => {
    const cell = cellOf('burnAngleCurve') as Pure<Curve>;
    const rows = [
      { speed: 100, spark: 0.3, halfBurned: null },
      { speed: 200, spark: 0.4, halfBurned: 0.15 },
    ];
    const { x, y } = cell.compute({ engineBySpeed: { rows } } as never);
    expect([[...x], [...y]]).toEqual([[200], [expect.closeTo(0.55, 12)]]);
  });
});
