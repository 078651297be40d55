import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { csv } from '../../src/exports/csv.ts';

/** Reads comma-separated text by the grammar of RFC 4180, section 2: rows end in CRLF, quotes are doubled in quotes. */
function read(text: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  let at = 0;
  while (at < text.length) {
    if (text[at] === '"') {
      const end = /(?:[^"]|"")*"/y;
      end.lastIndex = at + 1;
      const found = end.exec(text);
      if (!found) throw new Error('a quote is left open');
      row.push(found[0].slice(0, -1).replaceAll('""', '"'));
      at = end.lastIndex;
    } else {
      const end = /[^",\r\n]*/y;
      end.lastIndex = at;
      row.push(end.exec(text)![0]);
      at = end.lastIndex;
    }
    if (text[at] === ',') at++;
    else if (text.startsWith('\r\n', at)) {
      rows.push(row);
      row = [];
      at += 2;
    } else throw new Error(`neither comma nor end of row at ${at}: ${JSON.stringify(text.slice(at, at + 10))}`);
  }
  return rows;
}

it('the reader of these tests reads the examples of RFC 4180', () => {
  expect(read('aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n')).toEqual([
    ['aaa', 'bbb', 'ccc'],
    ['zzz', 'yyy', 'xxx'],
  ]);
  expect(read('"aaa","b\r\nbb","ccc"\r\n"aaa","b""bb",""\r\n')).toEqual([
    ['aaa', 'b\r\nbb', 'ccc'],
    ['aaa', 'b"bb', ''],
  ]);
});

describe('rows as comma-separated text', () => {
  it('stand under their title and heads, a row a line', () => {
    expect(csv('Ratio against closing', ['Closing', 'Ratio'], [['40°', '8.81']])).toBe(
      '# Ratio against closing\r\nClosing,Ratio\r\n40°,8.81\r\n',
    );
  });
  it('quote what needs it and nothing else', () => {
    expect(csv('', ['a,b', 'say "c"', 'd\ne', 'f g'], [])).toBe('# \r\n"a,b","say ""c""","d\ne",f g\r\n');
  });
  it('come back as they were, whatever was in them', () => {
    const texts = fc.array(fc.string({ unit: fc.constantFrom('"', ',', '\r', '\n', ' ', 'a', '5', 'é') }), {
      minLength: 2,
      maxLength: 4,
    });
    fc.assert(
      fc.property(fc.array(texts, { minLength: 1 }), ([heads, ...rows]) => {
        expect(read(csv('x', heads!, rows))).toEqual([['# x'], heads, ...rows]);
      }),
    );
  });
  it('carry signs and spaces that other programs read', () => {
    const [, , row] = read(csv('x', ['a'], [['−5', '0.5\u202f±\u202f0.1', '61\u00a0°']]));
    expect(row).toEqual(['-5', '0.5 ± 0.1', '61 °']);
  });
  it('keep a title of several lines in one', () => {
    expect(csv('Two\r\n lines\nand more', ['a'], [['b']]).split('\r\n')).toEqual([
      '# Two lines and more',
      'a',
      'b',
      '',
    ]);
  });
});
