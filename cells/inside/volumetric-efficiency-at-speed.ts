import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { share } from '../../src/units/quantity.ts';
import { engineAtSpeed } from './engine-at-speed.ts';

export const volumetricEfficiencyAtSpeed = cell({
  id: 'volumetricEfficiencyAtSpeed',
  label: 'Volumetric efficiency at the engine speed',
  short: 'Filling here',
  note: 'Dry air caught, against a swept volume of the dry air outside.',
  kind: scalar(share),
  from: { engineAtSpeed },
  source: common('read off the cycle'),
  formula: 'dry air trapped in engineAtSpeed over swept volume × its density outside',
  compute: ({ engineAtSpeed }) => engineAtSpeed.volumetricEfficiency,
});
