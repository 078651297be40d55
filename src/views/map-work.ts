import type { Explorer } from '../graph/explorer.ts';
import type { MapResult } from '../graph/map.ts';
import { slices } from '../graph/slices.ts';
import type { Snapshot } from '../graph/snapshot.ts';
import type { MapItem } from '../notebook/document.ts';
import type { MapFound, MapQuestion } from '../notebook/maps.ts';
import { mapNow, mapTaskOf } from '../notebook/maps.ts';
import type { Store } from '../notebook/store.ts';
import type { Phrase } from '../units/phrase.ts';

/** The last things worked out, by key: what was there a step ago comes back at once. */
class Kept<T> {
  private readonly all = new Map<string, T>();
  private readonly most: number;
  constructor(most: number) {
    this.most = most;
  }
  get(key: string): T | undefined {
    return this.all.get(key);
  }
  keep(key: string, value: T): void {
    this.all.delete(key);
    this.all.set(key, value);
    if (this.all.size > this.most) this.all.delete(this.all.keys().next().value!);
  }
}

/** Shared by all maps: one that was removed and comes back is there at once as well. */
const quick = new Kept<MapFound>(24);
const slow = new Kept<MapResult>(24);

const atOnce = 8; // ms of a frame

/**
 * Quick maps: what fits in a part of a frame is there at once, the rest follows in slices. One that has begun is
 * brought to its end, or a hand that keeps moving would never see any.
 */
export class QuickMaps {
  /** The last one that was brought to its end, while hands may have moved on. */
  last: { readonly key: string; readonly item: MapItem; readonly found: MapFound } | null = null;
  private running = false;
  private readonly heard: () => void;
  /** `heard` is called when another map can be had. */
  constructor(heard: () => void) {
    this.heard = heard;
  }
  /** The map of a key, or null: it is being worked out, or waits for another one. */
  find(key: string, at: Snapshot, question: MapQuestion): MapFound | null {
    const known = quick.get(key);
    if (known || this.running) return known ?? null;
    const steps = mapNow(at, question);
    const until = performance.now() + atOnce;
    while (performance.now() < until) {
      const step = steps.next();
      if (!step.done) continue;
      quick.keep(key, step.value);
      return step.value;
    }
    this.running = true;
    void slices(
      steps,
      () => false,
      () => {},
      atOnce,
    )
      .finally(() => (this.running = false))
      .then((found) => {
        quick.keep(key, found!.value);
        this.last = { key, item: question.item, found: found!.value };
        this.heard();
      });
    return null;
  }
}

/** How far a slow map is. */
export interface Progress {
  readonly points: number;
  readonly of: number;
  /** s, about; null while there is no telling. */
  readonly left: number | null;
}

/** Slow maps: one is worked on in the background; what stood when it was stopped is taken up again. */
export class SlowMaps {
  private job: { readonly key: string; readonly stop: () => void } | null = null;
  private left: number | null = null;
  private readonly heard: (fault: Phrase | null) => void;
  constructor(heard: (fault: Phrase | null) => void) {
    this.heard = heard;
  }
  /** What stands of the map of a key. */
  find(key: string): MapResult | undefined {
    return slow.get(key);
  }
  isAt(key: string): boolean {
    return this.job?.key === key;
  }
  progress(key: string, of: number): Progress {
    const stands = slow.get(key)?.stands;
    const points = stands ? stands.reduce((sum, is) => sum + is, 0) : 0;
    return { points, of, left: this.isAt(key) ? this.left : null };
  }
  stop(): void {
    this.job?.stop();
    this.job = null;
  }
  start(key: string, explorer: Explorer, store: Store, question: MapQuestion): void {
    if (this.isAt(key)) return;
    this.stop();
    const clock = new Clock();
    this.left = null;
    const stop = explorer.explore('map', mapTaskOf(store, question, slow.get(key)), (news) => {
      if (news.is === 'waiting') return;
      if (news.is === 'fault') {
        this.job = null;
        return this.heard(news.message);
      }
      slow.keep(key, news.result);
      if (news.is === 'ready') this.job = null;
      else this.left = clock.left(news.result.stands);
      this.heard(null);
    });
    this.job = { key, stop };
  }
}

/** Tells from how fast points came how long the rest will take. */
class Clock {
  private first: { readonly points: number; readonly at: number } | null = null;
  /** s; null before a few points have come. */
  left(stands: Uint8Array): number | null {
    const now = performance.now();
    const points = stands.reduce((sum, is) => sum + is, 0);
    this.first ??= { points, at: now };
    const came = points - this.first.points;
    return came < 2 ? null : ((now - this.first.at) / 1000 / came) * (stands.length - points);
  }
}

/** "About 20 s more": rounded, since it is a guess. */
export function about(seconds: number): string {
  if (seconds > 90) return `about ${Math.round(seconds / 60)} min more`;
  return `about ${Math.max(5, Math.round(seconds / 5) * 5)} s more`;
}
