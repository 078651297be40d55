import { chapter as declare, figure } from '../../src/graph/chapter.ts';
import { engineSpeed } from '../block/inputs.ts';
import { pumpOctane } from '../fuel/pump-octane.ts';
import { bestSparkAtSpeed } from './best-spark-at-speed.ts';
import { bestSparkCurve } from './best-spark-curve.ts';
import { knockLimitAtSpeed } from './knock-limit-at-speed.ts';
import { knockLimitedSparkCurve } from './knock-limited-spark-curve.ts';
import { octaneMargin } from './octane-margin.ts';
import { octaneRequirementCurve } from './octane-requirement-curve.ts';
import { octaneRequirement } from './octane-requirement.ts';
import { octaneWorstSpeed } from './octane-worst-speed.ts';
import { sparkCurve } from './spark-curve.ts';
import { sparkLossCurve } from './spark-loss-curve.ts';
import { sparkLoss } from './spark-loss.ts';
import { sparkSays } from './spark-says.ts';
import { sparkTrials } from './spark-trials.ts';
import { suggestedSparkCurve } from './suggested-spark-curve.ts';
import { writeTable } from './write-table.ts';

export const chapter = declare({
  id: 'spark',
  number: 10,
  title: 'Spark and octane',
  sentence: 'How much octane the spark asks of the fuel, and how much spark the fuel bears, speed by speed.',
  says: sparkSays,
  fields: [],
  answers: [octaneRequirement, octaneWorstSpeed, octaneMargin, sparkLoss, bestSparkAtSpeed, knockLimitAtSpeed],
  actions: [writeTable],
  figures: [
    figure({
      id: 'figure-octane',
      form: 'octane',
      caption:
        'Octane the engine asks for, in a band of 7 numbers: about two engines in three fall inside. Below 2000 rpm it is not counted.',
      from: { octaneRequirementCurve, pumpOctane, octaneMargin },
      overlays: true,
    }),
    figure({
      id: 'figure-sparks',
      form: 'sparks',
      caption:
        'The spark it runs, the best one, and the most this fuel bears. The suggestion is the lesser of the last two.',
      from: { sparkCurve, bestSparkCurve, knockLimitedSparkCurve, suggestedSparkCurve, sparkLossCurve },
    }),
    figure({
      id: 'figure-spark-hook',
      form: 'sparkHook',
      caption:
        'Torque and octane over spark at the engine speed of chapter 1: torque is flat near its best, octane is not.',
      from: { sparkTrials, engineSpeed },
    }),
  ],
  caution:
    'No formula hears knock, and knock breaks pistons. These figures are good for 7 octane numbers, some 6 degrees of spark: start with less spark than they say, and listen.',
});
