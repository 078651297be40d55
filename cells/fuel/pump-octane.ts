import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { antiKnockIndex } from '../../src/physics/fuel/blend.ts';
import { common } from '../../src/references.ts';
import { octane } from '../../src/units/quantity.ts';
import { blendMon } from './blend-mon.ts';
import { blendRon } from './blend-ron.ts';
import { fuelGrade } from './inputs.ts';

/** What flex fuel is good for at its leanest: common practice, from memory. */
const leanFlex = 94;

export const pumpOctane = cell({
  id: 'pumpOctane',
  label: 'Octane, anti-knock index',
  short: 'AKI',
  note: 'The mean of research and motor octane: not the RON that other countries post, which is some 4 to 5 higher.',
  kind: scalar(octane),
  from: { fuelGrade, blendRon, blendMon },
  source: common('posted grades as posted; flex fuel at its leanest 94, from memory'),
  formula: 'fuelGrade as posted, or (blendRon + blendMon) / 2 for a mix',
  compute: ({ fuelGrade, blendRon, blendMon }) =>
    fuelGrade === 'mixed' ? antiKnockIndex(blendRon, blendMon) : fuelGrade === 'flex' ? leanFlex : Number(fuelGrade),
  examples: [{ given: { fuelGrade: 'mixed', blendRon: 95, blendMon: 85 }, gives: 90, within: 1e-12 }],
});
