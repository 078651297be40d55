import { cell } from '../../src/graph/cell.ts';
import { curve } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { rotation, share } from '../../src/units/quantity.ts';
import { airDensity } from '../air/air-density.ts';
import { cylinders } from '../block/inputs.ts';
import { sweptVolume } from '../block/swept-volume.ts';
import { engineBySpeed } from '../output/engine-by-speed.ts';
import { columnOf } from '../output/rows.ts';

export const backflowCurve = cell({
  id: 'backflowCurve',
  label: 'Charge pushed back, by engine speed',
  note: 'Of what the intake valve lets in, the share that goes back out into the runner: in the overlap, and while the valve is still open on the way up.',
  kind: curve(rotation, share, 'Engine speed'),
  from: { engineBySpeed, sweptVolume, airDensity, cylinders },
  source: common('read off the cycle'),
  formula:
    'backflow of engineBySpeed over itself and what it keeps: its volumetric efficiency × sweptVolume × airDensity, and its fuel for each of the cylinders',
  compute: ({ engineBySpeed, sweptVolume, airDensity, cylinders }) =>
    columnOf(engineBySpeed, ({ speed, volumetricEfficiency, fuelFlow, backflow }) => {
      const kept = volumetricEfficiency * sweptVolume * airDensity + ((fuelFlow / cylinders) * 4 * Math.PI) / speed;
      return backflow / (backflow + kept);
    }),
});
