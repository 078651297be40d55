import { differenceFigure, format, withUnit } from './format.ts';
import { type Quantity, quantityNamed, type System } from './quantity.ts';

/**
 * Words with values in them, still in SI: said in the reader's units only when shown.
 * Plain data, so it crosses to a worker and back.
 */
export type Phrase = readonly (string | Said)[];
export type Said = {
  readonly si: number;
  /** The id of its quantity. */
  readonly as: string;
  /** A difference knows no zero point: 5 K more is 9 °F more. */
  readonly difference?: true;
};

/** A value inside a phrase. */
export const value = (si: number, quantity: Quantity): Phrase[number] => ({ si, as: quantity.id });

/** phrase`The rod is shorter than the crank throw, ${value(stroke / 2, length)}.` Phrases may hold phrases. */
export function phrase(text: TemplateStringsArray, ...parts: readonly (Phrase[number] | Phrase)[]): Phrase {
  const said: Phrase[number][] = [];
  for (let i = 0; i < text.length; i++) {
    said.push(text[i]!);
    const part = parts[i];
    if (Array.isArray(part)) said.push(...(part as Phrase));
    else if (part !== undefined) said.push(part as Phrase[number]);
  }
  return said;
}

export const say = (words: Phrase, system: System): string =>
  words.map((w) => (typeof w === 'string' ? w : spoken(w, system))).join('');

function spoken({ si, as, difference }: Said, system: System): string {
  const quantity = quantityNamed(as);
  const shown = quantity[system];
  return difference ? withUnit(differenceFigure(si, shown, quantity.trim), shown) : format(si, quantity, system);
}
