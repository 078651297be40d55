import { describe, expect, it } from 'vitest';
import type { Store } from '../../src/notebook/store.ts';
import { drawnGap } from '../notebook/drawn-engine.ts';
import { cellOf, figureOf, inputOf, opened, scenario } from '../notebook/notebooks.ts';

const degree = Math.PI / 180;
const engines = ['edge-of-premium', 'mountain-six', 'milled-four'];

/** A starting point with one input moved, SI. */
function moved(name: string, id: string, by: number): Store {
  const store = opened(scenario(name));
  const input = inputOf(id);
  store.set([[input, figureOf(store, id) + by]], { what: id });
  return store;
}
/** How far the drawn valves are over their minimums; the drawing shares no code with the cells. */
const over = (store: Store): readonly [intake: number, exhaust: number] => [
  drawnGap(store, 'intake').gap - figureOf(store, 'intakeMinimum'),
  drawnGap(store, 'exhaust').gap - figureOf(store, 'exhaustMinimum'),
];
const read = (name: string, id: string): number => figureOf(opened(scenario(name)), id);
const within = 2e-8; // m: the drawing looks every 0.02 degree

describe.each(engines)('what is left before the minimum: %s', (name) => {
  it('the cam, advanced by what is left, has the drawn intake valve at its minimum', () => {
    const [intake] = over(moved(name, 'camAdvance', read(name, 'advanceLeft')));
    expect(Math.abs(intake)).toBeLessThan(within);
  });
  it('the cam, retarded by what is left, has the drawn exhaust valve at its minimum', () => {
    const [, exhaust] = over(moved(name, 'camAdvance', -read(name, 'retardLeft')));
    expect(Math.abs(exhaust)).toBeLessThan(within);
  });
  it('rockers of the greatest ratio have the nearer drawn valve at its minimum', () => {
    const store = opened(scenario(name));
    store.set([[inputOf('rockerRatio'), figureOf(store, 'rockerRatioMost')]], { what: 'rockers' });
    expect(Math.abs(Math.min(...over(store)))).toBeLessThan(within);
  });
  it.each(['milling', 'deckClearance'])('%s, by what is left, has the nearer drawn valve at its minimum', (id) => {
    const left = read(name, 'cutLeft');
    const store = opened(scenario(name));
    if (id === 'milling') store.set([[inputOf(id), figureOf(store, id) + left]], { what: id });
    else store.hold(cellOf(id), figureOf(store, id) - left, { what: id });
    expect(Math.abs(Math.min(...over(store)))).toBeLessThan(within);
  });
});

it('the milled four has nothing left: every margin is negative, and its rockers are over the greatest ratio', () => {
  const store = opened(scenario('milled-four'));
  expect(figureOf(store, 'intakeClearance')).toBeLessThan(figureOf(store, 'intakeMinimum'));
  expect(figureOf(store, 'advanceLeft')).toBeLessThan(0);
  expect(figureOf(store, 'cutLeft')).toBeLessThan(0);
  expect(figureOf(store, 'rockerRatioMost')).toBeLessThan(figureOf(store, 'rockerRatio'));
});

it('a degree short of the advance that is left the intake valve is clear, a degree past it is not', () => {
  const store = opened(scenario('edge-of-premium'));
  const left = figureOf(store, 'advanceLeft');
  const [low, high] = [left - degree, left + degree].map((by) =>
    figureOf(moved('edge-of-premium', 'camAdvance', by), 'intakeClearance'),
  ) as [number, number];
  const least = figureOf(store, 'intakeMinimum');
  expect(low).toBeGreaterThan(least);
  expect(high).toBeLessThan(least);
});
