import { describe, expect, it } from 'vitest';
import { bandOf, type RangeEffects } from '../../../src/physics/cycle/band.ts';
import { cycleEngine } from '../../../src/physics/cycle/engine.ts';
import type { EngineInput } from '../../../src/physics/cycle/engine-input.ts';
import { rubbingFriction } from '../../../src/physics/cycle/friction.ts';
import { rangeEffects } from '../../../src/physics/cycle/range-effects.ts';
import { statedRanges } from '../../../src/physics/cycle/ranges.ts';
import { EngineRun } from '../../../src/physics/cycle/speed.ts';
import { randomFrom } from '../valve/random.ts';
import { built, lateEight, milledFour, pushrodSix, rpm, streetEight } from './street-engines.ts';

function all(engine: EngineInput, speed: number): { readonly effects: RangeEffects; readonly shares: number[] } {
  const shares: number[] = [];
  const run = rangeEffects(engine, speed);
  for (let next = run.next(); ; next = run.next()) {
    if (next.done) return { effects: next.value, shares };
    shares.push(next.value);
  }
}
const which = (id: string): number => statedRanges.findIndex((range) => range.id === id);

describe('the effects of the ranges', () => {
  const engine = built(streetEight);
  const speed = 5500 * rpm;
  const { effects, shares } = all(engine, speed);
  const at = (id: string): readonly [number, number] => [effects.atLow[which(id)]!, effects.atHigh[which(id)]!];

  it('come with the share that is done, rising to one', () => {
    expect(shares).toEqual(shares.toSorted((a, b) => a - b));
    expect(new Set(shares).size).toBe(shares.length);
    expect(shares.at(-1)).toBe(1);
    for (const row of [effects.atLow, effects.atHigh]) expect(row.length).toBe(statedRanges.length);
  });

  it('have the signs every builder knows', () => {
    for (const [id, sign] of [
      ['flow', 1],
      ['burnTime', -1],
      ['completeness', 1],
      ['wallHeat', -1],
      ['runnerWall', -1],
      ['friction', -1],
      ['losses', -1],
    ] as const) {
      const [low, high] = at(id);
      expect(sign * high).toBeGreaterThan(0);
      expect(sign * low).toBeLessThan(0);
    }
  });

  it('of friction are a fifth of what rubs', () => {
    const { swept, cylinders } = cycleEngine(engine);
    const rubbing = (rubbingFriction(cycleEngine(engine), speed) * swept * cylinders) / (4 * Math.PI);
    const [low, high] = at('friction');
    expect(low).toBeCloseTo(0.2 * rubbing, 6);
    expect(high).toBeCloseTo(-0.2 * rubbing, 6);
  });

  it('are those of runs from rest, within 0.4 % of the torque', () => {
    const torque = (e: EngineInput): number => new EngineRun(cycleEngine(e), 'coarse').at(speed).torque;
    const usual = torque(engine);
    expect(Math.abs(effects.torque / usual - 1)).toBeLessThan(0.004);
    for (const [k, range] of statedRanges.entries())
      expect(Math.abs(torque(range.with(engine, 1)) - usual - effects.atHigh[k]!)).toBeLessThan(0.004 * usual);
  });

  it('of a bank are none where nothing but the cross plane’s own firing is known', () => {
    const [low] = at('bank');
    expect(low).toBe(0);
    const four = all(built(milledFour), 3000 * rpm).effects;
    expect(four.atHigh[which('bank')]).toBe(0);
  });
});

/** Where a standard normal variable has a share below it (Abramowitz and Stegun, 1964, 26.2.23, within 4.5e-4). */
function normalAt(share: number): number {
  const t = Math.sqrt(-2 * Math.log(Math.min(share, 1 - share)));
  const x =
    t - (2.515517 + 0.802853 * t + 0.010328 * t ** 2) / (1 + 1.432788 * t + 0.189269 * t ** 2 + 0.001308 * t ** 3);
  return share < 0.5 ? -x : x;
}

/** Steps for each range, standard normal (half of it for a bank), drawn evenly: a Latin hypercube. */
function hypercube(count: number, between: (min: number, max: number) => number): readonly (readonly number[])[] {
  const columns = statedRanges.map(({ form }) => {
    const shares = Array.from({ length: count }, (_, i) => (i + between(0, 1)) / count);
    for (let i = count - 1; i > 0; i--) {
      const j = Math.floor(between(0, i + 1));
      [shares[i], shares[j]] = [shares[j]!, shares[i]!];
    }
    return shares.map((share) => (form === 'oneSided' ? Math.abs(normalAt(share)) : normalAt(share)));
  });
  return Array.from({ length: count }, (_, i) => columns.map((column) => column[i]!));
}

const count = process.env['SOAK'] ? 600 : 200;

describe(`of ${count} engines drawn from all ranges at once, 5 and 95 % lie at 1.645 of the band within 15 %`, () => {
  const cases: readonly (readonly [string, EngineInput, number])[] = [
    ['the pushrod six at its best spark', pushrodSix(), 3000],
    ['the street eight with its table of spark', built(streetEight), 5500],
    ...(process.env['SOAK']
      ? ([
          ['the four with its table of spark', built(milledFour), 3500],
          ['the four at its best spark', { ...built(milledFour), spark: 'best' }, 5000],
          ['the street eight at its best spark', { ...built(streetEight), spark: 'best' }, 4500],
          ['the late eight at its best spark', { ...built(lateEight), spark: 'best' }, 5000],
        ] as const)
      : []),
  ];
  for (const [name, engine, n] of cases)
    it(`${name} at ${n} rpm`, { timeout: 300_000 }, () => {
      const speed = n * rpm;
      const { effects } = all(engine, speed);
      const usual = new EngineRun(cycleEngine(engine), 'coarse');
      usual.at(speed);
      const near = usual.state();
      const torques = hypercube(count, randomFrom(3))
        .map((steps) => {
          const drawn = statedRanges.reduce((e, range, k) => range.with(e, steps[k]!), engine);
          return new EngineRun(cycleEngine(drawn), 'coarse').torqueAt(speed, near) - effects.torque;
        })
        .toSorted((a, b) => a - b);
      const { below, above } = bandOf(effects);
      const edge = count / 20;
      const [low, high] = [torques[edge]!, torques[count - 1 - edge]!];
      expect(Math.abs(-low / (1.645 * below) - 1)).toBeLessThan(0.15);
      expect(Math.abs(high / (1.645 * above) - 1)).toBeLessThan(0.15);
    });
});
