import type { EngineInput } from '../../src/physics/cycle/engine-input.ts';
import { type SparkPoint, sparkCurveOf } from '../../src/physics/cycle/spark.ts';
import { degree, si } from '../../src/units/unit.ts';

/** What the octane requirement of an engine may come from. */
export type DriverName = 'spark' | 'heat' | 'pressure' | 'mixture' | 'moisture' | 'exhaust' | 'cam';

/** Ordinary figures, SI: what a band of practice takes for granted (common practice, no source). */
export const usual = {
  spark: si(34, degree),
  pentRoofSpark: si(28, degree),
  temperature: 298.15,
  pressure: 101_325,
  mixture: 1.15,
  moisture: 0.007,
  closing: si(60, degree),
} as const;

/** The usual spark by engine speed. */
export const usualCurve = (isPentRoof: boolean): readonly SparkPoint[] =>
  sparkCurveOf(isPentRoof ? usual.pentRoofSpark : usual.spark);

interface More {
  readonly isPentRoof: boolean;
  /** Of the intake, rad after bottom dead center. */
  readonly closing: number;
}

/** The same engine with one thing as it usually is, for each thing that is not. */
export function ordinaryEngines(
  engine: EngineInput,
  { isPentRoof, closing }: More,
): readonly (readonly [DriverName, EngineInput])[] {
  const early = Math.round((closing - usual.closing) / degree.factor);
  const made: readonly (readonly [DriverName, Partial<EngineInput>])[] = [
    ['spark', { spark: usualCurve(isPentRoof) }],
    ['heat', { airTemperature: usual.temperature }],
    ['pressure', { airPressure: usual.pressure }],
    ['mixture', { equivalenceRatio: usual.mixture }],
    ['moisture', { waterRatio: usual.moisture }],
    ['exhaust', { trim: 'bare' }],
    // The whole cam is turned, as an offset key would: overlap and lift stay as they are.
    [
      'cam',
      early === 0
        ? {}
        : { intakeArea: turned(engine.intakeArea, early), exhaustArea: turned(engine.exhaustArea, early) },
    ],
  ];
  return made.flatMap(([name, change]) =>
    Object.entries(change).some(([key, value]) => !isSame(value, engine[key as keyof EngineInput]))
      ? [[name, { ...engine, ...change }] as const]
      : [],
  );
}

const isSame = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/** Areas by crank degree, so many degrees earlier. */
const turned = (areas: Float64Array, early: number): Float64Array =>
  areas.map((_, i) => areas[(((i + early) % 720) + 720) % 720]!);
