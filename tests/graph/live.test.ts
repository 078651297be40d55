import { describe, expect, it } from 'vitest';
import { cell, input, type Cell } from '../../src/graph/cell.ts';
import { choice, optional, scalar } from '../../src/graph/kind.ts';
import { Live } from '../../src/graph/live.ts';
import { Impossible, lastGood, present } from '../../src/graph/state.ts';
import { phrase, say, value } from '../../src/units/phrase.ts';
import { length, ratio } from '../../src/units/quantity.ts';
import { toy, typed } from './toy.ts';

const a = typed('a', 2);
const b = typed('b', 3);
const twice = cell({ ...toy('twice'), from: { a }, compute: ({ a }) => 2 * a });
const sign = cell({ ...toy('sign'), from: { a }, compute: ({ a }) => Math.sign(a) });
const far = cell({ ...toy('far'), from: { sign, b }, compute: ({ sign, b }) => sign * b });
const sum = cell({ ...toy('sum'), from: { twice, b }, compute: ({ twice, b }) => twice + b });
const top = cell({ ...toy('top'), from: { sum, far }, compute: ({ sum, far }) => sum + far });

const seen = (...cells: Cell[]): Live => {
  const live = new Live(cells);
  live.look(cells);
  live.run();
  return live;
};
const ids = (cells: readonly Cell[]) => cells.map((c) => c.id);

describe('a change runs only what it reaches', () => {
  it('runs everything once at first, each cell after what it reads', () => {
    const live = seen(top);
    expect(live.ran).toEqual(['twice', 'sum', 'sign', 'far', 'top']);
    expect(live.state(top)).toEqual({ is: 'ready', value: 10 });
  });

  it('leaves the other branch alone', () => {
    const live = seen(top);
    live.set(b, 4);
    live.run();
    expect(live.ran).toEqual(['sum', 'far', 'top']);
    expect(live.state(top)).toEqual({ is: 'ready', value: 12 });
  });

  it('stops at a value that comes out the same', () => {
    const live = seen(top);
    live.set(a, 5);
    live.run();
    expect(live.ran).toEqual(['twice', 'sum', 'sign', 'top']); // the sign is still 1, so `far` rests
    expect(live.state(top)).toEqual({ is: 'ready', value: 16 });
  });

  it('runs nothing for the value that stands already', () => {
    const live = seen(top);
    live.set(a, 2);
    expect(live.run()).toEqual([]);
    expect(live.ran).toEqual([]);
  });

  it('runs each cell once for several changes', () => {
    const live = seen(top);
    live.set(a, -1);
    live.set(b, 1);
    live.run();
    expect(live.ran).toEqual(['twice', 'sum', 'sign', 'far', 'top']);
    expect(live.state(top)).toEqual({ is: 'ready', value: -2 });
  });

  it('tells exactly the cells whose state changed, in order', () => {
    const live = seen(top);
    live.set(a, 5);
    expect(ids(live.run())).toEqual(['a', 'twice', 'sum', 'top']);
    live.set(a, 5);
    expect(live.run()).toEqual([]);
  });

  it('reads one cell under two names', () => {
    const square = cell({ ...toy('square'), from: { x: a, y: a }, compute: ({ x, y }) => x * y });
    const live = seen(square);
    live.set(a, 7);
    live.run();
    expect(live.ran).toEqual(['square']);
    expect(live.state(square)).toEqual({ is: 'ready', value: 49 });
  });
});

describe('only what is looked at runs', () => {
  it('runs nothing before anyone looks', () => {
    const live = new Live([top]);
    live.run();
    expect(live.ran).toEqual([]);
    expect(live.state(top)).toEqual({ is: 'waiting', last: undefined, done: 0 });
  });

  it('runs a cell and what it stands on, not its readers', () => {
    const live = new Live([top]);
    live.look([far]);
    live.run();
    expect(live.ran).toEqual(['sign', 'far']);
  });

  it('rests once nobody looks, and catches up when someone does', () => {
    const live = new Live([top]);
    const unlook = live.look([top]);
    live.run();
    unlook();
    live.set(a, 6);
    live.set(a, 7);
    live.run();
    expect(live.ran).toEqual([]);
    live.look([top]);
    live.run();
    expect(live.state(top)).toEqual({ is: 'ready', value: 20 });
  });

  it('does not pass an old value off as ready while nobody looks', () => {
    const live = new Live([top]);
    const unlook = live.look([top]);
    live.run();
    unlook();
    live.set(a, 7);
    live.run();
    expect(live.state(sum)).toEqual({ is: 'waiting', last: 7, done: 0 });
    expect(live.state(top)).toEqual({ is: 'waiting', last: 10, done: 0 });
    expect(live.state(far)).toEqual({ is: 'waiting', last: 3, done: 0 });
  });

  it('goes on while another looker is left, and unlooking twice takes nobody else along', () => {
    const live = new Live([top]);
    const first = live.look([top]);
    live.look([top]);
    live.run();
    first();
    first();
    live.set(b, 0);
    live.run();
    expect(live.state(top)).toEqual({ is: 'ready', value: 4 });
  });

  it('refuses a cell it does not know, and works on', () => {
    const live = seen(sum);
    expect(() => live.look([far])).toThrow('"far" is not in this graph');
    expect(() => live.state(far)).toThrow('"far" is not in this graph');
    live.look([twice]);
    live.set(a, 1);
    live.run();
    expect(live.state(sum)).toEqual({ is: 'ready', value: 5 });
  });
});

describe('a fault', () => {
  const stroke = typed('stroke', 0.08);
  const rod = typed('rod', 0.15);
  const ratioOf = cell({
    ...toy('ratioOf'),
    from: { stroke, length: rod },
    compute: ({ stroke, length: rod }) => {
      if (rod < stroke / 2)
        throw new Impossible(phrase`The rod is shorter than the crank throw, ${value(stroke / 2, length)}.`, 'length');
      return rod / stroke;
    },
  });
  const reader = cell({ ...toy('reader'), from: { ratioOf, a }, compute: ({ ratioOf, a }) => ratioOf * a });
  const last = cell({ ...toy('last'), from: { reader }, compute: ({ reader }) => reader });
  const short = {
    at: 'ratioOf',
    about: 'rod',
    message: phrase`The rod is shorter than the crank throw, ${value(0.04, length)}.`,
  };

  it('passes through unchanged, names where it began and whose value is to blame, and keeps the last good values', () => {
    const live = seen(last);
    live.set(rod, 0.03);
    live.run();
    expect(live.ran).toEqual(['ratioOf']);
    expect(live.state(ratioOf)).toEqual({ is: 'fault', last: 1.875, fault: short });
    expect(live.state(reader)).toEqual({ is: 'fault', last: 3.75, fault: short });
    expect(live.state(last)).toEqual({ is: 'fault', last: 3.75, fault: short });
    expect(lastGood(live.state(last))).toBe(3.75);
    expect(present(live.state(last))).toBeUndefined();
  });

  it('heals, and the last good value goes with the healing', () => {
    const live = seen(last);
    live.set(rod, 0.03);
    live.run();
    live.set(a, 4);
    live.run();
    expect(live.state(last)).toMatchObject({ is: 'fault', last: 3.75 });
    live.set(rod, 0.16);
    live.run();
    expect(live.state(last)).toEqual({ is: 'ready', value: 8 });
    live.set(rod, 0.03);
    live.run();
    expect(live.state(last)).toMatchObject({ is: 'fault', last: 8 });
  });

  it('is about its own cell when the thrower says nothing else', () => {
    const bad = cell({
      ...toy('bad'),
      from: { a },
      compute: ({ a }) => {
        if (a > 5) throw new RangeError('Too much.');
        return a;
      },
    });
    const live = seen(bad);
    live.set(a, 6);
    live.run();
    expect(live.state(bad)).toEqual({
      is: 'fault',
      last: 2,
      fault: { at: 'bad', about: 'bad', message: ['Too much.'] },
    });
  });

  it('has words even where nothing sensible was thrown', () => {
    const odd = cell({
      ...toy('odd'),
      from: { a },
      compute: (): number => {
        throw 'odd' as unknown as Error;
      },
    });
    expect(seen(odd).state(odd)).toMatchObject({ fault: { at: 'odd', message: ['This cannot be computed.'] } });
  });

  it('takes the first of several in the order the cell reads', () => {
    const fails = (id: string, from: { readonly a: typeof a }) =>
      cell({
        ...toy(id),
        from,
        compute: (): number => {
          throw new Impossible([id]);
        },
      });
    const one = fails('one', { a });
    const two = fails('two', { a });
    const both = cell({ ...toy('both'), from: { two, one }, compute: ({ one, two }) => one + two });
    expect(seen(both).state(both)).toMatchObject({ fault: { at: 'two' } });
  });
});

describe('no figure that is none leaves a cell', () => {
  it.each([NaN, Infinity, -Infinity])('%s becomes a fault that names the cell', (made) => {
    const odd = cell({ ...toy('odd'), from: { a }, compute: () => made });
    const after = cell({ ...toy('after'), from: { odd }, compute: ({ odd }) => (odd > 0 ? 1 : 0) });
    const live = seen(after);
    expect(live.ran).toEqual(['odd']);
    expect(live.state(after)).toMatchObject({ is: 'fault', fault: { at: 'odd', about: 'odd' } });
  });

  it('nor an input, nor a held cell', () => {
    const live = seen(top);
    live.set(a, NaN);
    live.hold(far, NaN);
    live.run();
    expect(live.state(a)).toMatchObject({
      is: 'fault',
      last: 2,
      fault: { at: 'a', message: ['This is not a figure.'] },
    });
    expect(live.state(far)).toMatchObject({ is: 'fault', last: 3, fault: { at: 'far' } });
    expect(live.state(top)).toMatchObject({ is: 'fault', fault: { at: 'a' } });
  });

  it('nor a choice that is not on the list', () => {
    const fuel = input({
      id: 'fuel',
      label: 'Fuel',
      note: '',
      kind: choice([{ id: 'e0', label: 'E0' }]),
      initial: 'e0',
    });
    const live = seen(fuel);
    live.set(fuel, 'e99' as 'e0');
    live.run();
    expect(live.state(fuel)).toMatchObject({ is: 'fault', last: 'e0', fault: { at: 'fuel' } });
  });
});

describe('a hard range', () => {
  const bore = typed('bore', 0.1, { kind: scalar(length), label: 'Bore', hard: [0.05, 0.2] });
  const area = cell({ ...toy('area'), from: { bore }, compute: ({ bore }) => bore * bore });

  it('lets its ends in', () => {
    const live = seen(area);
    for (const end of [0.05, 0.2]) {
      live.set(bore, end);
      live.run();
      expect(live.state(bore)).toEqual({ is: 'ready', value: end });
    }
  });

  it('turns what lies outside into a fault that says both ends', () => {
    const live = seen(area);
    live.set(bore, 0.21);
    live.run();
    expect(live.ran).toEqual([]);
    expect(live.state(area)).toEqual({
      is: 'fault',
      last: 0.1 * 0.1,
      fault: { at: 'bore', about: 'bore', message: expect.any(Array) },
    });
    const state = live.state(bore);
    const said = state.is === 'fault' ? state.fault.message : [];
    expect(say(said, 'si')).toBe('Bore lies between 50.00 mm and 200.00 mm.');
    expect(say(said, 'us')).toBe('Bore lies between 1.969 in and 7.874 in.');
  });

  it('holds for a figure that may be left out, and not for its absence', () => {
    const dome = input<number | null>({
      id: 'dome',
      label: 'Dome',
      note: '',
      kind: optional(scalar(length)),
      initial: null,
      hard: [0, 0.01],
    });
    const live = seen(dome);
    expect(live.state(dome)).toEqual({ is: 'ready', value: null });
    live.set(dome, 0.02);
    live.run();
    expect(live.state(dome)).toMatchObject({ is: 'fault', last: null, fault: { at: 'dome' } });
    live.set(dome, null);
    live.run();
    expect(live.state(dome)).toEqual({ is: 'ready', value: null });
  });

  it('keeps apart from what was typed and is no figure at all', () => {
    const live = seen(area);
    const fault = { at: 'bore', about: 'bore', message: ['“abc” is not a figure.'] };
    live.fail(bore, fault);
    live.run();
    expect(live.state(area)).toEqual({ is: 'fault', last: 0.1 * 0.1, fault });
    live.set(bore, 0.1);
    live.run();
    expect(live.state(area)).toEqual({ is: 'ready', value: 0.1 * 0.1 });
  });
});

describe('a held cell', () => {
  it('is an input: its readers run, it does not', () => {
    const live = seen(top);
    live.hold(sum, 100);
    expect(ids(live.run())).toEqual(['sum', 'top']);
    expect(live.ran).toEqual(['top']);
    expect(live.isHeld(sum)).toBe(true);
    expect(live.state(top)).toEqual({ is: 'ready', value: 103 });
    live.set(a, 3);
    live.run();
    expect(live.ran).toEqual(['twice', 'sign']);
    expect(live.state(sum)).toEqual({ is: 'ready', value: 100 });
  });

  it('says what it would be, computed from the present inputs', () => {
    const live = seen(top);
    live.hold(sum, 100);
    live.set(a, 3);
    live.run();
    expect(live.computed(sum)).toEqual({ is: 'ready', value: 9 });
  });

  it('says of a fault above it that it would be that', () => {
    const live = seen(top);
    live.hold(sum, 100);
    live.set(a, NaN);
    live.run();
    expect(live.computed(sum)).toMatchObject({ is: 'fault', fault: { at: 'a' } });
    expect(live.state(sum)).toEqual({ is: 'ready', value: 100 });
  });

  it('computes itself again when it is let go', () => {
    const live = seen(top);
    live.hold(sum, 100);
    live.set(a, 3);
    live.run();
    live.release(sum);
    live.run();
    expect(live.ran).toEqual(['sum', 'top']);
    expect(live.isHeld(sum)).toBe(false);
    expect(live.state(top)).toEqual({ is: 'ready', value: 12 });
  });

  it('that is let go at what it would be anyway leaves its readers alone, but its card is told', () => {
    const live = seen(top);
    live.hold(sum, 7);
    expect(ids(live.run())).toEqual(['sum']);
    live.release(sum);
    expect(ids(live.run())).toEqual(['sum']);
    expect(live.ran).toEqual(['sum']);
  });

  it('can be held anew, and letting go of what is not held does nothing', () => {
    const live = seen(top);
    live.hold(sum, 100);
    live.hold(sum, 50);
    live.run();
    expect(live.state(top)).toEqual({ is: 'ready', value: 53 });
    live.release(far);
    expect(live.run()).toEqual([]);
  });

  it('shields its readers from a fault above', () => {
    const live = seen(top);
    live.hold(far, 1);
    live.hold(sum, 1);
    live.set(a, NaN);
    live.run();
    expect(live.state(top)).toEqual({ is: 'ready', value: 2 });
    live.release(sum);
    live.run();
    expect(live.state(top)).toMatchObject({ is: 'fault', last: 2, fault: { at: 'a' } });
  });

  it('held while nobody looks is computed anew when it is let go and looked at', () => {
    const live = new Live([top]);
    live.hold(sum, 100);
    live.run();
    live.release(sum);
    live.run();
    expect(live.state(sum)).toMatchObject({ is: 'waiting' });
    live.look([top]);
    live.run();
    expect(live.state(top)).toEqual({ is: 'ready', value: 10 });
  });
});

it('two live graphs over the same cells know nothing of each other', () => {
  const [one, two] = [seen(top), seen(top)];
  one.set(a, 5);
  one.hold(far, 0);
  one.run();
  two.run();
  expect(two.state(top)).toEqual({ is: 'ready', value: 10 });
  expect(one.state(top)).toEqual({ is: 'ready', value: 13 });
});

it('a cell of any kind passes on what is the same by its kind', () => {
  const level = choice([
    { id: 'low', label: 'Low' },
    { id: 'high', label: 'High' },
  ]);
  const word = cell({ ...toy('word'), kind: level, from: { a }, compute: ({ a }) => (a > 5 ? 'high' : 'low') });
  const figure = cell({ ...toy('figure'), kind: scalar(ratio), from: { word }, compute: ({ word }) => word.length });
  const live = seen(figure);
  live.set(a, 4);
  live.run();
  expect(live.ran).toEqual(['word']);
  live.set(a, 6);
  live.run();
  expect(live.ran).toEqual(['word', 'figure']);
  expect(live.state(figure)).toEqual({ is: 'ready', value: 4 });
});
