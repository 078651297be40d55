import type { Cell, ValueOf } from '../graph/cell.ts';
import type { Snapshot } from '../graph/snapshot.ts';
import type { State } from '../graph/state.ts';
import type { Variant } from './document.ts';

/** The variants that are not the chosen one, with values of their own. */
export interface OtherVariants {
  /** In the order of the document. */
  readonly list: readonly Variant[];
  /** True while work is being done that somebody waits for. */
  readonly busy: boolean;
  /** Where a cell stands in a variant; only what is watched there is kept up to date. */
  state<C extends Cell>(variant: string, cell: C): State<ValueOf<C>>;
  /** The values of a variant at this moment, for what-ifs. */
  snapshot(variant: string): Snapshot;
  /** Counts what has changed in it. */
  revision(variant: string): number;
  /** Calls back after one of these cells changed in the variant. */
  watch(variant: string, cells: readonly Cell[], call: () => void): () => void;
  /** Calls back after anything was heard of any of them. */
  watchAll(call: () => void): () => void;
}
