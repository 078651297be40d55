import { input } from '../../src/graph/cell.ts';
import { choice, scalar, type Sense } from '../../src/graph/kind.ts';
import { angle, gap } from '../../src/units/quantity.ts';
import { degree, inch, si } from '../../src/units/unit.ts';

const degrees = (low: number, high: number) => [si(low, degree), si(high, degree)] as const;
const inches = (low: number, high: number) => [si(low, inch), si(high, inch)] as const;
const beforeTop: Sense = { short: 'BTDC', words: 'before top dead center' };
const afterTop: Sense = { short: 'ATDC', words: 'after top dead center' };
const beforeBottom: Sense = { short: 'BBDC', words: 'before bottom dead center' };
const afterBottom: Sense = { short: 'ABDC', words: 'after bottom dead center' };

export const camEntry = input({
  id: 'camEntry',
  label: 'The cam is known by',
  short: 'Cam by',
  note: 'Durations and centers from the card, or the four events as read with a degree wheel.',
  kind: choice([
    { id: 'lobes', label: 'Its lobes' },
    { id: 'events', label: 'Its events' },
  ]),
  initial: 'lobes',
});

export const tappet = input({
  id: 'tappet',
  label: 'Tappets',
  note: 'By custom a hydraulic card is printed at 0.006 in of tappet lift, a solid one at 0.020; the card decides.',
  kind: choice([
    { id: 'hydraulic', label: 'Hydraulic' },
    { id: 'solid', label: 'Solid' },
  ]),
  initial: 'hydraulic',
});

export const seatLift = input({
  id: 'seatLift',
  label: 'Advertised at, tappet lift',
  short: 'Seat lift',
  note: 'The lift at which the card’s advertised duration was read: 0.004, 0.006, 0.008, 0.015 or 0.020 in. It decides more than any other figure on the card.',
  kind: scalar(gap),
  initial: si(0.006, inch),
  hard: inches(0.0001, 0.2),
  trust: inches(0.004, 0.02),
  slider: inches(0.004, 0.02),
});

const duration = (id: string, label: string, note: string, initial: number) =>
  input({
    id,
    label,
    note,
    kind: scalar(angle),
    initial: si(initial, degree),
    hard: degrees(1, 500),
    slider: degrees(initial - 50, initial + 50),
  });
export const intakeDuration = duration(
  'intakeDuration',
  'Intake duration, advertised',
  'Crank degrees between opening and closing at the seat lift.',
  270,
);
export const exhaustDuration = duration(
  'exhaustDuration',
  'Exhaust duration, advertised',
  'Crank degrees between opening and closing at the seat lift.',
  278,
);
export const intakeDuration050 = duration(
  'intakeDuration050',
  'Intake duration at 0.050 in',
  'Crank degrees above 0.050 in (1.27 mm) of tappet lift; rockers do not change it.',
  220,
);
export const exhaustDuration050 = duration(
  'exhaustDuration050',
  'Exhaust duration at 0.050 in',
  'Crank degrees above 0.050 in (1.27 mm) of tappet lift; rockers do not change it.',
  228,
);

export const lobeSeparation = input({
  id: 'lobeSeparation',
  label: 'Lobe separation, cam degrees',
  short: 'Separation',
  note: 'Between the peaks of exhaust and intake lobe, in degrees of the cam: ground in, it cannot be moved.',
  kind: scalar(angle),
  initial: si(110, degree),
  hard: degrees(50, 180),
  slider: degrees(100, 120),
});

export const intakeCenterline = input({
  id: 'intakeCenterline',
  label: 'Intake centerline',
  note: 'Where the intake lobe peaks with the cam installed straight up, from the card.',
  kind: scalar(angle, afterTop),
  initial: si(106, degree),
  hard: degrees(30, 200),
  slider: degrees(94, 122),
});

export const camAdvance = input({
  id: 'camAdvance',
  label: 'Cam advance, crank degrees',
  short: 'Advance',
  note: 'How much earlier than the card the cam is installed; negative is retarded.',
  kind: scalar(angle),
  initial: 0,
  hard: degrees(-120, 120),
  slider: degrees(-12, 12),
});

export const eventsLift = input({
  id: 'eventsLift',
  label: 'Events read at, tappet lift',
  short: 'Read at',
  note: 'Either the seat lift above or 0.050 in.',
  kind: scalar(gap),
  initial: si(0.006, inch),
  hard: inches(0.0001, 0.2),
  slider: inches(0.004, 0.05),
});

const event = (id: string, label: string, initial: number, sense: Sense) =>
  input({
    id,
    label,
    note: 'As read with a degree wheel, before any advance entered above.',
    kind: scalar(angle, sense),
    initial: si(initial, degree),
    hard: degrees(-180, 180),
    slider: degrees(initial - 40, initial + 40),
  });
export const intakeOpensAt = event('intakeOpensAt', 'Intake opens', 29, beforeTop);
export const intakeClosesAt = event('intakeClosesAt', 'Intake closes', 61, afterBottom);
export const exhaustOpensAt = event('exhaustOpensAt', 'Exhaust opens', 73, beforeBottom);
export const exhaustClosesAt = event('exhaustClosesAt', 'Exhaust closes', 25, afterTop);
