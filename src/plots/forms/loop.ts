import { scaleLinear, scaleLog } from 'd3-scale';
import { rotation, type System } from '../../units/quantity.ts';
import { cubicCentimeter, cubicInch, kilopascal, psi, toUnit, type Unit } from '../../units/unit.ts';
import { type Drawing, isNarrow, line, path, patterns, lined, points, said, type Sheet, text } from '../drawing.ts';

export interface LoopValues {
  /** From bottom to bottom over 720 degrees from bottom before firing: m3 and Pa absolute. */
  readonly cylinderLoop: { readonly volume: readonly number[]; readonly pressure: readonly number[] };
  readonly engineSpeed: number;
}
type Scale = (value: number) => number;

const shownIn: Readonly<Record<System, { readonly volume: Unit; readonly pressure: Unit }>> = {
  us: { volume: cubicInch, pressure: psi },
  si: { volume: cubicCentimeter, pressure: kilopascal },
};

/** Pressure over volume through one cycle, plain and on logarithmic axes; the pumping loop lined. */
export function loop(v: LoopValues, sheet: Sheet): Drawing {
  const narrow = isNarrow(sheet);
  const { volume: inVolume, pressure: inPressure } = shownIn[sheet.system];
  const volumes = v.cylinderLoop.volume.map((m3) => toUnit(m3, inVolume));
  const pressures = v.cylinderLoop.pressure.map((pa) => toUnit(pa, inPressure));
  const [wide, tall] = [narrow ? sheet.width : (sheet.width - 24) / 2, narrow ? 260 : 320];
  const [low, high] = [Math.min(...volumes), Math.max(...volumes)];
  const [least, most] = [Math.min(...pressures), Math.max(...pressures)];
  const quarter = volumes.length / 4;
  // Exhaust and intake strokes, from bottom after firing to bottom before compression.
  const [from, to] = [Math.round(2 * quarter), volumes.length];
  const panel = (left: number, top: number, x: Scale, y: Scale, ticks: { x: number[]; y: number[] }): string => {
    const at = volumes.map((volume, i): [number, number] => [x(volume), y(pressures[i]!)]);
    const bottom = top + tall - 60;
    return [
      ...ticks.y.map(
        (t) =>
          line(left + 44, y(t), left + wide - 8, y(t), 'class="grid"') + text(left + 38, y(t) + 4, String(t), 'end'),
      ),
      ...ticks.x.map((t) => text(x(t), bottom + 20, String(t), 'middle')),
      line(left + 44, bottom, left + wide - 8, bottom, 'class="axis"'),
      path(`${points(at.slice(from, to))}Z`, lined('borderline', sheet)),
      path(`${points(at)}Z`, 'fill="none" stroke="var(--l1)" stroke-width="2"'),
      text(left + wide - 8, bottom + 42, `Volume, ${inVolume.symbol}`, 'end'),
    ].join('');
  };
  const box = (left: number, top: number): [[number, number], [number, number]] => [
    [left + 44, left + wide - 8],
    [top + tall - 60, top + 24],
  ];
  const second: [number, number] = narrow ? [0, tall + 24] : [wide + 24, 0];
  const [[x0, x1], [y0, y1]] = [box(0, 0)[0], box(0, 0)[1]];
  const plain = { x: scaleLinear([0, high * 1.04], [x0, x1]), y: scaleLinear([0, most * 1.05], [y0, y1]) };
  const [[u0, u1], [w0, w1]] = box(...second);
  const log = {
    x: scaleLog([low * 0.9, high * 1.1], [u0, u1]),
    y: scaleLog([least * 0.8, most * 1.15], [w0, w1]),
  };
  const decades = (from: number, to: number): number[] =>
    [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10000].filter((t) => t >= from && t <= to);
  const body = [
    patterns(sheet.id),
    text(0, 14, `Pressure, ${inPressure.symbol} absolute, at ${said(sheet, v.engineSpeed, rotation)}`),
    panel(0, 0, plain.x, plain.y, { x: plain.x.ticks(4), y: plain.y.ticks(5) }),
    panel(...second, log.x, log.y, { x: decades(low * 0.9, high * 1.1), y: decades(least * 0.8, most * 1.15) }),
    text(second[0] + wide - 8, second[1] + 34, 'logarithmic', 'end'),
  ].join('');
  const peak = pressures.indexOf(most);
  return {
    width: sheet.width,
    height: narrow ? 2 * tall + 24 : tall,
    label: `Pressure over volume through one cycle at ${said(sheet, v.engineSpeed, rotation)}: up to ${most.toFixed(0)} ${inPressure.symbol} absolute at ${volumes[peak]!.toFixed(1)} ${inVolume.symbol}; the lined loop is the work of gas exchange.`,
    body,
    twin: {
      columns: ['Crank angle', `Volume, ${inVolume.symbol}`, `Pressure, ${inPressure.symbol} absolute`],
      rows: Array.from({ length: 25 }, (_, i) =>
        Math.min(volumes.length - 1, Math.round((i * volumes.length) / 24)),
      ).map((i) => [
        `${Math.round((i / volumes.length) * 720 - 180)}°`,
        volumes[i]!.toFixed(1),
        pressures[i]!.toFixed(0),
      ]),
    },
  };
}
