import { cell } from '../../src/graph/cell.ts';
import { structure } from '../../src/graph/kind.ts';
import type { ModelError } from '../../src/graph/model-error.ts';
import { common } from '../../src/references.ts';
import { engineSpeed } from '../block/inputs.ts';
import { timesSpeed } from '../output/model-shares.ts';
import { torqueAtSpeedError } from './torque-at-speed-error.ts';

export const powerAtSpeedError = cell({
  id: 'powerAtSpeedError',
  label: 'How sure the power at the engine speed is',
  note: 'The torque’s, times speed.',
  kind: structure<ModelError>(),
  from: { torqueAtSpeedError, engineSpeed },
  source: common('arithmetic'),
  formula: 'torqueAtSpeedError × engineSpeed',
  compute: ({ torqueAtSpeedError, engineSpeed }) => timesSpeed(torqueAtSpeedError, engineSpeed),
});
