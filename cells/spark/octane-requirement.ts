import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { cite, heywood } from '../../src/references.ts';
import { octane } from '../../src/units/quantity.ts';
import { engineBySpeed } from '../output/engine-by-speed.ts';
import { sparkEntry } from '../output/inputs.ts';
import { octaneError } from './octane-error.ts';
import { mustHaveCurve, worstRow } from './worst.ts';

export const octaneRequirement = cell({
  id: 'octaneRequirement',
  label: 'Octane requirement at its worst',
  short: 'Asks for',
  note: 'The octane at which knock is just due, at the worst speed from 2000 rpm up (of all speeds where the curve ends lower). Read it as AKI: the formula cannot tell research from motor octane.',
  kind: scalar(octane),
  from: { engineBySpeed, sparkEntry },
  source: cite(heywood, 'eq. 9.58, after A. M. Douaud and P. Eyzat, SAE 780080 (from memory)'),
  formula: 'the largest octane requirement of engineBySpeed from 2000 rpm up; not for the best sparkEntry',
  modelError: octaneError,
  compute: ({ engineBySpeed, sparkEntry }) => {
    mustHaveCurve(sparkEntry);
    return worstRow(engineBySpeed).octaneRequirement;
  },
});
