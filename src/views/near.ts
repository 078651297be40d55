import type { ReactiveController, ReactiveControllerHost } from 'lit';

/** Watches whether an element is near the window; `changed` hears of it. */
export class Near implements ReactiveController {
  isNear = false;
  private readonly host: Element;
  private readonly observer: IntersectionObserver;

  constructor(host: ReactiveControllerHost & Element, changed: (isNear: boolean) => void) {
    this.host = host;
    this.observer = new IntersectionObserver(
      (entries) => {
        this.isNear = entries.at(-1)!.isIntersecting; // the last word of several
        changed(this.isNear);
      },
      { rootMargin: '200px' },
    );
    host.addController(this);
  }
  hostConnected(): void {
    this.observer.observe(this.host);
  }
  hostDisconnected(): void {
    this.observer.disconnect();
    this.isNear = false;
  }
}
