/** A round pipe: m and m2. */
export interface Duct {
  readonly length: number;
  readonly area: number;
}

/**
 * How many swings the gas of a runner makes in one turn at the speed it is tuned to: published values lie between these.
 * Source: H. W. Engelman, ASME 73-WA/DGP-14, 1973; J. B. Heywood, 1988, sec. 7.6.2 (K from memory).
 */
export const swingsPerTurn = { least: 2, most: 2.5 } as const;

/**
 * The volume a runner swings against, m3: clearance and half the swept volume, as with the piston halfway down.
 *
 * @param swept of one cylinder, m3
 * @param ratio static compression ratio
 * Source: H. W. Engelman, 1973.
 */
export function tuningVolume(swept: number, ratio: number): number {
  return ((swept / 2) * (ratio + 1)) / (ratio - 1);
}

/**
 * Frequency at which the gas of a short pipe swings as one plug against a volume, Hz (H. Helmholtz).
 *
 * @param duct short against the wave's length
 * @param volume m3
 * @param soundSpeed m/s
 */
export function helmholtzFrequency({ length, area }: Duct, volume: number, soundSpeed: number): number {
  return (soundSpeed / (2 * Math.PI)) * Math.sqrt(area / (length * volume));
}

/** Engine speed, rad/s, at which a frequency (Hz) makes so many swings in a turn. */
export function speedOfSwings(frequency: number, swings: number): number {
  return (2 * Math.PI * frequency) / swings;
}

/** Frequency of a pipe closed at one end, Hz: a quarter wave stands in it. Its higher tones are the odd multiples. */
export function quarterWaveFrequency(length: number, soundSpeed: number): number {
  return soundSpeed / (4 * length);
}

/**
 * Engine speed, rad/s, at which a runner makes so many whole swings of its quarter wave while the intake valve is shut,
 * so that it opens to a crest.
 *
 * @param frequency of the quarter wave, Hz
 * @param duration how long the intake valve is open, rad of crankshaft
 * @param swings a whole number
 * Source: common practice; from memory.
 */
export function speedOfShutSwings(frequency: number, duration: number, swings: number): number {
  return (frequency * (4 * Math.PI - duration)) / swings;
}

/** Crank angle, rad, that passes while a pulse runs to the end of a pipe (m) and back, at a speed in rad/s. */
export function returnAngle(length: number, soundSpeed: number, speed: number): number {
  return ((2 * length) / soundSpeed) * speed;
}

/**
 * Engine speed, rad/s, a primary is cut for: the pulse returns, as suction, when half of the turn from the exhaust
 * valve's opening to top dead center has passed.
 *
 * @param length from the valve's seat to the collector, m
 * @param soundSpeed of the gas in it, m/s; by custom 1700 ft/s
 * @param exhaustOpening rad before bottom dead center
 * Source: A. G. Bell, Performance Tuning in Theory and Practice: Four Strokes, 1981 (from memory: in inches, degrees and
 * rpm 850 (180 + opening) / speed, of which 3 in are the port).
 */
export function primarySpeed(length: number, soundSpeed: number, exhaustOpening: number): number {
  return (Math.PI + exhaustOpening) / 2 / returnAngle(length, soundSpeed, 1);
}
