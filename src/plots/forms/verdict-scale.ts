import { scaleLinear } from 'd3-scale';
import { ratio } from '../../units/quantity.ts';
import { box, type Drawing, line, lined, patterns, said, type Sheet, text } from '../drawing.ts';
import { spacedOut } from '../line-figure.ts';

interface Judged {
  readonly word: string;
  readonly value: number;
  readonly edges: readonly number[];
}
export interface ScaleValues {
  readonly fuelVerdict: Judged;
  readonly fuelVerdictLow: Judged;
  /** The bound on the ratio; 0 if none was stated. */
  readonly plusMinus: number;
}

const inks: Readonly<Record<string, string>> = { comfortable: 'ink', borderline: 'border', beyond: 'beyond' };

/** The fuel's verdict twice, here and taken down: the ratio with its ± on a bar of both bands. */
export function verdictScale(v: ScaleValues, sheet: Sheet): Drawing {
  const { width } = sheet;
  const all = [v.fuelVerdict, v.fuelVerdictLow].flatMap(({ edges, value }) => [...edges, value]);
  const x = scaleLinear([Math.min(...all) - 0.75, Math.max(...all) + 0.75], [0, width]);
  const tall = 26;
  const row = (name: string, judged: Judged, y: number, figure: boolean): string => {
    const [start, end] = [judged.edges[0]!, judged.edges.at(-1)!];
    const at = x(judged.value);
    const [startAt, endAt] = spacedOut([x(start), x(end)], 36, width - 18) as [number, number];
    const word = judged.word === 'beyond' ? 'beyond this fuel' : judged.word;
    const pm = v.plusMinus > 0 ? `\u202f±\u202f${said(sheet, v.plusMinus, ratio)}` : '';
    return [
      figure
        ? text(
            Math.min(width - 150, Math.max(130, at)),
            y - 8,
            `${said(sheet, judged.value, ratio)}${pm}`,
            'middle',
            'strong',
          )
        : '',
      text(0, y - 8, name),
      text(width, y - 8, word, 'end', '', `style="font-weight:600;fill:var(--${inks[judged.word] ?? 'ink'})"`),
      box(0, y, width, tall, 'fill="none" stroke="var(--edge)"'),
      box(x(start), y, x(end) - x(start), tall, `${lined('borderline', sheet)} stroke="var(--border)"`),
      box(x(end), y, width - x(end), tall, `${lined('beyond', sheet)} stroke="var(--beyond)"`),
      text(startAt, y + tall + 17, said(sheet, start, ratio), 'middle') +
        text(endAt, y + tall + 17, said(sheet, end, ratio), 'middle'),
      line(
        x(judged.value - v.plusMinus),
        y + tall / 2,
        x(judged.value + v.plusMinus),
        y + tall / 2,
        'stroke="var(--paper)" stroke-width="9"',
      ),
      line(
        x(judged.value - v.plusMinus),
        y + tall / 2,
        x(judged.value + v.plusMinus),
        y + tall / 2,
        'stroke="var(--ink)" stroke-width="5"',
      ),
      line(at, y - 3, at, y + tall + 3, 'stroke="var(--ink)" stroke-width="2.5"'),
    ].join('');
  };
  const [here, low] = [v.fuelVerdict, v.fuelVerdictLow];
  return {
    width,
    height: 148,
    label: `The verdict, twice. Here ${here.word}, the band from ${said(sheet, here.edges[0]!, ratio)} to ${said(sheet, here.edges.at(-1)!, ratio)}; taken down ${low.word}, from ${said(sheet, low.edges[0]!, ratio)} to ${said(sheet, low.edges.at(-1)!, ratio)}. The ratio is ${said(sheet, here.value, ratio)}.`,
    body: patterns(sheet.id) + row('Here', here, 24, true) + row('Taken down', low, 100, false),
    twin: {
      columns: ['Value', 'Here', 'Taken down'],
      rows: [
        ['Verdict', here.word, low.word],
        ['Dynamic ratio', said(sheet, here.value, ratio), said(sheet, low.value, ratio)],
        ['Caution begins', said(sheet, here.edges[0]!, ratio), said(sheet, low.edges[0]!, ratio)],
        ['Caution ends', said(sheet, here.edges.at(-1)!, ratio), said(sheet, low.edges.at(-1)!, ratio)],
      ],
    },
  };
}
