import { scaleLinear } from 'd3-scale';
import type { Size } from './axes.ts';
import { circle, path, patterns, tag, text } from './drawing.ts';
import type { Place } from './grid.ts';
import type { Axis } from './line-figure.ts';
import type { MapGround, MapPicture } from './map-figure.ts';
import { levelsOf, type Relief, reliefOf } from './map-relief.ts';
import { cutOff, tints, zones } from './map-fills.ts';
import { drawnRules, rulesOf, type Word, wordsOn } from './map-lines.ts';
import { mapSheet } from './map-sheet.ts';
import { type Box, touch } from './room.ts';

/** What of a map stays as the point on it moves, and how places on it become px and back. */
export interface MapDrawing {
  readonly size: Size;
  /** Null while not even the corners have been worked out. */
  readonly relief: Relief | null;
  readonly body: string;
  readonly words: readonly Word[];
  readonly x: (value: number) => number;
  readonly y: (value: number) => number;
  readonly valueAt: (px: number, py: number) => { readonly x: number; readonly y: number };
}

export function mapSize(ground: MapGround, width: number): Size {
  const narrow = width < 480;
  const { domain, exact, text } = ground.y;
  const figures = Math.max(...domain.map((v) => (exact ?? text)(v).length));
  return {
    width,
    height: narrow ? 360 : 430,
    marginLeft: Math.max(34, figures * 7.5 + 10),
    // Half of the figure at the end of the axis.
    marginRight: Math.max(16, ground.x.text(ground.x.domain[1]).length * 3.8 + 4),
    marginTop: 30,
    marginBottom: 48,
  };
}

/** Draws all of a map but the point on it and what it says. `id` tells its patterns from those of other figures. */
export function mapDrawing(ground: MapGround, width: number, id: string): MapDrawing {
  const size = mapSize(ground, width);
  const [left, right] = [size.marginLeft, size.width - size.marginRight];
  const [top, bottom] = [size.marginTop, size.height - size.marginBottom];
  const { across, up } = ground.grid;
  const px = ([u, v]: Place): Place => [
    left + ((right - left) * u) / (across - 1),
    bottom - ((bottom - top) * v) / (up - 1),
  ];
  const x = scaleLinear([...ground.x.domain], [left, right]);
  const y = scaleLinear([...ground.y.domain], [bottom, top]);
  const relief = reliefOf(ground);
  const frame: Box = { x: left, y: top, width: right - left, height: bottom - top };
  const drawn = relief ? terrain(ground, relief, frame, id) : { body: '', words: [] };
  const parts = [
    patterns(id),
    drawn.body,
    ground.stands ? dots(ground, px) : '',
    path(`M${left} ${bottom}H${right}`, 'class="axis"'),
    text(0, 14, ground.y.title),
    text(right, size.height - 6, ground.x.title, 'end'),
  ];
  return {
    size,
    relief,
    body: parts.join(''),
    words: drawn.words,
    x,
    y,
    valueAt: (px, py) => ({
      x: x.invert(Math.min(right, Math.max(left, px))),
      y: y.invert(Math.min(bottom, Math.max(top, py))),
    }),
  };
}

/** Zones, lines and the words on both. */
function terrain(
  ground: MapGround,
  relief: Relief,
  frame: Box,
  id: string,
): { readonly body: string; readonly words: readonly Word[] } {
  const sheet = mapSheet(relief, frame);
  const levels = levelsOf(relief);
  const rules = rulesOf(ground, relief, levels, sheet);
  const fills = relief.over.length > 0 ? zones(ground, relief, sheet, id) : tints(relief, levels, sheet);
  return { body: cutOff(fills + drawnRules(rules), relief, sheet, id), words: wordsOn(ground, rules, sheet) };
}

/** The points that have been worked out, as dots. */
function dots({ grid: { across }, stands }: MapGround, px: (place: Place) => Place): string {
  return Array.from(stands!, (is, n) => {
    const [x, y] = px([n % across, Math.floor(n / across)]);
    return is === 1 ? circle(x, y, 1.6, 'fill="var(--ink-2)" opacity=".55"') : '';
  }).join('');
}

/** The point on a map with its hairlines and values, the axes' figures, and the words that are not in its way. */
export function overMap({ ground, mark }: MapPicture, { size, words, x, y }: MapDrawing): string {
  const [left, right] = [size.marginLeft, size.width - size.marginRight];
  const bottom = size.height - size.marginBottom;
  const [mx, my] = mark ? [x(mark.x), y(mark.y)] : [NaN, NaN];
  const figure = mark && Number.isFinite(mark.z) ? ground.z.exact(mark.z) : '';
  const wide = figure.length * 7.6;
  const isRight = mx + 18 + wide < right;
  const isHigh = my - 30 > size.marginTop;
  const said: Box = { x: isRight ? mx + 16 : mx - 16 - wide, y: my + (isHigh ? -26 : 10), width: wide, height: 18 };
  const disc: Box = { x: mx - 13, y: my - 13, width: 26, height: 26 };
  const free = words.filter(({ box }) => !mark || (!touch(box, disc) && (figure === '' || !touch(box, said))));
  return [
    mark
      ? path(`M${mx.toFixed(1)} ${my.toFixed(1)}V${bottom}M${left} ${my.toFixed(1)}H${mx.toFixed(1)}`, 'class="hair"')
      : '',
    ...free.map(({ markup }) => markup),
    ...ticksOf(ground.x, size.width < 480 ? 4 : 6).map((t) => {
      const at = x(t);
      const hides = mark !== null && Math.abs(at - mx) < 30;
      return `${path(`M${at.toFixed(1)} ${bottom}v5`, 'class="axis"')}${hides ? '' : text(at, bottom + 22.5, ground.x.text(t), 'middle')}`;
    }),
    ...ticksOf(ground.y, 6).map((t) => {
      const at = y(t);
      return mark !== null && Math.abs(at - my) < 13 ? '' : text(left - 8, at + 4.5, ground.y.text(t), 'end');
    }),
    mark
      ? [
          circle(mx, my, 5, 'fill="var(--hand)"'),
          text(left - 8, my + 4.5, ground.y.text(mark.y), 'end', 'hand'),
          text(mx, bottom + 22.5, ground.x.text(mark.x), 'middle', 'hand'),
          figure === '' ? '' : tag(said.x, said.y + 14, figure, 'ink', 'paper'),
        ].join('')
      : '',
  ].join('');
}
const ticksOf = ({ domain }: Axis, count: number): readonly number[] => scaleLinear([...domain], [0, 1]).ticks(count);
