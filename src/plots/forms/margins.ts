import { scaleLinear } from 'd3-scale';
import { octane, ratio } from '../../units/quantity.ts';
import { box, type Drawing, line, lined, patterns, said, type Sheet, text } from '../drawing.ts';
import { octaneScatter } from '../grades.ts';
import { kept } from '../panel.ts';
import { type Judged, ratioScale } from '../ratio-scale.ts';

export interface MarginsValues {
  readonly fuelVerdict: Judged;
  readonly pumpOctane: number;
  /** Octane number the cycle asks for, and what the fuel has more than that; given later. */
  readonly octaneRequirement?: number;
  readonly octaneMargin?: number;
  /** The bound on the ratio; 0 if none was stated. */
  readonly plusMinus: number;
}
const tall = 26;
const top = 122; // of the octane bar

/** Two answers to one question: the ratio on the band of practice, and the octane number the cycle asks for. */
export function margins(v: MarginsValues, sheet: Sheet): Drawing {
  const { width } = sheet;
  const { fuelVerdict: judged } = v;
  const all = [...judged.edges, judged.value];
  const x = scaleLinear([Math.min(...all) - 0.75, Math.max(...all) + 0.75], [0, width]);
  const practice = ratioScale({ name: 'By practice', judged, plusMinus: v.plusMinus, figure: true }, x, 24, sheet);
  const word = judged.word === 'beyond' ? 'beyond this fuel' : judged.word;
  const wanted = v.octaneMargin === undefined ? undefined : (v.octaneRequirement ?? v.pumpOctane - v.octaneMargin);
  const margin = v.octaneMargin ?? 0;
  const answer =
    margin > octaneScatter ? 'comfortable' : margin < -octaneScatter ? 'beyond this fuel' : 'could be either';
  const figure = (n: number): string => said(sheet, n, octane);
  const spare = `${figure(Math.abs(margin))} ${margin < 0 ? 'short' : 'to spare'}`;
  return {
    width,
    height: 186,
    label: `Two answers on the fuel. By practice ${word}: the ratio is ${said(sheet, judged.value, ratio)}, the band from ${said(sheet, judged.edges[0]!, ratio)} to ${said(sheet, judged.edges.at(-1)!, ratio)}. By the cycle ${wanted === undefined ? 'the answer is being worked out' : `it asks for ${figure(wanted)}, give or take ${octaneScatter}, and the fuel has ${figure(v.pumpOctane)}: ${spare}`}.`,
    body:
      patterns(sheet.id) +
      practice +
      text(0, top - 8, 'By the cycle') +
      (wanted === undefined
        ? text(0, top + 18, 'The cycle’s answer is being worked out.', 'start', 'strong')
        : octaneScale(wanted, v.pumpOctane, spare, answer, sheet)),
    twin: {
      columns: ['Value', 'By practice', 'By the cycle'],
      rows: [
        ['Answer', word, wanted === undefined ? 'being worked out' : answer],
        ['It has', said(sheet, judged.value, ratio), wanted === undefined ? '–' : `asks for ${figure(wanted)}`],
        ['Edge', said(sheet, judged.edges.at(-1)!, ratio), `${figure(v.pumpOctane)} at the pump`],
        ['Give or take', said(sheet, v.plusMinus, ratio), String(octaneScatter)],
      ],
    },
  };
}

/** What is asked for with its ± on a bar that is beyond this fuel past what the fuel has. */
function octaneScale(wanted: number, pump: number, spare: string, answer: string, sheet: Sheet): string {
  const { width } = sheet;
  const [least, most] = [Math.min(wanted - octaneScatter, pump), Math.max(wanted + octaneScatter, pump)];
  const x = scaleLinear([least - 3, most + 3], [0, width]);
  const figure = (n: number): string => said(sheet, n, octane);
  const middle = top + tall / 2;
  const ink = answer === 'beyond this fuel' ? 'beyond' : 'ink';
  const bar = (ground: string, wide: number): string =>
    line(
      x(wanted - octaneScatter),
      middle,
      x(wanted + octaneScatter),
      middle,
      `stroke="var(--${ground})" stroke-width="${wide}"`,
    );
  const asks = `asks for ${figure(wanted)}\u202f±\u202f${octaneScatter}: ${spare}`;
  const fuel = `${figure(pump)} at the pump`;
  return [
    text(width, top - 8, answer, 'end', '', `style="font-weight:600;fill:var(--${ink})"`),
    box(0, top, width, tall, 'fill="none" stroke="var(--edge)"'),
    box(x(pump), top, width - x(pump), tall, `${lined('beyond', sheet)} stroke="var(--beyond)"`),
    bar('paper', 9) + bar('ink', 5),
    line(x(wanted), top - 3, x(wanted), top + tall + 3, 'stroke="var(--ink)" stroke-width="2.5"'),
    text(kept(x(pump), fuel, 'middle', [0, width]), top + tall + 17, fuel, 'middle'),
    text(kept(x(wanted), asks, 'middle', [0, width]), top + tall + 35, asks, 'middle', 'strong'),
  ].join('');
}
