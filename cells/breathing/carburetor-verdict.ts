import { cell } from '../../src/graph/cell.ts';
import { verdict, wordAt } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { type Phrase, phrase, value } from '../../src/units/phrase.ts';
import { pressureDrop } from '../../src/units/quantity.ts';
import { carburetorDrop } from './carburetor-drop.ts';
import { carburetorLarge, carburetorSmall } from './inputs.ts';

const kind = verdict(pressureDrop, [
  { id: 'large', label: 'large', tone: 'borderline' },
  { id: 'fits', label: 'fits', tone: 'comfortable' },
  { id: 'small', label: 'small', tone: 'borderline' },
]);

export const carburetorVerdict = cell({
  id: 'carburetorVerdict',
  label: 'Carburetor verdict',
  short: 'Carburetor is',
  note: 'A large carburetor has a weak signal at low speed; a small one costs power at the top.',
  kind,
  from: { carburetorDrop, carburetorLarge, carburetorSmall },
  source: common('the edges'),
  formula: 'carburetorDrop against carburetorLarge and carburetorSmall',
  compute: ({ carburetorDrop, carburetorLarge, carburetorSmall }) => {
    const edges = [carburetorLarge, carburetorSmall].toSorted((a, b) => a - b);
    const word = wordAt(kind, carburetorDrop, edges);
    const at = (i: number) => value(edges[i]!, pressureDrop);
    const place = {
      large: phrase`is under ${at(0)}`,
      fits: phrase`lies between ${at(0)} and ${at(1)}`,
      small: phrase`is over ${at(1)}`,
    }[word]!;
    const advice: Phrase = {
      large: ['Its signal may be weak at low speed.'],
      fits: [],
      small: ['It costs power at the top.'],
    }[word]!;
    return { word, value: carburetorDrop, edges, lead: ['. A drop of'], place, advice };
  },
});
