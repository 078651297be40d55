import { cell } from '../../src/graph/cell.ts';
import { curve } from '../../src/graph/kind.ts';
import { profileVelocity } from '../../src/physics/valve/profile.ts';
import { common } from '../../src/references.ts';
import { angle, perRadian } from '../../src/units/quantity.ts';
import { lobeAngles, lobeOf } from './motion.ts';
import { rockerRatio } from './inputs.ts';
import { exhaustLobe } from './exhaust-lobe.ts';

export const exhaustVelocity = cell({
  id: 'exhaustVelocity',
  label: 'Exhaust valve velocity',
  note: 'Lift per crank degree at the valve, from the lobe’s peak: steep flanks breathe well and wear tappets.',
  kind: curve(angle, perRadian),
  from: { exhaustLobe, rockerRatio },
  source: common('the lift curve’s slope'),
  formula: 'rockerRatio × the slope of the lobe’s lift',
  compute: ({ exhaustLobe, rockerRatio }) => {
    const lobe = lobeOf(exhaustLobe, 'exhaustLobeLift');
    return { x: lobeAngles, y: lobeAngles.map((a) => rockerRatio * profileVelocity(lobe, a)) };
  },
});
