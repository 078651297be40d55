import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { catalogue } from '../../cells/index.ts';
import type { Cell } from '../../src/graph/cell.ts';
import type { Verdict } from '../../src/graph/kind.ts';
import { Live } from '../../src/graph/live.ts';
import * as u from '../../src/units/unit.ts';
import { WalkedPiston } from '../physics/walked-piston.ts';
import cranking from '../sources/cranking.json';

const cellOf = (id: string): Cell => catalogue.get(id)!;
const looked = [
  'staticRatio',
  'dynamicRatio',
  'dynamicRatioAt050',
  'dynamicRatioAt050Plus',
  'clearanceVolume',
  'sweptVolume',
  'displacement',
  'gasketVolume',
  'deckVolume',
  'creviceVolume',
  'milledVolume',
  'trappedVolume',
  'pistonStroke',
  'effectiveStroke',
  'strokeLost',
  'rodRatio',
  'squishGap',
  'intakeClosing',
  'crankingPressure',
  'fuelVerdict',
  'fuelVerdictLow',
];

/** An engine by its figures, SI, through the graph: inputs are typed, computed cells are held. */
class Engine {
  readonly #live = new Live(looked.map(cellOf));
  constructor(figures: Figures) {
    this.#live.look(looked.map(cellOf));
    this.put(figures);
  }
  put(figures: Figures): this {
    for (const [id, value] of Object.entries(figures)) {
      const cell = cellOf(id);
      if (cell.role === 'input') this.#live.set(cell, value);
      else this.#live.hold(cell, value);
    }
    this.#live.run();
    return this;
  }
  get(id: string): unknown {
    const state = this.#live.state(cellOf(id));
    if (state.is !== 'ready') throw new Error(`${id}: ${JSON.stringify(state)}`);
    return state.value;
  }
  figure(id: string): number {
    return this.get(id) as number;
  }
  word(id: string): string {
    return (this.get(id) as Verdict).word;
  }
}
type Figures = Readonly<Record<string, number | string>>;

const mm = 1e-3;
const cc = 1e-6;
const degree = Math.PI / 180;
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
/** Street engines and some beyond, each figure by itself. */
const anyEngine = fc
  .record({
    bore: between(70 * mm, 120 * mm),
    stroke: between(60 * mm, 120 * mm),
    rodRatio: between(1.35, 2.3),
    pinOffset: between(-2 * mm, 2 * mm),
    chamberVolume: between(35 * cc, 100 * cc),
    milling: between(0, 1.5 * mm),
    chamberDeckArea: between(3000 * mm * mm, 7000 * mm * mm),
    gasketShare: between(1, 1.05),
    gasketThickness: between(0.4 * mm, 2 * mm),
    deckClearance: between(-0.2 * mm, 1 * mm),
    crownVolume: between(-5 * cc, 15 * cc),
    topLandHeight: between(0, 10 * mm),
    topLandClearance: between(0.2 * mm, 1 * mm),
    intakeDuration: between(210 * degree, 330 * degree),
    ramp: between(5 * degree, 40 * degree),
    intakeCenterline: between(95 * degree, 118 * degree),
    camAdvance: between(-8 * degree, 8 * degree),
  })
  .map(({ rodRatio, gasketShare, ramp, ...figures }) => ({
    ...figures,
    rod: rodRatio * figures.stroke,
    gasketBore: gasketShare * figures.bore,
    intakeDuration050: figures.intakeDuration - 2 * ramp,
  }));
const many = { numRuns: 500, seed: 20260707 };
const engine = new Engine({});

it('of 500 engines none has a dynamic ratio over its static one, whichever closing it is counted from', () => {
  fc.assert(
    fc.property(anyEngine, (figures) => {
      engine.put(figures);
      const top = engine.figure('staticRatio') * (1 + 1e-14);
      for (const id of ['dynamicRatio', 'dynamicRatioAt050', 'dynamicRatioAt050Plus'])
        expect(engine.figure(id)).toBeLessThanOrEqual(top);
      expect(engine.figure('dynamicRatio')).toBeGreaterThan(1);
      expect(engine.figure('strokeLost')).toBeGreaterThan(-1e-14);
    }),
    many,
  );
});

it('the ratio is greatest for a valve that shuts at the bottom, and falls ever after', () => {
  fc.assert(
    fc.property(anyEngine, (figures) => {
      const own = new Engine(figures);
      const closings = Array.from({ length: 120 }, (_, i) => (i - 20) * 1.5 * degree);
      const ratios = closings.map((closing) => own.put({ intakeClosing: closing }).figure('dynamicRatio'));
      const peak = ratios.indexOf(Math.max(...ratios));
      // The pin offset moves the bottom by a degree or two from the wheel's mark.
      expect(Math.abs(closings[peak]!)).toBeLessThan(5 * degree);
      for (let i = 1; i <= peak; i++) expect(ratios[i]!).toBeGreaterThan(ratios[i - 1]!);
      for (let i = peak + 1; i < ratios.length; i++) expect(ratios[i]!).toBeLessThan(ratios[i - 1]!);
    }),
    { ...many, numRuns: 60 },
  );
});

it('an engine k times as large in every length has the same ratios, and volumes k³ times as large', () => {
  const powers: Readonly<Record<string, number>> = {
    bore: 1,
    stroke: 1,
    rod: 1,
    pinOffset: 1,
    milling: 1,
    gasketBore: 1,
    gasketThickness: 1,
    deckClearance: 1,
    topLandHeight: 1,
    topLandClearance: 1,
    chamberDeckArea: 2,
    chamberVolume: 3,
    crownVolume: 3,
  };
  const answers: Readonly<Record<string, number>> = {
    staticRatio: 0,
    dynamicRatio: 0,
    dynamicRatioAt050: 0,
    strokeLost: 0,
    rodRatio: 0,
    crankingPressure: 0,
    pistonStroke: 1,
    effectiveStroke: 1,
    squishGap: 1,
    sweptVolume: 3,
    displacement: 3,
    clearanceVolume: 3,
    gasketVolume: 3,
    deckVolume: 3,
    creviceVolume: 3,
    milledVolume: 3,
    trappedVolume: 3,
  };
  fc.assert(
    fc.property(anyEngine, between(0.6, 1.6), (drawn, k) => {
      const figures = { ...drawn, deckClearance: Math.abs(drawn.deckClearance) };
      const own = engine.put(figures);
      const small = Object.keys(answers).map((id) => own.figure(id));
      own.put(Object.fromEntries(Object.entries(figures).map(([id, value]) => [id, value * k ** (powers[id] ?? 0)])));
      Object.entries(answers).forEach(([id, power], i) => {
        const expected = small[i]! * k ** power;
        expect(Math.abs(own.figure(id) - expected), id).toBeLessThanOrEqual(1e-11 * Math.abs(expected) + 1e-30);
      });
    }),
    many,
  );
});

it('the ratio is what a drawn crank gives: the piston walked by Simpson’s rule from the closing to the top', () => {
  fc.assert(
    fc.property(anyEngine, (f) => {
      const round = (across: number): number => (Math.PI / 4) * across ** 2;
      const clearance =
        f.chamberVolume -
        f.milling * f.chamberDeckArea +
        round(f.gasketBore) * f.gasketThickness +
        round(f.bore) * f.deckClearance +
        f.crownVolume +
        (round(f.bore) - round(f.bore - f.topLandClearance)) * f.topLandHeight;
      // Turning clockwise from the top the crankpin goes down on the right; the rod under load presses the piston to the
      // left, so that is the major thrust face, and a pin offset toward it is one to the left.
      const walked = new WalkedPiston(f.stroke / 2, f.rod, -f.pinOffset);
      const top = walked.deadCenter(0);
      const closing = f.intakeDuration / 2 + f.intakeCenterline - f.camAdvance - Math.PI;
      const climbed = walked.climbed(top - Math.PI + closing, top, 400);
      const expected = (clearance + round(f.bore) * climbed) / clearance;
      engine.put(f);
      expect(Math.abs(engine.figure('dynamicRatio') / expected - 1)).toBeLessThan(1e-8);
      expect(Math.abs(engine.figure('clearanceVolume') / clearance - 1)).toBeLessThan(1e-12);
    }),
    many,
  );
});

describe('a pin offset toward the major thrust face', () => {
  it('counts a late closing a little farther from the bottom, and the other way a little nearer', () => {
    const figures = { deckClearance: 0.3 * mm, intakeClosing: 60 * degree };
    const [there, none, away] = [1, 0, -1].map((mmOff) =>
      new Engine({ ...figures, pinOffset: mmOff * mm }).figure('effectiveStroke'),
    );
    const walked = (offset: number): number => {
      const piston = new WalkedPiston((3.54 * 0.0254) / 2, 5.85 * 0.0254, -offset);
      const top = piston.deadCenter(0);
      return piston.height(top) - piston.height(top - Math.PI + 60 * degree);
    };
    expect(there! - none!).toBeCloseTo(walked(mm) - walked(0), 12);
    expect(away! - none!).toBeCloseTo(walked(-mm) - walked(0), 12);
    expect(there!).toBeLessThan(none!);
    expect(away!).toBeGreaterThan(none!);
  });
});

/**
 * Cranking pressures from makers' service data, as in tests/sources. Makers keep a round figure when the cam changes, so
 * this holds the level of the pressures and says nothing of what the closing does to it.
 */
it('eight makers’ cranking pressures are met in level, through the cells: bias −2.4 %, rms 8.0 %, worst −15.6 %', () => {
  const rows = cranking.filter((row) => row.quantity === 'standard cranking pressure');
  expect(rows).toHaveLength(8);
  const misses = rows.map(({ inputs, expected }) => {
    const { bore_mm, stroke_mm, rod_mm, rc_static, IVC_deg_ABDC } = inputs as Readonly<Record<string, number>>;
    const [bore, stroke] = [bore_mm! * mm, stroke_mm! * mm];
    const made = new Engine({
      bore,
      stroke,
      rod: rod_mm! * mm,
      clearanceVolume: ((Math.PI / 4) * bore ** 2 * stroke) / (rc_static! - 1),
      intakeClosing: IVC_deg_ABDC! * degree,
      barometer: 101.3e3,
    });
    expect(made.figure('staticRatio')).toBeCloseTo(rc_static!, 9);
    return made.figure('crankingPressure') / (expected * 1e3) - 1;
  });
  const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
  const percent = (share: number): string => (100 * share).toFixed(1);
  expect(percent(mean(misses))).toBe('-2.4');
  expect(percent(Math.sqrt(mean(misses.map((miss) => miss ** 2))))).toBe('8.0');
  expect(percent(misses.toSorted((a, b) => Math.abs(b) - Math.abs(a))[0]!)).toBe('-15.6');
});

/**
 * Engines of 13:1 are sold to run on 91 RON, about 87 AKI, with an intake that shuts 60 to 110 degrees after bottom: late
 * when the throttle is open at low speed. (Makers' figures, from memory.)
 */
describe('a 13:1 engine that shuts its intake late', () => {
  const own = new Engine({
    bore: 84 * mm,
    stroke: 90 * mm,
    rod: 150 * mm,
    clearanceVolume: ((Math.PI / 4) * (84 * mm) ** 2 * (90 * mm)) / 12,
    headMaterial: 'aluminum',
    altitude: 0,
  });
  const at = (closing: number, grade: string): string =>
    own.put({ intakeClosing: closing * degree, fuelGrade: grade }).word('fuelVerdict');

  it.each(['87', '91'])('is comfortable on %s AKI at the late end of its range', (grade) => {
    expect(own.figure('staticRatio')).toBeCloseTo(13, 9);
    expect([100, 105, 110].map((closing) => at(closing, grade))).toEqual(Array(3).fill('comfortable'));
  });
  it.each(['87', '91'])('would be condemned on %s AKI by its static ratio, wherever the valve shuts', (grade) => {
    for (const closing of [60, 85, 110]) {
      own.put({ intakeClosing: closing * degree, fuelGrade: grade });
      const [, end] = (own.get('fuelVerdict') as Verdict).edges;
      expect(own.figure('staticRatio')).toBeGreaterThan(end!);
    }
  });
  it('is beyond both fuels at the early end, so the late closing is what saves it, not a lenient band', () => {
    expect([at(60, '87'), at(60, '91')]).toEqual(['beyond', 'beyond']);
    const words = Array.from({ length: 51 }, (_, i) => at(60 + i, '91'));
    expect(words.filter((word, i) => word !== words[i - 1])).toEqual(['beyond', 'borderline', 'comfortable']);
  });
  it('shows the milliliter: one cubic centimeter of clearance is far more ratio here than at 8:1', () => {
    const volume = own.put({ intakeClosing: 60 * degree }).figure('clearanceVolume');
    const step = (clearance: number): number => {
      const [a, b] = [clearance, clearance + 1 * cc].map((v) => own.put({ clearanceVolume: v }).figure('dynamicRatio'));
      return a! - b!;
    };
    expect(step(volume)).toBeGreaterThan(2 * step((volume * 12) / 7));
    own.put({ clearanceVolume: volume });
  });
});

it('a bar of thick air and a bar of thin: gauge pressure falls in proportion to the air outside', () => {
  const pressure = (barometer: number): number =>
    new Engine({ deckClearance: 0.3 * mm, barometer }).figure('crankingPressure');
  expect(pressure(u.si(20, u.inchOfMercury)) / pressure(u.si(30, u.inchOfMercury))).toBeCloseTo(2 / 3, 12);
});
