import { scaleLinear } from 'd3-scale';
import { curveMonotoneX, line as through } from 'd3-shape';
import { line, text } from './drawing.ts';

/** Figures by engine speed: x in rad/s. */
export interface BySpeed {
  readonly x: Float64Array;
  readonly y: Float64Array;
}
const rpm = (2 * Math.PI) / 60;
const near = 0.01; // rad/s
export const toRpm = (speed: number): number => speed / rpm;

/** A curve's figures at some speeds; NaN at those it has none for. */
export const onSpeeds = ({ x, y }: BySpeed, speeds: ArrayLike<number>): readonly number[] =>
  Array.from(speeds, (speed) => y[x.findIndex((each) => Math.abs(each - speed) < near)] ?? Number.NaN);

/** The scale of an axis of engine speed, and the axis itself along the bottom. */
export function speedAxis(
  speeds: ArrayLike<number>,
  [left, right]: readonly [number, number],
  bottom: number,
): { readonly x: (speed: number) => number; readonly axis: string } {
  const [from, to] = [toRpm(speeds[0]!), toRpm(speeds[speeds.length - 1]!)];
  const room = (to - from || 1000) * 0.03;
  const scale = scaleLinear([from - room, to + room], [left, right]);
  const axis = [
    line(left, bottom, right, bottom, 'class="axis"'),
    ...scale.ticks(right - left < 420 ? 4 : 8).map((t) => text(scale(t), bottom + 20, String(t), 'middle')),
    text(right, bottom + 42, 'Engine speed, rpm', 'end'),
  ].join('');
  return { x: (speed) => scale(toRpm(speed)), axis };
}

/** A smooth line through points that overshoots none of them; a point that is no number is a gap. */
export const smooth = (places: readonly (readonly [number, number])[]): string =>
  through<readonly [number, number]>()
    .defined(([, y]) => Number.isFinite(y))
    .x(([x]) => x)
    .y(([, y]) => y)
    .curve(curveMonotoneX)([...places]) ?? '';
