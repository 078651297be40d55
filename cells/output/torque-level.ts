import { cell } from '../../src/graph/cell.ts';
import { verdict, wordAt } from '../../src/graph/kind.ts';
import { cite, heywood } from '../../src/references.ts';
import { phrase, value } from '../../src/units/phrase.ts';
import { meanPressure } from '../../src/units/quantity.ts';
import { kilopascal, si } from '../../src/units/unit.ts';
import { stationPressure } from '../air/station-pressure.ts';
import { peakMeanPressure } from './peak-mean-pressure.ts';

const kind = verdict(meanPressure, [
  { id: 'low', label: 'low', tone: 'borderline' },
  { id: 'usual', label: 'usual', tone: 'comfortable' },
  { id: 'over', label: 'over the usual', tone: 'comfortable' },
]);
const [from, to] = [si(850, kilopascal), si(1050, kilopascal)];

export const torqueLevel = cell({
  id: 'torqueLevel',
  label: 'Level of the torque',
  short: 'Torque level is',
  note: 'Mean pressure at peak torque against a handbook’s range for naturally aspirated engines, taken to the air here.',
  kind,
  from: { peakMeanPressure, stationPressure },
  source: cite(heywood, 'sec. 2.7: 850 to 1050 kPa at peak torque'),
  formula: 'peakMeanPressure against 850 to 1050 kPa × stationPressure / 101.325 kPa',
  compute: ({ peakMeanPressure, stationPressure }) => {
    const edges = [from, to].map((edge) => (edge * stationPressure) / 101_325);
    const word = wordAt(kind, peakMeanPressure, edges);
    const [low, high] = edges.map((edge) => value(edge, meanPressure));
    const place = {
      low: phrase`is under ${low!}`,
      usual: phrase`lies between ${low!} and ${high!}`,
      over: phrase`is over ${high!}`,
    }[word]!;
    const advice = word === 'over' ? ['Good heads and open headers do that.'] : [];
    return { word, value: peakMeanPressure, edges, lead: ['. A mean pressure of'], place, advice };
  },
});
