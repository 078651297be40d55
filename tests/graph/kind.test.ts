import { describe, expect, it } from 'vitest';
import {
  choice,
  curve,
  type Kind,
  optional,
  record,
  remark,
  scalar,
  sentence,
  table,
  verdict,
  wordAt,
} from '../../src/graph/kind.ts';
import { typed } from '../../src/graph/typed.ts';
import { phrase, say, value } from '../../src/units/phrase.ts';
import {
  faceArea,
  gap,
  gaugePressure,
  length,
  ratio,
  rotation,
  temperature,
  torque,
} from '../../src/units/quantity.ts';

const read = <T>(kind: Kind<T>, text: string): T => {
  const got = typed(kind, text, 'us');
  if ('fault' in got) throw new Error(got.fault);
  return got.value as T;
};
const refused = (kind: Kind<never>, text: string): string => {
  const got = typed(kind, text, 'us');
  return 'fault' in got ? got.fault : 'not refused';
};
/** What is saved goes through text, as in a link. */
const back = <T>(kind: Kind<T>, kept: T): T | undefined => kind.restore(JSON.parse(JSON.stringify(kind.save(kept))));

describe('a figure', () => {
  const bore = scalar(length);

  it('is saved in SI and comes back to the last bit', () => {
    for (const figure of [0.1, 1 / 3, -5e-324, 1.7976931348623157e308, 0.1 + 0.2])
      expect(back(bore, figure)).toBe(figure);
  });

  it('is not restored from what is none', () => {
    for (const saved of ['4', null, undefined, NaN, Infinity, [1], {}, true])
      expect(bore.restore(saved)).toBeUndefined();
  });

  it('is sound when finite, the same when no bit differs', () => {
    expect([1, 0, -1e300].map(bore.sound)).toEqual([true, true, true]);
    expect([NaN, Infinity, -Infinity].map(bore.sound)).toEqual([false, false, false]);
    expect(bore.same(0.1, 0.1)).toBe(true);
    expect(bore.same(0.3, 0.1 + 0.2)).toBe(false);
  });

  it('is said in the units of either system, and read in the unit shown there', () => {
    expect(bore.text(0.1016, 'us')).toBe('4.000 in');
    expect(bore.text(0.1016, 'si')).toBe('101.60 mm');
    expect(read(bore, '4')).toBeCloseTo(0.1016, 15);
    expect(typed(bore, '101.6', 'si')).toEqual({ value: expect.closeTo(0.1016, 15) });
    expect(read(bore, '101.6 mm')).toBeCloseTo(0.1016, 15);
    expect(refused(bore as Kind<never>, 'four')).not.toBe('not refused');
  });
});

describe('a figure that may be left out', () => {
  const dome = optional(scalar(length));

  it('is kept when given and when not', () => {
    expect(back(dome, null)).toBeNull();
    expect(back(dome, 0.002)).toBe(0.002);
    for (const saved of ['', undefined, NaN, {}]) expect(dome.restore(saved)).toBeUndefined();
  });

  it('reads nothing, a dash and words as not given', () => {
    for (const text of ['', '  ', '-', 'none', 'Not given']) expect(read(dome, text)).toBeNull();
    expect(read(dome, '0')).toBe(0);
    expect(read(dome, dome.text(null, 'us'))).toBeNull();
    expect(dome.text(0.00254, 'us')).toBe('0.100 in');
  });

  it('tells nothing from zero', () => {
    expect(dome.same(null, 0)).toBe(false);
    expect(dome.same(null, null)).toBe(true);
    expect([null, 1, NaN].map(dome.sound)).toEqual([true, true, false]);
  });
});

describe('a choice', () => {
  const fuel = choice([
    { id: 'e0', label: 'No ethanol' },
    { id: 'e10', label: 'Ten percent' },
  ]);

  it('is saved, restored, read and said by its options', () => {
    expect(back(fuel, 'e10')).toBe('e10');
    for (const saved of ['E10', 'e85', 10, null]) expect(fuel.restore(saved)).toBeUndefined();
    expect(read(fuel, ' e10 ')).toBe('e10');
    expect(refused(fuel as Kind<never>, 'e85')).toBe('Choose one of: e0, e10.');
    expect(fuel.text('e10', 'us')).toBe('Ten percent');
  });

  it('is sound only when it is on the list', () => {
    expect(fuel.sound('e0')).toBe(true);
    expect(fuel.sound('e85' as 'e0')).toBe(false);
    expect([fuel.same('e0', 'e0'), fuel.same('e0', 'e10')]).toEqual([true, false]);
  });
});

describe('a curve', () => {
  const pull = curve(rotation, torque);
  const at = (x: number[], y: number[]) => ({ x: Float64Array.from(x), y: Float64Array.from(y) });

  it('is saved as plain lists and comes back as samples', () => {
    const kept = at([0, 1, 1 / 3], [0.1, -2, 3]);
    expect(pull.save(kept)).toEqual({ x: [0, 1, 1 / 3], y: [0.1, -2, 3] });
    expect(back(pull, kept)).toEqual(kept);
    expect(back(pull, at([], []))).toEqual(at([], []));
  });

  it('is not restored from what is none', () => {
    const none = [
      null,
      'x',
      {},
      { x: [1] },
      { x: [1], y: [1, 2] },
      { x: [1], y: ['2'] },
      { x: [1], y: [NaN] },
      { x: 1, y: 1 },
    ];
    for (const saved of none) expect(pull.restore(saved)).toBeUndefined();
  });

  it('is the same when every sample is, and sound when every sample is a figure', () => {
    expect(pull.same(at([1, 2], [3, 4]), at([1, 2], [3, 4]))).toBe(true);
    expect(pull.same(at([1, 2], [3, 4]), at([1, 2], [3, 5]))).toBe(false);
    expect(pull.same(at([1, 2], [3, 4]), at([1, 2.5], [3, 4]))).toBe(false);
    expect(pull.same(at([1, 2], [3, 4]), at([1], [3]))).toBe(false);
    expect(pull.sound(at([1, 2], [3, 4]))).toBe(true);
    for (const [x, y] of [
      [
        [1, 2],
        [3, NaN],
      ],
      [
        [1, Infinity],
        [3, 4],
      ],
      [[1, 2], [3]],
    ] as const)
      expect(pull.sound(at([...x], [...y]))).toBe(false);
  });

  it('is said by its points and its peak, and not typed', () => {
    expect(pull.text(at([0, 1, 2], [100, 300, 200]), 'si')).toBe('3 points, at most 300.0 N m');
    expect(pull.text(at([0], [-100]), 'si')).toBe('1 points, at most −100.0 N m');
    expect(pull.text(at([], []), 'si')).toBe('no points');
    expect(refused(pull as Kind<never>, '1 2 3')).toBe('A curve is not typed.');
  });
});

describe('a table', () => {
  const flow = table([
    { id: 'lift', label: 'Lift', quantity: gap },
    { id: 'area', label: 'Area', quantity: faceArea },
  ]);
  const inch = 0.0254;

  it('reads rows as pairs', () => {
    const rows = read(flow, '0.1:64 0.2:128');
    expect(rows).toEqual([
      [expect.closeTo(0.1 * inch, 15), expect.closeTo(64 * inch * inch, 12)],
      [expect.closeTo(0.2 * inch, 15), expect.closeTo(128 * inch * inch, 12)],
    ]);
  });

  it('reads units, signs, other spaces and semicolons in them', () => {
    expect(read(flow, ' 2.54mm:1cm2;\n 0,2:2 ')).toEqual([
      [expect.closeTo(0.1 * inch, 15), expect.closeTo(1e-4, 15)],
      [expect.closeTo(0.2 * inch, 15), expect.closeTo(2 * inch * inch, 15)],
    ]);
    expect(read(flow, '-1:1')[0]![0]).toBeCloseTo(-inch, 15);
  });

  it('takes nothing that is not whole', () => {
    for (const text of ['', '0.1', '0.1:64:2', '0.1:64 0.2'])
      expect(refused(flow as Kind<never>, text)).toBe('Write each row as lift:area.');
    for (const text of ['0.1:x', '0.1:', ':64', '0.1:64cc'])
      expect(refused(flow as Kind<never>, text)).not.toBe('not refused');
  });

  it('is saved and restored as it is, rows and columns', () => {
    const rows = [
      [0.001, 1e-4],
      [0.002, 2e-4],
    ];
    expect(back(flow, rows)).toEqual(rows);
    expect(back(flow, [])).toEqual([]);
    // Lists with holes come from no file, but from a careless hand.
    for (const saved of [null, {}, [[1]], [[1, 2, 3]], [[1, '2']], [[1, NaN]], [1, 2], [Array(2)], Array(1)])
      expect(flow.restore(saved)).toBeUndefined();
  });

  it('is the same row by row, and sound when each row is', () => {
    expect(flow.same([[1, 2]], [[1, 2]])).toBe(true);
    expect(flow.same([[1, 2]], [[1, 3]])).toBe(false);
    expect(
      flow.same(
        [[1, 2]],
        [
          [1, 2],
          [3, 4],
        ],
      ),
    ).toBe(false);
    expect([flow.sound([[1, 2]]), flow.sound([[1, NaN]]), flow.sound([[1]])]).toEqual([true, false, false]);
  });

  it('is said row by row', () => {
    expect(flow.text([[0.1 * inch, 64 * inch * inch]], 'us')).toBe('0.100 in : 64.00 in²');
  });
});

describe('a verdict', () => {
  const kind = verdict(ratio, [
    { id: 'low', label: 'mild', tone: 'comfortable' },
    { id: 'mid', label: 'borderline', tone: 'borderline' },
    { id: 'high', label: 'too high', tone: 'beyond' },
  ]);
  const edges = [8, 8.5];
  const judge = (v: number) => ({
    word: wordAt(kind, v, edges),
    value: v,
    edges,
    lead: ['.', ' A ratio of'],
    place: phrase`lies between ${value(8, ratio)} and ${value(8.5, ratio)}`,
    advice: [],
  });

  it('gives an edge to the word above it, the last edge to the word below', () => {
    const words = [-1, 7.999999, 8, 8.2, 8.5, 8.500001, 99].map((v) => wordAt(kind, v, edges));
    expect(words).toEqual(['low', 'low', 'mid', 'mid', 'mid', 'high', 'high']);
  });

  it('gives an only edge to the word below', () => {
    const two = verdict(ratio, kind.words.slice(0, 2));
    expect([7.9, 8, 8.1].map((v) => wordAt(two, v, [8]))).toEqual(['low', 'low', 'mid']);
  });

  it('is a sentence in either system', () => {
    expect(say(sentence(kind, judge(8.2)), 'us')).toBe('Borderline. A ratio of 8.20 lies between 8.00 and 8.50.');
    const wide = verdict(gap, [{ id: 'close', label: 'close', tone: 'comfortable' }]);
    const squish = {
      word: 'close',
      value: 0.001016,
      edges: [0.000889],
      lead: ['. A gap of'],
      place: phrase`is over ${value(0.000889, gap)}`,
      advice: ['Check it with clay.'],
    };
    expect(say(sentence(wide, squish), 'us')).toBe('Close. A gap of 0.040 in is over 0.035 in. Check it with clay.');
    expect(say(sentence(wide, squish), 'si')).toBe('Close. A gap of 1.02 mm is over 0.89 mm. Check it with clay.');
  });

  it('says its ± beside the value, and that it could be either where an edge lies within it', () => {
    expect(say(sentence(kind, judge(8.25), 0.2), 'us')).toBe(
      'Borderline. A ratio of 8.25\u202f±\u202f0.20 lies between 8.00 and 8.50.',
    );
    expect(say(sentence(kind, judge(8.25), 0.3), 'us')).toBe(
      'Borderline. A ratio of 8.25\u202f±\u202f0.30 lies between 8.00 and 8.50; within its ± it could be either.',
    );
  });

  it('is sound with a word of its own and figures that are some', () => {
    expect(kind.sound(judge(8.2))).toBe(true);
    expect(kind.sound({ ...judge(8.2), word: 'splendid' })).toBe(false);
    expect(kind.sound({ ...judge(8.2), value: NaN })).toBe(false);
    expect(kind.sound({ ...judge(8.2), edges: [8, Infinity] })).toBe(false);
  });

  it('is the same when all it says is, and is neither typed nor restored', () => {
    expect(kind.same(judge(8.2), judge(8.2))).toBe(true);
    expect(kind.same(judge(8.2), judge(8.3))).toBe(false);
    expect(kind.same(judge(8.2), { ...judge(8.2), advice: ['Less timing.'] })).toBe(false);
    expect(kind.text(judge(8.2), 'us')).toBe('borderline');
    expect(kind.restore(kind.save(judge(8.2)))).toBeUndefined();
    expect(refused(kind as Kind<never>, 'mid')).toBe('A verdict is not typed.');
  });
});

describe('a remark', () => {
  const warm = phrase`That is ${value(310.15, temperature)}, and ${value(101325, gaugePressure)}.`;

  it('is said in the units of either system', () => {
    expect(remark.text(warm, 'us')).toBe('That is 99 °F, and 15 psi.');
    expect(remark.text(warm, 'si')).toBe('That is 37.0 °C, and 101 kPa.');
    expect(remark.text(null, 'us')).toBe('nothing to remark');
  });

  it('is the same when its words and values are', () => {
    expect(remark.same(warm, [...warm])).toBe(true);
    expect(remark.same(warm, null)).toBe(false);
    expect(remark.same(warm, phrase`That is ${value(310, temperature)}.`)).toBe(false);
  });
});

describe('figures that belong together', () => {
  const pair = record<{ readonly crank: number; readonly rod: number }>();

  it('are the same when each is, and sound when each is', () => {
    expect(pair.same({ crank: 1, rod: 2 }, { crank: 1, rod: 2 })).toBe(true);
    expect(pair.same({ crank: 1, rod: 2 }, { crank: 1, rod: 3 })).toBe(false);
    expect(pair.sound({ crank: 1, rod: 2 })).toBe(true);
    expect(pair.sound({ crank: 1, rod: NaN })).toBe(false);
  });
});
