import type { Cell, Slow, Steps } from '../graph/cell.ts';
import { faultOf } from '../graph/compute.ts';
import { Live } from '../graph/live.ts';
import { explorations } from '../graph/explorations.ts';
import type { Exploration, Ground, Task } from '../graph/explorer.ts';
import { slices } from '../graph/slices.ts';
import { NotSettled, type Snapshot, snapshot } from '../graph/snapshot.ts';
import { type Fault, Impossible } from '../graph/state.ts';
import type { Ask, Tell } from './messages.ts';

/** What a worker does with what it is asked: one task at a time, in slices, so that a stop is heard. */
export function work(cells: ReadonlyMap<string, Cell>, tell: (t: Tell) => void): (ask: Ask) => void {
  const stopped = new Set<number>();

  async function run<T>(
    task: number,
    steps: Steps<T>,
    end: (value: T) => Tell,
    faulted: (error: unknown) => Tell,
  ): Promise<void> {
    try {
      const whole = await slices(
        steps,
        () => stopped.has(task),
        (step) =>
          tell(typeof step === 'number' ? { task, is: 'waiting', done: step } : { task, is: 'coming', ...step }),
      );
      tell(whole ? end(whole.value) : { task, is: 'stopped' });
    } catch (error) {
      tell(faulted(error));
    }
    stopped.delete(task);
  }
  const slowCell = (id: string): Slow => {
    const cell = cells.get(id);
    if (cell?.role !== 'slow') throw new Error(`no slow cell is called "${id}"`);
    return cell;
  };

  return (ask) => {
    const { task } = ask;
    if (ask.do === 'stop') {
      stopped.add(task);
      return;
    }
    if (ask.do === 'explore') {
      const failed = (error: unknown): Tell => ({
        task,
        is: 'fault',
        fault: { at: '', about: '', message: whyNot(error) },
      });
      void run(task, explored(cells, ask.kind, ask.asked), (value) => ({ task, is: 'ready', value }), failed);
      return;
    }
    const cell = slowCell(ask.cell);
    if (ask.do === 'warm') {
      const live = new Live([cell]);
      live.look([cell]);
      live.run();
      tell({ task, is: 'ready', value: null });
      return;
    }
    const given = ask.given as never;
    const steps = ask.do === 'steps' ? cell.steps(given) : cell.parts!.one(given, cell.parts!.list(given)[ask.part]);
    void run(
      task,
      steps,
      (value) => ({ task, is: 'ready', value }),
      (error) => ({ task, is: 'fault', fault: faultOf(error, cell) }),
    );
  };
}

/** Why a what-if cannot be had, in words. */
function whyNot(error: unknown): Fault['message'] {
  if (error instanceof Impossible) return error.phrase;
  if (error instanceof NotSettled && error.state.is === 'fault') return error.state.fault.message;
  return [(error as Error).message.replace(/\.?$/, '.')];
}

function* explored<K extends Exploration>(cells: ReadonlyMap<string, Cell>, kind: K, asked: Task<K>): Steps<unknown> {
  return yield* explorations[kind](groundOf(cells, asked), asked, (id) => cells.get(id)!);
}
/** Builds the same graph, and gives it the same inputs and held values. */
function groundOf(cells: ReadonlyMap<string, Cell>, { inputs, held }: Ground): Snapshot {
  const named = (id: string): Cell => cells.get(id)!;
  const live = new Live(cells.values());
  for (const [id, saved] of Object.entries(inputs)) {
    const cell = named(id);
    if (cell.role === 'input') live.set(cell, cell.kind.restore(saved));
  }
  for (const [id, saved] of Object.entries(held)) live.hold(named(id), named(id).kind.restore(saved));
  live.run();
  return snapshot(live);
}
