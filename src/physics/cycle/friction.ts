import { meanPistonSpeed } from '../volumes.ts';

/** What rubs. Lengths in m. */
interface RubbingEngine {
  readonly bore: number;
  readonly stroke: number;
  readonly cylinders: number;
  /** Two cylinders on a crankpin: half as many main bearings. */
  readonly isVee: boolean;
  readonly valvesPerCylinder: number;
  readonly staticRatio: number;
}

/** Crankshaft bearings, mains and rods taken as one size. Lengths in m. */
export interface Bearings {
  readonly diameter: number;
  readonly length: number;
  /** Of the mains. */
  readonly count: number;
}

/** Bearings of ordinary size for a bore (common practice, no source). */
export function ordinaryBearings(engine: RubbingEngine): Bearings {
  const throws = engine.isVee ? engine.cylinders / 2 : engine.cylinders;
  return { diameter: 0.65 * engine.bore, length: 0.25 * engine.bore, count: throws + 1 };
}

/**
 * Friction mean effective pressure of a warm engine, Pa, at full throttle: crankshaft, pistons and rings with their gas
 * load, rods, a valve train with flat followers, and oil pump, water pump and an alternator that does not charge.
 * Pumping is left out: the cycle has it as work on the gas. Left out too: what a roller train saves, oil temperature.
 *
 * @param engine bore, stroke and so on
 * @param speed of the crankshaft, rad/s
 * @throws RangeError when the crankshaft does not turn
 * Source: K. J. Patton, R. G. Nitschke and J. B. Heywood, SAE 890836, 1989 (coefficients from memory).
 */
export function rubbingFriction(engine: RubbingEngine, speed: number): number {
  if (!(speed > 0)) throw new RangeError('The crankshaft must turn.');
  const bearings = ordinaryBearings(engine);
  return (
    crankshaftFriction(engine, bearings, speed) +
    reciprocatingFriction(engine, bearings, speed) +
    gasLoadFriction(engine.staticRatio, meanPistonSpeed(engine.stroke, speed)) +
    valveTrainFriction(engine, bearings, speed) +
    auxiliaryFriction(speed)
  );
}

const kPa = 1000;
const rpm = (speed: number): number => (speed * 30) / Math.PI;
const mm = (length: number): number => length * 1000;
const boreStroke = (e: RubbingEngine): number => mm(e.bore) ** 2 * mm(e.stroke) * e.cylinders;

/** Mains: seals, oil film and turbulence in it, Pa (SAE 890836, from memory; its units are mm, rpm and kPa). */
export function crankshaftFriction(e: RubbingEngine, b: Bearings, speed: number): number {
  const seals = (1.22e5 * mm(b.diameter)) / boreStroke(e);
  const turbulence = (1.35e-10 * mm(b.diameter) ** 2 * rpm(speed) ** 2 * b.count) / e.cylinders;
  return kPa * (seals + turbulence) + filmFriction(e, b, speed);
}

/** Piston skirts, rings without gas load, rod bearings, Pa (SAE 890836, from memory). */
export function reciprocatingFriction(e: RubbingEngine, b: Bearings, speed: number): number {
  const skirts = (294 * meanPistonSpeed(e.stroke, speed)) / mm(e.bore);
  const rings = (4.06e4 * (1 + 1000 / rpm(speed))) / mm(e.bore) ** 2;
  return kPa * (skirts + rings) + filmFriction(e, b, speed);
}

/** Oil film of one row of bearings, Pa (SAE 890836, from memory). */
function filmFriction(e: RubbingEngine, b: Bearings, speed: number): number {
  return (kPa * 3.03e-4 * rpm(speed) * mm(b.diameter) ** 3 * mm(b.length) * b.count) / boreStroke(e);
}

/**
 * What gas behind the rings adds at full throttle, Pa.
 *
 * @param staticRatio compression ratio
 * @param pistonSpeed mean, m/s
 * Source: SAE 890836 (from memory), at an intake pressure equal to the air's.
 */
export function gasLoadFriction(staticRatio: number, pistonSpeed: number): number {
  return kPa * 6.89 * (0.088 * staticRatio + 0.182 * staticRatio ** (1.33 - 0.0238 * pistonSpeed));
}

/** Camshaft bearings, seals and flat followers, Pa (SAE 890836, from memory). Its small terms with valve lift are left out. */
export function valveTrainFriction(e: RubbingEngine, b: Bearings, speed: number): number {
  const bearings = (244 * rpm(speed) * b.count) / boreStroke(e);
  const followers = (400 * (1 + 1000 / rpm(speed)) * e.valvesPerCylinder) / mm(e.stroke);
  return kPa * (bearings + 4.12 + followers);
}

/** Oil pump, water pump and an alternator that does not charge, Pa (SAE 890836, from memory). */
export function auxiliaryFriction(speed: number): number {
  return kPa * (6.23 + 5.22e-3 * rpm(speed) - 1.79e-7 * rpm(speed) ** 2);
}

/** An engine as it stands on a test bed or in a car. */
interface FrictionEngine extends RubbingEngine {
  /** On rubbing friction. */
  readonly frictionFactor: number;
  readonly trim: 'bare' | 'street';
  /** Of one cylinder, m3. */
  readonly swept: number;
}

/** Friction mean effective pressure, Pa, at full throttle: what rubs, and of a street engine its accessories. */
export function frictionPressure(engine: FrictionEngine, speed: number): number {
  const rubbing = engine.frictionFactor * rubbingFriction(engine, speed);
  return engine.trim === 'street' ? rubbing + accessoryPressure(engine.swept * engine.cylinders, speed) : rubbing;
}

/** The same as a torque, N m. */
export function frictionTorque(engine: FrictionEngine, speed: number): number {
  return (frictionPressure(engine, speed) * engine.swept * engine.cylinders) / (4 * Math.PI);
}

/**
 * Mean effective pressure, Pa, that a street car's accessories take beyond those of `rubbingFriction`: a charging
 * alternator with 1 kW at its shaft, and fan and idling steering pump with 0.5 kW per liter at 5000 rpm, as the square
 * of the speed (common practice, no source).
 *
 * @param displacement of the whole engine, m3
 * @param speed of the crankshaft, rad/s
 * @throws RangeError when the crankshaft does not turn
 */
export function accessoryPressure(displacement: number, speed: number): number {
  if (!(speed > 0)) throw new RangeError('The crankshaft must turn.');
  const power = 1000 + 0.5e6 * displacement * (rpm(speed) / 5000) ** 2;
  return (4 * Math.PI * power) / (displacement * speed);
}
