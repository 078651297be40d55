import { scaleLinear } from 'd3-scale';
import { angle, type System } from '../../units/quantity.ts';
import { kilogramPerHour, kilopascal, poundPerHour, psi, toUnit, type Unit } from '../../units/unit.ts';
import { crankAxis } from '../crank-axis.ts';
import { cursorLine, cursorOn, valueAt } from '../cursor.ts';
import { cursorValues, type Trace } from '../cursor-values.ts';
import { byStroke, type CycleRecord, taken } from '../cycle-record.ts';
import { box, type Drawing, halo, isNarrow, line, path, points, said, type Sheet, text } from '../drawing.ts';
import { fixed, kept, levels, type Span } from '../panel.ts';

export interface ValveFlowValues {
  readonly cycleRecord: CycleRecord;
}
const degree = Math.PI / 180;
const [from, to] = [60 * degree, 660 * degree];
const [lowest, highest] = [0.3e5, 3e5]; // Pa: where gas is exchanged; firing pressures are far over it
const shownIn: Readonly<Record<System, { readonly pressure: Unit; readonly flow: Unit }>> = {
  us: { pressure: psi, flow: poundPerHour },
  si: { pressure: kilopascal, flow: kilogramPerHour },
};

/** Pressures on both sides of both valves through the gas exchange, and what flows through them; what flows back is shaded. */
export function valveFlow({ cycleRecord: record }: ValveFlowValues, sheet: Sheet): Drawing {
  const narrow = isNarrow(sheet);
  const { pressure, flow } = shownIn[sheet.system];
  const { order, angles } = byStroke(record.angle);
  const trace = (name: string, ink: string, values: ArrayLike<number>, unit: Unit): Trace => ({
    name,
    ink,
    y: taken(values, order).map((v) => toUnit(v, unit)),
  });
  const pressures = [
    trace('exhaust', 'l3', record.exhaustPressure, pressure),
    trace('intake', 'l2', record.intakePressure, pressure),
    trace('cylinder', 'l1', record.cylinderPressure, pressure),
  ] as const;
  const flows = [
    trace('exhaust', 'l3', record.exhaustFlow, flow),
    trace('intake', 'l2', record.intakeFlow, flow),
  ] as const;
  const [left, right, top] = [48, sheet.width - 12, 30];
  const [mid, flowTop] = [top + (narrow ? 190 : 220), top + (narrow ? 190 : 220) + 46];
  const floor = flowTop + (narrow ? 130 : 150);
  const inside: Span = [left + 4, right - 4];
  const x = scaleLinear([from, to], [left, right]);
  const ports = [record.intakePressure, record.exhaustPressure].flatMap((p) => Array.from(p));
  const window = [
    Math.max(lowest, 0.8 * Math.min(...ports, ...Array.from(record.cylinderPressure))),
    Math.min(highest, 1.35 * Math.max(...ports)),
  ].map((p) => toUnit(p, pressure));
  const y = scaleLinear(window, [mid, top]);
  const all = flows.flatMap((f) => f.y);
  const room = Math.max(...all, 1e-6);
  const z = scaleLinear([Math.min(-0.05 * room, ...all), room * 1.22], [floor - 24, flowTop]); // room for words under a dip
  const shown = angles.flatMap((a, i) => (a >= from - 1e-6 && a <= to + 1e-6 ? [i] : []));
  const stroke = ({ y: ys, ink }: Trace, scale: (v: number) => number): string =>
    path(
      points(shown.map((i) => [x(angles[i]!), scale(ys[i]!)])),
      `fill="none" stroke="var(--${ink})" stroke-width="2"`,
    );
  const back = ({ y: ys, ink }: Trace): string =>
    path(
      `${points([[x(from), z(0)], ...shown.map((i): [number, number] => [x(angles[i]!), z(Math.min(0, ys[i]!))]), [x(to), z(0)]])}Z`,
      `fill="var(--${ink})" fill-opacity=".45"`,
    );
  const peak = ({ y: ys }: Trace, sign: 1 | -1, until = to): number =>
    shown.reduce((a, b) => (angles[b]! <= until && sign * ys[b]! > sign * ys[a]! ? b : a));
  const word = (
    words: string,
    px: number,
    py: number,
    anchor: 'start' | 'middle' | 'end' = 'middle',
    look = 'strong',
  ): string => text(kept(px, words, anchor, inside), py, words, anchor, look, halo);
  const leaves = shown.find((i) => pressures[2].y[i]! < y.domain()[1]!) ?? shown[0]!;
  const out = peak(pressures[0], 1, 300 * degree);
  const share = ({ y: ys }: Trace): number => {
    const sum = (sign: 1 | -1): number => ys.slice(1).reduce((total, q) => total + Math.max(0, sign * q), 0);
    return sum(-1) / Math.max(sum(1), 1e-12);
  };
  const returned = flows.map((f) => {
    const i = peak(f, -1);
    return share(f) < 0.002
      ? ''
      : word(`backflow ${(100 * share(f)).toFixed(1)} %`, x(angles[i]!), z(f.y[i]!) + 16, 'middle', '');
  });
  const cursor = cursorOn(sheet, from, to);
  const values = (traces: readonly Trace[], scale: (v: number) => number, span: Span, digits: number): string =>
    cursor === undefined
      ? ''
      : cursorValues(traces, angles, cursor, { x, y: scale }, span, { digits, isLeft: cursor > (from + to) / 2 });
  const clip = `exchange-${sheet.id}`;
  const most = Math.max(...pressures[2].y);
  const body = [
    `<clipPath id="${clip}">${box(left, top, right - left, mid - top, '')}</clipPath>`,
    text(0, 14, `Pressure at the valves, ${pressure.symbol} absolute`),
    levels(y, y.ticks(6), [left, right]),
    `<g clip-path="url(#${clip})">${pressures.map((p) => stroke(p, y)).join('')}</g>`,
    line(left, mid, right, mid, 'class="axis"'),
    text(0, flowTop - 14, `Flow through the valves of one cylinder, ${flow.symbol}`),
    levels(
      z,
      z.ticks(4).filter((t) => t !== 0),
      [left, right],
    ),
    line(left, z(0), right, z(0), 'class="axis"') + text(left - 8, z(0) + 4, '0', 'end'),
    ...flows.map(back),
    ...flows.map((f) => stroke(f, z)),
    crankAxis(x, [left, right], [top, floor], narrow),
    cursor === undefined
      ? [
          word(`cylinder, up to ${most.toFixed(0)} in firing`, x(angles[leaves]!) + 8, top + 14, 'start'),
          word('exhaust port', x(angles[out]!) - 4, y(Math.min(pressures[0].y[out]!, y.domain()[1]!)) - 10, 'end'),
          word('intake port', x(120 * degree), y(valueAt({ x: angles, y: pressures[1].y }, 120 * degree)) + 20),
          ...flows.map((f) => word(f.name, x(angles[peak(f, 1)]!), z(f.y[peak(f, 1)]!) - 8)),
        ].join('')
      : values(pressures, y, [top, mid], 1) + values(flows, z, [flowTop, floor], 0),
    ...returned,
    cursorLine(sheet, x, from, to, top, floor),
  ].join('');
  const says = flows.map((f) => `${f.name} ${(100 * share(f)).toFixed(1)} %`).join(', ');
  return {
    width: sheet.width,
    height: floor + 50,
    label: `Pressures at cylinder, intake port and exhaust port through the gas exchange, and the flow through both valves. Of what went through a valve there flows back: ${says}. The firing pressure, up to ${most.toFixed(0)} ${pressure.symbol}, is left out.`,
    body,
    twin: {
      columns: [
        'Crank angle from firing top',
        ...['Cylinder', 'Intake port', 'Exhaust port'].map((name) => `${name}, ${pressure.symbol}`),
        ...['Intake flow', 'Exhaust flow'].map((name) => `${name}, ${flow.symbol}`),
      ],
      rows: Array.from({ length: 31 }, (_, i) => (60 + i * 20) * degree).map((a) => [
        said(sheet, a, angle),
        ...[...pressures].toReversed().map((p) => valueAt({ x: angles, y: p.y }, a).toFixed(1)),
        ...[...flows].toReversed().map((f) => fixed(valueAt({ x: angles, y: f.y }, a), 0)),
      ]),
    },
  };
}
