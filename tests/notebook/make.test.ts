import { describe, expect, it } from 'vitest';
import type { Cell } from '../../src/graph/cell.ts';
import { solve } from '../../src/graph/solve.ts';
import { type Pair, type PairSearch, solvePair } from '../../src/graph/solve-pair.ts';
import { Impossible } from '../../src/graph/state.ts';
import { type Change, type Cautions, cautionsChanged } from '../../src/notebook/cautions.ts';
import type { Document } from '../../src/notebook/document.ts';
import type { Store } from '../../src/notebook/store.ts';
import { say } from '../../src/units/phrase.ts';
import { cubicCentimeter, inch, si } from '../../src/units/unit.ts';
import { catalogue, cellOf, figureOf, opened, scenario, wordOf } from './notebooks.ts';

const searched = (read: Pair<string>, targets: Pair, vary: Pair<string>): PairSearch => {
  const found = ([a, b]: Pair<string>) => [cellOf(a), cellOf(b)] as const;
  const [x, y] = found(vary);
  return { read: found(read), targets, vary: [x, y], ranges: [sliderOf(x), sliderOf(y)] };
};
const sliderOf = (c: Cell): readonly [number, number] => {
  if (!c.slider) throw new Error(`${c.id} has no slider`);
  return c.slider;
};
const changed = (store: Store, changes: readonly Change[]): Cautions =>
  cautionsChanged(store.snapshot(), catalogue, changes);
const said = ({ on }: Cautions): string => on.map((c) => say(c, 'us')).join(' ');

/** Solves on one store, puts the pair on a fresh one, and gives that one back. */
function made(document: Document, read: Pair<string>, targets: Pair, vary: Pair<string>): Store {
  const { values } = solvePair(opened(document).snapshot(), searched(read, targets, vary));
  if (!values) throw new Error('nothing was found');
  const fresh = opened(document);
  fresh.putAll(
    [0, 1].map((k) => ({ cell: cellOf(vary[k]!), value: values[k]! })),
    { what: 'Set both' },
  );
  return fresh;
}
const isMade = (store: Store, id: string, target: number): void =>
  expect(Math.abs(figureOf(store, id) / target - 1), id).toBeLessThan(1e-6);

const engines = ['edge-of-premium', 'two-cams', 'mountain-six', 'milled-four'];
const gap = si(0.04, inch);

describe('two results at once', () => {
  it.each(engines)('9.0 dynamic and 0.040 in squish by gasket and chamber: %s', (name) => {
    const before = opened(scenario(name));
    const store = made(scenario(name), ['dynamicRatio', 'squishGap'], [9, gap], ['gasketThickness', 'chamberVolume']);
    isMade(store, 'dynamicRatio', 9);
    isMade(store, 'squishGap', gap);
    // The gap is the stack of deck and gasket, which leaves no choice of the gasket.
    expect(figureOf(store, 'gasketThickness')).toBeCloseTo(gap - figureOf(before, 'deckClearance'), 11);
    store.undo();
    for (const id of ['gasketThickness', 'chamberVolume', 'dynamicRatio'])
      expect(figureOf(store, id)).toBe(figureOf(before, id));
    expect(store.canUndo).toBeNull();
  });

  it.each(engines)('displacement and static ratio by bore and chamber, as arithmetic has it: %s', (name) => {
    const at = opened(scenario(name));
    const f = (id: string): number => figureOf(at, id);
    // A hundredth more displacement than now, at 9.25 : 1.
    const [whole, ratio] = [1.01 * f('displacement'), 9.25];
    const bore = Math.sqrt((4 * whole) / f('cylinders') / (Math.PI * f('stroke')));
    const disc = (d: number, h: number): number => (Math.PI / 4) * d * d * h;
    const ring = disc(bore, f('topLandHeight')) - disc(bore - f('topLandClearance'), f('topLandHeight'));
    const rest =
      disc(f('gasketBore'), f('gasketThickness')) +
      disc(bore, f('deckClearance')) +
      f('crownVolume') +
      ring +
      f('reliefCutVolume');
    // The stroke swept is the piston’s, a hair over two throws where the pin is offset.
    const swept = f('sweptVolume') * (bore / f('bore')) ** 2;
    const chamber = swept / (ratio - 1) - rest + f('milling') * f('chamberDeckArea');

    const targets = [swept * f('cylinders'), ratio] as const;
    const store = made(scenario(name), ['displacement', 'staticRatio'], targets, ['bore', 'chamberVolume']);
    isMade(store, 'displacement', targets[0]);
    isMade(store, 'staticRatio', ratio);
    expect(Math.abs(figureOf(store, 'bore') / bore - 1)).toBeLessThan(1e-7);
    expect(Math.abs(figureOf(store, 'chamberVolume') / chamber - 1)).toBeLessThan(1e-6);
  });

  it('by what a hand moves, as dragging moves it, and by what is held, in one step', () => {
    const document = scenario('edge-of-premium'); // its deck clearance is held
    const vary = ['intakeClosing', 'deckClearance'] as const;
    const store = made(document, ['dynamicRatio', 'squishGap'], [8.2, gap], vary);
    isMade(store, 'dynamicRatio', 8.2);
    isMade(store, 'squishGap', gap);
    expect(figureOf(store, 'deckClearance')).toBeCloseTo(gap - figureOf(store, 'gasketThickness'), 11);
    expect(store.live.isHeld(cellOf('deckClearance'))).toBe(true);
    expect(store.live.isHeld(cellOf('intakeClosing'))).toBe(false);
    store.undo();
    expect(store.document).toEqual(document);
  });

  it('two volumes above the piston are one thing to both ratios', () => {
    const at = opened(scenario('edge-of-premium')).snapshot();
    const { values, bond } = solvePair(
      at,
      searched(['staticRatio', 'dynamicRatio'], [10, 8.9], ['chamberVolume', 'crownVolume']),
    );
    expect([values, bond]).toEqual([null, { is: 'together' }]);
  });

  it('are not set where one cannot be put: nothing is written', () => {
    const store = opened(scenario('edge-of-premium'));
    const put =
      (...changes: (readonly [string, number])[]) =>
      () =>
        store.putAll(
          changes.map(([id, value]) => ({ cell: cellOf(id), value })),
          { what: 'Set both' },
        );
    expect(put(['chamberVolume', 6e-5], ['dynamicRatio', 9])).toThrow(Impossible); // computed, and moved by nothing
    expect(put(['gasketThickness', 0.001], ['chamberVolume', -1])).toThrow(Impossible); // below nothing
    expect(put(['intakeClosing', 1.1], ['camAdvance', 0.05])).toThrow('both move');
    expect(store.canUndo).toBeNull();
  });
});

describe('what an answer does to the cautions', () => {
  const one = (store: Store, read: string, target: number, by: string): Change => {
    const cell = cellOf(by);
    const [value] = solve(store.snapshot(), cellOf(read), target, cell, sliderOf(cell)).values;
    if (value === undefined) throw new Error('nothing was found');
    return { cell, value };
  };

  it('a thick gasket is no cure: less dynamic ratio, and the squish turns lazy', () => {
    const store = opened(scenario('edge-of-premium'));
    expect(wordOf(store, 'squishVerdict')).toBe('open');
    const change = one(store, 'dynamicRatio', 7.5, 'gasketThickness');
    // The deck stands at 0.012 in, and the squish is lazy over 0.060 in.
    expect(change.value).toBeGreaterThan(si(0.048, inch));
    const cautions = changed(store, [change]);
    expect(said(cautions)).toMatch(/^Lazy\. A squish gap of 0\.\d+ in is over 0\.060 in\.$/);
    // At 7.50 the fuel’s band, from 7.54 up, lies above it.
    expect(cautions.off).toEqual(expect.arrayContaining([expect.stringMatching(/^Fuel verdict, here: borderline$/)]));
    store.putAll([change], { what: 'Set it' });
    expect([wordOf(store, 'squishVerdict'), wordOf(store, 'fuelVerdict')]).toEqual(['lazy', 'comfortable']);
  });

  it('the same ratio by the chamber spoils nothing', () => {
    const store = opened(scenario('edge-of-premium'));
    expect(said(changed(store, [one(store, 'dynamicRatio', 7.5, 'chamberVolume')]))).toBe('');
  });

  it('of two changes together: one word for both, where either alone would have another', () => {
    const store = opened(scenario('edge-of-premium'));
    const thick = { cell: cellOf('gasketThickness'), value: si(0.06, inch) };
    const proud = { cell: cellOf('deckClearance'), value: si(-0.02, inch) };
    expect(said(changed(store, [thick]))).toMatch(/Lazy/); // 0.060 + 0.012
    expect(said(changed(store, [proud]))).toMatch(/Contact risk/); // 0.041 − 0.020
    expect(said(changed(store, [thick, proud]))).not.toMatch(/Lazy|Contact risk/); // 0.060 − 0.020
  });

  it('both ratios’ cure and its price: too much for the fuel, and the lazy squish taken away', () => {
    const store = opened(scenario('mountain-six'));
    const search = searched(['dynamicRatio', 'squishGap'], [9, gap], ['gasketThickness', 'chamberVolume']);
    const { values } = solvePair(store.snapshot(), search);
    const cautions = changed(
      store,
      search.vary.map((cell, k) => ({ cell, value: values![k]! })),
    );
    expect(said(cautions)).toContain('Beyond this fuel here');
    expect(cautions.off).toEqual(['Squish verdict: lazy']);
  });

  it('a caution that loses its answer says why', () => {
    const store = opened(scenario('edge-of-premium'));
    // 0.041 in of gasket, and a deck 0.050 in proud.
    const cautions = changed(store, [{ cell: cellOf('deckClearance'), value: si(-0.05, inch) }]);
    expect(said(cautions)).toContain('Squish verdict: The piston would pass the head’s face.');
  });

  it('a remark is named as it falls silent', () => {
    const store = opened(scenario('edge-of-premium'));
    const [bore, gasketBore] = [cellOf('bore'), cellOf('gasketBore')];
    const under = { cell: gasketBore, value: si(4, inch) };
    expect(said(changed(store, [under]))).toContain('The opening is smaller than the bore');
    store.putAll([under], { what: 'Set it' });
    expect(changed(store, [{ cell: bore, value: si(3.99, inch) }]).off).toContain('Gasket opening');
    expect(changed(store, [{ cell: cellOf('chamberVolume'), value: si(68, cubicCentimeter) }]).off).not.toContain(
      'Gasket opening',
    );
  });

  it('leaving a range of trust is a caution, and coming back takes it away', () => {
    const store = opened(scenario('edge-of-premium'));
    const air = (value: number): readonly Change[] => [{ cell: cellOf('airTemperature'), value }];
    // SAE J1349 holds from 15 to 35 °C, which is 288.15 to 308.15 K (SAE J1349, sec. 5.1, from memory).
    expect(said(changed(store, air(308)))).not.toContain('SAE J1349');
    const hot = changed(store, air(309));
    expect(said(hot)).toContain('SAE J1349: outside the range it can be trusted in.');
    store.putAll(air(309), { what: 'Set it' });
    expect(changed(store, air(300)).off).toContain('SAE J1349: outside its range');
    expect(changed(store, air(310))).toMatchObject({ on: [], off: [] });
  });

  it('what slow work decides is named for later, and what is quick is said with it', () => {
    const store = opened(scenario('edge-of-premium'));
    const cautions = changed(store, [{ cell: cellOf('gasketThickness'), value: si(0.06, inch) }]);
    expect(said(cautions)).toContain('Lazy');
    expect(cautions.later).toContain('Speeds that do not settle');
    expect(cautions.later).not.toContain('Squish verdict');
  });
});
