import { describe, expect, it } from 'vitest';
import type { Pipe } from '../../../../src/physics/cycle/pipe/pipe.ts';
import { gamma, R, smoothPipe, step, walls } from './pipes.ts';

const built = (cells: number): Pipe =>
  smoothPipe({ cells, length: 0.4, startArea: 1e-3, endArea: 2e-3, friction: 0.01 });

/** Some cycles' worth of unrest. */
function stir(pipe: Pipe, steps: number): Pipe {
  for (let i = 0; i < steps; i++)
    step(
      pipe,
      () => {
        pipe.start.solve(1e5 * (1.2 + Math.sin(i / 20)), 320, 0.2, 0.9e-3);
        pipe.end.solve(1e5, 500, 0.9, 1e-3);
      },
      2e-5,
    );
  return pipe;
}
const filled = (cells: number): Pipe => {
  const pipe = built(cells);
  pipe.fill(1.1e5, 350, 0.1);
  return pipe;
};

describe('a pipe', () => {
  it('holds the mass and the energy of an ideal gas in a truncated cone', () => {
    const pipe = built(10);
    pipe.fill(1.1e5, 350, 0.25, 30);
    // volume of a frustum; the cells take the mean of their two areas, which is a little more
    const volume = (0.4 / 3) * (1e-3 + 2e-3 + Math.sqrt(2) * 1e-3);
    const rho = 1.1e5 / (R * 350);
    expect(pipe.mass() / (rho * volume)).toBeCloseTo(1, 3);
    expect(pipe.burntMass() / pipe.mass()).toBeCloseTo(0.25, 12);
    expect(pipe.energy() / pipe.mass()).toBeCloseTo((R / (gamma - 1)) * 350 + 450, 6);
    expect(pipe.wave).toBeCloseTo(30 + Math.sqrt(gamma * R * 350), 9);
    expect([pipe.cells, pipe.dx, pipe.size]).toEqual([10, 0.04, 40]);
  });

  it('shows its cells as they are, step by step', () => {
    const pipe = filled(8);
    const { p, rho, u, burnt } = pipe;
    stir(pipe, 50);
    expect([p, rho, u, burnt].map((each) => each.length)).toEqual([8, 8, 8, 8]);
    expect(p).not.toContain(1.1e5);
    const sound = Math.max(...[...u].map((each, i) => Math.abs(each) + Math.sqrt((gamma * p[i]!) / rho[i]!)));
    expect(pipe.wave).toBeCloseTo(sound, 9);
    expect(Math.max(...burnt)).toBeGreaterThan(0.1);
  });

  it('goes on from a written state as if nothing had happened', () => {
    const pipe = stir(filled(9), 200);
    const kept = new Float64Array(pipe.size + 5);
    expect(pipe.write(kept, 2)).toBe(2 + pipe.size);
    const other = filled(9);
    expect(other.readable(kept, 2)).toBe(true);
    expect(other.read(kept, 2)).toBe(2 + pipe.size);
    expect(other.wave).toBeCloseTo(pipe.wave, 9);
    pipe.start.reset();
    pipe.end.reset();
    stir(pipe, 100);
    stir(other, 100);
    for (let i = 0; i < 9; i++) expect(other.p[i]! / pipe.p[i]!).toBeCloseTo(1, 12);
  });

  it('does not take numbers for a gas that are none', () => {
    const pipe = filled(4);
    const state = new Float64Array(pipe.size);
    const spoiled = (at: number, value: number): boolean => {
      pipe.write(state, 0);
      state[at] = value;
      return pipe.readable(state, 0);
    };
    expect(spoiled(1, -0.1)).toBe(false); // density
    expect(spoiled(9, 100)).toBe(false); // energy
    expect(spoiled(6, 1e4)).toBe(false); // momentum that leaves nothing for warmth
    expect(spoiled(2, NaN)).toBe(false);
    expect(spoiled(5, 10)).toBe(true);
  });

  it('brings a burnt share that a mixture has put out of 0 to 1 back there', () => {
    const pipe = filled(4);
    const state = new Float64Array(pipe.size);
    pipe.write(state, 0);
    state[12] = -0.2;
    state[13] = 5;
    pipe.read(state, 0);
    expect([pipe.burnt[0], pipe.burnt[1]]).toEqual([0, 1]);
    expect(pipe.burnt[2]).toBeCloseTo(0.1, 12);
  });

  it('takes over from another grid: the same gas in every place, the mass nearly', () => {
    const fine = stir(filled(40), 300);
    const coarse = built(10);
    coarse.resampleFrom(fine);
    expect(Math.abs(coarse.mass() / fine.mass() - 1)).toBeLessThan(0.03);
    expect(Math.abs(coarse.energy() / fine.energy() - 1)).toBeLessThan(0.03);
    expect(coarse.p[0]).toBeCloseTo(fine.p[2]!, 6);
    expect(coarse.u[9]).toBeCloseTo(fine.u[38]!, 9);
    const back = built(40);
    back.resampleFrom(coarse);
    for (const i of [0, 1, 2, 3]) expect(back.burnt[i]).toBeCloseTo(coarse.burnt[0]!, 12);
  });

  it('counts the floors it needed, and keeps numbers, when a step is far too long', () => {
    const pipe = built(6);
    for (let i = 0; i < 6; i++) pipe.set(i, i < 3 ? 5e6 : 2e3, 300, 0);
    expect(pipe.floors).toBe(0);
    for (let i = 0; i < 20; i++) step(pipe, walls, (5 * pipe.dx) / pipe.wave);
    expect(pipe.floors).toBeGreaterThan(0);
    expect([...pipe.p, ...pipe.rho].every((each) => each > 0)).toBe(true);
  });
});
