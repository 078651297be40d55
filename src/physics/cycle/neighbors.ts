/** Degrees in a cycle: what the neighbors do is recorded once a degree. */
export const cycleDegrees = 720;

/** Cylinders that do what the computed one did `delay` whole degrees ago; `weight` of them. */
export interface Phase {
  readonly delay: number;
  readonly weight: number;
}

/** The other cylinders when all fire at one distance. */
export function evenPhases(cylinders: number): readonly Phase[] {
  return Array.from({ length: cylinders - 1 }, (_, i) => ({
    delay: Math.round((cycleDegrees * (i + 1)) / cylinders),
    weight: 1,
  }));
}

/**
 * The other three of one bank of a cross-plane V8, which fires 90, 180, 270 and 180 degrees apart: the mean of what each
 * of the four sees. None is 360 degrees away, as no two cylinders of a bank share a crankpin's position. An even bank in
 * its place shows a hole of a sixth of the torque near 2300 rpm that engines do not have.
 */
export const crossPlanePhases: readonly Phase[] = [
  { delay: 90, weight: 1 / 4 },
  { delay: 180, weight: 1 / 2 },
  { delay: 270, weight: 3 / 4 },
  { delay: 450, weight: 3 / 4 },
  { delay: 540, weight: 1 / 2 },
  { delay: 630, weight: 1 / 4 },
];

/**
 * The other three of one bank of a V8, between how a cross plane has them and how an evenly firing bank would.
 *
 * @param even 0: cross plane, 1: even
 */
export function bankPhases(even: number): readonly Phase[] {
  const weights = new Map<number, number>();
  for (const [phases, share] of [
    [crossPlanePhases, 1 - even],
    [evenPhases(4), even],
  ] as const)
    for (const { delay, weight } of phases) weights.set(delay, (weights.get(delay) ?? 0) + share * weight);
  return [...weights].filter(([, weight]) => weight > 0).map(([delay, weight]) => ({ delay, weight }));
}

const blend = 0.8; // of a new record: with no old one left, swings of two cycles could live on
// A record is read over three degrees: a wave as short as that can chatter on between the copies of a short pipe.
const smoothing = [1 / 4, 1 / 2, 1 / 4];
const kinds = 5;

/**
 * The other cylinders on a volume, as copies of the computed cylinder's own flow through its mouth on that volume.
 *
 * Each record says what happened in each degree of the cycle, the newest value where this cycle has one already. Mass that
 * left the volume is kept as mass alone: a copy takes the volume's present gas. What came in brings its own energy and
 * burnt gas. With the volume's pressure on record, a copy can answer a change of it at once.
 */
export class Neighbors {
  /** How many there are. */
  readonly count: number;
  /** What they do in the present degree, all together, a degree: kg out, then kg, J and kg of burnt gas in. */
  drawn = 0.5;
  mass = 0.5;
  energy = 0.5;
  burnt = 0.5;
  /** The sum of the pressures they saw, Pa. */
  pressure = 0.5;
  /** What the computed cylinder has done in this degree so far; pressure as its mean, weighted by the share of the degree. */
  ownDrawn = 0.5;
  ownMass = 0.5;
  ownEnergy = 0.5;
  ownBurnt = 0.5;
  ownPressure = 0.5;

  private readonly delays: Int32Array;
  private readonly weights: Float64Array;
  private readonly record = new Float64Array(kinds * cycleDegrees);
  private degree = 0;

  constructor(phases: readonly Phase[]) {
    const spread = phases.flatMap(({ delay, weight }) =>
      smoothing.map((share, i) => ({ delay: delay + i - 1, weight: weight * share })),
    );
    this.delays = Int32Array.from(spread, (phase) => phase.delay);
    this.weights = Float64Array.from(spread, (phase) => phase.weight);
    this.count = phases.reduce((sum, phase) => sum + phase.weight, 0);
  }

  /** A cycle of steady flow, all a degree: kg drawn, kg, J and kg burnt returned, and Pa. */
  fill(drawn: number, mass: number, energy: number, burnt: number, pressure: number): void {
    [drawn, mass, energy, burnt, pressure].forEach((value, kind) =>
      this.record.fill(value, kind * cycleDegrees, (kind + 1) * cycleDegrees),
    );
  }

  /** Begins a degree of the cycle, 0 to 719. */
  enter(degree: number): void {
    const { delays, weights, record } = this;
    let drawn = 0;
    let mass = 0;
    let energy = 0;
    let burnt = 0;
    let pressure = 0;
    for (let i = 0; i < delays.length; i++) {
      const weight = weights[i]!;
      let at = degree - delays[i]!;
      if (at < 0) at += cycleDegrees;
      drawn += weight * record[at]!;
      mass += weight * record[at + cycleDegrees]!;
      energy += weight * record[at + 2 * cycleDegrees]!;
      burnt += weight * record[at + 3 * cycleDegrees]!;
      pressure += weight * record[at + 4 * cycleDegrees]!;
    }
    this.drawn = drawn;
    this.mass = mass;
    this.energy = energy;
    this.burnt = burnt;
    this.pressure = pressure;
    this.ownDrawn = 0;
    this.ownMass = 0;
    this.ownEnergy = 0;
    this.ownBurnt = 0;
    this.ownPressure = 0;
    this.degree = degree;
  }

  /** Ends the degree and keeps what was done in it. */
  leave(): void {
    const { record, degree } = this;
    const rest = 1 - blend;
    record[degree] = blend * this.ownDrawn + rest * record[degree]!;
    const mass = degree + cycleDegrees;
    record[mass] = blend * this.ownMass + rest * record[mass]!;
    const energy = degree + 2 * cycleDegrees;
    record[energy] = blend * this.ownEnergy + rest * record[energy]!;
    const burnt = degree + 3 * cycleDegrees;
    record[burnt] = blend * this.ownBurnt + rest * record[burnt]!;
    const pressure = degree + 4 * cycleDegrees;
    record[pressure] = blend * this.ownPressure + rest * record[pressure]!;
  }

  /** How many numbers `write` writes. */
  get size(): number {
    return this.record.length;
  }

  /** Writes the records at a place and returns the next one. */
  write(into: Float64Array, at: number): number {
    into.set(this.record, at);
    return at + this.record.length;
  }

  /** Reads what `write` wrote. */
  read(from: Float64Array, at: number): number {
    this.record.set(from.subarray(at, at + this.record.length));
    return at + this.record.length;
  }
}
