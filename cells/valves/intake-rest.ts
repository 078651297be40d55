import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { restClearance } from '../../src/physics/valve/clearance.ts';
import { common } from '../../src/references.ts';
import { gap } from '../../src/units/quantity.ts';
import { inch, si } from '../../src/units/unit.ts';
import { deckClearance } from '../chamber/deck-clearance.ts';
import { gasketThickness, milling } from '../chamber/inputs.ts';
import { crownAtValve, reliefCut, intakeReliefDepth, intakeSeatDepth, intakeValveAngle } from './inputs.ts';

export const intakeRest = cell({
  id: 'intakeRest',
  label: 'Intake drop at top dead center',
  short: 'Intake drop',
  note: 'How far the valve can be pushed open before it meets the piston at the top; hold it if you have measured it.',
  kind: scalar(gap),
  from: {
    deckClearance,
    gasketThickness,
    intakeSeatDepth,
    milling,
    crownAtValve,
    intakeReliefDepth,
    reliefCut,
    intakeValveAngle,
  },
  source: common('the stack from valve to crown; along the valve for a relief, along the bore for a flat crown'),
  formula:
    '(deckClearance + gasketThickness + intakeSeatDepth − milling + intakeReliefDepth + reliefCut) × cos intakeValveAngle',
  slider: [0, si(0.5, inch)],
  compute: ({
    deckClearance,
    gasketThickness,
    intakeSeatDepth,
    milling,
    crownAtValve,
    intakeReliefDepth,
    reliefCut,
    intakeValveAngle,
  }) =>
    restClearance({
      deckClearance,
      gasketThickness,
      seatDepth: intakeSeatDepth,
      milling,
      reliefDepth: crownAtValve === 'relief' ? intakeReliefDepth + reliefCut : 0,
      valveAngle: crownAtValve === 'relief' ? intakeValveAngle : 0,
    }),
});
