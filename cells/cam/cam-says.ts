import { cell } from '../../src/graph/cell.ts';
import { remark } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { phrase, value } from '../../src/units/phrase.ts';
import * as q from '../../src/units/quantity.ts';
import { intakeDuration, seatLift } from './inputs.ts';
import { intakeCenterlineInstalled } from './intake-centerline-installed.ts';
import { intakeClosing } from './intake-closing.ts';

export const camSays = cell({
  id: 'camSays',
  label: 'Camshaft, in one line',
  note: 'What the chapter comes to, for when it is closed.',
  kind: remark,
  from: { intakeDuration, seatLift, intakeCenterlineInstalled, intakeClosing },
  source: common('a summary'),
  formula: 'intakeDuration, seatLift, intakeCenterlineInstalled, intakeClosing',
  compute: (now) =>
    phrase`${value(now.intakeDuration, q.angle)} at ${value(now.seatLift, q.gap)}, centered ${value(now.intakeCenterlineInstalled, q.angle)} after top; shuts ${value(now.intakeClosing, q.angle)} after bottom.`,
});
