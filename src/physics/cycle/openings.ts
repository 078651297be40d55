import { cycleDegrees } from './neighbors.ts';

/** Whole crank degrees from firing top dead center at which a valve first and last has any area. */
export interface Opening {
  /** -180 to 539 */
  readonly opens: number;
  /** -180 to 539 */
  readonly closes: number;
}

const rounding = 1e-9; // m2

/** Entries of an area table: one a degree from 180 degrees before firing top dead center, and two that repeat the first. */
export const areaEntries = cycleDegrees + 2;

/**
 * Where a valve opens and closes, from its table of effective areas.
 *
 * @param area m2 at every whole crank degree, entry i at i - 180 degrees from firing top dead center; 722 entries
 * @param name what to call the valve in an error
 * @throws RangeError when the table is not one opening a cycle
 */
export function openingOf(area: Float64Array, name: string): Opening {
  if (area.length !== areaEntries) throw new RangeError(`The ${name} valve's area needs ${areaEntries} entries.`);
  if (!area.every((a) => a >= 0 && a < 1))
    throw new RangeError(`An area of the ${name} valve is not a possible figure.`);
  const opens: number[] = [];
  const closes: number[] = [];
  for (let i = 0; i < cycleDegrees; i++) {
    const before = area[(i + cycleDegrees - 1) % cycleDegrees]!;
    if (area[i]! > 0 && before === 0) opens.push(i - 180);
    if (area[i] === 0 && before > 0) closes.push(i - 180);
  }
  if (opens.length !== 1 || closes.length !== 1)
    throw new RangeError(`The ${name} valve must open and close once in two turns.`);
  if (Math.abs(area[cycleDegrees]! - area[0]!) + Math.abs(area[cycleDegrees + 1]! - area[1]!) > rounding)
    throw new RangeError(`The ${name} valve's area must repeat after two turns.`);
  return { opens: opens[0]!, closes: closes[0]! };
}
