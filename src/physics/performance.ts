/** Power, W, from torque, N m, and crankshaft speed, rad/s. */
export function powerFromTorque(torque: number, speed: number): number {
  return torque * speed;
}

/**
 * Mean effective pressure of a four-stroke engine, Pa: the constant pressure that would do the same work.
 *
 * @param torque N m
 * @param displacement of the whole engine, m3
 * Source: J. B. Heywood, 1988, eq. 2.20, two turns a cycle (from memory).
 */
export function meanEffectivePressure(torque: number, displacement: number): number {
  return (4 * Math.PI * torque) / displacement; // eq. 2.20
}

/**
 * Air a four-stroke engine draws, m3/s at the density the volumetric efficiency refers to.
 *
 * @param displacement of the whole engine, m3
 * @param speed crankshaft speed, rad/s
 * @param ve volumetric efficiency, as a fraction
 * Source: J. B. Heywood, 1988, eq. 2.27, two turns a cycle (from memory).
 */
export function airflowDemand(displacement: number, speed: number, ve: number): number {
  return (displacement * ve * speed) / (4 * Math.PI); // eq. 2.27
}

/** Specific power, W/m3, from power, W, and the displacement of the whole engine, m3. */
export function powerPerVolume(power: number, displacement: number): number {
  return power / displacement;
}

/** Specific fuel consumption, kg/J, from fuel flow, kg/s, and the power it is charged to, W. */
export function specificFuelConsumption(fuelFlow: number, power: number): number {
  return fuelFlow / power;
}
