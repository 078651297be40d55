import type { Cell } from '../src/graph/cell.ts';
import type { Chapter } from '../src/graph/chapter.ts';

type Room = Readonly<Record<string, unknown>>;
const files = Object.entries(import.meta.glob<Room>(['./*/*.ts', '!./*/*.work.ts'], { eager: true }));
const things = files.flatMap(([path, file]) =>
  Object.values(file).map((thing) => ({ room: path.split('/')[1]!, thing })),
);

const isCell = (thing: unknown): thing is Cell => typeof thing === 'object' && thing !== null && 'role' in thing;
const isChapter = (thing: unknown): thing is Chapter =>
  typeof thing === 'object' && thing !== null && 'answers' in thing;

/** Every cell, by id. */
export const catalogue: ReadonlyMap<string, Cell> = new Map(
  things.flatMap(({ thing }) => (isCell(thing) ? [[thing.id, thing] as const] : [])),
);

/** The chapter whose room a cell is declared in, by the cell's id. */
export const roomOf: ReadonlyMap<string, string> = new Map(
  things.flatMap(({ room, thing }) => (isCell(thing) ? [[thing.id, room] as const] : [])),
);

/** The chapters in the order of the page. */
export const chapters: readonly Chapter[] = things
  .flatMap(({ thing }) => (isChapter(thing) ? [thing] : []))
  .toSorted((a, b) => a.number - b.number);

export { compared } from './opening/compared.ts';
export { cycle } from './opening/cycle.ts';
export { opening } from './opening/opening.ts';
