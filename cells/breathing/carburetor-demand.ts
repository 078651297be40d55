import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { airflowDemand } from '../../src/physics/performance.ts';
import { cite, heywood } from '../../src/references.ts';
import { airFlow } from '../../src/units/quantity.ts';
import { displacement } from '../block/displacement.ts';
import { engineSpeed } from '../block/inputs.ts';
import { assumedVolumetricEfficiency } from './inputs.ts';

export const carburetorDemand = cell({
  id: 'carburetorDemand',
  label: 'Air the engine asks for',
  short: 'Demand',
  note: 'Wide open, at the engine speed of the first chapter and the assumed volumetric efficiency, as volume of the air here.',
  kind: scalar(airFlow),
  from: { displacement, engineSpeed, assumedVolumetricEfficiency },
  source: cite(heywood, 'eq. 2.27; in US units in³ × rpm × VE / 3456'),
  formula: 'displacement × engineSpeed / 2 turns × assumedVolumetricEfficiency',
  compute: ({ displacement, engineSpeed, assumedVolumetricEfficiency }) =>
    airflowDemand(displacement, engineSpeed, assumedVolumetricEfficiency),
  // 3456 rpm and full cylinders: as many cubic feet a minute as there are cubic inches.
  examples: [
    {
      given: {
        displacement: 350 * 0.0254 ** 3,
        engineSpeed: (3456 * Math.PI) / 30,
        assumedVolumetricEfficiency: 1,
      },
      gives: (350 * 0.3048 ** 3) / 60,
      within: 1e-12,
    },
  ],
});
