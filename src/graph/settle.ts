import type { Pure } from './cell.ts';
import type { Graph } from './compile.ts';
import { faultOf, unsound } from './compute.ts';
import type { Fault, State } from './state.ts';

type Lack = Extract<State, { readonly is: 'fault' | 'waiting' }>;
/** What the sources of a cell let it come to; `lacks` is the state of one it may do without and has to. */
type Got = ({ readonly is: 'ready' } | Exclude<State, { readonly is: 'ready' }>) & { readonly lacks?: Lack };
const ready: Got = { is: 'ready' };

/** Writes what a slot reads into `given`, and says what it can come to: the first fault, or the least settled. */
export function gather(
  { names, sources, mayLack }: Graph,
  stateOf: (slot: number) => State,
  i: number,
  given: Record<string, unknown>,
): Got {
  const from = sources[i]!;
  let got: Got = ready;
  let lacks: Lack | undefined;
  for (let k = 0; k < from.length; k++) {
    const name = names[i]![k]!;
    const source = stateOf(from[k]!);
    const isLack = source.is === 'fault' || source.is === 'waiting';
    if (isLack && mayLack[i]![k]) {
      given[name] = undefined;
      lacks ??= source;
    } else if (source.is === 'fault') return source;
    else if (source.is === 'waiting') got = source;
    else {
      given[name] = source.value;
      if (source.is === 'coming' && (got.is === 'ready' || (got.is === 'coming' && source.done < got.done)))
        got = source;
    }
  }
  return lacks && got.is !== 'waiting' ? { ...got, lacks } : got;
}

/** The state of a quick cell from what it is given; `got` says whether that is settled. */
export function computeNow(c: Pure, given: object, got: Got, last: unknown): State {
  // That a provisional value leads nowhere does not mean that the value will.
  const none = (fault: Fault): State => {
    if (got.lacks) return { ...got.lacks, last };
    return got.is === 'coming' ? { is: 'waiting', last, done: got.done } : { is: 'fault', last, fault };
  };
  try {
    const value = c.compute(given as never);
    if (!c.kind.sound(value)) return none(unsound(c));
    return got.is === 'coming' ? { is: 'coming', value, done: got.done } : { is: 'ready', value };
  } catch (error) {
    return none(faultOf(error, c));
  }
}
