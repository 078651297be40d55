import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { needed } from '../../src/graph/state.ts';
import * as physics from '../../src/physics/valve/clearance.ts';
import { common } from '../../src/references.ts';
import { chamberVolume } from '../../src/units/quantity.ts';
import { cubicCentimeter, si } from '../../src/units/unit.ts';
import { crownAtValve, exhaustValveDiameter, intakeValveDiameter, reliefCut } from './inputs.ts';

export const reliefCutVolume = cell({
  id: 'reliefCutVolume',
  label: 'Volume the deeper reliefs add',
  short: 'Relief cut',
  note: 'A disk of each valve’s diameter; it joins the clearance volume and lowers both ratios.',
  kind: scalar(chamberVolume),
  from: { crownAtValve, reliefCut, intakeValveDiameter, exhaustValveDiameter },
  mayLack: ['reliefCut', 'intakeValveDiameter', 'exhaustValveDiameter'], // what is not cut needs none of them
  source: common('disks as wide as the valves'),
  formula: 'π / 4 × (intakeValveDiameter² + exhaustValveDiameter²) × reliefCut; a flat crown has none',
  slider: [0, si(20, cubicCentimeter)],
  compute: ({ crownAtValve, reliefCut, intakeValveDiameter, exhaustValveDiameter }) =>
    crownAtValve === 'flat' || reliefCut === 0
      ? 0
      : physics.reliefCutVolume(needed(intakeValveDiameter), needed(reliefCut)) +
        physics.reliefCutVolume(needed(exhaustValveDiameter), needed(reliefCut)),
});
