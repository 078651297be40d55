import { cell } from '../../src/graph/cell.ts';
import { structure } from '../../src/graph/kind.ts';
import { Impossible } from '../../src/graph/state.ts';
import type { CycleRecord } from '../../src/physics/cycle/record.ts';
import { common } from '../../src/references.ts';
import { engineAtSpeed } from './engine-at-speed.ts';

export const cycleRecord = cell({
  id: 'cycleRecord',
  label: 'Pipes and valves through one cycle',
  note: 'Pressures along runner and primary, and what flows through the valves, every second crank degree.',
  kind: { ...structure<CycleRecord>(), same: Object.is },
  from: { engineAtSpeed },
  source: common('read off the cycle'),
  formula: 'one more cycle of engineAtSpeed, written down',
  compute: ({ engineAtSpeed: { record } }) => {
    if (!record) throw new Impossible(['The first look keeps no record.']);
    return record;
  },
});
