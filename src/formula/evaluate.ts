import { type Dimension, none, sameDimension, timesPower } from '../units/dimension.ts';
import { fromUnit, type Unit } from '../units/unit.ts';
import { type Tree, Unreadable } from './parse.ts';

/** What a tree comes to, in SI. `bare` says that no unit was written in it. */
export interface Amount {
  readonly si: number;
  readonly dimension: Dimension;
  readonly bare: boolean;
}

/** Every unit written in a tree. */
export function unitsIn(tree: Tree): readonly Unit[] {
  switch (tree.is) {
    case 'number':
      return [];
    case 'minus':
      return unitsIn(tree.of);
    case 'unit':
      return [...unitsIn(tree.of), tree.unit];
    default:
      return [...unitsIn(tree.left), ...unitsIn(tree.right)];
  }
}

/** Evaluates with dimensions. Throws Unreadable where they do not fit. */
export function evaluate(tree: Tree): Amount {
  switch (tree.is) {
    case 'number':
      return { si: tree.value, dimension: none, bare: true };
    case 'minus': {
      const of = evaluate(tree.of);
      return { ...of, si: -of.si };
    }
    case 'unit': {
      const of = evaluate(tree.of);
      if (!of.bare) throw new Unreadable('One unit at a time.');
      return { si: fromUnit(of.si, tree.unit), dimension: tree.unit.dimension, bare: false };
    }
    case 'sum':
    case 'difference':
      return added(tree.is === 'sum' ? 1 : -1, evaluate(tree.left), evaluate(tree.right), tree);
    case 'product':
    case 'quotient': {
      const power = tree.is === 'product' ? 1 : -1;
      const [left, right] = [evaluate(tree.left), evaluate(tree.right)];
      if (power < 0 && right.si === 0) throw new Unreadable('Nothing can be divided by zero.');
      return {
        si: finite(left.si * right.si ** power),
        dimension: timesPower(left.dimension, right.dimension, power),
        bare: left.bare && right.bare,
      };
    }
    case 'power': {
      const [base, exponent] = [evaluate(tree.left), evaluate(tree.right)];
      if (!sameDimension(exponent.dimension, none)) throw new Unreadable('A power is a plain number.');
      return {
        si: finite(base.si ** exponent.si),
        dimension: timesPower(none, base.dimension, exponent.si),
        bare: base.bare,
      };
    }
  }
}

function added(sign: 1 | -1, left: Amount, right: Amount, tree: Tree & { left: Tree; right: Tree }): Amount {
  if (!sameDimension(left.dimension, right.dimension)) {
    const bare = left.bare ? tree.left : right.bare ? tree.right : undefined;
    throw new Unreadable(bare?.is === 'number' ? `Give ${bare.text} a unit too.` : 'These units cannot be added.');
  }
  return { si: finite(left.si + sign * right.si), dimension: left.dimension, bare: left.bare && right.bare };
}

function finite(value: number): number {
  if (!Number.isFinite(value)) throw new Unreadable('That comes to no figure.');
  return value;
}
