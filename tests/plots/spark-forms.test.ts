import { describe, expect, it } from 'vitest';
import type { MarginsValues } from '../../src/plots/forms/margins.ts';
import type { OctaneValues } from '../../src/plots/forms/octane.ts';
import type { ResidualWorkValues } from '../../src/plots/forms/residual-work.ts';
import type { SparkHookValues } from '../../src/plots/forms/spark-hook.ts';
import type { SparksValues } from '../../src/plots/forms/sparks.ts';
import { between } from '../../src/plots/between.ts';
import { drawn } from './drawn.ts';
import { type Element, elementsOf, wordsOf } from './markup.ts';
import { leftOf, scaleOf, spotsOf, under } from './places.ts';
import { isWell } from './well.ts';

const rpm = Math.PI / 30;
const degree = Math.PI / 180;
const widths = [280, 358, 479, 480, 720, 1400];
const speeds = Float64Array.from({ length: 12 }, (_, i) => (1000 + 500 * i) * rpm);
const bySpeed = (f: (speed: number) => number): { x: Float64Array; y: Float64Array } => ({
  x: speeds,
  y: speeds.map((s) => f(s / rpm)),
});
const lined = (elements: readonly Element[]): Element[] =>
  elements.filter((e) => e.attributes.fill === 'url(#beyond-test)');

const octane = (more: Partial<OctaneValues> = {}): OctaneValues => ({
  octaneRequirementCurve: bySpeed(() => 80),
  pumpOctane: 91,
  octaneMargin: 11,
  ...more,
});

/** Invented sparks: torque a parabola over advance with its top of 500 N m at 32 degrees, one octane number a degree. */
const hook = (more: Partial<SparkHookValues['sparkTrials']> = {}): SparkHookValues => ({
  sparkTrials: {
    trials: Array.from({ length: 9 }, (_, i) => 2 + 4.75 * i).map((a) => ({
      advance: a * degree,
      torque: 500 * (1 - 3e-4 * (a - 32) ** 2),
      octane: 60 + a,
    })),
    spark: 22 * degree,
    best: 32 * degree,
    octane: 91,
    limit: 21 * degree,
    ...more,
  },
  engineSpeed: 4500 * rpm,
});

const sparks = (more: Partial<SparksValues> = {}): SparksValues => ({
  sparkCurve: bySpeed((n) => Math.min(34, 10 + n / 125) * degree),
  bestSparkCurve: bySpeed((n) => (18 + n / 300) * degree),
  knockLimitedSparkCurve: bySpeed((n) => (12 + n / 200) * degree),
  suggestedSparkCurve: bySpeed((n) => Math.min(18 + n / 300, 12 + n / 200) * degree),
  sparkLossCurve: bySpeed((n) => (Math.round(n) === 3000 ? 0.031 : 0.01)),
  ...more,
});

const residual: ResidualWorkValues = {
  residualCurve: bySpeed((n) => 0.2 - n / 5e4),
  burnAngleCurve: bySpeed((n) => (40 + n / 1000) * degree),
  trappedTemperatureCurve: bySpeed(() => 373.15),
};

const margins = (more: Partial<MarginsValues> = {}): MarginsValues => ({
  fuelVerdict: { word: 'borderline', value: 7.84, edges: [7.54, 8.04] },
  pumpOctane: 91,
  octaneRequirement: 94,
  octaneMargin: -3,
  plusMinus: 0.08,
  ...more,
});

describe.each([
  ['octane', octane()],
  ['sparkHook', hook()],
  ['sparks', sparks()],
  ['residualWork', residual],
  ['margins', margins()],
])('%s', (form, values) => {
  it('is drawn well at any width', () => {
    for (const width of widths) isWell(form, values, width);
  });
});

describe('what octane it asks for', () => {
  it('stands in a band of seven numbers either way, on the same scale as the posted grades', () => {
    const elements = isWell('octane', octane());
    const band = elements.find((e) => e.attributes['fill-opacity'] === '.12')!;
    const y = scaleOf(elements, 'y', leftOf);
    const edges = spotsOf(band.attributes.d!).map(([, at]) => at);
    expect(Math.min(...edges)).toBeCloseTo(y(87), 0);
    expect(Math.max(...edges)).toBeCloseTo(y(73), 0);
    const grade = elements.find((e) => e.attributes.stroke === 'var(--ink-3)')!; // the first is 85
    expect(spotsOf(grade.attributes.d!)[0]![1]).toBeCloseTo(y(85), 0);
  });
  it('is thin under 2000 rpm, where it is not to be relied on', () => {
    const elements = isWell('octane', octane());
    const trusted = elements.find((e, i) => e.name === 'rect' && elements[i - 1]!.name === 'clipPath')!;
    const x = scaleOf(elements, 'x', under);
    expect(Number(trusted.attributes.x)).toBeCloseTo(x(2000), 0);
    const wide = elements
      .filter((e) => e.attributes.stroke === 'var(--l1)')
      .map((e) => Number(e.attributes['stroke-width']));
    expect(wide).toEqual([2.75 / 2, 2.75]);
  });
  it('names the posted grades that are in the window and no others', () => {
    const named = (values: OctaneValues): string[] =>
      elementsOf(drawn('octane', values).body)
        .filter((e) => e.name === 'text' && e.attributes['text-anchor'] === 'start' && /^\d\d$/.test(e.text))
        .map((e) => e.text);
    expect(named(octane())).toEqual(['85', '87', '89', '91', '93']);
    const low = octane({ octaneRequirementCurve: bySpeed(() => 70), pumpOctane: 73 });
    expect(named(low)).toEqual([]);
    expect(named(octane({ octaneRequirementCurve: bySpeed(() => 70), pumpOctane: 75 }))).toEqual(['85']);
    expect(named(octane({ octaneRequirementCurve: bySpeed(() => 110), pumpOctane: 104 }))).toEqual([]);
  });
  it('is beyond this fuel above the fuel’s own line', () => {
    const elements = isWell('octane', octane({ pumpOctane: 88.4 }));
    const y = scaleOf(elements, 'y', leftOf);
    const [zone] = lined(elements);
    expect(Number(zone!.attributes.y) + Number(zone!.attributes.height)).toBeCloseTo(y(88.4), 0);
    const words = elements.map((e) => e.text);
    expect(words).toContain('88.4 at the pump');
    expect(words).toContain('beyond this fuel');
  });
  it('says the most it asks for where it is to be relied on', () => {
    const values = octane({ octaneRequirementCurve: bySpeed((n) => 100 - n / 250), octaneMargin: -1 });
    expect(wordsOf(drawn('octane', values).body)).toContain('asks for 92'); // at 2000, not 96 at 1000
    expect(drawn('octane', values).label).toContain('1 octane number short');
  });
  it('stands what no engine asks for', () => {
    for (const asked of [40, 91, 130])
      for (const width of [280, 700]) isWell('octane', octane({ octaneRequirementCurve: bySpeed(() => asked) }), width);
  });
});

describe('the spark hook', () => {
  it('says the loss of what runs as the parabola has it: ten degrees off, 3 %', () => {
    const words = wordsOf(drawn('sparkHook', hook()).body);
    expect(words).toContain('runs 22°');
    expect(words).toContain('3.0 % less than at its best');
    expect(words).toContain('best 32°');
    expect(wordsOf(drawn('sparkHook', hook({ spark: 32 * degree })).body)).toContain('at its best');
  });
  it('marks the best at the top of the curve', () => {
    const elements = isWell('sparkHook', hook());
    const curve = elements.find((e) => e.attributes['stroke-width'] === '2.75')!;
    const top = Math.min(...spotsOf(curve.attributes.d!).map(([, y]) => y));
    const best = elements.find((e) => e.name === 'circle' && e.attributes.fill === 'none')!;
    expect(Math.abs(Number(best.attributes.cy) - top)).toBeLessThan(0.3);
  });
  it('is beyond this fuel past the limit, everywhere where there is none, and nowhere where the fuel bears all', () => {
    const zone = (limit: number | null): Element | undefined => lined(isWell('sparkHook', hook({ limit })))[0];
    const x = scaleOf(elementsOf(drawn('sparkHook', hook()).body), 'x', under);
    expect(Number(zone(21 * degree)!.attributes.x)).toBeCloseTo(x(21), 0);
    expect(Number(zone(null)!.attributes.x)).toBeCloseTo(x(2), 0);
    expect(zone(40 * degree)).toBe(undefined);
    const words = (limit: number | null): string => wordsOf(drawn('sparkHook', hook({ limit })).body).join();
    expect(words(21 * degree)).toMatch(/beyond this fuel.*knock is due past 21°/);
    expect(words(null)).toMatch(/beyond this fuel.*91 bears none of these sparks/);
    expect(words(40 * degree)).toMatch(/91 bears all of these sparks/);
    expect(words(40 * degree)).not.toMatch(/beyond|knock/);
  });
  it('stands sparks outside of what was tried', () => {
    for (const spark of [-5, 2, 40, 60])
      for (const width of widths) {
        const dot = isWell('sparkHook', hook({ spark: spark * degree }), width).find((e) => e.attributes.r === '5.5')!;
        expect(Number(dot.attributes.cx)).toBeGreaterThanOrEqual(44);
        expect(Number(dot.attributes.cx)).toBeLessThanOrEqual(width - 12);
      }
  });
});

describe('a smooth curve through points', () => {
  it('is a parabola through points of one, and held at its ends', () => {
    const xs = [0, 1, 3, 4, 7];
    const at = between(
      xs,
      xs.map((x) => 2 + x - 0.3 * x * x),
    );
    for (const x of [0, 0.5, 1, 2.2, 3.9, 5.5, 7]) expect(at(x)).toBeCloseTo(2 + x - 0.3 * x * x, 9);
    expect(at(-3)).toBe(2);
    expect(at(99)).toBeCloseTo(2 + 7 - 0.3 * 49, 9);
  });
  it('goes straight through two, and stays on one', () => {
    expect(between([1, 3], [10, 20])(2)).toBeCloseTo(15, 9);
    expect(between([1], [10])(2)).toBe(10);
  });
});

describe('the sparks by engine speed', () => {
  it('name each line at its end, apart, in the order they end in', () => {
    for (const width of widths) {
      const names = elementsOf(drawn('sparks', sparks(), width).body).filter((e) =>
        /^(suggested|best|knock due|runs)$/.test(e.text),
      );
      expect(names.map((e) => e.text).toSorted()).toEqual(['best', 'knock due', 'runs', 'suggested']);
      const [knock, runs] = ['knock due', 'runs'].map((name) =>
        Number(names.find((e) => e.text === name)!.attributes.y),
      );
      expect(knock!).toBeLessThan(runs!); // 44.5 degrees at the end, and 34
      const places = names.map((e) => Number(e.attributes.y)).toSorted((a, b) => a - b);
      for (let i = 1; i < places.length; i++) expect(places[i]! - places[i - 1]!).toBeGreaterThanOrEqual(15.9);
    }
  });
  it('have the zone beyond this fuel above where knock is due', () => {
    const elements = isWell('sparks', sparks());
    const y = scaleOf(elements, 'y', (e) => leftOf(e) && Number(e.attributes.y) < 320);
    const spots = spotsOf(lined(elements)[0]!.attributes.d!);
    const edge = spots.filter(([, at]) => at > 40);
    expect(Math.max(...edge.map(([, at]) => at))).toBeCloseTo(y(17), 0); // 12 + 1000 / 200
  });
  it('have no zone, and say so, where the limit is as late as sparks were tried', () => {
    const free = sparks({ knockLimitedSparkCurve: bySpeed((n) => (26 + n / 300) * degree) });
    expect(lined(isWell('sparks', free))).toEqual([]);
    expect(wordsOf(drawn('sparks', free).body)).toContain('no knock is due near the best');
    expect(wordsOf(drawn('sparks', free).body)).not.toContain('knock due');
  });
  it('are all beyond this fuel where it bears none', () => {
    const none = sparks({
      knockLimitedSparkCurve: bySpeed(() => Number.NaN),
      suggestedSparkCurve: bySpeed(() => Number.NaN),
    });
    for (const width of widths) {
      const [zone, more] = lined(isWell('sparks', none, width));
      expect(more).toBe(undefined);
      const heights = spotsOf(zone!.attributes.d!).map(([, y]) => y);
      expect([Math.min(...heights), Math.max(...heights)]).toEqual([34, width < 480 ? 250 : 310]);
    }
    expect(drawn('sparks', none).twin.rows[0]!.slice(3, 5)).toEqual(['–', '–']);
  });
  it('are not mixed up where a curve has no figure at some speeds', () => {
    const late = (curve: { x: Float64Array; y: Float64Array }): { x: Float64Array; y: Float64Array } => ({
      x: curve.x.slice(4),
      y: curve.y.slice(4),
    });
    const some = sparks({ knockLimitedSparkCurve: late(sparks().knockLimitedSparkCurve) });
    const { rows } = drawn('sparks', some).twin;
    expect(rows[3]!.slice(0, 4)).toEqual(['2500', '30.0', '26.3', '–']);
    expect(rows[4]!.slice(0, 4)).toEqual(['3000', '34.0', '28.0', '27.0']);
    for (const width of widths) isWell('sparks', some, width);
  });
  it('give away what is said, at the speed where it is most', () => {
    expect(drawn('sparks', sparks()).label).toContain('at most 3.1 % of torque, at 3000 rpm');
  });
});

describe('what burnt gas does', () => {
  it('is read in percent, degrees, and the system’s own temperature', () => {
    const row = (system: 'us' | 'si'): readonly string[] => drawn('residualWork', residual, 700, system).twin.rows[0]!;
    expect(row('si')).toEqual(['1000', '18.0', '41.0', '100']);
    expect(row('us')[3]).toBe('212');
  });
  it('has a gap where half never burned', () => {
    const { x, y } = residual.burnAngleCurve;
    const gap = { ...residual, burnAngleCurve: { x: x.slice(1), y: y.slice(1) } };
    for (const width of widths) isWell('residualWork', gap, width);
    expect(
      drawn('residualWork', gap)
        .twin.rows.map((row) => row[2])
        .slice(0, 2),
    ).toEqual(['–', '41.5']);
    expect(drawn('residualWork', gap).label).toContain('at 1000 rpm, with half never burned');
  });
});

describe('both margins', () => {
  const bar = (elements: readonly Element[]): [number, number] => {
    const [, cycle] = elements.filter((e) => e.attributes['stroke-width'] === '5');
    const [[from], [to]] = spotsOf(cycle!.attributes.d!) as [[number, number], [number, number]];
    return [from, to];
  };
  it('stand the requirement with its seven either way against the fuel’s edge', () => {
    const elements = isWell('margins', margins());
    const [from, to] = bar(elements);
    const edge = Number(lined(elements)[1]!.attributes.x);
    expect((edge - from) / (to - from)).toBeCloseTo((91 - 87) / 14, 2); // 94 less 7 is 87
    const words = wordsOf(drawn('margins', margins()).body);
    for (const said of ['By practice', 'By the cycle', 'asks for 94 ± 7: 3 short', '91 at the pump', 'could be either'])
      expect(words).toContain(said);
  });
  it.each([
    [80, 'comfortable', '11 to spare'],
    [84.5, 'could be either', '6.5 to spare'],
    [99, 'beyond this fuel', '8 short'],
  ])('call a requirement of %s on 91 %s', (asked, word, spare) => {
    const values = margins({ octaneRequirement: asked, octaneMargin: 91 - asked });
    const words = wordsOf(drawn('margins', values).body);
    expect(words.some((w) => w.endsWith(spare))).toBe(true);
    expect(words).toContain(word);
    for (const width of widths) isWell('margins', values, width);
  });
  it('say that the cycle’s answer is being worked out until it is there', () => {
    const { octaneMargin: _, octaneRequirement: __, ...early } = margins();
    for (const width of widths) {
      const elements = isWell('margins', early, width);
      expect(elements.some((e) => e.text === 'The cycle’s answer is being worked out.')).toBe(true);
      expect(lined(elements).length).toBe(1);
    }
  });
  it('draw practice as the scale of the verdict does', () => {
    const verdict = { word: 'borderline', value: 7.84, edges: [7.54, 8.04] };
    const scale = drawn('verdictScale', { fuelVerdict: verdict, fuelVerdictLow: verdict, plusMinus: 0.08 });
    const zone = (body: string): Record<string, string> => ({ ...lined(elementsOf(body))[0]!.attributes });
    expect(zone(drawn('margins', margins()).body)).toEqual(zone(scale.body));
  });
});
