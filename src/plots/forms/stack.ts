import { chamberVolume } from '../../units/quantity.ts';
import { box, circle, type Drawing, path, said, type Sheet, text } from '../drawing.ts';
import { spacedOut } from '../line-figure.ts';

/** Parts of the clearance volume, m3; some may be negative. */
export interface StackValues {
  readonly clearanceVolume: number;
  readonly chamberVolume: number;
  readonly milledVolume: number;
  readonly gasketVolume: number;
  readonly deckVolume: number;
  readonly crownVolume: number;
  readonly creviceVolume: number;
}

/** Where the clearance volume comes from: a bar of its parts; what takes volume away is drawn empty, at the right. */
export function stack(v: StackValues, sheet: Sheet): Drawing {
  const all: readonly [string, number][] = [
    ['Chamber', v.chamberVolume - v.milledVolume],
    ['Gasket', v.gasketVolume],
    ['Crown', v.crownVolume],
    ['Deck', v.deckVolume],
    ['Crevice', v.creviceVolume],
  ];
  const parts = [...all.filter(([, volume]) => volume >= 0), ...all.filter(([, volume]) => volume < 0)];
  const whole = parts.reduce((sum, [, volume]) => sum + Math.abs(volume), 0) || 1;
  const { width } = sheet;
  const [top, tall] = [26, 46];
  const under = top + tall + 46;
  let x = 0;
  const bars = parts.map(([name, volume]) => {
    const wide = (Math.abs(volume) / whole) * width;
    const bar = { name, volume, from: x, wide, middle: x + wide / 2 };
    x += wide;
    return bar;
  });
  const [first, ...rest] = bars;
  const places = spacedOut(
    rest.map((b) => b.middle),
    66,
    width - 26,
  ).map((place) => Math.max(place, 26));
  const body = [
    text(0, 14, 'Clearance volume') + text(width, 14, said(sheet, v.clearanceVolume, chamberVolume), 'end', 'strong'),
    ...bars.map((b, i) =>
      box(
        b.from + 0.75,
        top,
        Math.max(1.2, b.wide - 1.5),
        tall,
        `fill="${b.volume < 0 ? 'none' : i === 0 ? 'var(--charge)' : 'var(--panel)'}" stroke="var(--ink)" stroke-width="1.25"${b.volume < 0 ? ' stroke-dasharray="4 3"' : ''}`,
      ),
    ),
    first
      ? text(
          14,
          top + 28,
          `${first.name} ${said(sheet, first.volume, chamberVolume)}`,
          'start',
          'strong',
          'style="font-size:15px"',
        )
      : '',
    ...rest.map((b, i) => {
      const at = places[i]!;
      return [
        path(
          `M${b.middle.toFixed(1)} ${top + tall / 2}V${top + tall + 6}L${at.toFixed(1)} ${under - 18}`,
          'fill="none" stroke="var(--ink-3)"',
        ),
        circle(b.middle, top + tall / 2, 2, 'fill="var(--ink)"'),
        text(at, under - 3, b.name, 'middle'),
        text(at, under + 13, said(sheet, b.volume, chamberVolume).replace(/ .*$/, ''), 'middle', 'strong'),
      ].join('');
    }),
  ].join('');
  return {
    width,
    height: under + 20,
    label: `Shares of the clearance volume, ${said(sheet, v.clearanceVolume, chamberVolume)}: ${parts.map(([name, volume]) => `${name.toLowerCase()} ${said(sheet, volume, chamberVolume)}`).join(', ')}.`,
    body,
    twin: {
      columns: ['Part', 'Volume'],
      rows: [
        ...parts.map(([name, volume]) => [name, said(sheet, volume, chamberVolume)]),
        ['Together', said(sheet, v.clearanceVolume, chamberVolume)],
      ],
    },
  };
}
