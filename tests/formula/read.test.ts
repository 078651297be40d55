import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { read, readDifference } from '../../src/formula/read.ts';
import * as q from '../../src/units/quantity.ts';

const length = (text: string) => read(text, q.length, q.length.us);
const inches = (text: string) => {
  const got = length(text);
  if ('fault' in got) throw new Error(got.fault);
  return got.si / 0.0254;
};

describe('a length field in inches reads', () => {
  it.each([
    ['4.070', 4.07],
    ['4.03 in', 4.03],
    ['4.03in', 4.03],
    ['4.03"', 4.03],
    ['102.4mm', 102.4 / 25.4],
    ['102,4 mm', 102.4 / 25.4],
    ['10.24 cm', 102.4 / 25.4],
    ['3 1/2 in', 3.5],
    ['3 1/2', 3.5],
    ['3½', 3.5],
    ['7/16 in', 0.4375],
    ['4.00 + 0.030', 4.03],
    ['4.00 in + 0.030 in', 4.03],
    ['4 in + 0.5 mm', 4 + 0.5 / 25.4],
    ['(4.000 + 0.060) / 1', 4.06],
    ['2 * 1.770 in', 3.54],
    ['0.5 ft', 6],
    ['4.', 4],
    ['.5', 0.5],
    ['0,750', 0.75],
    ['5,85', 5.85],
    ['5,8500', 5.85],
    ['1e1', 10],
    ['−0.030', -0.03],
    ['- 0.030', -0.03],
    ['+4', 4],
    ['  4.07 IN ', 4.07],
  ])('%s', (text, expected) => {
    expect(inches(text)).toBeCloseTo(expected, 12);
  });
});

describe('arithmetic is read as it is printed', () => {
  const plain = (text: string) => {
    const got = read(text, q.ratio, q.ratio.us);
    return 'fault' in got ? got.fault : got.si;
  };
  it.each([
    ['2 + 3 * 4', 14],
    ['2 - 3 - 4', -5],
    ['2^3^2', 512],
    ['-2^2', -4],
    ['(-2)^2', 4],
    ['2^-1', 0.5],
    ['8 / 2 / 2', 2],
    ['1 + 2^2', 5],
    ['6 × 2', 12],
    ['9.5:1', 9.5],
  ])('%s', (text, expected) => expect(plain(text)).toBe(expected));
});

describe('what cannot be read is answered with a sentence that says what to write', () => {
  it.each([
    ['', 'Write a figure.'],
    ['   ', 'Write a figure.'],
    ['1,500', '1,500 can be read two ways. Write 1500 or 1.500.'],
    ['1,500.5', '1,500.5 has more than one decimal mark. Write it with one point and nothing between thousands.'],
    ['1.2.3', '1.2.3 has more than one decimal mark. Write it with one point and nothing between thousands.'],
    ['3-1/2', '3-1/2 can be read two ways. Write 3 1/2 or 3 - 1/2.'],
    ['bore', '“bore” is not a figure or a unit known here.'],
    ['4.0 in + 0.030', 'Give 0.030 a unit too.'],
    ['4 psi', 'That unit does not fit here. Write it in “in”.'],
    ['4 in + 3 psi', 'These units cannot be added.'],
    ['4 +', 'The sum is not finished.'],
    ['(4', 'A bracket is not closed.'],
    ['4 / 0', 'Nothing can be divided by zero.'],
    ['1e999', 'That figure is too large to be of use.'],
    ['4 furlong', '“furlong” is not a figure or a unit known here.'],
    ['4 in mm', '“mm” is not a figure or a unit known here.'],
    ['('.repeat(500), 'Too many brackets.'],
    ['-'.repeat(500) + '4', 'Too many signs.'],
  ])('%s', (text, fault) => expect(length(text)).toEqual({ fault }));
});

describe('temperatures', () => {
  const kelvin = (text: string) => read(text, q.temperature, q.temperature.us);
  it('are read on the scale written, Fahrenheit by itself', () => {
    expect(kelvin('77')).toEqual({ si: expect.closeTo(298.15, 9) as number });
    expect(kelvin('25 C')).toEqual({ si: expect.closeTo(298.15, 9) as number });
    expect(kelvin('25 °C')).toEqual({ si: expect.closeTo(298.15, 9) as number });
    expect(kelvin('80 + 5 F')).toEqual(kelvin('85 F'));
    expect(kelvin('-40 C')).toEqual({ si: expect.closeTo(233.15, 9) as number });
  });
  it('are not added across scales', () => {
    expect(kelvin('20 C + 5 F')).toEqual({ fault: 'Write a temperature as one figure with one unit.' });
  });
  it('differ by degrees, not from the scale’s zero', () => {
    expect(readDifference('9', q.temperature, q.temperature.us)).toEqual({ si: expect.closeTo(5, 9) as number });
    expect(readDifference('5 °C', q.temperature, q.temperature.us)).toEqual({ si: 5 });
    expect(readDifference('10 F', q.length, q.length.us)).toEqual({ fault: '°F does not fit here. Write it in “in”.' });
  });
});

describe('pressures', () => {
  it('keep gauge and absolute apart', () => {
    expect(read('174 psig', q.gaugePressure, q.gaugePressure.us)).toHaveProperty('si');
    expect(read('174 psia', q.gaugePressure, q.gaugePressure.us)).toHaveProperty('fault');
    expect(read('14.7 psig', q.airPressure, q.airPressure.us)).toHaveProperty('fault');
    expect(read('14.7 psi', q.airPressure, q.airPressure.us)).toEqual({ si: expect.closeTo(101352.93, 1) as number });
  });
});

it('any string is answered with a figure or a sentence, never an exception or NaN', () => {
  const alphabet = fc.constantFrom(...'0123456789.,+-*/^() inmpsCF°½"'.split(''), 'in', 'mm', 'psi', '1/2', '1e');
  fc.assert(
    fc.property(
      fc.oneof(
        fc.string({ maxLength: 30 }),
        fc.array(alphabet, { maxLength: 14 }).map((a) => a.join('')),
      ),
      (text) => {
        for (const quantity of [q.length, q.temperature, q.ratio, q.gaugePressure]) {
          const got = read(text, quantity, quantity.us);
          if ('fault' in got) expect(got.fault).toMatch(/\.$/);
          else expect(Number.isFinite(got.si)).toBe(true);
        }
      },
    ),
    { numRuns: 3000, seed: 7 },
  );
});
