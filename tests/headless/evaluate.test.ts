import { describe, expect, it } from 'vitest';
import { edge, evaluate, inCheckout, isAbout, plain, six, swept, cams, value } from './command.ts';

inCheckout();

/*
 * Expected figures are those of the invented starting points as an independent script printed them (another language,
 * the same published formulas), or arithmetic written beside them.
 */
describe('what is asked for', () => {
  it('comes with its unit and state, in the order asked', async () => {
    const answers = await evaluate(
      edge,
      '--get',
      'displacement,staticRatio',
      '--get',
      'dynamicRatio , crankingPressure',
    );
    expect(Object.keys(answers)).toEqual(['displacement', 'staticRatio', 'dynamicRatio', 'crankingPressure']);
    expect(Object.values(answers).map(({ unit, state }) => [unit, state])).toEqual([
      ['in³', 'ready'],
      ['', 'ready'],
      ['', 'ready'],
      ['psi', 'ready'],
    ]);
    isAbout(answers.displacement!.value, '368.4');
    isAbout(answers.staticRatio!.value, '9.54');
    isAbout(answers.dynamicRatio!.value, '7.84');
    isAbout(answers.crankingPressure!.value, '174');
  });

  it('comes in the units asked for, else in the notebook’s own', async () => {
    const answers = await evaluate(edge, '--units', 'si', '--get', 'bore,displacement,airTemperature,altitude');
    expect(answers.bore).toEqual({ value: 103.378, unit: 'mm', state: 'ready' }); // 4.070 × 25.4, exact
    expect(answers.airTemperature!.unit).toBe('°C');
    expect(answers.airTemperature!.value).toBeCloseTo((85 - 32) / 1.8, 9);
    expect(answers.altitude).toEqual({ value: 198.12, unit: 'm', state: 'ready' }); // 650 × 0.3048, exact
    expect(answers.displacement!.unit).toBe('cm³');
    expect(answers.displacement!.value).toBeCloseTo((await value('displacement', edge)) * 2.54 ** 3, 6);
  });

  it('is given with a word where it leaves the range of trust', async () => {
    const { factorJ1349 } = await evaluate(edge, '--set', 'airTemperature=140', '--get', 'factorJ1349');
    expect(factorJ1349!.state).toBe('ready');
    expect(factorJ1349!.value).toBeGreaterThan(1.1);
    expect(factorJ1349!.message).toMatch(/^Outside its range of trust: .*\.$/);
  });

  it('is null where the notebook gives nothing, and a choice is its id', async () => {
    const answers = await evaluate(edge, '--get', 'gaugeReading,gaugeExponent,closingConvention,seatLiftRemark');
    expect(answers).toMatchObject({
      gaugeReading: { value: null, unit: 'psi', state: 'ready' },
      gaugeExponent: { value: null, unit: '', state: 'ready' },
      closingConvention: { value: 'seat', unit: '', state: 'ready' },
      seatLiftRemark: { value: null, state: 'ready' },
    });
  });

  it('is a torque curve at the speeds asked for, and what is read off it', async () => {
    const answers = await evaluate(edge, '--get', 'torqueCurve,peakTorque', '--speeds', '2000..4000/1000');
    const { value: curve, unit, xUnit } = answers.torqueCurve!;
    const { x, y } = curve as { readonly x: readonly number[]; readonly y: readonly number[] };
    expect([xUnit, unit]).toEqual(['rpm', 'lbf ft']);
    expect(x.map(Math.round)).toEqual([2000, 3000, 4000]);
    // Builders look for about a pound-foot to the cubic inch of such an engine.
    for (const torque of y) expect(Math.abs(torque / 368.4 - 1)).toBeLessThan(0.12);
    expect(answers.peakTorque!.value as number).toBeGreaterThanOrEqual(Math.max(...y));
  });
  it('is a curve with both its units', async () => {
    const { pistonTravel } = await evaluate(edge, '--get', 'pistonTravel');
    expect(pistonTravel).toMatchObject({ unit: 'in', xUnit: '°', state: 'ready' });
    const { x, y } = pistonTravel!.value as { readonly x: readonly number[]; readonly y: readonly number[] };
    expect(y).toHaveLength(x.length);
    expect(x.every((degrees, i) => i === 0 || degrees > x[i - 1]!)).toBe(true);
    expect(y[x.indexOf(0)]).toBe(0); // at top dead center
    expect(y[x.indexOf(-180)]).toBeCloseTo(3.54, 9); // a whole stroke below, without a pin offset
  });

  it('may be slow: it is waited for', async () => {
    const { motoredPressure, motoredPeak } = await evaluate(edge, '--get', 'motoredPressure,motoredPeak');
    const { y } = motoredPressure!.value as { readonly y: readonly number[] };
    expect(Math.max(...y)).toBe(motoredPeak!.value);
  });

  it('is a verdict as its word, figure, band and sentence', async () => {
    const { fuelVerdict, fuelVerdictLow } = await evaluate(six, '--get', 'fuelVerdict,fuelVerdictLow');
    const here = fuelVerdict!.value as Record<string, unknown>;
    expect(Object.keys(here)).toEqual(['word', 'value', 'start', 'end', 'sentence']);
    isAbout(here.value, '7.38');
    // 87 AKI, iron: 7.00 to 7.50 at sea level (common practice, no source), 0.20 higher for each 3000 ft of 7200.
    expect(here).toMatchObject({ word: 'comfortable', start: 7.48, end: 7.98 });
    expect(plain(here.sentence)).toMatch(
      /^Comfortable here, on 87 AKI at 7200 ft\. A dynamic ratio of 7\.38 .* from 7\.48 to 7\.98\./,
    );
    const low = fuelVerdictLow!.value as Record<string, unknown>;
    expect(low).toMatchObject({ word: 'borderline', start: 7, end: 7.5 });
    expect(plain(low.sentence)).toMatch(/^Borderline taken down to sea level/);
    const si = (await evaluate(six, '--units', 'si', '--get', 'fuelVerdict')).fuelVerdict!.value as Record<
      string,
      unknown
    >;
    expect(plain(si.sentence)).toContain('2195 m'); // 7200 × 0.3048
  });
});

describe('--set', () => {
  it('sets inputs, in the unit shown or one that is named, several of them', async () => {
    const inches = await value('displacement', edge, '--set', 'bore=4.03in', '--set', 'cylinders=6');
    expect(inches).toBeCloseTo((Math.PI / 4) * 4.03 ** 2 * 3.54 * 6, 9);
    expect(await value('displacement', edge, '--set', 'bore=102.362 mm', '--set', 'cylinders=6')).toBeCloseTo(
      inches,
      9,
    );
    const millimeters = await value(
      'displacement',
      edge,
      '--units',
      'si',
      '--set',
      'bore=102.362',
      '--set',
      'cylinders=6',
    );
    expect(millimeters).toBeCloseTo(inches * 2.54 ** 3, 6);
  });

  it('sets choices by their id, and clears what may be left out', async () => {
    const { fuelVerdict } = await evaluate(edge, '--set', 'fuelGrade=93', '--get', 'fuelVerdict');
    // Two octane numbers are a quarter of a ratio (common practice, no source).
    expect(fuelVerdict!.value).toMatchObject({ start: expect.closeTo(7.54333333333 + 0.25, 9) as number });
    const cleared = ['--set', 'gaugeReading=170', '--set', 'gaugeReading='];
    expect((await evaluate(edge, ...cleared, '--get', 'gaugeReading')).gaugeReading!.value).toBeNull();
  });

  it('takes a negative figure', async () => {
    expect(await value('intakeClosing', edge, '--set', 'camAdvance=-5')).toBe(66);
  });
});

describe('--hold', () => {
  it('holds a computed value, and what reads it follows', async () => {
    const answers = await evaluate(
      edge,
      '--hold',
      'dynamicRatio=8.2',
      '--get',
      'dynamicRatio,crankingPressure,fuelVerdict,staticRatio',
    );
    expect(answers.dynamicRatio!.value).toBe(8.2);
    isAbout(answers.staticRatio!.value, '9.54');
    // 29.20 inHg is 14.34 psi: 14.34 × (8.2^1.25 − 1)
    expect(Math.abs((answers.crankingPressure!.value as number) - 14.34 * (8.2 ** 1.25 - 1))).toBeLessThan(0.1);
    expect(answers.fuelVerdict!.value).toMatchObject({ word: 'beyond', value: 8.2 });
  });

  it('leaves alone what it stands on', async () => {
    const answers = await evaluate(edge, '--hold', 'intakeClosing=66', '--get', 'camAdvance,intakeClosing');
    expect([answers.camAdvance!.value, answers.intakeClosing!.value]).toEqual([0, 66]);
  });
});

describe('--variant', () => {
  it('looks at a variant, else at the one the notebook was saved with', async () => {
    isAbout(await value('dynamicRatio', cams), '8.67');
    isAbout(await value('dynamicRatio', cams, '--variant', 'early'), '8.67');
    isAbout(await value('dynamicRatio', cams, '--variant', 'late'), '7.46');
    isAbout(await value('staticRatio', cams, '--variant', 'late'), '10.21');
  });

  it('sets inputs there', async () => {
    const late = await value('dynamicRatio', cams, '--variant', 'late', '--set', 'intakeCenterline=106');
    expect(late).toBeGreaterThan(await value('dynamicRatio', cams, '--variant', 'late')); // it shuts two degrees sooner
  });
});

describe('--sweep', () => {
  it('gives each result along the way, both ends included', async () => {
    const sweep = await swept(edge, '--get', 'displacement,dynamicRatio', '--sweep', 'bore=4in..4.1in/0.05');
    expect(sweep).toMatchObject({ id: 'bore', unit: 'in', x: [4, 4.05, 4.1] });
    expect(Object.keys(sweep.results)).toEqual(['displacement', 'dynamicRatio']);
    for (const [i, bore] of [4, 4.05, 4.1].entries())
      expect(sweep.results.displacement!.y[i]).toBeCloseTo((Math.PI / 4) * bore ** 2 * 3.54 * 8, 9);
    expect(sweep.results.displacement!.unit).toBe('in³');
  });

  it('moves a computed value by what moves it: README’s own call', async () => {
    const sweep = await swept(
      edge,
      '--set', 'bore=4.03in', '--hold', 'intakeClosing=60', '--get', 'dynamicRatio,crankingPressure', '--units', 'us',
      '--sweep', 'intakeClosing=50..80/1',
    ); // prettier-ignore
    expect(sweep.x).toEqual(Array.from({ length: 31 }, (_, i) => 50 + i));
    const ratios = sweep.results.dynamicRatio!.y as readonly number[];
    expect(ratios.every((ratio, i) => i === 0 || ratio < ratios[i - 1]!)).toBe(true); // the later, the less is caught
    isAbout(ratios[10], '7.77'); // 4.03 in, 60°: the README’s way, π/4 × 4.03² × 2.859 in and what is left
  });

  it('is null where there is no answer', async () => {
    const sweep = await swept(edge, '--get', 'dynamicRatio,gasketVolume', '--sweep', 'rod=1in..3in/0.5');
    expect(sweep.x).toEqual([1, 1.5, 2, 2.5, 3]);
    const { dynamicRatio, gasketVolume } = sweep.results;
    expect(dynamicRatio!.y.map((y) => y === null)).toEqual([true, true, false, false, false]); // the throw is 1.770 in
    for (const y of gasketVolume!.y) isAbout(y, '9.13'); // the README’s: it has nothing to do with the rod
  });

  it('runs downward, in SI, to the last whole step', async () => {
    const sweep = await swept(edge, '--units', 'si', '--get', 'displacement', '--sweep', 'stroke=90..80/4');
    expect(sweep).toMatchObject({ unit: 'mm', x: [90, 86, 82] });
    expect(sweep.results.displacement!.y[0]).toBeCloseTo((Math.PI / 4) * 10.3378 ** 2 * 9 * 8, 6);
  });

  it('has as many points as its length in steps, and one', async () => {
    const sweep = await swept(edge, '--get', 'altitude', '--sweep', 'altitude=0..9999/1');
    expect(sweep.x).toHaveLength(10_000);
    expect(sweep.results.altitude!.y).toEqual(sweep.x);
  });
});

describe('an engine that cannot be', () => {
  it('is an answer, not an error: null, and why', async () => {
    const answers = await evaluate(edge, '--set', 'rod=1.5', '--get', 'dynamicRatio,gasketVolume');
    expect(answers.dynamicRatio).toEqual({
      value: null,
      unit: '',
      state: 'fault',
      message: 'The rod is shorter than the crank throw, 1.770 in.',
    });
    isAbout(answers.gasketVolume!.value, '9.13');
  });

  it('includes figures beyond all reason', async () => {
    const { bore } = await evaluate(edge, '--set', 'bore=400', '--get', 'bore');
    expect(bore).toMatchObject({ value: null, state: 'fault' });
    expect(bore!.message).toMatch(/^Bore lies between .*\.$/);
  });
});
