import { scaleLinear } from 'd3-scale';
import { angle, engineTorque as torque, octane, rotation, share } from '../../units/quantity.ts';
import { degree as degrees, toUnit } from '../../units/unit.ts';
import { between } from '../between.ts';
import {
  box,
  circle,
  type Drawing,
  halo,
  isNarrow,
  line,
  lined,
  path,
  patterns,
  points,
  said,
  type Sheet,
  tag,
  text,
} from '../drawing.ts';
import { kept, levels, type Span } from '../panel.ts';

interface Trial {
  /** rad before top */
  readonly advance: number;
  /** N m */
  readonly torque: number;
  /** Octane number it asks for. */
  readonly octane: number;
}
export interface SparkHookValues {
  /** The same charge burned with other sparks; what runs, what is best, the fuel's octane number and what it bears. */
  readonly sparkTrials: {
    readonly trials: readonly Trial[];
    readonly spark: number;
    readonly best: number;
    readonly octane: number;
    /** rad before top; null where even the latest is too much. */
    readonly limit: number | null;
  };
  readonly engineSpeed: number;
}
const hair = 1e-6;

/** Torque over spark advance at one speed: the best, what runs, and where the fuel knocks. */
export function sparkHook({ sparkTrials: v, engineSpeed }: SparkHookValues, sheet: Sheet): Drawing {
  const narrow = isNarrow(sheet);
  const [left, right, top, bottom] = [44, sheet.width - 12, 30, narrow ? 270 : 330];
  const { unit } = torque[sheet.system];
  const advances = v.trials.map((t) => t.advance);
  const torques = v.trials.map((t) => toUnit(t.torque, unit));
  const [first, last] = [advances[0]!, advances.at(-1)!];
  const at = between(advances, torques);
  const [most, least] = [Math.max(at(v.best), ...torques), Math.min(...torques)];
  const x = scaleLinear([first, last], [left, right]);
  // Room over the hook for its best, and under it for the words of the zone.
  const room = most - least || 1;
  const y = scaleLinear([least - 0.32 * room, most + 0.16 * room], [bottom, top]);
  const hook = Array.from({ length: 121 }, (_, i) => first + ((last - first) * i) / 120);
  const held = Math.min(last, Math.max(first, v.spark));
  const lost = 1 - at(held) / at(v.best);
  const bearsAll = v.limit !== null && v.limit >= last - hair;
  const beyond = v.limit === null ? first : v.limit;
  const fuel = said(sheet, v.octane, octane);
  const spark = said(sheet, v.spark, angle);
  const little = lost < 0.0005;
  const loss = little ? 'at its best' : `${said(sheet, lost, share)} less than at its best`;
  const zone = bearsAll
    ? [`${fuel} bears all of these sparks`]
    : v.limit === null
      ? ['beyond this fuel', `${fuel} bears none of these sparks`]
      : ['beyond this fuel', `knock is due past ${said(sheet, v.limit, angle)}`];
  const inside: Span = [left + 4, right - 4];
  // Under the hook there is room, to the right of what runs: in two lines where the sheet is narrow.
  const words = [
    `runs ${spark}`,
    ...(narrow && !little ? [`${said(sheet, lost, share)} less`, 'than at its best'] : [loss]),
  ];
  const beside = kept(x(held) + 10, words.toSorted((a, b) => b.length - a.length)[0]!, 'start', inside);
  const best = `best ${said(sheet, v.best, angle)}`;
  const ticks = scaleLinear([toUnit(first, degrees), toUnit(last, degrees)], [0, 1]).ticks(right - left < 420 ? 5 : 8);
  const body = [
    patterns(sheet.id),
    text(0, 14, `Torque, ${unit.symbol}, at ${said(sheet, engineSpeed, rotation)}`),
    bearsAll
      ? ''
      : box(x(beyond), top, right - x(beyond), bottom - top, lined('beyond', sheet)) +
        line(x(beyond), top, x(beyond), bottom, 'stroke="var(--beyond)" stroke-width="2"'),
    levels(
      y,
      y.ticks(5).filter((t) => t >= least - 0.1 * room),
      [left, right],
    ),
    path(
      points(hook.map((a) => [x(a), y(at(a))])),
      'fill="none" stroke="var(--paper)" stroke-width="5.25" stroke-opacity=".7"',
    ),
    path(points(hook.map((a) => [x(a), y(at(a))])), 'fill="none" stroke="var(--l1)" stroke-width="2.75"'),
    ...v.trials.map((_, i) => circle(x(advances[i]!), y(torques[i]!), 2.5, 'fill="var(--l1)"')),
    circle(x(v.best), y(at(v.best)), 5, 'fill="none" stroke="var(--l1)" stroke-width="1.5"'),
    text(kept(x(v.best), best, 'middle', inside), y(at(v.best)) - 12, best, 'middle', 'strong', halo),
    circle(x(held), y(at(held)), 5.5, 'fill="var(--l1)" stroke="var(--paper)" stroke-width="2"'),
    ...words.map((each, i) => text(beside, y(at(held)) + 22 + 16 * i, each, 'start', i === 0 ? 'strong' : '', halo)),
    ...zone.map((words, i) =>
      tag(
        right - 8,
        bottom - 10 - 17 * (zone.length - 1 - i),
        words,
        bearsAll ? 'ink' : 'beyond',
        bearsAll ? 'paper' : 'beyond-fill',
        'end',
      ),
    ),
    line(left, bottom, right, bottom, 'class="axis"'),
    ...ticks.map((t) => text(x(t * degrees.factor), bottom + 20, `${t}°`, 'middle')),
    text(right, bottom + 42, 'Spark before top, crank degrees', 'end'),
  ].join('');
  return {
    width: sheet.width,
    height: bottom + 50,
    label: `Torque over spark advance at ${said(sheet, engineSpeed, rotation)}: most at ${said(sheet, v.best, angle)} before top. It runs ${spark}, ${loss}. ${bearsAll ? `The fuel, ${fuel}, bears all of these sparks` : v.limit === null ? `The fuel, ${fuel}, bears none of these sparks` : `On ${fuel} knock is due past ${said(sheet, v.limit, angle)}`}.`,
    body,
    twin: {
      columns: ['Spark before top', `Torque, ${unit.symbol}`, 'Octane number it asks for'],
      rows: v.trials.map((t, i) => [said(sheet, t.advance, angle), torques[i]!.toFixed(1), t.octane.toFixed(1)]),
    },
  };
}
