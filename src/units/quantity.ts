import type { Dimension } from './dimension.ts';
import * as u from './unit.ts';
import type { Unit } from './unit.ts';

export type System = 'us' | 'si';

/** How one quantity is shown in one system. */
export interface Shown {
  readonly unit: Unit;
  /** Decimals it deserves. */
  readonly digits: number;
  /** What one arrow key or slider step is worth, in the unit. */
  readonly step: number;
}

/** A sort of figure: two lengths of very different size are two quantities, since they deserve other digits. */
export interface Quantity {
  readonly id: string;
  readonly us: Shown;
  readonly si: Shown;
  /** Whole figures are shown without their ".0". */
  readonly trim: boolean;
  readonly datum: 'gauge' | 'absolute' | null;
}

export const dimensionOf = (quantity: Quantity): Dimension => quantity.us.unit.dimension;

const shown = (unit: Unit, digits: number, step = 10 ** -digits): Shown => ({ unit, digits, step });
const known = new Map<string, Quantity>();
const quantity = (
  id: string,
  us: Shown,
  si: Shown = us,
  more: Partial<Pick<Quantity, 'trim' | 'datum'>> = {},
): Quantity => {
  const made = { id, us, si, trim: more.trim ?? false, datum: more.datum ?? null };
  known.set(id, made);
  return made;
};

export const count = quantity('count', shown(u.one, 0));
export const length = quantity('length', shown(u.inch, 3, 0.005), shown(u.millimeter, 2, 0.1));
export const gap = quantity('gap', shown(u.inch, 3), shown(u.millimeter, 2, 0.02));
export const altitude = quantity('altitude', shown(u.foot, 0, 50), shown(u.meter, 0, 20));
export const chamberVolume = quantity('chamberVolume', shown(u.cubicCentimeter, 1, 0.5));
export const displacementVolume = quantity('displacementVolume', shown(u.cubicInch, 1), shown(u.cubicCentimeter, 0));
export const faceArea = quantity('faceArea', shown(u.squareInch, 2, 0.1), shown(u.squareCentimeter, 1, 0.5));
export const leakArea = quantity('leakArea', shown(u.squareMillimeter, 2, 0.05));
export const angle = quantity('angle', shown(u.degree, 1, 0.5), shown(u.degree, 1, 0.5), { trim: true });
export const ratio = quantity('ratio', shown(u.one, 2));
export const fineRatio = quantity('fineRatio', shown(u.one, 3));
export const factor = quantity('factor', shown(u.one, 4));
export const share = quantity('share', shown(u.percent, 1));
export const wholeShare = quantity('wholeShare', shown(u.percent, 0));
export const rotation = quantity('rotation', shown(u.revolutionsPerMinute, 0, 50));
export const pistonSpeed = quantity('pistonSpeed', shown(u.footPerMinute, 0), shown(u.meterPerSecond, 2));
export const acceleration = quantity('acceleration', shown(u.gravity, 0), shown(u.meterPerSecondSquared, 0));
export const gaugePressure = quantity('gaugePressure', shown(u.psi, 0), shown(u.kilopascal, 0), { datum: 'gauge' });
export const airPressure = quantity('airPressure', shown(u.inchOfMercury, 2), shown(u.hectopascal, 1, 0.5), {
  datum: 'absolute',
});
export const vaporPressure = quantity('vaporPressure', shown(u.inchOfMercury, 3), shown(u.hectopascal, 1), {
  datum: 'absolute',
});
export const temperature = quantity('temperature', shown(u.fahrenheit, 0), shown(u.celsius, 1, 0.5));
/** Pressures that are differences already: a bench's depression, what a carburetor or an exhaust holds back. */
export const depression = quantity('depression', shown(u.inchOfWater, 1, 1), shown(u.hectopascal, 1, 1), {
  trim: true,
  datum: 'gauge',
});
export const pressureDrop = quantity('pressureDrop', shown(u.inchOfMercury, 2, 0.05), shown(u.hectopascal, 1, 1), {
  datum: 'gauge',
});
export const backPressure = quantity('backPressure', shown(u.psi, 1, 0.1), shown(u.kilopascal, 1, 0.5), {
  datum: 'gauge',
});
export const airFlow = quantity('airFlow', shown(u.cubicFeetPerMinute, 1, 1), shown(u.litersPerSecond, 1, 0.5), {
  trim: true,
});
export const flowArea = quantity('flowArea', shown(u.squareInch, 3, 0.01), shown(u.squareMillimeter, 0, 5));
export const gasSpeed = quantity('gasSpeed', shown(u.footPerSecond, 0, 10), shown(u.meterPerSecond, 1, 2));
export const pipeLength = quantity('pipeLength', shown(u.inch, 2, 0.25), shown(u.millimeter, 0, 5), { trim: true });
export const density = quantity('density', shown(u.kilogramPerCubicMeter, 3));
export const liquidDensity = quantity('liquidDensity', shown(u.kilogramPerCubicMeter, 0));
export const torque = quantity('torque', shown(u.poundFoot, 1, 1), shown(u.newtonMeter, 1, 1));
export const octane = quantity('octane', shown(u.one, 1, 0.5), shown(u.one, 1, 0.5), { trim: true });
export const heatingValue = quantity('heatingValue', shown(u.megajoulePerKilogram, 1));
export const latentHeat = quantity('latentHeat', shown(u.kilojoulePerKilogram, 0));
export const ratioPerAltitude = quantity(
  'ratioPerAltitude',
  shown(u.perThreeThousandFeet, 2),
  shown(u.perKilometer, 2),
);

export const force = quantity('force', shown(u.poundForce, 0, 5), shown(u.newton, 0, 20));
export const stiffness = quantity('stiffness', shown(u.poundPerInch, 0, 10), shown(u.newtonPerMillimeter, 1, 2));
export const mass = quantity('mass', shown(u.gram, 0, 5));
export const liftArea = quantity('liftArea', shown(u.inchDegree, 1), shown(u.millimeterDegree, 0));
export const perRadian = quantity('perRadian', shown(u.inchPerDegree, 4), shown(u.millimeterPerDegree, 3));
export const perRadianSquared = quantity(
  'perRadianSquared',
  shown(u.inchPerDegreeSquared, 6),
  shown(u.millimeterPerDegreeSquared, 4),
);

/** An engine’s, estimated: not worth a decimal. */
export const engineTorque = quantity('engineTorque', shown(u.poundFoot, 0, 1), shown(u.newtonMeter, 0, 1));
export const enginePower = quantity('enginePower', shown(u.horsepower, 0, 1), shown(u.kilowatt, 0, 1));
export const power = quantity('power', shown(u.horsepower, 1, 1), shown(u.kilowatt, 1, 1));
export const powerDensity = quantity('powerDensity', shown(u.horsepowerPerCubicInch, 3), shown(u.kilowattPerLiter, 1));
/** A pressure that stands for work over volume: a difference. */
export const meanPressure = quantity('meanPressure', shown(u.psi, 1), shown(u.kilopascal, 0), { datum: 'gauge' });
export const fuelFlow = quantity('fuelFlow', shown(u.poundPerHour, 1), shown(u.kilogramPerHour, 1));
export const specificFuel = quantity(
  'specificFuel',
  shown(u.poundPerHorsepowerHour, 3),
  shown(u.gramPerKilowattHour, 0),
);

/** A quantity by its id: text that crosses to a worker or a file names quantities, it does not carry them. */
export function quantityNamed(id: string): Quantity {
  const found = known.get(id);
  if (!found) throw new Error(`no quantity is called "${id}"`);
  return found;
}
