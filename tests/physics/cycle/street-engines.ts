import { type EngineInput, ordinary, ringLeakArea } from '../../../src/physics/cycle/engine-input.ts';
import { benchArea, usualDepression } from '../../../src/physics/flow/bench.ts';
import { carburetorArea } from '../../../src/physics/flow/carburetor.ts';
import { sparkCurveOf } from '../../../src/physics/cycle/spark.ts';

export const degree = Math.PI / 180;
export const rpm = Math.PI / 30;
export const inch = 0.0254;
const inchesOfMercury = 3386.389;
const squareInch = inch * inch;
const cfm = 0.3048 ** 3 / 60;
export const cubicInch = inch ** 3;

/** One valve and its lobe, as a card and a flow bench tell of them: inches, degrees, cfm. */
interface ValveCard {
  readonly diameter: number;
  readonly lobeLift: number;
  readonly rocker: number;
  readonly seat: number;
  readonly at050: number;
  /** Degrees from the overlap top: after it for the intake, before it for the exhaust. */
  readonly centerline: number;
  /** Flow at 28 inches of water over lift; null: a discharge coefficient over lift and diameter. */
  readonly bench: readonly (readonly [lift: number, cfm: number])[] | null;
}

/** Piecewise straight from nothing, held at the end. */
function read(table: readonly (readonly [number, number])[], x: number): number {
  let [x0, y0] = [0, 0];
  for (const [x1, y1] of table) {
    if (x <= x1) return y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
    [x0, y0] = [x1, y1];
  }
  return y0;
}

/** Discharge coefficient on the curtain area over lift per diameter, of an ordinary port (from memory). */
const coefficient = [0.7, 0.68, 0.66, 0.62, 0.58, 0.52, 0.46, 0.405, 0.36];

/** Areas by crank degree from a lobe that passes the seat's and the 0.050 inch durations: lift = L (1 - |x|^a)^3. */
export function areas(card: ValveCard, opens: 'intake' | 'exhaust'): Float64Array {
  const height = (lift: number): number => 1 - Math.cbrt(lift / card.lobeLift);
  const power = Math.log(height(0.05) / height(0.006)) / Math.log(card.at050 / card.seat);
  const half = card.seat / 2 / height(0.006) ** (1 / power);
  const peak = opens === 'intake' ? 360 + card.centerline : 360 - card.centerline;
  return Float64Array.from({ length: 722 }, (_, i) => {
    const away = ((((i - 180 - peak + 360) % 720) + 720) % 720) - 360;
    const x = Math.abs(away) / half;
    const lift = x < 1 ? card.rocker * card.lobeLift * (1 - x ** power) ** 3 : 0;
    if (lift < 5e-4) return 0;
    if (card.bench) return benchArea(read(card.bench, lift) * cfm, usualDepression);
    const place = (lift / card.diameter) * 20;
    const row = Math.min(coefficient.length - 2, Math.floor(place));
    const share = Math.min(1, place - row);
    const c = coefficient[row]! + share * (coefficient[row + 1]! - coefficient[row]!);
    return c * Math.PI * card.diameter * lift * squareInch;
  });
}

/** Air by barometer, inHg, temperature, F, and relative humidity, %. */
export function air(barometer: number, fahrenheit: number, humidity: number) {
  const celsius = (fahrenheit - 32) / 1.8;
  const saturation = 611.21 * Math.exp((17.502 * celsius) / (240.97 + celsius)); // Buck 1981
  const vapor = (saturation * humidity) / 100;
  const pressure = barometer * inchesOfMercury;
  return {
    airPressure: pressure,
    airTemperature: celsius + 273.15,
    waterRatio: (0.622 * vapor) / (pressure - vapor),
  };
}

/** What an invented engine is made of, in the units builders use. */
interface Build {
  readonly cylinders: number;
  readonly bore: number;
  readonly stroke: number;
  readonly rod: number;
  readonly ratio: number;
  readonly intake: ValveCard;
  readonly exhaust: ValveCard;
  readonly runner: readonly [length: number, diameter: number];
  readonly primary: readonly [length: number, diameter: number];
  /** cfm at 1.5 inHg */
  readonly carburetor: number;
  readonly richness: number;
  /** Total advance, degrees. */
  readonly spark: number;
  readonly weather: readonly [barometer: number, fahrenheit: number, humidity: number];
}

export function built(b: Build): EngineInput {
  const bore = b.bore * inch;
  const displacement = (Math.PI / 4) * b.bore ** 2 * b.stroke * b.cylinders * cubicInch;
  return {
    cylinders: b.cylinders,
    bore,
    stroke: b.stroke * inch,
    rod: b.rod * inch,
    pinOffset: 0,
    staticRatio: b.ratio,
    isVee: b.cylinders === 8,
    valvesPerCylinder: 2,
    intakeArea: areas(b.intake, 'intake'),
    exhaustArea: areas(b.exhaust, 'exhaust'),
    inletArea: carburetorArea(b.carburetor * cfm, 1.5 * inchesOfMercury),
    planes: 1,
    plenumVolume: displacement / 2,
    runnerLength: b.runner[0] * inch,
    runnerDiameter: b.runner[1] * inch,
    portDiameter: b.runner[1] * inch,
    runnerLoss: ordinary.castRunnerLoss,
    primaryLength: b.primary[0] * inch,
    primaryDiameter: b.primary[1] * inch,
    primaryLoss: ordinary.primaryLoss,
    collectorCylinders: b.cylinders > 4 ? b.cylinders / 2 : b.cylinders,
    crankLayout: b.cylinders === 8 ? 'crossPlane' : 'even',
    collectorLength: 15 * inch,
    collectorDiameter: 1.7 * b.primary[1] * inch,
    outletShare: ordinary.openOutlet,
    trim: 'bare',
    backPressure: 25e3,
    ratedSpeed: 5500 * rpm,
    ...air(...b.weather),
    equivalenceRatio: b.richness,
    ...ordinary.carburetor,
    spark: sparkCurveOf(b.spark * degree),
    burnTimeFactor: 1,
    cylinderWall: ordinary.cylinderWall,
    primaryWall: ordinary.primaryWall,
    leakArea: ringLeakArea(bore),
    flowFactor: ordinary.flowFactor,
    frictionFactor: ordinary.frictionFactor,
    wallHeatFactor: ordinary.wallHeatFactor,
    burnCompleteness: ordinary.burnCompleteness,
    bankBlend: ordinary.bankBlend,
  };
}

/** Flow of a port over lift; the exhaust's is 0.74 of it. */
const bench = (flows: readonly number[], share = 1): readonly (readonly [number, number])[] =>
  flows.map((flow, i) => [(i + 1) / 10, flow * share]);

type Lobe = readonly [seat: number, at050: number, lobeLift: number, centerline: number];

const valves = (
  flows: readonly number[],
  diameters: readonly [number, number],
  rocker: number,
  intake: Lobe,
  exhaust: Lobe,
) => {
  const card = (lobe: Lobe, diameter: number, share: number): ValveCard => ({
    diameter,
    rocker,
    seat: lobe[0],
    at050: lobe[1],
    lobeLift: lobe[2],
    centerline: lobe[3],
    bench: bench(flows, share),
  });
  return { intake: card(intake, diameters[0], 1), exhaust: card(exhaust, diameters[1], 0.74) };
};

const eight = {
  cylinders: 8,
  bore: 4.07,
  stroke: 3.54,
  rod: 5.85,
  runner: [9.5, 1.75],
  primary: [34, 1.75],
  carburetor: 680,
  richness: 1.15,
  spark: 34,
} as const;
const eightFlows = [64, 128, 180, 215, 232];

/** An invented street V8 of 368 cubic inches. */
export const streetEight: Build = {
  ...eight,
  ratio: 9.54,
  ...valves(eightFlows, [2, 1.58], 1.52, [270, 220, 0.31, 106], [278, 228, 0.315, 114]),
  weather: [29.2, 85, 45],
};

/** The same block with more ratio and a short cam. */
export const earlyEight: Build = {
  ...eight,
  ratio: 10.21,
  ...valves(eightFlows, [2, 1.58], 1.52, [256, 206, 0.29, 108], [262, 212, 0.295, 116]),
  weather: [29.55, 78, 50],
};

/** And with a long one. */
export const lateEight: Build = {
  ...earlyEight,
  ...valves(eightFlows, [2, 1.58], 1.52, [294, 244, 0.345, 108], [302, 252, 0.345, 112]),
};

/** An invented six in the mountains. */
export const mountainSix: Build = {
  cylinders: 6,
  bore: 3.79,
  stroke: 3.72,
  rod: 6.05,
  ratio: 8.72,
  ...valves([56, 104, 138, 155], [1.78, 1.48], 1.58, [258, 204, 0.262, 108], [258, 204, 0.262, 114]),
  runner: [10, 1.5],
  primary: [16, 1.5],
  carburetor: 212,
  richness: 1.1,
  spark: 30,
  weather: [22.9, 70, 25],
};

/** An invented small four. */
export const milledFour: Build = {
  cylinders: 4,
  bore: 3.64,
  stroke: 3.42,
  rod: 5.4,
  ratio: 9.18,
  ...valves([52, 96, 126, 138], [1.7, 1.4], 1.5, [256, 206, 0.268, 108], [256, 206, 0.268, 112]),
  runner: [9, 1.45],
  primary: [28, 1.5],
  carburetor: 198,
  richness: 1.12,
  spark: 30,
  weather: [28.75, 92, 55],
};

/**
 * A pushrod V6 of 4.3 liters, 99.6 x 92 mm at 11.0, of which its maker published the full-load curve. The rest was not
 * published: ordinary guesses, none of them fitted. A maker's figure is with exhaust and accessories.
 */
export function pushrodSix(): EngineInput {
  const like = built({
    ...mountainSix,
    bore: 99.6 / 25.4,
    stroke: 92 / 25.4,
    rod: 6,
    ratio: 11,
    runner: [13, 1.7],
    primary: [16, 1.5],
    richness: 1.12,
    weather: [29.92, 77, 40],
  });
  const card = { rocker: 1.5, centerline: 110, bench: null };
  const throttle = 0.7 * (Math.PI / 4) * 0.08 ** 2; // one bore of 80 mm
  return {
    ...like,
    ...ordinary.injection,
    isVee: true,
    intakeArea: areas({ ...card, diameter: 1.95, lobeLift: 0.28, seat: 252, at050: 198 }, 'intake'),
    exhaustArea: areas({ ...card, diameter: 1.59, lobeLift: 0.28, seat: 258, at050: 204 }, 'exhaust'),
    inletArea: throttle,
    runnerLoss: ordinary.moldedRunnerLoss,
    plenumVolume: 4.3e-3,
    trim: 'street',
    spark: 'best',
  };
}

/** A mild street four of the years up to 1985, with a carburetor: guesses, none of them fitted. At its best spark. */
export function mildFour(): EngineInput {
  const [bore, stroke] = [3.3, 3.3];
  const card = { rocker: 1, lobeLift: 0.25 * 0.46 * bore, seat: 256, at050: 206, centerline: 110, bench: null };
  const ratedSpeed = (Math.PI * 14.1) / (stroke * inch); // 14.1 m/s of mean piston speed
  const demand = ((Math.PI / 4) * bore ** 2 * stroke * 4 * (ratedSpeed / (4 * Math.PI))) / 1728; // ft3/s
  const like = built({
    ...streetEight,
    cylinders: 4,
    bore,
    stroke,
    rod: 5.3,
    ratio: 9,
    intake: { ...card, diameter: 0.46 * bore },
    exhaust: { ...card, diameter: 0.39 * bore },
    runner: [10, 0.4 * bore],
    primary: [16, 0.42 * bore],
    carburetor: 0.85 * demand * 60,
    richness: 1.12,
    weather: [29.92, 77, 40],
  });
  return { ...like, trim: 'street', ratedSpeed, spark: 'best' };
}
