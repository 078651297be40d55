import { cell, type From, type Given, type Pure, type Range } from './cell.ts';
import { crossing } from './crossing.ts';
import { Impossible } from './state.ts';

type Spec<F extends From> = Omit<Parameters<typeof cell<F, number>>[0], 'compute'>;

/**
 * A cell that finds the unknown between two bounds (SI) at which the residual vanishes: for relations that chase
 * their own tail, since the graph itself has no back edges.
 */
export const balance = <const F extends From>(
  spec: Spec<F> & {
    readonly between: Range;
    readonly residual: (unknown: number, given: Given<F>) => number;
  },
): Pure<number> =>
  cell<F, number>({
    ...spec,
    compute: (given) => {
      const found = crossing((x) => spec.residual(x, given), ...spec.between);
      if (found === null)
        throw new Impossible([`No ${spec.label.toLowerCase()} between its bounds fits these figures.`]);
      return found;
    },
  });
