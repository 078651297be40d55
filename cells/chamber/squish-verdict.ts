import { cell } from '../../src/graph/cell.ts';
import { verdict, wordAt } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { phrase, value } from '../../src/units/phrase.ts';
import { gap } from '../../src/units/quantity.ts';
import { rodMaterial } from '../block/inputs.ts';
import { squishAluminum, squishClose, squishContact, squishOpen } from './inputs.ts';
import { squishGap } from './squish-gap.ts';

const kind = verdict(gap, [
  { id: 'contact', label: 'contact risk', tone: 'beyond' },
  { id: 'close', label: 'close', tone: 'comfortable' },
  { id: 'open', label: 'open', tone: 'comfortable' },
  { id: 'lazy', label: 'lazy', tone: 'borderline' },
]);

export const squishVerdict = cell({
  id: 'squishVerdict',
  label: 'Squish verdict',
  short: 'Squish',
  note: 'A close squish band stirs the charge and cools the end gas; too close, and the parts touch at speed.',
  kind,
  from: { squishGap, rodMaterial, squishContact, squishClose, squishOpen, squishAluminum },
  source: common('the edges'),
  formula: 'squishGap against squishContact, squishClose, squishOpen',
  compute: ({ squishGap, rodMaterial, squishContact, squishClose, squishOpen, squishAluminum }) => {
    const more = rodMaterial === 'aluminum' ? squishAluminum : 0;
    const edges = [squishContact + more, squishClose + more, squishOpen + more].toSorted((a, b) => a - b);
    const word = wordAt(kind, squishGap, edges);
    const at = (i: number) => value(edges[i]!, gap);
    const place = {
      contact: phrase`is under ${at(0)}`,
      close: phrase`lies between ${at(0)} and ${at(1)}`,
      open: phrase`lies between ${at(1)} and ${at(2)}`,
      lazy: phrase`is over ${at(2)}`,
    }[word]!;
    return { word, value: squishGap, edges, lead: ['. A squish gap of'], place, advice: [] };
  },
});
