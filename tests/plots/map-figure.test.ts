import { describe, expect, it } from 'vitest';
import { mapDrawing, type MapDrawing, overMap } from '../../src/plots/map-drawing.ts';
import { type MapGround, type MapPicture, mapTwin } from '../../src/plots/map-figure.ts';
import { levelsOf, reliefOf } from '../../src/plots/map-relief.ts';
import { tradeOf } from '../../src/plots/map-trade.ts';
import type { Grid } from '../../src/plots/grid.ts';
import { type Element, elementsOf, wordsOf } from './markup.ts';

const gridOf = (across: number, up: number, value: (a: number, b: number) => number): Grid => ({
  across,
  up,
  values: Float64Array.from({ length: across * up }, (_, n) =>
    value((n % across) / (across - 1), Math.floor(n / across) / (up - 1)),
  ),
});
const axis = (title: string, domain: readonly [number, number]): MapGround['x'] => ({ title, domain, text: String });
/** A plane from 6 to 9, one unit of x worth two of y. */
const plane: MapGround = {
  x: axis('Across', [0, 10]),
  y: axis('Up', [100, 200]),
  z: { title: 'Ratio', exact: (v) => v.toFixed(2) },
  grid: gridOf(65, 65, (a, b) => 6 + a + 2 * b),
  stands: null,
  words: [],
  edges: [],
  others: [],
};
const judged: MapGround = {
  ...plane,
  words: [
    { tone: 'comfortable', label: 'comfortable' },
    { tone: 'borderline', label: 'borderline' },
    { tone: 'beyond', label: 'beyond this fuel' },
  ],
  edges: [gridOf(17, 17, () => 7.48), gridOf(17, 17, () => 8)],
};
const value = (x: number, y: number): number => 6 + x / 10 + (y - 100) / 50;
type Mark = MapPicture['mark'];
const mark = (x: number, y: number): Mark => ({ x, y, z: value(x, y), movable: true });
const drawn = new Map<MapGround, MapDrawing>();
function drawingOf(ground: MapGround): MapDrawing {
  const drawing = drawn.get(ground) ?? mapDrawing(ground, 600, 'm');
  drawn.set(ground, drawing);
  return drawing;
}
const overOf = (ground: MapGround, at: Mark = null): string =>
  overMap({ label: '', ground, mark: at }, drawingOf(ground));
/** Where a text stands, in the figure's units: the middle of its letters. */
function placeOf(ground: MapGround, words: string): { x: number; y: number } {
  const found = elementsOf(overOf(ground)).filter(({ name, text }) => name === 'text' && text === words);
  if (found.length !== 1) throw new Error(`${found.length} say "${words}"`);
  const { x, y } = found[0]!.attributes;
  return drawingOf(ground).valueAt(Number(x), Number(y) - 5);
}
/** The places of drawn lines of a look, in the figure's units. */
const linesOf = (ground: MapGround, is: (look: Element['attributes']) => boolean): { x: number; y: number }[][] =>
  elementsOf(drawingOf(ground).body)
    .filter(({ name, attributes }) => name === 'path' && attributes.fill === 'none' && is(attributes))
    .map(({ attributes }) =>
      attributes
        .d!.slice(1)
        .split('L')
        .map((pair) => pair.split(' ').map(Number))
        .map(([x, y]) => drawingOf(ground).valueAt(x!, y!)),
    );
/** Whether a place in px is inside a path of straight lines, by the even-odd rule: a ray to the right. */
function isInside(d: string, px: number, py: number): boolean {
  let crossings = 0;
  for (const ring of d.split('M').slice(1)) {
    const places = cornersOf(ring.replace('Z', ''));
    for (const [n, [x2, y2]] of places.entries()) {
      const [x1, y1] = places.at(n - 1)!;
      if (y1 > py !== y2 > py && px < x1 + ((x2 - x1) * (py - y1)) / (y2 - y1)) crossings++;
    }
  }
  return crossings % 2 === 1;
}
/** "0 1L2 3" or the box "0 1h8v5h-8" as corners. */
function cornersOf(ring: string): [number, number][] {
  const box = /^(\S+) (\S+)h(\S+)v(\S+)h/.exec(ring);
  if (!box) return ring.split('L').map((pair) => pair.split(' ').map(Number) as [number, number]);
  const [x, y, width, height] = box.slice(1).map(Number) as [number, number, number, number];
  return [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ];
}
/** A tenth of a px is worth less than this. */
const close = 0.002;

describe('the lines of a map', () => {
  it('are drawn for even values inside its range, all with the same digits', () => {
    expect(levelsOf(reliefOf(plane)!).map(([, figure]) => figure)).toEqual(['6.5', '7.0', '7.5', '8.0', '8.5']);
    const wide = { ...plane, grid: gridOf(65, 65, (a, b) => -40 + 100 * a + b) };
    expect(levelsOf(reliefOf(wide)!)).toEqual([
      [-20, '−20'],
      [0, '0'],
      [20, '20'],
      [40, '40'],
      [60, '60'],
    ]);
  });
  it('do not run beside an edge that has the same value', () => {
    expect(levelsOf(reliefOf(judged)!).map(([level]) => level)).toEqual([6.5, 7, 8.5]);
    const elsewhere = { ...judged, others: [gridOf(17, 17, () => 6.99)] };
    expect(levelsOf(reliefOf(elsewhere)!).map(([level]) => level)).toEqual([6.5, 8.5]);
  });
  it('are none where all is the same, or nothing has an answer', () => {
    for (const grid of [gridOf(9, 9, () => 7), gridOf(9, 9, () => Number.NaN)])
      expect(levelsOf(reliefOf({ ...plane, grid })!)).toEqual([]);
  });
  it('lie where the value is theirs, and say it', () => {
    const lines = linesOf(plane, ({ stroke }) => stroke === 'var(--ink-2)');
    expect(lines).toHaveLength(5);
    for (const [i, line] of lines.entries())
      for (const { x, y } of line) expect(Math.abs(value(x, y) - (6.5 + 0.5 * i))).toBeLessThan(close);
    for (const figure of ['6.5', '7.0', '7.5', '8.0', '8.5']) {
      const { x, y } = placeOf(plane, figure);
      expect(Math.abs(value(x, y) - Number(figure))).toBeLessThan(0.03); // half the height of a letter
    }
  });
});

describe('the edges of a map', () => {
  it('lie where the verdict turns, in the ink of the graver word, and say their value', () => {
    for (const [ink, edge, figure] of [
      ['border', 7.48, '7.48'],
      ['beyond', 8, '8.00'],
    ] as const) {
      const lines = linesOf(judged, ({ stroke }) => stroke === `var(--${ink})`);
      expect(lines).toHaveLength(1);
      for (const { x, y } of lines[0]!) expect(Math.abs(value(x, y) - edge)).toBeLessThan(close);
      const place = placeOf(judged, figure);
      expect(Math.abs(value(place.x, place.y) - edge)).toBeLessThan(0.03);
    }
  });
  it('that are another at each place run where they are, and say no value', () => {
    const rising = { ...judged, edges: [gridOf(17, 17, (a) => 6.4 + a), gridOf(17, 17, (a) => 7.4 + a)] };
    const [line] = linesOf(rising, ({ stroke }) => stroke === 'var(--beyond)');
    for (const { x, y } of line!) expect(Math.abs(value(x, y) - 7.4 - x / 10)).toBeLessThan(close);
    expect(wordsOf(overOf(rising)).filter((words) => /^\d\.\d\d$/.test(words))).toEqual([]);
  });
  it('of elsewhere are dashed', () => {
    const both = { ...judged, others: [gridOf(17, 17, () => 7)] };
    const [line] = linesOf(both, (look) => look['stroke-dasharray'] !== undefined);
    for (const { x, y } of line!) expect(Math.abs(value(x, y) - 7)).toBeLessThan(close);
    expect(wordsOf(overOf(both))).toContain('7.00');
  });
  it('part zones that have their words inside; comfortable has no fill', () => {
    const zone = (words: string): number => {
      const { x, y } = placeOf(judged, words);
      return value(x, y);
    };
    expect(zone('comfortable')).toBeLessThan(7.48);
    expect(zone('borderline')).toBeGreaterThan(7.48);
    expect(zone('borderline')).toBeLessThan(8);
    expect(zone('beyond this fuel')).toBeGreaterThan(8);
  });
  it.each([
    ['rising', judged],
    ['falling', { ...judged, words: judged.words.toReversed() }],
  ] as const)('fill just the places of their words, with caution %s; comfortable has no fill', (_, ground) => {
    const { size, valueAt, body } = drawingOf(ground);
    const fills = elementsOf(body).filter(({ attributes }) => attributes['fill-rule'] === 'evenodd');
    expect(fills.map(({ attributes }) => attributes.fill!).toSorted()).toEqual([
      'url(#beyond-m)',
      'url(#borderline-m)',
    ]);
    const tones = ground.words.map(({ tone }) => tone);
    let looked = 0;
    for (let px = size.marginLeft + 3; px < size.width - size.marginRight; px += 31)
      for (let py = size.marginTop + 3; py < size.height - size.marginBottom; py += 29) {
        const { x, y } = valueAt(px, py);
        const here = value(x, y);
        if (Math.min(Math.abs(here - 7.48), Math.abs(here - 8)) < 0.01) continue; // on the line
        const tone = tones[here < 7.48 ? 0 : here < 8 ? 1 : 2]!;
        for (const { attributes } of fills)
          expect(isInside(attributes.d!, px, py), `${tone} at ${px}, ${py}`).toBe(
            attributes.fill === `url(#${tone}-m)`,
          );
        looked++;
      }
    expect(looked).toBeGreaterThan(150);
  });
  it('where the lower values are the graver ones, the inks follow the words', () => {
    const tight = { ...judged, words: judged.words.toReversed() };
    const [line] = linesOf(tight, ({ stroke }) => stroke === 'var(--beyond)');
    for (const { x, y } of line!) expect(Math.abs(value(x, y) - 7.48)).toBeLessThan(close);
    const { x, y } = placeOf(tight, 'beyond this fuel');
    expect(value(x, y)).toBeLessThan(7.48);
  });
});

describe('a map that nothing judges', () => {
  it('is darker from line to line, from 6 to 30 %', () => {
    const tints = elementsOf(drawingOf(plane).body).flatMap(({ attributes }) => attributes['fill-opacity'] ?? []);
    expect(tints.map(Number)).toEqual([0.06, 0.108, 0.156, 0.204, 0.252, 0.3]);
  });
});

describe('the point on a map', () => {
  it('has its values on the axes, where they replace figures that stand too near, and its own beside it', () => {
    expect(wordsOf(overOf(plane))).toContain('4');
    const said = wordsOf(overOf(plane, mark(4.1, 141)));
    expect(said).toContain('4.1');
    expect(said).toContain('141');
    expect(said).not.toContain('4');
    expect(said).not.toContain('140');
    expect(said).toContain(value(4.1, 141).toFixed(2));
  });
  it('takes away the words it would stand on, and no others', () => {
    const place = placeOf(plane, '7.5');
    const said = wordsOf(overOf(plane, mark(place.x, place.y)));
    expect(said).not.toContain('7.5');
    for (const figure of ['6.5', '8.5']) expect(said).toContain(figure);
  });
  it.each([
    [0, 100],
    [10, 200],
    [0, 200],
    [10, 100],
  ])('has its value inside the figure in the corner %d, %d', (x, y) => {
    const { size } = drawingOf(plane);
    const figure = elementsOf(overOf(plane, mark(x, y))).find(({ text }) => text === value(x, y).toFixed(2))!;
    const [px, py] = [Number(figure.attributes.x), Number(figure.attributes.y)];
    expect(px).toBeGreaterThan(size.marginLeft);
    expect(px + 30).toBeLessThan(size.width - 10);
    expect(py).toBeGreaterThan(size.marginTop);
    expect(py).toBeLessThan(size.height - size.marginBottom);
  });
});

describe('a map with gaps', () => {
  const half = { ...judged, grid: gridOf(65, 65, (a, b) => (a > 0.5 ? Number.NaN : 6 + a + 2 * b)) };
  it('is cut off where answers end, and says so there', () => {
    const { body } = drawingOf(half);
    expect(elementsOf(body).map(({ name }) => name)).toContain('clipPath');
    expect(placeOf(half, 'no answer').x).toBeGreaterThan(5);
    for (const words of ['comfortable', 'borderline', 'beyond this fuel', '7.48', '8.00'])
      expect(placeOf(half, words).x, words).toBeLessThan(5);
  });
  it('through and through says it once, and nothing else', () => {
    const none = { ...judged, grid: gridOf(65, 65, () => Number.NaN) };
    const said = wordsOf(overOf(none)).filter((words) => !/^\d+$/.test(words));
    expect(said).toEqual(['no answer']);
  });
});

describe('a slow map', () => {
  const [across, up] = [13, 13];
  const partly = (isThere: (k: number, i: number) => boolean): MapGround => {
    const stands = Array.from({ length: across * up }, (_, n) => (isThere(n % across, Math.floor(n / across)) ? 1 : 0));
    const { values } = gridOf(across, up, (a, b) => 6 + a + 2 * b);
    return { ...plane, stands, grid: { across, up, values: Array.from(values, (v, n) => (stands[n] ? v : NaN)) } };
  };
  const dots = (ground: MapGround): number =>
    elementsOf(drawingOf(ground).body).filter(({ name }) => name === 'circle').length;

  it('has a dot for each point that stands', () => {
    expect(dots(partly(() => true))).toBe(169);
    expect(dots(partly((k, i) => k % 2 === 0 && i % 2 === 0))).toBe(49);
    expect(dots(plane)).toBe(0);
  });
  it('has its lines between the points that stand, and none before the corners do', () => {
    const lines = linesOf(
      partly((k, i) => k % 4 === 0 && i % 4 === 0),
      ({ stroke }) => stroke === 'var(--ink-2)',
    );
    expect(lines).toHaveLength(5);
    for (const [i, line] of lines.entries())
      for (const { x, y } of line) expect(Math.abs(value(x, y) - (6.5 + 0.5 * i))).toBeLessThan(close);
    const bare = partly((k) => k < 3);
    expect(drawingOf(bare).relief).toBeNull();
    expect(dots(bare)).toBe(39);
  });
});

describe('what one axis is worth in the other', () => {
  const trade = (ground: MapGround, at: Mark) => tradeOf({ label: '', ground, mark: at }, reliefOf(ground)!);
  // 0.1 of value for each x, 0.02 for each y
  it('is told along a line of equal value', () => {
    const found = trade(plane, mark(4, 140))!;
    expect([found.word, found.dx]).toEqual([null, 1]);
    expect(found.dy).toBeCloseTo(-5, 9);
  });
  it('is told along the edge that is nearest', () => {
    expect(trade(judged, mark(4, 150))).toMatchObject({ word: 'borderline', dx: 1 });
    expect(trade(judged, mark(4, 190))).toMatchObject({ word: 'beyond this fuel', dx: 1 });
    // An edge that rises by 0.05 for each x: value less edge grows by 0.05 for each x.
    const rising = { ...judged, edges: [gridOf(17, 17, (a) => 7 + a / 2), gridOf(17, 17, (a) => 9 + a / 2)] };
    expect(trade(rising, mark(4, 150))!.dy).toBeCloseTo(-2.5, 6);
  });
  it('is not told where there is no telling', () => {
    expect(trade(plane, null)).toBeNull();
    for (const slope of [
      (a: number): number => a,
      (...[, b]: [number, number]): number => b,
      () => 7,
      (a: number, b: number): number => 50 * a + b,
    ])
      expect(trade({ ...plane, grid: gridOf(65, 65, slope) }, mark(4, 140))).toBeNull();
  });
});

describe('the table of a map', () => {
  it('has nine by nine of its values, the highest row on top', () => {
    const { columns, rows } = mapTwin(plane);
    expect(columns).toEqual(['Up', '0', '1.25', '2.5', '3.75', '5', '6.25', '7.5', '8.75', '10']);
    expect(rows.map(([y]) => y)).toEqual(['200', '187.5', '175', '162.5', '150', '137.5', '125', '112.5', '100']);
    for (const [y, ...row] of rows)
      row.forEach((text, k) => expect(text).toBe(value(Number(columns[k + 1]), Number(y)).toFixed(2)));
  });
  it('leaves a dash where there is no answer or none yet', () => {
    const slow = {
      ...plane,
      grid: gridOf(13, 13, (a) => (a === 0 ? Number.NaN : a)),
      stands: new Uint8Array(169).fill(1, 0, 13),
    };
    const { rows } = mapTwin(slow);
    expect(rows).toHaveLength(7);
    expect(rows.at(-1)).toEqual(['100', '–', '0.17', '0.33', '0.50', '0.67', '0.83', '1.00']);
    expect(rows[0]!.slice(1)).toEqual(Array.from({ length: 7 }, () => '–'));
  });
});

it('a map’s markup is sound, whatever its titles hold', () => {
  const odd = {
    ...judged,
    x: { ...judged.x, title: 'A < B & "C"' },
    words: judged.words.map((w) => ({ ...w, label: `<${w.label}>` })),
  };
  expect(() => elementsOf(drawingOf(odd).body)).not.toThrow();
  expect(() => elementsOf(overOf(odd, mark(4, 140)))).not.toThrow();
  for (const width of [320, 640]) {
    const { size } = mapDrawing(judged, width, 'm');
    expect(size.width).toBe(width);
    expect(size.width - size.marginLeft - size.marginRight).toBeGreaterThan(250);
  }
});
