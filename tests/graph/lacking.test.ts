import { describe, expect, it } from 'vitest';
import { type Cell, cell } from '../../src/graph/cell.ts';
import { Live } from '../../src/graph/live.ts';
import { Probe } from '../../src/graph/probe.ts';
import { snapshot } from '../../src/graph/snapshot.ts';
import { Impossible, needed } from '../../src/graph/state.ts';
import { toy, typed } from './toy.ts';

const a = typed('a', 2);
const choice = typed('choice', 0);
const rarely = typed('rarely', 10);
const fitted = cell({
  ...toy('fitted'),
  from: { rarely },
  compute: ({ rarely }) => {
    if (rarely < 0) throw new Impossible(['It is below zero.'], 'rarely');
    return 2 * rarely;
  },
});
/** Needs `fitted` only where the choice says so. */
const result = cell({
  ...toy('result'),
  from: { a, choice, fitted },
  mayLack: ['fitted'],
  compute: ({ a, choice, fitted }) => (choice === 0 ? a : a + needed(fitted)),
});

const seen = (...cells: Cell[]): Live => {
  const live = new Live(cells);
  live.look(cells);
  live.run();
  return live;
};
const emptied = (): Live => {
  const live = seen(result);
  live.fail(rarely, { at: 'rarely', about: 'rarely', message: ['Write a figure.'] });
  live.run();
  return live;
};

describe('a cell that may do without a source', () => {
  it('has its answer while that source has none', () => {
    const live = emptied();
    expect(live.state(fitted).is).toBe('fault');
    expect(live.state(result)).toEqual({ is: 'ready', value: 2 });
  });
  it('tells what is wrong with the source once it cannot do without it, and keeps the last good value', () => {
    const live = emptied();
    live.set(choice, 1);
    live.run();
    expect(live.state(result)).toMatchObject({ is: 'fault', last: 2, fault: { about: 'rarely' } });
    live.set(rarely, 10);
    live.run();
    expect(live.state(result)).toEqual({ is: 'ready', value: 22 });
  });
  it('still waits for every other source', () => {
    const live = emptied();
    live.fail(a, { at: 'a', about: 'a', message: ['Write a figure.'] });
    live.run();
    expect(live.state(result)).toMatchObject({ is: 'fault', fault: { about: 'a' } });
  });
  it('says the same when it is held and asked what it would be', () => {
    const live = emptied();
    live.hold(result, 99);
    live.run();
    expect(live.computed(result)).toEqual({ is: 'ready', value: 2 });
  });
  it('can be asked what-ifs, also ones that need the source and ones that spoil it', () => {
    const asked = (live: Live, vary: Cell<number>, x: number): unknown => {
      const probe = new Probe(snapshot(live), [vary], [result]);
      probe.put(0, x);
      probe.tryRun();
      return probe.tryGet(0);
    };
    expect(asked(emptied(), a, 7)).toBe(7);
    expect(asked(emptied(), choice, 1)).toBeUndefined();
    expect(asked(seen(result), choice, 1)).toBe(22);
    expect(asked(seen(result), rarely, -1)).toBe(2);
    // Spoiled and mended again, in one what-if.
    const live = seen(result);
    live.set(choice, 1);
    live.run();
    const probe = new Probe(snapshot(live), [rarely], [result]);
    const line = [-1, 3, -2, 4].map((x) => {
      probe.put(0, x);
      probe.tryRun();
      return probe.tryGet(0);
    });
    expect(line).toEqual([undefined, 8, undefined, 10]);
    expect(() => {
      probe.put(0, -1);
      probe.run();
    }).toThrow('It is below zero.');
  });
});
