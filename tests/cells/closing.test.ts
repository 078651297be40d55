import { describe, expect, it } from 'vitest';
import type { Pure } from '../../src/graph/cell.ts';
import type { Curve } from '../../src/graph/kind.ts';
import { atClosing } from '../../src/physics/cycle/at-closing.ts';
import type { CycleRecord } from '../../src/physics/cycle/record.ts';
import { byStroke } from '../../src/plots/cycle-record.ts';
import { foundWaves } from '../../src/plots/found-waves.ts';
import { fieldOf, type PressureField } from '../../src/plots/pressure-map.ts';
import * as u from '../../src/units/unit.ts';
import { cellOf, figureOf, inputOf, opened, scenario, valueOf } from '../notebook/notebooks.ts';

const degree = u.si(1, u.degree);
const rpm = u.si(1, u.revolutionsPerMinute);
const angle = Float64Array.from({ length: 361 }, (_, i) => (2 * i - 180) * degree);

/** A valve that opens and shuts in straight lines, degrees from firing top, its largest area halfway. */
function triangle(opens: number, shuts: number): Float64Array {
  const half = (shuts - opens) / 2;
  return angle.map((a) => {
    const turned = (a / degree + 720) % 720;
    return Math.max(0, 1 - Math.abs(turned - opens - half) / half) * 1e-3;
  });
}

describe('where the intake shuts', () => {
  it.each([
    // A tenth of a straight flank of 130 degrees is 13 of them: at 586 degrees 14 are left, at 588 twelve.
    [340, 600, 586 - 720],
    [340, 500, 490], // 8 of 80: at 492 it is just that tenth, and no more
  ])('opened at %i and shut at %i degrees it is the last mark with more than a tenth left', (opens, shuts, at) => {
    const found = atClosing({ angle, intakeArea: triangle(opens, shuts) });
    expect(angle[found!]! / degree).toBeCloseTo(at, 9);
  });
  it('is nowhere where it never opens, and then there is no pressure', () => {
    expect(atClosing({ angle, intakeArea: new Float64Array(361) })).toBeNull();
    const cell = cellOf('closingPressure') as Pure;
    const cycleRecord = { angle, intakeArea: new Float64Array(361) };
    expect(() => cell.compute({ cycleRecord } as never)).toThrow('The intake valve never opens.');
  });
});

describe('an engine at 2500 rpm', () => {
  const store = opened(scenario('two-cams'), 'late', []);
  const set = (id: string, value: number): void => store.set([[inputOf(id), value]], { what: id });
  for (const [id, speed] of [
    ['engineSpeed', 2500],
    ['curveFrom', 2500],
    ['curveTo', 5500],
    ['curveStep', 3000],
  ] as const)
    set(id, speed * rpm);
  store.watch(['cycleRecord', 'closingPressure', 'backflowCurve'].map(cellOf), () => {});
  const record = valueOf(store, 'cycleRecord') as CycleRecord;
  const { y: back } = valueOf(store, 'backflowCurve') as Curve;

  it('has the pressure at the closing that the picture of the waves writes beside its dot', () => {
    const { order, angles } = byStroke(record.angle);
    const fields = [record.runner, record.primary].map((pipe) =>
      fieldOf(pipe, order, angles, (p) => p - record.outside),
    ) as [PressureField, PressureField];
    const { closing } = foundWaves(record, order, fields, 2500 * rpm, 1000);
    expect(figureOf(store, 'closingPressure')).toBeCloseTo(closing!.pressure, 6);
  });
  it('pushes back what its record shows going the wrong way, as a share of what came in', () => {
    const flow = record.intakeFlow.slice(1);
    const sum = (sign: 1 | -1): number => flow.reduce((total, q) => total + Math.max(0, sign * q), 0);
    expect(back[0]! / (sum(-1) / sum(1))).toBeGreaterThan(0.95); // every second degree is not every step
    expect(back[0]! / (sum(-1) / sum(1))).toBeLessThan(1.05);
  });
  it('pushes more back than at 5500: a late closing gives the piston time to (Heywood, sec. 6.2, from memory)', () =>
    expect(back[0]!).toBeGreaterThan(2 * back[1]!));
});
