import { describe, expect, it } from 'vitest';
import { torqueDifference } from '../../cells/output/torque-difference.ts';
import { Impossible } from '../../src/graph/state.ts';
import { statedRanges } from '../../src/physics/cycle/ranges.ts';

const band = { x: [], torque: [], below: [], above: [] };
/** A build by its torque at speeds, shifted by two of the ranges, those of flow and of friction. */
const build = (name: string, speeds: readonly number[], torque: number, shifts: readonly [number, number]) => ({
  name,
  torqueBand: band,
  engineRanges: speeds.map((speed) => {
    const atHigh = statedRanges.map(({ id }) => (id === 'flow' ? shifts[0] : id === 'friction' ? shifts[1] : 0));
    return { speed, torque: torque + speed / 10, atLow: atHigh.map((s) => -s), atHigh };
  }),
});

describe('the difference of two builds', () => {
  it('is what the second makes more, at the speeds of both', () => {
    const { first, second, differences } = torqueDifference(
      build('early', [100, 200, 300, 400], 300, [20, 10]),
      build('late', [200, 300, 400, 500], 330, [20, 10]),
    );
    expect([first.name, second.name]).toEqual(['early', 'late']);
    expect(differences.x).toEqual([200, 300, 400]);
    for (const d of differences.difference) expect(d).toBeCloseTo(30, 12);
  });
  it('is sure where both lean the same way, and off by what they lean apart', () => {
    const speeds = [100, 200];
    const same = torqueDifference(build('a', speeds, 300, [20, 10]), build('b', speeds, 330, [20, 10]));
    expect([...same.differences.below, ...same.differences.above]).toEqual([0, 0, 0, 0]);
    const apart = torqueDifference(build('a', speeds, 300, [20, 10]), build('b', speeds, 330, [23, 14]));
    for (const bound of [...apart.differences.below, ...apart.differences.above]) expect(bound).toBeCloseTo(5, 9); // 3 and 4
  });
  it('cannot be had of curves that share no stretch', () => {
    const [low, high] = [build('a', [100, 200], 300, [1, 1]), build('b', [200, 300], 300, [1, 1])];
    expect(() => torqueDifference(low, high)).toThrow(Impossible);
  });
});
