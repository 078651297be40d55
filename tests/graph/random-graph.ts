import fc from 'fast-check';
import { cell, type From, type Input, type Pure, type Slow, slow, type Steps } from '../../src/graph/cell.ts';
import { Live } from '../../src/graph/live.ts';
import { Impossible } from '../../src/graph/state.ts';
import { toy, typed } from './toy.ts';

// A random graph is data: what each cell reads and what it does with it. The cells under test are made from it, and
// so is the naive model, which computes everything anew each time.

const hard = [-7, 7] as const;
export const sum = (xs: readonly number[]): number => xs.reduce((total, x) => total + x, 0);
const ops = {
  sum: (xs, k) => (sum(xs) + k) % 50,
  product: (xs) => xs.reduce((total, x) => total * x, 1) % 97,
  most: (xs) => Math.max(...xs),
  sign: (xs) => Math.sign(sum(xs)),
  quotient: (xs, k) => Math.round((xs[0]! / (xs[1] ?? k)) * 8) / 8, // by nothing: no figure
  limit: (xs, k) => {
    if (xs[0]! > k + 5) throw new Impossible([`over ${k + 5}`], 's0');
    return xs[0]!;
  },
  demand: (xs, k) => {
    if (sum(xs) < k - 12) throw new RangeError(`under ${k - 12}`);
    return sum(xs) % 30;
  },
} satisfies Record<string, (xs: readonly number[], k: number) => number>;

interface Node {
  readonly op: keyof typeof ops;
  readonly from: readonly number[];
  readonly k: number;
  readonly slow: boolean;
}
export interface Plan {
  readonly inputs: readonly { readonly initial: number; readonly hard: boolean }[];
  readonly nodes: readonly Node[];
}
export const apply = ({ op, k }: Node, xs: readonly number[]): number => ops[op](xs, k) + 0; // no negative zero

export const plans = (slowness: number): fc.Arbitrary<Plan> =>
  fc
    .record({
      inputs: fc.array(fc.record({ initial: fc.integer({ min: -6, max: 6 }), hard: fc.boolean() }), {
        minLength: 2,
        maxLength: 8,
      }),
      nodes: fc.array(
        fc.record({
          op: fc.constantFrom(...(Object.keys(ops) as (keyof typeof ops)[])),
          from: fc.array(fc.nat({ max: 999 }), { minLength: 1, maxLength: 4 }),
          k: fc.integer({ min: -4, max: 4 }),
          slow: fc.nat({ max: 99 }).map((n) => n < slowness),
        }),
        { minLength: 3, maxLength: 32 },
      ),
    })
    .map(({ inputs, nodes }) => ({
      inputs,
      // Half of what is read lies close above, which makes deep graphs; the rest lies anywhere above.
      nodes: nodes.map((node, n) => {
        const above = inputs.length + n;
        const from = node.from.map((p) => (p % 2 ? above - 1 - ((p >> 1) % Math.min(above, 4)) : (p >> 1) % above));
        return { ...node, from };
      }),
    }));

export type Made = Input<number> | Pure<number> | Slow<number>;
export function make(plan: Plan): readonly Made[] {
  const cells: Made[] = plan.inputs.map(({ initial, hard: limited }, i) =>
    typed(`i${i}`, initial, limited ? { hard } : {}),
  );
  for (const [n, node] of plan.nodes.entries()) {
    const from: From = Object.fromEntries(node.from.map((s, k) => [`s${k}`, cells[s]!]));
    const values = (given: Readonly<Record<string, unknown>>): number =>
      apply(
        node,
        node.from.map((_, k) => given[`s${k}`] as number),
      );
    const words = { ...toy(`c${n}`), from };
    cells.push(
      node.slow
        ? slow({
            ...words,
            *steps(given): Steps<number> {
              yield 0.5;
              return values(given);
            },
          })
        : cell({ ...words, compute: values }),
    );
  }
  return cells;
}

export type Answer = { readonly value: number } | { readonly at: string; readonly about: string };
/** What the inputs and held cells are set to; NaN is something typed that is no figure. */
export interface Settings {
  readonly inputs: number[];
  readonly held: Map<number, number>;
}

export function naive(plan: Plan, { inputs, held }: Settings): readonly Answer[] {
  const answers: Answer[] = inputs.map((value, i) => {
    const wrong = Number.isNaN(value) || (plan.inputs[i]!.hard && (value < hard[0] || value > hard[1]));
    return wrong ? { at: `i${i}`, about: `i${i}` } : { value };
  });
  for (const [n, node] of plan.nodes.entries()) {
    const id = `c${n}`;
    const here = (): Answer => {
      const kept = held.get(answers.length);
      if (kept !== undefined) return Number.isNaN(kept) ? { at: id, about: id } : { value: kept };
      const read = node.from.map((s) => answers[s]!);
      const fault = read.find((answer) => 'at' in answer);
      if (fault) return fault;
      try {
        const value = apply(
          node,
          read.map((answer) => ('value' in answer ? answer.value : NaN)),
        );
        return Number.isFinite(value) ? { value } : { at: id, about: id };
      } catch (error) {
        const first = node.from[0]!;
        const blamed = first < inputs.length ? `i${first}` : `c${first - inputs.length}`;
        return { at: id, about: error instanceof Impossible ? blamed : id };
      }
    };
    answers.push(here());
  }
  return answers;
}

/** The slots these stand on, and themselves. */
export function under(plan: Plan, slots: Iterable<number>): ReadonlySet<number> {
  const found = new Set<number>();
  const visit = (slot: number): void => {
    if (found.has(slot)) return;
    found.add(slot);
    for (const s of plan.nodes[slot - plan.inputs.length]?.from ?? []) visit(s);
  };
  for (const slot of slots) visit(slot);
  return found;
}

export const answerOf = (live: Live, c: Made): Answer | string => {
  const state = live.state(c);
  if (state.is === 'ready') return { value: state.value };
  return state.is === 'fault' ? { at: state.fault.at, about: state.fault.about } : state.is;
};

type Doing = { readonly do: 'set' | 'hold'; readonly at: number; readonly value: number };
export function settled(plan: Plan, todo: readonly Doing[]): Settings {
  const settings: Settings = { inputs: plan.inputs.map((i) => i.initial), held: new Map() };
  for (const { do: what, at, value } of todo) {
    if (what === 'set') settings.inputs[at % plan.inputs.length] = value;
    else settings.held.set(plan.inputs.length + (at % plan.nodes.length), value);
  }
  return settings;
}
/** A new live graph with these settings, some of them varied. */
export function freshly(
  plan: Plan,
  cells: readonly Made[],
  settings: Settings,
  varied: ReadonlyMap<number, number>,
): Live {
  const live = new Live(cells);
  settings.inputs.forEach((value, i) => live.set(cells[i] as Input<number>, varied.get(i) ?? value));
  for (const [slot, value] of [...settings.held, ...varied])
    if (slot >= plan.inputs.length) live.hold(cells[slot]!, value);
  live.look(cells);
  live.run();
  return live;
}
