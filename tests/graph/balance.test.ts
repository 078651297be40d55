import { describe, expect, it } from 'vitest';
import { balance } from '../../src/graph/balance.ts';
import { type Cell, cell } from '../../src/graph/cell.ts';
import { Live } from '../../src/graph/live.ts';
import { Probe } from '../../src/graph/probe.ts';
import { snapshot } from '../../src/graph/snapshot.ts';
import { toy, typed } from './toy.ts';

const seen = (...cells: Cell[]): Live => {
  const live = new Live(cells);
  live.look(cells);
  live.run();
  return live;
};
const a = typed('a', 2);
const half = balance({
  ...toy('half'),
  label: 'Square root',
  from: { a },
  between: [0, 10],
  residual: (x, { a }) => x * x - a,
});

describe('a balance', () => {
  it('finds the unknown at which the residual vanishes', () => {
    expect(seen(half).state(half)).toEqual({ is: 'ready', value: expect.closeTo(Math.SQRT2, 11) });
  });

  it('closes a relation that chases its own tail: the figure that is its own cosine', () => {
    const own = balance({ ...toy('own'), from: { a }, between: [0, 1], residual: (x) => Math.cos(x) - x });
    expect(seen(own).state(own)).toEqual({ is: 'ready', value: expect.closeTo(0.7390851332151607, 12) }); // OEIS A003957
  });

  it('says so in its own name where there is none between its bounds, and heals', () => {
    const after = cell({ ...toy('after'), from: { half }, compute: ({ half }) => half });
    const live = seen(after);
    live.set(a, -1);
    live.run();
    expect(live.state(after)).toEqual({
      is: 'fault',
      last: expect.closeTo(Math.SQRT2, 11),
      fault: { at: 'half', about: 'half', message: ['No square root between its bounds fits these figures.'] },
    });
    live.set(a, 101);
    live.run();
    expect(live.state(after)).toMatchObject({ is: 'fault', fault: { at: 'half' } });
    live.set(a, 9);
    live.run();
    expect(live.state(after)).toEqual({ is: 'ready', value: expect.closeTo(3, 10) });
  });

  it('may lie at a bound', () => {
    const live = seen(half);
    for (const [value, found] of [
      [0, 0],
      [100, 10],
    ] as const) {
      live.set(a, value);
      live.run();
      expect(live.state(half)).toEqual({ is: 'ready', value: expect.closeTo(found, 10) });
    }
  });

  it('does not take a pole for a balance', () => {
    const pole = balance({ ...toy('pole'), from: { a }, between: [0, 10], residual: (x, { a }) => 1 / (x - a) });
    expect(seen(pole).state(pole)).toMatchObject({ is: 'fault', fault: { at: 'pole' } });
  });

  it('passes on what its residual says cannot be', () => {
    const odd = balance({
      ...toy('odd'),
      from: { a },
      between: [0, 10],
      residual: () => {
        throw new RangeError('Not with these.');
      },
    });
    expect(seen(odd).state(odd)).toMatchObject({ fault: { at: 'odd', message: ['Not with these.'] } });
  });

  it('is searched anew at each point of a what-if', () => {
    const probe = new Probe(snapshot(seen(half)), [a], [half]);
    for (const x of [4, 49, 0.25]) {
      probe.put(0, x);
      probe.run();
      expect(probe.get(0)).toBeCloseTo(Math.sqrt(x), 10);
    }
  });
});
