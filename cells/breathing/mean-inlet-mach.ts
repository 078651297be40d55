import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import * as physics from '../../src/physics/flow/inlet-mach.ts';
import { cite, fukutani } from '../../src/references.ts';
import { ratio } from '../../src/units/quantity.ts';
import { intakeSeatDuration } from '../valves/intake-seat-duration.ts';
import { assumedVolumetricEfficiency } from './inputs.ts';
import { inletMachIndex } from './inlet-mach-index.ts';

export const meanInletMach = cell({
  id: 'meanInletMach',
  label: 'Mean inlet Mach number',
  short: 'Inlet Mach',
  note: 'What the cylinder really draws, in the time the valve is open: another number than Z, and smaller. Over 0.5 filling falls away steeply.',
  kind: scalar(ratio),
  from: { inletMachIndex, intakeSeatDuration, assumedVolumetricEfficiency },
  source: cite(fukutani, 'from memory; Heywood 1988, sec. 6.2.3'),
  formula: 'inletMachIndex × assumedVolumetricEfficiency × 180° / intakeSeatDuration',
  compute: ({ inletMachIndex, intakeSeatDuration, assumedVolumetricEfficiency }) =>
    physics.meanInletMach(inletMachIndex, intakeSeatDuration, assumedVolumetricEfficiency),
  // Open for half a turn and filled to the brim, both numbers are the same.
  examples: [
    {
      given: { inletMachIndex: 0.6, intakeSeatDuration: Math.PI, assumedVolumetricEfficiency: 1 },
      gives: 0.6,
      within: 1e-12,
    },
  ],
});
