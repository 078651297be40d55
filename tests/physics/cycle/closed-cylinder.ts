import { type BurnAngles, burnAngles, Flame, wiebeProgress } from '../../../src/physics/cycle/burn.ts';
import { Cylinder } from '../../../src/physics/cycle/cylinder.ts';
import { gasTables } from '../../../src/physics/cycle/gas/tables.ts';
import { knockRate } from '../../../src/physics/cycle/knock.ts';
import {
  closedSpeed,
  combustionSpeed,
  unfiredPressure,
  wallArea,
  woschni,
} from '../../../src/physics/cycle/wall-heat.ts';
import { linkage, pistonDrop } from '../../../src/physics/linkage.ts';
import { cylinderVolume, meanPistonSpeed } from '../../../src/physics/volumes.ts';

const degree = Math.PI / 180;

/** An invented cylinder between the closing of its intake and the opening of its exhaust. */
export interface ClosedCylinder {
  /** rpm */
  readonly speed: number;
  /** Degrees before firing top dead center; null leaves it unlit. */
  readonly spark: number | null;
  readonly ratio: number;
  readonly walls: boolean;
  readonly timeFactor: number;
  readonly equivalenceRatio: number;
  readonly residual: number;
  /** Of the charge at the closing, K. */
  readonly temperature: number;
  /** Crank degrees to a step. */
  readonly step: number;
}

export const ordinary: ClosedCylinder = {
  speed: 3000,
  spark: 28,
  ratio: 9.5,
  walls: true,
  timeFactor: 1,
  equivalenceRatio: 1.1,
  residual: 0.06,
  temperature: 370,
  step: 1,
};

/** What became of it. Degrees from firing top dead center. */
export interface Outcome {
  /** On the piston, J, both strokes of it. */
  readonly work: number;
  readonly peak: number;
  readonly peakAt: number;
  /** Where 10, 50 and 90 % of what burns has burned; not a number where it never does. */
  readonly burned: readonly [number, number, number];
  /** Share of the fuel's heat that went into the walls. */
  readonly heatShare: number;
  readonly knock: number;
  readonly cylinder: Cylinder;
  readonly angles: BurnAngles;
}

export const bore = 0.1;
export const stroke = 0.09;
const rod = linkage(stroke, 0.15, 0);
const swept = cylinderVolume(bore, stroke);
const closes = -120;
const opens = 120;

/** Volume at crank degrees from firing top dead center, m3. */
export const volumeAt = (ratio: number, degrees: number): number =>
  swept / (ratio - 1) + cylinderVolume(bore, pistonDrop(rod, degrees * degree));

/** Runs one closed part of a cycle with the burn followed along the way. */
export function closedCycle(c: ClosedCylinder): Outcome {
  const tables = gasTables(c.equivalenceRatio, 0.008);
  const cylinder = new Cylinder(tables);
  const flame = new Flame(tables, 0.96);
  const angles = burnAngles(bore, meanPistonSpeed(stroke, (c.speed * Math.PI) / 30), c.timeFactor);
  const pistonSpeed = meanPistonSpeed(stroke, (c.speed * Math.PI) / 30);
  const marks = [0.1, 0.5, 0.9].map(wiebeProgress);
  const passed = [NaN, NaN, NaN] as [number, number, number];

  const p0 = 1e5;
  const V0 = volumeAt(c.ratio, closes);
  cylinder.fill(p0, c.temperature, c.residual, V0);
  const fuel = cylinder.m * (1 - c.residual) * tables.airShare * tables.fuelRatio * 43.64e6; // J
  let [work, peak, peakAt, heat, knock, lit] = [0, 0, 0, 0, 0, false];
  const steps = Math.round((opens - closes) / c.step);
  for (let i = 0; i < steps; i++) {
    const angle = closes + i * c.step;
    const before = cylinder.p;
    const time = (c.step * degree) / ((c.speed * Math.PI) / 30);
    if (!lit && c.spark !== null && angle >= -c.spark - 1e-9) {
      lit = true;
      flame.light(angles, cylinder.T, c.residual);
    }
    if (c.walls) {
      const rise = lit ? before - unfiredPressure(p0, V0 / cylinder.V) : 0;
      const speed = closedSpeed(pistonSpeed) + combustionSpeed(swept, c.temperature / (p0 * V0), rise);
      const area = wallArea(bore, pistonDrop(rod, (angle + c.step / 2) * degree));
      const out = woschni(bore, before, cylinder.T, speed) * area * (cylinder.T - 450) * time;
      cylinder.U -= out;
      heat += out;
    }
    work += cylinder.expand(volumeAt(c.ratio, angle + c.step));
    if (lit) {
      const was = flame.progress;
      flame.advance(angle * degree, c.step * degree, before);
      marks.forEach((mark, k) => {
        if (was < mark && flame.progress >= mark)
          passed[k] = angle + c.step * (1 - (flame.progress - mark) / (flame.progress - was));
      });
      cylinder.burnt = c.residual + (1 - c.residual) * flame.burned();
    }
    cylinder.state();
    if (lit) {
      flame.compress(before, cylinder.p);
      if (flame.progress < wiebeProgress(0.85)) knock += knockRate((before + cylinder.p) / 2, flame.endGas) * time;
    }
    if (cylinder.p > peak) [peak, peakAt] = [cylinder.p, angle + c.step];
  }
  return { work, peak, peakAt, burned: passed, heatShare: heat / fuel, knock, cylinder, angles };
}
