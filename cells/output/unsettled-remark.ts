import { cell } from '../../src/graph/cell.ts';
import { remark } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import type { Phrase } from '../../src/units/phrase.ts';
import { value } from '../../src/units/phrase.ts';
import { rotation } from '../../src/units/quantity.ts';
import { curveFrom } from './inputs.ts';
import { unsettledSpeeds } from './unsettled-speeds.ts';

export const unsettledRemark = cell({
  id: 'unsettledRemark',
  label: 'Speeds that do not settle',
  note: 'Where cycles swing and never repeat.',
  kind: remark,
  from: { unsettledSpeeds },
  source: common('the cycle’s own stopping rule'),
  formula: 'unsettledSpeeds',
  about: curveFrom,
  compute: ({ unsettledSpeeds }): Phrase | null => {
    const { speeds } = unsettledSpeeds;
    if (speeds.length === 0) return null;
    const listed = speeds.flatMap((s, i): Phrase => [i === 0 ? '' : ', ', value(s, rotation)]);
    return ['The cycle does not settle at ', ...listed, ': do not rely on those points, drawn hollow.'];
  },
});
