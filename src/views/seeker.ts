import type { ReactiveController } from 'lit';
import type { Search } from '../graph/chapter.ts';
import { Probe } from '../graph/probe.ts';
import type { Solution } from '../graph/solve.ts';
import type { Document } from '../notebook/document.ts';
import { groundOf } from '../notebook/sweeps.ts';
import type { Store } from '../notebook/store.ts';
import { type Phrase } from '../units/phrase.ts';
import type { Piece } from './piece.ts';

/** How a search stands. */
export type Seeking =
  | { readonly is: 'waiting'; readonly done: number }
  | { readonly is: 'ready'; readonly solution: Solution }
  | { readonly is: 'fault'; readonly message: Phrase };

/** True if the way from what is varied to what is read holds slow work. Throws NotSettled, Impossible. */
export const isSlowWay = (store: Store, { vary, read }: Search): boolean =>
  new Probe(store.snapshot(), [vary], [read]).isSlow;

/** Looks elsewhere for the setting that brings a slow result to a target. An edit stops it: its answer would be of before. */
export class Seeker implements ReactiveController {
  /** What has been heard of the search; null while there is none. */
  news: Seeking | null = null;
  private readonly host: Piece;
  private halt: (() => void) | null = null;
  /** What stood as the search began. */
  private ground: readonly unknown[] = [];
  private search: Search | null = null;

  constructor(host: Piece) {
    this.host = host;
    host.addController(this);
  }
  hostDisconnected(): void {
    this.stop();
  }

  /** Begins; `found` hears the answer. */
  seek(search: Search, found: (solution: Solution) => void = () => {}): void {
    this.stop();
    const { store } = this.host;
    const { explorer } = store;
    if (!explorer) return;
    this.ground = groundParts(store.document);
    this.search = search;
    this.news = { is: 'waiting', done: 0 };
    const now = store.state(search.read);
    const task = {
      ...groundOf(store),
      ...(now.is === 'ready' ? { known: now.value } : {}),
      vary: search.vary.id,
      read: search.read.id,
      target: search.target,
      range: search.range,
    };
    const stop = explorer.explore('solve', task, (news) => {
      if (news.is === 'coming') return;
      if (news.is !== 'waiting') this.end();
      this.news = news.is === 'ready' ? { is: 'ready', solution: news.result } : news;
      if (news.is === 'ready') found(news.result);
      this.host.requestUpdate();
    });
    const unwatch = store.watchAll(() => this.isOutdated && this.stop());
    this.halt = () => {
      unwatch();
      stop();
    };
    this.host.requestUpdate();
  }
  /** Stops the search, and forgets what it came to. */
  stop(): void {
    this.end();
    this.news = null;
    this.host.requestUpdate();
  }
  private end(): void {
    this.halt?.();
    this.halt = null;
  }
  /** What has been heard of this very search, from the notebook as it stands; null if nothing. */
  of(search: Search): Seeking | null {
    const mine = this.search;
    const isSame = mine && mine.vary === search.vary && mine.read === search.read && mine.target === search.target;
    return isSame && !this.isOutdated ? this.news : null;
  }
  private get isOutdated(): boolean {
    return groundParts(this.host.store.document).some((part, i) => part !== this.ground[i]);
  }
}

/** What the values of the cells are taken from. */
export const groundParts = ({ base, inputs, held, variants, chosen }: Document): readonly unknown[] => [
  base,
  inputs,
  held,
  variants,
  chosen,
];
