import { cell } from '../../src/graph/cell.ts';
import { remark } from '../../src/graph/kind.ts';
import { closing, exhaustCenterline, opening } from '../../src/physics/cam-events.ts';
import { common } from '../../src/references.ts';
import { phrase, type Phrase, value } from '../../src/units/phrase.ts';
import { angle } from '../../src/units/quantity.ts';
import { degree, si } from '../../src/units/unit.ts';
import { eventsRead } from './events-read.ts';
import {
  exhaustClosesAt,
  exhaustDuration,
  exhaustDuration050,
  exhaustOpensAt,
  intakeCenterline,
  intakeClosesAt,
  intakeDuration,
  intakeDuration050,
  intakeOpensAt,
  lobeSeparation,
} from './inputs.ts';

/** Cards round to whole degrees. */
const rounding = si(1, degree);

export const cardAgreement = cell({
  id: 'cardAgreement',
  label: 'Does the card agree with itself?',
  note: 'The four events as typed, held against durations, separation and centerline at the lift they were read at.',
  kind: remark,
  from: {
    eventsRead,
    intakeDuration,
    exhaustDuration,
    intakeDuration050,
    exhaustDuration050,
    lobeSeparation,
    intakeCenterline,
    intakeOpensAt,
    intakeClosesAt,
    exhaustOpensAt,
    exhaustClosesAt,
  },
  source: common('arithmetic of symmetric lobes; cards round to a degree'),
  formula: 'intakeClosesAt against duration / 2 + intakeCenterline − 180°, and likewise the other three',
  compute: (card) => {
    if (card.eventsRead === 'neither')
      return ['The events are typed at a lift no duration is given for, so nothing can be compared.'];
    const at050 = card.eventsRead === 'at050';
    const intake = at050 ? card.intakeDuration050 : card.intakeDuration;
    const exhaust = at050 ? card.exhaustDuration050 : card.exhaustDuration;
    const exhaustCenter = exhaustCenterline(card.lobeSeparation, card.intakeCenterline);
    const half = (duration: number, sign: '+' | '−', center: number, bottom: boolean): Phrase =>
      phrase`${value(duration, angle)} / 2 ${sign} ${value(center, angle)}${bottom ? ' − 180°' : ''}`;
    const events: readonly [name: string, typed: number, from: number, sum: Phrase][] = [
      [
        'Intake opens',
        card.intakeOpensAt,
        opening(intake, card.intakeCenterline),
        half(intake, '−', card.intakeCenterline, false),
      ],
      [
        'Intake closes',
        card.intakeClosesAt,
        closing(intake, card.intakeCenterline),
        half(intake, '+', card.intakeCenterline, true),
      ],
      ['Exhaust opens', card.exhaustOpensAt, closing(exhaust, exhaustCenter), half(exhaust, '+', exhaustCenter, true)],
      [
        'Exhaust closes',
        card.exhaustClosesAt,
        opening(exhaust, exhaustCenter),
        half(exhaust, '−', exhaustCenter, false),
      ],
    ];
    const off = events.filter(([, typed, from]) => Math.abs(typed - from) > rounding + 1e-9);
    const shown = off[0] ?? events[1]!;
    const [name, typed, from, sum] = shown;
    if (off.length === 0)
      return phrase`It does: ${name.toLowerCase()} ${value(typed, angle)}, and ${sum} is ${value(from, angle)}; the other three fit as well.`;
    const rest = off.length === 1 ? [] : [` ${off.length} of the four events are off.`];
    return phrase`${name} ${value(typed, angle)} as typed, but ${sum} is ${value(from, angle)}: ${value(Math.abs(typed - from), angle)} apart.${rest}`;
  },
});
