import type { Cell, Steps } from './cell.ts';
import type { Answer, Exploration, Explorations, SweepAsked } from './explorer.ts';
import type { Snapshot } from './snapshot.ts';
import { solveSteps } from './solve-slowly.ts';
import { type SweepResult, sweepSteps } from './sweep.ts';

type Named = (id: string) => Cell;
type Work<K extends Exploration> = (at: Snapshot, asked: Explorations[K]['asked'], named: Named) => Steps<Answer<K>>;

/** How each what-if is worked out, where the same graph has been built. */
export const explorations: { readonly [K in Exploration]: Work<K> } = {
  sweep,
  solve: (at, { vary, read, target, range, known }, named) =>
    solveSteps(at, named(read), target, named(vary), range, known),
};

function sweep(at: Snapshot, asked: SweepAsked, named: Named): Steps<SweepResult> {
  const { family, fixed, xs } = asked;
  return sweepSteps(at, {
    vary: named(asked.vary),
    xs,
    ...(family
      ? { family: { vary: named(family.vary), values: family.values.map((v) => named(family.vary).kind.restore(v)) } }
      : {}),
    fixed: Object.entries(fixed).map(([id, saved]) => ({ cell: named(id), value: named(id).kind.restore(saved) })),
    read: asked.read.map(named),
  });
}
