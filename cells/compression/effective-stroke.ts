import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { Impossible } from '../../src/graph/state.ts';
import { pistonDrop } from '../../src/physics/linkage.ts';
import { cite, heywood } from '../../src/references.ts';
import { length } from '../../src/units/quantity.ts';
import { linkage } from '../block/linkage.ts';
import { intakeClosing } from '../cam/intake-closing.ts';

export const effectiveStroke = cell({
  id: 'effectiveStroke',
  label: 'Effective stroke',
  note: 'How much of the stroke is left when the intake valve shuts: only this much compresses.',
  kind: scalar(length),
  from: { linkage, intakeClosing },
  source: cite(heywood, 'eq. 2.5, at the closing'),
  formula: 'the piston’s depth at 180° + intakeClosing',
  compute: ({ linkage, intakeClosing }) => {
    if (intakeClosing >= Math.PI || intakeClosing <= -Math.PI)
      throw new Impossible(
        ['With this cam the intake valve is still open at the top, so nothing is compressed.'],
        'intakeClosing',
      );
    return pistonDrop(linkage, Math.PI + intakeClosing);
  },
});
