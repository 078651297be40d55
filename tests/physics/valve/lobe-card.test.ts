import { describe, expect, it } from 'vitest';
import type { Lobe } from '../../../src/physics/valve/lobe.ts';
import {
  type CardRefusal,
  exponentRange,
  lobeFromCard,
  type LobeCard,
  spacingRange,
} from '../../../src/physics/valve/lobe-card.ts';
import { DrawnLobe, shareOf } from './drawn-lobe.ts';
import { randomFrom } from './random.ts';

const inch = 0.0254;
const deg = Math.PI / 180;
const street: LobeCard = {
  lobeLift: 0.31 * inch,
  seatLift: 0.006 * inch,
  seatDuration: 270 * deg,
  duration050: 220 * deg,
};
const isRefusal = (answer: Lobe | CardRefusal): answer is CardRefusal => 'trouble' in answer;
const drawn = ({ exponents, spacing, lift, halfWidth }: Lobe): DrawnLobe =>
  new DrawnLobe(exponents[1]!, spacing, lift, halfWidth);

/** Whether no exponent from end to end of the range gives the wanted share, and on which side all of them lie. */
function scanned(card: LobeCard): CardRefusal['trouble'] | 'met' {
  const wanted = card.duration050 / card.seatDuration;
  const [least, most] = exponentRange;
  const shares = Array.from({ length: 60 }, (_, i) =>
    shareOf(least * (most / least) ** (i / 59), 2, card.lobeLift, 0.05 * inch, card.seatLift),
  );
  if (shares.every((share) => share < wanted)) return 'too close';
  return shares.every((share) => share > wanted) ? 'too far apart' : 'met';
}

describe('lobeFromCard', () => {
  it.each([
    ['hydraulic cards, read at 0.004 to 0.008 in', 1, [0.004, 0.008], [0.74, 0.86], 0.98],
    ['solid cards, read at 0.008 to 0.020 in', 2, [0.008, 0.02], [0.78, 0.91], 0.9],
  ] as const)(
    'meets both durations to 0.1 degree, or refuses rightly, for 10,000 random %s',
    (_kind, seed, seats, shares, least) => {
      const random = randomFrom(seed);
      let met = 0;
      for (let i = 0; i < 10_000; i++) {
        const seatDuration = random(230, 320) * deg;
        const card: LobeCard = {
          lobeLift: random(0.24, 0.42) * inch,
          seatLift: random(seats[0], seats[1]) * inch,
          seatDuration,
          duration050: random(shares[0], shares[1]) * seatDuration,
        };
        const lobe = lobeFromCard(card);
        if (isRefusal(lobe)) {
          expect(lobe.figures).toEqual(['seatDuration', 'duration050']);
          expect(scanned(card)).toBe(lobe.trouble);
          continue;
        }
        const judge = drawn(lobe);
        expect(Math.abs(judge.duration(card.seatLift) - card.seatDuration)).toBeLessThan(0.1 * deg);
        expect(Math.abs(judge.duration(0.05 * inch) - card.duration050)).toBeLessThan(0.1 * deg);
        expect(lobe.ramp!.height).toBeLessThan(card.seatLift);
        met++;
      }
      expect(met / 10_000).toBeGreaterThanOrEqual(least);
    },
    60_000,
  );

  it('finds a lobe again from its three durations, spacing and all', () => {
    const random = randomFrom(3);
    for (let i = 0; i < 100; i++) {
      const [p, spacing, lift] = [random(3.5, 12), random(1, 14), random(0.28, 0.4) * inch];
      const first = new DrawnLobe(p, spacing, lift, 160 * deg);
      const lobe = lobeFromCard({
        lobeLift: lift,
        seatLift: street.seatLift,
        seatDuration: first.duration(street.seatLift),
        duration050: first.duration(0.05 * inch),
        duration200: first.duration(0.2 * inch),
      }) as Lobe;
      expect(lobe.spacing).toBeCloseTo(spacing, 4);
      expect(lobe.exponents[1]).toBeCloseTo(p, 4);
      expect(lobe.halfWidth).toBeCloseTo(160 * deg, 6);
    }
  });

  it('refuses a duration at 0.200 in that no pair of exponent and spacing gives, and says what would do', () => {
    const highs: number[] = [];
    const wanted = street.duration050 / street.seatDuration;
    for (let i = 0; i <= 40; i++) {
      const spacing = spacingRange[0] * (spacingRange[1] / spacingRange[0]) ** (i / 40);
      let [thin, full] = exponentRange as [number, number];
      for (let k = 0; k < 50; k++) {
        const p = (thin + full) / 2;
        if (shareOf(p, spacing, street.lobeLift, 0.05 * inch, street.seatLift) < wanted) thin = p;
        else full = p;
      }
      highs.push(shareOf(thin, spacing, street.lobeLift, 0.2 * inch, 0.05 * inch) * street.duration050);
    }
    const [least, most] = [Math.min(...highs), Math.max(...highs)];
    for (const [duration200, trouble] of [
      [most + 0.1 * deg, 'too close'],
      [least - 0.1 * deg, 'too far apart'],
    ] as const) {
      const refusal = lobeFromCard({ ...street, duration200 }) as CardRefusal;
      expect(refusal).toMatchObject({ figures: ['duration050', 'duration200'], trouble });
      expect(refusal.possible![0]).toBeCloseTo(least, 6);
      expect(refusal.possible![1]).toBeCloseTo(most, 6);
    }
    for (const duration200 of [least + 0.01 * deg, most - 0.01 * deg]) {
      const lobe = lobeFromCard({ ...street, duration200 }) as Lobe;
      expect(drawn(lobe).duration(0.2 * inch)).toBeCloseTo(duration200, 6);
      expect(drawn(lobe).duration(0.05 * inch)).toBeCloseTo(street.duration050, 6);
    }
  });

  it('says, with a refusal, the durations at 0.050 in that would do: each of them does', () => {
    const refusal = lobeFromCard({ ...street, duration050: 262 * deg }) as CardRefusal;
    expect(refusal.trouble).toBe('too close');
    for (const duration050 of refusal.possible!.map((end, i) => end * (i === 0 ? 1 + 1e-9 : 1 - 1e-9)))
      expect(isRefusal(lobeFromCard({ ...street, duration050 }))).toBe(false);
    for (const duration050 of refusal.possible!.map((end, i) => end * (i === 0 ? 0.999 : 1.001)))
      expect(isRefusal(lobeFromCard({ ...street, duration050 }))).toBe(true);
  });

  it.each([
    [{ lobeLift: 0.05 * inch }, ['lobeLift', 'duration050']],
    [{ seatLift: 0.05 * inch }, ['seatLift', 'duration050']],
    [{ duration050: 270 * deg }, ['seatDuration', 'duration050']],
    [{ rampHeight: 0.006 * inch }, ['seatLift', 'rampHeight']],
    [{ lobeLift: 0.19 * inch, duration200: 130 * deg }, ['lobeLift', 'duration200']],
    [{ duration200: 221 * deg }, ['duration050', 'duration200']],
  ])('names the two figures that stand in the wrong order: %o', (change, figures) =>
    expect(lobeFromCard({ ...street, ...change })).toEqual({ figures, trouble: 'out of order', possible: null }),
  );

  it('throws where a figure is no figure', () => {
    for (const change of [{ lobeLift: 0 }, { seatDuration: NaN }, { duration200: -1 }, { rampHeight: -1e-6 }])
      expect(() => lobeFromCard({ ...street, ...change })).toThrow(RangeError);
  });
});
