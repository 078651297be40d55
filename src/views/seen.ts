import type { ReactiveController, ReactiveControllerHost } from 'lit';

/** Watches whether a part of an element is in the window itself; `turned` hears of it. */
export class Seen implements ReactiveController {
  isSeen = false;
  private part: Element | null = null;
  private readonly partOf: () => Element | null;
  private readonly observer: IntersectionObserver;

  constructor(host: ReactiveControllerHost, partOf: () => Element | null, turned: () => void) {
    this.partOf = partOf;
    this.observer = new IntersectionObserver(
      (entries) => {
        this.isSeen = entries.at(-1)!.isIntersecting; // the last word of several
        turned();
      },
      { rootMargin: '-1px' }, // what only touches the window's edge is not seen
    );
    host.addController(this);
  }
  hostUpdated(): void {
    const part = this.partOf();
    if (part === this.part) return;
    this.observer.disconnect();
    this.part = part;
    if (part) this.observer.observe(part);
    else this.isSeen = false;
  }
  hostDisconnected(): void {
    this.observer.disconnect();
    this.part = null;
    this.isSeen = false;
  }
}
