import type { CycleEngine, Duct } from './engine.ts';
import { cellsIn, type Grid } from './grid.ts';
import { cycleDegrees, Neighbors } from './neighbors.ts';
import { Pipe } from './pipe/pipe.ts';
import { Volume } from './volume.ts';

const friction = { runner: 0.008, exhaust: 0.01 }; // Fanning, of cast and of drawn pipe with bends (common practice)
const runnerHeat = 1.5; // a port is rough, bent and washed by pulses (common practice, no source)

/** What the gas of the computed cylinder goes through on its way. */
export interface Tract {
  readonly plenum: Volume;
  readonly runner: Pipe;
  readonly primary: Pipe;
  readonly junction: Volume;
  readonly collector: Pipe;
}

/** An engine's pipes and volumes, its pipes cut as a grid says. */
export function tractOf(engine: CycleEngine, grid: Grid): Tract {
  const { charge, exhaustGamma, exhaustR } = engine;
  const intake = { gamma: charge.gamma, R: charge.R };
  const exhaust = { gamma: exhaustGamma, R: exhaustR };
  const cast = { ...intake, friction: friction.runner, heatFactor: runnerHeat };
  const drawn = { ...exhaust, friction: friction.exhaust, heatFactor: 1 };
  const runner = new Pipe({ ...ofDuct(engine.runner, grid.runner), ...cast });
  const primary = new Pipe({ ...ofDuct(engine.primary, grid.exhaust), ...drawn });
  return {
    runner,
    primary,
    collector: new Pipe({ ...ofDuct(engine.collector, grid.exhaust), ...drawn }),
    plenum: new Volume(
      { ...intake, volume: engine.plenumVolume, mouth: runner.startArea },
      new Neighbors(engine.intakePhases),
    ),
    junction: new Volume(
      { ...exhaust, volume: engine.junctionVolume, mouth: primary.endArea },
      new Neighbors(engine.exhaustPhases),
    ),
  };
}

const ofDuct = (duct: Duct, cell: number) => ({
  cells: cellsIn(duct.length, cell),
  length: duct.length,
  startArea: duct.startArea,
  endArea: duct.endArea,
  wallTemperature: duct.wall,
  lossHeads: duct.lossHeads,
});

/** Brings all gas to rest, near the air's pressure, with neighbors that flow evenly, and forgets what was counted. */
export function rest(tract: Tract, engine: CycleEngine): void {
  const { runner, primary, collector, plenum, junction } = tract;
  const { airPressure, charge, gas } = engine;
  runner.fill(0.98 * airPressure, charge.temperature + 5, 0);
  primary.fill(1.03 * airPressure, 950, 1);
  collector.fill(1.02 * airPressure, 900, 1);
  for (const pipe of [runner, primary, collector]) {
    pipe.floors = 0;
    pipe.start.reset();
    pipe.end.reset();
  }
  plenum.fill(0.98 * airPressure, charge.temperature, 0);
  junction.fill(1.03 * airPressure, 950, 1);

  const air = (0.85 * engine.dryDensity * engine.swept) / cycleDegrees;
  const burnt = air * (1 + gas.fuelRatio);
  plenum.neighbors.fill(air * charge.perAir, 0, 0, 0, plenum.pressure);
  junction.neighbors.fill(0, burnt, burnt * junction.cp * 1000, burnt, junction.pressure);
}
