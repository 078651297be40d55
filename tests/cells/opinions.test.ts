import { beforeAll, describe, expect, it } from 'vitest';
import type { Phrase } from '../../src/units/phrase.ts';
import { say } from '../../src/units/phrase.ts';
import * as u from '../../src/units/unit.ts';
import { mainDriver } from '../../cells/fuel/main-driver.ts';
import type { OctaneDrivers } from '../../cells/fuel/octane-drivers.ts';
import { figures, read, rough } from './roughly.ts';

const degree = u.si(1, u.degree);
const rpm = u.si(1, u.revolutionsPerMinute);

/** The same engines on every run; the soak draws others (a linear congruence, Numerical Recipes' figures from memory). */
function drawn(seed: number): (low: number, high: number) => number {
  let state = seed;
  return (low, high) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return low + ((high - low) * state) / 2 ** 32;
  };
}
const soak = process.env['SOAK'] !== undefined;
const count = soak ? 600 : 100;
const draw = drawn(soak ? Date.now() % 1e9 : 20260714);

const bases = [
  ['edge-of-premium', undefined, 70],
  ['two-cams', 'early', 64],
  ['two-cams', 'late', 64],
  ['mountain-six', undefined, 76],
  ['milled-four', undefined, 72],
] as const;
const grades = ['85', '87', '89', '91', '93'];

interface Opinion {
  readonly engine: string;
  readonly word: string;
  /** Octane numbers to spare, by practice and by the gas dynamics. */
  readonly practice: number;
  readonly margin: number;
  /** Without the fuel: what each asks for. */
  readonly asked: readonly [practice: number, cycle: number];
  readonly differs: boolean;
  readonly said: string | null;
}

function opinion(): Opinion {
  const [name, variant, chamber] = bases[Math.floor(draw(0, bases.length))]!;
  const given = {
    chamberVolume: u.si(chamber + draw(-8, 8), u.cubicCentimeter),
    camAdvance: draw(-8, 8) * degree,
    fuelGrade: grades[Math.floor(draw(0, grades.length))]!,
    pressureEntry: 'standard',
    altitude: u.si(draw(0, 8000), u.foot),
    airTemperature: draw(283, 313),
    relativeHumidity: draw(0.2, 0.8),
    totalSpark: draw(26, 40) * degree,
    equivalenceRatio: draw(1, 1.25),
    curveFrom: 2000 * rpm,
    curveTo: 3000 * rpm,
    curveStep: 1000 * rpm,
  };
  const live = rough(given, name, variant);
  const [pump, margin, practice, asked] = figures(
    live,
    'pumpOctane',
    'octaneMargin',
    'practiceOctane',
    'octaneRequirement',
  ) as [number, number, number, number];
  const { word } = read(live, 'fuelVerdict')[0] as { readonly word: string };
  const differs = (word === 'comfortable' && margin < 0) || (word === 'beyond' && margin > 0);
  // Where they agree it is asked for only a few times: it takes as long as all the rest.
  const said = differs || draw(0, 1) < 0.1 ? (read(live, 'fuelDisagreement')[0] as Phrase | null) : null;
  live.close();
  return {
    engine: `${variant ?? name}, ${(given.totalSpark / degree).toFixed(0)}°, ${given.fuelGrade} AKI, ${u.toUnit(given.altitude, u.foot).toFixed(0)} ft, ${(given.airTemperature - 273.15).toFixed(0)} °C`,
    word,
    practice: pump - practice,
    margin,
    asked: [practice, asked],
    differs,
    said: said && say(said, 'us'),
  };
}

/** Spearman's coefficient: how far two orders agree, 1 for the same and -1 for the reverse. */
function rankCorrelation(a: readonly number[], b: readonly number[]): number {
  const rank = (values: readonly number[]): number[] => {
    const order = values.map((_, i) => i).toSorted((i, j) => values[i]! - values[j]!);
    return values.map((_, i) => order.indexOf(i));
  };
  const [ra, rb] = [rank(a), rank(b)];
  const n = a.length;
  return 1 - (6 * ra.reduce((sum, r, i) => sum + (r - rb[i]!) ** 2, 0)) / (n * (n * n - 1));
}

const median = (values: readonly number[]): number => values.toSorted((a, b) => a - b)[values.length >> 1]!;

describe(`${count} engines drawn around the starting points`, () => {
  let all: readonly Opinion[] = [];
  let rho = 0;
  const differing = (): readonly Opinion[] => all.filter((o) => o.differs);
  beforeAll(() => {
    all = Array.from({ length: count }, opinion);
    rho = rankCorrelation(
      all.map((o) => o.practice),
      all.map((o) => o.margin),
    );
    const rows = differing().map(({ engine, word, practice, margin, said }) =>
      [
        engine,
        `${word}, ${practice.toFixed(1)} to spare`,
        `${margin.toFixed(1)} to spare`,
        /come from (.*?)\. The gas/.exec(said ?? '')?.[1],
      ].join(' | '),
    );
    console.info(
      [
        `practice and gas dynamics differ on ${rows.length} of ${count}; rank correlation of what each has to spare ${rho.toFixed(2)}`,
        ...rows,
      ].join('\n'),
    );
  }, 2000 * count); // a loaded machine is no fault

  // Two orders that have nothing to do with each other come within 0.2 of none 19 times in 20 (1 / √99, twice).
  it('are put in much the same order by practice and by gas dynamics', () => {
    expect(rho).toBeGreaterThan(0.55);
    const spare = (word: string): number => median(all.filter((o) => o.word === word).map((o) => o.margin));
    expect(spare('comfortable')).toBeGreaterThan(spare('borderline') + 2);
    expect(spare('borderline')).toBeGreaterThan(spare('beyond') + 2);
    expect(differing().length).toBeGreaterThan(0);
    expect(differing().length).toBeLessThan(count / 4);
  });
  it('get a sentence with what it comes from, where both differ', () => {
    for (const { said, engine } of differing())
      expect(said, engine).toMatch(
        /^Practice finds this (comfortable|beyond).* numbers between them(, [\d.]+)? come from /,
      );
  });
  it('get none where both agree', () => {
    for (const { said, engine } of all.filter((o) => !o.differs)) expect(said, engine).toBe(null);
  });
});

describe('what the difference comes from', () => {
  const drivers = {
    requirement: 90,
    ordinary: [
      { name: 'heat', requirement: 88 },
      { name: 'spark', requirement: 84 },
      { name: 'moisture', requirement: 91 },
    ],
  };
  const whole = { ...drivers, spark: 0.5, usualSpark: 0.4 } as OctaneDrivers;
  const c = {
    apart: 5,
    asksMore: true,
    headMaterial: 'iron',
    altitude: 0,
    altitudeRelief: 0,
    linkage: { throw: 0.05, rod: 0.15, offset: 0, top: 0, bottom: Math.PI, travel: 0.1 },
    bore: 0.1,
    clearanceVolume: 1e-4,
    intakeClosing: 60 * degree,
  } as unknown as Parameters<typeof mainDriver>[1];
  it('is what would bring both nearest each other, not what moves most', () => {
    expect(mainDriver(whole, c)).toEqual({ name: 'spark', numbers: 6 });
    expect(mainDriver(whole, { ...c, apart: 2.5 })).toEqual({ name: 'heat', numbers: 2 });
    expect(mainDriver(whole, { ...c, asksMore: false, apart: 5 })).toEqual({ name: 'moisture', numbers: 1 });
  });
  it('counts again what practice counts itself: height and aluminum heads', () => {
    const thin = { ...whole, ordinary: [{ name: 'pressure', requirement: 98 }] } as OctaneDrivers;
    // 0.4 of ratio for the height is 3.2 numbers of practice’s own, at an eighth of a ratio each.
    expect(mainDriver(thin, { ...c, asksMore: false, apart: 9, altitude: 2000, altitudeRelief: 2e-4 })).toEqual({
      name: 'pressure',
      numbers: expect.closeTo(8 - 3.2, 9),
    });
    expect(mainDriver({ ...whole, ordinary: [] }, { ...c, headMaterial: 'aluminum' })).toEqual({
      name: 'heads',
      numbers: 3,
    });
  });
  it('is nothing where nothing does half a number', () =>
    expect(mainDriver({ ...whole, ordinary: [{ name: 'heat', requirement: 89.6 }] }, c)).toBe(null));
});
