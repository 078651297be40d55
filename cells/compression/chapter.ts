import { chapter as declare, when } from '../../src/graph/chapter.ts';
import { compressionSays } from './compression-says.ts';
import { intakeClosing } from '../cam/intake-closing.ts';
import { crankingPressureLow } from './cranking-pressure-low.ts';
import { crankingPressure } from './cranking-pressure.ts';
import { dynamicRatioAt050Plus } from './dynamic-ratio-at050-plus.ts';
import { dynamicRatioAt050 } from './dynamic-ratio-at050.ts';
import { dynamicRatioByConvention } from './dynamic-ratio-by-convention.ts';
import { dynamicRatio } from './dynamic-ratio.ts';
import { effectiveStroke } from './effective-stroke.ts';
import { gaugeExponent } from './gauge-exponent.ts';
import {
  closingAllowance,
  closingConvention,
  crankingExponent,
  crankingSpeed,
  crankingWallTemperature,
  gaugeReading,
  ringLeakArea,
} from './inputs.ts';
import { motoredPeak } from './motored-peak.ts';
import { motoredPressure } from './motored-pressure.ts';
import { strokeLost } from './stroke-lost.ts';
import { trappedVolume } from './trapped-volume.ts';

export const chapter = declare({
  id: 'compression',
  number: 4,
  title: 'Dynamic compression',
  sentence:
    'What the shut valve has caught, over what is left at the top. This, not the figure on paper, is what meets the fuel.',
  fields: [
    intakeClosing,
    closingConvention,
    ...when(closingConvention, ['at050plus'], closingAllowance),
    crankingExponent,
    gaugeReading,
    crankingSpeed,
    ringLeakArea,
    crankingWallTemperature,
  ],
  answers: [
    dynamicRatio,
    dynamicRatioByConvention,
    dynamicRatioAt050,
    dynamicRatioAt050Plus,
    strokeLost,
    effectiveStroke,
    trappedVolume,
    crankingPressure,
    crankingPressureLow,
    gaugeExponent,
    motoredPeak,
    motoredPressure,
  ],
  caution: 'Compression figures are planning aids: knock breaks pistons, and the ratio is only where it starts.',
  says: compressionSays,
});
