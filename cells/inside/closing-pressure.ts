import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { Impossible } from '../../src/graph/state.ts';
import { atClosing } from '../../src/physics/cycle/at-closing.ts';
import { common } from '../../src/references.ts';
import { backPressure } from '../../src/units/quantity.ts';
import { cycleRecord } from './cycle-record.ts';

export const closingPressure = cell({
  id: 'closingPressure',
  label: 'Pressure at the intake valve as it shuts, at the engine speed',
  short: 'As it shuts',
  note: 'Over the air outside, with a tenth of the opening left: what is left after that passes next to nothing. Over zero the waves pack the cylinder, under it they rob it.',
  kind: scalar(backPressure),
  from: { cycleRecord },
  source: common('read off the cycle'),
  formula: 'pressure of cycleRecord at the valve, less the air outside, when a tenth of its area is left',
  compute: ({ cycleRecord }) => {
    const i = atClosing(cycleRecord);
    if (i === null) throw new Impossible(['The intake valve never opens.']);
    return cycleRecord.runner.pressure[i * cycleRecord.runner.place.length]! - cycleRecord.outside;
  },
});
