import { cell } from '../../src/graph/cell.ts';
import { curve } from '../../src/graph/kind.ts';
import { cite, heywood } from '../../src/references.ts';
import { octane, rotation } from '../../src/units/quantity.ts';
import { engineBySpeed } from '../output/engine-by-speed.ts';
import { sparkEntry } from '../output/inputs.ts';
import { columnOf } from '../output/rows.ts';
import { mustHaveCurve } from './worst.ts';

export const octaneRequirementCurve = cell({
  id: 'octaneRequirementCurve',
  label: 'Octane requirement by engine speed',
  note: 'The octane number at which knock is just due, with the spark the engine runs.',
  kind: curve(rotation, octane, 'Engine speed'),
  from: { engineBySpeed, sparkEntry },
  source: cite(heywood, 'eq. 9.58, after A. M. Douaud and P. Eyzat, SAE 780080 (from memory)'),
  formula:
    '100 × (knock integral of engineBySpeed)^(1 / 3.402), with moisture and mixture; not for the best sparkEntry',
  compute: ({ engineBySpeed, sparkEntry }) => {
    mustHaveCurve(sparkEntry);
    return columnOf(engineBySpeed, (row) => row.octaneRequirement);
  },
});
