import type { CardRefusal } from '../../src/physics/valve/lobe-card.ts';
import { phrase, type Phrase, value } from '../../src/units/phrase.ts';
import { angle } from '../../src/units/quantity.ts';

const names: Readonly<Record<CardRefusal['figures'][number], string>> = {
  lobeLift: 'the lobe lift',
  seatLift: 'the seat lift',
  seatDuration: 'the advertised duration',
  duration050: 'the duration at 0.050 in',
  duration200: 'the duration at 0.200 in',
  rampHeight: 'the ramp’s height',
};

/** Which two figures of a card do not go together, and what the second could be. */
export function disagreement({ figures: [first, second], trouble, possible }: CardRefusal): Phrase {
  const [a, b] = [names[first], names[second]];
  if (trouble === 'out of order') return [`${a[0]!.toUpperCase()}${a.slice(1)} and ${b} are out of order.`];
  const range = possible
    ? phrase` With the rest as it is, ${b} could be ${value(possible[0], angle)} to ${value(possible[1], angle)}.`
    : [];
  return phrase`${a[0]!.toUpperCase()}${a.slice(1)} and ${b} lie ${trouble} for one smooth lobe.${range}`;
}
