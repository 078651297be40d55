import { cell } from '../../src/graph/cell.ts';
import { remark } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { phrase, value } from '../../src/units/phrase.ts';
import { airFlow, rotation } from '../../src/units/quantity.ts';
import { engineSpeed } from '../block/inputs.ts';
import { carburetorDemand } from './carburetor-demand.ts';
import { exhaustFlow28 } from './exhaust-flow28.ts';
import { intakeFlow28 } from './intake-flow28.ts';

export const breathingSays = cell({
  id: 'breathingSays',
  label: 'Breathing, in one line',
  note: 'What the chapter comes to, for when it is closed.',
  kind: remark,
  from: { intakeFlow28, exhaustFlow28, carburetorDemand, engineSpeed },
  source: common('a summary'),
  formula: 'intakeFlow28, exhaustFlow28, carburetorDemand at engineSpeed',
  compute: ({ intakeFlow28, exhaustFlow28, carburetorDemand, engineSpeed }) =>
    phrase`Intake ${value(intakeFlow28, airFlow)} and exhaust ${value(exhaustFlow28, airFlow)} at full lift; at ${value(engineSpeed, rotation)} the engine asks for ${value(carburetorDemand, airFlow)}.`,
});
