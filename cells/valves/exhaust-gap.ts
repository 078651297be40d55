import { cell } from '../../src/graph/cell.ts';
import { curve } from '../../src/graph/kind.ts';
import { clearanceAt } from '../../src/physics/valve/clearance.ts';
import { common } from '../../src/references.ts';
import { angle, gap } from '../../src/units/quantity.ts';
import { exhaustAbove, exhaustTrain } from './exhaust-above.ts';
import { nearAngles } from './motion.ts';

export const exhaustGap = cell({
  id: 'exhaustGap',
  label: 'Exhaust valve to piston',
  note: 'The gap around the top of the exhaust stroke, degree by degree.',
  kind: curve(angle, gap),
  from: exhaustTrain,
  mayLack: ['exhaustLash'],
  source: common('plane geometry of piston and valve'),
  formula: 'exhaustRest + the piston’s depth × cos exhaustValveAngle − lift',
  compute: (now) => {
    const above = exhaustAbove(now);
    return { x: nearAngles, y: nearAngles.map((a) => clearanceAt(above, a)) };
  },
});
