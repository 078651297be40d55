import { describe, expect, it } from 'vitest';
import { benchArea, benchFlow, squareRootFactor, usualDepression } from '../../../src/physics/flow/bench.ts';
import { openArea, portFromBench, portFromValve } from '../../../src/physics/flow/port.ts';
import { curtainArea } from '../../../src/physics/flow/valve-area.ts';
import * as u from '../../../src/units/unit.ts';

const inch = u.si(1, u.inch);
const cfm = u.si(1, u.cubicFeetPerMinute);
const water = u.si(1, u.inchOfWater);

describe('a flow bench', () => {
  it('at 28 inches of water passes 140.39 cfm through each square inch of a perfect opening', () => {
    // Heywood, 1988, eq. C.8, in standard air; without thinning out it would be 145.87.
    expect(benchArea(140.39 * cfm, 28 * water) / inch ** 2).toBeCloseTo(1, 4);
    expect(usualDepression).toBeCloseTo(28 * water, 9);
  });
  it('at 10 inches of water finds less gain to 28 than the square root rule, by 2 to 3 %', () => {
    const gain = benchFlow(1, 28 * water) / benchFlow(1, 10 * water);
    const rule = squareRootFactor(10 * water, 28 * water);
    expect(1 - gain / rule).toBeGreaterThan(0.02);
    expect(1 - gain / rule).toBeLessThan(0.03);
  });
});

describe('a port', () => {
  const rows = [0.1, 0.2, 0.3].map((lift, i) => [lift * inch, [60, 120, 150][i]! * cfm]);
  const port = portFromBench(rows, 28 * water);
  const flowAt = (lift: number): number => benchFlow(openArea(port, lift * inch), 28 * water) / cfm;

  it('passes what the bench found, row by row, and between rows what lies between', () => {
    expect([0.1, 0.2, 0.3].map(flowAt)).toEqual([60, 120, 150].map((flow) => expect.closeTo(flow, 9)));
    expect(flowAt(0.25)).toBeCloseTo(135, 9);
  });
  it('passes nothing when shut, a straight share below the first row, and no more beyond the last', () => {
    expect(flowAt(0)).toBe(0);
    expect(flowAt(0.05)).toBeCloseTo(30, 9);
    expect(flowAt(0.6)).toBeCloseTo(150, 9);
  });
  it('is the same with a row for the valve shut', () =>
    expect(portFromBench([[0, 0], ...rows], 28 * water)).toEqual(port));

  it.each([
    ['too few rows', [[0.1, 60]], /at least two rows/],
    [
      'no row but the shut valve and one',
      [
        [0, 0],
        [0.1, 60],
      ],
      /at least two rows/,
    ],
    ['no rows', [], /at least two rows/],
    [
      'no flow at all',
      [
        [0.1, 0],
        [0.2, 0],
      ],
      /Nothing flows/,
    ],
    [
      'a lift below zero',
      [
        [-0.1, 60],
        [0.2, 100],
      ],
      /^Row 1 of the flow table has a lift below zero/,
    ],
    [
      'a flow below zero',
      [
        [0.1, 60],
        [0.2, -100],
      ],
      /^Row 2 of the flow table has a flow below zero/,
    ],
    [
      'flow with the valve shut',
      [
        [0, 5],
        [0.1, 60],
        [0.2, 100],
      ],
      /^Row 1 of the flow table flows with the valve shut/,
    ],
    [
      'a lift twice',
      [
        [0.1, 60],
        [0.2, 100],
        [0.2, 120],
      ],
      /^Rows 2 and 3 of the flow table stand at the same lift/,
    ],
    [
      'rows out of order',
      [
        [0.1, 60],
        [0.3, 100],
        [0.2, 120],
      ],
      /^Row 3 of the flow table lifts less than row 2/,
    ],
    [
      'no figure',
      [
        [0.1, 60],
        [NaN, 100],
      ],
      /^Row 2 of the flow table has a lift below zero/,
    ],
  ])('%s: a sentence that says which row', (_, wrong, said) => {
    expect(() => portFromBench(wrong, 28 * water)).toThrow(said);
    expect(() => portFromBench(wrong, 28 * water)).toThrow(RangeError);
  });
  it('may pass less at a higher lift: ports do, when the flow breaks away', () => {
    const back = portFromBench(
      [
        [0.1, 60],
        [0.2, 120],
        [0.3, 110],
      ].map(([l, f]) => [l! * inch, f! * cfm]),
      28 * water,
    );
    expect(openArea(back, 0.3 * inch)).toBeLessThan(openArea(back, 0.2 * inch));
  });
});

describe('a port no bench has seen', () => {
  it('passes the more the more the valve lifts, up to two fifths of its diameter', () => {
    const port = portFromValve(2 * inch);
    const areas = Array.from({ length: 81 }, (_, i) => openArea(port, 0.01 * i * inch));
    areas.forEach((area, i) => i > 0 && expect(area).toBeGreaterThan(areas[i - 1]!));
    expect(openArea(port, 1.2 * inch)).toBe(areas.at(-1));
  });
  it('keeps its coefficient when everything is made larger', () => {
    const at = (diameter: number): number =>
      openArea(portFromValve(diameter), 0.22 * diameter) / curtainArea(diameter, 0.22 * diameter);
    expect(at(0.06)).toBeCloseTo(at(0.03), 12);
  });
});
