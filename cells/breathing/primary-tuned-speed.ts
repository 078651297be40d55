import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { primarySpeed } from '../../src/physics/flow/tuning.ts';
import { bell, cite } from '../../src/references.ts';
import { rotation } from '../../src/units/quantity.ts';
import { exhaustOpening } from '../cam/exhaust-opening.ts';
import { primaryLength, primarySoundSpeed } from './inputs.ts';

export const primaryTunedSpeed = cell({
  id: 'primaryTunedSpeed',
  label: 'Primaries tuned to',
  short: 'Primaries',
  note: 'Here the pulse is back as suction halfway between the exhaust valve’s opening and the top of the stroke, and draws through the overlap.',
  kind: scalar(rotation),
  from: { primaryLength, primarySoundSpeed, exhaustOpening },
  source: cite(bell, 'from memory'),
  formula: '(180° + exhaustOpening) / 2 × primarySoundSpeed / (2 × primaryLength)',
  compute: ({ primaryLength, primarySoundSpeed, exhaustOpening }) =>
    primarySpeed(primaryLength, primarySoundSpeed, exhaustOpening),
});
