import { type Dimension, none, timesPower } from './dimension.ts';

/** A unit someone may type: SI = shown × factor + offset. */
export interface Unit {
  readonly symbol: string;
  readonly dimension: Dimension;
  readonly factor: number;
  /** Only temperature scales whose zero is not absolute zero have one. */
  readonly offset: number;
  /** Gauge and absolute pressure are not to be mixed: a unit may say which it is. */
  readonly datum: 'gauge' | 'absolute' | null;
  /** Ways to write it besides its symbol. Upper and lower case count only where they must (mm, Mm). */
  readonly spellings: readonly string[];
}

const length: Dimension = [1, 0, 0, 0, 0];
const mass: Dimension = [0, 1, 0, 0, 0];
const time: Dimension = [0, 0, 1, 0, 0];
const temperature: Dimension = [0, 0, 0, 1, 0];
const angle: Dimension = [0, 0, 0, 0, 1];
const area = timesPower(none, length, 2);
const volume = timesPower(none, length, 3);
const speed = timesPower(length, time, -1);
const acceleration = timesPower(length, time, -2);
const force = timesPower(acceleration, mass, 1);
const pressure = timesPower(force, area, -1);
const torque = timesPower(force, length, 1);
const power = timesPower(torque, time, -1);
const flow = timesPower(volume, time, -1);

interface Extra {
  readonly offset?: number;
  readonly datum?: 'gauge' | 'absolute';
}
const unit = (
  symbol: string,
  dimension: Dimension,
  factor: number,
  spellings: string[] = [],
  extra: Extra = {},
): Unit => ({
  symbol,
  dimension,
  factor,
  offset: extra.offset ?? 0,
  datum: extra.datum ?? null,
  spellings,
});

// Factors: NIST SP 811 (2008), App. B. Exact ones follow from 1 in = 25.4 mm, 1 lb = 0.45359237 kg and
// g = 9.80665 m/s2; mercury and water columns are the conventional ones.
const IN = 0.0254;
const FT = 0.3048;
const POUND = 0.45359237;
const POUND_FORCE = POUND * 9.80665;
const FOOT_POUND = POUND_FORCE * FT;

export const one = unit('', none, 1);
export const percent = unit('%', none, 0.01, ['percent']);
export const meter = unit('m', length, 1);
export const centimeter = unit('cm', length, 0.01);
export const millimeter = unit('mm', length, 1e-3);
export const inch = unit('in', length, IN, ['in.', 'inch', 'inches', '"', '″']);
export const foot = unit('ft', length, FT, ['feet', 'foot', "'", '′']);
export const squareMillimeter = unit('mm²', area, 1e-6, ['mm2', 'mm^2']);
export const squareCentimeter = unit('cm²', area, 1e-4, ['cm2', 'cm^2']);
export const squareInch = unit('in²', area, IN * IN, ['in2', 'in^2', 'sq in']);
export const cubicCentimeter = unit('cm³', volume, 1e-6, ['cm3', 'cm^3', 'cc', 'ml', 'mL']);
export const liter = unit('L', volume, 1e-3, ['l', 'liter', 'liters']);
export const cubicInch = unit('in³', volume, IN ** 3, ['in3', 'in^3', 'ci', 'cid', 'cu in']);
export const gallon = unit('gal', volume, 231 * IN ** 3);
export const degree = unit('°', angle, Math.PI / 180, ['deg', 'degree', 'degrees']);
export const radian = unit('rad', angle, 1);
export const revolutionsPerMinute = unit('rpm', timesPower(angle, time, -1), Math.PI / 30, [
  'r/min',
  '1/min',
  'rev/min',
]);
export const meterPerSecond = unit('m/s', speed, 1);
export const footPerMinute = unit('ft/min', speed, FT / 60, ['fpm']);
export const footPerSecond = unit('ft/s', speed, FT, ['fps', 'ft/sec']);
export const meterPerSecondSquared = unit('m/s²', acceleration, 1, ['m/s2', 'm/s^2']);
export const gravity = unit('g', acceleration, 9.80665);
export const newton = unit('N', force, 1);
export const poundForce = unit('lbf', force, POUND_FORCE, ['lb']);
export const newtonPerMillimeter = unit('N/mm', timesPower(force, length, -1), 1e3);
export const poundPerInch = unit('lbf/in', timesPower(force, length, -1), POUND_FORCE / IN, ['lb/in']);
export const gram = unit('gram', mass, 1e-3, ['grams']);
export const millimeterDegree = unit('mm °', timesPower(length, angle, 1), 1e-3 * (Math.PI / 180), ['mm deg']);
export const inchDegree = unit('in °', timesPower(length, angle, 1), IN * (Math.PI / 180), ['in deg']);
const degreeFactor = Math.PI / 180;
export const inchPerDegree = unit('in/°', timesPower(length, angle, -1), IN / degreeFactor);
export const millimeterPerDegree = unit('mm/°', timesPower(length, angle, -1), 1e-3 / degreeFactor);
export const inchPerDegreeSquared = unit('in/°²', timesPower(length, angle, -2), IN / degreeFactor ** 2);
export const millimeterPerDegreeSquared = unit('mm/°²', timesPower(length, angle, -2), 1e-3 / degreeFactor ** 2);
export const pascal = unit('Pa', pressure, 1);
export const kilopascal = unit('kPa', pressure, 1e3);
export const hectopascal = unit('hPa', pressure, 100, ['mbar']);
export const bar = unit('bar', pressure, 1e5);
export const psi = unit('psi', pressure, POUND_FORCE / IN ** 2, ['lbf/in2']);
export const psiGauge = unit('psig', pressure, psi.factor, [], { datum: 'gauge' });
export const psiAbsolute = unit('psia', pressure, psi.factor, [], { datum: 'absolute' });
export const inchOfMercury = unit('inHg', pressure, 25.4 * 133.322387415, ['"Hg', 'in Hg', 'inhg']);
export const millimeterOfMercury = unit('mmHg', pressure, 133.322387415, ['mm Hg']);
export const inchOfWater = unit('inH₂O', pressure, 25.4 * 9.80665, ['inH2O', '"H2O', 'in H2O']);
export const kelvin = unit('K', temperature, 1);
export const celsius = unit('°C', temperature, 1, ['C', 'c', 'degC'], { offset: 273.15 });
export const fahrenheit = unit('°F', temperature, 5 / 9, ['F', 'f', 'degF'], { offset: 459.67 * (5 / 9) });
export const kilogramPerCubicMeter = unit('kg/m³', timesPower(mass, volume, -1), 1, ['kg/m3', 'kg/m^3']);
export const poundPerCubicFoot = unit('lb/ft³', timesPower(mass, volume, -1), POUND / FT ** 3, ['lb/ft3', 'lb/ft^3']);
export const newtonMeter = unit('N m', torque, 1, ['Nm', 'N·m', 'N*m']);
export const poundFoot = unit('lbf ft', torque, FOOT_POUND, [
  'lb-ft',
  'lb ft',
  'ft-lb',
  'ft lb',
  'lbf·ft',
  'ft lbf',
  'ft-lbf',
]);
export const kilowatt = unit('kW', power, 1e3);
export const horsepower = unit('hp', power, 550 * FOOT_POUND);
export const metricHorsepower = unit('PS', power, 75 * 9.80665);
export const litersPerSecond = unit('L/s', flow, 1e-3, ['l/s']);
export const cubicFeetPerMinute = unit('cfm', flow, FT ** 3 / 60, ['ft3/min', 'ft³/min']);
export const horsepowerPerCubicInch = unit('hp/in³', timesPower(power, volume, -1), (550 * FOOT_POUND) / IN ** 3, [
  'hp/in3',
  'hp/ci',
]);
export const kilowattPerLiter = unit('kW/L', timesPower(power, volume, -1), 1e6);
export const poundPerHour = unit('lb/h', timesPower(mass, time, -1), POUND / 3600, ['lb/hr']);
export const kilogramPerHour = unit('kg/h', timesPower(mass, time, -1), 1 / 3600);
export const poundPerHorsepowerHour = unit('lb/hp h', timesPower(mass, torque, -1), POUND / (550 * FOOT_POUND * 3600), [
  'lb/hp-h',
]);
export const gramPerKilowattHour = unit('g/kWh', timesPower(mass, torque, -1), 1e-3 / 3.6e6);
export const megajoulePerKilogram = unit('MJ/kg', timesPower(torque, mass, -1), 1e6);
export const kilojoulePerKilogram = unit('kJ/kg', timesPower(torque, mass, -1), 1e3);
export const btuPerPound = unit('Btu/lb', timesPower(torque, mass, -1), 2326, ['BTU/lb']);
/** For a practice figure quoted "per 3,000 ft". */
export const perThreeThousandFeet = unit('per 3000 ft', timesPower(none, length, -1), 1 / (3000 * FT), ['/3000 ft']);
export const perKilometer = unit('per 1000 m', timesPower(none, length, -1), 1e-3, ['/1000 m']);

export const toUnit = (si: number, u: Unit): number => (si - u.offset) / u.factor;
export const fromUnit = (shown: number, u: Unit): number => shown * u.factor + u.offset;
/** Differences (tolerances, steps) know no zero point: 10 °F more is 5.56 K more. */
export const differenceToUnit = (si: number, u: Unit): number => si / u.factor;
export const differenceFromUnit = (shown: number, u: Unit): number => shown * u.factor;

/**
 * A figure in a unit as an SI value with 15 significant digits: 4.07 in is 0.103378 m, not 0.10337800000000001, so
 * that a typed figure equals the same figure in a file, and links stay short.
 */
export const si = (shown: number, u: Unit): number => tidy(fromUnit(shown, u));
export const tidy = (value: number): number => Number(value.toPrecision(15));
