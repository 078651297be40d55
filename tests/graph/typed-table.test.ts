import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { table } from '../../src/graph/kind.ts';
import { typed } from '../../src/graph/typed.ts';
import { tableText, typedTable } from '../../src/graph/typed-table.ts';
import { angle, gap } from '../../src/units/quantity.ts';

const lobe = table([
  { id: 'angle', label: 'Angle', quantity: angle },
  { id: 'lift', label: 'Lift', quantity: gap },
]);
const deg = Math.PI / 180; // SI brochure: 1° = π/180 rad
const inch = 0.0254; // exact by definition of the inch
const rowsOf = (text: string, system: 'us' | 'si' = 'us') => {
  const got = typedTable(lobe, text, system);
  if ('fault' in got) throw new Error(got.fault);
  return got.rows;
};
const faultOf = (text: string, system: 'us' | 'si' = 'us'): string => {
  const got = typedTable(lobe, text, system);
  return 'fault' in got ? got.fault : 'not refused';
};
const near = (a: number) => expect.closeTo(a, 14);
const three = [
  [near(0), near(0)],
  [near(5 * deg), near(0.125 * inch)],
  [near(10 * deg), near(0)],
];

describe('a pasted table', () => {
  it.each([
    ['tabs', '0\t0\n5\t0.125\n10\t0'],
    ['semicolons', '0;0\n5; 0.125\n10 ;0'],
    ['spaces', '0 0\n 5   0.125 \n10 0'],
    ['commas', '0,0\n5,0.125\n10,0'],
    ['commas and spaces', '0, 0\n5, 0.125\n10, 0'],
    ['pairs', '0:0 5:0.125 10:0'],
    ['the line ends of any system, and empty lines', '\r\n0\t0\r\n5\t0.125\r\r\n10\t0\n\n'],
    ['commas for the decimal mark', '0;0\n5;0,125\n10;0,0'],
    ['units of its own', '0 deg\t0 in\n5°\t3.175 mm\n10\t0'],
  ])('is read with %s', (_, text) => {
    expect(rowsOf(text)).toEqual(three);
  });

  it('is read in the unit shown', () => {
    expect(rowsOf('0 0\n5 3.175\n10 0', 'si')).toEqual(three);
  });

  it('passes over a heading, and says so and what the figures are read as', () => {
    expect(typedTable(lobe, 'Cam degrees\tLift\n0\t0\n5\t0.125\n10\t0', 'us')).toEqual({
      rows: three,
      notice: 'A heading line was passed over; the figures were read as angle (°) and lift (in).',
    });
    expect(typedTable(lobe, 'Intake\nangle, lift\n0,0', 'si')).toMatchObject({
      notice: '2 heading lines were passed over; the figures were read as angle (°) and lift (mm).',
    });
  });

  it('names the line that cannot be read', () => {
    expect(faultOf('0 0\n5 high\n10 0')).toBe('Line 2: “high” is not a figure or a unit known here.');
    expect(faultOf('angle lift\n\n0 0\n5')).toMatch(/^Line 4: There is only one figure where 2 belong\./);
    expect(faultOf('0 0\n5 0.1 0.2')).toMatch(/^Line 2: There are 3 figures where 2 belong\./);
    expect(faultOf('0;0\n5;')).toBe('Line 2: The lift is missing.');
    expect(faultOf('0 0\n5 1e999')).toBe('Line 2: That figure is too large to be of use.');
    expect(faultOf('0:0 5')).toBe('Write each row as angle:lift.');
    expect(faultOf('0:0 5:x')).toMatch(/^Row 2: “x” is not a figure/);
  });

  it('does not guess at a comma that may be one of two things', () => {
    expect(faultOf('0;0\n5;1,270', 'si')).toBe('Line 2: 1,270 can be read two ways. Write 1270 or 1.270.');
    expect(faultOf('0,0\n5,0,125')).toMatch(/^Line 2: There are 3 figures/);
    expect(faultOf('0,0\n2,5,0,125')).toMatch(/^Line 2: There are 4 figures/);
  });

  it('is nothing when empty, and a sentence when there are words alone or too much', () => {
    expect(rowsOf(' \n ')).toEqual([]);
    expect(faultOf('some words')).toMatch(/^There are only words here\. Write angle and lift on each line/);
    expect(faultOf('0 0\n'.repeat(2001))).toBe('A table has at most 2000 rows; this one has 2001.');
  });

  it('written out is read back as the same rows, in either system', () => {
    // A figure as someone types it: at most four decimals.
    const figure = fc.integer({ min: -7_200_000, max: 7_200_000 }).map((n) => n / 1e4);
    fc.assert(
      fc.property(
        fc.array(fc.tuple(figure, figure), { minLength: 1 }),
        fc.constantFrom('us', 'si'),
        (figures, system) => {
          const rows = rowsOf(figures.map(([a, b]) => `${a} ${b}`).join('\n'), system);
          expect(rowsOf(tableText(lobe, rows, system), system)).toEqual(rows);
          expect(tableText(lobe, rows, system)).toBe(figures.map(([a, b]) => `${a}\t${b}`).join('\n'));
        },
      ),
      { seed: 20260707 },
    );
  });

  it('of any text at all gives sound rows or a sentence', () => {
    const bits = fc.constantFrom(
      '0',
      '5',
      '0.1',
      ',',
      ';',
      '\t',
      ' ',
      '\n',
      ':',
      '-',
      'e',
      'lift',
      '°',
      'in',
      '1e308',
      '(',
    );
    fc.assert(
      fc.property(fc.array(bits, { maxLength: 30 }), (parts) => {
        const got = typedTable(lobe, parts.join(''), 'us');
        if ('fault' in got) expect(got.fault).toMatch(/^[A-Z].*\.$/s);
        else expect(lobe.sound(got.rows)).toBe(true);
      }),
      { numRuns: 3000, seed: 20260707 },
    );
  });

  it('is taken by the command line in lines as well', () => {
    expect(typed(lobe, '0 0\n5 0.125\n10 0', 'us')).toEqual({ value: three });
    expect(typed(lobe, '5 0.125', 'us')).toEqual({ fault: 'Write each row as angle:lift.' });
  });
});
