import { format } from './format.ts';
import { type Quantity, quantityNamed, type System } from './quantity.ts';

/**
 * Words with values in them, still in SI: said in the reader's units only when shown.
 * Plain data, so it crosses to a worker and back.
 */
export type Phrase = readonly (string | { readonly si: number; readonly as: string })[];

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
  words.map((w) => (typeof w === 'string' ? w : format(w.si, quantityNamed(w.as), system))).join('');
