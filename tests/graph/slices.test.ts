import { describe, expect, it } from 'vitest';
import type { Provisional, Steps } from '../../src/graph/cell.ts';
import { slices } from '../../src/graph/slices.ts';

describe('steps run in slices', () => {
  function* work(steps: number): Steps<string> {
    for (let i = 1; i <= steps; i++) yield i === 2 ? { value: 'half', done: i / steps } : i / steps;
    return 'whole';
  }
  const told = () => {
    const heard: (number | Provisional<string>)[] = [];
    return { heard, report: (step: number | Provisional<string>) => void heard.push(step) };
  };

  it('come to their value, and report each step where every slice is over at once', async () => {
    const { heard, report } = told();
    expect(await slices(work(4), () => false, report, 0)).toEqual({ value: 'whole' });
    expect(heard).toEqual([0.25, { value: 'half', done: 0.5 }, 0.75, 1]);
  });

  it('report only a provisional value while a slice lasts', async () => {
    const { heard, report } = told();
    expect(await slices(work(4), () => false, report, 1e9)).toEqual({ value: 'whole' });
    expect(heard).toEqual([{ value: 'half', done: 0.5 }]);
  });

  it('stop when they are told to, and clear up behind them', async () => {
    let cleared = false;
    function* endless(): Steps<never> {
      try {
        for (;;) yield 0;
      } finally {
        cleared = true;
      }
    }
    let turns = 0;
    expect(await slices(endless(), () => ++turns === 3, told().report, 0)).toBeNull();
    expect([turns, cleared]).toEqual([3, true]);
  });

  it('let messages in between slices', async () => {
    let stop = false;
    const { port1, port2 } = new MessageChannel();
    port1.addEventListener('message', () => {
      stop = true;
    });
    port1.start();
    function* endless(): Steps<never> {
      for (;;) yield 0;
    }
    port2.postMessage('stop');
    expect(await slices(endless(), () => stop, told().report, 0)).toBeNull();
    port1.close();
  });

  it('pass on what they throw', async () => {
    function* failing(): Steps<never> {
      yield 0.5;
      throw new RangeError('No further.');
    }
    await expect(slices(failing(), () => false, told().report, 0)).rejects.toThrow('No further.');
  });
});
