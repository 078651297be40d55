import { scaleLinear } from 'd3-scale';
import { enginePower as power, engineTorque as torque, rotation } from '../../units/quantity.ts';
import { toUnit } from '../../units/unit.ts';
import { circle, type Drawing, isNarrow, line, path, said, type Sheet, text } from '../drawing.ts';
import { type BySpeed, smooth, speedAxis, toRpm } from '../speed-axis.ts';

export interface OutputValues {
  readonly torqueCurve: BySpeed;
  readonly powerCurve: BySpeed;
  /** Speeds whose cycle did not settle, rad/s. */
  readonly unsettledSpeeds: { readonly speeds: readonly number[] };
  readonly peakTorque: number;
  readonly peakTorqueSpeed: number;
  readonly peakPower: number;
  readonly peakPowerSpeed: number;
}

const halo = 'style="paint-order:stroke;stroke:var(--paper);stroke-width:4px;stroke-linejoin:round"';

/** How far single engines scatter about such a curve: 12 % under 2000 rpm, 8 % over it. */
const share = (speed: number): number => (toRpm(speed) < 2000 ? 0.12 : 0.08);

/** Torque and power over engine speed in a band of what single engines scatter by; hollow where a speed did not settle. */
export function output(v: OutputValues, sheet: Sheet): Drawing {
  const narrow = isNarrow(sheet);
  const [left, right, top, bottom] = [44, sheet.width - 12, 34, narrow ? 250 : 330];
  const [asTorque, asPower] = [torque[sheet.system].unit, power[sheet.system].unit];
  const torques = Array.from(v.torqueCurve.y, (y) => toUnit(y, asTorque));
  const powers = Array.from(v.powerCurve.y, (y) => toUnit(y, asPower));
  const most = Math.max(...torques.map((t, i) => t * (1 + share(v.torqueCurve.x[i]!))), ...powers, 1);
  const y = scaleLinear([0, most * 1.06], [bottom, top]);
  const { x, axis } = speedAxis(v.torqueCurve.x, [left, right], bottom);
  const at = (values: readonly number[], factor: (speed: number) => number = () => 1): [number, number][] =>
    values.map((value, i) => [x(v.torqueCurve.x[i]!), y(value * factor(v.torqueCurve.x[i]!))]);
  const band = (values: readonly number[], ink: string): string =>
    path(
      `${smooth(at(values, (s) => 1 + share(s)))}${smooth(at(values, (s) => 1 - share(s)).toReversed()).replace('M', 'L')}Z`,
      `fill="var(--${ink})" fill-opacity=".1"`,
    );
  const dots = (values: readonly number[], ink: string): string =>
    at(values)
      .map(([px, py], i) =>
        circle(
          px,
          py,
          2.5,
          `fill="var(--${isUnsettled(v.torqueCurve.x[i]!) ? 'paper' : ink})" stroke="var(--${ink})" stroke-width="1.5"`,
        ),
      )
      .join('');
  const isUnsettled = (speed: number): boolean => v.unsettledSpeeds.speeds.some((s) => Math.abs(s - speed) < 0.01);
  const peak = (speed: number, value: number, words: string, ink: string, lower: boolean): string =>
    circle(x(speed), y(value), 5, `fill="none" stroke="var(--${ink})" stroke-width="1.5"`) +
    text(Math.min(x(speed), right - 70), y(value) + (lower ? 24 : -12), words, 'middle', 'strong', halo);
  const body = [
    text(0, 14, `Torque, ${asTorque.symbol}, and power, ${asPower.symbol}`),
    ...y
      .ticks(narrow ? 4 : 6)
      .map((t) => line(left, y(t), right, y(t), 'class="grid"') + text(left - 8, y(t) + 4, String(t), 'end')),
    band(torques, 'l1'),
    band(powers, 'l2'),
    path(smooth(at(torques)), 'fill="none" stroke="var(--l1)" stroke-width="2.75"'),
    path(smooth(at(powers)), 'fill="none" stroke="var(--l2)" stroke-width="2"'),
    dots(torques, 'l1'),
    dots(powers, 'l2'),
    peak(
      v.peakTorqueSpeed,
      toUnit(v.peakTorque, asTorque),
      said(sheet, v.peakTorque, torque),
      'l1',
      toUnit(v.peakTorque, asTorque) < toUnit(v.peakPower, asPower),
    ),
    peak(
      v.peakPowerSpeed,
      toUnit(v.peakPower, asPower),
      said(sheet, v.peakPower, power),
      'l2',
      toUnit(v.peakTorque, asTorque) >= toUnit(v.peakPower, asPower),
    ),
    axis,
  ].join('');
  const hollow = v.unsettledSpeeds.speeds.map((s) => said(sheet, s, rotation));
  return {
    width: sheet.width,
    height: bottom + 50,
    label: `Torque and power over engine speed: at most ${said(sheet, v.peakTorque, torque)} at ${said(sheet, v.peakTorqueSpeed, rotation)} and ${said(sheet, v.peakPower, power)} at ${said(sheet, v.peakPowerSpeed, rotation)}${hollow.length > 0 ? `; not settled at ${hollow.join(', ')}` : ''}.`,
    body,
    twin: {
      columns: ['Engine speed, rpm', `Torque, ${asTorque.symbol}`, `Power, ${asPower.symbol}`],
      rows: torques.map((t, i) => [
        `${Math.round(toRpm(v.torqueCurve.x[i]!))}${isUnsettled(v.torqueCurve.x[i]!) ? ', not settled' : ''}`,
        t.toFixed(0),
        powers[i]!.toFixed(0),
      ]),
    },
  };
}
