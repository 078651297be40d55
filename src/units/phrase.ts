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
  return text.flatMap((words, i) => {
    const part = parts[i];
    return part === undefined ? [words] : Array.isArray(part) ? [words, ...part] : [words, part as Phrase[number]];
  });
}

export const say = (words: Phrase, system: System): string =>
  words.map((w) => (typeof w === 'string' ? w : spoken(w, system))).join('');

function spoken({ si, as, difference }: Said, system: System): string {
  const quantity = quantityNamed(as);
  const shown = quantity[system];
  return difference ? withUnit(differenceFigure(si, shown, quantity.trim), shown) : format(si, quantity, system);
}
