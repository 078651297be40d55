import { describe, expect, it } from 'vitest';
import { crossings, leftBetween, spansWhere } from '../../src/plots/crossings.ts';
import type { DifferenceValues } from '../../src/plots/forms/difference.ts';
import type { OutputValues } from '../../src/plots/forms/output.ts';
import { drawn } from './drawn.ts';
import { type Element, elementsOf, wordsOf } from './markup.ts';
import { leftOf, scaleOf, spotsOf, under } from './places.ts';
import { isWell } from './well.ts';

const rpm = Math.PI / 30;
const widths = [280, 358, 479, 480, 720, 1400];
const speeds = Float64Array.from({ length: 12 }, (_, i) => (1000 + 500 * i) * rpm);
const flat = (value: number): Float64Array => speeds.map(() => value);
const torqueBand = { x: speeds, torque: flat(400), below: flat(60), above: flat(30) };

const output: OutputValues = {
  torqueCurve: { x: speeds, y: flat(400) },
  powerCurve: { x: speeds, y: speeds.map((s) => 400 * s) },
  unsettledSpeeds: { speeds: [] },
  peakTorque: 400,
  peakTorqueSpeed: speeds[0]!,
  peakPower: 400 * speeds[11]!,
  peakPowerSpeed: speeds[11]!,
};

describe('the band of torque and power', () => {
  const bands = (values: OutputValues): { spots: [number, number][][]; y: (value: number) => number } => {
    const elements = elementsOf(drawn('output', values, 700, 'si').body);
    return {
      spots: elements.filter((e) => e.attributes['fill-opacity'] === '.1').map((e) => spotsOf(e.attributes.d!)),
      y: scaleOf(elements, 'y', leftOf),
    };
  };
  it('is drawn well at any width', () => {
    for (const width of widths) isWell('output', { ...output, torqueBand }, width);
  });
  it('is the one given: 340 to 430 N m, and that times speed', () => {
    const { spots, y } = bands({ ...output, torqueBand });
    const [torque, power] = spots as [[number, number][], [number, number][]];
    expect(torque[0]![1]).toBeCloseTo(y(430), 0);
    expect(torque.at(-1)![1]).toBeCloseTo(y(340), 0);
    const kilowatts = (newtonMeters: number, speed: number): number => (newtonMeters * speed * rpm) / 1000;
    expect(power[0]![1]).toBeCloseTo(y(kilowatts(430, 1000)), 0);
    expect(power[11]![1]).toBeCloseTo(y(kilowatts(430, 6500)), 0);
    expect(power[12]![1]).toBeCloseTo(y(kilowatts(340, 6500)), 0); // and back along the lower edge
    expect(power.at(-1)![1]).toBeCloseTo(y(kilowatts(340, 1000)), 0);
  });
  it('is 12 % under 2000 rpm and 8 % from there on where none is given', () => {
    const { spots, y } = bands(output);
    expect(spots[0]![0]![1]).toBeCloseTo(y(448), 0);
    expect(spots[0]![2]![1]).toBeCloseTo(y(432), 0);
    expect(spots[0]!.at(-1)![1]).toBeCloseTo(y(352), 0);
  });
  it('stands in the table where one is given', () => {
    expect(drawn('output', { ...output, torqueBand }, 700, 'si').twin.rows[3]!.slice(1, 4)).toEqual([
      '400',
      '340',
      '430',
    ]);
    expect(drawn('output', output).twin.columns.length).toBe(3);
  });
});

/** A straight line through nothing at 4000 rpm, 1 N m each 50 rpm, sure to 10 N m either way. */
const straight = (more: Partial<DifferenceValues['differences']> = {}): DifferenceValues => ({
  first: { name: 'Early cam', torqueBand },
  second: { name: 'Late cam', torqueBand },
  differences: {
    x: speeds,
    difference: speeds.map((s) => (s / rpm - 4000) / 50),
    below: flat(10),
    above: flat(10),
    ...more,
  },
});

describe('the difference of two builds', () => {
  const sure = (elements: readonly Element[]): [number, number][] => {
    const clip = elements.findIndex((e) => e.name === 'clipPath');
    const end = elements.findIndex((e, i) => i > clip && e.name !== 'rect');
    return elements
      .slice(clip + 1, end)
      .map((e) => [Number(e.attributes.x), Number(e.attributes.x) + Number(e.attributes.width)]);
  };
  it('is drawn well at any width', () => {
    for (const width of widths) isWell('difference', straight(), width);
  });
  it('is even where the straight line goes through nothing, between two speeds that were computed', () => {
    const shifted = straight({ difference: speeds.map((s) => (s / rpm - 4270) / 50) });
    const elements = isWell('difference', shifted);
    const x = scaleOf(elements, 'x', (e) => under(e) && Number(e.text) >= 1000);
    const mark = elements.find((e) => e.name === 'circle')!;
    expect(Number(mark.attributes.cx)).toBeCloseTo(x(4270), 0);
    expect(elements.map((e) => e.text)).toContain('4270 rpm');
    expect(drawn('difference', shifted).label).toContain('Even at 4270 rpm.');
  });
  it('is thin where its band holds zero: within ten newton meters, so 3500 to 4500 rpm', () => {
    const elements = isWell('difference', straight());
    const x = scaleOf(elements, 'x', (e) => under(e) && Number(e.text) >= 1000);
    const [early, late] = sure(elements) as [[number, number], [number, number]];
    expect(sure(elements).length).toBe(2);
    expect(early[1]).toBeCloseTo(x(3500), 0);
    expect(late[0]).toBeCloseTo(x(4500), 0);
    expect(elements.map((e) => e.text)).toContain('too close to tell');
  });
  it('is nowhere thin, and never even, where one build is always well ahead', () => {
    const ahead = straight({ difference: flat(25) });
    const words = wordsOf(drawn('difference', ahead).body);
    expect(words).not.toContain('too close to tell');
    expect(drawn('difference', ahead).label).toContain('Never even.');
    expect(sure(isWell('difference', ahead)).length).toBe(1);
  });
  it('names who is ahead in either half', () => {
    const elements = isWell('difference', straight());
    const place = (name: string): number => Number(elements.find((e) => e.text === `${name} ahead`)!.attributes.y);
    expect(place('Late cam')).toBeLessThan(place('Early cam'));
    const { label } = drawn('difference', straight());
    expect(label).toContain('44 lbf ft at 1000 rpm, where Early cam is ahead'); // 60 N m
  });
  it('says in its table what is taken from what, with both ends', () => {
    const { rows, columns } = drawn('difference', straight(), 700, 'si').twin;
    expect(columns.slice(1, 4)).toEqual(['Early cam', 'Late cam', 'Difference, N m']);
    expect(rows[0]).toEqual(['1000', '400', '400', '−60', '−70', '−50']);
    expect(rows[6]).toEqual(['4000, too close to tell', '400', '400', '0', '−10', '10']);
  });
  it('escapes names', () => {
    const odd = { ...straight(), first: { name: '<b>&"', torqueBand } };
    expect(wordsOf(drawn('difference', odd).body)).toContain('<b>&" ahead');
  });
});

describe('crossings of zero', () => {
  it('are where straight pieces go through it, touching left out', () => {
    expect(crossings([0, 1, 2, 4], [-1, 1, 3, -1])).toEqual([0.5, 3.5]);
    expect(crossings([0, 1, 2], [-1, 0, 1])).toEqual([1]);
    expect(crossings([0, 1, 2], [1, 0, 1])).toEqual([]);
    expect(crossings([0, 1], [0, 1])).toEqual([]);
  });
  it('leave stretches where a band does not hold zero', () => {
    const spans = spansWhere([0, 1, 2, 3], [-3, -1, 1, 3], [-1, 1, 3, 5]);
    expect(spans[0]).toEqual([0, 0.5]);
    expect(spans.at(-1)).toEqual([1.5, 3]);
    expect(leftBetween(spans, [0, 3])).toEqual([[0.5, 1.5]]);
  });
});
