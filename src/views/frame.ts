const draws = new Set<() => void>();
const afters = new Set<() => void>();
let due = 0;

/** Runs once in the next frame, however often it is asked for until then. */
export function onFrame(draw: () => void): void {
  draws.add(draw);
  due ||= requestAnimationFrame(() => void flush());
}
/** Runs when everything asked for in the next frame has been drawn. */
export function afterFrame(call: () => void): void {
  afters.add(call);
  due ||= requestAnimationFrame(() => void flush());
}

/** A figure's data is renewed, its element updated (in microtasks), and its paths rewritten: all before this frame is painted. */
async function flush(): Promise<void> {
  for (let pass = 0; pass < 5 && draws.size > 0; pass++) {
    for (const draw of Array.from(draws)) {
      draws.delete(draw);
      draw();
    }
    for (let tick = 0; tick < 6; tick++) await Promise.resolve();
  }
  due = 0;
  if (draws.size > 0) due = requestAnimationFrame(() => void flush());
  for (const call of Array.from(afters)) {
    afters.delete(call);
    call();
  }
}
