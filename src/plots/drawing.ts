import { format } from '../units/format.ts';
import { type Quantity, type System } from '../units/quantity.ts';

/** Rows of a figure's table twin, as text. */
export interface Twin {
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** A figure drawn by hand, as it were: svg marks in a box, what they say, and the same as a table. */
export interface Drawing {
  readonly width: number;
  readonly height: number;
  /** What there is to see, for who does not see it. */
  readonly label: string;
  readonly body: string;
  readonly twin: Twin;
  /** Where a hand can take hold, in px; how a pointer's place becomes a value (SI) again. */
  readonly handle?: Handle;
}
export interface Handle {
  readonly x: number;
  readonly y: number;
  readonly free: boolean;
  readonly valueAt: (x: number, y: number) => number;
}

/** What a form is told besides its values. */
export interface Sheet {
  readonly width: number;
  readonly system: System;
  /** Where the page's crank cursor stands, rad from firing top dead center; undefined while nobody has moved it. */
  readonly cursor?: number;
  /** Tells the patterns of several figures on a page apart. */
  readonly id: string;
}
export const isNarrow = ({ width }: Sheet): boolean => width < 480;
export const said = (sheet: Sheet, si: number, quantity: Quantity): string => format(si, quantity, sheet.system);

const px = (n: number): string => (Math.round(n * 10) / 10).toString();
export const escape = (words: string): string => words.replace(/[&<>"]/g, (c) => `&#${c.charCodeAt(0)};`);

/** Words at a place. `look` is a class: strong, hand; `more` further attributes. */
export const text = (
  x: number,
  y: number,
  words: string,
  anchor: 'start' | 'middle' | 'end' = 'start',
  look = '',
  more = '',
): string =>
  `<text x="${px(x)}" y="${px(y)}" text-anchor="${anchor}"${look ? ` class="${look}"` : ''} ${more}>${escape(words)}</text>`;
/** Further attributes of words that stand over lines: a rim of the paper's color. */
export const halo = 'style="paint-order:stroke;stroke:var(--paper);stroke-width:4px;stroke-linejoin:round"';
/** Words on a ground of their own, over lining. */
export const tag = (
  x: number,
  y: number,
  words: string,
  ink: string,
  ground: string,
  anchor: 'start' | 'middle' | 'end' = 'start',
): string =>
  text(
    x,
    y,
    words,
    anchor,
    '',
    `style="fill:var(--${ink});font-weight:600;paint-order:stroke;stroke:var(--${ground});stroke-width:4px;stroke-linejoin:round"`,
  );
export const line = (x1: number, y1: number, x2: number, y2: number, look: string): string =>
  `<path d="M${px(x1)} ${px(y1)}L${px(x2)} ${px(y2)}" fill="none" ${look}/>`;
export const points = (places: readonly (readonly [number, number])[]): string =>
  `M${places.map(([x, y]) => `${px(x)} ${px(y)}`).join('L')}`;
export const path = (d: string, look: string): string => `<path d="${d}" ${look}/>`;
export const circle = (x: number, y: number, r: number, look: string): string =>
  `<circle cx="${px(x)}" cy="${px(y)}" r="${px(r)}" ${look}/>`;
export const box = (x: number, y: number, width: number, height: number, look: string): string =>
  `<rect x="${px(x)}" y="${px(y)}" width="${px(Math.max(0, width))}" height="${px(Math.max(0, height))}" ${look}/>`;
/** A dimension line with arrowheads, as on a working drawing. */
export const dimension = (x1: number, x2: number, y: number): string =>
  line(x1, y, x2, y, 'stroke="var(--ink-2)"') +
  path(`M${px(x1)} ${px(y)}l7 -2.5v5zM${px(x2)} ${px(y)}l-7 -2.5v5z`, 'fill="var(--ink-2)"');

/** An arrow that stands out from what it crosses. */
export function arrow(x1: number, y1: number, x2: number, y2: number): string {
  const long = Math.hypot(x2 - x1, y2 - y1) || 1;
  const [u, v] = [(x2 - x1) / long, (y2 - y1) / long];
  const head = points([
    [x2, y2],
    [x2 - 11 * u + 4.5 * v, y2 - 11 * v - 4.5 * u],
    [x2 - 11 * u - 4.5 * v, y2 - 11 * v + 4.5 * u],
  ]);
  return (
    line(x1, y1, x2, y2, 'stroke="var(--paper)" stroke-width="6" stroke-opacity=".8"') +
    line(x1, y1, x2 - 8 * u, y2 - 8 * v, 'stroke="var(--ink)" stroke-width="2.25"') +
    path(`${head}Z`, 'fill="var(--ink)" stroke="var(--paper)" stroke-width="1"')
  );
}

/** Section lining: single for borderline, crossed for beyond, close for cut metal. */
export function patterns(id: string): string {
  const lining = (name: string, size: number, ground: string, ink: string, d: string, opacity: number): string =>
    `<pattern id="${name}-${id}" width="${size}" height="${size}" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">${ground ? `<rect width="${size}" height="${size}" fill="var(--${ground})"/>` : ''}<path d="${d}" stroke="var(--${ink})" stroke-opacity="${opacity}"/></pattern>`;
  return `<defs>${lining('borderline', 7, 'border-fill', 'border', 'M0 0V7', 0.34)}${lining('beyond', 7, 'beyond-fill', 'beyond', 'M0 0V7M0 0H7', 0.3)}${lining('metal', 5, '', 'edge', 'M0 0V5', 1)}</defs>`;
}
export const lined = (name: 'borderline' | 'beyond' | 'metal', { id }: Pick<Sheet, 'id'>): string =>
  `fill="url(#${name}-${id})"`;
