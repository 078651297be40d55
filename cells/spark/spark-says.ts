import { cell } from '../../src/graph/cell.ts';
import { remark } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { phrase, type Phrase, value } from '../../src/units/phrase.ts';
import { octane, rotation, share } from '../../src/units/quantity.ts';
import { pumpOctane } from '../fuel/pump-octane.ts';
import { sparkEntry } from '../output/inputs.ts';
import { octaneRequirement } from './octane-requirement.ts';
import { octaneWorstSpeed } from './octane-worst-speed.ts';
import { sparkLoss } from './spark-loss.ts';

export const sparkSays = cell({
  id: 'sparkSays',
  label: 'Spark and octane, in one line',
  note: 'What the chapter comes to, for when it is closed.',
  kind: remark,
  from: { sparkEntry, pumpOctane, sparkLoss, octaneRequirement, octaneWorstSpeed },
  mayLack: ['octaneRequirement', 'octaneWorstSpeed'], // the best spark has no octane
  source: common('a summary'),
  formula: 'sparkEntry, octaneRequirement at octaneWorstSpeed against pumpOctane, sparkLoss',
  compute: ({ sparkEntry, pumpOctane, sparkLoss, octaneRequirement, octaneWorstSpeed }): Phrase | null => {
    const cost = value(sparkLoss, share);
    if (sparkEntry === 'best') return ['The best spark at each speed, whatever the fuel bears.'];
    if (sparkEntry === 'fuel')
      return phrase`Spark held to ${value(pumpOctane, octane)} octane, which costs at most ${cost} of torque.`;
    if (octaneRequirement === undefined || octaneWorstSpeed === undefined) return null;
    return phrase`Asks for about ${value(octaneRequirement, octane)} octane at ${value(octaneWorstSpeed, rotation)}, the fuel has ${value(pumpOctane, octane)}; the spark costs at most ${cost} of torque.`;
  },
});
