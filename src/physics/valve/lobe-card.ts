import { root } from '../../numerics/root.ts';
import type { Lobe } from './lobe.ts';
import { type LiftPolynomial, liftPolynomial, placeAtHeight, polynomialBend, polynomialSlope } from './polynomial.ts';
import { type Ramp, ramp } from './ramp.ts';

/** What a cam card says of one lobe, at the tappet. Lifts in m, durations in rad of crankshaft. */
export interface LobeCard {
  readonly lobeLift: number;
  /** The lift at which the card reads its seat (advertised) duration, below 0.050 in. */
  readonly seatLift: number;
  readonly seatDuration: number;
  /** At 0.050 in. */
  readonly duration050: number;
  /** At 0.200 in, where the card has it. */
  readonly duration200?: number;
  /** Lift at which the ramp joins, below the seat lift; half of it unless said; 0 (or next to it) for no ramp. */
  readonly rampHeight?: number;
}

/** Why no lobe of the family answers a card: the two figures that do not go together. */
export interface CardRefusal {
  readonly figures: readonly [keyof LobeCard, keyof LobeCard];
  /** Two durations may lie too close together or too far apart for the lift; otherwise their order is wrong. */
  readonly trouble: 'too close' | 'too far apart' | 'out of order';
  /** Least and most that the second figure could be with the others as they are; null where the order is wrong. */
  readonly possible: readonly [number, number] | null;
}

const at050 = 0.05 * 0.0254;
const at200 = 0.2 * 0.0254;

/** From a needle's nose to a flank that all but jumps. Practice: wide enough for printed cards, no source. */
export const exponentRange: readonly [number, number] = [2.1, 60];
/** Spacings among which a duration at 0.200 in is looked for. Practice, no source. */
export const spacingRange: readonly [number, number] = [0.25, 24];

/**
 * The lobe a cam card describes: exponents and width are found so that the durations are met at the lifts they are
 * stated at; the ramp lies wholly below the seat lift. The exponents are 2 apart, unless a duration at 0.200 in asks for
 * another spacing. A stand-in for the ground profile, which no card prints.
 *
 * @returns the lobe, or which two figures of the card disagree
 * @throws RangeError when a figure is not above zero or the ramp's height is below it
 */
export function lobeFromCard(card: LobeCard): Lobe | CardRefusal {
  const { lobeLift, seatLift, seatDuration, duration050, duration200, rampHeight = seatLift / 2 } = card;
  const figures = [lobeLift, seatLift, seatDuration, duration050, duration200 ?? 1];
  if (!(figures.every((figure) => figure > 0 && figure < Infinity) && rampHeight >= 0))
    throw new RangeError('The lifts and durations of a cam card must be above zero.');
  const disorder = outOfOrder(card, rampHeight);
  if (disorder !== null) return { figures: disorder, trouble: 'out of order', possible: null };

  // Durations at two lifts are to each other as the places of these lifts on the flank, whatever its width.
  const ratio = (curve: LiftPolynomial, upper: number, lower: number): number =>
    placeAtHeight(curve, upper / lobeLift) / placeAtHeight(curve, lower / lobeLift);
  const low = (p: number, spacing: number): number => ratio(liftPolynomial(p, spacing), at050, seatLift);
  const [narrowest, widest] = duration200 === undefined ? [2, 2] : spacingRange;
  const wanted = duration050 / seatDuration;
  const lows = [low(exponentRange[0], narrowest), low(exponentRange[1], widest)] as const; // grows with both
  if (!isWithin(wanted, lows)) return disagreement(['seatDuration', 'duration050'], seatDuration, lows, wanted);

  const curveAt = (spacing: number): LiftPolynomial =>
    liftPolynomial(1 / level((u) => low(1 / u, spacing), wanted, 1 / exponentRange[1], 1 / exponentRange[0]), spacing);
  if (duration200 === undefined) return lobeOf(curveAt(2), card, rampHeight);

  const high = (spacing: number): number => ratio(curveAt(spacing), at200, at050);
  const from = level((spacing) => low(exponentRange[1], spacing), wanted, narrowest, widest);
  const to = level((spacing) => low(exponentRange[0], spacing), wanted, narrowest, widest);
  const highs = [high(to), high(from)] as const; // falls as the spacing grows
  const third = duration200 / duration050;
  if (!isWithin(third, highs)) return disagreement(['duration050', 'duration200'], duration050, highs, third);
  return lobeOf(curveAt(level(high, third, from, to)), card, rampHeight);
}

/** Where a function that only rises or only falls reaches a level; the nearer end where it does not. */
function level(f: (x: number) => number, wanted: number, lo: number, hi: number): number {
  const at = root((x) => f(x) - wanted, lo, hi);
  return at ?? (Math.abs(f(lo) - wanted) < Math.abs(f(hi) - wanted) ? lo : hi);
}

const isWithin = (value: number, [least, most]: readonly [number, number]): boolean => least <= value && value <= most;

function outOfOrder(card: LobeCard, rampHeight: number): CardRefusal['figures'] | null {
  if (card.lobeLift <= at050) return ['lobeLift', 'duration050'];
  if (card.seatLift >= at050) return ['seatLift', 'duration050'];
  if (card.duration050 >= card.seatDuration) return ['seatDuration', 'duration050'];
  if (rampHeight >= card.seatLift) return ['seatLift', 'rampHeight'];
  if (card.duration200 === undefined) return null;
  if (card.lobeLift <= at200) return ['lobeLift', 'duration200'];
  return card.duration200 >= card.duration050 ? ['duration050', 'duration200'] : null;
}

function disagreement(
  figures: CardRefusal['figures'],
  first: number,
  [least, most]: readonly [number, number],
  wanted: number,
): CardRefusal {
  const trouble = wanted > most ? 'too close' : 'too far apart';
  return { figures, trouble, possible: [least * first, most * first] };
}

function lobeOf(curve: LiftPolynomial, { lobeLift: lift, seatLift, seatDuration }: LobeCard, height: number): Lobe {
  const halfWidth = seatDuration / 2 / placeAtHeight(curve, seatLift / lift);
  return { ...curve, lift, halfWidth, ramp: height < 1e-5 * lift ? null : joined(curve, lift, halfWidth, height) };
}

function joined(curve: LiftPolynomial, lift: number, halfWidth: number, height: number): Ramp {
  const x = placeAtHeight(curve, height / lift);
  const slope = (-lift / halfWidth) * polynomialSlope(curve, x);
  return ramp(height, halfWidth * x, slope, (lift / halfWidth ** 2) * polynomialBend(curve, x));
}
