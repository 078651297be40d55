import { describe, expect, it } from 'vitest';
import { byStroke, type CycleRecord, openSpan } from '../../src/plots/cycle-record.ts';
import { outlines, shadesFor } from '../../src/plots/pressure-map.ts';
import { pressureAt, wayOf } from '../../src/plots/wave-way.ts';
import { cycleEngine } from '../../src/physics/cycle/engine.ts';
import { EngineRun } from '../../src/physics/cycle/speed.ts';
import { built, streetEight } from '../physics/cycle/street-engines.ts';
import { drawn } from './drawn.ts';
import { type Element, elementsOf, wordsOf } from './markup.ts';
import { spotsOf } from './places.ts';
import { isWell } from './well.ts';

const rpm = Math.PI / 30;
const degree = Math.PI / 180;
const widths = [280, 358, 479, 480, 720, 1400];
const outside = 100e3;
const engineSpeed = 5000 * rpm;
const [runnerLength, runnerSound] = [0.3, 345];
const [primaryLength, primarySound] = [0.8, 620];
/** Crank degrees a wave needs through each pipe. */
const through = {
  runner: (runnerLength / runnerSound) * 30_000,
  primary: (primaryLength / primarySound) * 30_000,
};

/** A wave's shape over degrees: a hump of 40 degrees around nothing. */
const hump = (degrees: number): number => Math.exp(-((degrees / 20) ** 2));
type Field = (at: number, place: number) => number;

/** A pipe's record from a pressure over the outside by crank degrees, 0 to 720 from firing top, and place in m. */
function pipeOf(length: number, sound: number, field: Field): CycleRecord['runner'] {
  const place = Float64Array.from({ length: 20 }, (_, k) => ((k + 0.5) * length) / 20);
  const pressure = Float64Array.from({ length: 361 * 20 }, (_, n) => {
    const at = -180 + 2 * Math.floor(n / 20);
    return outside + field(at < 0 ? at + 720 : at, place[n % 20]!);
  });
  return { place, pressure, sound };
}

/** Invented waves: a pull up the runner at 420 that comes back as a push at 570, a push down the primary at 170. */
const runnerWaves: Field = (at, place) =>
  -30e3 * hump(at - 420 - (place / runnerLength) * through.runner) +
  20e3 * hump(at - 570 + (place / runnerLength) * through.runner);
const primaryWaves: Field = (at, place) =>
  80e3 * hump(at - 170 - (place / primaryLength) * through.primary) -
  25e3 * hump(at - 360 + (place / primaryLength) * through.primary);

const byAngle = (f: (at: number) => number): Float64Array =>
  Float64Array.from({ length: 361 }, (_, i) => f(i < 90 ? 540 + 2 * i : 2 * i - 180));
const during = (from: number, to: number, most: number): Float64Array =>
  byAngle((at) => (at > from && at < to ? most * Math.sin((Math.PI * (at - from)) / (to - from)) : 0));

function recordOf(
  runner: Field = runnerWaves,
  primary: Field = primaryWaves,
  more: Partial<CycleRecord> = {},
): CycleRecord {
  return {
    angle: Float64Array.from({ length: 361 }, (_, i) => (2 * i - 180) * degree),
    cylinderPressure: byAngle((at) => outside + 5e6 * hump(Math.min(at, 720 - at) / 2)),
    intakePressure: byAngle((at) => outside + runner(at, 0)),
    exhaustPressure: byAngle((at) => outside + primary(at, 0)),
    intakeFlow: during(330, 600, 0.15),
    exhaustFlow: during(120, 390, 0.15),
    intakeArea: during(330, 600, 1e-3),
    exhaustArea: during(120, 390, 8e-4),
    runner: pipeOf(runnerLength, runnerSound, runner),
    primary: pipeOf(primaryLength, primarySound, primary),
    outside,
    ...more,
  };
}
const valuesOf = (cycleRecord: CycleRecord): object => ({ cycleRecord, engineSpeed });
const still: Field = () => 0;
const real = ((): CycleRecord => {
  const run = new EngineRun(cycleEngine(built(streetEight)), 'coarse');
  run.at(engineSpeed);
  return run.record();
})();

describe.each([
  ['invented waves', recordOf()],
  ['no waves', recordOf(still, still)],
  ['a computed V8', real],
])('%s', (_, record) => {
  it.each(['waves', 'valveFlow'])('are drawn well at any width: %s', (form) => {
    for (const width of widths) isWell(form, valuesOf(record), width);
  });
});

describe('a record by its strokes', () => {
  const { order, angles } = byStroke(recordOf().angle);
  it('runs from firing top to firing top, compression last', () => {
    expect(angles.length).toBe(361);
    expect([angles[0], angles.at(-1)]).toEqual([0, 4 * Math.PI]);
    expect(angles.every((a, i) => i === 0 || Math.abs(a - angles[i - 1]! - 2 * degree) < 1e-9)).toBe(true);
    expect([order[0], order.at(-1), order[1], order[271]]).toEqual([90, 90, 91, 1]); // 542 degrees is what was -178
  });
  it('has each valve open in one stretch', () => {
    const { intakeArea } = recordOf();
    const area = order.map((i) => intakeArea[i]!);
    const [from, to] = openSpan(area, angles)!.map((a) => Math.round(a / degree));
    expect([from, to]).toEqual([332, 598]);
    expect(
      openSpan(
        angles.map(() => 0),
        angles,
      ),
    ).toBe(null);
  });
});

/** The invented primary alone, in kPa. */
const field = ((): { angles: number[]; places: number[]; values: number[] } => {
  const record = recordOf();
  const { order, angles } = byStroke(record.angle);
  const places = Array.from(record.primary.place);
  return {
    angles: [...angles],
    places,
    values: order.flatMap((i) => places.map((_, k) => (record.primary.pressure[i * 20 + k]! - outside) / 1000)),
  };
})();

describe('the outlines of a wave', () => {
  it('lie where the wave is as strong as they say, along its characteristic', () => {
    const [d] = outlines(
      field,
      [40],
      (a) => a / degree,
      (place) => 1000 * place,
    );
    const spots = spotsOf(d!);
    expect(spots.length).toBeGreaterThan(40);
    for (const [at, place] of spots) {
      if (place < 25 || place > 775) continue; // where it is closed along the pipe's ends
      expect(primaryWaves(at, place / 1000) / 1000).toBeGreaterThan(37);
      expect(primaryWaves(at, place / 1000) / 1000).toBeLessThan(43);
    }
    // Halfway down the pipe, the middle between its two edges is when the wave's middle comes by.
    const half = spots.filter(([, place]) => Math.abs(place - 400) < 30).map(([at]) => at);
    expect((Math.min(...half) + Math.max(...half)) / 2).toBeCloseTo(170 + through.primary / 2, -0.5);
  });
  it('are shades that double, the lightest a seventh of the strongest at most', () => {
    for (const most of [0.8, 3.7, 11.8, 80]) {
      const [first, second, third, last] = shadesFor(most) as [number, number, number, number];
      expect([second / first, third / second, last / third]).toEqual([2, 2, 2]);
      expect(first).toBeLessThanOrEqual(most / 7);
      expect(last).toBeGreaterThan(most / 3);
    }
  });
});

describe('a wave’s way', () => {
  const turning = engineSpeed / primarySound;
  it('goes from its strongest at the valve, at the speed of sound', () => {
    const way = wayOf(field, [120 * degree, 240 * degree], 1, 'away', turning, 5)!;
    expect(way.from[0] / degree).toBeCloseTo(170, -0.5);
    expect((way.to[0] - way.from[0]) / degree).toBeCloseTo(through.primary, 5);
    expect(way.to[1]).toBeCloseTo(primaryLength, 9);
    expect(Math.abs(way.strength - 80)).toBeLessThan(2); // 80 kPa at the valve, a little less at the first cell
  });
  it('is none where the record shows none: too weak, or not along the way', () => {
    expect(wayOf(field, [120 * degree, 240 * degree], 1, 'away', turning, 90)).toBe(null);
    expect(wayOf(field, [430 * degree, 700 * degree], 1, 'away', turning, 5)).toBe(null);
    const spot = { ...field, values: field.values.map((v, n) => (n % 20 < 2 ? v : -1)) }; // it stays at the valve
    expect(wayOf(spot, [120 * degree, 240 * degree], 1, 'away', turning, 5)).toBe(null);
  });
  it('reads pressures between the samples, round and round', () => {
    expect(pressureAt(field, 175.5 * degree, 0.31)).toBeCloseTo(primaryWaves(175.5, 0.31) / 1000, 0);
    expect(pressureAt(field, 895.5 * degree, 0.31)).toBeCloseTo(pressureAt(field, 175.5 * degree, 0.31), 9);
  });
});

describe('the waves of a cycle', () => {
  const arrows = (record: CycleRecord, width = 724): number[][] =>
    elementsOf(drawn('waves', valuesOf(record), width).body)
      .filter((e) => e.attributes['stroke-width'] === '6')
      .map((e) => spotsOf(e.attributes.d!).flat());
  it('have their arrows on the characteristics: here a px is a degree', () => {
    const [pull, push, blowdown, back] = arrows(recordOf()) as [number[], number[], number[], number[]];
    const at = (x: number): number => x - 2;
    expect(Math.abs(at(pull[0]!) - 420)).toBeLessThan(2.1);
    expect(at(pull[2]!) - at(pull[0]!)).toBeCloseTo(through.runner, 0);
    expect(Math.abs(at(push[2]!) - 570)).toBeLessThan(2.1);
    expect(at(push[2]!) - at(push[0]!)).toBeCloseTo(through.runner, 0);
    expect(Math.abs(at(blowdown[0]!) - 170)).toBeLessThan(2.1);
    expect(at(blowdown[2]!) - at(blowdown[0]!)).toBeCloseTo(through.primary, 0);
    expect(Math.abs(at(back[2]!) - 360)).toBeLessThan(2.1);
    expect(at(back[2]!) - at(back[0]!)).toBeCloseTo(through.primary, 0);
  });
  it('have none where nothing moves, and no word of one', () => {
    expect(arrows(recordOf(still, still))).toEqual([]);
    const words = wordsOf(drawn('waves', valuesOf(recordOf(still, still))).body).join();
    expect(words).not.toMatch(/runs|back|pull|push/);
    expect(words).toContain('as it shuts: 0.0 psi');
    expect(words).toContain('intake open');
  });
  it('are told with their strengths, in the system’s own unit', () => {
    const words = (system: 'us' | 'si'): string[] => wordsOf(drawn('waves', valuesOf(recordOf()), 700, system).body);
    const strength = (pattern: RegExp, system: 'us' | 'si'): number =>
      Number.parseFloat(
        words(system)
          .find((w) => pattern.test(w))!
          .match(/[−+][\d.]+/)![0]
          .replace('−', '-'),
      );
    expect(Math.abs(strength(/a pull runs up/, 'si') + 30)).toBeLessThan(1);
    expect(Math.abs(strength(/a push runs down/, 'si') - 80)).toBeLessThan(2);
    expect(Math.abs(strength(/a push runs down/, 'us') - 80 / 6.894757)).toBeLessThan(0.3);
    expect(words('us')).toContain('the plenum sends back a push');
  });
  it('say the pressure at the intake as a tenth of its opening is left', () => {
    // sin falls to a tenth at pi - asin(0.1) of 270 degrees: 591.4, so the last of each 2 degrees that has more is 590.
    const at = runnerWaves(590, runnerLength / 40) / 1000;
    const words = wordsOf(drawn('waves', valuesOf(recordOf()), 700, 'si').body);
    expect(words).toContain(`as it shuts: +${at.toFixed(1)} kPa`);
  });
  it('say the mean at the exhaust while both valves are open', () => {
    const flat: Field = (at) => (at > 200 ? -12e3 : 60e3 * hump(at - 150));
    const words = (primary: Field): string =>
      wordsOf(drawn('waves', valuesOf(recordOf(runnerWaves, primary)), 700, 'si').body).join();
    expect(words(flat)).toContain('a pull comes back in the overlap: −12.0 kPa');
    expect(words((at, place) => (at > 200 ? 9e3 : primaryWaves(at, place)))).toContain(
      'a push comes back in the overlap: +9.0 kPa',
    );
    expect(words((at, place) => (at > 200 ? 300 : primaryWaves(at, place)))).toContain('in the overlap: +0.3 kPa');
  });
  it('say how far the crank turns while one goes up the runner and back', () => {
    const turn = (2 * through.runner).toFixed(1);
    expect(drawn('waves', valuesOf(recordOf())).label).toContain(`up the runner and back in ${turn}° of crank`);
  });
  it('have both valve ends next to the valves’ bars, which are as long as the valves are open', () => {
    const elements = elementsOf(drawn('waves', valuesOf(recordOf()), 724).body);
    const bars = elements.filter((e) => e.name === 'rect' && e.attributes.fill === 'var(--ink)');
    const spans = bars.map((e) => [Number(e.attributes.x) - 2, Number(e.attributes.width)]);
    expect(spans).toEqual([
      [332, 266],
      [122, 266],
    ]);
    const panels = elements.filter((e) => e.attributes.stroke === 'var(--edge)' && e.name === 'rect');
    const [runner, primary] = panels.map((e) => [Number(e.attributes.y), Number(e.attributes.height)]) as [
      number[],
      number[],
    ];
    for (const e of bars) {
      expect(Number(e.attributes.y)).toBeGreaterThan(runner[0]! + runner[1]!);
      expect(Number(e.attributes.y)).toBeLessThan(primary[0]!);
    }
  });
  it('line what pulls and leave what pushes plain', () => {
    const paths = elementsOf(drawn('waves', valuesOf(recordOf(runnerWaves, still)), 700).body).filter(
      (e) => e.attributes.d,
    );
    const pulls = paths.find((e) => e.attributes.fill === 'url(#pull-test)')!;
    const angles = spotsOf(pulls.attributes.d!).map(([x]) => ((x - 2) / 696) * 720);
    expect(Math.min(...angles)).toBeGreaterThan(330);
    expect(Math.max(...angles)).toBeLessThan(500); // the push at 570 is not in it
  });
  it('are the same under the crank’s cursor, which stands at the crank’s place', () => {
    const at = (cursor: number): string =>
      drawnAt('waves', recordOf(), cursor).find((e) => e.attributes.class === 'cursor')!.attributes.d!;
    expect(spotsOf(at(540 * degree))[0]![0]).toBeCloseTo(542, 1);
    const without = (elements: readonly Element[]): number => elements.filter((e) => e.name === 'path').length;
    expect(without(drawnAt('waves', recordOf(), 1))).toBe(
      without(elementsOf(drawn('waves', valuesOf(recordOf()), 724).body)) + 1,
    );
  });
});

function drawnAt(form: string, record: CycleRecord, cursor: number): readonly Element[] {
  return elementsOf(drawn(form, valuesOf(record), 724, 'si', cursor).body);
}

describe('a computed engine', () => {
  it('sends a push down the primary as the exhaust opens and a pull up the runner as the intake does', () => {
    const words = wordsOf(drawn('waves', valuesOf(real)).body).join();
    expect(words).toMatch(/a push runs down, \+\d/);
    expect(words).toMatch(/a pull runs up, −\d/);
  });
});

describe('the flow through the valves', () => {
  it('says how much of it comes back', () => {
    // 0.1 kg/s in for 200 degrees, 0.02 out for 40: 4 %.
    const intakeFlow = byAngle((at) => (at >= 340 && at < 540 ? 0.1 : at >= 540 && at < 580 ? -0.02 : 0));
    const values = valuesOf(recordOf(runnerWaves, primaryWaves, { intakeFlow }));
    expect(wordsOf(drawn('valveFlow', values).body)).toContain('backflow 4.0 %');
    expect(drawn('valveFlow', values).label).toContain('exhaust 0.0 %, intake 4.0 %');
  });
  it('shades what flows back and no more', () => {
    const intakeFlow = byAngle((at) => (at >= 340 && at < 540 ? 0.1 : at >= 540 && at < 580 ? -0.02 : 0));
    const shaded = (record: CycleRecord): [number, number][] =>
      elementsOf(drawn('valveFlow', valuesOf(record), 660).body) // from 60 to 660 degrees in 600 px
        .filter((e) => e.attributes['fill-opacity'] === '.45')
        .flatMap((e) => spotsOf(e.attributes.d!));
    const line = (spots: [number, number][]): number => Math.min(...spots.map(([, y]) => y));
    const back = shaded(recordOf(runnerWaves, primaryWaves, { intakeFlow }));
    const deep = back.filter(([, y]) => y > line(back) + 0.5).map(([x]) => x - 48 + 60);
    expect(Math.min(...deep)).toBe(540);
    expect(Math.max(...deep)).toBe(578);
    const none = shaded(recordOf());
    expect(none.every(([, y]) => y === none[0]![1])).toBe(true);
    expect(wordsOf(drawn('valveFlow', valuesOf(recordOf())).body).join()).not.toContain('backflow');
  });
  it('leaves the firing peak out and says it', () => {
    const { body, label } = drawn('valveFlow', valuesOf(recordOf()), 700, 'si');
    expect(wordsOf(body)).toContain('cylinder, up to 5100 in firing');
    expect(label).toContain('up to 5100 kPa, is left out');
    const figures = elementsOf(body)
      .filter((e) => e.name === 'text' && /^\d+$/.test(e.text) && Number(e.attributes.y) < 250)
      .map((e) => Number(e.text));
    expect(Math.max(...figures)).toBeLessThan(301);
    expect(Math.min(...figures)).toBeGreaterThan(29);
  });
  it('says the values where the crank’s cursor stands', () => {
    const words = drawnAt('valveFlow', recordOf(), 465 * degree).map((e) => e.text);
    const pressure = (name: string, kilopascal: number): string => `${name} ${kilopascal.toFixed(1)}`;
    const straight = (f: Field): number => (100e3 + (f(464, 0) + f(466, 0)) / 2) / 1000; // between two of 2 degrees
    expect(words).toContain(pressure('intake', straight(runnerWaves)));
    expect(words).toContain(pressure('exhaust', straight(primaryWaves)));
    expect(words).toContain('intake 540'); // 0.15 kg/s at the middle of its opening
    expect(words).toContain('exhaust 0');
  });
  it('says no values where the cursor is outside of the gas exchange', () => {
    expect(drawnAt('valveFlow', recordOf(), 10 * degree).some((e) => e.attributes.class === 'cursor')).toBe(false);
  });
});
