import { phrase, type Phrase, value } from '../../src/units/phrase.ts';
import { engineTorque } from '../../src/units/quantity.ts';

/** What is said beside a factor that was fitted to a measured peak, N m; null beside one that was not. */
export const fittedTo = (factor: number, isFitted: boolean, measured: number | null): Phrase | null =>
  isFitted && factor !== 1 && measured !== null
    ? phrase`Fitted to a measured peak of ${value(measured, engineTorque)}.`
    : null;
