import { cell } from '../../src/graph/cell.ts';
import { curve } from '../../src/graph/kind.ts';
import { profileAcceleration } from '../../src/physics/valve/profile.ts';
import { common } from '../../src/references.ts';
import { angle, perRadianSquared } from '../../src/units/quantity.ts';
import { lobeAngles, lobeOf } from './motion.ts';
import { rockerRatio } from './inputs.ts';
import { exhaustLobe } from './exhaust-lobe.ts';

export const exhaustAcceleration = cell({
  id: 'exhaustAcceleration',
  label: 'Exhaust valve acceleration',
  note: 'The push up on the flanks, and the slowing over the nose that the spring has to supply.',
  kind: curve(angle, perRadianSquared),
  from: { exhaustLobe, rockerRatio },
  source: common('the lift curve’s curvature'),
  formula: 'rockerRatio × the curvature of the lobe’s lift',
  compute: ({ exhaustLobe, rockerRatio }) => {
    const lobe = lobeOf(exhaustLobe, 'exhaustLobeLift');
    return { x: lobeAngles, y: lobeAngles.map((a) => rockerRatio * profileAcceleration(lobe, a)) };
  },
});
