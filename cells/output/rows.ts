import type { Curve } from '../../src/graph/kind.ts';
import { Impossible } from '../../src/graph/state.ts';
import type { SpeedResult } from '../../src/physics/cycle/speed.ts';

/** One engine speed of the curve: what is drawn and read of it. SI. */
export type SpeedRow = Pick<
  SpeedResult,
  | 'speed'
  | 'settled'
  | 'torque'
  | 'power'
  | 'brakePressure'
  | 'pumpingPressure'
  | 'frictionPressure'
  | 'volumetricEfficiency'
  | 'residual'
  | 'fuelFlow'
  | 'spark'
  | 'octaneRequirement'
  | 'bestSpark'
  | 'sparks'
  | 'halfBurned'
  | 'trappedTemperature'
  | 'backflow'
> & {
  /** Not a first look: what stays on show. */
  readonly fine: boolean;
};
export interface BySpeed {
  readonly rows: readonly SpeedRow[];
}

export const rowOf = (r: SpeedResult): SpeedRow => ({
  speed: r.speed,
  settled: r.settled,
  torque: r.torque,
  power: r.power,
  brakePressure: r.brakePressure,
  pumpingPressure: r.pumpingPressure,
  frictionPressure: r.frictionPressure,
  volumetricEfficiency: r.volumetricEfficiency,
  residual: r.residual,
  fuelFlow: r.fuelFlow,
  spark: r.spark,
  octaneRequirement: r.octaneRequirement,
  bestSpark: r.bestSpark,
  sparks: r.sparks,
  halfBurned: r.halfBurned,
  trappedTemperature: r.trappedTemperature,
  backflow: r.backflow,
  fine: r.grid !== 'coarse',
});

const isFigure = (row: SpeedRow): boolean =>
  Object.values(row).every((v) => typeof v !== 'number' || Number.isFinite(v));

/** The speeds from one end to the other, rad/s. */
export function speedsOf(from: number, to: number, step: number): readonly number[] {
  if (!(to > from)) throw new Impossible(['The curve ends below where it begins.'], 'curveTo');
  const count = Math.floor((to - from) / step + 1e-9) + 1;
  if (count > 60) throw new Impossible(['That is more than 60 speeds: take a larger step.'], 'curveStep');
  return Array.from({ length: count }, (_, i) => from + i * step);
}

/** The speeds whose cycle ended in figures at all. */
export function soundRows({ rows }: BySpeed): readonly SpeedRow[] {
  const sound = rows.filter(isFigure);
  if (sound.length === 0)
    throw new Impossible(['At none of these speeds does the cycle come to an end.'], 'cycleInput');
  return sound;
}

/** One column over engine speed; a speed without a figure, or where `pick` finds none, is left out. */
export function columnOf(found: BySpeed, pick: (row: SpeedRow) => number | null): Curve {
  const points = soundRows(found).flatMap((row) => {
    const y = pick(row);
    return y === null ? [] : [{ x: row.speed, y }];
  });
  return { x: Float64Array.from(points, (p) => p.x), y: Float64Array.from(points, (p) => p.y) };
}
