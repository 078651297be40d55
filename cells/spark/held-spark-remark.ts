import { cell } from '../../src/graph/cell.ts';
import { remark } from '../../src/graph/kind.ts';
import { knockLimitedSpark } from '../../src/physics/cycle/spark-advice.ts';
import { common } from '../../src/references.ts';
import { phrase, type Phrase, value } from '../../src/units/phrase.ts';
import { octane, rotation, share } from '../../src/units/quantity.ts';
import { pumpOctane } from '../fuel/pump-octane.ts';
import { engineBySpeed } from '../output/engine-by-speed.ts';
import { sparkEntry } from '../output/inputs.ts';
import { soundRows } from '../output/rows.ts';
import { sparkLossOf } from './spark-loss-of.ts';

const worthSaying = 0.002; // less is no more than what the best spark itself gives away

export const heldSparkRemark = cell({
  id: 'heldSparkRemark',
  label: 'Where holding the spark to the fuel costs torque',
  note: 'The speeds at which the fuel does not bear the best spark.',
  kind: remark,
  from: { sparkEntry, engineBySpeed, pumpOctane },
  source: common('read off the curve'),
  formula: 'speeds of engineBySpeed with less than the best spark, on pumpOctane, if sparkEntry says so',
  about: sparkEntry,
  compute: ({ sparkEntry, engineBySpeed, pumpOctane }): Phrase | null => {
    if (sparkEntry !== 'fuel') return null;
    const fuel = value(pumpOctane, octane);
    const rows = soundRows(engineBySpeed).map((row) => ({ ...row, loss: sparkLossOf(row) ?? 0 }));
    const dear = rows.filter((row) => row.loss > worthSaying);
    const unborne = rows.filter((row) => knockLimitedSpark(row.sparks, pumpOctane) === null);
    if (dear.length === 0) return phrase`${fuel} octane bears the best spark at every speed of the curve.`;
    const most = dear.reduce((a, b) => (b.loss > a.loss ? b : a));
    const list = (of: typeof rows): Phrase =>
      of.flatMap((row, i): Phrase => [i === 0 ? '' : ', ', value(row.speed, rotation)]);
    const costs =
      dear.length === 1
        ? phrase`costs ${value(most.loss, share)} of torque at ${value(most.speed, rotation)}`
        : phrase`costs torque at ${list(dear)}, most at ${value(most.speed, rotation)}: ${value(most.loss, share)}`;
    const knocks = unborne.length > 0 ? phrase` Knock is due all the same at ${list(unborne)}.` : [];
    return phrase`Held to ${fuel} octane, the spark ${costs}.${knocks}`;
  },
});
