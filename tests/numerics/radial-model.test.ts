import { describe, expect, it } from 'vitest';
import { halton } from '../../src/numerics/halton.ts';
import { radialModel } from '../../src/numerics/radial-model.ts';

const places = Array.from({ length: 40 }, (_, i) => halton(i + 1, 2));
const wavy = ([x, y]: readonly number[]): number => Math.sin(3 * x!) * (1 + y! ** 2);

describe('a radial model', () => {
  it('goes through its samples, all outputs at once', () => {
    const model = radialModel(places, [places.map(wavy), places.map(([x]) => x! ** 3)])!;
    for (const place of places) {
      const [a, b] = model(place);
      expect(a).toBeCloseTo(wavy(place), 8);
      expect(b).toBeCloseTo(place[0]! ** 3, 8);
    }
  });
  it('is exactly a plane where its samples are', () => {
    const plane = ([x, y]: readonly number[]): number => 4 - 2 * x! + 7 * y!;
    const model = radialModel(places.slice(0, 9), [places.slice(0, 9).map(plane)])!;
    for (const place of [...places, [-1, 3]]) expect(model(place)[0]).toBeCloseTo(plane(place), 8);
  });
  it('comes near to what is smooth between its samples', () => {
    const model = radialModel(places, [places.map(wavy)])!;
    for (let i = 100; i < 200; i++) {
      const [x, y] = halton(i, 2) as [number, number];
      const inside = [0.1 + 0.8 * x, 0.1 + 0.8 * y];
      expect(Math.abs(model(inside)[0]! - wavy(inside))).toBeLessThan(0.03); // of a range of 2
    }
  });
  it('with some give stays closer to the line than noise about it does', () => {
    const xs = Array.from({ length: 30 }, (_, i) => [i / 29]);
    const noise = xs.map((_, i) => 0.05 * (i % 2 === 0 ? 1 : -1));
    const model = radialModel(xs, [xs.map(([x], i) => x! + noise[i]!)], 0.1)!;
    for (const [x] of xs.slice(3, -3)) expect(Math.abs(model([x!])[0]! - x!)).toBeLessThan(0.02);
  });
  it('has nothing to say of too few samples, or of samples on a line where there is a plane', () => {
    expect(radialModel(places.slice(0, 2), [[1, 2]])).toBe(null);
    const line = [0, 0.25, 0.5, 1].map((v) => [v, 2 * v]);
    expect(radialModel(line, [[1, 2, 3, 4]])).toBe(null);
  });
});

describe('an even sequence', () => {
  it('begins with the halves, quarters and thirds of its mirrored digits', () => {
    expect([1, 2, 3, 4].map((i) => halton(i, 2)[0])).toEqual([1 / 2, 1 / 4, 3 / 4, 1 / 8]);
    expect([1, 2, 3, 4].map((i) => halton(i, 2)[1])).toEqual([
      1 / 3,
      2 / 3,
      expect.closeTo(1 / 9, 15),
      expect.closeTo(4 / 9, 15),
    ]);
  });
  it('leaves no large part of a cube empty and crowds none', () => {
    for (const dimensions of [1, 2, 3, 4]) {
      const points = Array.from({ length: 420 }, (_, i) => halton(i + 1, dimensions));
      for (let k = 0; k < dimensions; k++)
        for (let part = 0; part < 10; part++) {
          const inside = points.filter((p) => Math.floor(p[k]! * 10) === part).length;
          expect(inside).toBeGreaterThanOrEqual(37); // by chance it would be 27 to 57
          expect(inside).toBeLessThanOrEqual(47);
        }
    }
  });
  it('fills the plane of any two of its coordinates', () => {
    const points = Array.from({ length: 420 }, (_, i) => halton(i + 1, 4));
    for (const [a, b] of [
      [0, 1],
      [0, 2],
      [0, 3],
      [1, 2],
      [1, 3],
      [2, 3],
    ] as const)
      for (let box = 0; box < 16; box++) {
        const inside = points.filter((p) => Math.floor(p[a]! * 4) * 4 + Math.floor(p[b]! * 4) === box).length;
        expect(Math.abs(inside - 420 / 16)).toBeLessThan(9);
      }
  });
  it('has no fifth coordinate', () => expect(() => halton(1, 5)).toThrow(RangeError));
});
