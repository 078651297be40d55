import type { CDPSession, Page } from 'playwright-core';

interface Point {
  readonly x: number;
  readonly y: number;
}

/** One finger on the glass. */
export async function finger(page: Page): Promise<{
  /** Down at one place, along to another in steps, and up. `during` is called while it is still down. */
  readonly drag: (from: Point, to: Point, during?: () => Promise<void>) => Promise<void>;
}> {
  const cdp: CDPSession = await page.context().newCDPSession(page);
  const touch = async (type: 'touchStart' | 'touchMove' | 'touchEnd', at?: Point): Promise<void> =>
    void (await cdp.send('Input.dispatchTouchEvent', { type, touchPoints: at ? [at] : [] }));
  const painted = (): Promise<void> =>
    page.evaluate(() => new Promise<void>((done) => requestAnimationFrame(() => requestAnimationFrame(() => done()))));
  return {
    drag: async (from, to, during) => {
      await touch('touchStart', from);
      for (let i = 1; i <= 8; i++) {
        await touch('touchMove', { x: from.x + ((to.x - from.x) * i) / 8, y: from.y + ((to.y - from.y) * i) / 8 });
        await painted();
      }
      await during?.();
      await touch('touchEnd');
      await painted();
    },
  };
}
