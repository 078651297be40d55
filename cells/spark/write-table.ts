import { action } from '../../src/graph/chapter.ts';
import { Impossible } from '../../src/graph/state.ts';
import { phrase, type Phrase, value } from '../../src/units/phrase.ts';
import { rotation } from '../../src/units/quantity.ts';
import { sparkAdvance, sparkEntry } from '../output/inputs.ts';
import { suggestedSpark } from './suggested-spark.ts';

/** Puts the suggestion into the spark table; refuses where a speed left out would be given what lies between its neighbors. */
export const writeTable = action({
  id: 'write-spark-table',
  label: 'Write this table',
  did: 'Wrote the spark table',
  note: 'Puts the suggested spark, in whole degrees, into the spark table of chapter 9. Start several degrees under it, and listen: knock breaks pistons.',
  from: { suggestedSpark },
  sets: ({ suggestedSpark: { rows, without } }) => {
    if (without.length > 0) {
      const speeds = without.flatMap((speed, i): Phrase => [i === 0 ? '' : ', ', value(speed, rotation)]);
      throw new Impossible(phrase`At ${speeds} this fuel bears no spark in reach: there is no table to write.`);
    }
    return [
      [sparkEntry, 'table'],
      [sparkAdvance, rows],
    ];
  },
});
