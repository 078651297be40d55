/**
 * Exponents of meter, kilogram, second, kelvin and radian. Angle is kept as a dimension of its own,
 * so that degrees cannot be added to a plain ratio.
 */
export type Dimension = readonly [length: number, mass: number, time: number, temperature: number, angle: number];

export const none: Dimension = [0, 0, 0, 0, 0];

export const sameDimension = (a: Dimension, b: Dimension): boolean => a.every((n, i) => Math.abs(n - b[i]!) < 1e-9);

/** The dimension of a × b^power. */
export const timesPower = (a: Dimension, b: Dimension, power: number): Dimension => [
  a[0] + b[0] * power,
  a[1] + b[1] * power,
  a[2] + b[2] * power,
  a[3] + b[3] * power,
  a[4] + b[4] * power,
];
