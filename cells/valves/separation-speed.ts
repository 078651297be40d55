import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { Impossible } from '../../src/graph/state.ts';
import { profileAcceleration, profileLift, profileReach } from '../../src/physics/valve/profile.ts';
import * as physics from '../../src/physics/valve/spring.ts';
import { common } from '../../src/references.ts';
import { rotation } from '../../src/units/quantity.ts';
import { tappet } from '../cam/inputs.ts';
import { intakeLash, rockerRatio, springRate, springSeatForce, valveSideMass } from './inputs.ts';
import { intakeLobe } from './intake-lobe.ts';
import { lashOf, lobeOf } from './motion.ts';

export const separationSpeed = cell({
  id: 'separationSpeed',
  label: 'Intake valve leaves its lobe at',
  short: 'Leaves lobe',
  note: 'Where the spring can no longer hold the valve to the nose. An estimate: rigid train, no surge, so real ones let go earlier.',
  kind: scalar(rotation),
  from: { intakeLobe, rockerRatio, tappet, intakeLash, springSeatForce, springRate, valveSideMass },
  mayLack: ['intakeLash'],
  source: common('spring force against inertia (Newton)'),
  formula:
    'the speed at which valveSideMass × acceleration equals springSeatForce + springRate × lift somewhere on the nose',
  compute: ({ intakeLobe, rockerRatio, tappet, intakeLash, springSeatForce, springRate, valveSideMass }) => {
    const lobe = lobeOf(intakeLobe, 'intakeLobeLift');
    const speed = physics.separationSpeed({
      spring: { seatForce: springSeatForce, rate: springRate },
      mass: valveSideMass,
      rocker: rockerRatio,
      lash: lashOf(tappet, intakeLash),
      lift: (a) => profileLift(lobe, a),
      acceleration: (a) => profileAcceleration(lobe, a),
      halfWidth: profileReach(lobe),
    });
    if (!Number.isFinite(speed)) throw new Impossible(['Nothing on this nose slows the valve.']);
    return speed;
  },
});
