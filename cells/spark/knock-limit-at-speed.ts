import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { Impossible } from '../../src/graph/state.ts';
import { cite, heywood } from '../../src/references.ts';
import { phrase, value } from '../../src/units/phrase.ts';
import { angle, octane } from '../../src/units/quantity.ts';
import { sparkTrials } from './spark-trials.ts';

export const knockLimitAtSpeed = cell({
  id: 'knockLimitAtSpeed',
  label: 'Most spark this fuel bears at the engine speed',
  short: 'Knock limit here',
  note: 'Where knock is just due; 8 degrees over the best is the most that is tried. Good for some 6 degrees either way.',
  kind: scalar(angle, { short: 'BTDC', words: 'before top dead center' }),
  from: { sparkTrials },
  source: cite(heywood, 'eq. 9.58 (from memory)'),
  formula: 'where the octane of sparkTrials comes to the fuel’s',
  compute: ({ sparkTrials: { limit, trials, octane: fuel } }) => {
    if (limit === null)
      throw new Impossible(
        phrase`Not even ${value(trials[0]!.advance, angle)} goes with ${value(fuel, octane)} octane at this speed.`,
      );
    return limit;
  },
});
