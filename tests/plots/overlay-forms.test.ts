import { describe, expect, it } from 'vitest';
import type { OctaneValues } from '../../src/plots/forms/octane.ts';
import type { OutputValues } from '../../src/plots/forms/output.ts';
import { drawn } from './drawn.ts';
import { wordsOf } from './markup.ts';
import { isWell } from './well.ts';

const rpm = Math.PI / 30;
/** An invented engine: torque a parabola with its top at a speed. */
function output(top: number, at: number, from: number, to: number): OutputValues {
  const x = Float64Array.from({ length: (to - from) / 500 + 1 }, (_, i) => (from + 500 * i) * rpm);
  const y = x.map((s) => top - 3e-5 * (s / rpm - at) ** 2);
  return {
    torqueCurve: { x, y },
    powerCurve: { x, y: y.map((t, i) => t * x[i]!) },
    unsettledSpeeds: { speeds: [] },
    peakTorque: top,
    peakTorqueSpeed: at * rpm,
    peakPower: Math.max(...y.map((t, i) => t * x[i]!)),
    peakPowerSpeed: to * rpm,
  };
}
const octane = (most: number): OctaneValues => {
  const x = Float64Array.from({ length: 12 }, (_, i) => (1000 + 500 * i) * rpm);
  return {
    octaneRequirementCurve: { x, y: x.map((s) => most - 2e-7 * (s / rpm - 3000) ** 2) },
    pumpOctane: 91,
    octaneMargin: 91 - most,
  };
};
const shown = { self: { name: 'Early cam', place: 0 } };
const late = output(520, 5500, 1500, 7500);
const two = { ...output(500, 4000, 1000, 6500), ...shown, others: [{ name: 'Late cam', place: 1, values: late }] };
const fuels = { ...octane(90), ...shown, others: [{ name: 'Late cam', place: 1, values: octane(95) }] };

describe.each([
  ['output', two],
  ['octane', fuels],
])('%s of two variants', (form, values) => {
  it('is drawn well at any width, both named', () => {
    for (const width of [280, 358, 479, 480, 720, 1400]) {
      isWell(form, values, width);
      for (const name of ['Early cam', 'Late cam']) expect(wordsOf(drawn(form, values, width).body)).toContain(name);
    }
  });
  it('has the other’s lines dashed, and says in its label what they come to', () => {
    const { body, label } = drawn(form, values);
    expect(body.split('stroke-dasharray="8 4"')).toHaveLength(form === 'output' ? 3 : 2);
    expect(label).toMatch(/Late cam: at most/);
  });
  it('has the other in its table', () => {
    const { twin } = drawn(form, values);
    expect(twin.columns.some((c) => c.includes('Late cam'))).toBe(true);
    for (const row of twin.rows) expect(row).toHaveLength(twin.columns.length);
  });
  it('is what it was where there is one alone', () => {
    const { self: _self, others: _others, ...alone } = values;
    const { body, twin } = drawn(form, alone);
    expect(body).not.toContain('stroke-dasharray="8 4"');
    expect(JSON.stringify(twin)).not.toContain('cam');
  });
});

it('two curves of different speeds stand over an axis that holds both', () => {
  const words = wordsOf(drawn('output', two, 1400).body);
  expect(words).toContain('1000');
  expect(words).toContain('7000');
  const { columns, rows } = drawn('output', two).twin;
  const torque = columns.indexOf('Torque, Late cam');
  // At 5500 rpm the late cam's parabola has its top: 520 N m are 383.5 lbf ft.
  const row = rows.find(([speed]) => speed === '5500')!;
  expect(Number(row[torque])).toBeCloseTo(384, 0);
});
