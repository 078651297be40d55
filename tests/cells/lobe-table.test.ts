import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Cell } from '../../src/graph/cell.ts';
import type { Curve, Table } from '../../src/graph/kind.ts';
import { typedTable } from '../../src/graph/typed-table.ts';
import type { Store } from '../../src/notebook/store.ts';
import type { Lobe } from '../../src/physics/valve/lobe.ts';
import { lobeLift } from '../../src/physics/valve/lobe.ts';
import { say } from '../../src/units/phrase.ts';
import { cellOf, figureOf, inputOf, opened, quick, scenario, valueOf } from '../notebook/notebooks.ts';

const inch = 0.0254;
const deg = Math.PI / 180;
type Row = readonly [angle: number, lift: number];
type Figures = Readonly<Record<string, unknown>>;

const engine = (figures: Figures = {}): Store => {
  const store = opened(scenario('edge-of-premium'));
  for (const [id, value] of Object.entries(figures)) store.set([[inputOf(id), value]], { what: id });
  return store;
};
const onTable = (intake: readonly Row[], figures: Figures = {}): Store =>
  engine({ lobeSource: 'table', intakeLobeTable: intake, exhaustLobeTable: intake, ...figures });
const saidAt = (store: Store, id: string): string | null => store.faultAbout(cellOf(id));
const curveOf = (store: Store, id: string): Curve => valueOf(store, id) as Curve;

// An invented lobe, the square of a raised cosine whose phase runs through a parabola: its closing flank is the longer.
const lift = 0.33 * inch;
const [opens, closes] = [140 * deg, 168 * deg]; // of the crank, to either side of the peak
const curl = (Math.PI * (opens - closes)) / (opens * closes * (opens + closes));
const pace = Math.PI / opens + curl * opens;
const drawn = {
  lift: (a: number): number =>
    a <= -opens || a >= closes ? 0 : lift * ((1 + Math.cos((pace + curl * a) * a)) / 2) ** 2,
  /** Where a flank has a height: the phase, then the parabola backward. */
  place: (height: number, way: 1 | -1): number => {
    const phase = way * Math.acos(2 * Math.sqrt(height / lift) - 1);
    return (2 * phase) / (pace + Math.sqrt(pace * pace + 4 * curl * phase));
  },
};
/** Read every two cam degrees on a wheel whose zero is anywhere. */
const rows: readonly Row[] = Array.from({ length: 78 }, (_, i): Row => {
  const at = -opens + i * 4 * deg;
  return [at / 2 + 100 * deg, i === 0 || i === 77 ? 0 : drawn.lift(at)];
});
const center = 106 * deg; // as the starting point has it
const separation = 110 * deg;
const [rocker, lash] = [1.52, 0.02 * inch];

describe('a table read off the card’s own lobe', () => {
  const card = engine();
  const lobe = valueOf(card, 'intakeLobe') as Lobe;
  const end = lobe.ramp!.end;
  // Every degree of the cam from end to end: the last step may be a short one.
  const places = [...Array.from({ length: Math.ceil(end / deg) }, (_, i) => -end + i * 2 * deg), end];
  const table = onTable(places.map((at, i): Row => [at / 2, i % (places.length - 1) === 0 ? 0 : lobeLift(lobe, at)]));

  it('is the card’s lobe again: in lift, in the durations the card prints, in area', () => {
    const [a, b] = [curveOf(card, 'intakeLift'), curveOf(table, 'intakeLift')];
    expect(Math.max(...a.y.map((y, i) => Math.abs(y - b.y[i]!)))).toBeLessThan(2e-5 * inch);
    expect(figureOf(table, 'intakeValveLift') / inch).toBeCloseTo(0.31 * 1.52, 5);
    for (const [at, printed] of [
      [0.05, 220],
      [0.006, 270],
    ] as const) {
      table.set([[inputOf('readAtLift'), at * inch]], { what: 'read' });
      expect(figureOf(table, 'intakeDurationAtLift') / deg).toBeCloseTo(printed, 1);
    }
    expect(figureOf(table, 'intakeLiftArea') / figureOf(card, 'intakeLiftArea')).toBeCloseTo(1, 5);
  });
  it('leaves the same gap to the piston, and its spring lets go at the same speed', () => {
    expect(figureOf(table, 'intakeClearance') / inch).toBeCloseTo(figureOf(card, 'intakeClearance') / inch, 4);
    expect(figureOf(table, 'separationSpeed') / figureOf(card, 'separationSpeed')).toBeCloseTo(1, 3);
  });
});

describe('a lobe that closes more slowly than it opens', () => {
  it('is read on either flank: durations, area and lift of the drawn lobe', () => {
    const store = onTable(rows, { readAtLift: 0.1 * inch });
    const across = drawn.place(0.1 * inch, 1) - drawn.place(0.1 * inch, -1);
    expect(figureOf(store, 'intakeDurationAtLift') / deg).toBeCloseTo(across / deg, 3);
    expect(figureOf(store, 'exhaustDurationAtLift') / deg).toBeCloseTo(across / deg, 3);
    let area = 0;
    for (let at = -opens; at < closes; at += 1e-4) area += drawn.lift(at) * 1e-4;
    expect(figureOf(store, 'intakeLiftArea') / (area * rocker)).toBeCloseTo(1, 4);
    const { x, y } = curveOf(store, 'intakeLift');
    for (const [i, at] of x.entries())
      expect(Math.abs(y[i]! - rocker * drawn.lift(at - 2 * Math.PI - center))).toBeLessThan(1e-4 * inch);
    expect(figureOf(store, 'intakeValveLift') / inch).toBeCloseTo(0.33 * rocker, 4);
  });

  it('rises faster than it falls', () => {
    const { x, y } = curveOf(onTable(rows), 'intakeVelocity');
    expect(Math.max(...y)).toBeGreaterThan(1.1 * -Math.min(...y));
    const h = 1e-5;
    for (const [i, at] of x.entries())
      expect(Math.abs(y[i]! - (rocker * (drawn.lift(at + h) - drawn.lift(at - h))) / (2 * h))).toBeLessThan(2e-5);
  });

  it('with solid tappets opens and shuts where its own flanks meet the lash', () => {
    const store = onTable(rows, { tappet: 'solid', intakeLash: lash, exhaustLash: lash });
    const [up, down] = [-drawn.place(lash / rocker, -1) / deg, drawn.place(lash / rocker, 1) / deg];
    expect(down - up).toBeGreaterThan(10);
    expect(figureOf(store, 'intakeOpening') / deg).toBeCloseTo(up - 106, 2);
    expect(figureOf(store, 'intakeClosing') / deg).toBeCloseTo(down + 106 - 180, 2);
    expect(figureOf(store, 'exhaustOpening') / deg).toBeCloseTo(up + 114 - 180, 2);
    expect(figureOf(store, 'exhaustClosing') / deg).toBeCloseTo(down - 114, 2);
    expect(figureOf(store, 'intakeSeatDuration') / deg).toBeCloseTo(up + down, 2);
    // What the card says of 0.050 in is the card's own arithmetic: 220 / 2 + 106 − 180.
    expect(figureOf(store, 'intakeClosing050') / deg).toBeCloseTo(36, 9);
  });

  it('is advanced as a whole', () => {
    const figures = { tappet: 'solid', intakeLash: lash, exhaustLash: lash };
    const [straight, early] = [onTable(rows, figures), onTable(rows, { ...figures, camAdvance: 4 * deg })];
    for (const [id, by] of [
      ['intakeOpening', 4],
      ['intakeClosing', -4],
      ['exhaustOpening', 4],
      ['exhaustClosing', -4],
    ] as const)
      expect((figureOf(early, id) - figureOf(straight, id)) / deg, id).toBeCloseTo(by, 9);
  });

  it('has the overlap of two drawn lobes, each counted while it is the lesser', () => {
    // Closer together than the starting point has them, and with less lash: this lobe is a slender one.
    const [gap, middle, apart] = [0.002 * inch, 98 * deg, 100 * deg];
    const store = onTable(rows, {
      tappet: 'solid',
      intakeLash: gap,
      exhaustLash: gap,
      intakeCenterline: middle,
      lobeSeparation: apart,
    });
    const open = (at: number): number => Math.max(0, rocker * drawn.lift(at) - gap);
    let sum = 0;
    for (let at = -1.5; at < 1.5; at += 1e-4) sum += Math.min(open(at - middle), open(at + 2 * apart - middle)) * 1e-4;
    expect(sum / (inch * deg)).toBeGreaterThan(0.1);
    expect(figureOf(store, 'overlapArea') / sum).toBeCloseTo(1, 3);
  });

  it('comes as near to the piston as the drawn lobe does, by plane geometry of crank and rod', () => {
    const store = onTable(rows);
    const [stroke, rod] = [figureOf(store, 'stroke'), figureOf(store, 'rod')];
    const drop = (a: number): number =>
      stroke / 2 + rod - (stroke / 2) * Math.cos(a) - Math.sqrt(rod ** 2 - ((stroke / 2) * Math.sin(a)) ** 2);
    const lean = Math.cos(figureOf(store, 'intakeValveAngle'));
    for (const [side, peak] of [
      ['intake', center],
      ['exhaust', center - 2 * separation],
    ] as const) {
      let least = Infinity;
      for (let a = -1.5; a < 1.5; a += 1e-4)
        least = Math.min(least, figureOf(store, `${side}Rest`) + drop(a) * lean - rocker * drawn.lift(a - peak));
      expect(figureOf(store, `${side}Clearance`) / inch, side).toBeCloseTo(least / inch, 4);
    }
  });

  it('is the same read against the crank’s degrees', () => {
    const [cam, crank] = [
      onTable(rows),
      onTable(
        rows.map(([a, y]): Row => [2 * a, y]),
        { lobeTableAngles: 'crank' },
      ),
    ];
    for (const id of ['intakeDurationAtLift', 'exhaustClearance', 'separationSpeed'])
      expect(figureOf(crank, id)).toBeCloseTo(figureOf(cam, id), 9);
  });

  it('with hydraulic tappets leaves the timing to the card: 270 / 2 + 106 − 180 is 61', () => {
    expect(figureOf(onTable(rows), 'intakeClosing') / deg).toBeCloseTo(61, 9);
    expect(figureOf(onTable(rows, { camEntry: 'events', tappet: 'solid' }), 'intakeClosing') / deg).toBeCloseTo(61, 9);
  });
});

describe('no table, or none that is a lobe', () => {
  it('is asked for at its field; the timing, and the other valve, go on', () => {
    const store = engine({ lobeSource: 'table', exhaustLobeTable: rows });
    expect(saidAt(store, 'intakeLobeTable')).toBe('Paste the lift table of the intake lobe.');
    expect(saidAt(store, 'exhaustLobeTable')).toBeNull();
    expect(store.state(cellOf('intakeLift')).is).toBe('fault');
    expect(store.state(cellOf('exhaustClearance')).is).toBe('ready');
    expect(figureOf(store, 'intakeClosing') / deg).toBeCloseTo(61, 9);
    store.set([[inputOf('lobeSource'), 'card']], { what: 'card' });
    expect(saidAt(store, 'intakeLobeTable')).toBeNull();
    expect(store.state(cellOf('intakeLift')).is).toBe('ready');
  });

  const pasted = (text: string): Store => {
    const got = typedTable(cellOf('intakeLobeTable').kind as Table, text, 'us');
    if ('fault' in got) throw new Error(got.fault);
    return onTable(got.rows as readonly Row[]);
  };
  it.each([
    ['with too few rows', '0 0\n5 .1\n10 .2\n15 0', /at least five rows/],
    ['with angles that fall', '0 0\n5 .1\n15 .2\n10 .1\n20 0', /Row 4 .* stands before row 3/],
    ['with an angle twice', '0 0\n5 .1\n10 .2\n10 .1\n20 0', /Rows 3 and 4 .* same angle/],
    ['with a lift below zero', '0 0\n5 .1\n10 -.2\n15 .1\n20 0', /Row 3 .* not below zero/],
    ['that begins above zero', '0 .01\n5 .1\n10 .2\n15 .1\n20 0', /begin and end on the base circle/],
    ['that ends above zero', '0 0\n5 .1\n10 .2\n15 .1\n20 .01', /begin and end on the base circle/],
    ['that never lifts', '0 0\n5 0\n10 0\n15 0\n20 0', /has no lift/],
    ['over more than a turn of the cam', '0 0\n5 .1\n10 .2\n15 .1\n361 0', /longer than one turn/],
    ['with a lift out of all reason', '0 0\n5 .1\n10 1e300\n15 .1\n20 0', /Row 3 .* more than an inch/],
    ['with angles out of all reason', '-1e308 0\n5 .1\n10 .2\n15 .1\n1e308 0', /longer than one turn/],
    ['with rows closer than arithmetic can part', '0 0\n1e-320 .1\n2e-320 .2\n3e-320 .1\n4e-320 0', /^[A-Z].*\.$/],
  ])('%s: a sentence at its field, and nothing lost', (_, text, sentence) => {
    const store = pasted(text);
    expect(saidAt(store, 'intakeLobeTable')).toMatch(sentence);
    expect(valueOf(store, 'intakeLobeTable')).toHaveLength(text.split('\n').length);
    expect(store.state(cellOf('dynamicRatio')).is).toBe('ready');
  });

  it('of any figures at all leaves values without holes, or sentences', () => {
    const figure = fc.oneof(
      fc.constantFrom(0, 1, -1, 1e-320, 1e308, -1e308, 1e-9),
      fc.double({ min: 0, max: 7, noNaN: true }),
    );
    const row = fc.tuple(figure, fc.oneof(fc.constant(0), fc.double({ min: 0, max: 0.026, noNaN: true }), figure));
    const some = fc.array(row, { maxLength: 9 }).map((all) => all.toSorted((a, b) => a[0] - b[0]));
    const step = fc.double({ min: 1e-3, max: 0.5, noNaN: true });
    const rising = fc.array(fc.tuple(step, fc.double({ min: 0, max: 0.025, noNaN: true })), {
      minLength: 5,
      maxLength: 12,
    });
    const likely = rising.map((all) => {
      let at = 0;
      return all.map(([by, y], i): Row => [(at += by), i === 0 || i === all.length - 1 ? 0 : y]);
    });
    const tables = fc.oneof(some, likely);
    const store = engine({ lobeSource: 'table', tappet: 'solid', intakeLash: lash, exhaustLash: lash });
    let lobes = 0;
    fc.assert(
      fc.property(tables, (intake) => {
        store.set([[inputOf('intakeLobeTable'), intake]], { what: 'paste' });
        for (const cell of quick) insistSound(store, cell);
        if (store.state(cellOf('intakeLift')).is === 'ready') lobes++;
      }),
      { numRuns: 300, seed: 20260711 },
    );
    expect(lobes).toBeGreaterThan(20);
  });
});

const finite = (value: unknown): boolean =>
  typeof value === 'number'
    ? Number.isFinite(value)
    : typeof value === 'object' && value !== null
      ? Object.values(value).every(finite)
      : value !== undefined;
function insistSound(store: Store, cell: Cell): void {
  const state = store.state(cell);
  if (state.is === 'ready') {
    if (!finite(state.value)) throw new Error(`${cell.id} is ${JSON.stringify(state.value)}`);
  } else if (state.is !== 'fault' || !/^[A-Z].*\.$/s.test(say(state.fault.message, 'us')))
    throw new Error(`${cell.id} is ${JSON.stringify(state)}`);
}
