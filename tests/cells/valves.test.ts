import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { catalogue, roomOf } from '../../cells/index.ts';
import type { Cell, Input } from '../../src/graph/cell.ts';
import type { Store } from '../../src/notebook/store.ts';
import { type Phrase, say } from '../../src/units/phrase.ts';
import * as u from '../../src/units/unit.ts';
import { drawnGap, drawnLobe, drawnPeak, type Side } from '../notebook/drawn-engine.ts';
import { cellOf, figureOf, inputOf, opened, quick, scenario, valueOf } from '../notebook/notebooks.ts';

const inch = u.si(1, u.inch);
const degree = u.si(1, u.degree);
const sides: readonly Side[] = ['intake', 'exhaust'];
/** The valves’ own chapter, and the one that breathes through them. */
const beyondEvents = (id: string): boolean => ['valves', 'breathing', 'output'].includes(roomOf.get(id)!);

type Figures = Readonly<Record<string, number | string | null>>;
const put = (store: Store, figures: Figures): Store => {
  for (const [id, value] of Object.entries(figures)) {
    const cell = cellOf(id);
    if (cell.role === 'input') store.set([[cell, value]], { what: id });
    else store.hold(cell, value, { what: id });
  }
  return store;
};
/** The first starting point with some figures put elsewhere, SI. */
const engine = (figures: Figures = {}): Store => put(opened(scenario('edge-of-premium')), figures);
const moved = (before: Store, after: Store, id: string): number => figureOf(after, id) - figureOf(before, id);
const remarkOf = (store: Store, id: string): string | null => {
  const said = valueOf(store, id) as Phrase | null;
  return said === null ? null : say(said, 'us');
};
const nothing = (store: Store, id: string): string => {
  const state = store.state(cellOf(id));
  if (state.is !== 'fault') throw new Error(`${id} is ${state.is}`);
  return say(state.fault.message, 'us');
};
/** Held to the gap that a drawn valve, crown and linkage leave. */
const expectDrawn = (store: Store): void => {
  for (const side of sides)
    expect(Math.abs(figureOf(store, `${side}Clearance`) - drawnGap(store, side).gap), side).toBeLessThan(1e-8);
};
/** By counting the lesser of two drawn lifts in small steps; m rad. */
function drawnOverlap(store: Store): number {
  const rocker = figureOf(store, 'rockerRatio');
  const [intake, exhaust] = sides.map((side) => {
    const [lobe, peak] = [drawnLobe(store, side), drawnPeak(store, side)];
    return (angle: number): number => rocker * lobe.liftAt(angle - peak);
  });
  const from = drawnPeak(store, 'intake') - figureOf(store, 'intakeDuration') / 2;
  const to = drawnPeak(store, 'exhaust') + figureOf(store, 'exhaustDuration') / 2;
  const step = (to - from) / 20_000;
  let sum = 0;
  for (let i = 0; i < 20_000; i++) {
    const angle = from + (i + 0.5) * step;
    sum += Math.min(intake!(angle), exhaust!(angle)) * step;
  }
  return sum;
}

describe('a rocker of 1.7 in the place of 1.6', () => {
  const [fewer, more] = [1.6, 1.7].map((rockerRatio) => engine({ rockerRatio })) as [Store, Store];

  it('lifts both valves by the lobe’s lift times the ratio', () => {
    for (const [store, ratio] of [
      [fewer, 1.6],
      [more, 1.7],
    ] as const) {
      expect(figureOf(store, 'intakeValveLift') / inch).toBeCloseTo(0.31 * ratio, 12);
      expect(figureOf(store, 'exhaustValveLift') / inch).toBeCloseTo(0.315 * ratio, 12);
    }
  });
  it('opens more area while both valves are open, as drawn lobes have it', () => {
    expect(moved(fewer, more, 'overlapArea')).toBeGreaterThan(0);
    for (const store of [fewer, more]) expect(figureOf(store, 'overlapArea') / drawnOverlap(store)).toBeCloseTo(1, 6);
  });
  it('brings both valves nearer to the pistons, as drawn', () => {
    for (const side of sides) expect(moved(fewer, more, `${side}Clearance`)).toBeLessThan(0);
    for (const store of [fewer, more]) expectDrawn(store);
  });
  it('does not move a hydraulic’s events, nor anything that stands on them', () => {
    for (const cell of quick.filter((c) => c.role !== 'input' && !beyondEvents(c.id)))
      expect(more.state(cell), cell.id).toEqual(fewer.state(cell));
  });

  describe('with solid tappets', () => {
    const lash = 0.02 * inch;
    const [six, seven] = [1.6, 1.7].map((rockerRatio) =>
      engine({ tappet: 'solid', intakeLash: lash, exhaustLash: lash, rockerRatio }),
    ) as [Store, Store];

    it('opens earlier and shuts later: a valve lands where the lobe’s rise is the lash over the ratio', () => {
      for (const [store, ratio] of [
        [six, 1.6],
        [seven, 1.7],
      ] as const) {
        const [intake, exhaust] = sides.map((side) => drawnLobe(store, side).duration(lash / ratio));
        expect(figureOf(store, 'intakeSeatDuration')).toBeCloseTo(intake!, 9);
        expect(figureOf(store, 'exhaustSeatDuration')).toBeCloseTo(exhaust!, 9);
        expect(figureOf(store, 'intakeClosing')).toBeCloseTo(intake! / 2 + 106 * degree - Math.PI, 9);
        expect(figureOf(store, 'intakeOpening')).toBeCloseTo(intake! / 2 - 106 * degree, 9);
        expect(figureOf(store, 'exhaustClosing')).toBeCloseTo(exhaust! / 2 - 114 * degree, 9);
        expect(figureOf(store, 'exhaustOpening')).toBeCloseTo(exhaust! / 2 + 114 * degree - Math.PI, 9);
      }
      expect(moved(six, seven, 'intakeClosing')).toBeGreaterThan(0.3 * degree);
      expect(moved(six, seven, 'dynamicRatio')).toBeLessThan(0);
    });
    it('leaves the lash at the valve: lift is less by it and the gap to the piston more', () => {
      for (const store of [six, seven]) {
        const hydraulic = put(engine(), { rockerRatio: figureOf(store, 'rockerRatio') });
        expect(moved(hydraulic, store, 'intakeValveLift')).toBeCloseTo(-lash, 14);
        for (const side of sides)
          expect(Math.abs(figureOf(store, `${side}Clearance`) - drawnGap(store, side).gap - lash)).toBeLessThan(1e-8);
      }
    });
    it('counts no lash for a hydraulic, whatever the hidden field holds', () => {
      const [plain, with10] = [engine(), engine({ intakeLash: lash, exhaustLash: lash })];
      for (const cell of quick.filter((c) => c.role !== 'input'))
        expect(with10.state(cell), cell.id).toEqual(plain.state(cell));
    });
  });
});

describe('a field of the valve train that is half typed', () => {
  // How deep the reliefs are cut is part of the volumes.
  const isOther = (c: Cell): boolean => c.kind.name !== 'choice' && c.id !== 'reliefCut';
  const fields = quick
    .filter((c) => c.role === 'input' && roomOf.get(c.id) === 'valves' && isOther(c))
    .map((c) => c.id);
  it.each(fields)('%s: the ratios of a hydraulic cam stand all the same', (id) => {
    const [whole, half] = [engine(), engine()];
    half.draft(inputOf(id), 'Write a figure.');
    for (const answer of ['intakeClosing', 'clearanceVolume', 'staticRatio', 'dynamicRatio', 'crankingPressure'])
      expect(half.state(cellOf(answer)), answer).toEqual(whole.state(cellOf(answer)));
  });
  it.each(['intakeLash', 'exhaustLash'])('%s, hidden behind a hydraulic: nothing waits for it', (id) => {
    const store = engine();
    store.draft(inputOf(id), 'Write a figure.');
    expect(quick.filter((c) => c.role !== 'input' && store.state(c).is !== 'ready').map((c) => c.id)).toEqual([]);
  });
  it('says at a solid what the seat timing waits for', () => {
    const store = engine({ tappet: 'solid', intakeLash: 0.02 * inch, exhaustLash: 0.02 * inch });
    store.draft(inputOf('rockerRatio'), 'Write a figure.');
    expect(store.state(cellOf('dynamicRatio'))).toMatchObject({ is: 'fault', fault: { about: 'rockerRatio' } });
  });
});

describe('a cam that is installed elsewhere', () => {
  const [early, straight, late] = [4, 0, -4].map((d) => engine({ camAdvance: d * degree })) as [Store, Store, Store];
  it('comes nearer with the intake valve and farther with the exhaust valve the earlier it stands, as drawn', () => {
    for (const [before, after] of [
      [late, straight],
      [straight, early],
    ] as const) {
      expect(moved(before, after, 'intakeClearance')).toBeLessThan(-0.01 * inch);
      expect(moved(before, after, 'exhaustClearance')).toBeGreaterThan(0.01 * inch);
    }
    for (const store of [early, straight, late]) expectDrawn(store);
  });
  it('keeps its lifts, its durations and its overlap area', () => {
    for (const id of ['intakeValveLift', 'intakeSeatDuration', 'overlapArea', 'intakeLiftArea'])
      expect(Math.abs(moved(late, early, id) / figureOf(late, id)), id).toBeLessThan(1e-9);
  });
});

describe('what is taken off or put between valve and piston', () => {
  const ten = 0.01 * inch;
  const round = (across: number): number => (Math.PI / 4) * across ** 2;
  const heads = round(2 * inch) + round(1.58 * inch);
  // What each does to the gap along the bore, and to the volume above the piston.
  const cases: readonly (readonly [what: string, Figures, along: number, volume: number])[] = [
    ['0.010 in milled off the head', { milling: ten }, -ten, -ten * 9.4 * inch ** 2],
    ['0.010 in cut off the deck', { deckClearance: 0.002 * inch }, -ten, -ten * round(4.07 * inch)],
    ['a gasket thicker by 0.010 in', { gasketThickness: 0.051 * inch }, ten, ten * round(4.16 * inch)],
    ['reliefs cut deeper by 0.010 in', { reliefCut: ten }, ten, ten * heads],
  ];
  const before = engine();
  it.each(cases)('%s: both gaps, the clearance volume and both ratios follow', (_, figures, along, volume) => {
    const after = engine(figures);
    for (const side of sides)
      for (const id of [`${side}Rest`, `${side}Clearance`])
        expect(Math.abs(moved(before, after, id) - along * Math.cos(20 * degree)), id).toBeLessThan(1e-9 * inch);
    expect(Math.abs(moved(before, after, 'clearanceVolume') / volume - 1)).toBeLessThan(1e-9);
    const clearance = figureOf(before, 'clearanceVolume') + volume;
    const swept = figureOf(before, 'sweptVolume');
    expect(figureOf(after, 'staticRatio')).toBeCloseTo((swept + clearance) / clearance, 9);
    // The closing stays, so the volume swept from there does.
    const climbed = figureOf(before, 'trappedVolume') - figureOf(before, 'clearanceVolume');
    expect(figureOf(after, 'dynamicRatio')).toBeCloseTo((climbed + clearance) / clearance, 9);
    expectDrawn(after);
  });
  it.each(cases.slice(0, 3))('%s, over a flat crown: the gap is measured along the bore', (_, figures, along) => {
    const [flat, after] = [{}, figures].map((more) => engine({ crownAtValve: 'flat', ...more })) as [Store, Store];
    for (const side of sides)
      for (const id of [`${side}Rest`, `${side}Clearance`])
        expect(Math.abs(moved(flat, after, id) - along), id).toBeLessThan(1e-9 * inch);
    expectDrawn(after);
  });
  it('a flat crown has no relief to cut: neither gap nor ratio moves', () => {
    const [flat, cut] = [0, ten].map((reliefCut) => engine({ crownAtValve: 'flat', reliefCut })) as [Store, Store];
    for (const id of ['intakeClearance', 'exhaustClearance', 'clearanceVolume', 'staticRatio', 'dynamicRatio'])
      expect(moved(flat, cut, id), id).toBe(0);
  });
  it('a drop that was measured is held, and what is taken off no longer reaches it', () => {
    const held = engine({ intakeRest: 0.2 * inch, milling: ten });
    expect(figureOf(held, 'intakeRest')).toBe(0.2 * inch);
    const wide = engine({ intakeRest: 0.21 * inch });
    expect(moved(held, wide, 'intakeClearance')).toBeCloseTo(ten, 12);
  });
});

describe('a card that no smooth lobe answers', () => {
  const cases: readonly (readonly [what: string, Figures, said: RegExp])[] = [
    [
      'durations too near each other',
      { intakeDuration050: 268 * degree },
      /advertised duration and the duration at 0\.050 in lie too close/,
    ],
    [
      'durations too far apart',
      { intakeDuration050: 120 * degree },
      /advertised duration and the duration at 0\.050 in lie too far apart/,
    ],
    [
      'the two ends of what is printed, swapped',
      { seatLift: 0.051 * inch },
      /seat lift and the duration at 0\.050 in are out of order/,
    ],
  ];
  it.each(cases)('%s: its two figures are named at the lobe, which alone has no answer', (_, figures, said) => {
    for (const entry of ['hydraulic', 'solid']) {
      const store = engine({ tappet: entry, intakeLash: 0.02 * inch, ...figures });
      expect(remarkOf(store, 'intakeLobeRemark')).toMatch(said);
      const without = quick.filter((cell) => store.state(cell).is !== 'ready');
      expect(without.map((cell) => cell.id)).toEqual(
        expect.arrayContaining(['intakeClearance', 'intakeLift', 'overlapArea']),
      );
      for (const cell of without) {
        expect(beyondEvents(cell.id), cell.id).toBe(true);
        const state = store.state(cell);
        expect(state.is === 'fault' ? state.fault.about : state.is, cell.id).toMatch(/^(intake|exhaust)LobeLift$/);
      }
      for (const id of ['dynamicRatio', 'fuelVerdict', 'intakeClosing', 'clearanceVolume'])
        expect(store.state(cellOf(id)).is, id).toBe('ready');
    }
  });
  it('leaves the other valve what it has', () => {
    const [sound, spoiled] = [engine(), engine({ intakeDuration050: 120 * degree })];
    for (const id of [
      'exhaustClearance',
      'exhaustLift',
      'exhaustGap',
      'exhaustSeatDuration',
      'exhaustClearanceVerdict',
    ])
      expect(spoiled.state(cellOf(id)), id).toEqual(sound.state(cellOf(id)));
    expect(remarkOf(spoiled, 'exhaustLobeRemark')).toBeNull();
  });
  it.each([
    [
      'over that at 0.050 in',
      { intakeDuration200: 230 * degree },
      /duration at 0\.050 in and the duration at 0\.200 in are out of order/,
    ],
    [
      'of a lobe that never rises as far',
      { intakeLobeLift: 0.19 * inch, intakeDuration200: 100 * degree },
      /lobe lift and the duration at 0\.200 in are out of order/,
    ],
  ] as const)(
    'a duration at 0.200 in %s is named, and the lobe of the other two figures stands in',
    (_, figures, said) => {
      const store = engine(figures);
      expect(remarkOf(store, 'intakeLobeRemark')).toMatch(said);
      expect(valueOf(store, 'intakeLobe')).toEqual(valueOf(put(store, { intakeDuration200: null }), 'intakeLobe'));
    },
  );
  it('says what the second figure could be, and that is answered', () => {
    const said = remarkOf(engine({ intakeDuration050: 120 * degree }), 'intakeLobeRemark')!;
    const [, low, high] = /could be ([\d.]+)° to ([\d.]+)°/.exec(said)!;
    for (const edge of [Number(low) + 1, Number(high) - 1])
      expect(remarkOf(engine({ intakeDuration050: edge * degree }), 'intakeLobeRemark')).toBeNull();
  });
});

describe('the springs', () => {
  it('have left, at the larger lift, what installed height, solid height and seal leave', () => {
    const store = engine();
    expect(figureOf(store, 'coilBind') / inch).toBeCloseTo(1.8 - 1.15 - 0.315 * 1.52, 12);
    expect(figureOf(store, 'retainerRoom') / inch).toBeCloseTo(0.56 - 0.315 * 1.52, 12);
    expect(u.toUnit(figureOf(store, 'springOpenForce'), u.poundForce)).toBeCloseTo(120 + 370 * 0.31 * 1.52, 9);
  });
  it('are said to be short of room under 0.060 in to solid and 0.050 in to the seal', () => {
    for (const [id, field, enough, short] of [
      ['coilBindRemark', 'springSolidHeight', 1.26, 1.27],
      ['retainerRoomRemark', 'retainerToSeal', 0.53, 0.52],
    ] as const) {
      expect(remarkOf(engine({ [field]: enough * inch }), id)).toBeNull();
      expect(remarkOf(engine({ [field]: short * inch }), id)).toMatch(/is left/);
    }
  });
  it('hold the valve to a speed where its inertia over the nose is their force: Newton on a drawn lobe', () => {
    const store = engine();
    const lobe = drawnLobe(store, 'intake');
    const rocker = 1.52;
    const h = 1e-3;
    let lowest = Infinity;
    for (let angle = 0; angle < 1.2; angle += 1e-3) {
      const bend = (lobe.liftAt(angle + h) - 2 * lobe.liftAt(angle) + lobe.liftAt(angle - h)) / h ** 2;
      const force = u.si(120, u.poundForce) + u.si(370, u.poundPerInch) * rocker * lobe.liftAt(angle);
      if (bend < 0) lowest = Math.min(lowest, Math.sqrt(force / (0.255 * rocker * -bend)));
    }
    expect(figureOf(store, 'separationSpeed') / lowest).toBeCloseTo(1, 4);
  });
  it('let go earlier with a heavier valve, by the root of the mass, and later with more force', () => {
    const at = (figures: Figures): number => figureOf(engine(figures), 'separationSpeed');
    expect(at({ valveSideMass: 0.2 })).toBeGreaterThan(0);
    expect(at({ valveSideMass: 0.2 }) / at({ valveSideMass: 0.4 })).toBeCloseTo(Math.SQRT2, 9);
    expect(at({ springSeatForce: 700 })).toBeGreaterThan(at({ springSeatForce: 500 }));
    expect(at({ springRate: 7e4 })).toBeGreaterThan(at({ springRate: 6e4 }));
    expect(at({ rockerRatio: 1.7 })).toBeLessThan(at({ rockerRatio: 1.5 }));
  });
  it('are said to be too weak where they let go below the engine speed stated', () => {
    const speed = figureOf(engine(), 'separationSpeed');
    expect(remarkOf(engine({ engineSpeed: speed * 0.999 }), 'separationRemark')).toBeNull();
    expect(remarkOf(engine({ engineSpeed: speed * 1.001 }), 'separationRemark')).toMatch(/leave its lobe/);
  });
});

describe('reliefs and crown', () => {
  it('leave half the difference of the diameters around a valve in the middle, and a word when it is too little', () => {
    for (const [side, valve] of [
      ['intake', 2],
      ['exhaust', 1.58],
    ] as const) {
      const of = (relief: number, crown: string): Store =>
        engine({ [`${side}ReliefDiameter`]: relief * inch, crownAtValve: crown });
      expect(figureOf(of(valve + 0.14, 'relief'), `${side}RadialClearance`) / inch).toBeCloseTo(0.07, 12);
      expect(remarkOf(of(valve + 0.101, 'relief'), `${side}RadialRemark`)).toBeNull();
      expect(remarkOf(of(valve + 0.099, 'relief'), `${side}RadialRemark`)).toMatch(/too near the wall/);
      expect(remarkOf(of(valve - 0.1, 'flat'), `${side}RadialRemark`)).toBeNull();
    }
  });
  it('leave less crown the deeper they are cut, and a word when it is too thin', () => {
    expect(figureOf(engine({ reliefCut: 0.03 * inch }), 'crownLeft') / inch).toBeCloseTo(0.17, 12);
    expect(remarkOf(engine({ reliefCut: 0.049 * inch }), 'crownRemark')).toBeNull();
    expect(remarkOf(engine({ reliefCut: 0.051 * inch }), 'crownRemark')).toMatch(/too thin a crown/);
  });
  it('are asked for more room with aluminum rods', () => {
    const gap = { intakeSeatDepth: 0.09 * inch }; // 0.107 in of clearance
    for (const [rodMaterial, word] of [
      ['steel', 'clear'],
      ['aluminum', 'under'],
    ] as const)
      expect(valueOf(engine({ ...gap, rodMaterial }), 'intakeClearanceVerdict')).toMatchObject({ word });
  });
});

// ---------------------------------------------------------------------------------------------- figures out of reason

const finite = (value: unknown): boolean =>
  typeof value === 'number'
    ? Number.isFinite(value)
    : value instanceof Float64Array
      ? value.every(Number.isFinite)
      : typeof value === 'object' && value !== null
        ? Object.values(value).every(finite)
        : value !== undefined;
/** Whatever is typed: a value without holes, or a sentence that says why there is none. */
function insistSound(store: Store, typed: string): void {
  for (const cell of quick) {
    const state = store.state(cell);
    if (state.is === 'ready') {
      if (finite(state.value) && !/NaN|Infinity|undefined/.test(cell.kind.text(state.value, 'us'))) continue;
      throw new Error(`${typed}: ${cell.id} is ${JSON.stringify(state.value)}`);
    }
    const words = state.is === 'fault' ? say(state.fault.message, 'us') : state.is;
    if (!/^[A-Z].*\.$/s.test(words)) throw new Error(`${typed}: ${cell.id} says ${words}`);
  }
}
const valveInputs = [...catalogue.values()].filter(
  (c): c is Input<number> => c.role === 'input' && c.kind.name === 'scalar' && roomOf.get(c.id) === 'valves',
);
const settings: readonly Figures[] = [
  { tappet: 'hydraulic', crownAtValve: 'relief' },
  { tappet: 'solid', crownAtValve: 'flat', intakeLash: 0.02 * inch, exhaustLash: 0.02 * inch },
];

describe('figures out of all reason', () => {
  it('one at a time, of every valve input, leave values or sentences', () => {
    expect(valveInputs.length).toBeGreaterThan(25);
    for (const figures of settings) {
      const store = engine(figures);
      for (const input of valveInputs) {
        const stood = figureOf(store, input.id);
        const [low, high] = input.hard!;
        for (const value of [low, high, low - 1, high + 1, 0, -1, 1e-320, 1e308, -1e308]) {
          store.set([[input, value]], { what: 'extreme' });
          insistSound(store, `${input.id} = ${value}`);
          if (value < low || value > high) expect(nothing(store, input.id)).toMatch(/^[A-Z].*\.$/s);
        }
        store.set([[input, stood]], { what: 'back' });
      }
      expect(store.state(cellOf('intakeClearance')).is).toBe('ready');
    }
  });
  it('several at once, anywhere in what physics allows, leave values or sentences', () => {
    const others = [
      'seatLift',
      'intakeDuration',
      'intakeDuration050',
      'exhaustDuration',
      'stroke',
      'rod',
      'pinOffset',
      'milling',
      'camAdvance',
    ];
    const all = [...valveInputs, ...others.map((id) => inputOf(id) as Input<number>)];
    const share = fc.oneof(fc.constantFrom(0, 1), fc.double({ min: 0, max: 1, noNaN: true }));
    let answered = 0;
    fc.assert(
      fc.property(
        fc.constantFrom(...settings),
        fc.dictionary(fc.constantFrom(...all.map((c) => c.id)), share, { minKeys: 1, maxKeys: 5 }),
        (figures, shares) => {
          const typed = Object.entries(shares).map(([id, t]) => {
            const [low, high] = inputOf(id).hard!;
            return [id, low + (high - low) * t] as const;
          });
          const store = engine({ ...figures, ...Object.fromEntries(typed) });
          insistSound(store, JSON.stringify(typed));
          if (store.state(cellOf('intakeClearance')).is === 'ready') answered++;
        },
      ),
      { numRuns: 200, seed: 20260711 },
    );
    expect(answered).toBeGreaterThan(50);
  }, 20_000);
  it('a lash that takes the whole lift: the valve never leaves its seat, and that is said at the lash', () => {
    for (const side of sides) {
      const lobe = {
        tappet: 'solid',
        [`${side}LobeLift`]: 0.15 * inch,
        [`${side}Duration050`]: 190 * degree,
        rockerRatio: 0.5,
      };
      const store = engine({ ...lobe, [`${side}Lash`]: 0.08 * inch });
      expect(remarkOf(store, `${side}LobeRemark`)).toBeNull();
      expect(nothing(store, `${side}SeatDuration`)).toMatch(/never leaves its seat/);
      expect(store.faultAbout(cellOf(`${side}Lash`))).toMatch(/never leaves its seat/);
      expect(figureOf(store, `${side}ValveLift`)).toBe(0);
      expect(figureOf(store, `${side}Clearance`)).toBe(figureOf(store, `${side}Rest`));
      expect(store.state(cellOf('overlap')).is).toBe('fault');
      insistSound(store, `${side} lash`);
    }
  });
  it('valves that do not fit beside each other in the bore get a word, and no answer is lost', () => {
    expect(remarkOf(engine(), 'valvesFitRemark')).toBeNull();
    const store = engine({ intakeValveDiameter: 5 * inch });
    expect(remarkOf(store, 'valvesFitRemark')).toMatch(/bore/);
    expect(quick.filter((cell) => store.state(cell).is !== 'ready')).toEqual([]);
  });
  it.each(['springRate', 'intakeSeatDepth', 'exhaustReliefDiameter', 'crownThickness', 'exhaustMinimum'])(
    'a field left empty, %s: its own readers say so, and no other chapter does',
    (id) => {
      const store = engine();
      store.draft(inputOf(id), 'Write a figure here.');
      const without = quick.filter((cell) => store.state(cell).is !== 'ready');
      expect(without.length).toBeGreaterThan(1);
      for (const cell of without) {
        expect(['valves', 'output'], cell.id).toContain(roomOf.get(cell.id)); // the cycle reads the lifts
        expect(nothing(store, cell.id)).toBe('Write a figure here.');
      }
      store.draft(inputOf(id), null);
      expect(quick.filter((cell) => store.state(cell).is !== 'ready')).toEqual([]);
    },
  );
});

it('with hydraulic tappets no lobe, rocker, valve or relief moves the dynamic ratio, and nothing there runs', () => {
  const store = engine();
  const shape = valveInputs.filter(({ id }) => id !== 'reliefCut');
  const expected = figureOf(store, 'dynamicRatio');
  const inside = ({ slider }: Cell & { slider?: readonly [number, number] }, t: number): number =>
    slider![0] + (slider![1] - slider![0]) * t;
  let ran = 0;
  fc.assert(
    fc.property(fc.constantFrom(...shape), fc.double({ min: 0, max: 1, noNaN: true }), (input, t) => {
      store.live.set(input, inside(input, t));
      store.live.run();
      ran += store.live.ran.length;
      for (const id of store.live.ran) if (!beyondEvents(id)) throw new Error(`${input.id} runs ${id}`);
      expect(figureOf(store, 'dynamicRatio')).toBe(expected);
    }),
    { numRuns: 300, seed: 20260712 },
  );
  expect(ran).toBeGreaterThan(300);
  for (const id of ['intakeDuration200', 'exhaustDuration200']) {
    store.live.set(inputOf(id), 130 * degree);
    store.live.run();
    expect(store.live.ran).toContain(id.replace('Duration200', 'Lobe'));
    for (const name of store.live.ran) expect(beyondEvents(name), name).toBe(true);
  }
});
