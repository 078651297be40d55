import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { differenceFigure, figure, format, withUnit } from '../../src/units/format.ts';
import { phrase, say, value } from '../../src/units/phrase.ts';
import { angle, gaugePressure, length, octane, ratio, temperature } from '../../src/units/quantity.ts';
import {
  cubicInch,
  degree,
  fahrenheit,
  foot,
  inch,
  inchOfMercury,
  one,
  poundFoot,
  psi,
  si,
} from '../../src/units/unit.ts';

const plain = (x: number, digits: number, trim = false): string => figure(x, { unit: one, digits, step: 1 }, trim);

describe('a figure is printed', () => {
  it.each([
    [4.07, 3, '4.070'],
    [0.5, 0, '1'],
    [1.5, 0, '2'],
    [2.5, 0, '3'],
    [-2.5, 0, '−3'],
    [1.005, 2, '1.01'], // in binary it lies a little under the half
    [8.345, 2, '8.35'],
    [-1.005, 2, '−1.01'],
    [1.0049, 2, '1.00'],
    [0.045, 2, '0.05'],
    [999.9995, 3, '1000.000'],
    [1e-9, 3, '0.000'],
    [123456789, 1, '123456789.0'],
  ])('%s with %s digits: %s', (x, digits, text) => expect(plain(x, digits)).toBe(text));

  it('without a sign where nothing is left of it', () => {
    for (const x of [-0, -0.0004, -1e-300]) expect(plain(x, 3)).toBe('0.000');
    expect(plain(-0.0005, 3)).toBe('−0.001');
  });

  it('without its “.0” where whole figures are trimmed', () => {
    expect([61, 61.5, 60.96, -61.04, 0, 100].map((x) => plain(x, 1, true))).toEqual([
      '61',
      '61.5',
      '61',
      '−61',
      '0',
      '100',
    ]);
    expect(plain(61.1, 2, true)).toBe('61.10');
    expect(plain(100, 0, true)).toBe('100');
  });

  it('in powers of ten where it is out of all bounds', () => {
    expect(plain(1e15, 2)).toBe('1.000e+15');
    expect(plain(-2.5e300, 0)).toBe('−2.500e+300');
    expect(plain(999999999999999, 0)).toBe('999999999999999');
    expect(plain(1.7976931348623157e308, 4)).toBe('1.798e+308');
  });

  it('exactly, when it is a decimal of that many digits', () => {
    const property = fc.property(fc.integer({ min: -1e9, max: 1e9 }), fc.integer({ min: 1, max: 4 }), (n, digits) => {
      const text = String(Math.abs(n)).padStart(digits + 1, '0');
      const sign = n < 0 ? '−' : '';
      expect(plain(n / 10 ** digits, digits)).toBe(`${sign}${text.slice(0, -digits)}.${text.slice(-digits)}`);
      // And half a digit more goes away from zero.
      const half = `${Math.abs(n)}5`;
      const up = String(Math.abs(n) + 1).padStart(digits + 1, '0');
      expect(plain(Number(`${n < 0 ? '-' : ''}${half}e-${digits + 1}`), digits)).toBe(
        `${sign}${up.slice(0, -digits)}.${up.slice(-digits)}`,
      );
    });
    fc.assert(property, { seed: 4, numRuns: 2000 });
  });

  it('as it was typed, half digits up, after having gone through SI', () => {
    for (const unit of [inch, foot, psi, inchOfMercury, cubicInch, degree, poundFoot])
      for (let n = 0; n < 3000; n++) {
        const shown = { unit, digits: 3, step: 1 };
        expect(figure(si((2 * n + 1) / 2000, unit), shown)).toBe(((n + 1) / 1000).toFixed(3));
      }
  });

  it('never further off than half its last digit', () => {
    const property = fc.property(
      fc.double({ min: -1e8, max: 1e8, noNaN: true }),
      fc.integer({ min: 0, max: 4 }),
      (x, digits) => {
        const printed = Number(plain(x, digits).replace('−', '-'));
        expect(Math.abs(printed - x)).toBeLessThanOrEqual((0.5 + 1e-6) * 10 ** -digits);
      },
    );
    fc.assert(property, { seed: 5, numRuns: 2000 });
  });
});

describe('a figure with its unit', () => {
  it('stands apart from it, but for degrees and plain figures', () => {
    expect(format(si(4.07, length.us.unit), length, 'us')).toBe('4.070 in');
    expect(format(si(4.07, length.us.unit), length, 'si')).toBe('103.38 mm');
    expect(format(Math.PI / 3, angle, 'us')).toBe('60°');
    expect(format(9.5, ratio, 'us')).toBe('9.50');
    expect(format(91, octane, 'si')).toBe('91');
    expect(format(294.26, temperature, 'us')).toBe('70 °F');
    expect(withUnit('12', gaugePressure.us)).toBe('12 psi');
  });

  it('that is a difference knows no zero point', () => {
    const shown = { unit: fahrenheit, digits: 1, step: 1 };
    expect(differenceFigure(5, shown)).toBe('9.0');
    expect(differenceFigure(-5, shown)).toBe('−9.0');
    expect(differenceFigure(5, shown, true)).toBe('9');
    expect(figure(273.15, shown)).toBe('32.0');
  });
});

describe('a phrase', () => {
  it('is said in the units of either system', () => {
    const words = phrase`The rod is shorter than the throw, ${value(0.0442, length)}.`;
    expect(say(words, 'us')).toBe('The rod is shorter than the throw, 1.740 in.');
    expect(say(words, 'si')).toBe('The rod is shorter than the throw, 44.20 mm.');
  });

  it('may hold phrases, words and several values', () => {
    const inner = phrase`between ${value(8, ratio)} and ${value(9, ratio)}`;
    expect(say(phrase`It lies ${inner}, ${'so far'}.`, 'us')).toBe('It lies between 8.00 and 9.00, so far.');
    expect(say(phrase`Nothing to add.`, 'us')).toBe('Nothing to add.');
    expect(say([], 'us')).toBe('');
  });

  it('crosses to a worker as it is', () => {
    const words = phrase`At ${value(1, angle)}.`;
    expect(structuredClone(words)).toEqual(words);
    expect(JSON.parse(JSON.stringify(words))).toEqual(words);
  });
});
