import { describe, expect, it } from 'vitest';
import { chapters } from '../../cells/index.ts';
import { drain } from '../../src/graph/cell.ts';
import { solveSteps } from '../../src/graph/solve-slowly.ts';
import { Impossible } from '../../src/graph/state.ts';
import type { EngineInput } from '../../src/physics/cycle/engine-input.ts';
import { ordinary } from '../../src/physics/cycle/engine-input.ts';
import type { Phrase } from '../../src/units/phrase.ts';
import { say } from '../../src/units/phrase.ts';
import * as u from '../../src/units/unit.ts';
import { inputOf, opened, scenario, valueOf } from '../notebook/notebooks.ts';
import { figures, read, rough } from './roughly.ts';

const rpm = u.si(1, u.revolutionsPerMinute);
const poundFoot = u.si(1, u.poundFoot);
const few = { curveFrom: 4000 * rpm, curveTo: 5500 * rpm, curveStep: 750 * rpm };
const factors = [
  ['flow', 'flowFactor'],
  ['burn', 'burnFactor'],
  ['heat', 'heatFactor'],
  ['friction', 'frictionFactor'],
  ['loss', 'lossFactor'],
] as const;
const fit = chapters.find((c) => c.id === 'output')!.actions!.find((a) => a.id === 'fit-factor')!;

describe('what the model assumes', () => {
  const engine = (given: Readonly<Record<string, unknown>>, name?: string): EngineInput =>
    read(rough(given, name), 'cycleInput')[0] as EngineInput;
  it('is the ordinary as long as nothing is scaled', () => {
    const { flowFactor, frictionFactor, wallHeatFactor, burnCompleteness, bankBlend } = engine({});
    expect({ flowFactor, frictionFactor, wallHeatFactor, burnCompleteness, bankBlend }).toEqual({
      flowFactor: ordinary.flowFactor,
      frictionFactor: ordinary.frictionFactor,
      wallHeatFactor: ordinary.wallHeatFactor,
      burnCompleteness: ordinary.burnCompleteness,
      bankBlend: ordinary.bankBlend,
    });
  });
  it('is scaled one thing at a time', () => {
    const usual = engine({});
    const changed = (given: Readonly<Record<string, unknown>>): readonly (readonly [string, number])[] =>
      Object.entries(engine(given)).flatMap(([key, value]) =>
        typeof value === 'number' && value !== usual[key as keyof EngineInput]
          ? [[key, value / (usual[key as keyof EngineInput] as number)] as const]
          : [],
      );
    expect(changed({ flowFactor: 1.1 })).toEqual([['flowFactor', 1.1]]);
    expect(changed({ burnFactor: 1.1 })).toEqual([['burnTimeFactor', 1.1]]);
    expect(changed({ heatFactor: 1.1 })).toEqual([['wallHeatFactor', 1.1]]);
    expect(changed({ frictionFactor: 1.1 })).toEqual([['frictionFactor', 1.1]]);
    expect(changed({ lossFactor: 1.1 })).toEqual([
      ['runnerLoss', expect.closeTo(1.1, 12)],
      ['primaryLoss', expect.closeTo(1.1, 12)],
    ]);
    expect(engine({ burnFactor: 1.1, chamberStyle: 'pentroof' }).burnTimeFactor).toBeCloseTo(
      1.1 * ordinary.pentRoofBurn,
      12,
    );
  });
});

describe('a fit to a measured peak', () => {
  it.each(factors)('of the %s is said beside %s, and nowhere else', (choice, id) => {
    const measuredTorque = 380 * poundFoot;
    const said = (given: Readonly<Record<string, unknown>>): (string | null)[] =>
      read(rough(given), ...factors.map(([name]) => `${name}FittedRemark`)).map((remark) =>
        remark === null ? null : say(remark as Phrase, 'us'),
      );
    const beside = factors.map(([name]) => (name === choice ? 'Fitted to a measured peak of 380 lbf ft.' : null));
    expect(said({ fittedFactor: choice, [id]: 0.97, measuredTorque })).toEqual(beside);
    const nothing = factors.map(() => null);
    expect(said({ fittedFactor: choice, [id]: 1, measuredTorque })).toEqual(nothing);
    expect(said({ fittedFactor: choice, [id]: 0.97 })).toEqual(nothing);
    expect(said({ fittedFactor: 'none', [id]: 0.97, measuredTorque })).toEqual(nothing);
  });

  it.each([
    ['flow', 'flowFactor', 0.9],
    ['heat', 'heatFactor', 1.3],
    ['friction', 'frictionFactor', 0.8],
  ] as const)('finds the %s that a dyno’s peak was made with', (choice, id, made) => {
    const [peak] = figures(rough({ ...few, [id]: made }), 'peakTorque') as [number];
    const store = opened(scenario('edge-of-premium'));
    const given = { ...few, fittedFactor: choice, measuredTorque: peak };
    store.set(
      Object.entries(given).map(([name, value]) => [inputOf(name), value] as const),
      { what: 'a dyno was there' },
    );
    const asks = fit.solves(given as never)!;
    expect(asks).toMatchObject({ vary: inputOf(id), target: peak });
    const { values } = drain(solveSteps(store.snapshot(), asks.read, asks.target, asks.vary, asks.range));
    expect(values).toHaveLength(1);
    expect(Math.abs(values[0]! - made)).toBeLessThan(0.01);
    const settings = fit.sets(given as never, values[0]!);
    expect(settings.map(([input]) => input.id)).toEqual([id]);
    store.set(settings, { what: 'Fit' });
    expect(valueOf(store, id)).toBeCloseTo(values[0]!, 4);
  });

  it('asks for what it lacks', () => {
    const trouble = (given: object): Impossible => {
      try {
        fit.solves(given as never);
      } catch (error) {
        return error as Impossible;
      }
      throw new Error('nothing was wrong');
    };
    expect(trouble({ fittedFactor: 'flow', measuredTorque: null })).toMatchObject({ about: 'measuredTorque' });
    expect(trouble({ fittedFactor: 'none', measuredTorque: 500 })).toMatchObject({ about: 'fittedFactor' });
  });
});
