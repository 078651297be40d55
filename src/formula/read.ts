import { sameDimension } from '../units/dimension.ts';
import type { Quantity, Shown } from '../units/quantity.ts';
import { differenceFromUnit, fromUnit, tidy, type Unit } from '../units/unit.ts';
import { type Amount, evaluate, unitsIn } from './evaluate.ts';
import { parse, type Tree, Unreadable } from './parse.ts';

/** What was typed, in SI, or a sentence that says what to write instead. */
export type Reading = { readonly si: number } | { readonly fault: string };

/** Reads a figure typed into a field of this quantity; figures without a unit are in the unit shown there. */
export function read(text: string, quantity: Quantity, shown: Shown): Reading {
  return reading(text, (tree) => {
    const units = unitsIn(tree);
    const scale = units.find((u) => u.offset !== 0);
    // A scale with its own zero cannot be added up term by term: 80 + 5 °F is 85 °F, not 80 °F plus 5 °F.
    if (scale && units.some((u) => u !== scale))
      throw new Unreadable('Write a temperature as one figure with one unit.');
    for (const unit of units) checkDatum(unit, quantity);
    if (!scale) return inUnit(evaluate(tree), quantity, shown, fromUnit);
    const amount = evaluate(withoutUnits(tree));
    if (!sameDimension(scale.dimension, shown.unit.dimension)) throw new Unreadable(notIn(scale, shown));
    return fromUnit(amount.si, scale);
  });
}

/** Reads a difference: a tolerance or a step, for which 10 °F is 5.56 K. */
export function readDifference(text: string, quantity: Quantity, shown: Shown): Reading {
  return reading(text, (tree) => {
    const units = unitsIn(tree);
    if (units.some((u) => u.offset !== 0)) {
      const [unit] = units;
      if (units.some((u) => u !== unit)) throw new Unreadable('Write it as one figure with one unit.');
      if (!sameDimension(unit!.dimension, shown.unit.dimension)) throw new Unreadable(notIn(unit!, shown));
      return differenceFromUnit(evaluate(withoutUnits(tree)).si, unit!);
    }
    return inUnit(evaluate(tree), quantity, shown, differenceFromUnit);
  });
}

function reading(text: string, si: (tree: Tree) => number): Reading {
  try {
    return { si: tidy(si(parse(text.replace(/:\s*1\s*$/, '')))) }; // "9.5:1" is how a ratio is said
  } catch (error) {
    if (error instanceof Unreadable) return { fault: error.message };
    throw error;
  }
}

function inUnit(amount: Amount, quantity: Quantity, shown: Shown, from: (value: number, unit: Unit) => number): number {
  if (amount.bare) return from(amount.si, shown.unit);
  if (!sameDimension(amount.dimension, quantity.us.unit.dimension)) throw new Unreadable(notIn(null, shown));
  return amount.si;
}

const notIn = (unit: Unit | null, { unit: { symbol } }: Shown): string =>
  `${unit ? `${unit.symbol} does` : 'That unit does'} not fit here. Write it ${symbol === '' ? 'as a plain figure' : `in “${symbol}”`}.`;

function checkDatum(unit: Unit, quantity: Quantity): void {
  if (!unit.datum || !quantity.datum || unit.datum === quantity.datum) return;
  throw new Unreadable(
    quantity.datum === 'gauge'
      ? 'This is a gauge pressure, above the air outside. Write what the gauge reads.'
      : 'This is an absolute pressure, counted from nothing. Write what the barometer reads.',
  );
}

const withoutUnits = (tree: Tree): Tree => {
  switch (tree.is) {
    case 'number':
      return tree;
    case 'unit':
      return withoutUnits(tree.of);
    case 'minus':
      return { is: 'minus', of: withoutUnits(tree.of) };
    default:
      return { is: tree.is, left: withoutUnits(tree.left), right: withoutUnits(tree.right) };
  }
};
