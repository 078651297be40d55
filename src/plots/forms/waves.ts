import { scaleLinear } from 'd3-scale';
import { backPressure, rotation } from '../../units/quantity.ts';
import { differenceToUnit } from '../../units/unit.ts';
import { crankAxis } from '../crank-axis.ts';
import { cursorLine } from '../cursor.ts';
import { byStroke, type CycleRecord } from '../cycle-record.ts';
import { arrow, box, circle, type Drawing, halo, isNarrow, said, type Sheet, text } from '../drawing.ts';
import { foundWaves } from '../found-waves.ts';
import { kept } from '../panel.ts';
import { fieldOf, pipeSpan, type PressureField, pressureMap, pullLining, shadesFor } from '../pressure-map.ts';
import { type Way } from '../wave-way.ts';
import { signed, wavesSaid, wavesTwin } from '../wave-words.ts';

export interface WavesValues {
  readonly cycleRecord: CycleRecord;
  readonly engineSpeed: number;
}
const strip = 106; // px between the panels: the valves, and the words next to them
const ends = 66; // px: the names of the pipes' far ends
const strokes = ['power', 'exhaust', 'intake', 'compression'];
const quiet = 1000; // Pa: weaker waves are not spoken of
/** The maps stay while the crank's cursor goes over them. */
const drawn = new WeakMap<CycleRecord, { readonly key: string; readonly maps: string }>();

/** The waves of both pipes over a cycle with the valves between them: shades of pressure along each, and what they do. */
export function waves({ cycleRecord: record, engineSpeed }: WavesValues, sheet: Sheet): Drawing {
  const { width, system } = sheet;
  const narrow = isNarrow(sheet);
  const { unit } = backPressure[system];
  const { order, angles } = byStroke(record.angle);
  const [runner, primary] = [record.runner, record.primary].map((pipe) =>
    fieldOf(pipe, order, angles, (p) => differenceToUnit(p - record.outside, unit)),
  ) as [PressureField, PressureField];
  const least = differenceToUnit(quiet, unit);
  const found = foundWaves(record, order, [runner, primary], engineSpeed, least);
  const { intake, exhaust, pull, push, closing, blowdown, back, overlap } = found;

  const tall = narrow ? 150 : 170;
  const [left, right, top] = [2, width - 2, 66];
  const [mouth, port] = [top + tall, top + tall + strip]; // where the pipes meet the valves
  const floor = port + tall;
  const x = scaleLinear([0, 4 * Math.PI], [left, right]);
  const up = scaleLinear(pipeSpan(runner.places), [mouth, top]);
  const down = scaleLinear(pipeSpan(primary.places), [port, floor]);
  const shades = [runner, primary].map(({ values }) => shadesFor(Math.max(...values.map(Math.abs))));
  const key = `${width} ${system} ${sheet.id}`;
  const known = drawn.get(record);
  const maps =
    known?.key === key
      ? known.maps
      : pressureMap(runner, shades[0]!, x, up, sheet) + pressureMap(primary, shades[1]!, x, down, sheet);
  drawn.set(record, { key, maps });

  const note = (words: string, at: number, y: number, from = left): string =>
    text(kept(x(at), words, 'middle', [from, right]), y, words, 'middle', 'strong');
  // Beside an arrow, `part` of its way along.
  const inZone = (words: string, { from, to }: Way, y: (place: number) => number, part: number): string => {
    const at = x(from[0] + part * (to[0] - from[0]));
    return text(at + 8, y(part * Math.max(from[1], to[1])) + 4, words, 'start', 'strong', halo);
  };
  const along = (way: Way | null, y: (place: number) => number): string =>
    way ? arrow(x(way.from[0]), y(way.from[1]), x(way.to[0]), y(way.to[1])) : '';
  const caption = (pipe: string, steps: readonly number[], at: number, y: number, anchor: 'start' | 'end'): string =>
    text(at, y, pipe, anchor, 'strong', halo) +
    text(at, y + 17, `shades at ${steps.join(', ')} ${unit.symbol}`, anchor, '', halo);
  const bar = (span: readonly [number, number] | null, y: number, name: string): string =>
    span === null
      ? ''
      : box(x(span[0]), y, x(span[1]) - x(span[0]), 17, 'fill="var(--ink)"') +
        text((x(span[0]) + x(span[1])) / 2, y + 13, name, 'middle', '', 'style="fill:var(--paper);font-weight:600"');
  const pressure = (value: number): string => signed(value, system);
  const atShut = closing ? `as it shuts: ${pressure(closing.pressure)}` : '';
  const inOverlap = (mean: number): string =>
    back
      ? `a ${mean < 0 ? 'pull' : 'push'} ${narrow ? '' : 'comes back '}in the overlap: ${pressure(mean)}`
      : `in the overlap: ${pressure(mean)}`;
  const body = [
    pullLining(sheet),
    text(0, 14, `Pressure over and under outside air, at ${said(sheet, engineSpeed, rotation)}`),
    ...strokes.map((name, i) => text(x((i + 0.5) * Math.PI), 36, name, 'middle')),
    maps,
    ...[top, port].map((y) => box(left, y, right - left, tall, 'fill="none" stroke="var(--edge)"')),
    crankAxis(x, [left, right], [top, floor + 26], narrow),
    pull ? inZone('pull', pull, up, 0.2) : '',
    blowdown ? inZone('push', blowdown, down, 0.25) : '',
    along(pull, up) + along(push, up) + along(blowdown, down) + along(back, down),
    caption('runner', shades[0]!, left + 6, top + 18, 'start'),
    caption('primary', shades[1]!, right - 6, floor - 26, 'end'),
    text(left, top - 8, 'plenum') + text(left, floor + 17, 'collector'),
    push ? note('the plenum sends back a push', push.from[0], top - 8, ends) : '',
    pull ? note(`the piston draws: a pull runs up, ${pressure(pull.strength)}`, pull.from[0], mouth + 17) : '',
    closing
      ? circle(x(closing.angle), mouth, 4.5, 'fill="var(--ink)" stroke="var(--paper)" stroke-width="2"') +
        text(kept(x(closing.angle) + 8, atShut, 'end', [left, right]), mouth + 35, atShut, 'end', 'strong')
      : '',
    bar(intake, mouth + 42, 'intake open') + bar(exhaust, mouth + 63, 'exhaust open'),
    blowdown
      ? note(`the valve opens: a push runs down, ${pressure(blowdown.strength)}`, blowdown.from[0], port - 9)
      : '',
    overlap === null ? '' : note(inOverlap(overlap), back?.from[0] ?? 2 * Math.PI, floor + 17, ends),
    cursorLine(sheet, x, 0, 4 * Math.PI, top, floor),
  ].join('');
  const turn = (2 * pipeSpan(runner.places)[1] * engineSpeed) / record.runner.sound;
  return {
    width,
    height: floor + 74,
    label: wavesSaid(found, engineSpeed, turn, sheet),
    body,
    twin: wavesTwin([runner, primary], system),
  };
}
