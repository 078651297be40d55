import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { cite, heywood } from '../../src/references.ts';
import { length } from '../../src/units/quantity.ts';
import { linkage } from './linkage.ts';

export const pistonStroke = cell({
  id: 'pistonStroke',
  label: 'Piston stroke, between dead centers',
  short: 'Piston stroke',
  note: 'A pin offset makes the piston travel a hair more than twice the throw.',
  kind: scalar(length),
  from: { linkage },
  source: cite(heywood, 'sec. 2.2; with an offset, plane geometry'),
  formula: '√((rod + throw)² − offset²) − √((rod − throw)² − offset²)',
  compute: ({ linkage }) => linkage.travel,
  examples: [
    {
      given: {
        linkage: { throw: 0.05, rod: 0.15, offset: 0, topAngle: 0, top: 0.2, travel: 0.1, bottomAngle: Math.PI },
      },
      gives: 0.1,
      within: 1e-12,
    },
  ],
});
