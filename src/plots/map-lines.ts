import type { Tone } from '../graph/kind.ts';
import { contourLines } from './contour.ts';
import { path, tag, text } from './drawing.ts';
import { between, type Place } from './grid.ts';
import { graverAt, type MapGround } from './map-figure.ts';
import type { Levels, Relief } from './map-relief.ts';
import { joined, type MapSheet } from './map-sheet.ts';
import { type Box, freePlace, middleFirst, placeOn, sidesFirst } from './room.ts';

/** A line on a map, in px, with the value that stands on it. */
export interface Rule {
  readonly line: readonly Place[];
  readonly words: string;
  readonly look: string;
  /** Of an edge, its ink. */
  readonly ink?: string;
}
/** Words on a map, which make way for the point on it. */
export interface Word {
  readonly box: Box;
  readonly markup: string;
}

const inks: { readonly [T in Tone]: readonly [ink: string, ground: string] } = {
  comfortable: ['ink-2', 'paper'],
  borderline: ['border', 'border-fill'],
  beyond: ['beyond', 'beyond-fill'],
};

/** The edges, those that hold elsewhere, and the lines of equal value. */
export function rulesOf(ground: MapGround, relief: Relief, levels: Levels, { px }: MapSheet): readonly Rule[] {
  const { value, edges, overOthers } = relief;
  // An edge that is another at each place has no one value to say.
  const valueOn = (line: readonly Place[]): string => {
    const values = line.map((place) => ground.z.exact(between(value, ...place)));
    return values.every((v) => v === values[0]) ? values[0]! : '';
  };
  const rules: Rule[] = [
    ...edges.flatMap((lines, i) => {
      const [ink] = inks[graverAt(ground, i).tone];
      return lines.map((line) => ({
        line,
        words: valueOn(line),
        ink,
        look: `stroke="var(--${ink})" stroke-width="2"`,
      }));
    }),
    ...overOthers
      .flatMap((surface) => contourLines(surface, 0))
      .map((line) => ({ line, words: valueOn(line), look: 'stroke="var(--ink-2)" stroke-dasharray="6 4"' })),
    ...levels.flatMap(([level, words]) =>
      contourLines(value, level).map((line) => ({ line, words, look: 'stroke="var(--ink-2)"' })),
    ),
  ];
  return rules.map((rule) => ({ ...rule, line: rule.line.map(px) }));
}
export const drawnRules = (rules: readonly Rule[]): string =>
  rules.map(({ line, look }) => path(joined(line), `fill="none" ${look}`)).join('');

/** What stands on the lines and in the zones, each where there is room: zones first, which need most, then edges, then the rest. */
export function wordsOn({ words }: MapGround, rules: readonly Rule[], sheet: MapSheet): readonly Word[] {
  const { frame, hasAnswer, wordAt } = sheet;
  const said: Word[] = [];
  const taken = (): readonly Box[] => said.map(({ box }) => box);
  const say = (box: Box | null, markup: (x: number, y: number) => string): void => {
    if (box) said.push({ box, markup: markup(box.x + box.width / 2, box.y + 13) });
  };
  const onLine = ({ line, words: figure, ink }: Rule): void =>
    say(placeOn(line, figure, frame, taken(), hasAnswer, ink ? sidesFirst : middleFirst), (x, y) => {
      const [, ground] = inks[words[wordAt(x, y - 5)]?.tone ?? 'comfortable'];
      return onGround(x, y, figure, ink ? 'border-fill' : ground, ink ? `fill:var(--${ink});font-weight:600;` : '');
    });
  const places = rules.flatMap(({ line }) => line);
  for (const [i, { label, tone }] of words.entries())
    say(
      freePlace(label, frame, taken(), places, (x, y) => wordAt(x, y) === i),
      (x, y) => tag(x, y, label, ...inks[tone], 'middle'),
    );
  for (const rule of rules) if (rule.ink) onLine(rule);
  say(
    freePlace('no answer', frame, taken(), [], (x, y) => !hasAnswer(x, y)),
    (x, y) => text(x, y, 'no answer', 'middle', '', 'style="fill:var(--ink-3)"'),
  );
  for (const rule of rules) if (!rule.ink) onLine(rule);
  return said;
}
/** Words over a line, on a ground wide enough that it does not show between the figures. */
const onGround = (x: number, y: number, words: string, ground: string, look: string): string =>
  text(
    x,
    y,
    words,
    'middle',
    '',
    `style="${look}paint-order:stroke;stroke:var(--${ground});stroke-width:6px;stroke-linejoin:round"`,
  );
