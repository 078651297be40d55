import { root } from '../../src/numerics/root.ts';
import { bernoulliSpeed, squareRootFactor } from '../../src/physics/flow/bench.ts';
import { inletMachIndex } from '../../src/physics/flow/inlet-mach.ts';
import { criticalPressureRatio, flowFunction, flowPerArea, orificeMassFlow } from '../../src/physics/flow/orifice.ts';
import { openArea, portFromValve } from '../../src/physics/flow/port.ts';
import { ratedAir } from '../../src/physics/flow/still-air.ts';
import { curtainArea, leastArea, roundArea } from '../../src/physics/flow/valve-area.ts';
import rows from './flow.json';
import { type Given, holdAgainst, numbered } from './printed.ts';

const mm = 1e-3;
const mm2 = 1e-6;
const deg = Math.PI / 180;
const inch = 0.0254;
const inchOfWater = 25.4 * 9.80665;
/** m/s as cubic feet a minute through a square inch. */
const cfmPerSquareInch = (0.3048 ** 3 / 60 / inch ** 2) ** -1;

const orifice = (given: Given): number =>
  orificeMassFlow(
    given('CD_A_mm2') * mm2,
    {
      pressure: given('p0_kPa') * 1000,
      temperature: given('T0_K'),
      gasConstant: given('R_J_kgK'),
      gamma: given('gamma'),
    },
    given('p_down_kPa') * 1000,
  );

holdAgainst(rows, [...numbered('FLO', 1, 3), ...numbered('FLO', 8, 33)], {
  'critical pressure ratio': (given) => criticalPressureRatio(given('gamma')),
  'choked mass-flow function mdot sqrt(R T0)/(CD A p0)': (given) => flowFunction(0, given('gamma')),
  'orifice mass flow, subcritical': orifice,
  'orifice mass flow, choked': orifice,
  'flow-bench depression conversion factor to 28 inH2O': (given) =>
    squareRootFactor(given('from_inH2O'), given('to_inH2O')),
  'Bernoulli velocity at 28 inH2O': (given) => bernoulliSpeed(given('dp_inH2O') * inchOfWater, given('rho_kg_m3')),
  'ideal flow per area at 28 inH2O': (given) =>
    given('CD') * bernoulliSpeed(given('dp_inH2O') * inchOfWater, given('rho_kg_m3')) * cfmPerSquareInch,
  'same, compressible (volume at upstream density)': (given) =>
    flowPerArea(given('dp_inH2O') * inchOfWater, ratedAir) * cfmPerSquareInch,
  'minimum valve flow area': (given) =>
    leastArea(
      {
        diameter: given('Dv_mm') * mm,
        width: given('seat_w_mm') * mm,
        angle: given('beta_deg') * deg,
        throat: given('Dp_mm') * mm,
        stem: given('Ds_mm') * mm,
      },
      given('lift_mm') * mm,
    ) / mm2,
  'curtain area': (given) => curtainArea(given('Dv_mm') * mm, given('lift_mm') * mm) / mm2,
  'lift at which curtain equals valve head area': (given) => {
    const diameter = given('Dv_mm') * mm;
    return root((lift) => curtainArea(diameter, lift) - roundArea(diameter), 0, diameter)! / mm;
  },
  'inlet valve CD on curtain area': (given) => {
    const lift = given('L_over_D') * 0.05; // a valve of 50 mm
    return openArea(portFromValve(0.05), lift) / curtainArea(0.05, lift);
  },
  'Taylor inlet Mach index': (given) =>
    inletMachIndex({
      bore: given('bore_mm') * mm,
      valveDiameter: given('Di_mm') * mm,
      flowCoefficient: given('Ci'),
      meanPistonSpeed: given('Sp_m_s'),
      soundSpeed: given('a_m_s'),
    }),
});
