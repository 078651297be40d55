import { scaleLinear } from 'd3-scale';
import { octane as number, rotation } from '../../units/quantity.ts';
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
  said,
  type Sheet,
  tag,
  text,
} from '../drawing.ts';
import { valueAt } from '../cursor.ts';
import { octaneScatter, postedGrades } from '../grades.ts';
import { extent, spacedOut } from '../line-figure.ts';
import { otherLines, spanOf, variantNames } from '../other-lines.ts';
import { kept, levels, type Span } from '../panel.ts';
import { type BySpeed, smooth, speedAxis, toRpm } from '../speed-axis.ts';
import { halvedLine, leastTrusted } from '../trusted.ts';
import type { WithOthers } from '../variants.ts';

export interface OctaneValues {
  readonly octaneRequirementCurve: BySpeed;
  readonly pumpOctane: number;
  /** Octane numbers the fuel has to spare; negative: that it lacks. */
  readonly octaneMargin: number;
}

/** The octane number an engine asks for by speed, in the band it may be off by, under and over what its fuel has. */
export function octane(v: OctaneValues & WithOthers<OctaneValues>, sheet: Sheet): Drawing {
  const { x: speeds, y: asked } = v.octaneRequirementCurve;
  const [left, right, top, bottom] = [34, sheet.width - 34, 34, isNarrow(sheet) ? 300 : 350];
  const { others = [] } = v;
  const askedOf = (values: OctaneValues): BySpeed => values.octaneRequirementCurve;
  const curves = [v, ...others.map((o) => o.values)].map(askedOf);
  const [least, most] = extent([...curves.map((curve) => curve.y), [v.pumpOctane]]) ?? [85, 93];
  const y = scaleLinear([least - octaneScatter - 2, most + octaneScatter + 4], [bottom, top]);
  const { x, axis } = speedAxis(spanOf(curves), [left, right], bottom);
  const at = (shift: number): [number, number][] =>
    Array.from(speeds, (s, i): [number, number] => [x(s), y(asked[i]! + shift)]);
  const pump = y(v.pumpOctane);
  const grades = postedGrades.filter((g) => g > y.domain()[0]! && g < y.domain()[1]!);
  const names = spacedOut(grades.map(y), 14, bottom - 4);
  // The most it asks for where the figures are to be trusted, or at all.
  const trusted = Array.from(speeds, (_, i) => i).filter((i) => speeds[i]! >= leastTrusted - 1e-6);
  const worst = (trusted.length > 0 ? trusted : [0]).reduce((a, b) => (asked[b]! > asked[a]! ? b : a));
  const fuel = `${said(sheet, v.pumpOctane, number)} at the pump`;
  const wanted = `asks for ${said(sheet, asked[worst]!, number)}`;
  const inside: Span = [left + 4, right - 4];
  // Words stand where the line leaves most room for them.
  const ends = [asked[0]!, asked[asked.length - 1]!].map((a) => Math.abs(y(a) - pump));
  const [pumpSide, zoneSide] = [ends[0]! > ends[1]!, asked[0]! < asked[asked.length - 1]!];
  const corner = (isLeft: boolean): [number, 'start' | 'end'] => (isLeft ? [left + 8, 'start'] : [right - 8, 'end']);
  const [pumpX, pumpAnchor] = corner(pumpSide);
  const [zoneX, zoneAnchor] = corner(zoneSide);
  const body = [
    patterns(sheet.id),
    text(0, 14, 'Octane number it asks for, read as AKI'),
    box(left, top, right - left, pump - top, lined('beyond', sheet)),
    levels(y, y.ticks(5), [left, right]),
    ...grades.map(
      (g, i) =>
        line(left, y(g), right, y(g), 'stroke="var(--ink-3)" stroke-dasharray="1 4"') +
        line(right, y(g), right + 8, names[i]!, 'stroke="var(--edge)"') +
        text(right + 12, names[i]! + 4, String(g), 'start', g === v.pumpOctane ? 'strong' : ''),
    ),
    path(
      `${smooth(at(octaneScatter))}${smooth(at(-octaneScatter).toReversed()).replace('M', 'L')}Z`,
      'fill="var(--l1)" fill-opacity=".12"',
    ),
    line(left, pump, right, pump, 'stroke="var(--beyond)" stroke-width="2.5"'),
    otherLines(v, askedOf, [x, y], 'l1'),
    path(smooth(at(0)), 'fill="none" stroke="var(--paper)" stroke-width="5.25" stroke-opacity=".7"'),
    halvedLine(smooth(at(0)), [[x(leastTrusted), right]], { ink: 'l1', width: 2.75 }, [top, bottom], 'asked', sheet),
    circle(x(speeds[worst]!), y(asked[worst]!), 4, 'fill="var(--l1)" stroke="var(--paper)" stroke-width="2"'),
    text(kept(x(speeds[worst]!), wanted, 'middle', inside), y(asked[worst]!) - 12, wanted, 'middle', 'strong', halo),
    tag(
      pumpX,
      pump + (pumpSide === zoneSide || asked[worst]! > v.pumpOctane ? 18 : -8),
      fuel,
      'ink',
      'paper',
      pumpAnchor,
    ),
    tag(zoneX, top + 18, 'beyond this fuel', 'beyond', 'beyond-fill', zoneAnchor),
    variantNames(v, v, askedOf, y, [right, bottom]),
    axis,
  ].join('');
  const far = said(sheet, Math.abs(v.octaneMargin), number);
  const margin = `${far} octane number${far === '1' ? '' : 's'} ${v.octaneMargin < 0 ? 'short' : 'to spare'}`;
  return {
    width: sheet.width,
    height: bottom + 50,
    label: `Octane number the engine asks for over engine speed: at most ${said(sheet, asked[worst]!, number)} at ${said(sheet, speeds[worst]!, rotation)}, within ${octaneScatter} numbers either way; the fuel has ${said(sheet, v.pumpOctane, number)}: ${margin}. Under 2000 rpm the line is not to be relied on.${others.map((o) => ` ${o.name}: at most ${said(sheet, Math.max(...o.values.octaneRequirementCurve.y), number)}.`).join('')}`,
    body,
    twin: {
      columns: ['Engine speed, rpm', 'Asks for', 'From', 'To', 'The fuel has', ...others.map((o) => o.name)],
      rows: Array.from(speeds, (s, i) => [
        String(Math.round(toRpm(s))),
        ...[0, -octaneScatter, octaneScatter].map((shift) => (asked[i]! + shift).toFixed(1)),
        v.pumpOctane.toFixed(1),
        ...others.map((o) => valueAt(askedOf(o.values), s).toFixed(1)),
      ]),
    },
  };
}
