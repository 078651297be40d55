import type { ReactiveController, ReactiveControllerHost } from 'lit';

/** Watches whether an element is near the window; `changed` hears of it. */
export class Near implements ReactiveController {
  isNear = false;
  private readonly host: Element;
  private readonly observer: IntersectionObserver;

  constructor(host: ReactiveControllerHost & Element, changed: (isNear: boolean) => void) {
    this.host = host;
    this.observer = new IntersectionObserver(
      ([entry]) => {
        this.isNear = entry!.isIntersecting;
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
