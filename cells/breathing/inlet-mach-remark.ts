import { cell } from '../../src/graph/cell.ts';
import { remark } from '../../src/graph/kind.ts';
import { cite, fukutani } from '../../src/references.ts';
import { phrase, value } from '../../src/units/phrase.ts';
import { ratio } from '../../src/units/quantity.ts';
import { intakeFlow } from './inputs.ts';
import { meanInletMach } from './mean-inlet-mach.ts';

const steep = 0.5;

export const inletMachRemark = cell({
  id: 'inletMachRemark',
  label: 'Intake and engine speed',
  note: 'From a mean inlet Mach number of 0.5 the valve, not the cam, is what the engine lacks.',
  kind: remark,
  from: { meanInletMach },
  source: cite(fukutani, 'from memory'),
  formula: 'meanInletMach > 0.5',
  about: intakeFlow,
  compute: ({ meanInletMach }) =>
    meanInletMach > steep
      ? phrase`At the engine speed stated the mean inlet Mach number is ${value(meanInletMach, ratio)}, over 0.50: this intake is too small for that speed.`
      : null,
});
