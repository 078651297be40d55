import { slow } from '../../src/graph/cell.ts';
import { curve } from '../../src/graph/kind.ts';
import { motoredCompression } from '../../src/physics/motored.ts';
import { cite, heywood } from '../../src/references.ts';
import { angle, gaugePressure } from '../../src/units/quantity.ts';
import { airTemperature } from '../air/inputs.ts';
import { stationPressure } from '../air/station-pressure.ts';
import { bore } from '../block/inputs.ts';
import { linkage } from '../block/linkage.ts';
import { intakeClosing } from '../cam/intake-closing.ts';
import { clearanceVolume } from '../chamber/clearance-volume.ts';
import { crankingSpeed, crankingWallTemperature, ringLeakArea } from './inputs.ts';

export const motoredPressure = slow({
  id: 'motoredPressure',
  label: 'Motored compression',
  note: 'Cylinder pressure while the starter turns it over, by crank step, with heat lost to the walls and air past the rings: a picture beside the gauge figure, not its judge.',
  kind: curve(angle, gaugePressure),
  from: {
    bore,
    linkage,
    clearanceVolume,
    intakeClosing,
    stationPressure,
    airTemperature,
    crankingWallTemperature,
    crankingSpeed,
    ringLeakArea,
  },
  source: cite(heywood, 'eqs. 12.18-12.19 for heat, C.8-C.9 for the leak (constants from memory)'),
  formula: 'energy and mass of the trapped air, step by step from intakeClosing',
  *steps({
    clearanceVolume,
    stationPressure,
    intakeClosing,
    crankingWallTemperature,
    crankingSpeed,
    ringLeakArea,
    ...same
  }) {
    const trace = yield* motoredCompression({
      ...same,
      stationPressure,
      clearance: clearanceVolume,
      closing: intakeClosing,
      wallTemperature: crankingWallTemperature,
      speed: crankingSpeed,
      leakArea: ringLeakArea,
    });
    return { x: trace.angle, y: trace.pressure.map((p) => p - stationPressure) };
  },
});
