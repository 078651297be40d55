import type { ReactiveController } from 'lit';
import type { Cell } from '../graph/cell.ts';
import type { Document } from '../notebook/document.ts';
import type { OtherVariants } from '../notebook/other-variants.ts';
import type { Shown } from '../plots/variants.ts';
import { Near } from './near.ts';
import type { Piece } from './piece.ts';

/** A variant as figures show it; null is the notebook without any. */
interface Placed extends Shown {
  readonly id: string | null;
}

/** What a figure looks at in other variants. */
interface Looks {
  readonly cells: () => readonly Cell[];
  /** The one variant it looks at; all of them, if this says nothing. */
  readonly only?: () => string | undefined;
  /** Called when something changed there, or the figure came into sight. */
  readonly changed?: () => void;
}

/** The variants in the order of the notebook, the one that is looked at among them; none where there are none. */
export function placed({ variants, chosen }: Document): readonly Placed[] {
  if (variants.length === 0) return [];
  const all = [...(chosen === null ? [{ id: null, name: 'The notebook' }] : []), ...variants];
  return all.map(({ id, name }, place) => ({ id, name, place }));
}

/** Looks at cells in the other variants while a figure is near the window, and has it drawn anew when they change. */
export class Overlay implements ReactiveController {
  private readonly host: Piece;
  private readonly at: Looks;
  private readonly near: Near;
  private watched: { readonly what: readonly unknown[]; readonly stop: () => void } | null = null;

  constructor(host: Piece, looks: Looks) {
    this.host = host;
    this.at = looks;
    this.near = new Near(host, this.changed);
    host.addController(this);
  }
  /** The element is updated, so that what it looks at is; what it draws elsewhere it draws anew. */
  private readonly changed = (): void => {
    this.host.requestUpdate();
    this.at.changed?.();
  };
  private get source(): OtherVariants | null {
    return this.host.store.others;
  }
  get isNear(): boolean {
    return this.near.isNear;
  }
  /** The variant that is looked at; undefined where there is only one engine. */
  get self(): Placed | undefined {
    const { document } = this.host.store;
    return placed(document).find((v) => v.id === document.chosen);
  }
  /** The others; none while nobody can see the figure. */
  get others(): readonly (Placed & { readonly id: string })[] {
    const { document } = this.host.store;
    if (!this.near.isNear || !this.source) return [];
    return placed(document).flatMap(({ id, ...v }) => (id === null || id === document.chosen ? [] : [{ ...v, id }]));
  }

  hostUpdate(): void {
    const { source } = this;
    const only = this.at.only?.();
    const others = only === undefined ? this.others : this.others.filter((v) => v.id === only);
    const cells = others.length > 0 ? this.at.cells() : [];
    const what = [source, ...others.map((v) => v.id), ...cells];
    const before = this.watched;
    if (before && what.length === before.what.length && what.every((each, i) => each === before.what[i])) return;
    const stops = others.map((v) => source!.watch(v.id, cells, this.changed));
    this.watched = { what, stop: () => stops.forEach((stop) => stop()) };
    before?.stop();
  }
  hostDisconnected(): void {
    this.watched?.stop();
    this.watched = null;
  }
}
