import { scaleLinear } from 'd3-scale';
import { angle, perRadian, perRadianSquared, type Quantity } from '../../units/quantity.ts';
import { toUnit } from '../../units/unit.ts';
import { valueAt } from '../cursor.ts';
import { type Drawing, line, path, points, said, type Sheet, text } from '../drawing.ts';

interface Curve {
  readonly x: Float64Array;
  readonly y: Float64Array;
}
export interface MotionValues {
  readonly intakeVelocity: Curve;
  readonly intakeAcceleration: Curve;
}

const degree = Math.PI / 180;

/** Velocity and acceleration at the valve, stacked on one axis: crank degrees from the lobe's peak. */
export function motion(v: MotionValues, sheet: Sheet): Drawing {
  const [left, right, tall] = [64, sheet.width - 12, 130];
  const x = scaleLinear([-180 * degree, 180 * degree], [left, right]);
  const panel = (curve: Curve, quantity: Quantity, title: string, top: number): string => {
    const { unit, digits } = quantity[sheet.system];
    const most = Math.max(...curve.y.map(Math.abs)) || 1;
    const y = scaleLinear([-most * 1.1, most * 1.1], [top + tall, top + 22]);
    const marks = [-most, 0, most];
    return [
      text(0, top + 10, `${title}, ${unit.symbol}`),
      ...marks.map((m) =>
        text(
          left - 8,
          y(m) + 4,
          toUnit(m, unit)
            .toFixed(m === 0 ? 0 : digits)
            .replace('-', '−'),
          'end',
        ),
      ),
      line(left, y(0), right, y(0), 'class="axis"'),
      path(
        points(Array.from(curve.x, (a, i): [number, number] => [x(a), y(curve.y[i]!)])),
        'fill="none" stroke="var(--l2)" stroke-width="2"',
      ),
    ].join('');
  };
  const height = 2 * tall + 64;
  const body = [
    panel(v.intakeVelocity, perRadian, 'Velocity', 4),
    panel(v.intakeAcceleration, perRadianSquared, 'Acceleration', tall + 18),
    ...[-180, -90, 0, 90, 180].map((a) =>
      text(x(a * degree), height - 26, a === 0 ? 'peak' : `${Math.abs(a)}°`, a === 180 ? 'end' : 'middle'),
    ),
    text(right, height - 6, 'Crank degrees from the lobe’s peak', 'end'),
  ].join('');
  const [velocity, acceleration] = [perRadian[sheet.system], perRadianSquared[sheet.system]];
  return {
    width: sheet.width,
    height,
    label: `Intake valve velocity up to ${said(sheet, Math.max(...v.intakeVelocity.y), perRadian)}, acceleration up to ${said(sheet, Math.max(...v.intakeAcceleration.y), perRadianSquared)} and down to ${said(sheet, Math.min(...v.intakeAcceleration.y), perRadianSquared)}.`,
    body,
    twin: {
      columns: ['From the peak', `Velocity, ${velocity.unit.symbol}`, `Acceleration, ${acceleration.unit.symbol}`],
      rows: Array.from({ length: 25 }, (_, i) => (i - 12) * 12 * degree).map((a) => [
        said(sheet, a, angle),
        toUnit(valueAt(v.intakeVelocity, a), velocity.unit).toFixed(velocity.digits),
        toUnit(valueAt(v.intakeAcceleration, a), acceleration.unit).toFixed(acceleration.digits),
      ]),
    },
  };
}
