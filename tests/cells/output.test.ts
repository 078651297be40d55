import { describe, expect, it } from 'vitest';
import type { Cell, Slow } from '../../src/graph/cell.ts';
import type { Curve } from '../../src/graph/kind.ts';
import { Live } from '../../src/graph/live.ts';
import { peakOf } from '../../src/numerics/peak.ts';
import type { EngineInput } from '../../src/physics/cycle/engine-input.ts';
import type { Store } from '../../src/notebook/store.ts';
import { say } from '../../src/units/phrase.ts';
import * as u from '../../src/units/unit.ts';
import { Pool } from '../../src/workers/pool.ts';
import { columnOf, type BySpeed, type SpeedRow } from '../../cells/output/rows.ts';
import { catalogue, cellOf, figureOf, inputOf, opened, scenario, valueOf } from '../notebook/notebooks.ts';
import { InProcessPort, until } from '../workers/in-process-port.ts';

const inch = u.si(1, u.inch);
const rpm = u.si(1, u.revolutionsPerMinute);
const degree = u.si(1, u.degree);
const poundFoot = u.si(1, u.poundFoot);
const horsepower = u.si(1, u.horsepower);

const curveCell = cellOf('engineBySpeed') as Slow<BySpeed>;
/** The curve's first look, quick enough for a test, of what stands in a store. */
function looked(store: Store, from = 1500, to = 5500, step = 2000): readonly SpeedRow[] {
  const given = Object.fromEntries(
    Object.entries(curveCell.from).map(([name, cell]) => [name, valueOf(store, cell.id)]),
  );
  const speeds = { curveFrom: from * rpm, curveTo: to * rpm, curveStep: step * rpm };
  return curveCell.rough!({ ...given, ...speeds } as never).rows;
}
const engine = (figures: Readonly<Record<string, unknown>> = {}, name = 'edge-of-premium', variant?: string): Store => {
  const store = opened(scenario(name), variant);
  for (const [id, value] of Object.entries(figures)) store.set([[inputOf(id), value]], { what: id });
  return store;
};
const torques = (store: Store): number[] => looked(store).map((row) => row.torque);

describe('what the cycle is told', () => {
  const input = (figures?: Parameters<typeof engine>[0]): EngineInput =>
    valueOf(engine(figures), 'cycleInput') as EngineInput;
  it('is the bench’s area at the valve’s lift, at each crank degree, and none while a valve is shut', () => {
    const { intakeArea, exhaustArea } = input();
    expect(intakeArea.length).toBe(722);
    // 227.1 cfm at 28 inches of water: FLO-18's 140.4 cfm to the square inch of perfect opening.
    const full = (figureOf(engine(), 'intakeFlow28') / u.si(1, u.cubicFeetPerMinute) / 140.393) * inch ** 2;
    expect(Math.max(...intakeArea) / full).toBeCloseTo(1, 3);
    expect(intakeArea[180]).toBe(0); // firing top
    expect(intakeArea[540 + 106]).toBe(Math.max(...intakeArea)); // its centerline after the other top
    expect(exhaustArea[540 - 114]).toBe(Math.max(...exhaustArea));
    expect(intakeArea[540]! > 0 && exhaustArea[540]! > 0).toBe(true); // overlap
  });
  it('is a spark that one figure stands for, a table’s rows, or none for the best', () => {
    expect(input().spark).toEqual([
      { speed: expect.closeTo(800 * rpm, 9), advance: expect.closeTo(14 * degree, 9) },
      { speed: expect.closeTo(2800 * rpm, 9), advance: expect.closeTo(34 * degree, 9) },
    ]);
    const rows = [
      [1000 * rpm, 10 * degree],
      [3000 * rpm, 32 * degree],
    ];
    expect(input({ sparkEntry: 'table', sparkAdvance: rows }).spark).toEqual(
      rows.map(([speed, advance]) => ({ speed, advance })),
    );
    expect(input({ sparkEntry: 'best' }).spark).toBe('best');
  });
  it.each([
    [{ sparkEntry: 'table' }, 'sparkAdvance', 'Paste the spark table: engine speed and advance.'],
    [
      {
        sparkEntry: 'table',
        sparkAdvance: [
          [300, 0.5],
          [200, 0.6],
        ],
      },
      'sparkAdvance',
      'Row 2 of the spark table is not faster',
    ],
    [{ cylinders: 5, manifoldType: 'dual' }, null, null],
    [{ runnerLength: 0.013 }, null, null],
    [{ plenumVolume: 1.7e-5 }, 'cycleInput', 'Each plenum must hold between'],
  ] as const)('refuses in a sentence what cannot be: %j', (figures, about, words) => {
    const state = engine(figures).state(cellOf('cycleInput'));
    if (words === null) expect(state.is).toBe('ready');
    else {
      expect(state).toMatchObject({ is: 'fault', fault: { about } });
      expect(state.is === 'fault' && say(state.fault.message, 'us')).toContain(words);
    }
  });
  it('misses no spark field that is not asked for', () => {
    const store = engine({ sparkEntry: 'best' });
    store.draft(inputOf('totalSpark'), 'Write an angle.');
    expect(store.state(cellOf('cycleInput')).is).toBe('ready');
  });
});

describe('the curve', () => {
  it('is power = torque × speed, and a mean pressure that is torque over the displacement', () => {
    const store = engine();
    for (const row of looked(store)) {
      expect(row.power / (row.torque * row.speed)).toBeCloseTo(1, 12);
      expect((row.brakePressure * figureOf(store, 'displacement')) / (4 * Math.PI * row.torque)).toBeCloseTo(1, 12);
    }
  });
  // Of an independent program over the same equations, which weighs a cross-plane bank otherwise: lbf ft, rpm, hp, rpm.
  it.each([
    ['edge-of-premium', undefined, 375, 4750, 375, 5750],
    ['two-cams', 'early', 390, 4250, 365, 5500],
    ['two-cams', 'late', 380, 5250, 418, 6750],
  ] as const)('of %s %s peaks where another program over the same equations has it', (name, variant, t, ts, p, ps) => {
    const rows = looked(engine({}, name, variant), 3000, 7500, 500);
    const peak = (pick: (row: SpeedRow) => number): { readonly x: number; readonly y: number } => {
      const { x, y }: Curve = columnOf({ rows }, pick);
      return peakOf(x, y)!;
    };
    const [torque, power] = [peak((r) => r.torque), peak((r) => r.power)];
    expect(Math.abs(torque.y / poundFoot / t - 1)).toBeLessThan(0.03);
    expect(Math.abs(power.y / horsepower / p - 1)).toBeLessThan(0.03);
    expect(Math.abs(torque.x / rpm - ts)).toBeLessThan(350);
    expect(Math.abs(power.x / rpm - ps)).toBeLessThan(350);
    expect(rows.every((row) => row.settled)).toBe(true);
  });
  it('trades low speed for high speed with a later cam, as every builder finds', () => {
    const [early, late] = ['early', 'late'].map((v) => looked(engine({}, 'two-cams', v), 2500, 6500, 4000)) as [
      readonly SpeedRow[],
      readonly SpeedRow[],
    ];
    expect(early[0]!.torque).toBeGreaterThan(late[0]!.torque * 1.05);
    expect(late[1]!.torque).toBeGreaterThan(early[1]!.torque * 1.05);
  });
  it('feels rocker, carburetor, exhaust, mixture and air the right way', () => {
    const base = torques(engine());
    const top = (figures: Readonly<Record<string, unknown>>): number => torques(engine(figures))[2]! / base[2]! - 1;
    expect(top({ rockerRatio: 1.7 })).toBeGreaterThan(0.002);
    expect(top({ carburetorFlow: 400 * u.si(1, u.cubicFeetPerMinute) })).toBeLessThan(-0.03);
    expect(top({ trim: 'street' })).toBeLessThan(-0.04);
    expect(top({ equivalenceRatio: 0.85 })).toBeLessThan(-0.05);
    expect(top({ barometer: 24.9 * u.si(1, u.inchOfMercury) })).toBeLessThan(-0.12);
    expect(top({ airTemperature: u.si(110, u.fahrenheit) })).toBeLessThan(-0.02);
  });
  it('gives less with more pressure behind the muffler', () => {
    const street = (psi: number): number =>
      torques(engine({ trim: 'street', exhaustBackPressure: psi * u.si(1, u.psi) }))[2]!;
    expect(street(6)).toBeLessThan(street(3) * 0.99);
  });
  it('with the best spark at each speed is nowhere under the one by one figure', () => {
    const [best, total] = [torques(engine({ sparkEntry: 'best' })), torques(engine())];
    best.forEach((t, i) => expect(t).toBeGreaterThan(total[i]! * 0.998));
  });
});

describe('worked out by workers', () => {
  const few = { curveFrom: 2500 * rpm, curveTo: 4500 * rpm, curveStep: 2000 * rpm };
  const read: readonly Cell[] = [cellOf('torqueCurve'), cellOf('volumetricEfficiencyCurve')];
  const live = (pool: Pool): Live => {
    const store = engine(few);
    const mine = new Live(catalogue.cells.values(), { runner: pool });
    for (const cell of catalogue.cells.values()) if (cell.role === 'input') mine.set(cell, valueOf(store, cell.id));
    mine.hold(cellOf('deckClearance'), figureOf(store, 'deckClearance'));
    mine.look(read);
    return mine;
  };
  const pool = (): Pool => new Pool(() => new InProcessPort(catalogue.cells), 2);
  const ready = (mine: Live): Promise<void> =>
    until(() => read.every((c) => mine.state(c).is === 'ready'), 'what stays');
  const digits = (mine: Live): string =>
    JSON.stringify(read.map((c) => (mine.state(c) as unknown as { readonly value: Curve }).value));

  it('shows a first look, then what stays: near each other', async () => {
    const mine = live(pool());
    mine.run();
    await until(() => mine.state(read[0]!).is === 'coming', 'the first look');
    const first = (mine.state(read[0]!) as unknown as { readonly value: Curve }).value;
    await ready(mine);
    const last = (mine.state(read[0]!) as unknown as { readonly value: Curve }).value;
    expect(last.x).toEqual(first.x);
    last.y.forEach((t, i) => expect(Math.abs(first.y[i]! / t - 1)).toBeLessThan(0.025));
    mine.close();
  });

  it('comes to the same digits after ten histories', async () => {
    const fresh = live(pool());
    fresh.run();
    await ready(fresh);
    const expected = digits(fresh);
    fresh.close();
    const shared = pool();
    const moves = [
      ['bore', 0.1036],
      ['intakeCenterline', 104 * degree],
      ['runnerLength', 12 * inch],
      ['equivalenceRatio', 1.05],
      ['rockerRatio', 1.6],
    ] as const;
    for (let history = 0; history < 10; history++) {
      const mine = live(shared);
      for (let k = 0; k <= history % 3; k++) {
        const [id, value] = moves[(history + k) % moves.length]!;
        const before = (mine.state(inputOf(id)) as { readonly value: unknown }).value;
        mine.set(inputOf(id), value);
        mine.run();
        // Some are left to their end, some stopped midway.
        if ((history + k) % 2 === 0) await until(() => mine.state(read[0]!).is !== 'waiting', 'something');
        mine.set(inputOf(id), before);
        mine.run();
      }
      await ready(mine);
      expect(digits(mine), `history ${history}`).toBe(expected);
      mine.close();
    }
  });
});
