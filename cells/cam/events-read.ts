import { cell } from '../../src/graph/cell.ts';
import { choice } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { inch, si } from '../../src/units/unit.ts';
import { eventsLift, seatLift } from './inputs.ts';

const fifty = si(0.05, inch);
const close = 1e-7; // m: two typed lifts that print alike

export const eventsRead = cell({
  id: 'eventsRead',
  label: 'Events as typed are read at',
  note: 'At the seat lift, at 0.050 in, or at some other lift that says nothing of either.',
  kind: choice([
    { id: 'seat', label: 'the seat lift' },
    { id: 'at050', label: '0.050 in' },
    { id: 'neither', label: 'another lift' },
  ]),
  from: { eventsLift, seatLift },
  source: common('cards state events at one of two lifts'),
  formula: 'eventsLift against seatLift and 0.050 in',
  compute: ({ eventsLift, seatLift }) =>
    Math.abs(eventsLift - seatLift) < close ? 'seat' : Math.abs(eventsLift - fifty) < close ? 'at050' : 'neither',
});
