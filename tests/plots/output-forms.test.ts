import { describe, expect, it } from 'vitest';
import type { FillingValues } from '../../src/plots/forms/filling.ts';
import type { LoopValues } from '../../src/plots/forms/loop.ts';
import type { OutputValues } from '../../src/plots/forms/output.ts';
import { drawn } from './drawn.ts';
import { elementsOf, wordsOf } from './markup.ts';
import { isWell } from './well.ts';

const rpm = Math.PI / 30;
const speeds = Float64Array.from({ length: 12 }, (_, i) => (1000 + 500 * i) * rpm);
/** An invented engine: torque a parabola with its top of 500 N m at 4000 rpm. */
const torques = speeds.map((s) => 500 - 4e-3 * (s / rpm - 4000) ** 2 * 1e-2);
const output: OutputValues = {
  torqueCurve: { x: speeds, y: torques },
  powerCurve: { x: speeds, y: torques.map((t, i) => t * speeds[i]!) },
  unsettledSpeeds: { speeds: [1500 * rpm] },
  peakTorque: 500,
  peakTorqueSpeed: 4000 * rpm,
  peakPower: torques[11]! * speeds[11]!,
  peakPowerSpeed: 6500 * rpm,
};
const filling: FillingValues = {
  volumetricEfficiencyCurve: { x: speeds, y: speeds.map((_, i) => 0.8 + 0.01 * i) },
  residualCurve: { x: speeds, y: speeds.map(() => 0.05) },
  runnerTunedSpeedLow: 3800 * rpm,
  runnerTunedSpeedHigh: 4700 * rpm,
  runnerWaveSpeed: 3200 * rpm,
  primaryTunedSpeed: 5100 * rpm,
};
/** A circle in the plane of pressure and volume: no engine, but a loop. */
const loop: LoopValues = {
  cylinderLoop: {
    volume: Array.from({ length: 721 }, (_, i) => 4e-4 - 3.1e-4 * Math.cos((i * Math.PI) / 180 + Math.PI)),
    pressure: Array.from({ length: 721 }, (_, i) => 1e6 + 9e5 * Math.cos((i * Math.PI) / 360 - Math.PI / 2)),
  },
  engineSpeed: 5500 * rpm,
};

describe.each([
  ['output', output],
  ['filling', filling],
  ['loop', loop],
])('%s', (form, values) => {
  it('is drawn well at any width', () => {
    for (const width of [280, 358, 479, 480, 720, 1400]) isWell(form, values, width);
  });
  it('says other figures in SI units, and no other shape', () => {
    const [us, si] = (['us', 'si'] as const).map((system) => drawn(form, values, 700, system));
    expect(elementsOf(us!.body).length).toBeGreaterThan(20);
    if (form !== 'filling') expect(us!.twin.rows[5]).not.toEqual(si!.twin.rows[5]);
    expect(us!.twin.rows.length).toBe(si!.twin.rows.length);
  });
});

describe('torque and power', () => {
  it('cross where a pound-foot times a radian is a horsepower-second: at 5252 rpm', () => {
    const { rows } = drawn('output', output, 700, 'us').twin;
    for (const [speed, torque, power] of rows)
      expect(Math.abs((Number(torque) * Number.parseFloat(speed!)) / 5252.113 - Number(power))).toBeLessThan(1);
  });
  it('are hollow, and say so, where a speed did not settle', () => {
    const { label, twin, body } = drawn('output', output);
    expect(label).toContain('not settled at 1500 rpm');
    expect(twin.rows[1]![0]).toBe('1500, not settled');
    const dots = elementsOf(body).filter((e) => e.name === 'circle' && e.attributes.r === '2.5');
    expect(dots.filter((e) => e.attributes.fill === 'var(--paper)').length).toBe(2);
    expect(dots.length).toBe(24);
  });
});

describe('filling', () => {
  it('names only the tuned speeds that are on the axis', () => {
    const words = (values: FillingValues): string => wordsOf(drawn('filling', values).body).join();
    expect(words(filling)).toMatch(/runner, as one swing.*runner, quarter wave.*primary/);
    const far = {
      ...filling,
      primaryTunedSpeed: 12_900 * rpm,
      runnerTunedSpeedLow: 8000 * rpm,
      runnerTunedSpeedHigh: 9000 * rpm,
    };
    expect(words(far)).not.toMatch(/primary|one swing/);
  });
});

describe('the loop', () => {
  it('draws each cycle twice, plain and logarithmic, and lines the gas exchange in both', () => {
    const closed = elementsOf(drawn('loop', loop).body).filter(
      (e) => e.name === 'path' && e.attributes.d?.endsWith('Z'),
    );
    expect(closed.filter((e) => e.attributes.fill?.startsWith('url(')).length).toBe(2);
    expect(closed.filter((e) => e.attributes.fill === 'none').length).toBe(2);
  });
});
