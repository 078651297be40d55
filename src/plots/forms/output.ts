import { scaleLinear } from 'd3-scale';
import { enginePower as power, engineTorque as torque, rotation } from '../../units/quantity.ts';
import { toUnit } from '../../units/unit.ts';
import { circle, type Drawing, halo, isNarrow, path, said, type Sheet, text } from '../drawing.ts';
import { valueAt } from '../cursor.ts';
import { otherLines, ownStroke, spanOf, variantNames } from '../other-lines.ts';
import { levels } from '../panel.ts';
import { type BySpeed, smooth, speedAxis, toRpm } from '../speed-axis.ts';
import { bandOf, edgesAt, flatBand, outlines, type TorqueBand } from '../torque-band.ts';
import type { WithOthers } from '../variants.ts';

export interface OutputValues {
  readonly torqueCurve: BySpeed;
  readonly powerCurve: BySpeed;
  /** Speeds whose cycle did not settle, rad/s. */
  readonly unsettledSpeeds: { readonly speeds: readonly number[] };
  readonly peakTorque: number;
  readonly peakTorqueSpeed: number;
  readonly peakPower: number;
  readonly peakPowerSpeed: number;
  /** How far it may be off, from what it stands on; without it the band is what single engines scatter by. */
  readonly torqueBand?: TorqueBand;
}

/** Torque and power over engine speed, each in its band; hollow where a speed did not settle. Other variants without bands. */
export function output(v: OutputValues & WithOthers<OutputValues>, sheet: Sheet): Drawing {
  const narrow = isNarrow(sheet);
  const [left, right, top, bottom] = [44, sheet.width - 12, 34, narrow ? 250 : 330];
  const [asTorque, asPower] = [torque[sheet.system].unit, power[sheet.system].unit];
  const torques = Array.from(v.torqueCurve.y, (y) => toUnit(y, asTorque));
  const powers = Array.from(v.powerCurve.y, (y) => toUnit(y, asPower));
  const band = outlines(v.torqueBand ?? flatBand(v.torqueCurve), sheet.system);
  const { others = [] } = v;
  const torqueOf = ({ torqueCurve: { x, y } }: OutputValues): BySpeed => ({ x, y: y.map((t) => toUnit(t, asTorque)) });
  const powerOf = ({ powerCurve: { x, y } }: OutputValues): BySpeed => ({ x, y: y.map((p) => toUnit(p, asPower)) });
  const theirs = others.flatMap(({ values }) => [...torqueOf(values).y, ...powerOf(values).y]);
  const most = Math.max(...torques, ...band.torque.high, ...powers, ...theirs, 1);
  const y = scaleLinear([0, most * 1.06], [bottom, top]);
  const { x, axis } = speedAxis(
    spanOf([v, ...others.map((o) => o.values)].map((o) => o.torqueCurve)),
    [left, right],
    bottom,
  );
  const at = (values: readonly number[]): [number, number][] =>
    values.map((value, i) => [x(v.torqueCurve.x[i]!), y(value)]);
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
    levels(y, y.ticks(narrow ? 4 : 6), [left, right]),
    bandOf(band.torque, x, y, 'l1'),
    bandOf(band.power, x, y, 'l2'),
    otherLines(v, torqueOf, [x, y], 'l1'),
    otherLines(v, powerOf, [x, y], 'l2'),
    path(smooth(at(torques)), `fill="none" stroke="var(--l1)" ${ownStroke(v, 2.75)}`),
    path(smooth(at(powers)), `fill="none" stroke="var(--l2)" ${ownStroke(v, 2)}`),
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
    variantNames(v, v, torqueOf, y, [right, bottom]),
    axis,
  ].join('');
  const hollow = v.unsettledSpeeds.speeds.map((s) => said(sheet, s, rotation));
  return {
    width: sheet.width,
    height: bottom + 50,
    label: `Torque and power over engine speed: at most ${said(sheet, v.peakTorque, torque)} at ${said(sheet, v.peakTorqueSpeed, rotation)} and ${said(sheet, v.peakPower, power)} at ${said(sheet, v.peakPowerSpeed, rotation)}${hollow.length > 0 ? `; not settled at ${hollow.join(', ')}` : ''}.${others.map((o) => ` ${o.name}: at most ${said(sheet, o.values.peakTorque, torque)} and ${said(sheet, o.values.peakPower, power)}.`).join('')}`,
    body,
    twin: {
      columns: [
        'Engine speed, rpm',
        `Torque, ${asTorque.symbol}`,
        ...(v.torqueBand ? ['From', 'To'] : []),
        `Power, ${asPower.symbol}`,
        ...others.flatMap(({ name }) => [`Torque, ${name}`, `Power, ${name}`]),
      ],
      rows: torques.map((t, i) => [
        `${Math.round(toRpm(v.torqueCurve.x[i]!))}${isUnsettled(v.torqueCurve.x[i]!) ? ', not settled' : ''}`,
        t.toFixed(0),
        ...(v.torqueBand ? edgesAt(band.torque, v.torqueCurve.x[i]!).map((edge) => edge.toFixed(0)) : []),
        powers[i]!.toFixed(0),
        ...others.flatMap(({ values }) =>
          [torqueOf(values), powerOf(values)].map((curve) => valueAt(curve, v.torqueCurve.x[i]!).toFixed(0)),
        ),
      ]),
    },
  };
}
