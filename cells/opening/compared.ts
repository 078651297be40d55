import type { Cell } from '../../src/graph/cell.ts';
import { intakeClosing } from '../cam/intake-closing.ts';
import { overlap } from '../cam/overlap.ts';
import { staticRatio } from '../chamber/static-ratio.ts';
import { crankingPressure } from '../compression/cranking-pressure.ts';
import { dynamicRatio } from '../compression/dynamic-ratio.ts';
import { fuelVerdictLow } from '../fuel/fuel-verdict-low.ts';
import { fuelVerdict } from '../fuel/fuel-verdict.ts';
import { peakPowerSpeed } from '../output/peak-power-speed.ts';
import { peakPower } from '../output/peak-power.ts';
import { peakTorqueSpeed } from '../output/peak-torque-speed.ts';
import { peakTorque } from '../output/peak-torque.ts';
import { exhaustClearance } from '../valves/exhaust-clearance.ts';
import { intakeClearance } from '../valves/intake-clearance.ts';

/** What variants are told apart by, besides the pinned answers: those that take long last. */
export const compared: readonly Cell[] = [
  intakeClosing,
  overlap,
  staticRatio,
  dynamicRatio,
  crankingPressure,
  fuelVerdict,
  fuelVerdictLow,
  intakeClearance,
  exhaustClearance,
  peakTorque,
  peakTorqueSpeed,
  peakPower,
  peakPowerSpeed,
];
