import type { Cell } from './cell.ts';

/** Cells in an order in which every cell follows what it reads, each with a slot. */
export interface Graph {
  readonly order: readonly Cell[];
  readonly slotOf: ReadonlyMap<Cell, number>;
  readonly byId: ReadonlyMap<string, Cell>;
  /** For each slot, the names it reads under and the slots they stand for. */
  readonly names: readonly (readonly string[])[];
  readonly sources: readonly (readonly number[])[];
  /** For each slot, whether it may have an answer without the source of the same place. */
  readonly mayLack: readonly (readonly boolean[])[];
  /** 1 for the slots that neither are slow nor stand on anything slow. */
  readonly quick: Uint8Array;
  /** For each slot, the slots that read it. */
  readonly readers: readonly (readonly number[])[];
}

/** Orders the wanted cells, all they stand on and what says how good they are. Throws on two cells of one name and on rings. */
export function compile(wanted: Iterable<Cell>): Graph {
  const order: Cell[] = [];
  const slotOf = new Map<Cell, number>();
  const open = new Set<Cell>();
  const visit = (c: Cell): void => {
    if (slotOf.has(c)) return;
    if (open.has(c)) throw new Error(`"${c.id}" stands on itself`);
    open.add(c);
    if (c.role !== 'input')
      for (const [name, source] of Object.entries(c.from)) {
        // Files that import each other leave a name undefined instead of failing to load.
        if (source === undefined)
          throw new Error(`"${c.id}" reads "${name}", which is not there yet: do two cell files import each other?`);
        visit(source);
      }
    open.delete(c);
    slotOf.set(c, order.push(c) - 1);
  };
  for (const c of wanted) visit(c);
  // No value stands on what its model is good for: they come last, and so do theirs.
  for (const c of order) if (c.role !== 'input' && typeof c.modelError === 'object') visit(c.modelError);

  const byId = new Map<string, Cell>();
  for (const c of order) {
    if (byId.has(c.id)) throw new Error(`two cells are called "${c.id}"`);
    byId.set(c.id, c);
  }
  const names = order.map((c) => (c.role === 'input' ? [] : Object.keys(c.from)));
  const sources = order.map((c) => (c.role === 'input' ? [] : Object.values(c.from).map((s) => slotOf.get(s)!)));
  const readers: number[][] = order.map(() => []);
  sources.forEach((from, reader) => {
    for (const s of new Set(from)) readers[s]!.push(reader);
  });
  const mayLack = order.map((c, i) => names[i]!.map((name) => c.role !== 'input' && c.mayLack.includes(name)));
  const quick = new Uint8Array(order.length);
  order.forEach((c, i) => (quick[i] = c.role !== 'slow' && sources[i]!.every((s) => quick[s] === 1) ? 1 : 0));
  return { order, slotOf, byId, names, sources, mayLack, quick, readers };
}

/** Marks (1) the slots and all that read them, directly or through others; `stop` slots are not reached. */
export function downstream(graph: Graph, slots: Iterable<number>, stop?: (slot: number) => boolean): Uint8Array {
  const marks = new Uint8Array(graph.order.length);
  for (const s of slots) marks[s] = 1;
  for (let i = 0; i < marks.length; i++)
    if (marks[i] === 1) for (const r of graph.readers[i]!) if (!stop?.(r)) marks[r] = 1;
  return marks;
}

/** Marks (1) the slots and all they stand on; `stop` slots stand on nothing. */
export function upstream(graph: Graph, slots: Iterable<number>, stop?: (slot: number) => boolean): Uint8Array {
  const marks = new Uint8Array(graph.order.length);
  for (const s of slots) marks[s] = 1;
  for (let i = marks.length - 1; i >= 0; i--)
    if (marks[i] === 1 && !stop?.(i)) for (const s of graph.sources[i]!) marks[s] = 1;
  return marks;
}
