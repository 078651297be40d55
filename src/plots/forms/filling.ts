import { scaleLinear } from 'd3-scale';
import { rotation } from '../../units/quantity.ts';
import { box, circle, type Drawing, isNarrow, line, path, said, type Sheet, text } from '../drawing.ts';
import { type BySpeed, smooth, speedAxis, toRpm } from '../speed-axis.ts';

export interface FillingValues {
  readonly volumetricEfficiencyCurve: BySpeed;
  readonly residualCurve: BySpeed;
  readonly runnerTunedSpeedLow: number;
  readonly runnerTunedSpeedHigh: number;
  readonly runnerWaveSpeed: number;
  readonly primaryTunedSpeed: number;
}

/** Volumetric efficiency over engine speed, burnt gas left over under it, and where simple tuning rules say the pipes help. */
export function filling(v: FillingValues, sheet: Sheet): Drawing {
  const narrow = isNarrow(sheet);
  const [left, right, top, bottom] = [44, sheet.width - 12, 66, narrow ? 280 : 360];
  const { x: speeds, y: filled } = v.volumetricEfficiencyCurve;
  const { x, axis } = speedAxis(speeds, [left, right], bottom);
  const y = scaleLinear([0, Math.max(1.05, ...filled) * 100], [bottom, top]);
  const trace = (ys: ArrayLike<number>): [number, number][] =>
    Array.from(speeds, (s, i): [number, number] => [x(s), y(ys[i]! * 100)]);
  const [first, last] = [speeds[0]!, speeds[speeds.length - 1]!];
  const isShown = (speed: number): boolean => speed >= first && speed <= last;
  const marks = [
    { name: 'runner, quarter wave', speed: v.runnerWaveSpeed },
    { name: 'primary', speed: v.primaryTunedSpeed },
  ].filter((m) => isShown(m.speed));
  const [from, to] = [v.runnerTunedSpeedLow, v.runnerTunedSpeedHigh].map((s) => Math.min(last, Math.max(first, s))) as [
    number,
    number,
  ];
  const half = left + (right - left) / 2;
  const nameAt = (px: number, py: number, name: string): string =>
    text(px + (px > half ? -4 : 4), py, name, px > half ? 'end' : 'start');
  const body = [
    text(0, 14, 'Volumetric efficiency, %'),
    ...y
      .ticks(5)
      .map((t) => line(left, y(t), right, y(t), 'class="grid"') + text(left - 8, y(t) + 4, String(t), 'end')),
    from < to
      ? box(x(from), top, x(to) - x(from), bottom - top, 'fill="var(--l2)" fill-opacity=".1"') +
        nameAt(x(from), top - 6, 'runner, as one swing')
      : '',
    ...marks.map(
      (m, i) =>
        line(x(m.speed), top, x(m.speed), bottom, 'stroke="var(--ink-3)" stroke-dasharray="2 4"') +
        nameAt(x(m.speed), top - 22 - 16 * i, m.name),
    ),
    path(smooth(trace(filled)), 'fill="none" stroke="var(--l1)" stroke-width="2.75"'),
    ...trace(filled).map(([px, py]) => circle(px, py, 2.5, 'fill="var(--l1)"')),
    path(smooth(trace(v.residualCurve.y)), 'fill="none" stroke="var(--l3)" stroke-width="2"'),
    text(right - 4, trace(v.residualCurve.y).at(-1)![1] - 10, 'burnt gas left in the charge', 'end', 'strong'),
    axis,
  ].join('');
  const best = filled.indexOf(Math.max(...filled));
  return {
    width: sheet.width,
    height: bottom + 50,
    label: `Volumetric efficiency over engine speed: at most ${(filled[best]! * 100).toFixed(0)} % at ${said(sheet, speeds[best]!, rotation)}; simple rules tune the runner to ${said(sheet, v.runnerTunedSpeedLow, rotation)} up to ${said(sheet, v.runnerTunedSpeedHigh, rotation)}, the primary to ${said(sheet, v.primaryTunedSpeed, rotation)}.`,
    body,
    twin: {
      columns: ['Engine speed, rpm', 'Volumetric efficiency, %', 'Burnt gas left, %'],
      rows: Array.from(speeds, (s, i) => [
        String(Math.round(toRpm(s))),
        (filled[i]! * 100).toFixed(1),
        (v.residualCurve.y[i]! * 100).toFixed(1),
      ]),
    },
  };
}
