import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { onFrame } from './frame.ts';
import { Near } from './near.ts';

/** Watches how wide a figure's box is and whether it is near the window: it is drawn only there, and when either changes. */
export class Sight implements ReactiveController {
  private width = 0;
  private box: Element | null = null;
  private readonly near: Near;
  private readonly boxOf: () => Element | null;
  private readonly size: ResizeObserver;

  constructor(host: ReactiveControllerHost & Element, boxOf: () => Element | null, draw: () => void) {
    this.boxOf = boxOf;
    this.near = new Near(host, (isNear) => isNear && onFrame(draw));
    this.size = new ResizeObserver(([entry]) => {
      const width = Math.round(entry!.contentRect.width);
      if (width === 0 || width === this.width) return;
      this.width = width;
      onFrame(draw);
    });
    host.addController(this);
  }
  /** The width to draw at, in px; null while there is nothing to draw for. */
  get room(): number | null {
    return this.near.isNear && this.width > 0 ? this.width : null;
  }
  hostConnected(): void {
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
    this.size.disconnect();
    this.box = null;
  }
}
