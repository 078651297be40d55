import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { onFrame } from './frame.ts';

/** Watches how wide a figure's box is and whether it is near the window: it is drawn only there, and when either changes. */
export class Sight implements ReactiveController {
  private width = 0;
  private isNear = false;
  private box: Element | null = null;
  private readonly host: ReactiveControllerHost & Element;
  private readonly boxOf: () => Element | null;
  private readonly size: ResizeObserver;
  private readonly near: IntersectionObserver;

  constructor(host: ReactiveControllerHost & Element, boxOf: () => Element | null, draw: () => void) {
    this.host = host;
    this.boxOf = boxOf;
    this.size = new ResizeObserver(([entry]) => {
      const width = Math.round(entry!.contentRect.width);
      if (width === 0 || width === this.width) return;
      this.width = width;
      onFrame(draw);
    });
    this.near = new IntersectionObserver(
      ([entry]) => {
        this.isNear = entry!.isIntersecting;
        if (this.isNear) onFrame(draw);
      },
      { rootMargin: '200px' },
    );
    host.addController(this);
  }
  /** The width to draw at, in px; null while there is nothing to draw for. */
  get room(): number | null {
    return this.host.isConnected && this.isNear && this.width > 0 ? this.width : null;
  }
  hostConnected(): void {
    this.near.observe(this.host);
    this.hostUpdated();
  }
  hostUpdated(): void {
    const box = this.boxOf();
    if (box === this.box) return;
    this.size.disconnect();
    this.box = box;
    if (box) this.size.observe(box);
  }
  hostDisconnected(): void {
    this.near.disconnect();
    this.size.disconnect();
    this.box = null;
  }
}
