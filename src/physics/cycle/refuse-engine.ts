import type { EngineInput } from './engine-input.ts';

/**
 * Refuses an engine that could not be.
 *
 * @throws RangeError with a sentence that names what is wrong
 */
export function refuseEngine(e: EngineInput): void {
  must(Number.isInteger(e.cylinders) && e.cylinders >= 1 && e.cylinders <= 16, 'The engine needs 1 to 16 cylinders.');
  between(e.bore, 0.02, 0.3, 'The bore must lie between 20 and 300 mm.');
  between(e.stroke, 0.02, 0.3, 'The stroke must lie between 20 and 300 mm.');
  between(e.staticRatio, 2, 30, 'The static ratio must lie between 2 and 30.');
  must(e.valvesPerCylinder >= 2 && e.valvesPerCylinder <= 6, 'A cylinder needs 2 to 6 valves.');

  between(e.inletArea, 1e-6, 0.5, 'The carburetor or throttle must let some air in.');
  must(e.planes === 1 || e.planes === 2, 'A manifold has one plane or two.');
  must(e.cylinders % e.planes === 0, 'Two planes need an even number of cylinders.');
  between(e.plenumVolume / e.planes, 2e-5, 0.2, 'Each plenum must hold between 20 cubic centimeters and 200 liters.');
  const pipe = (name: string, length: number, ...diameters: readonly number[]): void => {
    between(length, 0.01, 5, `The ${name} must be between 10 mm and 5 m long.`);
    for (const diameter of diameters) between(diameter, 0.008, 0.3, `The ${name} must be 8 to 300 mm wide.`);
  };
  pipe('intake runner', e.runnerLength, e.runnerDiameter, e.portDiameter);
  pipe('exhaust primary', e.primaryLength, e.primaryDiameter);
  pipe('collector', e.collectorLength, e.collectorDiameter);
  for (const loss of [e.runnerLoss, e.primaryLoss])
    between(loss, 0, 20, 'A loss must lie between 0 and 20 velocity heads.');
  must(
    Number.isInteger(e.collectorCylinders) && e.collectorCylinders >= 1 && e.cylinders % e.collectorCylinders === 0,
    'The cylinders must divide evenly among the collectors.',
  );
  must(
    e.crankLayout === 'even' || (e.cylinders === 8 && e.collectorCylinders === 4),
    'A cross-plane crank is known here only for eight cylinders on two collectors.',
  );
  between(e.outletShare, 0.01, 0.95, 'The open share of the collector must lie between 0.01 and 0.95.');
  between(e.backPressure, 0, 2e5, 'The exhaust must hold back between 0 and 200 kPa.');
  between(e.ratedSpeed, 50, 2000, 'The rated speed must lie between 50 and 2000 rad/s.');

  between(e.airPressure, 2e4, 2e5, 'The pressure of the air must lie between 20 and 200 kPa.');
  between(e.airTemperature, 220, 340, 'The air must be between 220 and 340 K.');
  between(e.waterRatio, 0, 0.15, 'The humidity must lie between 0 and 0.15 kg to a kg.');
  between(e.equivalenceRatio, 0.5, 2, 'The mixture must lie between half and twice the stoichiometric fuel.');
  between(e.vaporizedShare, 0, 1, 'The share of vapor must lie between 0 and 1.');
  between(e.chargeHeating, -50, 100, 'The heating of the charge must lie between -50 and 100 K.');
  between(e.burnTimeFactor, 0.2, 5, 'The burning time must lie between 0.2 and 5 times the usual one.');
  for (const wall of [e.cylinderWall, e.runnerWall, e.primaryWall])
    between(wall, 220, 1300, 'A wall must be between 220 and 1300 K.');
  between(e.leakArea, 0, 2e-5, 'The way past the rings must lie between 0 and 20 mm2.');
  if (typeof e.spark === 'object' && 'heldTo' in e.spark)
    between(e.spark.heldTo, 40, 150, 'The octane number of the fuel must lie between 40 and 150.');
  between(e.flowFactor, 0.5, 2, 'The valves must flow between half and twice as much as said.');
  between(e.frictionFactor, 0, 5, 'The friction must lie between 0 and 5 times the usual.');
  between(e.wallHeatFactor, 0, 5, 'The heat to the walls must lie between 0 and 5 times the usual.');
  between(e.burnCompleteness, 0.3, 1, 'Between three tenths and all of the charge must burn.');
  between(e.bankBlend, 0, 1, 'The share of an even bank must lie between 0 and 1.');
}

function between(value: number, low: number, high: number, sentence: string): void {
  must(value >= low && value <= high, sentence);
}

function must(holds: boolean, sentence: string): void {
  if (!holds) throw new RangeError(sentence);
}
