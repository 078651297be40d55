import { cell } from '../../src/graph/cell.ts';
import { record } from '../../src/graph/kind.ts';
import { Impossible } from '../../src/graph/state.ts';
import * as physics from '../../src/physics/linkage.ts';
import { cite, heywood } from '../../src/references.ts';
import { phrase, value } from '../../src/units/phrase.ts';
import { length } from '../../src/units/quantity.ts';
import { pinOffset, rod, stroke } from './inputs.ts';

type Figures = { readonly [K in keyof physics.Linkage]: number };

export const linkage = cell({
  id: 'linkage',
  label: 'Crank and rod',
  note: 'Where the dead centers are, from throw, rod and pin offset.',
  kind: record<Figures>(),
  from: { stroke, rod, pinOffset },
  source: cite(heywood, 'sec. 2.2, fig. 2-1; with an offset, plane geometry'),
  formula: 'stroke / 2, rod, pinOffset',
  compute: ({ stroke, rod, pinOffset }): Figures => {
    if (rod <= stroke / 2)
      throw new Impossible(phrase`The rod is shorter than the crank throw, ${value(stroke / 2, length)}.`, 'rod');
    if (rod <= stroke / 2 + Math.abs(pinOffset))
      throw new Impossible(
        phrase`With this pin offset the crank cannot turn: the rod must be longer than ${value(stroke / 2 + Math.abs(pinOffset), length)}.`,
        'pinOffset',
      );
    return physics.linkage(stroke, rod, pinOffset);
  },
});
