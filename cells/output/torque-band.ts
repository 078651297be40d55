import { cell } from '../../src/graph/cell.ts';
import { structure } from '../../src/graph/kind.ts';
import { bandOf } from '../../src/physics/cycle/band.ts';
import { common } from '../../src/references.ts';
import { engineRanges } from './engine-ranges.ts';
import { atSpeed, scatter } from './model-shares.ts';
import { torqueCurve } from './torque-curve.ts';

interface Band {
  /** rad/s */
  readonly x: readonly number[];
  /** N m, and how far under and over it about two engines in three lie. */
  readonly torque: readonly number[];
  readonly below: readonly number[];
  readonly above: readonly number[];
}

export const torqueBand = cell({
  id: 'torqueBand',
  label: 'How sure the torque is, by engine speed',
  note: 'About two engines in three lie inside. Never narrower than single engines scatter: 8 %, and 12 % under 2000 rpm.',
  kind: structure<Band>(),
  from: { torqueCurve, engineRanges },
  source: common('ranges that about two engines in three lie inside, and what single engines scatter by'),
  formula: 'what the changes of engineRanges add up to, under and over; at least 8 or 12 % of torqueCurve',
  compute: ({ torqueCurve: { x, y }, engineRanges }) => {
    const side = (name: 'below' | 'above'): number[] =>
      Array.from(x, (speed, i) =>
        Math.max(
          atSpeed(engineRanges, speed, (effects) => bandOf(effects)[name]),
          scatter(speed) * Math.abs(y[i]!),
        ),
      );
    return { x: [...x], torque: [...y], below: side('below'), above: side('above') };
  },
});
