import { describe, expect, it } from 'vitest';
import { linkage } from '../../../src/physics/linkage.ts';
import {
  type Clearance,
  clearanceAt,
  type CrownAtValve,
  flatCrownClearance,
  reliefClearance,
  reliefCutVolume,
  restClearance,
  smallestClearance,
  type ValveAbovePiston,
} from '../../../src/physics/valve/clearance.ts';
import { type Lobe, lobeLift } from '../../../src/physics/valve/lobe.ts';
import { lobeFromCard } from '../../../src/physics/valve/lobe-card.ts';
import { valveLift } from '../../../src/physics/valve/valve-lift.ts';
import { fitted } from './drawn-lobe.ts';
import { drawnClearance } from './drawn-valve.ts';
import { randomFrom } from './random.ts';

const inch = 0.0254;
const deg = Math.PI / 180;

/** One invented engine's upper end and one of its cams, in inches and degrees, as a shop would write it. */
interface Sheet {
  readonly stroke: number;
  readonly rod: number;
  readonly pinOffset: number;
  readonly deck: number;
  readonly gasket: number;
  readonly milling: number;
  readonly lobeLift: number;
  readonly seat: number;
  readonly at050: number;
  readonly centerline: number;
  readonly rocker: number;
  readonly valveAngle: number;
  readonly relief: number;
  readonly seatDepth: number;
}
type Side = ValveAbovePiston['side'];

function ours(s: Sheet, side: Side, crown: CrownAtValve): ValveAbovePiston {
  const lobe = lobeFromCard({
    lobeLift: s.lobeLift * inch,
    seatLift: 0.006 * inch,
    seatDuration: s.seat * deg,
    duration050: s.at050 * deg,
  }) as Lobe;
  const flat = crown === 'flat';
  return {
    linkage: linkage(s.stroke * inch, s.rod * inch, s.pinOffset * inch),
    rest: restClearance({
      deckClearance: s.deck * inch,
      gasketThickness: s.gasket * inch,
      seatDepth: s.seatDepth * inch,
      milling: s.milling * inch,
      reliefDepth: flat ? 0 : s.relief * inch,
      valveAngle: flat ? 0 : s.valveAngle * deg,
    }),
    crown,
    valveAngle: s.valveAngle * deg,
    side,
    centerline: s.centerline * deg,
    lift: (angle) => valveLift(lobeLift(lobe, angle), s.rocker, 0),
  };
}

function judged(s: Sheet, side: Side, crown: CrownAtValve): ReturnType<typeof drawnClearance> {
  return drawnClearance({
    throw: (s.stroke / 2) * inch,
    rod: s.rod * inch,
    line: -s.pinOffset * inch,
    deck: s.deck * inch,
    gasket: s.gasket * inch,
    seatDepth: s.seatDepth * inch,
    milling: s.milling * inch,
    reliefDepth: s.relief * inch,
    valveAngle: s.valveAngle * deg,
    headRadius: 0.9 * inch,
    crown,
    peak: (side === 'intake' ? 1 : -1) * s.centerline * deg,
    lobe: fitted(s.lobeLift * inch, [0.006 * inch, s.seat * deg], [0.05 * inch, s.at050 * deg]),
    rocker: s.rocker,
  });
}

const eight = { stroke: 3.54, rod: 5.85, pinOffset: 0, milling: 0, rocker: 1.52, valveAngle: 20 };
const premium = { ...eight, deck: 0.012, gasket: 0.041, relief: 0.09 };
const early = { ...eight, deck: 0.005, gasket: 0.039, relief: 0.09 };
const late = { ...early, relief: 0.13 };
const six = { stroke: 3.72, rod: 6.05, pinOffset: 0.04, deck: 0.02, gasket: 0.045, milling: 0 };
const mountain = { ...six, rocker: 1.58, valveAngle: 8, relief: 0, lobeLift: 0.262, seat: 258, at050: 204 };
const four = { stroke: 3.42, rod: 5.4, pinOffset: 0, deck: 0.018, gasket: 0.04, rocker: 1.5, valveAngle: 12 };
const regular = { ...four, relief: 0.04, lobeLift: 0.268, seat: 256, at050: 206 };
const intake4 = { ...regular, centerline: 108, seatDepth: 0.13 };
const exhaust4 = { ...regular, centerline: 112, seatDepth: 0.135 };

// Worked beforehand by an independent script that looked every quarter degree and printed whole degrees.
const worked: readonly (readonly [string, Side, Sheet, number, number])[] = [
  ['edge of premium', 'intake', { ...premium, ...lobe(0.31, 270, 220, 106), seatDepth: 0.11 }, 0.126, 8],
  ['edge of premium', 'exhaust', { ...premium, ...lobe(0.315, 278, 228, 114), seatDepth: 0.12 }, 0.156, -7],
  ['early cam', 'intake', { ...early, ...lobe(0.29, 256, 206, 108), seatDepth: 0.11 }, 0.161, 7],
  ['early cam', 'exhaust', { ...early, ...lobe(0.295, 262, 212, 116), seatDepth: 0.12 }, 0.19, -6],
  ['late cam', 'intake', { ...late, ...lobe(0.345, 294, 244, 108), seatDepth: 0.11 }, 0.1, 9],
  ['late cam', 'exhaust', { ...late, ...lobe(0.345, 302, 252, 112), seatDepth: 0.12 }, 0.111, -9],
  ['mountain six', 'intake', { ...mountain, centerline: 108, seatDepth: 0.15 }, 0.147, 5],
  ['mountain six', 'exhaust', { ...mountain, centerline: 114, seatDepth: 0.155 }, 0.173, -5],
  ['milled four', 'intake', { ...intake4, milling: 0.08 }, 0.078, 6],
  ['milled four', 'exhaust', { ...exhaust4, milling: 0.08 }, 0.098, -6],
  ['four before milling', 'intake', { ...intake4, milling: 0 }, 0.156, 6],
  ['four before milling', 'exhaust', { ...exhaust4, milling: 0 }, 0.177, -6],
];
function lobe(lobeLift: number, seat: number, at050: number, centerline: number) {
  return { lobeLift, seat, at050, centerline };
}

describe('smallestClearance of the invented engines', () => {
  it.each(worked)('%s, %s', (_name, side, sheet, inches, degrees) => {
    const { clearance, angle } = smallestClearance(ours(sheet, side, 'relief'));
    expect(Math.abs(clearance / inch - inches)).toBeLessThan(0.00051); // half a printed digit, and the coarse look
    expect(Math.abs(angle / deg - degrees)).toBeLessThan(0.626); // half a degree printed, an eighth looked past
  });

  it.each(worked)('%s, %s: as drawn valve and piston have it, every 0.02 degree', (_name, side, sheet) => {
    for (const crown of ['relief', 'flat'] as const)
      agree(smallestClearance(ours(sheet, side, crown)), judged(sheet, side, crown));
  });
});

describe('smallestClearance', () => {
  it('is what drawn valves and pistons have, for random engines', () => {
    const random = randomFrom(11);
    for (let i = 0; i < 60; i++) {
      const stroke = random(2.8, 4.4);
      const seat = random(240, 310);
      const sheet: Sheet = {
        stroke,
        rod: stroke * random(1.5, 2),
        pinOffset: random(-0.06, 0.06),
        deck: random(-0.01, 0.03),
        gasket: random(0.02, 0.06),
        milling: random(0, 0.06),
        lobeLift: random(0.26, 0.4),
        seat,
        at050: seat * random(0.77, 0.84),
        centerline: random(98, 120),
        rocker: random(1, 1.8),
        valveAngle: random(0, 28),
        relief: random(0, 0.2),
        seatDepth: random(0.08, 0.18),
      };
      const [side, crown] = [i % 2 ? 'intake' : 'exhaust', i % 4 < 2 ? 'relief' : 'flat'] as const;
      agree(smallestClearance(ours(sheet, side, crown)), judged(sheet, side, crown));
    }
  });

  it('is the gap at rest, at top dead center, when the valve is shut all around it', () => {
    const valve = { ...ours(worked[0]![2], 'intake', 'relief'), lift: () => 0 };
    const { clearance, angle } = smallestClearance(valve);
    expect(clearance).toBeCloseTo(valve.rest, 14);
    expect(Math.abs(angle)).toBeLessThan(1e-6);
  });

  it('finds the lower of two low places, the one at top dead center and the one where the valve chases', () => {
    for (const [height, chased] of [
      [0.01416, false],
      [0.01419, true],
    ] as const) {
      const valve = { ...ours(worked[0]![2], 'intake', 'relief'), lift: (angle: number) => hump(angle, height) };
      const found = smallestClearance(valve);
      let least = Infinity;
      for (let angle = -1.5; angle < 1.5; angle += 1e-4) least = Math.min(least, clearanceAt(valve, angle));
      expect(found.clearance).toBeCloseTo(least, 8);
      expect(found.angle > 0.3).toBe(chased);
    }
  });

  it('is not a number where a figure is not', () => {
    const valve = ours(worked[0]![2], 'intake', 'relief');
    expect(smallestClearance({ ...valve, rest: NaN }).clearance).toBeNaN();
    expect(smallestClearance({ ...valve, lift: () => NaN }).clearance).toBeNaN();
  });

  it('is negative where valve and piston would meet', () => {
    const { clearance } = smallestClearance(ours({ ...intake4, milling: 0.2 }, 'intake', 'relief'));
    expect(clearance).toBeLessThan(0);
  });

  it('grows by the whole of a thicker gasket along the bore, by its cosine along the valve', () => {
    const sheet = { ...intake4, milling: 0 };
    const gain = (crown: CrownAtValve): number =>
      smallestClearance(ours({ ...sheet, gasket: sheet.gasket + 0.02 }, 'intake', crown)).clearance -
      smallestClearance(ours(sheet, 'intake', crown)).clearance;
    expect(gain('flat') / inch).toBeCloseTo(0.02, 9);
    expect(gain('relief') / inch).toBeCloseTo(0.02 * Math.cos(12 * deg), 9);
  });
});

describe('the two gaps', () => {
  it('are one and the same for a valve that stands upright', () => {
    for (const gap of [reliefClearance, flatCrownClearance]) expect(gap(0.005, 0.003, 0.004, 0)).toBeCloseTo(0.004, 15);
  });

  it('keep the drop by its cosine under a relief, lose the lift by its cosine over a flat crown', () => {
    expect(reliefClearance(0, 0.01, 0, 60 * deg)).toBeCloseTo(0.005, 15);
    expect(flatCrownClearance(0, 0, 0.01, 60 * deg)).toBeCloseTo(-0.005, 15);
  });
});

it('a relief cut 0.060 in deeper under a 2.02 in valve adds 3.15 cm3, by the volume of a disk', () =>
  expect(reliefCutVolume(2.02 * inch, 0.06 * inch) * 1e6).toBeCloseTo(Math.PI * 1.01 ** 2 * 0.06 * 16.387064, 9));

/** A lift that is nothing until well after top dead center, then chases the piston. */
function hump(angle: number, height: number): number {
  const x = (angle + 106 * deg - 45 * deg) / (25 * deg);
  return Math.abs(x) < 1 ? height * (1 - x * x) ** 3 : 0;
}

function agree(found: Clearance, judge: ReturnType<typeof drawnClearance>): void {
  expect(Math.abs(found.clearance - judge.gap)).toBeLessThan(1e-8);
  expect(Math.abs(found.angle - judge.angle)).toBeLessThan(0.02 * deg);
}
