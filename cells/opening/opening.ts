import { figure, opening as declare } from '../../src/graph/chapter.ts';
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
import { chamberVolume } from '../chamber/inputs.ts';
import { effectiveStroke } from '../compression/effective-stroke.ts';
import { motoredPressure } from '../compression/motored-pressure.ts';
import { strokeLost } from '../compression/stroke-lost.ts';
import { trappedVolume } from '../compression/trapped-volume.ts';
import { fuelVerdictLow } from '../fuel/fuel-verdict-low.ts';
import { fuelVerdict } from '../fuel/fuel-verdict.ts';
import { fuelGrade } from '../fuel/inputs.ts';
import { exhaustLift } from '../valves/exhaust-lift.ts';
import { exhaustSeatDepth, exhaustValveDiameter, intakeSeatDepth, intakeValveDiameter } from '../valves/inputs.ts';
import { intakeLift } from '../valves/intake-lift.ts';
import { overlapArea } from '../valves/overlap-area.ts';

export const opening = declare({
  fields: [chamberVolume, intakeClosing, fuelGrade],
  here: fuelVerdict,
  low: fuelVerdictLow,
  plate: figure({
    id: 'figure-plate',
    form: 'plate',
    caption:
      'One cylinder on its side, to scale but for the chamber, at the moment the intake valve shuts. The static ratio counts the whole stroke; the dynamic ratio counts only what the shut valve has caught. Drag the crankpin.',
    from: { bore, linkage, deckClearance, intakeClosing, effectiveStroke, strokeLost, trappedVolume, clearanceVolume },
    moves: intakeClosing,
  }),
  cycle: {
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
  },
});
