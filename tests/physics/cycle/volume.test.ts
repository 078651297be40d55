import { describe, expect, it } from 'vitest';
import { evenPhases, Neighbors } from '../../../src/physics/cycle/neighbors.ts';
import { Pipe } from '../../../src/physics/cycle/pipe/pipe.ts';
import { Volume } from '../../../src/physics/cycle/volume.ts';

const gamma = 1.37;
const R = 285;
const mouth = 1.5e-3;
const pipe = (): Pipe =>
  new Pipe({
    cells: 6,
    length: 0.3,
    startArea: mouth,
    endArea: mouth,
    gamma,
    R,
    friction: 0,
    heatFactor: 0,
    wallTemperature: 300,
    lossHeads: 0,
  });
const plenum = (neighbors: Neighbors): Volume => new Volume({ volume: 3e-3, gamma, R, mouth }, neighbors);

describe('a volume', () => {
  it('and a pipe that fills from it keep mass and energy between them', () => {
    const volume = plenum(new Neighbors([]));
    const runner = pipe();
    volume.fill(1.1e5, 320, 0.2);
    runner.fill(0.8e5, 290, 0);
    const sums = (): readonly number[] => [volume.mass + runner.mass(), volume.energy + runner.energy()];
    const before = sums();
    const filled = runner.mass();
    volume.neighbors.enter(0);
    for (let i = 0; i < 200; i++) {
      const step = (0.8 * runner.dx) / runner.wave;
      runner.reconstruct(step);
      runner.start.solve(volume.pressure, volume.temperature, volume.burnt, 0.9 * mouth);
      runner.end.solve(1e5, 300, 0, 0);
      runner.update(step);
      volume.exchange(runner.start, step, 0.001);
      volume.refresh();
    }
    expect(runner.mass() / filled).toBeGreaterThan(1.15);
    sums().forEach((sum, i) => expect(Math.abs(sum / before[i]! - 1)).toBeLessThan(1e-13));
  });

  it('drawn on by copies cools along the isentrope, because gas leaves it as it is', () => {
    const volume = plenum(new Neighbors(evenPhases(2)));
    volume.fill(1e5, 300, 0.1);
    const runner = pipe();
    runner.fill(1e5, 300, 0);
    runner.reconstruct(1e-6);
    runner.start.solve(1e5, 300, 0, 0); // its own pipe is shut
    const steps = 20_000;
    for (let i = 0; i < steps; i++) {
      volume.neighbors.fill((0.3 * 3.5e-3) / steps, 0, 0, 0, volume.pressure);
      volume.neighbors.enter(0);
      volume.exchange(runner.start, 1e-6, 1);
      volume.refresh();
    }
    expect(volume.pressure).toBeLessThan(0.7e5);
    expect(volume.temperature).toBeCloseTo(300 * (volume.pressure / 1e5) ** ((gamma - 1) / gamma), 2);
    expect(volume.burnt).toBeCloseTo(0.1, 12);
    expect(volume.floors).toBe(0);
  });

  it('answers a pressure above the recorded one by the admittance of the pipes, area over sound speed', () => {
    const volume = plenum(new Neighbors(evenPhases(4)));
    volume.fill(1.02e5, 300, 0);
    volume.neighbors.fill(0, 0, 0, 0, 1e5);
    volume.neighbors.enter(5);
    const runner = pipe();
    runner.fill(1e5, 300, 0);
    runner.reconstruct(1e-6);
    runner.start.solve(1e5, 300, 0, 0);
    const before = volume.mass;
    volume.exchange(runner.start, 1e-5, 0.1);
    const drawn = (3 * 2000 * mouth * 1e-5) / Math.sqrt(gamma * R * 300);
    expect(before - volume.mass).toBeCloseTo(drawn, 12);
    expect(drawn).toBeGreaterThan(1e-7);
  });

  it('counts it when more is drawn than is there', () => {
    const volume = plenum(new Neighbors([]));
    volume.fill(1e5, 300, 0);
    volume.mass = -1e-6;
    volume.refresh();
    expect(volume.floors).toBe(1);
    expect(volume.pressure).toBeCloseTo(1e5, 6);
  });
});
