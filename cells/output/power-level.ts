import { cell } from '../../src/graph/cell.ts';
import { verdict, wordAt } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { phrase, value } from '../../src/units/phrase.ts';
import { powerDensity } from '../../src/units/quantity.ts';
import { horsepowerPerCubicInch, si } from '../../src/units/unit.ts';
import { stationPressure } from '../air/station-pressure.ts';
import { powerPerVolume } from './power-per-volume.ts';

const kind = verdict(powerDensity, [
  { id: 'mild', label: 'mild', tone: 'comfortable' },
  { id: 'healthy', label: 'healthy', tone: 'comfortable' },
  { id: 'over', label: 'over the usual', tone: 'borderline' },
]);
const [from, to] = [si(1.1, horsepowerPerCubicInch), si(1.25, horsepowerPerCubicInch)];

export const powerLevel = cell({
  id: 'powerLevel',
  label: 'Level of the power',
  short: 'Power level is',
  note: 'What builders call healthy for a naturally aspirated street V8 on an engine dyno, taken to the air here.',
  kind,
  from: { powerPerVolume, stationPressure },
  source: common('1.1 to 1.25 hp/in³ of a healthy street engine'),
  formula: 'powerPerVolume against 1.1 to 1.25 hp/in³ × stationPressure / 101.325 kPa',
  compute: ({ powerPerVolume, stationPressure }) => {
    const edges = [from, to].map((edge) => (edge * stationPressure) / 101_325);
    const word = wordAt(kind, powerPerVolume, edges);
    const [low, high] = edges.map((edge) => value(edge, powerDensity));
    const place = {
      mild: phrase`is under ${low!}`,
      healthy: phrase`lies between ${low!} and ${high!}`,
      over: phrase`is over ${high!}`,
    }[word]!;
    return { word, value: powerPerVolume, edges, lead: ['.'], place, advice: [] };
  },
});
