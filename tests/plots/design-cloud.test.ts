import { describe, expect, it } from 'vitest';
import { type DesignCloud, designCloud } from '../../src/plots/design-cloud.ts';

const cloud: DesignCloud = {
  label: 'Designs.',
  x: { title: 'Clearance, in', sign: '' },
  y: { title: 'Ratio', sign: '' },
  tried: [
    [0.1, 8.1],
    [0.11, 7.9],
    [0.1, 3],
  ],
  shown: [
    [0.09, 8.3],
    [0.12, 8.0],
    [0.15, 7.4],
  ],
  chosen: 1,
  present: [0.11, 7.8],
  isFront: true,
};
const circles = (body: string, r: number): number =>
  [...body.matchAll(new RegExp(`<circle [^>]* r="${r}"`, 'g'))].length;

describe('a cloud of designs', () => {
  it.each([340, 700])('keeps all it tells of inside the picture, higher up where there is more (%i px)', (width) => {
    const { places, height } = designCloud(cloud, width);
    for (const [x, y] of places) {
      expect(x).toBeGreaterThan(30);
      expect(x).toBeLessThan(width - 10);
      expect(y).toBeGreaterThan(30);
      expect(y).toBeLessThan(height - 45);
    }
    const [xs, ys] = [places.map(([x]) => x), places.map(([, y]) => y)];
    expect(xs).toEqual(xs.toSorted((a, b) => a - b));
    expect(ys).toEqual(ys.toSorted((a, b) => a - b));
  });
  it('draws those told of, the chosen one with its number, the present, and what else stands near', () => {
    const { body } = designCloud(cloud, 700);
    expect(circles(body, 4)).toBe(3);
    expect(circles(body, 6)).toBe(1);
    expect(circles(body, 2)).toBe(2); // the third is far off
    expect(body).toContain('>no. 2</text>');
    expect(body).toContain('>now</text>');
    const bare = designCloud({ ...cloud, present: null, chosen: -1 }, 700).body;
    expect(bare).not.toContain('>now</text>');
    expect(bare).not.toContain('>no. ');
  });
  it('joins a front, and nothing else', () => {
    const joined = /d="M[\d. ]+L[\d. ]+L[\d. ]+"/;
    expect(designCloud(cloud, 700).body).toMatch(joined);
    expect(designCloud({ ...cloud, isFront: false }, 700).body).not.toMatch(joined);
  });
  it('has figures of as many decimals on all ticks of an axis, and their sign', () => {
    const { body } = designCloud({ ...cloud, x: { title: 'Closing', sign: '°', domain: [40, 80] } }, 700);
    const words = [...body.matchAll(/>([\d.]+°?)<\/text>/g)].map((m) => m[1]!);
    expect(words.filter((w) => w.endsWith('°'))).toEqual([
      '40°',
      '45°',
      '50°',
      '55°',
      '60°',
      '65°',
      '70°',
      '75°',
      '80°',
    ]);
    const decimals = words.filter((w) => !w.endsWith('°')).map((w) => w.split('.')[1]?.length ?? 0);
    expect(new Set(decimals).size).toBe(1);
  });
  it('of one design, or of designs that are alike, has axes all the same', () => {
    for (const shown of [
      [[1, 5]],
      [
        [1, 5],
        [2, 5],
      ],
    ] as const) {
      const { body, places } = designCloud({ ...cloud, tried: [], present: null, shown, chosen: 0 }, 700);
      expect(body).not.toContain('NaN');
      expect(places.flat().every(Number.isFinite)).toBe(true);
    }
  });
});
