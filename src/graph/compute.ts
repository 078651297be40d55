import { phrase, type Phrase } from '../units/phrase.ts';
import type { Derived, Input, Range } from './cell.ts';
import type { Optional, Scalar } from './kind.ts';
import { type Fault, Impossible } from './state.ts';

/** What a thrown error means for the cell that threw it. */
export function faultOf(error: unknown, cell: Derived<unknown>): Fault {
  const about = error instanceof Impossible && error.about ? (cell.from[error.about]?.id ?? error.about) : cell.id;
  const message: Phrase =
    error instanceof Impossible
      ? error.phrase
      : [error instanceof Error && error.message ? error.message : 'This cannot be computed.'];
  return { at: cell.id, about, message };
}

export const unsound = (cell: { readonly id: string }): Fault => ({
  at: cell.id,
  about: cell.id,
  message: ['These figures lie out of reach of the arithmetic.'],
});

/** The fault of an input whose value physics does not allow, or null. */
export function outOfRange(input: Input, value: unknown): Fault | null {
  const fault = (message: Phrase): Fault => ({ at: input.id, about: input.id, message });
  if (!input.kind.sound(value)) return fault(['This is not a figure.']);
  if (!input.hard || typeof value !== 'number') return null;
  const [low, high] = input.hard;
  return value < low || value > high ? fault(between(input, input.hard)) : null;
}

function between(input: Input, [low, high]: Range): Phrase {
  const { quantity, of } = input.kind as Partial<Scalar> & Partial<Pick<Optional, 'of'>>;
  const as = (quantity ?? of!.quantity).id;
  return phrase`${input.label} lies between ${{ si: low, as }} and ${{ si: high, as }}.`;
}
