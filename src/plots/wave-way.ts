import type { PressureField } from './pressure-map.ts';
import { pipeSpan } from './pressure-map.ts';

/** A wave on its way through a pipe: from an angle and a place to another, and how strong it is at the valve. */
export interface Way {
  readonly from: readonly [angle: number, place: number];
  readonly to: readonly [angle: number, place: number];
  /** In the field's unit; negative: a pull. */
  readonly strength: number;
}
type Span = readonly [number, number];

/** Pressure at an angle and a place, straight between the samples; angles repeat after a cycle. */
export function pressureAt({ angles, places, values }: PressureField, angle: number, place: number): number {
  const cycle = angles.at(-1)! - angles[0]!;
  const turned = angles[0]! + ((((angle - angles[0]!) % cycle) + cycle) % cycle);
  const near = (samples: readonly number[], at: number): [number, number] => {
    const above = samples.findIndex((s) => s > at);
    const i = Math.max(0, (above < 0 ? samples.length - 1 : above) - 1);
    return [i, Math.min(1, Math.max(0, (at - samples[i]!) / (samples[i + 1]! - samples[i]!)))];
  };
  const [i, t] = near(angles, turned);
  const [k, s] = near(places, place);
  const row = (j: number): number => values[j * places.length + k]! * (1 - s) + values[j * places.length + k + 1]! * s;
  return row(i) * (1 - t) + row(i + 1) * t;
}

/**
 * The strongest push (sign 1) or pull (-1) at the valve within a span, and its way along the pipe at the speed of sound:
 * away from the valve, or towards it. Null where the record does not show it: where it is weaker than `least`, or the
 * pressure on the way has not its sign for the half of the pipe next to the valve (at an open end every wave meets its
 * own reflection, and little is left to see).
 *
 * @param turning how far the crank turns while a wave goes a meter, rad/m
 */
export function wayOf(
  field: PressureField,
  [from, to]: Span,
  sign: 1 | -1,
  heading: 'away' | 'back',
  turning: number,
  least: number,
): Way | null {
  const { angles, places, values } = field;
  const n = places.length;
  const inside = angles.flatMap((a, i) => (a >= from && a <= to ? [i] : []));
  if (inside.length === 0) return null;
  const best = inside.reduce((a, b) => (sign * values[b * n]! > sign * values[a * n]! ? b : a));
  const strength = values[best * n]!;
  if (sign * strength < least) return null;
  const [, length] = pipeSpan(places);
  const there = angles[best]! + (heading === 'away' ? 1 : -1) * length * turning;
  for (let step = 1; step <= 8; step++) {
    const share = step / 16;
    const angle = angles[best]! + (there - angles[best]!) * share;
    if (sign * pressureAt(field, angle, length * share) <= 0) return null;
  }
  const [valve, end] = [
    [angles[best]!, 0],
    [there, length],
  ] as const;
  return heading === 'away' ? { from: valve, to: end, strength } : { from: end, to: valve, strength };
}

/** The mean at the valve of a field over a span, weighted; null where nothing weighs. */
export function meanAtValve({ angles, places, values }: PressureField, weight: (i: number) => number): number | null {
  let [sum, weights] = [0, 0];
  for (let i = 0; i < angles.length - 1; i++) {
    sum += weight(i) * values[i * places.length]!;
    weights += weight(i);
  }
  return weights > 0 ? sum / weights : null;
}
