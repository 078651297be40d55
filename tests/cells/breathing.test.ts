import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { catalogue, chapters, roomOf } from '../../cells/index.ts';
import type { Input } from '../../src/graph/cell.ts';
import type { Curve, Rows, Table, Verdict } from '../../src/graph/kind.ts';
import { typedTable } from '../../src/graph/typed-table.ts';
import type { Store } from '../../src/notebook/store.ts';
import { type Phrase, say } from '../../src/units/phrase.ts';
import type { System } from '../../src/units/quantity.ts';
import * as u from '../../src/units/unit.ts';
import { drawnLobe, drawnPeak, type Side } from '../notebook/drawn-engine.ts';
import { cellOf, figureOf, inputOf, opened, quick, scenario, scenarios, valueOf } from '../notebook/notebooks.ts';

const inch = u.si(1, u.inch);
const cfm = u.si(1, u.cubicFeetPerMinute);
const mercury = u.si(1, u.inchOfMercury);
const water = u.si(1, u.inchOfWater);
const degree = u.si(1, u.degree);
const rpm = u.si(1, u.revolutionsPerMinute);
const sides: readonly Side[] = ['intake', 'exhaust'];

type Figures = Readonly<Record<string, unknown>>;
const put = (store: Store, figures: Figures): Store => {
  for (const [id, value] of Object.entries(figures)) store.put(cellOf(id), value, { what: id });
  return store;
};
/** The first starting point with some figures put elsewhere, SI. */
const engine = (figures: Figures = {}): Store => put(opened(scenario('edge-of-premium')), figures);
const rowsOf = (...pairs: readonly (readonly [lift: number, flow: number])[]): Rows =>
  pairs.map(([lift, flow]) => [lift * inch, flow * cfm]);
const remarkOf = (store: Store, id: string): string | null => {
  const said = valueOf(store, id) as Phrase | null;
  return said === null ? null : say(said, 'us');
};
const nothing = (store: Store, id: string): string => {
  const state = store.state(cellOf(id));
  if (state.is !== 'fault') throw new Error(`${id} is ${state.is}`);
  return say(state.fault.message, 'us');
};
const inUnit = (store: Store, id: string, unit: u.Unit): number => u.toUnit(figureOf(store, id), unit);
/** What may feel it: itself, and the cycle behind it. */
const downstream = ['breathing', 'output'];
const own = quick.filter((c) => c.role !== 'input' && roomOf.get(c.id) === 'breathing');

// The bench figures of the first starting point, as a customer would write them down.
const intakeBench = [
  [0.1, 64],
  [0.2, 128],
  [0.3, 180],
  [0.4, 215],
  [0.5, 232],
] as const;
/** Read off the sheet by hand: straight from row to row, and held past the last. */
const read = (bench: readonly (readonly [number, number])[], lift: number): number => {
  const all = [[0, 0], ...bench] as const;
  const i = all.findIndex(([at]) => at >= lift);
  if (i < 0) return all.at(-1)![1];
  if (i === 0) return 0;
  const [[a, fa], [b, fb]] = [all[i - 1]!, all[i]!];
  return fa + ((fb - fa) * (lift - a)) / (b - a);
};

describe('a head with bench figures', () => {
  const store = engine();
  const lift = 0.31 * 1.52;

  it('flows at full lift what the sheet says there', () => {
    expect(inUnit(store, 'intakeFlow28', u.cubicFeetPerMinute)).toBeCloseTo(read(intakeBench, lift), 6);
    expect(figureOf(store, 'flowRatio')).toBeCloseTo(0.74, 2);
  });
  it('has the coefficients of its effective area, at 140.39 cfm a square inch, over curtain and throat', () => {
    // Heywood, 1988, eq. C.8, in standard air.
    const area = read(intakeBench, lift) / 140.39;
    expect(figureOf(store, 'intakeCurtainCoefficient')).toBeCloseTo(area / (Math.PI * 2 * lift), 4);
    const throat = (Math.PI / 4) * (1.76 ** 2 - 0.342 ** 2);
    expect(figureOf(store, 'intakeThroatCoefficient')).toBeCloseTo(area / throat, 4);
    expect(figureOf(store, 'intakeLeastArea') / inch ** 2).toBeCloseTo(throat, 9); // past 0.439 in of lift
  });
  it('is open as far as a drawn lobe lifts it, degree by degree', () => {
    const { x, y } = valueOf(store, 'intakeOpenArea') as Curve;
    const [lobe, peak] = [drawnLobe(store, 'intake'), drawnPeak(store, 'intake')];
    x.forEach((angle, i) => {
      const lifted = (1.52 * lobe.liftAt(angle - 2 * Math.PI - peak)) / inch;
      expect(Math.abs(y[i]! / inch ** 2 - read(intakeBench, lifted) / 140.39)).toBeLessThan(2e-4);
    });
  });
  it('has Taylor’s index and the mean Mach number of that lobe and sheet, counted by hand', () => {
    const [lobe, peak] = [drawnLobe(store, 'intake'), drawnPeak(store, 'intake')];
    const duration = 270 * degree;
    let sum = 0; // in² rad
    const step = 2e-4;
    for (let a = -2.6; a < 2.6; a += step) sum += (read(intakeBench, (1.52 * lobe.liftAt(a)) / inch) / 140.39) * step;
    expect(peak).toBeCloseTo(106 * degree, 12);
    const mean = sum / duration;
    expect(figureOf(store, 'meanFlowCoefficient')).toBeCloseTo(mean / ((Math.PI / 4) * 4), 3);
    // Sound: 331.3 m/s at 0 °C, as the root of the absolute temperature.
    const sound = 331.3 * Math.sqrt(figureOf(store, 'airTemperature') / 273.15);
    const piston = (2 * 3.54 * inch * 5500) / 60;
    const index = (((Math.PI / 4) * 4.07 ** 2) / mean) * (piston / sound);
    expect(figureOf(store, 'inletMachIndex') / index).toBeCloseTo(1, 3);
    // What goes in, through the mean area, in the 270 degrees of the opening.
    const volume = 0.85 * (Math.PI / 4) * 4.07 ** 2 * 3.54 * inch;
    expect(figureOf(store, 'meanInletMach') / (volume / mean / (270 / (6 * 5500)) / sound)).toBeCloseTo(1, 3);
  });
  it('shows its sheet again, at 28 inches of water, up to the last row', () => {
    const { x, y } = valueOf(store, 'intakeFlowByLift') as Curve;
    x.forEach((at, i) => expect(y[i]! / cfm).toBeCloseTo(read(intakeBench, at / inch), 6));
    expect(x.at(-1)! / inch).toBeCloseTo(0.5, 12);
  });
});

describe('a head measured at another depression', () => {
  it('with its figures multiplied by the square root rule is read 2 to 3 % lower at 28 from 10', () => {
    const [usual, ten] = [
      engine(),
      engine({
        flowDepression: 10 * water,
        intakeFlow: rowsOf(...intakeBench.map(([lift, flow]) => [lift, flow / 1.6733] as const)), // √(28/10)
      }),
    ];
    const share = figureOf(ten, 'intakeFlow28') / figureOf(usual, 'intakeFlow28');
    expect(share).toBeLessThan(0.98);
    expect(share).toBeGreaterThan(0.97);
    expect(figureOf(ten, 'depressionFactor')).toBeCloseTo(1.6733, 4);
    expect(figureOf(usual, 'depressionFactor')).toBe(1);
  });
  it('pulling harder for the same flow, is the smaller', () => {
    const at = (inches: number): number =>
      figureOf(engine({ flowDepression: inches * water }), 'intakeCurtainCoefficient');
    expect(at(25)).toBeGreaterThan(at(28));
    expect(at(10)).toBeGreaterThan(at(25));
  });
});

describe('a head without bench figures', () => {
  const store = engine({ intakeFlow: [], exhaustFlow: [] });
  it('is guessed, and both fields say so', () => {
    for (const side of sides) expect(remarkOf(store, `${side}FlowRemark`)).toMatch(/guessed from the valve’s diameter/);
    for (const side of sides) expect(remarkOf(engine(), `${side}FlowRemark`)).toBeNull();
  });
  it('is guessed within the band of published intake valves: 0.08 about 0.54 at this lift', () => {
    // Heywood, 1988, fig. 6-18, from memory: 0.58 at 0.20 of the diameter, 0.52 at 0.25.
    const share = (0.31 * 1.52) / 2;
    const published = 0.58 + ((0.52 - 0.58) * (share - 0.2)) / 0.05;
    expect(Math.abs(figureOf(store, 'intakeCurtainCoefficient') - published)).toBeLessThan(0.08);
  });
  it('has a value for everything else', () => {
    expect(own.filter((cell) => store.state(cell).is !== 'ready')).toEqual([]);
  });
  it('flows more with a larger valve, which bench figures do not know of', () => {
    for (const side of sides) {
      const larger = { [`${side}ValveDiameter`]: figureOf(store, `${side}ValveDiameter`) * 1.05 };
      const guessed = engine({ intakeFlow: [], exhaustFlow: [], ...larger });
      expect(figureOf(guessed, `${side}Flow28`)).toBeGreaterThan(figureOf(store, `${side}Flow28`));
      expect(figureOf(engine(larger), `${side}Flow28`)).toBe(figureOf(engine(), `${side}Flow28`));
    }
  });
});

describe('a flow table that cannot be', () => {
  const wrong: readonly (readonly [what: string, Rows, said: RegExp])[] = [
    ['one row', rowsOf([0.1, 60]), /at least two rows/],
    ['rows out of order', rowsOf([0.1, 60], [0.3, 150], [0.2, 110]), /^Row 3 .* sort the rows by lift\.$/],
    ['a lift twice', rowsOf([0.1, 60], [0.1, 70]), /^Rows 1 and 2 .* same lift/],
    ['a flow below zero', rowsOf([0.1, 60], [0.2, -110]), /^Row 2 .* below zero/],
    ['flow through a shut valve', rowsOf([0, 3], [0.1, 60], [0.2, 110]), /^Row 1 .* valve shut/],
    ['lift in millimeters taken for inches', rowsOf([2.5, 60], [5, 110]), /^Row 2 of the \w+ flow is out of reach/],
    ['a flow nobody has', rowsOf([0.1, 60], [0.2, 9e9]), /^Row 2 of the \w+ flow is out of reach/],
  ];
  it.each(wrong)('%s: its field says which row, and only what breathes through it is lost', (_, rows, said) => {
    for (const side of sides) {
      const [whole, spoiled] = [engine(), engine({ [`${side}Flow`]: rows })];
      expect(spoiled.faultAbout(cellOf(`${side}Flow`))).toMatch(said);
      expect(nothing(spoiled, `${side}Flow28`)).toMatch(said);
      const without = quick.filter((cell) => spoiled.state(cell).is !== 'ready');
      for (const cell of without) expect(downstream, cell.id).toContain(roomOf.get(cell.id));
      const other = side === 'intake' ? 'exhaust' : 'intake';
      for (const id of [`${other}Flow28`, `${other}OpenArea`, 'carburetorDrop', 'primaryTunedSpeed'])
        expect(spoiled.state(cellOf(id)), id).toEqual(whole.state(cellOf(id)));
    }
  });
  it('a row that flows more than its curtain is told at the field by its number, and nothing is lost', () => {
    // A perfect opening at 0.1 in of lift under a 2 in valve: 0.628 in², 88 cfm.
    const low = engine({ intakeFlow: rowsOf([0.1, 87], [0.2, 128]) });
    const high = engine({ intakeFlow: rowsOf([0.05, 30], [0.1, 89], [0.2, 128]) });
    expect(remarkOf(low, 'intakeFlowRemark')).not.toMatch(/curtain/);
    expect(remarkOf(high, 'intakeFlowRemark')).toMatch(/^Row 2 flows more than the curtain/);
    expect(own.filter((cell) => high.state(cell).is !== 'ready')).toEqual([]);
  });
  it('a bench that stopped short of the cam is told, and the last flow is held', () => {
    const short = engine({ intakeFlow: rowsOf([0.1, 64], [0.2, 128], [0.4, 215]) });
    expect(remarkOf(short, 'intakeFlowRemark')).toMatch(/stopped at 0\.400 in and the valve lifts 0\.471 in/);
    expect(inUnit(short, 'intakeFlow28', u.cubicFeetPerMinute)).toBeCloseTo(215, 6);
  });
});

describe('a valve and seat that cannot be made', () => {
  it.each([
    ['stemDiameter', { stemDiameter: 0.999 * inch, throatShare: 0.4 }, /stem fills the throat/],
    ['valveSeatWidth', { valveSeatWidth: 0.5 * inch, exhaustValveDiameter: 0.9 * inch }, /seat is too wide/],
  ])('%s: said at its field, and the flow stands', (field, figures, said) => {
    const store = engine(figures);
    expect(store.faultAbout(cellOf(field))).toMatch(said);
    for (const side of sides) expect(store.state(cellOf(`${side}Flow28`)).is).toBe('ready');
  });
});

describe('the carburetor', () => {
  const store = engine();
  it('is asked for cubic inches times rpm times volumetric efficiency over 3456', () => {
    const inches = inUnit(store, 'displacement', u.cubicInch);
    expect(inUnit(store, 'carburetorDemand', u.cubicFeetPerMinute)).toBeCloseTo((inches * 5500 * 0.85) / 3456, 9);
    expect(inches).toBeCloseTo(368.4, 1);
  });
  it('drops as the square of the flow and as the density of the air, nearly', () => {
    // 680 cfm at 1.5 inHg of standard air, 1.225 kg/m3; by Bernoulli.
    const demand = inUnit(store, 'carburetorDemand', u.cubicFeetPerMinute);
    const bernoulli = 1.5 * (demand / 680) ** 2 * (figureOf(store, 'airDensity') / 1.225);
    expect(figureOf(store, 'carburetorDrop') / mercury / bernoulli).toBeGreaterThan(0.95);
    expect(figureOf(store, 'carburetorDrop') / mercury / bernoulli).toBeLessThan(1);
  });
  it.each([
    [1100, 'large'],
    [680, 'fits'],
    [400, 'small'],
  ])('of %f cfm on this engine is judged: %s', (flow, word) => {
    expect((valueOf(engine({ carburetorFlow: flow * cfm }), 'carburetorVerdict') as Verdict).word).toBe(word);
  });
  it('is judged by edges that are the reader’s to move', () => {
    const drop = figureOf(store, 'carburetorDrop');
    const word = (figures: Figures): string => (valueOf(engine(figures), 'carburetorVerdict') as Verdict).word;
    expect(word({ carburetorSmall: drop * 0.999 })).toBe('small');
    expect(word({ carburetorLarge: drop * 1.001 })).toBe('large');
  });
  it('that chokes first is told so at its field', () => {
    const tiny = engine({ carburetorFlow: 150 * cfm });
    expect(nothing(tiny, 'carburetorDrop')).toMatch(/chokes/);
    expect(tiny.faultAbout(cellOf('carburetorFlow'))).toMatch(/chokes/);
    expect(tiny.state(cellOf('carburetorDemand')).is).toBe('ready');
  });
  it('rated at 3.0 inHg is as large as one of 0.707 times the flow at 1.5, but for the thinning out', () => {
    const [two, four] = [
      engine({ carburetorFlow: 900 * cfm, carburetorRating: 3 * mercury }),
      engine({ carburetorFlow: (900 * cfm) / Math.SQRT2 }),
    ].map((s) => figureOf(s, 'carburetorDrop'));
    expect(Math.abs(two! / four! - 1)).toBeLessThan(0.07);
  });
});

describe('the tuned speeds', () => {
  const store = engine();
  it('of the runner are Engelman’s, in feet, seconds and inches: 162/K of the root, K from 2.0 to 2.5', () => {
    const swept = figureOf(store, 'sweptVolume') / inch ** 3;
    const ratio = figureOf(store, 'staticRatio');
    const sound = 49.02 * Math.sqrt(85 + 459.67); // ft/s
    const root = Math.sqrt(((Math.PI / 4) * 1.75 ** 2) / (9.5 * swept)) * Math.sqrt((ratio - 1) / (ratio + 1));
    for (const [id, k] of [
      ['runnerTunedSpeedHigh', 2],
      ['runnerTunedSpeedLow', 2.5],
    ] as const)
      expect(figureOf(store, id) / rpm / ((162 / k) * sound * root)).toBeCloseTo(1, 2);
  });
  it('fall as pipes get longer: the runner’s plug by the root, the waves in proportion', () => {
    const longer = engine({ runnerLength: 2 * 9.5 * inch, primaryLength: 2 * 34 * inch });
    for (const [id, share] of [
      ['runnerTunedSpeedLow', Math.SQRT1_2],
      ['runnerTunedSpeedHigh', Math.SQRT1_2],
      ['runnerWaveSpeed', 0.5],
      ['primaryTunedSpeed', 0.5],
    ] as const)
      expect(figureOf(longer, id) / figureOf(store, id), id).toBeCloseTo(share, 9);
  });
  it('of the primaries is the trade’s: 850 × (180 + opening) / rpm inches from the valve', () => {
    // A. G. Bell, 1981, from memory.
    expect(((850 * (180 + 73)) / 34 / (figureOf(store, 'primaryTunedSpeed') / rpm)).toFixed(6)).toBe('1.000000');
  });
  it('of the runner’s wave let it swing its whole number of times while the valve is shut', () => {
    const speed = figureOf(store, 'runnerWaveSpeed') / rpm;
    const sound = 331.3 * Math.sqrt(figureOf(store, 'airTemperature') / 273.15);
    const swings = ((720 - 270) / (6 * speed)) * (sound / (4 * 9.5 * inch));
    expect(swings).toBeCloseTo(4, 2);
  });
  it('of two cams on one engine differ by the cams: the runner’s plug does not', () => {
    const [early, late] = ['early', 'late'].map((variant) => opened(scenario('two-cams'), variant));
    expect(figureOf(early!, 'runnerTunedSpeedLow')).toBe(figureOf(late!, 'runnerTunedSpeedLow'));
    expect(figureOf(late!, 'runnerWaveSpeed')).toBeLessThan(figureOf(early!, 'runnerWaveSpeed'));
    expect(figureOf(late!, 'primaryTunedSpeed')).toBeGreaterThan(figureOf(early!, 'primaryTunedSpeed'));
  });
});

describe('engine speed', () => {
  it('moves both Mach numbers, the runner’s air and the demand in proportion', () => {
    const [slow, fast] = [3000, 6000].map((speed) => engine({ engineSpeed: speed * rpm }));
    for (const id of ['inletMachIndex', 'meanInletMach', 'runnerSpeed', 'carburetorDemand'])
      expect(figureOf(fast!, id) / figureOf(slow!, id), id).toBeCloseTo(2, 12);
  });
  it('gets a word at the intake where the mean inlet Mach number is over 0.5, and none under it', () => {
    // I. Fukutani and E. Watanabe, SAE 790484, from memory.
    const at = (mach: number): Store => {
      const store = engine();
      const speed = (figureOf(store, 'engineSpeed') * mach) / figureOf(store, 'meanInletMach');
      return put(store, { engineSpeed: speed });
    };
    expect(remarkOf(at(0.499), 'inletMachRemark')).toBeNull();
    expect(remarkOf(at(0.51), 'inletMachRemark')).toMatch(/0\.51, over 0\.50/);
  });
});

describe('the page', () => {
  const chapter = chapters.find((c) => c.id === 'breathing')!;
  it('has the chapter in every starting point, after the valves', () => {
    expect(chapter.number).toBe(8);
    for (const name of Object.keys(scenarios)) {
      const ids = scenario(name).page.map((item) => item.id);
      expect(ids.indexOf('breathing'), name).toBe(ids.indexOf('valves') + 1);
    }
  });
  it('asks for back pressure only in street trim', () => {
    const asked = chapter.fields.find((f) => 'field' in f && f.field.id === 'exhaustBackPressure');
    expect(asked).toMatchObject({ when: { id: 'trim' }, is: ['street'] });
  });
  it('sums the chapter up in one line', () => {
    expect(remarkOf(engine(), 'breathingSays')).toBe(
      'Intake 227.1 cfm and exhaust 169 cfm at full lift; at 5500 rpm the engine asks for 498.4 cfm.',
    );
  });
  it('no field of it moves any other chapter’s figure', () => {
    const store = engine();
    let ran = 0;
    for (const input of [...catalogue.values()].filter((c): c is Input => c.role === 'input')) {
      if (roomOf.get(input.id) !== 'breathing') continue;
      const value = typeof input.initial === 'number' ? input.slider![0] : input.kind.name === 'table' ? [] : undefined;
      if (value === undefined) continue;
      store.live.set(input, value);
      store.live.run();
      for (const id of store.live.ran) expect(downstream, id).toContain(roomOf.get(id));
      ran += store.live.ran.length;
    }
    expect(ran).toBeGreaterThan(30);
  });
  it('a field left empty is missed only by what reads it', () => {
    for (const id of ['runnerLength', 'primaryLength', 'carburetorFlow', 'stemDiameter', 'flowDepression']) {
      const store = engine();
      store.draft(inputOf(id), 'Write a figure here.');
      const without = quick.filter((cell) => store.state(cell).is !== 'ready');
      for (const cell of without) expect(downstream, cell.id).toContain(roomOf.get(cell.id));
      expect(without.length, id).toBeGreaterThan(1);
      expect(without.length, id).toBeLessThan(own.length);
    }
  });
});

describe('the same engine typed in US and in SI units', () => {
  const texts: Readonly<Record<System, Readonly<Record<string, string>>>> = {
    us: {
      intakeFlow: 'Lift, cfm\n0.100 64\n0.200 128\n0.300 180\n0.400 215\n0.500 232',
      exhaustFlow: '0.2:94.7 0.4:159.1',
    },
    si: {
      intakeFlow:
        'mm; L/s\n2.54; 30.2046363648\n5.08; 60.4092727296\n7.62; 84.950539776\n10.16; 101.468700288\n12.7; 109.4918068224',
      exhaustFlow: '5.08:44.69342287104 10.16:75.08683821312',
    },
  };
  it('breathes the same', () => {
    const [us, si] = (['us', 'si'] as const).map((system) => {
      const store = engine();
      for (const [id, text] of Object.entries(texts[system])) {
        const got = typedTable(cellOf(id).kind as unknown as Table, text, system);
        if ('fault' in got) throw new Error(got.fault);
        store.set([[inputOf(id), got.rows]], { what: id });
      }
      return store;
    });
    for (const cell of own.filter((c) => c.kind.name === 'scalar')) {
      const [a, b] = [figureOf(us!, cell.id), figureOf(si!, cell.id)];
      expect(Math.abs(a / b - 1), cell.id).toBeLessThan(1e-12);
    }
    expect(inUnit(si!, 'exhaustFlow28', u.cubicFeetPerMinute)).toBeCloseTo(159.1, 6); // the last row is held
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
function insistSound(store: Store, typed: string): number {
  let ready = 0;
  for (const cell of own) {
    const state = store.state(cell);
    if (state.is === 'ready') {
      ready++;
      if (finite(state.value) && !/NaN|Infinity|undefined/.test(cell.kind.text(state.value, 'us'))) continue;
      throw new Error(`${typed}: ${cell.id} is ${JSON.stringify(state.value)}`);
    }
    const words = state.is === 'fault' ? say(state.fault.message, 'us') : state.is;
    if (!/^[A-Z].*\.$/s.test(words)) throw new Error(`${typed}: ${cell.id} says ${words}`);
  }
  return ready;
}

describe('figures out of all reason', () => {
  const fields = quick.filter(
    (c): c is Input<number> => c.role === 'input' && c.kind.name === 'scalar' && roomOf.get(c.id) === 'breathing',
  );
  it('one at a time leave values or sentences', () => {
    expect(fields.length).toBeGreaterThan(20);
    const store = engine();
    for (const input of fields) {
      const stood = figureOf(store, input.id);
      const [low, high] = input.hard!;
      for (const value of [low, high, low - 1, high + 1, 0, -1, 1e-320, 1e308, -1e308]) {
        store.set([[input, value]], { what: 'extreme' });
        insistSound(store, `${input.id} = ${value}`);
        if (value < low || value > high) expect(nothing(store, input.id)).toMatch(/^[A-Z].*\.$/s);
      }
      store.set([[input, stood]], { what: 'back' });
    }
    expect(insistSound(store, 'back')).toBe(own.length);
  });
  it('several at once, and tables of junk, leave values or sentences', () => {
    const others = [
      'bore',
      'stroke',
      'engineSpeed',
      'airTemperature',
      'barometer',
      'rockerRatio',
      'intakeLobeLift',
    ].map((id) => inputOf(id) as Input<number>);
    const all = [
      ...fields,
      ...others,
      inputOf('intakeValveDiameter'),
      inputOf('exhaustValveDiameter'),
    ] as Input<number>[];
    const share = fc.oneof(fc.constantFrom(0, 1), fc.double({ min: 0, max: 1, noNaN: true }));
    const junk = fc.oneof(
      { weight: 3, arbitrary: fc.double({ min: 0, max: 0.02, noNaN: true }) },
      { weight: 1, arbitrary: fc.constantFrom(0, -0, 1e-320, 1e-9, 0.3, 1e9, 1e300, -1) },
    );
    const anyTable = fc.array(fc.tuple(junk, junk), { maxLength: 8 });
    const rising = anyTable.map((rows) => rows.toSorted(([a], [b]) => a - b));
    let answered = 0;
    let refused = 0;
    const store = engine();
    fc.assert(
      fc.property(
        fc.option(fc.oneof(anyTable, rising), { nil: undefined }),
        fc.option(fc.oneof(anyTable, rising), { nil: undefined }),
        fc.dictionary(fc.constantFrom(...all.map((c) => c.id)), share, { maxKeys: 4 }),
        (intakeFlow, exhaustFlow, shares) => {
          const typed: [Input, unknown][] = Object.entries(shares).map(([id, t]) => {
            const input = inputOf(id) as Input<number>;
            const [low, high] = input.hard!;
            return [input, low + (high - low) * t];
          });
          if (intakeFlow) typed.push([inputOf('intakeFlow'), intakeFlow]);
          if (exhaustFlow) typed.push([inputOf('exhaustFlow'), exhaustFlow]);
          for (const [input, value] of typed) store.live.set(input, value);
          store.live.run();
          const ready = insistSound(store, JSON.stringify([intakeFlow, exhaustFlow, shares]));
          if (ready === own.length) answered++;
          else refused++;
          for (const [input] of typed) store.live.set(input, input.initial);
        },
      ),
      { numRuns: 1500, seed: 20260804 },
    );
    expect(answered).toBeGreaterThan(100);
    expect(refused).toBeGreaterThan(200);
    store.live.run();
    expect(insistSound(store, 'back')).toBe(own.length);
  });
});
