import { answersOf, type Chapter, type ChapterFigure } from '../graph/chapter.ts';
import type { Cell } from '../graph/cell.ts';
import type { Store } from '../notebook/store.ts';

/** The drawn figures of a chapter; those of two variants only where there are two. */
export const drawnOf = ({ document, others }: Store, { figures = [] }: Chapter): readonly ChapterFigure[] =>
  figures.filter((figure) => !figure.compares || (others !== null && document.variants.length > 1));

/** The curves among a chapter's answers, each a figure. */
export const curvesOf = (chapter: Chapter): readonly Exclude<Cell, { role: 'input' }>[] =>
  answersOf(chapter).flatMap((c) => (c.role !== 'input' && c.kind.name === 'curve' ? [c] : []));
