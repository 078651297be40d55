import type { Cell, Steps } from './cell.ts';
import { designSteps } from './designs.ts';
import { drawSteps, type DrawsResult } from './draws.ts';
import type {
  Answer,
  DesignsAsked,
  DrawsAsked,
  Exploration,
  Explorations,
  MapAsked,
  SharedBy,
  SharesAsked,
  SweepAsked,
} from './explorer.ts';
import { type MapResult, mapSteps, takeOf } from './map.ts';
import type { Snapshot } from './snapshot.ts';
import { solveSteps } from './solve-slowly.ts';
import { type Share, shareSteps } from './spread.ts';
import { type SweepResult, sweepSteps } from './sweep.ts';

type Named = (id: string) => Cell;
type Work<K extends Exploration> = (at: Snapshot, asked: Explorations[K]['asked'], named: Named) => Steps<Answer<K>>;

/** How each what-if is worked out, where the same graph has been built. */
export const explorations: { readonly [K in Exploration]: Work<K> } = {
  sweep,
  map,
  draws,
  shares,
  designs,
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

function draws(at: Snapshot, { read, tolerances, ...asked }: DrawsAsked, named: Named): Steps<DrawsResult> {
  return drawSteps(at, { ...asked, reads: read.map(named), tolerances: byCell(tolerances, named) });
}

function* shares(at: Snapshot, { read, tolerances }: SharesAsked, named: Named): Steps<readonly SharedBy[]> {
  const byId = (all: readonly Share[]): readonly SharedBy[] => all.map((s) => ({ ...s, cell: s.cell.id }));
  const steps = shareSteps(at, named(read), byCell(tolerances, named));
  for (;;) {
    const step = steps.next();
    if (step.done) return byId(step.value);
    yield typeof step.value === 'number' ? step.value : { ...step.value, value: byId(step.value.value) };
  }
}

function designs(at: Snapshot, { vary, designs, read }: DesignsAsked, named: Named): Steps<number[][]> {
  return designSteps(
    at,
    vary.map(named),
    designs,
    read.map((r) => ({ cell: named(r.cell), take: r.take })),
  );
}

const byCell = (figures: Readonly<Record<string, number>>, named: Named): ReadonlyMap<Cell, number> =>
  new Map(Object.entries(figures).map(([id, figure]) => [named(id), figure]));

function map(at: Snapshot, { x, y, fixed, read, known }: MapAsked, named: Named): Steps<MapResult> {
  return mapSteps(at, {
    x: { vary: named(x.vary), values: x.values },
    y: { vary: named(y.vary), values: y.values },
    fixed: Object.entries(fixed).map(([id, saved]) => ({ cell: named(id), value: named(id).kind.restore(saved) })),
    read: read.map(({ cell }) => named(cell)),
    take: read.map(takeOf),
    ...(known ? { known } : {}),
  });
}
