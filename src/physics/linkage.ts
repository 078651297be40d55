import { maximumAt } from '../numerics/maximum.ts';
import { root } from '../numerics/root.ts';

/** Crank, connecting rod and piston pin of one cylinder. Lengths in m, angles in rad. */
export interface Linkage {
  /** Crank radius, half the stroke. */
  readonly throw: number;
  /** Rod length, center to center. */
  readonly rod: number;
  /** How far the pin's line lies from the crankshaft's, toward the side the crankpin goes down on. */
  readonly offset: number;
  /** Crank angle at the true top dead center, from the crankpin's own highest point. */
  readonly topAngle: number;
  /** Height of the piston pin above the crankshaft at top dead center. */
  readonly top: number;
  /** Distance between the dead centers. */
  readonly travel: number;
  /** The degree wheel's reading, from true top dead center, at the true bottom dead center; about pi. */
  readonly bottomAngle: number;
}

/**
 * A slider-crank with its dead centers, which a pin offset moves: both are where crank and rod lie in one line.
 *
 * @param stroke twice the crank radius, m
 * @param rod rod length, center to center, m
 * @param pinOffset piston-pin offset, m, positive toward the major thrust face
 * @throws RangeError when the crank could not turn a full circle
 * Source: J. B. Heywood, 1988, sec. 2.2, for a centered pin; with an offset, plane geometry (from memory).
 */
export function linkage(stroke: number, rod: number, pinOffset: number): Linkage {
  if (!(stroke > 0)) throw new RangeError('The stroke must be greater than zero.');
  if (!(rod > stroke / 2 + Math.abs(pinOffset)))
    throw new RangeError('The rod must be longer than half the stroke plus the pin offset, or the crank cannot turn.');
  const radius = stroke / 2;
  // Going down under gas load the rod leans away from the major thrust face, so that face is on the negative side.
  const offset = -pinOffset;
  const topAngle = Math.asin(offset / (rod + radius));
  const top = Math.sqrt((rod + radius) ** 2 - offset ** 2);
  return {
    throw: radius,
    rod,
    offset,
    topAngle,
    top,
    travel: top - Math.sqrt((rod - radius) ** 2 - offset ** 2),
    bottomAngle: Math.PI + Math.asin(offset / (rod - radius)) - topAngle,
  };
}

/**
 * How far the piston is below true top dead center, m.
 *
 * @param l the linkage
 * @param angle the degree wheel's angle from true top dead center, rad
 * Source: J. B. Heywood, 1988, eq. 2.5, with the pin moved sideways by the offset (from memory).
 */
export function pistonDrop(l: Linkage, angle: number): number {
  const crank = angle + l.topAngle;
  const lean = l.throw * Math.sin(crank) - l.offset;
  return l.top - l.throw * Math.cos(crank) - Math.sqrt(l.rod * l.rod - lean * lean); // eq. 2.5
}

/**
 * Piston velocity, m/s, positive away from the head.
 *
 * @param l the linkage
 * @param angle the degree wheel's angle from true top dead center, rad
 * @param speed crankshaft speed, rad/s
 * Source: derivative of J. B. Heywood, 1988, eq. 2.5 (eq. 2.11 where the pin is centered) (from memory).
 */
export function pistonVelocity(l: Linkage, angle: number, speed: number): number {
  const crank = angle + l.topAngle;
  const across = l.throw * Math.sin(crank);
  const along = l.throw * Math.cos(crank);
  const lean = across - l.offset;
  return speed * (across + (along * lean) / Math.sqrt(l.rod ** 2 - lean ** 2));
}

/**
 * Piston acceleration at constant crankshaft speed, m/s2, positive away from the head.
 *
 * @param l the linkage
 * @param angle the degree wheel's angle from true top dead center, rad
 * @param speed crankshaft speed, rad/s
 * Source: second derivative of J. B. Heywood, 1988, eq. 2.5 (from memory).
 */
export function pistonAcceleration(l: Linkage, angle: number, speed: number): number {
  const crank = angle + l.topAngle;
  const across = l.throw * Math.sin(crank);
  const along = l.throw * Math.cos(crank);
  const lean = across - l.offset;
  const upright = Math.sqrt(l.rod ** 2 - lean ** 2);
  return speed ** 2 * (along + (along ** 2 - across * lean) / upright + (along * lean) ** 2 / upright ** 3);
}

/**
 * The degree wheel's angle where the piston is fastest, rad: after top dead center when that is on the way down,
 * negative when it is on the way up. A centered pin has two equal places; the one on the way down is given.
 */
export function peakPistonSpeedAngle(l: Linkage): number {
  // An offset toward the crankpin's downgoing side slows the way down and hurries the way up.
  const [from, to] = l.offset > 0 ? [l.bottomAngle - 2 * Math.PI, 0] : [0, l.bottomAngle];
  return root((angle) => pistonAcceleration(l, angle, 1), from, to) as number; // one sign at top, the other at bottom
}

/** Greatest speed of the piston, m/s, at a crankshaft speed in rad/s. */
export function peakPistonSpeed(l: Linkage, speed: number): number {
  return Math.abs(pistonVelocity(l, peakPistonSpeedAngle(l), speed));
}

/**
 * Greatest size of the piston's acceleration, m/s2, at a crankshaft speed in rad/s. With an ordinary rod that is at top
 * dead center or a hair beside it; with a very short one it is not, so it is looked for.
 */
export function peakPistonAcceleration(l: Linkage, speed: number): number {
  const size = (angle: number): number => Math.abs(pistonAcceleration(l, angle, speed));
  return size(maximumAt(size, -Math.PI, Math.PI));
}

/**
 * Crank angle, rad, during which the piston stays within a depth of top dead center, both sides added.
 *
 * @param l the linkage
 * @param depth the depth, m; zero or less gives 0, the whole travel or more gives a full turn
 */
export function dwell(l: Linkage, depth: number): number {
  if (depth <= 0) return 0;
  if (depth >= l.travel) return 2 * Math.PI;
  const reached = (angle: number): number => pistonDrop(l, angle) - depth;
  const after = root(reached, 0, l.bottomAngle) as number; // above the depth at top, below it at bottom
  const before = root(reached, l.bottomAngle - 2 * Math.PI, 0) as number;
  return after - before;
}
