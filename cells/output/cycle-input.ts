import { cell } from '../../src/graph/cell.ts';
import { structure } from '../../src/graph/kind.ts';
import { Impossible } from '../../src/graph/state.ts';
import { type EngineInput, ordinary, ringLeakArea } from '../../src/physics/cycle/engine-input.ts';
import { refuseEngine } from '../../src/physics/cycle/refuse-engine.ts';
import { carburetorArea } from '../../src/physics/flow/carburetor.ts';
import { cite, heywood } from '../../src/references.ts';
import { airTemperature } from '../air/inputs.ts';
import { stationPressure } from '../air/station-pressure.ts';
import { vaporPressure } from '../air/vapor-pressure.ts';
import { bore, cylinders, engineSpeed, pinOffset, rod, stroke } from '../block/inputs.ts';
import {
  carburetorFlow,
  carburetorRating,
  collectorDiameter,
  collectorLength,
  crankLayout,
  exhaustBackPressure,
  manifoldType,
  plenumVolume,
  primaryDiameter,
  primaryLength,
  primaryLoss,
  runnerDiameter,
  runnerLength,
  runnerLoss,
  trim,
} from '../breathing/inputs.ts';
import { exhaustPort } from '../breathing/exhaust-port.ts';
import { intakePort } from '../breathing/intake-port.ts';
import { pumpOctane } from '../fuel/pump-octane.ts';
import { staticRatio } from '../chamber/static-ratio.ts';
import { exhaustLift } from '../valves/exhaust-lift.ts';
import { intakeLift } from '../valves/intake-lift.ts';
import { areasOf } from './areas.ts';
import {
  burnFactor,
  chamberStyle,
  cylinderBanks,
  equivalenceRatio,
  flowFactor,
  frictionFactor,
  heatFactor,
  lossFactor,
  sparkAdvance,
  sparkEntry,
  totalSpark,
} from './inputs.ts';
import { sparkOf } from './spark-of.ts';

export const cycleInput = cell({
  id: 'cycleInput',
  label: 'The engine, for its cycle',
  note: 'Everything the gas dynamics is told.',
  kind: structure<EngineInput>(),
  from: {
    cylinders,
    bore,
    stroke,
    rod,
    pinOffset,
    engineSpeed,
    staticRatio,
    intakeLift,
    exhaustLift,
    intakePort,
    exhaustPort,
    carburetorFlow,
    carburetorRating,
    manifoldType,
    plenumVolume,
    runnerLength,
    runnerDiameter,
    runnerLoss,
    primaryLength,
    primaryDiameter,
    primaryLoss,
    crankLayout,
    collectorLength,
    collectorDiameter,
    trim,
    exhaustBackPressure,
    stationPressure,
    airTemperature,
    vaporPressure,
    cylinderBanks,
    chamberStyle,
    equivalenceRatio,
    sparkEntry,
    totalSpark,
    sparkAdvance,
    pumpOctane,
    flowFactor,
    burnFactor,
    heatFactor,
    frictionFactor,
    lossFactor,
  },
  mayLack: ['totalSpark', 'sparkAdvance', 'pumpOctane', 'exhaustBackPressure'], // asked for only by a choice
  source: cite(heywood, 'ch. 14; wall temperatures, heating and leak are common practice'),
  formula: 'what the fields say, in one record',
  compute: (now) => {
    const paired = now.cylinders > 4 && now.cylinders % 2 === 0;
    const crossPlane = now.crankLayout === 'crossPlane' && now.cylinders === 8;
    const engine: EngineInput = {
      cylinders: now.cylinders,
      bore: now.bore,
      stroke: now.stroke,
      rod: now.rod,
      pinOffset: now.pinOffset,
      staticRatio: now.staticRatio,
      isVee: now.cylinderBanks === 'vee',
      valvesPerCylinder: 2,
      intakeArea: areasOf(now.intakeLift, now.intakePort),
      exhaustArea: areasOf(now.exhaustLift, now.exhaustPort),
      inletArea: carburetorArea(now.carburetorFlow, now.carburetorRating),
      planes: now.manifoldType === 'dual' && now.cylinders % 2 === 0 ? 2 : 1,
      plenumVolume: now.plenumVolume,
      runnerLength: now.runnerLength,
      runnerDiameter: now.runnerDiameter,
      portDiameter: now.runnerDiameter,
      runnerLoss: now.runnerLoss * now.lossFactor,
      primaryLength: now.primaryLength,
      primaryDiameter: now.primaryDiameter,
      primaryLoss: now.primaryLoss * now.lossFactor,
      collectorCylinders: paired ? now.cylinders / 2 : now.cylinders,
      crankLayout: crossPlane ? 'crossPlane' : 'even',
      collectorLength: now.collectorLength,
      collectorDiameter: now.collectorDiameter,
      outletShare: ordinary.openOutlet,
      trim: now.trim,
      backPressure: now.exhaustBackPressure ?? 0, // only street trim asks for it
      ratedSpeed: now.engineSpeed,
      airPressure: now.stationPressure,
      airTemperature: now.airTemperature,
      waterRatio: (0.621945 * now.vaporPressure) / (now.stationPressure - now.vaporPressure), // ASHRAE 2017, eq. 20
      equivalenceRatio: now.equivalenceRatio,
      vaporizedShare: ordinary.carburetor.vaporizedShare,
      chargeHeating: ordinary.carburetor.chargeHeating,
      spark: sparkOf(now),
      burnTimeFactor: (now.chamberStyle === 'pentroof' ? ordinary.pentRoofBurn : 1) * now.burnFactor,
      cylinderWall: ordinary.cylinderWall,
      runnerWall: ordinary.carburetor.runnerWall,
      primaryWall: ordinary.primaryWall,
      leakArea: ringLeakArea(now.bore),
      flowFactor: now.flowFactor,
      frictionFactor: now.frictionFactor,
      wallHeatFactor: now.heatFactor,
      burnCompleteness: ordinary.burnCompleteness,
      bankBlend: ordinary.bankBlend,
    };
    try {
      refuseEngine(engine);
    } catch (error) {
      throw new Impossible([(error as Error).message]);
    }
    return engine;
  },
});
