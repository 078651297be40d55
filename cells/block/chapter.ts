import { chapter as declare, figure } from '../../src/graph/chapter.ts';
import { blockSays } from './block-says.ts';
import { intakeClosing } from '../cam/intake-closing.ts';
import { intakeOpening } from '../cam/intake-opening.ts';
import { effectiveStroke } from '../compression/effective-stroke.ts';
import { strokeLost } from '../compression/stroke-lost.ts';
import { displacement } from './displacement.ts';
import { dwellAtTop } from './dwell-at-top.ts';
import { bore, cylinders, engineSpeed, pinOffset, rod, rodMaterial, stroke } from './inputs.ts';
import { meanPistonSpeed } from './mean-piston-speed.ts';
import { peakPistonAcceleration } from './peak-piston-acceleration.ts';
import { peakPistonSpeed } from './peak-piston-speed.ts';
import { pistonStroke } from './piston-stroke.ts';
import { pistonTravel } from './piston-travel.ts';
import { rodRatio } from './rod-ratio.ts';
import { sweptVolume } from './swept-volume.ts';

export const chapter = declare({
  id: 'block',
  number: 1,
  title: 'Short block',
  sentence:
    'What the crank, rods and bores fix before anything is chosen: how much is swept, and where the piston is at each degree.',
  fields: [cylinders, bore, stroke, rod, pinOffset, rodMaterial, engineSpeed],
  answers: [
    displacement,
    sweptVolume,
    pistonStroke,
    rodRatio,
    meanPistonSpeed,
    peakPistonSpeed,
    peakPistonAcceleration,
    dwellAtTop,
  ],
  says: blockSays,
  figures: [
    figure({
      id: 'figure-travel',
      form: 'travel',
      crank: 'shows',
      caption:
        'Piston travel through intake and compression. The intake valve stays open past bottom dead center; the lined part of the rise compresses nothing.',
      from: { pistonTravel, intakeOpening, intakeClosing, effectiveStroke, strokeLost },
    }),
  ],
});
