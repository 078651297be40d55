import { unitNamed, unitsBySpelling } from '../units/spellings.ts';
import type { Unit } from '../units/unit.ts';

/** What was written, as a tree. */
export type Tree =
  | { readonly is: 'number'; readonly value: number; readonly text: string }
  | { readonly is: 'unit'; readonly of: Tree; readonly unit: Unit }
  | { readonly is: 'minus'; readonly of: Tree }
  | { readonly is: 'sum' | 'difference' | 'product' | 'quotient' | 'power'; readonly left: Tree; readonly right: Tree };

/** What cannot be read, as a sentence for whoever typed it. */
export class Unreadable extends Error {}

const binary: Readonly<Record<string, readonly [is: 'sum' | 'difference' | 'product' | 'quotient', binds: number]>> = {
  '+': ['sum', 1],
  '-': ['difference', 1],
  '*': ['product', 2],
  '/': ['quotient', 2],
};
const spellings = [...unitsBySpelling.keys()].toSorted((a, b) => b.length - a.length);
const vulgar: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};
const deepest = 64;

/**
 * Reads arithmetic with units: sums, products, powers, brackets, fractions ("3 1/2 in"), a point or a comma as
 * the decimal mark. The power binds before the sign and to the right, as in print: -2^2 = -4, 2^3^2 = 2^9.
 * Throws Unreadable with a sentence.
 */
export function parse(written: string): Tree {
  const text = plain(written);
  if (text.trim() === '') throw new Unreadable('Write a figure.');
  let at = 0;

  const skip = (): void => {
    while (text[at] === ' ') at++;
  };
  const next = (): string => {
    skip();
    return text[at] ?? '';
  };

  function sum(binds: number, depth: number): Tree {
    if (depth > deepest) throw new Unreadable('Too many brackets.');
    let left = signed(depth);
    for (;;) {
      const found = binary[next()];
      if (!found || found[1] < binds) return left;
      at++;
      left = { is: found[0], left, right: sum(found[1] + 1, depth + 1) };
    }
  }
  function signed(depth: number): Tree {
    if (depth > deepest) throw new Unreadable('Too many signs.');
    const c = next();
    if (c === '-' || c === '+') {
      at++;
      const of = signed(depth + 1);
      return c === '-' ? { is: 'minus', of } : of;
    }
    const base = measured(depth);
    if (next() !== '^') return base;
    at++;
    return { is: 'power', left: base, right: signed(depth + 1) };
  }
  function measured(depth: number): Tree {
    let of = primary(depth);
    skip();
    const spelling = unitAt(text, at);
    if (spelling) {
      at += spelling.length;
      of = { is: 'unit', of, unit: unitNamed(spelling)! };
    }
    return of;
  }
  function primary(depth: number): Tree {
    if (next() === '(') {
      at++;
      const inside = sum(1, depth + 1);
      if (next() !== ')') throw new Unreadable('A bracket is not closed.');
      at++;
      return inside;
    }
    const rest = text.slice(at);
    const fraction = /^(?:(\d+) +)?(\d+)\/(\d+)(?![\d.,])/.exec(rest);
    if (fraction && Number(fraction[3]) !== 0) {
      at += fraction[0].length;
      return {
        is: 'number',
        value: Number(fraction[1] ?? 0) + Number(fraction[2]) / Number(fraction[3]),
        text: fraction[0],
      };
    }
    if (/^\d+-\d+\/\d+/.test(rest)) {
      const whole = /^(\d+)-(\d+\/\d+)/.exec(rest)!;
      throw new Unreadable(
        `${whole[0]} can be read two ways. Write ${whole[1]} ${whole[2]} or ${whole[1]} - ${whole[2]}.`,
      );
    }
    const digits = /^[\d.,]*\d[\d.,]*(?:e[+-]?\d+)?/i.exec(rest)?.[0];
    if (digits === undefined) throw new Unreadable(complaint(rest));
    at += digits.length;
    return { is: 'number', value: decimal(digits), text: digits };
  }

  const tree = sum(1, 0);
  if (next() !== '') throw new Unreadable(complaint(text.slice(at)));
  return tree;
}

/** One spelling for each sign people type or paste. */
const plain = (written: string): string =>
  written
    .replace(/[\u00a0\u2009\u202f\s]+/g, ' ')
    .replace(/[−–—]/g, '-')
    .replace(/[×·∙](?=\s*[\d(])/g, '*')
    .replace(/÷/g, '/')
    .replace(/\d?\s*[½¼¾⅛⅜⅝⅞]/g, (m) => `${m.slice(0, -1).trim()} ${vulgar[m.slice(-1)]!}`);

/** The longest unit spelling that starts here and is not the beginning of a longer word. */
function unitAt(text: string, at: number): string | undefined {
  const rest = text.slice(at, at + 24);
  for (const fold of [false, true])
    for (const s of spellings) {
      const here = rest.slice(0, s.length);
      if ((fold ? here.toLowerCase() === s.toLowerCase() : here === s) && !/^[\p{L}\d]/u.test(rest.slice(s.length)))
        return here;
    }
  return undefined;
}

/** A comma is a decimal mark unless it stands before exactly three digits, where it might part thousands: not guessed. */
function decimal(text: string): number {
  const [mantissa = '', exponent] = text.toLowerCase().split('e');
  if (/^\d*\.?\d*$/.test(mantissa)) return finite(Number(text));
  if (/^0,\d+$/.test(mantissa) || /^\d*,(?:\d{1,2}|\d{4,})?$/.test(mantissa))
    return finite(Number(mantissa.replace(',', '.') + (exponent === undefined ? '' : `e${exponent}`)));
  if (/^\d+,\d{3}$/.test(mantissa))
    throw new Unreadable(
      `${mantissa} can be read two ways. Write ${mantissa.replace(',', '')} or ${mantissa.replace(',', '.')}.`,
    );
  throw new Unreadable(
    `${mantissa} has more than one decimal mark. Write it with one point and nothing between thousands.`,
  );
}

function finite(value: number): number {
  if (!Number.isFinite(value)) throw new Unreadable('That figure is too large to be of use.');
  return value;
}

function complaint(rest: string): string {
  const found = /^[\p{L}_][\p{L}\d_]*/u.exec(rest)?.[0] ?? rest.trim().slice(0, 12);
  return found === '' ? 'The sum is not finished.' : `“${found}” is not a figure or a unit known here.`;
}
