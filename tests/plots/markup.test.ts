import { describe, expect, it } from 'vitest';
import { elementsOf, wordsOf } from './markup.ts';

describe('the reader of markup', () => {
  it('gives elements with attributes and text', () => {
    expect(elementsOf('<g class="a"><path d="M0 0"/><text x="1">3 &#60; 4 &amp; 5</text></g>')).toEqual([
      { name: 'g', attributes: { class: 'a' }, text: '' },
      { name: 'path', attributes: { d: 'M0 0' }, text: '' },
      { name: 'text', attributes: { x: '1' }, text: '3 < 4 & 5' },
    ]);
    expect(wordsOf('<text x="1">a\u00a0b</text><text></text>')).toEqual(['a b']);
  });
  it.each([
    '<g>',
    '</g>',
    '<g></p>',
    '<g><p></g></p>',
    '<path d=M0/>',
    '<path d="M0" d="M1"/>',
    '<text>a & b</text>',
    '<text>a < b</text>',
    '<path d="a<b"/>',
    '<path d="M0',
  ])('refuses %s', (markup) => expect(() => elementsOf(markup)).toThrow());
});
