import { enginePower, engineTorque, type System } from '../units/quantity.ts';
import { toUnit } from '../units/unit.ts';
import { valueAt } from './cursor.ts';
import { path } from './drawing.ts';
import { type BySpeed, smooth, toRpm } from './speed-axis.ts';

/** Torque by speed and how far under and over it two engines in three lie: rad/s, N m, N m. */
export interface TorqueBand {
  readonly x: ArrayLike<number>;
  readonly torque: ArrayLike<number>;
  readonly below: ArrayLike<number>;
  readonly above: ArrayLike<number>;
}
/** An outline by speed, in the unit shown. */
export interface Outline {
  readonly speeds: readonly number[];
  readonly low: readonly number[];
  readonly high: readonly number[];
}

/** How far single engines scatter about such a curve: 12 % under 2000 rpm, 8 % over it. */
const share = (speed: number): number => (toRpm(speed) < 2000 ? 0.12 : 0.08);

/** The band that stands for a curve without one of its own. */
export function flatBand({ x, y }: BySpeed): TorqueBand {
  const room = Float64Array.from(y, (t, i) => Math.abs(t) * share(x[i]!));
  return { x, torque: y, below: room, above: room };
}

/** A band as torque and as power, which is torque times speed, in the system's units. */
export function outlines(
  { x, torque, below, above }: TorqueBand,
  system: System,
): { readonly torque: Outline; readonly power: Outline } {
  const [asTorque, asPower] = [engineTorque[system].unit, enginePower[system].unit];
  const speeds = Array.from(x);
  const [low, high] = [speeds.map((_, i) => torque[i]! - below[i]!), speeds.map((_, i) => torque[i]! + above[i]!)];
  return {
    torque: { speeds, low: low.map((t) => toUnit(t, asTorque)), high: high.map((t) => toUnit(t, asTorque)) },
    power: {
      speeds,
      low: low.map((t, i) => toUnit(t * speeds[i]!, asPower)),
      high: high.map((t, i) => toUnit(t * speeds[i]!, asPower)),
    },
  };
}

/** An outline filled with a pale ink. */
export function bandOf(
  { speeds, low, high }: Outline,
  x: (speed: number) => number,
  y: (value: number) => number,
  ink: string,
): string {
  const at = (values: readonly number[]): [number, number][] => values.map((v, i) => [x(speeds[i]!), y(v)]);
  return path(
    `${smooth(at(high))}${smooth(at(low).toReversed()).replace('M', 'L')}Z`,
    `fill="var(--${ink})" fill-opacity=".1"`,
  );
}

/** An outline's low and high at a speed. */
export const edgesAt = ({ speeds, low, high }: Outline, speed: number): readonly [number, number] => [
  valueAt({ x: speeds, y: low }, speed),
  valueAt({ x: speeds, y: high }, speed),
];
