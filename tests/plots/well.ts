import { expect } from 'vitest';
import { drawn } from './drawn.ts';
import { type Element, elementsOf } from './markup.ts';

/** Every number in a drawing is one, its markup is sound, and nobody who looks or listens is left without words. */
export function isWell(form: string, values: object, width = 700): readonly Element[] {
  const drawing = drawn(form, values, width);
  const elements = elementsOf(drawing.body);
  expect(elements.length).toBeGreaterThan(5);
  expect(drawing.body).not.toMatch(/NaN|Infinity|undefined|null|\[object/);
  expect(drawing.width).toBe(width);
  expect(drawing.height).toBeGreaterThan(100);
  expect(drawing.height).toBeLessThan(900);
  expect(drawing.label).toMatch(/^[A-Z].{20,}\.$/s);
  expect(drawing.twin.rows.length).toBeGreaterThan(2);
  for (const head of drawing.twin.columns) expect(head).not.toBe('');
  for (const row of drawing.twin.rows) expect(row.length).toBe(drawing.twin.columns.length);
  expect(drawing.twin.rows.flat().join()).not.toMatch(/NaN|undefined/);
  for (const e of elements) staysOn(e, width);
  for (const { name, attributes } of elements)
    for (const [key, value] of Object.entries(attributes))
      if (name === 'rect' && /^(width|height)$/.test(key) && !value.endsWith('%'))
        expect(Number(value)).toBeGreaterThanOrEqual(0);
  return elements;
}

/** Words do not run off the sheet, at the width that narrow letters have at least. */
function staysOn({ name, attributes, text }: Element, width: number): void {
  if (name !== 'text') return;
  const [at, wide] = [Number(attributes.x), text.trim().length * 5.6];
  const anchor = attributes['text-anchor'];
  const from = anchor === 'end' ? at - wide : anchor === 'middle' ? at - wide / 2 : at;
  expect(`${text}: ${from < -6}, ${from + wide > width + 6}`).toBe(`${text}: false, false`);
}
