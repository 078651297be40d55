import { describe, expect, it } from 'vitest';
import { root } from '../../src/numerics/root.ts';
import { laminarSpeed, wiebe, wiebeProgress } from '../../src/physics/cycle/burn.ts';
import {
  auxiliaryFriction,
  type Bearings,
  crankshaftFriction,
  gasLoadFriction,
} from '../../src/physics/cycle/friction.ts';
import { closedSpeed, combustionSpeed, woschni } from '../../src/physics/cycle/wall-heat.ts';
import { meanPistonSpeed } from '../../src/physics/volumes.ts';
import rows from './combustion.json';
import { type Given, holdAgainst, numbered } from './printed.ts';

const rpm = Math.PI / 30;
const atm = 101_325;
const kPa = 1000;

const engine = (given: Given) => ({
  bore: given('B_mm') / 1000,
  stroke: given('S_mm') / 1000,
  cylinders: given('n_cyl'),
  isVee: false,
  valvesPerCylinder: 2,
  staticRatio: given('rc'),
});
const bearings = (given: Given): Bearings => ({
  diameter: given('Db_mm') / 1000,
  length: given('Lb_mm') / 1000,
  count: given('n_b_main'),
});

// Left out: 10-12, 14, 18-22 are of other fuels or of Gülder's correlation, which gives nearly twice the speed; 17 is
// another form of the dilution term than 16. 25 and 27-29 do not exist. 30-35 (Barnes-Moss) contain pumping, which the
// cycle has as work on the gas; 36 (Chen-Flynn) is of a diesel. 38, from memory, puts the piston speed over the square of
// the bore, which leaves the skirts 0.3 kPa; sheared oil between parts that grow together goes with speed over bore.
const judged = [
  ...numbered('COM', 1, 9),
  'COM-13',
  ...numbered('COM', 15, 16),
  ...numbered('COM', 23, 24),
  'COM-26',
  'COM-37',
  ...numbered('COM', 39, 41),
];

holdAgainst(rows, judged, {
  'Wiebe burned fraction a=5 m=2': (given) => wiebe(given('y')),
  'Wiebe inverse: y at burned fraction': (given) => wiebeProgress(given('xb')),
  // where the curve bends neither way
  'Wiebe rate peak position': () => root((y) => wiebe(y + 1e-4) - 2 * wiebe(y) + wiebe(y - 1e-4), 0.3, 0.7)!,
  'Wiebe 10-90 % share of total duration': () => wiebeProgress(0.9) - wiebeProgress(0.1),
  'laminar speed gasoline (Rhodes & Keck), phi 1, 298 K, 1 atm': (given) =>
    100 * laminarSpeed(given('phi'), 298, atm, 0),
  'laminar speed gasoline at engine state': (given) =>
    100 * laminarSpeed(given('phi'), given('Tu_K'), given('p_atm') * atm, 0),
  'diluent factor, mole-fraction form': (given) =>
    laminarSpeed(1.1, 700, 2e6, given('x_dil_mole')) / laminarSpeed(1.1, 700, 2e6, 0),
  'Woschni h, compression': (given) =>
    woschni(given('bore_m'), given('p_kPa') * kPa, given('T_K'), closedSpeed(given('Sp_m_s'))),
  'Woschni gas speed, combustion': (given) =>
    closedSpeed(given('Sp_m_s')) +
    combustionSpeed(
      given('Vd_m3'),
      given('Tr_K') / (given('pr_kPa') * kPa * given('Vr_m3')),
      (given('p_kPa') - given('p_motored_kPa')) * kPa,
    ),
  'Woschni h, combustion, Heywood form': (given) =>
    woschni(given('bore_m'), given('p_kPa') * kPa, given('T_K'), given('w_m_s')),
  'Patton-Nitschke-Heywood fmep term: crankshaft': (given) =>
    crankshaftFriction(engine(given), bearings(given), given('N_rpm') * rpm) / kPa,
  'Patton-Nitschke-Heywood fmep term: gas-load increase': (given) =>
    gasLoadFriction(given('rc'), meanPistonSpeed(given('S_mm') / 1000, given('N_rpm') * rpm)) / kPa,
  'Patton-Nitschke-Heywood fmep term: auxiliary': (given) => auxiliaryFriction(given('N_rpm') * rpm) / kPa,
  'auxiliary fmep, Sandoval & Heywood update': (given) => auxiliaryFriction(given('N_rpm') * rpm) / kPa,
});

describe('the form of Woschni that is used', () => {
  // 129.8 B^-0.2 p^0.8 T^-0.53 w^0.8, p in bar, is the same constant with another power of the temperature.
  it('has Woschni’s constant for bar, 129.8 (SAE 670931), behind its own for kPa', () =>
    expect(woschni(1, 1e5, 1, 1)).toBeCloseTo(129.8, 1));
});
