import { scaleLinear } from 'd3-scale';
import { angle } from '../../units/quantity.ts';
import { cursorLine } from '../cursor.ts';
import { box, type Drawing, isNarrow, line, said, type Sheet, text } from '../drawing.ts';

export interface EventsValues {
  readonly intakeOpening: number;
  readonly intakeClosing: number;
  readonly exhaustOpening: number;
  readonly exhaustClosing: number;
}

/** Two turns of the crank as one strip, the strokes named, each valve a bar from its opening to its closing. */
export function events(v: EventsValues, sheet: Sheet): Drawing {
  const narrow = isNarrow(sheet);
  const { width } = sheet;
  const x = scaleLinear([0, 4 * Math.PI], [2, width - 2]);
  const bars = [
    {
      name: 'exhaust',
      from: Math.PI - v.exhaustOpening,
      to: 2 * Math.PI + v.exhaustClosing,
      opens: v.exhaustOpening,
      closes: v.exhaustClosing,
      y: 44,
      ink: 'l3',
      senses: ['before bottom', 'after top'],
    },
    {
      name: 'intake',
      from: 2 * Math.PI - v.intakeOpening,
      to: 3 * Math.PI + v.intakeClosing,
      opens: v.intakeOpening,
      closes: v.intakeClosing,
      y: 104,
      ink: 'l2',
      senses: ['before top', 'after bottom'],
    },
  ];
  const overlap = v.intakeOpening + v.exhaustClosing;
  const strokes = ['power', 'exhaust', 'intake', 'compression'];
  const body = [
    ...strokes.map((name, i) => text(x((i + 0.5) * Math.PI), 16, name, 'middle')),
    ...[0, 1, 2, 3, 4].map((i) =>
      line(x(i * Math.PI), 24, x(i * Math.PI), 150, `class="${i % 2 === 0 ? 'axis' : 'grid'}"`),
    ),
    ...[0, 1, 2, 3, 4].map((i) =>
      text(
        Math.min(width - 12, Math.max(12, x(i * Math.PI))),
        168,
        i % 2 === 0 ? 'top' : 'bottom',
        i === 0 ? 'start' : i === 4 ? 'end' : 'middle',
      ),
    ),
    ...bars.map((b) =>
      [
        box(
          x(b.from),
          b.y,
          x(b.to) - x(b.from),
          16,
          `fill="var(--${b.ink})" fill-opacity=".25" stroke="var(--${b.ink})" stroke-width="1.5"`,
        ),
        text(
          (x(b.from) + x(b.to)) / 2,
          b.y + 12.5,
          `${b.name} ${said(sheet, b.to - b.from, angle)}`,
          'middle',
          'strong',
        ),
        text(
          x(b.from),
          b.y + 31,
          narrow ? said(sheet, b.opens, angle) : `${said(sheet, b.opens, angle)} ${b.senses[0]}`,
          'start',
        ),
        text(
          x(b.to),
          b.y + 31,
          narrow ? said(sheet, b.closes, angle) : `${said(sheet, b.closes, angle)} ${b.senses[1]}`,
          'end',
        ),
      ].join(''),
    ),
    cursorLine(sheet, x, 0, 4 * Math.PI, 24, 150),
  ].join('');
  return {
    width,
    height: 176,
    label: `Valve events: exhaust opens ${said(sheet, v.exhaustOpening, angle)} before bottom and closes ${said(sheet, v.exhaustClosing, angle)} after top; intake opens ${said(sheet, v.intakeOpening, angle)} before top and closes ${said(sheet, v.intakeClosing, angle)} after bottom.`,
    body,
    twin: {
      columns: ['Valve', 'Opens', 'Closes', 'Open for'],
      rows: [
        ...bars.map((b) => [
          b.name,
          `${said(sheet, b.opens, angle)} ${b.senses[0]}`,
          `${said(sheet, b.closes, angle)} ${b.senses[1]}`,
          said(sheet, b.to - b.from, angle),
        ]),
        overlap > 0
          ? [
              'Both',
              `${said(sheet, v.intakeOpening, angle)} BTDC`,
              `${said(sheet, v.exhaustClosing, angle)} ATDC`,
              said(sheet, overlap, angle),
            ]
          : ['Both', 'never', 'never', said(sheet, 0, angle)],
      ],
    },
  };
}
