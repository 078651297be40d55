import { type CycleView, figure } from '../../src/graph/chapter.ts';
import { bore } from '../block/inputs.ts';
import { linkage } from '../block/linkage.ts';
import { sweptVolume } from '../block/swept-volume.ts';
import { exhaustClosing } from '../cam/exhaust-closing.ts';
import { exhaustOpening } from '../cam/exhaust-opening.ts';
import { intakeClosing } from '../cam/intake-closing.ts';
import { intakeOpening } from '../cam/intake-opening.ts';
import { overlap } from '../cam/overlap.ts';
import { clearanceVolume } from '../chamber/clearance-volume.ts';
import { deckClearance } from '../chamber/deck-clearance.ts';
import { motoredPressure } from '../compression/motored-pressure.ts';
import { exhaustLift } from '../valves/exhaust-lift.ts';
import { exhaustSeatDepth, exhaustValveDiameter, intakeSeatDepth, intakeValveDiameter } from '../valves/inputs.ts';
import { intakeLift } from '../valves/intake-lift.ts';
import { overlapArea } from '../valves/overlap-area.ts';

/** What the plate of the opening grows into when the crank is turned. */
export const cycle: CycleView = {
  section: figure({
    id: 'figure-section',
    form: 'section',
    caption:
      'The same cylinder through both turns of a cycle, to scale along the bore; the valves are drawn upright and side by side. Drag the crankpin round.',
    from: {
      bore,
      linkage,
      deckClearance,
      intakeLift,
      exhaustLift,
      intakeValveDiameter,
      exhaustValveDiameter,
      intakeSeatDepth,
      exhaustSeatDepth,
      intakeClosing,
      clearanceVolume,
      sweptVolume,
    },
    later: { motoredPressure },
    crank: 'turns',
  }),
  lifts: figure({
    id: 'figure-section-lifts',
    form: 'lifts',
    caption: 'Both valves’ lift, and the piston under them; the dashed line is where the crank stands.',
    from: { intakeLift, exhaustLift, linkage, overlap, overlapArea },
    crank: 'shows',
  }),
  events: { exhaustOpening, intakeOpening, exhaustClosing, intakeClosing },
};
