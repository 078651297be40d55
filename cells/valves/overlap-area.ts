import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { overlapAreas } from '../../src/physics/valve/overlap.ts';
import { profileLift } from '../../src/physics/valve/profile.ts';
import { valveLift } from '../../src/physics/valve/valve-lift.ts';
import { common } from '../../src/references.ts';
import { liftArea } from '../../src/units/quantity.ts';
import { exhaustCenterline } from '../cam/exhaust-centerline.ts';
import { exhaustClosing } from '../cam/exhaust-closing.ts';
import { tappet } from '../cam/inputs.ts';
import { intakeCenterlineInstalled } from '../cam/intake-centerline-installed.ts';
import { intakeOpening } from '../cam/intake-opening.ts';
import { exhaustLobe } from './exhaust-lobe.ts';
import { exhaustLash, intakeLash, rockerRatio } from './inputs.ts';
import { intakeLobe } from './intake-lobe.ts';
import { lashOf, lobeOf } from './motion.ts';

export const overlapArea = cell({
  id: 'overlapArea',
  label: 'Overlap area',
  note: 'Lift times crank degrees while both valves are off their seats, each counted while it is the lesser: what burned gas can come back through.',
  kind: scalar(liftArea),
  from: {
    intakeLobe,
    exhaustLobe,
    intakeCenterlineInstalled,
    exhaustCenterline,
    rockerRatio,
    tappet,
    intakeLash,
    exhaustLash,
    intakeOpening,
    exhaustClosing,
  },
  mayLack: ['intakeLash', 'exhaustLash'],
  source: common('the areas under both lift curves'),
  formula: 'the area under the lesser lift between intakeOpening and exhaustClosing',
  compute: (now) => {
    const intake = lobeOf(now.intakeLobe, 'intakeLobeLift');
    const exhaust = lobeOf(now.exhaustLobe, 'exhaustLobeLift');
    const areas = overlapAreas(
      (a) =>
        valveLift(
          profileLift(intake, a - now.intakeCenterlineInstalled),
          now.rockerRatio,
          lashOf(now.tappet, now.intakeLash),
        ),
      (a) =>
        valveLift(
          profileLift(exhaust, a + now.exhaustCenterline),
          now.rockerRatio,
          lashOf(now.tappet, now.exhaustLash),
        ),
      -now.intakeOpening,
      now.exhaustClosing,
    );
    return areas ? areas.intake + areas.exhaust : 0;
  },
});
