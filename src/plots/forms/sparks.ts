import { scaleLinear } from 'd3-scale';
import { angle, rotation, share } from '../../units/quantity.ts';
import { degree, percent, toUnit } from '../../units/unit.ts';
import { type Drawing, halo, isNarrow, line, lined, path, patterns, said, type Sheet, tag, text } from '../drawing.ts';
import { extent } from '../line-figure.ts';
import { lineNames } from '../line-names.ts';
import { kept, levels } from '../panel.ts';
import { type BySpeed, onSpeeds, smooth, speedAxis, toRpm } from '../speed-axis.ts';

export interface SparksValues {
  /** What it runs, what gives most torque, where knock is due (no figure: at any spark), and what is suggested; rad before top. */
  readonly sparkCurve: BySpeed;
  readonly bestSparkCurve: BySpeed;
  readonly knockLimitedSparkCurve: BySpeed;
  readonly suggestedSparkCurve: BySpeed;
  /** Share of the best spark's torque that what it runs gives away. */
  readonly sparkLossCurve: BySpeed;
}
type Place = readonly [number, number];
// Sparks are tried as far as 8 degrees past the best: a limit there is none.
const tried = 7.99;

/** Sparks by engine speed: what runs, the best, where knock is due, the suggested one; the torque given away below. */
export function sparks(v: SparksValues, sheet: Sheet): Drawing {
  const narrow = isNarrow(sheet);
  const [left, right, top, bottom] = [44, sheet.width - 84, 34, narrow ? 250 : 310];
  const [stripTop, stripBottom] = [bottom + 36, bottom + (narrow ? 106 : 116)];
  const speeds = v.sparkCurve.x;
  const shown = (curve: BySpeed): number[] => onSpeeds(curve, speeds).map((a) => toUnit(a, degree));
  const [runs, best, knock, suggested] = [
    v.sparkCurve,
    v.bestSparkCurve,
    v.knockLimitedSparkCurve,
    v.suggestedSparkCurve,
  ].map(shown) as [number[], number[], number[], number[]];
  const losses = onSpeeds(v.sparkLossCurve, speeds).map((l) => Math.max(0, toUnit(l, percent)));
  const worst = losses.reduce((a, l, i) => (l > (losses[a] ?? -1) ? i : a), 0);
  const [least, most] = extent([runs, best, knock.map((k, i) => Math.min(k, best[i]! + 8)), suggested]) ?? [0, 40];
  const y = scaleLinear([Math.min(least - 3, Math.max(0, least - 8)), most + 4], [bottom, top]);
  const { x, axis } = speedAxis(speeds, [left, right], stripBottom);
  const given = scaleLinear([0, Math.max(2, losses[worst] ?? 0) * 1.1], [stripBottom, stripTop]);
  /** The stretches of a line where it is there. */
  const runsOf = (ys: readonly number[], isThere: (i: number) => boolean, on: (a: number) => number = y): Place[][] => {
    const found: Place[][] = [[]];
    ys.forEach((a, i) => (isThere(i) ? found.at(-1)!.push([x(speeds[i]!), on(a)]) : found.push([])));
    return found.filter((run) => run.length > 0);
  };
  const isDue = (i: number): boolean => !(knock[i]! - best[i]! > tried);
  const floor = knock.map((k) => (Number.isFinite(k) ? k : y.domain()[0]!));
  const due = runsOf(floor, isDue);
  const limits = runsOf(knock, (i) => isDue(i) && Number.isFinite(knock[i]!));
  const stroke = (run: readonly Place[], ink: string, width: number, more = ''): string =>
    path(smooth(run), `fill="none" stroke="var(--${ink})" stroke-width="${width}" ${more}`);
  const cased = (ys: readonly number[], ink: string, width: number, more = ''): string =>
    runsOf(ys, (i) => Number.isFinite(ys[i]!))
      .map((run) => stroke(run, 'paper', width + 2.5, 'stroke-opacity=".7"') + stroke(run, ink, width, more))
      .join('');
  const names = [
    { name: 'suggested', ys: suggested },
    { name: 'best', ys: best },
    { name: 'knock due', ys: knock.map((k, i) => (isDue(i) ? k : Number.NaN)) },
    { name: 'runs', ys: runs },
  ].flatMap(({ name, ys }) => (Number.isFinite(ys.at(-1)) ? [{ name, y: y(ys.at(-1)!) }] : []));
  const widest = due.toSorted((a, b) => b.length - a.length)[0];
  const zone = 'beyond this fuel';
  const lost = runsOf(losses, (i) => Number.isFinite(losses[i]!), given);
  const body = [
    patterns(sheet.id),
    text(0, 14, 'Spark before top, crank degrees'),
    ...due.map((run) =>
      path(
        `${smooth(run)}L${run.at(-1)![0].toFixed(1)} ${top}L${run[0]![0].toFixed(1)} ${top}Z`,
        lined('beyond', sheet),
      ),
    ),
    levels(y, y.ticks(narrow ? 4 : 6), [left, right]),
    ...limits.map((run) => stroke(run, 'beyond', 2)),
    ...runsOf(suggested, (i) => Number.isFinite(suggested[i]!)).map((run) =>
      stroke(run, 'edge', 9, 'stroke-opacity=".45" stroke-linecap="round"'),
    ),
    cased(best, 'l2', 1.75, 'stroke-dasharray="8 4"'),
    cased(runs, 'l1', 2.75),
    widest
      ? tag(
          kept((widest[0]![0] + widest.at(-1)![0]) / 2, zone, 'middle', [widest[0]![0] + 6, right - 6]),
          top + 18,
          zone,
          'beyond',
          'beyond-fill',
          'middle',
        )
      : text(right - 8, bottom - 10, 'no knock is due near the best', 'end', 'strong', halo),
    lineNames(names, right, bottom - 6),
    line(left, bottom, right, bottom, 'class="axis"'),
    text(0, stripTop - 12, 'Torque given away by the spark, %'),
    levels(given, given.ticks(2), [left, right]),
    ...lost.map((run) =>
      path(
        `${smooth(run)}L${run.at(-1)![0].toFixed(1)} ${stripBottom}L${run[0]![0].toFixed(1)} ${stripBottom}Z`,
        'fill="var(--l1)" fill-opacity=".16"',
      ),
    ),
    ...lost.map((run) => stroke(run, 'l1', 2)),
    axis,
  ].join('');
  const column = (ys: readonly number[], i: number): string => (Number.isFinite(ys[i]!) ? ys[i]!.toFixed(1) : '–');
  return {
    width: sheet.width,
    height: stripBottom + 50,
    label: `Spark by engine speed: what it runs gives away at most ${said(sheet, (losses[worst] ?? 0) * percent.factor, share)} of torque, at ${said(sheet, speeds[worst]!, rotation)}, where the best is ${said(sheet, best[worst]! * degree.factor, angle)}. ${due.length > 0 ? 'At some speeds this fuel’s knock is due near the best spark or before it' : 'No knock is due near the best spark'}.`,
    body,
    twin: {
      columns: ['Engine speed, rpm', 'Runs', 'Best', 'Knock due', 'Suggested', 'Torque given away, %'],
      rows: Array.from(speeds, (s, i) => [
        String(Math.round(toRpm(s))),
        column(runs, i),
        column(best, i),
        isDue(i) ? column(knock, i) : 'past what was tried',
        column(suggested, i),
        column(losses, i),
      ]),
    },
  };
}
