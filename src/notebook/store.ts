import type { Draft } from 'immer';
import type { Cell, Input, Slow, ValueOf } from '../graph/cell.ts';
import type { Explorer } from '../graph/explorer.ts';
import type { Json } from '../graph/kind.ts';
import { Live } from '../graph/live.ts';
import type { Memory } from '../graph/memory.ts';
import { type MoverOf, moverOf, Probe } from '../graph/probe.ts';
import type { Runner } from '../graph/runner.ts';
import { type Snapshot, snapshot } from '../graph/snapshot.ts';
import { type Spread, spreads } from '../graph/spread.ts';
import { Impossible, type State } from '../graph/state.ts';
import { say } from '../units/phrase.ts';
import type { System } from '../units/quantity.ts';
import { tidy } from '../units/unit.ts';
import { baseValue } from './base.ts';
import type { Catalogue } from './catalogue.ts';
import { type Document, layered } from './document.ts';
import { giveValues } from './document-values.ts';
import { type Edit, History, type Open } from './history.ts';
import type { OtherVariants } from './other-variants.ts';

interface Options {
  readonly catalogue: Catalogue;
  readonly open: Open;
  readonly runner?: Runner;
  readonly explorer?: Explorer;
  readonly memory?: Memory;
}
type Layer = Draft<Pick<Document, 'inputs' | 'held'>>;

/** The open notebook: its document with undo, and the live values of the variant that is looked at. */
export class Store {
  readonly catalogue: Catalogue;
  readonly live: Live;
  /** Where what-ifs go that take too long to wait for; null where there is no such place. */
  readonly explorer: Explorer | null;
  /** The variants that are not chosen; null where nobody shows them. */
  others: OtherVariants | null = null;
  /** Counts what the page has to show anew. */
  revision = 0;
  private readonly history: History;
  private readonly watchers = new Map<Cell, Set<() => void>>();
  private readonly documentWatchers = new Set<() => void>();
  private readonly announcers = new Set<(what: string) => void>();
  private readonly drafts = new Map<Input, string>();
  private look: readonly unknown[] = [];
  private blamed: ReadonlySet<Cell> = new Set();
  private taken: Snapshot | null = null; // of this revision, once it was asked for
  private spreads = new Map<Cell, Spread | null>();

  constructor({ catalogue, open, runner, explorer, memory }: Options) {
    this.catalogue = catalogue;
    this.explorer = explorer ?? null;
    this.history = new History(open);
    this.live = new Live(catalogue.cells.values(), {
      ...(runner ? { runner } : {}),
      ...(memory ? { memory } : {}),
      onNews: (changed) => this.tell(changed),
    });
    this.apply();
    this.live.run();
    this.isLookChanged(); // what it looks like from here on
  }

  get document(): Document {
    return this.history.document;
  }
  /** The document as it was opened: where reset goes back to. */
  get opened(): Document {
    return this.history.opened;
  }
  get canUndo(): string | null {
    return this.history.undoWhat;
  }
  get canRedo(): string | null {
    return this.history.redoWhat;
  }
  get system(): System {
    return this.document.units.system;
  }
  systemOf(cell: Cell): System {
    return this.document.units.fields[cell.id] ?? this.system;
  }

  /** Where a cell stands; what is quick and nobody looks at is worked out when it is asked for. */
  state<C extends Cell>(cell: C): State<ValueOf<C>> {
    const slot = this.live.graph.slotOf.get(cell)!;
    return this.live.isStale(slot) ? (this.snapshot().state(slot) as State<ValueOf<C>>) : this.live.state(cell);
  }
  /** What was typed into a field and cannot be read, with its sentence. */
  draftFault(input: Input): string | undefined {
    return this.drafts.get(input);
  }
  /** A fault that began elsewhere but is about this cell's value, as a sentence: said at its field. */
  faultAbout(cell: Cell): string | null {
    for (const other of this.catalogue.cells.values()) {
      const state = this.live.state(other);
      if (state.is === 'fault' && state.fault.about === cell.id) return say(state.fault.message, this.systemOf(cell));
    }
    return null;
  }
  /** The value an input or held cell had when the notebook was opened, in the variant looked at. */
  startValue(cell: Cell): Json | undefined {
    const { inputs, held } = layered(this.opened, this.document.chosen);
    return cell.role === 'input' ? (inputs[cell.id] ?? baseValue(this.opened.base, cell.id)) : held[cell.id];
  }
  isChanged(cell: Cell): boolean {
    const { inputs, held } = layered(this.document);
    const now = cell.role === 'input' ? (inputs[cell.id] ?? baseValue(this.document.base, cell.id)) : held[cell.id];
    return JSON.stringify(now) !== JSON.stringify(this.startValue(cell));
  }

  /** Sets an input, re-holds a held cell, or moves what a derived cell is moved by. Throws Impossible if it cannot. */
  put(cell: Cell, value: unknown, edit: Edit, mover = 0): void {
    if (cell.role === 'input') return this.set([[cell, value]], edit);
    if (this.live.isHeld(cell)) return this.hold(cell, value, edit);
    const pick: MoverOf = (at, c) => (c === cell ? cell.movedBy[mover] : moverOf(at, c));
    const probe = new Probe(this.snapshot(), [cell], [cell], pick);
    if (!probe.movedTo(0)) throw new Impossible([`${cell.label} is computed: hold it to set it.`]);
    probe.put(0, value);
    probe.run();
    this.set(
      probe.movedTo(0)!.map(({ input, value: to }) => [input as Input, tidy(to)]),
      edit,
    );
  }
  /** The same for several cells at once, as one step. Throws Impossible if they cannot be put together. */
  putAll(changes: readonly { readonly cell: Cell; readonly value: unknown }[], edit: Edit): void {
    const cells = changes.map(({ cell }) => cell);
    const probe = new Probe(this.snapshot(), cells, cells);
    changes.forEach(({ value }, k) => probe.put(k, value));
    probe.run();
    const inputs: (readonly [Input, unknown])[] = [];
    const held: (readonly [Cell, unknown])[] = [];
    changes.forEach(({ cell, value }, k) => {
      probe.get(k); // run complains only where nothing has an answer
      const moved = probe.movedTo(k);
      if (moved) inputs.push(...moved.map(({ input, value: to }) => [input as Input, tidy(to)] as const));
      else if (cell.role === 'input') inputs.push([cell, value]);
      else if (this.live.isHeld(cell)) held.push([cell, value]);
      else throw new Impossible([`${cell.label} is computed: hold it to set it.`]);
    });
    this.write(inputs, held, edit);
  }
  set(values: readonly (readonly [Input, unknown])[], edit: Edit): void {
    this.write(values, [], edit);
  }
  hold(cell: Cell, value: unknown, edit: Edit): void {
    this.write([], [[cell, value]], edit);
  }
  private write(
    inputs: readonly (readonly [Input, unknown])[],
    held: readonly (readonly [Cell, unknown])[],
    edit: Edit,
  ): void {
    for (const [input] of inputs) this.drafts.delete(input);
    this.edit(edit, (layer, under) => {
      // Each layer holds only what differs from what lies under it.
      const keep = (own: Layer['inputs'], id: string, saved: Json, below: Json | undefined): void => {
        if (JSON.stringify(saved) === JSON.stringify(below)) delete own[id];
        else own[id] = saved as Draft<Json>;
      };
      for (const [input, value] of inputs) {
        const below = under.inputs[input.id] ?? baseValue(this.document.base, input.id);
        keep(layer.inputs, input.id, input.kind.save(value), below);
      }
      for (const [cell, value] of held) keep(layer.held, cell.id, cell.kind.save(value), under.held[cell.id]);
    });
  }
  letGo(cell: Cell, edit: Edit): void {
    this.edit(edit, (layer, under) => {
      if (cell.id in under.held) layer.held[cell.id] = null;
      else delete layer.held[cell.id];
    });
  }
  /** Back to where the notebook was opened: one field. */
  reset(cell: Cell, edit: Edit): void {
    const start = this.startValue(cell);
    if (cell.role === 'input') this.set([[cell, cell.kind.restore(start)]], edit);
    else if (start === undefined) this.letGo(cell, edit);
    else this.hold(cell, cell.kind.restore(start), edit);
  }
  /** A change of the document that is not a value of a cell: title, units, tolerances, page, pins. */
  change(edit: Edit, recipe: (draft: Draft<Document>) => void): void {
    if (this.history.edit((draft) => recipe(draft.document), edit)) this.refresh(edit);
  }
  /** Everything back to where the notebook was opened, as one step. */
  resetAll(): void {
    this.drafts.clear();
    const edit: Edit = { what: 'Reset everything', announce: true };
    this.history.edit((draft) => void (draft.document = this.opened as Draft<Document>), edit);
    this.refresh(edit);
  }
  /** Opens another document; one step back returns to this one. */
  open(document: Document, what: string): void {
    this.drafts.clear();
    const edit: Edit = { what, announce: true };
    this.history.edit((draft) => {
      draft.document = document as Draft<Document>;
      draft.opened = document as Draft<Document>;
    }, edit);
    this.refresh(edit);
  }
  /** Another notebook, kept in another place: no step leads back, or what it took back would be saved there. */
  renew(open: Open): void {
    this.drafts.clear();
    this.history.restart(open);
    this.refresh();
  }
  choose(variant: string | null): void {
    this.drafts.clear();
    this.history.choose(variant);
    this.refresh();
  }
  undo(): { readonly place: string | null; readonly what: string } | null {
    return this.travelled(this.history.undo());
  }
  redo(): { readonly place: string | null; readonly what: string } | null {
    return this.travelled(this.history.redo());
  }
  private travelled<T>(step: T): T {
    if (step) {
      this.drafts.clear();
      this.refresh();
    }
    return step;
  }

  /** Something typed that is no value: its readers wait for the field, nothing is written. Null: it is one again. */
  draft(input: Input, sentence: string | null): void {
    if (sentence === null) this.drafts.delete(input);
    else this.drafts.set(input, sentence);
    this.refresh();
  }

  /** Stops a slow cell's work, or lets it go on. */
  stop(cell: Slow): void {
    this.tell(this.live.stop(cell));
  }
  resume(cell: Slow): void {
    this.tell(this.live.resume(cell));
  }

  snapshot(): Snapshot {
    return (this.taken ??= snapshot(this.live));
  }
  /** The ± of a result from the document's tolerances; null where it has none to give. */
  spread(cell: Cell): Spread | null {
    const known = this.spreads;
    if (!known.has(cell)) {
      // All that is shown shares one look at each tolerance.
      const shown = [...this.watchers].filter(([c, calls]) => calls.size > 0 && hasSpread(c)).map(([c]) => c);
      const reads = known.size === 0 && shown.includes(cell) ? shown : [cell];
      const found = spreads(this.snapshot(), reads, this.tolerances());
      for (const read of reads) known.set(read, found.get(read) ?? null);
    }
    return known.get(cell)!;
  }
  /** The ± of the document by their cells, SI. */
  tolerances(): ReadonlyMap<Cell, number> {
    const { cells } = this.catalogue;
    return new Map(Object.entries(this.document.tolerances).map(([id, tolerance]) => [cells.get(id)!, tolerance]));
  }

  /** Calls back after a cell's state changed. */
  watch(cells: Iterable<Cell>, call: () => void): () => void {
    const mine = [...cells];
    const release = this.live.look(mine);
    for (const c of mine) {
      const set = this.watchers.get(c) ?? new Set();
      this.watchers.set(c, set.add(call));
    }
    // What nobody looked at before has to be computed now.
    this.tell(this.live.run());
    return () => {
      release();
      for (const c of mine) this.watchers.get(c)?.delete(call);
    };
  }
  /** Calls back with what was done, when it is worth a line. */
  watchAnnounced(call: (what: string) => void): () => void {
    this.announcers.add(call);
    return () => void this.announcers.delete(call);
  }
  /** Calls back after anything changed. */
  watchAll(call: () => void): () => void {
    this.documentWatchers.add(call);
    return () => void this.documentWatchers.delete(call);
  }

  private edit(edit: Edit, recipe: (layer: Layer, under: Pick<Document, 'inputs' | 'held'>) => void): void {
    const nothing = { inputs: {}, held: {} };
    this.history.edit(({ document: draft }) => {
      const variant = draft.variants.find((v) => v.id === draft.chosen);
      recipe(variant ?? draft, variant ? this.document : nothing);
    }, edit);
    this.refresh(edit);
  }
  private refresh(edit?: Edit): void {
    this.apply();
    this.tell(this.live.run(), true);
    if (edit?.announce) for (const call of this.announcers) call(edit.what);
  }
  /** Gives the live graph what the document says. */
  private apply(): void {
    giveValues(this.live, this.catalogue.cells.values(), this.document);
    for (const [cell, draft] of this.drafts) this.live.fail(cell, { at: cell.id, about: cell.id, message: [draft] });
  }
  /** True if units, ±, the starting values or the variant changed: every cell is shown anew, whatever its own state. */
  private isLookChanged(): boolean {
    const { units, tolerances, chosen } = this.document;
    const now = [units, tolerances, chosen, this.opened];
    const before = this.look;
    this.look = now;
    return now.some((part, i) => part !== before[i]);
  }
  /** Cells that others began or ceased to blame: it is said at their fields, though they did not change themselves. */
  private blamedAnew(changed: readonly Cell[]): readonly Cell[] {
    if (changed.length === 0) return [];
    const { cells } = this.catalogue;
    const before = this.blamed;
    const faults = Array.from(cells.values(), (c) => this.live.state(c)).filter((state) => state.is === 'fault');
    this.blamed = new Set(faults.flatMap((state) => cells.get(state.fault.about) ?? []));
    return [...new Set([...before, ...this.blamed])];
  }
  private tell(changed: readonly Cell[], always = false): void {
    if (changed.length === 0 && !always) return;
    this.revision++;
    this.taken = null;
    this.spreads = new Map();
    const all = this.isLookChanged();
    const shown = all ? this.watchers.keys() : [...changed, ...this.blamedAnew(changed)];
    const calls = new Set(Array.from(shown, (c) => [...(this.watchers.get(c) ?? [])]).flat());
    for (const call of calls) call();
    for (const call of this.documentWatchers) call();
  }
}

const hasSpread = (c: Cell): boolean => c.role !== 'input' && (c.kind.name === 'scalar' || c.kind.name === 'verdict');
