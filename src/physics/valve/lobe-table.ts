import { root } from '../../numerics/root.ts';
import { levelSpline, type Spline, splineBend, splineHeight, splineSlope } from './spline.ts';

/**
 * A measured lobe, the two flanks as different as they like: tappet lift in m over rad of crankshaft, zero at its peak,
 * negative while opening. A full turn of the camshaft has 4 pi.
 */
export interface LobeTable extends Spline {
  /** Highest lift of the smooth curve. */
  readonly lift: number;
}

/** Where a lobe passes a lift, rad of crankshaft from its peak. */
export interface Flanks {
  /** Negative. */
  readonly opening: number;
  readonly closing: number;
}

/**
 * A smooth lobe through a measured table: the cubic spline that is level at both ends. Its acceleration is continuous,
 * which curves that never overshoot a row (monotone cubics) give up, and the spring's speed is read from acceleration;
 * the price, a hair of wave beside a sudden stop, is cut off where it would go below zero. Nothing is smoothed:
 * readings rounded to 0.001 in every degree give lifts good to that and accelerations good for little.
 *
 * @param angles rad of crankshaft, growing, from any zero
 * @param lifts m at the tappet, from zero through one peak to zero
 * @throws RangeError saying in words which row is wrong
 */
export function lobeFromTable(angles: readonly number[], lifts: readonly number[]): LobeTable {
  requireTable(angles, lifts);
  const [x, y] = [Float64Array.from(angles), Float64Array.from(lifts)];
  const curve = levelSpline(x, y);
  const top = y.indexOf(Math.max(...lifts));
  // The slope rises through the row before the highest one or at it, and falls through the one after.
  const left = splineSlope(curve, x[top]!) < 0 ? top - 1 : top;
  const peak = root((at) => splineSlope(curve, at), x[left]!, x[left + 1]!) ?? x[top]!;
  return { ...curve, x: x.map((at) => at - peak), lift: splineHeight(curve, peak) };
}

function requireTable(angles: readonly number[], lifts: readonly number[]): void {
  if (angles.length !== lifts.length) throw new RangeError('The two columns of the lobe table differ in length.');
  if (angles.length < 5) throw new RangeError('A lobe table needs at least five rows.');
  angles.forEach((angle, i) => {
    if (!(Number.isFinite(angle) && lifts[i]! >= 0 && lifts[i]! < Infinity))
      throw new RangeError(`Row ${i + 1} of the lobe table needs an angle and a lift that is not below zero.`);
    if (i > 0 && angle === angles[i - 1])
      throw new RangeError(`Rows ${i} and ${i + 1} of the lobe table stand at the same angle.`);
    if (i > 0 && angle < angles[i - 1]!)
      throw new RangeError(`Row ${i + 1} of the lobe table stands before row ${i}: sort the rows by angle.`);
  });
  if (angles.at(-1)! - angles[0]! > 4 * Math.PI)
    throw new RangeError('The lobe table is longer than one turn of the camshaft.');
  if (lifts[0] !== 0 || lifts.at(-1) !== 0)
    throw new RangeError('The lobe table must begin and end on the base circle, at a lift of zero.');
  if (!lifts.some((lift) => lift > 0)) throw new RangeError('The lobe table has no lift.');
}

/** Tappet lift, m, at an angle from the peak, rad; zero outside the table. */
export function tableLift(lobe: LobeTable, angleFromPeak: number): number {
  return isOutside(lobe, angleFromPeak) ? 0 : Math.max(0, splineHeight(lobe, angleFromPeak));
}

/** Tappet velocity, m/rad of crankshaft, positive while opening, at an angle from the peak, rad. */
export function tableVelocity(lobe: LobeTable, angleFromPeak: number): number {
  return isOutside(lobe, angleFromPeak) ? 0 : splineSlope(lobe, angleFromPeak);
}

/** Tappet acceleration, m/rad2 of crankshaft, at an angle from the peak, rad. */
export function tableAcceleration(lobe: LobeTable, angleFromPeak: number): number {
  return isOutside(lobe, angleFromPeak) ? 0 : splineBend(lobe, angleFromPeak);
}

const isOutside = ({ x }: LobeTable, at: number): boolean => at <= x[0]! || at >= x[x.length - 1]!;

/** Integral of the tappet's lift over the crank angle, m rad. */
export function tableArea({ x, y, bend }: LobeTable): number {
  let sum = 0;
  for (let i = 1; i < x.length; i++) {
    const h = x[i]! - x[i - 1]!;
    sum += (h * (y[i]! + y[i - 1]!)) / 2 - (h ** 3 * (bend[i]! + bend[i - 1]!)) / 24;
  }
  return sum;
}

/**
 * Where the tappet passes a lift, seen from the peak outward.
 *
 * @param lift m; at zero and below, where the lobe first comes to rest
 * @returns the opening and the closing flank apart; both at the peak when the lift is not reached
 */
export function tableFlanks(lobe: LobeTable, lift: number): Flanks {
  return lift >= lobe.lift
    ? { opening: 0, closing: 0 }
    : { opening: flank(lobe, lift, -1), closing: flank(lobe, lift, 1) };
}

function flank({ x, y, bend }: LobeTable, lift: number, way: 1 | -1): number {
  const sought = Math.max(0, lift);
  let row = way > 0 ? x.findIndex((at) => at > 0) : x.findLastIndex((at) => at < 0);
  while (y[row]! > sought) row += way; // the table ends at zero
  const inner = way * Math.max(0, way * x[row - way]!);
  return root((at) => splineHeight({ x, y, bend }, at) - sought, inner, x[row]!) ?? x[row]!;
}

/** Crank angle during which the tappet is at or above a lift (m), rad. */
export function tableDuration(lobe: LobeTable, lift: number): number {
  const { opening, closing } = tableFlanks(lobe, lift);
  return closing - opening;
}

/** Greatest speed of the tappet on either flank, m/rad of crankshaft. */
export function peakTableVelocity(lobe: LobeTable): number {
  const { x, bend } = lobe;
  let fastest = 0;
  for (let i = 1; i < x.length; i++) {
    const [before, after] = [bend[i - 1]!, bend[i]!];
    if (before * after > 0) continue; // between two rows the speed peaks where the straight line of the bend meets zero
    const at = before === after ? x[i]! : x[i - 1]! + ((x[i]! - x[i - 1]!) * before) / (before - after);
    fastest = Math.max(fastest, Math.abs(splineSlope(lobe, at)));
  }
  return fastest;
}

/** Greatest acceleration of the tappet, m/rad2 of crankshaft: straight lines between rows peak at a row. */
export function peakTableAcceleration({ bend }: LobeTable): number {
  return bend.reduce((most, each) => Math.max(most, each), 0);
}
