import { root } from '../../numerics/root.ts';

/** The flank of a lobe from its nose (x = 0, height 1) to where it comes to rest (x = 1, height 0). No units. */
export interface LiftPolynomial {
  /** 2, p, p + d, p + 2d, p + 3d */
  readonly exponents: readonly number[];
  /** d */
  readonly spacing: number;
  /** One for each exponent. */
  readonly coefficients: readonly number[];
}

/**
 * Polynomial y = 1 + C2 x^2 + Cp x^p + Cq x^q + Cr x^r + Cs x^s that has y and four derivatives zero at x = 1.
 *
 * Between nose and rest it only falls, and it bends over once: with six terms of rising power and a fivefold zero at 1,
 * the rule of signs leaves room for no other zero of y or of its slope, and for one of its second derivative.
 *
 * @param p second exponent, above 2, whole or not; the larger, the fuller the flank
 * @param spacing d, by which the next three exponents grow, above 0
 * @throws RangeError when p is not above 2 or the spacing not above 0
 * Source: the polynomial cams of R. Stone and of G. P. Blair (from memory); the coefficients are Lagrange's weights.
 */
export function liftPolynomial(p: number, spacing = 2): LiftPolynomial {
  if (!(p > 2)) throw new RangeError('The second exponent of a lift polynomial must be above 2.');
  if (!(spacing > 0)) throw new RangeError('The exponents of a lift polynomial must grow.');
  const exponents = [2, p, p + spacing, p + 2 * spacing, p + 3 * spacing];
  // The five conditions at x = 1 read "the sum of c n^k is zero for k = 0 to 4": solved by a product for each exponent.
  const coefficients = exponents.map((n) => {
    let product = -1;
    for (const other of exponents) if (other !== n) product *= other / (other - n);
    return product;
  });
  return { exponents, spacing, coefficients };
}

/** Height at x, 0 to 1; zero beyond 1. */
export function polynomialHeight({ exponents: n, coefficients: c, spacing }: LiftPolynomial, x: number): number {
  if (x >= 1) return 0;
  const step = spacing === 2 ? x * x : x ** spacing; // one power is saved where the spacing is the usual one
  return 1 + c[0]! * x * x + x ** n[1]! * (c[1]! + step * (c[2]! + step * (c[3]! + step * c[4]!)));
}

/** First derivative of the height at x, 0 to 1; zero beyond 1. */
export function polynomialSlope({ exponents: n, coefficients: c, spacing }: LiftPolynomial, x: number): number {
  if (x >= 1) return 0;
  const step = spacing === 2 ? x * x : x ** spacing;
  const sum = n[1]! * c[1]! + step * (n[2]! * c[2]! + step * (n[3]! * c[3]! + step * n[4]! * c[4]!));
  return 2 * c[0]! * x + x ** (n[1]! - 1) * sum;
}

/** Second derivative of the height at x, 0 to 1; zero beyond 1. */
export function polynomialBend({ exponents: n, coefficients: c, spacing }: LiftPolynomial, x: number): number {
  if (x >= 1) return 0;
  const step = spacing === 2 ? x * x : x ** spacing;
  const [k1, k2] = [n[1]! * (n[1]! - 1) * c[1]!, n[2]! * (n[2]! - 1) * c[2]!];
  const [k3, k4] = [n[3]! * (n[3]! - 1) * c[3]!, n[4]! * (n[4]! - 1) * c[4]!];
  return 2 * c[0]! + x ** (n[1]! - 2) * (k1 + step * (k2 + step * (k3 + step * k4)));
}

/** Integral of the height from 0 to x, x from 0 to 1. */
export function polynomialArea({ exponents, coefficients }: LiftPolynomial, x: number): number {
  let sum = x;
  for (let i = 0; i < 5; i++) sum += (coefficients[i]! * x ** (exponents[i]! + 1)) / (exponents[i]! + 1);
  return sum;
}

/** The x at which the height is y: 0 for 1 and above, 1 for nothing and below. */
export function placeAtHeight(polynomial: LiftPolynomial, y: number): number {
  if (y >= 1) return 0;
  if (y <= 0) return 1;
  return root((x) => polynomialHeight(polynomial, x) - y, 0, 1) as number; // 1 - y at one end, -y at the other
}

/** The x at which nose turns into flank: the second derivative is zero and the slope steepest. */
export function inflection(polynomial: LiftPolynomial): number {
  // Just short of 1, where all derivatives vanish together, rounding would decide the sign.
  return root((x) => polynomialBend(polynomial, x), 0, 0.999) as number; // one zero, as said above
}
