import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { chamberVolume as volume } from '../../src/units/quantity.ts';
import { cubicCentimeter, si } from '../../src/units/unit.ts';
import { chamberDeckArea, milling } from './inputs.ts';

export const milledVolume = cell({
  id: 'milledVolume',
  label: 'Volume milled away',
  short: 'Milled',
  note: 'Depth times the chamber’s outline: right as long as the walls stand nearly upright at the face.',
  kind: scalar(volume),
  from: { milling, chamberDeckArea },
  source: common('depth × area at the face'),
  formula: 'milling × chamberDeckArea',
  slider: [0, si(30, cubicCentimeter)],
  compute: ({ milling, chamberDeckArea }) => milling * chamberDeckArea,
  examples: [{ given: { milling: 0.001, chamberDeckArea: 0.005 }, gives: 5e-6, within: 1e-18 }],
});
