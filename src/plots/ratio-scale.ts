import { ratio } from '../units/quantity.ts';
import { box, line, lined, said, type Sheet, text } from './drawing.ts';
import { spacedOut } from './line-figure.ts';

/** A ratio judged by the edges of a band. */
export interface Judged {
  readonly word: string;
  readonly value: number;
  readonly edges: readonly number[];
}
/** A row: its name, what is judged and the ± on it, and whether the figure itself is said over it. */
interface Row {
  readonly name: string;
  readonly judged: Judged;
  readonly plusMinus: number;
  readonly figure: boolean;
}

const inks: Readonly<Record<string, string>> = { comfortable: 'ink', borderline: 'border', beyond: 'beyond' };
const tall = 26;

/** A ratio with its ± on a bar of the bands it is judged by; its words over the bar, the edges' figures under it. */
export function ratioScale(
  { name, judged, plusMinus, figure }: Row,
  x: (value: number) => number,
  y: number,
  sheet: Sheet,
): string {
  const { width } = sheet;
  const [start, end] = [judged.edges[0]!, judged.edges.at(-1)!];
  const at = x(judged.value);
  const [startAt, endAt] = spacedOut([x(start), x(end)], 36, width - 18) as [number, number];
  const word = judged.word === 'beyond' ? 'beyond this fuel' : judged.word;
  const pm = plusMinus > 0 ? `\u202f±\u202f${said(sheet, plusMinus, ratio)}` : '';
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
      x(judged.value - plusMinus),
      y + tall / 2,
      x(judged.value + plusMinus),
      y + tall / 2,
      'stroke="var(--paper)" stroke-width="9"',
    ),
    line(
      x(judged.value - plusMinus),
      y + tall / 2,
      x(judged.value + plusMinus),
      y + tall / 2,
      'stroke="var(--ink)" stroke-width="5"',
    ),
    line(at, y - 3, at, y + tall + 3, 'stroke="var(--ink)" stroke-width="2.5"'),
  ].join('');
}
