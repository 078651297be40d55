import type { Cell, ValueOf } from '../graph/cell.ts';
import { Live } from '../graph/live.ts';
import type { Memory } from '../graph/memory.ts';
import type { Runner } from '../graph/runner.ts';
import { type Snapshot, snapshot } from '../graph/snapshot.ts';
import type { State } from '../graph/state.ts';
import type { Document, Variant } from './document.ts';
import { giveValues } from './document-values.ts';
import type { OtherVariants } from './other-variants.ts';
import type { Store } from './store.ts';

interface Other {
  readonly live: Live;
  readonly watchers: Map<Cell, Set<() => void>>;
  /** What its values were taken from last. */
  of: readonly unknown[];
  revision: number;
}
interface Options {
  readonly runner?: Runner;
  /** What the chosen variant's slow work comes to is known here as well, and the other way round. */
  readonly memory: Memory;
}

/**
 * A live graph for each variant that is not chosen, made when somebody first looks at it. Only what is looked at is kept
 * up to date, and its slow work goes behind that of the chosen variant.
 */
export class Others implements OtherVariants {
  private readonly store: Store;
  private readonly options: Options;
  private readonly others = new Map<string, Other>();
  private readonly hearers = new Set<() => void>();

  constructor(store: Store, options: Options) {
    this.store = store;
    this.options = options;
    store.watchAll(() => this.refresh());
  }

  get list(): readonly Variant[] {
    const { variants, chosen } = this.store.document;
    return variants.filter((v) => v.id !== chosen);
  }
  get busy(): boolean {
    return [...this.others.values()].some(({ live }) => live.busy);
  }
  state<C extends Cell>(variant: string, cell: C): State<ValueOf<C>> {
    return this.upToDate(variant).live.state(cell);
  }
  snapshot(variant: string): Snapshot {
    return snapshot(this.upToDate(variant).live);
  }
  revision(variant: string): number {
    return this.upToDate(variant).revision;
  }
  watch(variant: string, cells: readonly Cell[], call: () => void): () => void {
    const other = this.upToDate(variant);
    const release = other.live.look(cells);
    const mine = (): void => call(); // who watches twice with one call stops but once
    for (const c of cells) other.watchers.set(c, (other.watchers.get(c) ?? new Set()).add(mine));
    this.tell(other, other.live.run());
    return () => {
      release();
      for (const c of cells) other.watchers.get(c)?.delete(mine);
    };
  }
  watchAll(call: () => void): () => void {
    this.hearers.add(call);
    return () => void this.hearers.delete(call);
  }

  private refresh(): void {
    const { variants } = this.store.document;
    for (const [id, other] of this.others) {
      if (variants.every((v) => v.id !== id)) {
        other.live.close();
        this.others.delete(id);
      } else if ([...other.watchers.values()].some((calls) => calls.size > 0)) this.upToDate(id);
    }
  }
  private upToDate(variant: string): Other {
    const { document, catalogue } = this.store;
    let other = this.others.get(variant);
    if (!other) {
      const live: Live = new Live(catalogue.cells.values(), {
        ...this.options,
        isOther: true,
        onNews: (changed) => this.tell(made, changed),
      });
      const made: Other = { live, watchers: new Map(), of: [], revision: 0 };
      this.others.set(variant, (other = made));
    }
    const of = partsOf(document, variant);
    if (of.every((part, i) => part === other.of[i])) return other;
    other.of = of;
    giveValues(other.live, catalogue.cells.values(), document, variant);
    this.tell(other, other.live.run());
    return other;
  }
  private tell(other: Other, changed: readonly Cell[]): void {
    if (changed.length === 0) return;
    other.revision++;
    const calls = new Set(changed.flatMap((c) => [...(other.watchers.get(c) ?? [])]));
    for (const call of calls) call();
    for (const call of this.hearers) call();
  }
}

/** What a variant's values are taken from: as long as these are the same, so are they. */
const partsOf = ({ base, inputs, held, variants }: Document, variant: string): readonly unknown[] => [
  base,
  inputs,
  held,
  variants.find((v) => v.id === variant),
];
