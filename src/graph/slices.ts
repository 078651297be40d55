import { type Provisional, type Steps } from './cell.ts';

/**
 * Runs steps in slices of some milliseconds, letting messages in between them. Resolves null when told to stop.
 * `report` hears of the share done after each slice, and at once of a provisional value.
 */
export async function slices<T>(
  steps: Steps<T>,
  stopped: () => boolean,
  report: (step: number | Provisional<T>) => void,
  slice = 12,
): Promise<{ readonly value: T } | null> {
  let until = performance.now() + slice;
  for (;;) {
    const step = steps.next();
    if (step.done) return { value: step.value };
    const due = performance.now() >= until;
    if (due || typeof step.value !== 'number') report(step.value);
    if (!due) continue;
    await breathe();
    if (stopped()) {
      steps.return(undefined as never);
      return null;
    }
    until = performance.now() + slice;
  }
}

/** One turn of the message loop; a timer would be held to 4 ms. */
export const breathe = (): Promise<void> =>
  new Promise((done) => {
    const { port1, port2 } = new MessageChannel();
    port1.addEventListener('message', () => {
      port1.close();
      done();
    });
    port1.start();
    port2.postMessage(null);
  });
