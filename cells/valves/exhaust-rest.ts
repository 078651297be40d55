import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { restClearance } from '../../src/physics/valve/clearance.ts';
import { common } from '../../src/references.ts';
import { gap } from '../../src/units/quantity.ts';
import { inch, si } from '../../src/units/unit.ts';
import { deckClearance } from '../chamber/deck-clearance.ts';
import { gasketThickness, milling } from '../chamber/inputs.ts';
import { crownAtValve, reliefCut, exhaustReliefDepth, exhaustSeatDepth, exhaustValveAngle } from './inputs.ts';

export const exhaustRest = cell({
  id: 'exhaustRest',
  label: 'Exhaust drop at top dead center',
  short: 'Exhaust drop',
  note: 'How far the valve can be pushed open before it meets the piston at the top; hold it if you have measured it.',
  kind: scalar(gap),
  from: {
    deckClearance,
    gasketThickness,
    exhaustSeatDepth,
    milling,
    crownAtValve,
    exhaustReliefDepth,
    reliefCut,
    exhaustValveAngle,
  },
  source: common('the stack from valve to crown; along the valve for a relief, along the bore for a flat crown'),
  formula:
    '(deckClearance + gasketThickness + exhaustSeatDepth − milling + exhaustReliefDepth + reliefCut) × cos exhaustValveAngle',
  slider: [0, si(0.5, inch)],
  compute: ({
    deckClearance,
    gasketThickness,
    exhaustSeatDepth,
    milling,
    crownAtValve,
    exhaustReliefDepth,
    reliefCut,
    exhaustValveAngle,
  }) =>
    restClearance({
      deckClearance,
      gasketThickness,
      seatDepth: exhaustSeatDepth,
      milling,
      reliefDepth: crownAtValve === 'relief' ? exhaustReliefDepth + reliefCut : 0,
      valveAngle: crownAtValve === 'relief' ? exhaustValveAngle : 0,
    }),
});
