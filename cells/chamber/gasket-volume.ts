import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { cylinderVolume } from '../../src/physics/volumes.ts';
import { common } from '../../src/references.ts';
import { chamberVolume as volume } from '../../src/units/quantity.ts';
import { cubicCentimeter, si } from '../../src/units/unit.ts';
import { gasketBore, gasketThickness } from './inputs.ts';

export const gasketVolume = cell({
  id: 'gasketVolume',
  label: 'Gasket volume',
  short: 'Gasket',
  note: 'The disc the gasket’s opening encloses.',
  kind: scalar(volume),
  from: { gasketBore, gasketThickness },
  source: common('a round opening'),
  formula: 'π / 4 × gasketBore² × gasketThickness',
  slider: [0, si(20, cubicCentimeter)],
  compute: ({ gasketBore, gasketThickness }) => cylinderVolume(gasketBore, gasketThickness),
  examples: [{ given: { gasketBore: 0.1, gasketThickness: 0.001 }, gives: 7.853981633974e-6, within: 1e-15 }],
});
