import { expect, expectTypeOf, it } from 'vitest';
import { balance } from '../../src/graph/balance.ts';
import { cell, input, slow, type Cell, type Pure, type Slow, type Steps, type ValueOf } from '../../src/graph/cell.ts';
import { choice, curve, type Curve, optional, scalar, verdict, type Verdict } from '../../src/graph/kind.ts';
import { Live } from '../../src/graph/live.ts';
import type { State } from '../../src/graph/state.ts';
import { length, ratio } from '../../src/units/quantity.ts';
import { toy, typed } from './toy.ts';

const a = typed('a', 1);
const dome = input<number | null>({ id: 'dome', label: '', note: '', kind: optional(scalar(length)), initial: null });
const options = choice([
  { id: 'solid', label: 'Solid' },
  { id: 'hydraulic', label: 'Hydraulic' },
]);
const tappet = input({ id: 'tappet', label: '', note: '', kind: options, initial: 'solid' });
const trace = cell({
  ...toy('trace'),
  kind: curve(length, length),
  from: { a },
  compute: ({ a }) => ({ x: Float64Array.of(a), y: Float64Array.of(a) }),
});
const work = slow({
  ...toy('work'),
  from: { trace },
  *steps({ trace }): Steps<number> {
    expectTypeOf(trace).toEqualTypeOf<Curve>();
    yield 0.5;
    return trace.x.length;
  },
});

it('what a cell is given follows from what it reads', () => {
  const made = cell({
    ...toy('made'),
    from: { a, dome, tappet, trace, work },
    compute: (given) => {
      expectTypeOf(given).toEqualTypeOf<{
        readonly a: number;
        readonly dome: number | null;
        readonly tappet: 'solid' | 'hydraulic';
        readonly trace: Curve;
        readonly work: number;
      }>();
      return given.a;
    },
  });
  expectTypeOf(made).toExtend<Cell<number>>();
  expectTypeOf(work).toEqualTypeOf<Slow<number>>();
  expectTypeOf<ValueOf<typeof trace>>().toEqualTypeOf<Curve>();
  expect(made.role).toBe('cell');
});

it('what a cell gives follows its kind', () => {
  const judged = cell({
    ...toy('judged'),
    kind: verdict(ratio, []),
    from: { a },
    compute: ({ a }): Verdict => ({ word: '', value: a, edges: [], lead: [], place: [], advice: [] }),
  });
  expectTypeOf(judged).toEqualTypeOf<Pure<Verdict>>();
  const found = balance({
    ...toy('found'),
    from: { a, dome },
    between: [0, 1],
    residual: (x, given) => {
      expectTypeOf(given).toEqualTypeOf<{ readonly a: number; readonly dome: number | null }>();
      return x - given.a;
    },
  });
  expectTypeOf(found).toEqualTypeOf<Pure<number>>();
  expect([judged.id, found.id]).toEqual(['judged', 'found']);
});

it('a misspelled or misfit cell does not compile', () => {
  const made = [
    // @ts-expect-error -- a name that is not in `from`
    cell({ ...toy('w'), from: { a }, compute: ({ b }) => b }),
    // @ts-expect-error -- a curve where a number is due
    cell({ ...toy('x'), from: { trace }, compute: ({ trace }) => trace }),
    // @ts-expect-error -- a range of trust for something it does not read
    cell({ ...toy('y'), from: { a }, valid: { b: [0, 1] }, compute: ({ a }) => a }),
    // @ts-expect-error -- a figure that may be missing, used as if it never were
    cell({ ...toy('z'), from: { dome }, compute: ({ dome }) => dome + 1 }),
    // @ts-expect-error -- a worked case without one of the figures it reads
    cell({ ...toy('v'), from: { a }, examples: [{ given: {}, gives: 1, within: 1 }], compute: ({ a }) => a }),
    // @ts-expect-error -- moved by something that is no number
    cell({ ...toy('u'), from: { a }, movedBy: [{ label: '', inputs: [tappet] }], compute: ({ a }) => a }),
    // @ts-expect-error -- a choice that starts with what is not on its list
    input({ id: 't', label: '', note: '', kind: options, initial: 'roller' }),
  ];
  expect(made).toHaveLength(7);
});

it('a live graph takes and gives values of the right sort', () => {
  const live = new Live([work, dome, tappet]);
  expectTypeOf(live.state(trace)).toEqualTypeOf<State<Curve>>();
  expectTypeOf(live.state(tappet)).toEqualTypeOf<State<'solid' | 'hydraulic'>>();
  expectTypeOf(live.computed(work)).toEqualTypeOf<State<number>>();
  live.set(a, 2);
  live.set(dome, null);
  live.set(tappet, 'hydraulic');
  live.hold(work, 3);
  live.run();
  expect(live.state(work)).toEqual({ is: 'ready', value: 3 });
});

it('and refuses the wrong sort', () => {
  const live = new Live([work, dome, tappet]);
  const wrong = [
    // @ts-expect-error -- text for a number
    () => live.set(a, '2'),
    // @ts-expect-error -- an option that is not on the list
    () => live.set(tappet, 'roller'),
    // @ts-expect-error -- a number for a curve
    () => live.hold(trace, 3),
    // @ts-expect-error -- only inputs are set
    () => live.set(work, 3),
    // @ts-expect-error -- only slow cells are stopped
    () => live.stop(trace),
  ];
  expect(wrong).toHaveLength(5); // the compiler is the judge: none of them is called
});
