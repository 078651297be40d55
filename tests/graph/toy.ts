import { input, type Input } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { ratio } from '../../src/units/quantity.ts';

/** What every toy cell with a plain number needs, so that a test shows only what it is about. */
export const toy = <const I extends string>(id: I) => ({
  id,
  label: id,
  note: '',
  kind: scalar(ratio),
  source: common('a toy'),
  formula: '',
});

export const typed = (id: string, initial: number, more: Partial<Input<number>> = {}): Input<number> =>
  input({ id, label: id, note: '', kind: scalar(ratio), initial, ...more });
