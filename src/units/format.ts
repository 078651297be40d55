import type { Quantity, Shown, System } from './quantity.ts';
import { differenceToUnit, toUnit } from './unit.ts';

/** The figure alone, in the unit's own digits: "4.070", "−1.5", "61". Fields print no group marks. */
export function figure(si: number, shown: Shown, trim = false): string {
  return digits(toUnit(si, shown.unit), shown.digits, trim);
}

/** Likewise for a difference: a tolerance, a change. */
export function differenceFigure(si: number, shown: Shown, trim = false): string {
  return digits(differenceToUnit(si, shown.unit), shown.digits, trim);
}

/** Figure and unit: "4.070 in", "61°". */
export function format(si: number, quantity: Quantity, system: System): string {
  const shown = quantity[system];
  return withUnit(figure(si, shown, quantity.trim), shown);
}

export const withUnit = (text: string, { unit: { symbol } }: Shown): string =>
  symbol === '' ? text : symbol === '°' ? `${text}°` : `${text} ${symbol}`;

function digits(value: number, places: number, trim: boolean): string {
  // Rounding half away from zero at the last digit shown; a little more forgives binary fractions such as 1.005.
  const scale = 10 ** places;
  const scaled = Math.abs(value) * scale;
  const rounded = scaled < 1e15 ? Math.round(scaled + scaled * Number.EPSILON + 1e-9) / scale : Math.abs(value);
  const text = rounded < 1e15 ? rounded.toFixed(places) : rounded.toExponential(3);
  const short = trim && /^\d+\.0+$/.test(text) ? text.slice(0, text.indexOf('.')) : text;
  return value < 0 && rounded !== 0 ? `−${short}` : short;
}
