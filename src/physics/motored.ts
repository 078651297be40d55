import { rungeKutta } from '../numerics/runge-kutta.ts';
import { airGamma, airGasConstant, airInternalEnergy, airSpecificHeat } from './air-heat.ts';
import { type Linkage, pistonDrop, pistonVelocity } from './linkage.ts';
import { cylinderVolume, meanPistonSpeed } from './volumes.ts';

/** One cylinder turned over by the starter. */
export interface MotoredCylinder {
  /** m */
  readonly bore: number;
  readonly linkage: Linkage;
  /** Volume above the piston at top dead center, m3. */
  readonly clearance: number;
  /** Intake closing on the degree wheel, rad after its bottom dead center mark. */
  readonly closing: number;
  /** Air outside, and in the crankcase, Pa absolute. */
  readonly stationPressure: number;
  /** Air outside, K. */
  readonly airTemperature: number;
  /** Crown, head and liner, K. */
  readonly wallTemperature: number;
  /** Crankshaft speed, rad/s. */
  readonly speed: number;
  /** Effective area of the way past the rings, m2. */
  readonly leakArea: number;
}

/** Pressure against crank angle: rad from firing top dead center, Pa absolute. */
export interface PressureTrace {
  readonly angle: Float64Array;
  readonly pressure: Float64Array;
}

const degree = Math.PI / 180;
const crankStep = degree / 2;
const end = 40 * degree;

/**
 * Compression of plain air without a spark, from intake closing to 40 degrees after firing top dead center, by crank
 * step. It starts at station pressure and midway between the temperatures of wall and air, loses heat to crown, head and
 * uncovered liner, and air past the rings to a crankcase at station pressure; air that comes back has the walls'
 * temperature. Left out: what the cylinder inhaled before the closing, fuel and moisture, and the top land's crevice as a
 * place of its own.
 *
 * @param m the cylinder
 * @yields the share done, about every 5 degrees
 * @returns the trace, at every half degree or slightly closer
 * @throws RangeError when a figure makes no sense
 * Source: J. B. Heywood, 1988: heat eqs. 12.18-12.19 (G. Woschni, SAE 670931) with the constants of the motored
 * compression, leak eqs. C.8-C.9 (all from memory).
 */
export function* motoredCompression(m: MotoredCylinder): Generator<number, PressureTrace, void> {
  refuse(m);
  const start = m.closing - Math.PI;
  const steps = Math.ceil((end - start) / crankStep);
  const step = (end - start) / steps;
  const volume = (angle: number): number => m.clearance + cylinderVolume(m.bore, pistonDrop(m.linkage, angle));

  const temperature = (m.wallTemperature + m.airTemperature) / 2;
  const state = Float64Array.of((m.stationPressure * volume(start)) / (airGasConstant * temperature), temperature);
  const advance = rungeKutta(2, rates(m, volume));

  const angle = new Float64Array(steps + 1);
  const pressure = new Float64Array(steps + 1);
  const parts = Math.max(1, Math.ceil(20 * vented(m))); // a wide leak follows the piston closely and needs closer steps
  const perYield = Math.round((5 * degree) / step);
  for (let i = 0; ; i++) {
    angle[i] = start + i * step;
    pressure[i] = (state[0]! * airGasConstant * state[1]!) / volume(angle[i]!);
    if (i === steps) return { angle, pressure };
    if (i > 0 && i % perYield === 0) yield i / steps;
    for (let part = 0; part < parts; part++) advance(angle[i]! + (part * step) / parts, step / parts, state);
  }
}

/** Rates of mass and temperature by crank angle, from conservation of mass and energy. */
function rates(m: MotoredCylinder, volume: (angle: number) => number) {
  const endArea = cylinderVolume(m.bore, 1);
  const gasSpeed = 2.28 * meanPistonSpeed(m.linkage.travel, m.speed); // eq. 12.19, no combustion term
  const film = 3.26 * m.bore ** -0.2 * gasSpeed ** 0.8;
  const crankcaseGamma = airGamma(m.wallTemperature);
  const crankcaseEnthalpy = airInternalEnergy(m.wallTemperature) + airGasConstant * m.wallTemperature;

  return (angle: number, state: Float64Array, rate: Float64Array): void => {
    const mass = state[0]!;
    const temperature = state[1]!;
    const pressure = (mass * airGasConstant * temperature) / volume(angle);
    const liner = Math.PI * m.bore * pistonDrop(m.linkage, angle);
    const transfer = film * (pressure / 1000) ** 0.8 * temperature ** -0.55; // eq. 12.18, p in kPa
    const heat = transfer * (2 * endArea + liner) * (temperature - m.wallTemperature);
    const work = pressure * endArea * pistonVelocity(m.linkage, angle, m.speed);

    let flow: number; // into the cylinder
    let brought: number; // enthalpy of what crosses less internal energy of what is there, J/kg
    if (pressure >= m.stationPressure) {
      flow = -orificeFlow(m.leakArea, pressure, temperature, airGamma(temperature), m.stationPressure);
      brought = airGasConstant * temperature;
    } else {
      flow = orificeFlow(m.leakArea, m.stationPressure, m.wallTemperature, crankcaseGamma, pressure);
      brought = crankcaseEnthalpy - airInternalEnergy(temperature);
    }
    rate[0] = flow / m.speed;
    rate[1] = (flow * brought - heat - work) / (mass * airSpecificHeat(temperature) * m.speed);
  };
}

/** Mass flow through an opening, kg/s. At the critical pressure ratio eq. C.8 becomes eq. C.9, the choked flow. */
function orificeFlow(area: number, pressure: number, temperature: number, gamma: number, behind: number): number {
  const critical = (2 / (gamma + 1)) ** (gamma / (gamma - 1)); // eq. C.6
  const ratio = Math.max(behind / pressure, critical);
  const drop = Math.max(0, 1 - ratio ** ((gamma - 1) / gamma));
  const flux = pressure / Math.sqrt(airGasConstant * temperature);
  return area * flux * ratio ** (1 / gamma) * Math.sqrt((2 * gamma * drop) / (gamma - 1)); // eq. C.8
}

/** Share of the clearance volume that sound speed could carry past the rings in one crank step. */
function vented(m: MotoredCylinder): number {
  const sound = Math.sqrt(airGamma(m.wallTemperature) * airGasConstant * m.wallTemperature);
  return (m.leakArea * sound * crankStep) / m.speed / m.clearance;
}

function refuse(m: MotoredCylinder): void {
  const must = (holds: boolean, sentence: string): void => {
    if (!holds) throw new RangeError(sentence);
  };
  must(m.bore > 0, 'The bore must be greater than zero.');
  must(m.clearance > 0, 'No volume is left above the piston at top dead center.');
  must(Math.abs(m.closing) < Math.PI, 'The intake must close within 180 degrees of bottom dead center.');
  must(m.stationPressure > 0, 'The pressure of the air outside must be greater than zero.');
  must(m.speed > 0, 'The starter must turn the crankshaft.');
  for (const temperature of [m.airTemperature, m.wallTemperature])
    must(
      temperature >= 200 && temperature <= 1000,
      'The temperatures of air and walls must lie between 200 and 1000 K.',
    );
  must(m.leakArea >= 0, 'The area past the rings cannot be negative.');
  must(vented(m) < 0.5, 'The rings leak so much at this speed that no pressure would build.');
}
