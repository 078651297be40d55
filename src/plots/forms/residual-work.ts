import { scaleLinear } from 'd3-scale';
import { angle, rotation, share, temperature } from '../../units/quantity.ts';
import { degree, percent, toUnit, type Unit } from '../../units/unit.ts';
import { circle, type Drawing, line, path, said, type Sheet, text } from '../drawing.ts';
import { extent, withRoom } from '../line-figure.ts';
import { levels } from '../panel.ts';
import { type BySpeed, onSpeeds, smooth, speedAxis, toRpm } from '../speed-axis.ts';

export interface ResidualWorkValues {
  readonly residualCurve: BySpeed;
  /** rad from spark to half burned */
  readonly burnAngleCurve: BySpeed;
  /** K as the intake shuts */
  readonly trappedTemperatureCurve: BySpeed;
}
const tall = 92;
const step = tall + 44;

/** What burnt gas left in the cylinder does, by speed: how much is left, how long the charge burns, how warm it begins. */
export function residualWork(v: ResidualWorkValues, sheet: Sheet): Drawing {
  const [left, right, top] = [44, sheet.width - 12, 26];
  const warmth = temperature[sheet.system].unit;
  const panels: readonly { title: string; curve: BySpeed; unit: Unit; fromZero: boolean }[] = [
    { title: 'Burnt gas left in the charge, %', curve: v.residualCurve, unit: percent, fromZero: true },
    { title: 'Spark to half burned, crank degrees', curve: v.burnAngleCurve, unit: degree, fromZero: false },
    {
      title: `Charge as the intake shuts, ${warmth.symbol}`,
      curve: v.trappedTemperatureCurve,
      unit: warmth,
      fromZero: false,
    },
  ];
  const last = top + (panels.length - 1) * step + tall;
  const { x, axis } = speedAxis(v.residualCurve.x, [left, right], last);
  const { x: speeds } = v.residualCurve;
  const values = panels.map(({ curve, unit }) => onSpeeds(curve, speeds).map((y) => toUnit(y, unit)));
  const drawn = panels.map(({ title, fromZero }, n): string => {
    const [from, to] = [top + n * step, top + n * step + tall];
    const [low, high] = withRoom(extent([values[n]!]) ?? [0, 1]);
    const y = scaleLinear([fromZero ? 0 : low, high], [to, from]);
    const places = values[n]!.map((value, i): [number, number] => [x(speeds[i]!), y(value)]);
    return [
      text(0, from - 12, title),
      levels(y, y.ticks(3), [left, right]),
      line(left, to, right, to, 'class="axis"'),
      path(smooth(places), `fill="none" stroke="var(--${fromZero ? 'l3' : 'l1'})" stroke-width="2.25"`),
      ...places
        .filter(([, py]) => Number.isFinite(py))
        .map(([px, py]) => circle(px, py, 2.5, `fill="var(--${fromZero ? 'l3' : 'l1'})"`)),
    ].join('');
  });
  // Where most is left, and what comes of it there, as far as it is known.
  const remaining = onSpeeds(v.residualCurve, speeds);
  const burning = onSpeeds(v.burnAngleCurve, speeds);
  const most = remaining.indexOf(Math.max(...remaining));
  const takes = Number.isFinite(burning[most])
    ? `${said(sheet, burning[most]!, angle)} from spark to half burned`
    : 'half never burned';
  const there = `${takes} and a charge of ${said(sheet, onSpeeds(v.trappedTemperatureCurve, speeds)[most]!, temperature)} as the intake shuts`;
  return {
    width: sheet.width,
    height: last + 50,
    label: `Burnt gas left in the charge by engine speed, at most ${said(sheet, remaining[most]!, share)} at ${said(sheet, speeds[most]!, rotation)}, with ${there}.`,
    body: drawn.join('') + axis,
    twin: {
      columns: ['Engine speed, rpm', ...panels.map((p) => p.title)],
      rows: Array.from(speeds, (s, i) => [
        String(Math.round(toRpm(s))),
        ...panels.map((p, n) =>
          Number.isFinite(values[n]![i]) ? values[n]![i]!.toFixed(p.unit === warmth ? 0 : 1) : '–',
        ),
      ]),
    },
  };
}
