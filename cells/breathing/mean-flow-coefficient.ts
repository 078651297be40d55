import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { Impossible } from '../../src/graph/state.ts';
import { meanOpenArea } from '../../src/physics/flow/inlet-mach.ts';
import { roundArea } from '../../src/physics/flow/valve-area.ts';
import { cite, taylor } from '../../src/references.ts';
import { fineRatio } from '../../src/units/quantity.ts';
import { intakeValveDiameter } from '../valves/inputs.ts';
import { intakeSeatDuration } from '../valves/intake-seat-duration.ts';
import { intakeOpenArea } from './intake-open-area.ts';

export const meanFlowCoefficient = cell({
  id: 'meanFlowCoefficient',
  label: 'Mean flow coefficient of the intake',
  short: 'Mean coefficient',
  note: 'Effective area over the area of the valve’s head, averaged while the valve is open: cam and port in one figure.',
  kind: scalar(fineRatio),
  from: { intakeOpenArea, intakeSeatDuration, intakeValveDiameter },
  source: cite(taylor, 'ch. 6, from memory'),
  formula: 'the area under intakeOpenArea / intakeSeatDuration / (π/4 × intakeValveDiameter²)',
  compute: ({ intakeOpenArea, intakeSeatDuration, intakeValveDiameter }) => {
    const mean = meanOpenArea(intakeOpenArea.x, intakeOpenArea.y, intakeSeatDuration);
    if (!(mean > 0)) throw new Impossible(['The intake valve passes nothing.'], 'intakeFlow');
    return mean / roundArea(intakeValveDiameter);
  },
});
