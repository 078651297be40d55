import { cell } from '../../src/graph/cell.ts';
import { structure } from '../../src/graph/kind.ts';
import { type Clearance, smallestClearance } from '../../src/physics/valve/clearance.ts';
import { common } from '../../src/references.ts';
import { exhaustAbove, exhaustTrain } from './exhaust-above.ts';

export const exhaustNearest = cell({
  id: 'exhaustNearest',
  label: 'Exhaust valve, nearest to the piston',
  note: 'Where the gap is least around the top of the exhaust stroke.',
  kind: structure<Clearance>(),
  from: exhaustTrain,
  mayLack: ['exhaustLash'],
  source: common('plane geometry of piston and valve'),
  formula: 'the least of exhaustRest + the piston’s depth × cos exhaustValveAngle − lift',
  compute: (now) => smallestClearance(exhaustAbove(now)),
});
