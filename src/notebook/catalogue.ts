import type { Cell } from '../graph/cell.ts';
import type { Chapter, CycleView, Opening } from '../graph/chapter.ts';

/** What a notebook can hold: the cells by id, and the chapters in the order of the page. */
export interface Catalogue {
  readonly cells: ReadonlyMap<string, Cell>;
  readonly chapters: readonly Chapter[];
  /** The first screen of the page; a notebook without a page needs none. */
  readonly opening?: Opening;
  /** What the plate of the first screen grows into when the crank is turned. */
  readonly cycle?: CycleView;
  /** What variants are told apart by, besides the pinned answers. */
  readonly compared?: readonly Cell[];
}

/** The cell of an id, or of a name it had in an earlier release. */
export function cellNamed({ cells }: Catalogue, id: string): Cell | undefined {
  return cells.get(id) ?? [...cells.values()].find((c) => c.formerly?.includes(id));
}
