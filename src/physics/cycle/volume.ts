import type { Neighbors } from './neighbors.ts';
import type { PipeEnd } from './pipe/pipe-end.ts';

/** What a volume is made of. */
export interface VolumeSpec {
  /** m3 */
  readonly volume: number;
  readonly gamma: number;
  /** J/(kg K) */
  readonly R: number;
  /** Area of one cylinder's pipe where it joins, m2. */
  readonly mouth: number;
}

/**
 * A plenum or the junction of the primaries: one pressure, one temperature, one composition. Its gas is the gas of the
 * pipe that joins it. Exchange by exchange it conserves mass and energy to rounding.
 */
export class Volume {
  /** kg */
  mass = 0.5;
  /** Internal energy, J. */
  energy = 0.5;
  /** Burnt gas, kg. */
  burntMass = 0.5;
  /** Pa, K and share, as of the last `refresh`. */
  pressure = 0.5;
  temperature = 0.5;
  burnt = 0.5;
  /** m/s */
  sound = 0.5;
  /** How often a value had to be held at a floor, which should be never. */
  floors = 0;
  readonly cp: number;
  readonly neighbors: Neighbors;
  private readonly spec: VolumeSpec;

  constructor(spec: VolumeSpec, neighbors: Neighbors) {
    this.spec = spec;
    this.neighbors = neighbors;
    this.cp = (spec.gamma * spec.R) / (spec.gamma - 1);
  }

  /** Gas at rest: Pa, K, share. */
  fill(pressure: number, temperature: number, burnt: number): void {
    const { volume, gamma, R } = this.spec;
    this.mass = (pressure * volume) / (R * temperature);
    this.energy = (pressure * volume) / (gamma - 1);
    this.burntMass = this.mass * burnt;
    this.floors = 0;
    this.refresh();
  }

  /** Pressure, temperature and composition of what is there now. */
  refresh(): void {
    const { volume, gamma, R } = this.spec;
    // A few parts in a thousand of ordinary air: nothing physical comes near.
    if (!(this.mass > 1e-3 * volume)) this.hold(1e-3 * volume, this.energy);
    if (!(this.energy > 2e3 * volume)) this.hold(this.mass, 2e3 * volume);
    // A share may leave 0 to 1 by rounding where the gas is all fresh or all burnt.
    if (!(this.burntMass > 0)) this.burntMass = 0;
    else if (this.burntMass > this.mass) this.burntMass = this.mass;
    this.pressure = (this.energy * (gamma - 1)) / volume;
    this.temperature = (this.pressure * volume) / (this.mass * R);
    this.burnt = this.burntMass / this.mass;
    this.sound = Math.sqrt(gamma * R * this.temperature);
  }

  /**
   * A time step with the computed cylinder's pipe and the neighbors' copies of it.
   *
   * A copy draws or brings what is on record, corrected at once for a changed pressure by the pipe's acoustic admittance,
   * area over sound speed: without that the record's delay of part of a cycle feeds a swing. The correction vanishes when
   * the cycle repeats itself.
   *
   * @param own the end of the computed cylinder's pipe on this volume, solved
   * @param step s
   * @param degrees the step in crank degrees
   */
  exchange(own: PipeEnd, step: number, degrees: number): void {
    const { neighbors: others, pressure } = this;
    const mass = own.flow * step;
    const energy = own.enthalpyFlow * step;
    const burnt = own.burntFlow * step;
    if (mass > 0) others.ownDrawn += mass;
    else {
      others.ownMass -= mass;
      others.ownEnergy -= energy;
      others.ownBurnt -= burnt;
    }
    others.ownPressure += pressure * degrees;

    const answer = ((others.count * pressure - others.pressure) * this.spec.mouth) / this.sound;
    const drawn = others.drawn * degrees + answer * step;
    this.mass += others.mass * degrees - mass - drawn;
    this.energy += others.energy * degrees - energy - drawn * this.cp * this.temperature;
    this.burntMass += others.burnt * degrees - burnt - drawn * this.burnt;
  }

  private hold(mass: number, energy: number): void {
    this.mass = mass;
    this.energy = energy;
    this.floors++;
  }

  /** How many numbers `write` writes. */
  get size(): number {
    return 3;
  }

  /** Writes mass, energy and burnt mass at a place and returns the next one. */
  write(into: Float64Array, at: number): number {
    into[at] = this.mass;
    into[at + 1] = this.energy;
    into[at + 2] = this.burntMass;
    return at + 3;
  }

  /** Reads what `write` wrote. */
  read(from: Float64Array, at: number): number {
    this.mass = from[at]!;
    this.energy = from[at + 1]!;
    this.burntMass = from[at + 2]!;
    this.refresh();
    return at + 3;
  }
}
