import { cell } from '../../src/graph/cell.ts';
import { remark } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { engineSpeed } from '../block/inputs.ts';
import { springRate } from './inputs.ts';
import { separationSpeed } from './separation-speed.ts';

export const separationRemark = cell({
  id: 'separationRemark',
  label: 'Springs and engine speed',
  note: 'A valve that leaves its lobe may meet the piston.',
  kind: remark,
  from: { separationSpeed, engineSpeed },
  source: common('springs are chosen with speed to spare'),
  formula: 'separationSpeed < engineSpeed',
  about: springRate,
  compute: ({ separationSpeed, engineSpeed }) =>
    separationSpeed < engineSpeed
      ? [
          'These springs let the valve leave its lobe below the engine speed stated; the clearance figures then mean nothing.',
        ]
      : null,
});
