import { describe, expect, it } from 'vitest';
import type { PlateValues } from '../../src/plots/forms/plate.ts';
import type { StackValues } from '../../src/plots/forms/stack.ts';
import type { ScaleValues } from '../../src/plots/forms/verdict-scale.ts';
import { linkage, pistonDrop } from '../../src/physics/linkage.ts';
import { drawn, engines, figures, valuesOf } from './drawn.ts';
import { type Element, elementsOf, wordsOf } from './markup.ts';
import { isWell } from './well.ts';

const degree = Math.PI / 180;
const cm3 = 1e-6;

describe.each(engines)('%s', (_, open) => {
  it.each(figures.map((f) => [f.form, f] as const))('is drawn well: %s', (form, figure) => {
    const values = valuesOf(open(), figure);
    for (const width of [280, 358, 479, 480, 720, 1400]) isWell(form, values, width);
  });

  it('says in US and SI units the same', () => {
    const values = valuesOf(open(), figures[0]!) as unknown as PlateValues;
    const left = (system: 'us' | 'si'): string =>
      wordsOf(drawn('plate', values, 700, system).body).find((w) => w.includes('of stroke left'))!;
    expect(Number.parseFloat(left('us')) * 25.4).toBeCloseTo(Number.parseFloat(left('si')), 1);
  });
});

/** A plate by the physics it draws, from figures in inches and degrees. */
function plateOf(closing: number, more: { offset?: number; deck?: number; clearance?: number } = {}): PlateValues {
  const inch = 0.0254;
  const bore = 4.07 * inch;
  const l = linkage(3.54 * inch, 5.85 * inch, (more.offset ?? 0) * inch);
  const effectiveStroke = pistonDrop(l, Math.PI + closing * degree);
  const clearanceVolume = more.clearance ?? 88.4 * cm3;
  return {
    bore,
    linkage: l,
    deckClearance: (more.deck ?? 0.012) * inch,
    intakeClosing: closing * degree,
    effectiveStroke,
    strokeLost: 1 - effectiveStroke / l.travel,
    clearanceVolume,
    trappedVolume: (Math.PI / 4) * bore ** 2 * effectiveStroke + clearanceVolume,
  };
}

describe('the plate', () => {
  it('says the trapped volume of the README’s case, the closing, and what is left of the stroke', () => {
    const words = wordsOf(drawn('plate', plateOf(61)).body);
    for (const said of ['693.2 cm³', '61°', 'clearance 88.4 cm³', '2.837 in of stroke left'])
      expect(words).toContain(said);
    expect(words).toContain('gone before the valve shut: 19.9 %');
  });

  it.each([-40, -1, 0, 1, 40, 61, 61.5, 90, 120, 179])(
    'gives the closing back from where its crankpin is drawn: %s°',
    (closing) => {
      for (const offset of [0, 0.06, -0.06, 0.5])
        for (const width of [280, 358, 700, 1400]) {
          const { handle } = drawn('plate', plateOf(closing, { offset }), width);
          expect(Math.abs(handle!.valueAt(handle!.x, handle!.y) - closing * degree)).toBeLessThan(1e-6);
        }
    },
  );
  it('turns the way the arc goes: a pin that is drawn lower closes later, until it has come round', () => {
    const { handle } = drawn('plate', plateOf(61));
    const at = (dx: number, dy: number): number => handle!.valueAt(handle!.x + dx, handle!.y + dy);
    expect(at(5, 5)).toBeGreaterThan(61 * degree);
    expect(at(-5, -5)).toBeLessThan(61 * degree);
  });
  it('draws the dimension of what is gone and of what is left in proportion', () => {
    for (const [closing, width] of [
      [61, 700],
      [75, 358],
      [40, 1400],
    ] as const) {
      const values = plateOf(closing);
      const heads = [...drawn('plate', values, width).body.matchAll(/M([\d.]+) [\d.]+l7 -2\.5v5zM([\d.]+) /g)].map(
        ([, a, b]) => Number(b) - Number(a),
      );
      const [left, gone] = heads as [number, number];
      expect(gone / (gone + left)).toBeCloseTo(values.strokeLost, 2);
    }
  });
  it('draws crank and rod in their own lengths', () => {
    const values = plateOf(61, { offset: 0.25 });
    const elements = elementsOf(drawn('plate', values, 1400).body);
    const rods = elements
      .filter((e) => e.attributes['stroke-linecap'] === 'round')
      .map((e) =>
        e.attributes
          .d!.match(/M([\d.-]+) ([\d.-]+)L([\d.-]+) ([\d.-]+)/)!
          .slice(1)
          .map(Number),
      )
      .map(([x1, y1, x2, y2]) => Math.hypot(x2! - x1!, y2! - y1!));
    expect(rods.length).toBe(4); // each in ink, then its fill
    expect(rods[2]! / rods[0]!).toBeCloseTo(5.85 / 1.77, 2);
  });

  it.each([
    ['a deck over the block’s', { deck: -0.02 }],
    ['a deck far down', { deck: 0.5 }],
    ['next to no clearance', { clearance: 0.01 * cm3 }],
    ['a great pin offset', { offset: 0.8 }],
  ])('stands %s', (_, more) => {
    for (const closing of [-120, -5, 0, 61, 178])
      for (const width of [280, 700]) isWell('plate', plateOf(closing, more), width);
  });
});

const parts = (more: Partial<StackValues> = {}): StackValues => ({
  clearanceVolume: 88.4 * cm3,
  chamberVolume: 70 * cm3,
  milledVolume: 0,
  gasketVolume: 9.13 * cm3,
  deckVolume: 2.56 * cm3,
  crownVolume: 6 * cm3,
  creviceVolume: 0.7 * cm3,
  ...more,
});
const bars = (values: StackValues, width = 700): Element[] =>
  elementsOf(drawn('stack', values, width).body).filter((e) => e.name === 'rect');

describe('the stack of clearance volumes', () => {
  it('gives each part its share of the bar', () => {
    const widths = bars(parts()).map((e) => Number(e.attributes.width) + 1.5);
    const volumes = [70, 9.13, 6, 2.56, 0.7];
    expect(widths.length).toBe(5);
    for (const [i, wide] of widths.entries()) {
      if (volumes[i]! < 1) continue; // never thinner than a line
      expect(wide).toBeCloseTo((700 * volumes[i]!) / 88.39, 0);
    }
  });
  it('draws what takes volume away empty, at the right', () => {
    const drawn = bars(parts({ crownVolume: -4 * cm3, clearanceVolume: 78.4 * cm3 }));
    expect(drawn.map((e) => e.attributes['stroke-dasharray'] !== undefined)).toEqual([
      false,
      false,
      false,
      false,
      true,
    ]);
    expect(drawn.at(-1)!.attributes.fill).toBe('none');
  });
  it('takes the milling off the chamber', () => {
    expect(wordsOf(drawn('stack', parts({ milledVolume: 9 * cm3 })).body)).toContain('Chamber 61.0 cm³');
  });
  it('keeps names apart and on the sheet, however thin the parts', () => {
    for (const width of [280, 358, 700]) {
      const names = elementsOf(drawn('stack', parts({ gasketVolume: 0.1 * cm3, crownVolume: 0 }), width).body).filter(
        (e) => e.name === 'text' && /^(Gasket|Crown|Deck|Crevice)$/.test(e.text),
      );
      const places = names.map((e) => Number(e.attributes.x)).toSorted((a, b) => a - b);
      expect(places.length).toBe(4);
      for (const [i, place] of places.entries()) {
        expect(place - (places[i - 1] ?? -40)).toBeGreaterThan(59);
        expect(place).toBeLessThan(width - 20);
      }
    }
  });
  it.each([
    ['a negative deck', { deckVolume: -3 * cm3 }],
    ['no crevice', { creviceVolume: 0 }],
    ['a dome larger than the chamber', { crownVolume: -90 * cm3 }],
    ['more milled than there was', { milledVolume: 80 * cm3 }],
    ['nothing at all', { chamberVolume: 0, gasketVolume: 0, deckVolume: 0, crownVolume: 0, creviceVolume: 0 }],
  ])('stands %s', (_, more) => {
    for (const width of [280, 700]) isWell('stack', parts(more), width);
  });
});

const travelOf = (closing: number, opening = 29): object => {
  const { effectiveStroke, strokeLost } = plateOf(closing);
  const l = linkage(3.54 * 0.0254, 5.85 * 0.0254, 0);
  const x = Float64Array.from({ length: 181 }, (_, i) => (i - 180) * 2 * degree);
  return {
    pistonTravel: { x, y: x.map((a) => pistonDrop(l, a)) },
    intakeOpening: opening * degree,
    intakeClosing: closing * degree,
    effectiveStroke,
    strokeLost,
  };
};

describe('piston travel', () => {
  it('says how long the valve is open, and when it shuts', () => {
    const words = wordsOf(drawn('travel', travelOf(61)).body);
    expect(words).toContain('intake open 270°'); // 29 + 180 + 61
    expect(words).toContain('shuts at 61°');
    expect(words).toContain('19.9 % gone');
  });
  it('marks the closing on the curve', () => {
    for (const closing of [-20, 0, 30, 61, 100]) {
      const elements = elementsOf(drawn('travel', travelOf(closing), 1400).body);
      const { cx, cy } = elements.find((e) => e.name === 'circle')!.attributes;
      const curve = elements.find((e) => e.attributes.stroke === 'var(--l1)')!.attributes.d!;
      const places = curve
        .slice(1)
        .split('L')
        .map((pair) => pair.split(' ').map(Number) as [number, number]);
      const near = places.toSorted((a, b) => Math.abs(a[0] - Number(cx)) - Math.abs(b[0] - Number(cx)));
      const [[x1, y1], [x2, y2]] = near as [[number, number], [number, number]];
      const between = y1 + ((y2 - y1) * (Number(cx) - x1)) / (x2 - x1 || 1);
      expect(Number(cy)).toBeCloseTo(between, 0);
    }
  });
  it('lines the lost part of the rise only where there is one', () => {
    expect(drawn('travel', travelOf(61)).body).toContain('fill="url(#metal-test)" opacity');
    expect(drawn('travel', travelOf(-10)).body).not.toContain('fill="url(#metal-test)" opacity');
  });
  it('has the piston at the top and at the bottom in its table', () => {
    const { rows } = drawn('travel', travelOf(61)).twin;
    expect(rows[0]).toEqual(['−360°', '0.000']);
    expect(rows.at(-1)).toEqual(['0°', '0.000']);
    expect(rows.find(([at]) => at === '−180°')).toEqual(['−180°', '3.540']);
  });
  it.each([-60, 0, 5, 61, 150])('stands a closing of %s° and an early opening', (closing) => {
    for (const opening of [-10, 0, 29, 80])
      for (const width of [280, 700]) isWell('travel', travelOf(closing, opening), width);
  });
});

const scaleOf = (value: number, more: Partial<ScaleValues> = {}): ScaleValues => {
  const word = value > 8.04 ? 'beyond' : value >= 7.54 ? 'borderline' : 'comfortable';
  return {
    fuelVerdict: { word, value, edges: [7.54, 8.04] },
    fuelVerdictLow: { word, value, edges: [7.5, 8] },
    plusMinus: 0.1,
    ...more,
  };
};

describe('the scale of the verdict', () => {
  it('says the word of each row, the ratio with its ±, and the edges', () => {
    const words = wordsOf(drawn('verdictScale', scaleOf(7.84)).body);
    for (const said of ['Here', 'Taken down', 'borderline', '7.84 ± 0.10', '7.54', '8.04', '7.50', '8.00'])
      expect(words).toContain(said);
    expect(wordsOf(drawn('verdictScale', scaleOf(9)).body)).toContain('beyond this fuel');
    expect(wordsOf(drawn('verdictScale', scaleOf(6)).body)).toContain('comfortable');
  });
  it('says no ± where none was given', () => {
    expect(wordsOf(drawn('verdictScale', scaleOf(7.84, { plusMinus: 0 })).body)).toContain('7.84');
  });
  it.each([4, 7.54, 7.84, 8.04, 8.5, 12])('puts the mark of %s between the edges as the figure is', (value) => {
    const elements = elementsOf(drawn('verdictScale', scaleOf(value), 700).body);
    const [borderline, beyond] = ['borderline', 'beyond'].map((tone) =>
      Number(elements.find((e) => e.attributes.fill === `url(#${tone}-test)`)!.attributes.x),
    ) as [number, number];
    const mark = elements.find((e) => e.attributes['stroke-width'] === '2.5')!.attributes.d!.match(/^M([\d.]+)/)![1];
    const share = (Number(mark) - borderline) / (beyond - borderline);
    expect(Math.abs(share - (value - 7.54) / (8.04 - 7.54))).toBeLessThan(0.02 + Math.abs(share) * 0.01);
  });
  it.each([
    ['a ratio far off', scaleOf(25)],
    ['edges that are one', scaleOf(7, { fuelVerdict: { word: 'comfortable', value: 7, edges: [8, 8] } })],
    ['a great ±', scaleOf(7.84, { plusMinus: 5 })],
  ])('stands %s', (_, values) => {
    for (const width of [280, 700]) isWell('verdictScale', values, width);
  });
  it('keeps the figures of its edges apart', () => {
    for (const value of [4, 7.84, 12, 25])
      for (const width of [280, 700]) {
        const edges = elementsOf(drawn('verdictScale', scaleOf(value), width).body).filter((e) =>
          /^(7.54|8.04)$/.test(e.text),
        );
        expect(Math.abs(Number(edges[1]!.attributes.x) - Number(edges[0]!.attributes.x))).toBeGreaterThanOrEqual(34);
      }
  });
});

it('words of a figure are escaped: nothing typed becomes markup', () => {
  const values = scaleOf(7.84, { fuelVerdict: { word: '<b>&"', value: 7.84, edges: [7.54, 8.04] } });
  expect(wordsOf(drawn('verdictScale', values).body)).toContain('<b>&"');
});
