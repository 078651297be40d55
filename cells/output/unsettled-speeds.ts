import { cell } from '../../src/graph/cell.ts';
import { structure } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { engineBySpeed } from './engine-by-speed.ts';

export const unsettledSpeeds = cell({
  id: 'unsettledSpeeds',
  label: 'Speeds that do not settle',
  note: 'Where cycles swing and never repeat: those points are drawn hollow.',
  kind: structure<{ readonly speeds: readonly number[] }>(),
  from: { engineBySpeed },
  source: common('the cycle’s own stopping rule'),
  formula: 'the speeds of engineBySpeed that do not repeat themselves',
  compute: ({ engineBySpeed }) => ({ speeds: engineBySpeed.rows.filter((r) => !r.settled).map((r) => r.speed) }),
});
