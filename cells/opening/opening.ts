import { figure, opening as declare } from '../../src/graph/chapter.ts';
import { bore } from '../block/inputs.ts';
import { linkage } from '../block/linkage.ts';
import { intakeClosing } from '../cam/intake-closing.ts';
import { clearanceVolume } from '../chamber/clearance-volume.ts';
import { deckClearance } from '../chamber/deck-clearance.ts';
import { chamberVolume } from '../chamber/inputs.ts';
import { effectiveStroke } from '../compression/effective-stroke.ts';
import { strokeLost } from '../compression/stroke-lost.ts';
import { trappedVolume } from '../compression/trapped-volume.ts';
import { fuelVerdictLow } from '../fuel/fuel-verdict-low.ts';
import { fuelVerdict } from '../fuel/fuel-verdict.ts';
import { fuelGrade } from '../fuel/inputs.ts';

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
});
