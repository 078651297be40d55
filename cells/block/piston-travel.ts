import { cell } from '../../src/graph/cell.ts';
import { curve } from '../../src/graph/kind.ts';
import { pistonDrop } from '../../src/physics/linkage.ts';
import { cite, heywood } from '../../src/references.ts';
import { angle, length } from '../../src/units/quantity.ts';
import { linkage } from './linkage.ts';

// Intake and compression stroke, by two degrees; zero is firing top dead center.
const angles = Float64Array.from({ length: 181 }, (_, i) => ((i - 180) * Math.PI) / 90);

export const pistonTravel = cell({
  id: 'pistonTravel',
  label: 'Piston travel',
  note: 'How far the piston stands below the top through intake and compression.',
  kind: curve(angle, length),
  from: { linkage },
  source: cite(heywood, 'eq. 2.5'),
  formula: 'top − throw × cos angle − √(rod² − (throw × sin angle − offset)²)',
  compute: ({ linkage }) => ({ x: angles, y: angles.map((a) => pistonDrop(linkage, a)) }),
});
