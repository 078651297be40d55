import { cell } from '../../src/graph/cell.ts';
import { remark } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { fittedTo } from './fitted.ts';
import { fittedFactor, heatFactor, measuredTorque } from './inputs.ts';

export const heatFittedRemark = cell({
  id: 'heatFittedRemark',
  label: 'Whether the heat to the walls was fitted',
  note: 'A fitted figure is no longer a guess, and no longer a forecast either.',
  kind: remark,
  from: { heatFactor, fittedFactor, measuredTorque },
  source: common('what was asked for'),
  formula: 'measuredTorque, where fittedFactor names heatFactor',
  about: heatFactor,
  compute: ({ heatFactor, fittedFactor, measuredTorque }) =>
    fittedTo(heatFactor, fittedFactor === 'heat', measuredTorque),
});
