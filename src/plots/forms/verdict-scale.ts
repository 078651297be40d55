import { scaleLinear } from 'd3-scale';
import { ratio } from '../../units/quantity.ts';
import { type Drawing, patterns, said, type Sheet } from '../drawing.ts';
import { type Judged, ratioScale } from '../ratio-scale.ts';

export interface ScaleValues {
  readonly fuelVerdict: Judged;
  readonly fuelVerdictLow: Judged;
  /** The bound on the ratio; 0 if none was stated. */
  readonly plusMinus: number;
}

/** The fuel's verdict twice, here and taken down: the ratio with its ± on a bar of both bands. */
export function verdictScale(v: ScaleValues, sheet: Sheet): Drawing {
  const { width } = sheet;
  const all = [v.fuelVerdict, v.fuelVerdictLow].flatMap(({ edges, value }) => [...edges, value]);
  const x = scaleLinear([Math.min(...all) - 0.75, Math.max(...all) + 0.75], [0, width]);
  const row = (name: string, judged: Judged, top: number, figure: boolean): string =>
    ratioScale({ name, judged, plusMinus: v.plusMinus, figure }, x, top, sheet);
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
