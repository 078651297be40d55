import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { Impossible } from '../../src/graph/state.ts';
import { cite, heywood } from '../../src/references.ts';
import { chamberVolume as volume } from '../../src/units/quantity.ts';
import { cubicCentimeter, si } from '../../src/units/unit.ts';
import { creviceVolume } from './crevice-volume.ts';
import { deckVolume } from './deck-volume.ts';
import { gasketVolume } from './gasket-volume.ts';
import { chamberVolume, crownVolume } from './inputs.ts';
import { milledVolume } from './milled-volume.ts';
import { reliefCutVolume } from '../valves/relief-cut-volume.ts';

export const clearanceVolume = cell({
  id: 'clearanceVolume',
  label: 'Clearance volume',
  short: 'Clearance',
  note: 'All that is left above the piston at top dead center.',
  kind: scalar(volume),
  from: { chamberVolume, milledVolume, gasketVolume, deckVolume, crownVolume, creviceVolume, reliefCutVolume },
  source: cite(heywood, 'sec. 2.2; its parts as the trade measures them'),
  formula: 'chamberVolume − milledVolume + gasketVolume + deckVolume + crownVolume + creviceVolume + reliefCutVolume',
  slider: [si(30, cubicCentimeter), si(150, cubicCentimeter)],
  compute: ({ chamberVolume, milledVolume, gasketVolume, deckVolume, crownVolume, creviceVolume, reliefCutVolume }) => {
    if (milledVolume >= chamberVolume) throw new Impossible(['That cut takes the whole chamber away.'], 'milling');
    const left =
      chamberVolume - milledVolume + gasketVolume + deckVolume + crownVolume + creviceVolume + reliefCutVolume;
    if (left <= 0)
      throw new Impossible(
        ['Nothing is left above the piston: the dome or the deck fills the chamber.'],
        'crownVolume',
      );
    return left;
  },
  examples: [
    {
      given: {
        chamberVolume: 64e-6,
        milledVolume: 2e-6,
        gasketVolume: 9e-6,
        deckVolume: 3e-6,
        crownVolume: -4e-6,
        creviceVolume: 1e-6,
        reliefCutVolume: 0,
      },
      gives: 71e-6,
      within: 1e-15,
    },
  ],
});
