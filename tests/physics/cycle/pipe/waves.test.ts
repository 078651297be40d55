import { describe, expect, it } from 'vitest';
import { root } from '../../../../src/numerics/root.ts';
import type { Pipe } from '../../../../src/physics/cycle/pipe/pipe.ts';
import { gamma, isentropic, R, smoothPipe, step } from './pipes.ts';

const rest = 101325;
/** At which sound travels 343 m/s. */
const T = 343 ** 2 / (gamma * R);

/** Puts a small wave into a still pipe; `shape` is the pressure above rest over the height, by place in m. */
function disturb(pipe: Pipe, height: number, shape: (x: number) => number, sense = 0): void {
  for (let i = 0; i < pipe.cells; i++) {
    const share = height * shape((i + 0.5) * pipe.dx);
    const warm = isentropic(T, 1 + share);
    // a simple wave: the speed that goes with the change of sound speed, towards the end for sense 1
    const u = ((sense * 2) / (gamma - 1)) * (Math.sqrt(gamma * R * warm) - 343);
    pipe.set(i, rest * (1 + share), warm, 0, u);
  }
}

/** Passes through zero and the heights between them, of a pressure that swings. */
class Swing {
  readonly zeros: number[] = [];
  readonly heights: number[] = [];
  #t = 0;
  #last = 1;
  #height = 0;

  add(dt: number, value: number): void {
    this.#t += dt;
    this.#height = Math.max(this.#height, Math.abs(value));
    if (value * this.#last < 0) {
      this.zeros.push(this.#t - (dt * value) / (value - this.#last));
      this.heights.push(this.#height);
      this.#height = 0;
    }
    this.#last = value;
  }

  /** Over the first four periods, Hz. */
  get frequency(): number {
    return 4 / (this.zeros[8]! - this.zeros[0]!);
  }
}

function quarterWave(cells: number, mode = 1): Swing {
  const length = 0.35;
  const area = 1e-3;
  const pipe = smoothPipe({ cells, length, startArea: area });
  disturb(pipe, 0.02, (x) => Math.sin((mode * Math.PI * x) / (2 * length)));
  const swing = new Swing();
  let sign = 0;
  while (swing.zeros.length < 9) {
    const dt = step(pipe, () => {
      pipe.start.solve(rest, T, 0, area);
      pipe.end.solve(rest, T, 0, 0);
    });
    sign ||= Math.sign(pipe.end.pressure - rest);
    swing.add(dt, sign * (pipe.end.pressure - rest));
  }
  return swing;
}

describe('a pipe open at one end and closed at the other', () => {
  it.each([8, 12, 24])(
    'rings at a quarter wave, 245 Hz for 0.35 m at 343 m/s, to 2 thousandths with %i cells',
    (cells) => {
      expect(Math.abs(quarterWave(cells).frequency / 245 - 1)).toBeLessThan(0.002);
    },
  );

  it('rings at three quarters of a wave as well, 735 Hz, to 0.2 % with 24 cells', () => {
    expect(Math.abs(quarterWave(24, 3).frequency / 735 - 1)).toBeLessThan(0.002);
  });

  it('keeps nine tenths of the height after four periods with 8 cells, and never gains any', () => {
    const { heights } = quarterWave(8);
    expect(heights[8]! / heights[0]!).toBeGreaterThan(0.9);
    // crest against crest and trough against trough; the very first is cut short
    for (let i = 3; i < heights.length; i++) expect(heights[i]! / heights[i - 2]!).toBeLessThan(1);
  });
});

it.each([8, 16, 32])(
  'a pipe on a closed volume rings where tan(kL) = A / (kV), to 2 thousandths with %i cells',
  (cells) => {
    const [length, area, volume] = [0.35, 1.385442e-3, 3.0555556e-4];
    // L. E. Kinsler et al., Fundamentals of Acoustics, 4th ed., sec. 10 (from memory): the exact form of the resonator
    const k = root((each) => Math.tan(each * length) - area / (each * volume), 1, 1.5 / length)!;
    const pipe = smoothPipe({ cells, length, startArea: area });
    const height = 0.01;
    disturb(pipe, height, (x) => Math.sin(k * x) / Math.sin(k * length));
    let mass = (rest / (R * T)) * (1 + height) ** (1 / gamma) * volume;
    let energy = (rest * (1 + height) * volume) / (gamma - 1);
    const swing = new Swing();
    while (swing.zeros.length < 9) {
      const p = (energy * (gamma - 1)) / volume;
      const dt = step(pipe, () => {
        pipe.start.solve(rest, T, 0, area);
        pipe.end.solve(p, (p * volume) / (mass * R), 0, area);
      });
      mass -= pipe.end.flow * dt;
      energy -= pipe.end.enthalpyFlow * dt;
      swing.add(dt, (energy * (gamma - 1)) / volume - rest);
    }
    expect(Math.abs(swing.frequency / ((k * 343) / (2 * Math.PI)) - 1)).toBeLessThan(0.002);
  },
);

describe('a pulse', () => {
  const length = 1;
  const pulse = (x: number): number => Math.exp(-(((x - 0.5) / 0.05) ** 2));

  /** Sends a pulse towards the end and says how high it is when it is back in the middle, over what it was. */
  function echo(opening: number): number {
    const pipe = smoothPipe({ cells: 400, length, startArea: 1e-3 });
    disturb(pipe, 0.001, pulse, 1);
    for (let t = 0; t < length / 343;)
      t += step(pipe, () => {
        pipe.start.solve(rest, T, 0, 1e-3);
        pipe.end.solve(rest, T, 0, opening);
      });
    const heights = [...pipe.p].map((p) => p / rest - 1);
    return heights.reduce((most, each) => (Math.abs(each) > Math.abs(most) ? each : most)) / 0.001;
  }

  it('comes back from a wall as it was', () => expect(echo(0)).toBeCloseTo(1, 1));
  it('comes back from an open mouth upside down', () => expect(echo(1e-3)).toBeCloseTo(-1, 1));

  it.each([
    ['a pipe of twice the area', 2, -1 / 3],
    ['a pipe of half the area', 0.5, 1 / 3],
  ])('at %s sends back (A1 - A2) / (A1 + A2) of itself', (_name, ratio, expected) => {
    // linear acoustics: L. E. Kinsler et al., Fundamentals of Acoustics, 4th ed., sec. 10.10 (from memory)
    const [first, second] = [1e-3, ratio * 1e-3];
    const before = smoothPipe({ cells: 400, length, startArea: first });
    const behind = smoothPipe({ cells: 400, length, startArea: second });
    disturb(before, 0.001, pulse, 1);
    disturb(behind, 0, pulse);
    // the joint is a small volume that both are open to
    const volume = before.dx * Math.max(first, second) * 2;
    let mass = (rest / (R * T)) * volume;
    let energy = (rest * volume) / (gamma - 1);
    for (let t = 0; t < length / 343;) {
      const dt = (0.4 * before.dx) / Math.max(before.wave, behind.wave);
      const p = (energy * (gamma - 1)) / volume;
      const warm = (p * volume) / (mass * R);
      step(
        before,
        () => {
          before.start.solve(rest, T, 0, first);
          before.end.solve(p, warm, 0, first);
        },
        dt,
      );
      step(
        behind,
        () => {
          behind.start.solve(p, warm, 0, second);
          behind.end.solve(rest, T, 0, second);
        },
        dt,
      );
      mass -= (before.end.flow + behind.start.flow) * dt;
      energy -= (before.end.enthalpyFlow + behind.start.enthalpyFlow) * dt;
      t += dt;
    }
    const back = [...before.p].map((p) => p / rest - 1);
    const most = back.reduce((height, each) => (Math.abs(each) > Math.abs(height) ? each : height));
    expect(Math.abs(most / 0.001 - expected)).toBeLessThan(0.02);
  });
});
