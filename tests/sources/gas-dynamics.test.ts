import { densityRatio, powerTables, stagnationRatio } from '../../src/physics/cycle/pipe/powers.ts';
import { flowFunction, flowTable, orificeFlow } from '../../src/physics/cycle/pipe/orifice.ts';
import { Pipe } from '../../src/physics/cycle/pipe/pipe.ts';
import { meeting, type Meeting } from '../physics/cycle/pipe/riemann.ts';
import rows from './gas-dynamics.json';
import { type Given, holdAgainst, numbered } from './printed.ts';

const gas = (given: Given, side: string) => ({
  rho: given(`${side}_rho`),
  u: given(`${side}_u`),
  p: given(`${side}_p`),
});
// The exact solution that the pipes are held against in their own tests.
const tube = (given: Given): Meeting => meeting(gas(given, 'left'), gas(given, 'right'), given('gamma'));

/** Speed at which gas has to run into a wall for the shock from it to meet the gas at a Mach number; c = 1. */
const thrown = (given: Given): number => (2 / (given('gamma') + 1)) * (given('M1') - 1 / given('M1'));
const shock = (given: Given): Meeting => {
  const [gamma, u] = [given('gamma'), thrown(given)];
  return meeting({ rho: gamma, u, p: 1 }, { rho: gamma, u: -u, p: 1 }, gamma);
};

const orifice = (given: Given): number => {
  const T0 = given('T0_K');
  const [p0, p] = [given('p0_kPa') * 1000, given('p_down_kPa') * 1000];
  return orificeFlow(flowTable(given('gamma')), given('R_J_kgK'), p0, T0, p, T0, given('CD_A_mm2') * 1e-6);
};

holdAgainst(rows, [...numbered('FLO', 1, 11), ...numbered('TUN', 15, 28)], {
  'critical pressure ratio': (given) => flowTable(given('gamma')).critical,
  'isentropic p/p0, rho/rho0, T/T0, A/A*': (given) => {
    const gamma = given('gamma');
    const pressure = 1 / stagnationRatio(powerTables(gamma), given('M') ** 2);
    const density = densityRatio(powerTables(gamma), pressure);
    const flows = flowTable(gamma);
    return [pressure, density, pressure / density, flowFunction(flows, 0) / flowFunction(flows, pressure)];
  },
  'choked mass-flow function mdot sqrt(R T0)/(CD A p0)': (given) => flowFunction(flowTable(given('gamma')), 0.2),
  'orifice mass flow, subcritical': orifice,
  'orifice mass flow, choked': orifice,
  'Sod shock tube p*': (given) => tube(given).p,
  'Sod shock tube u*': (given) => tube(given).u,
  'Sod shock tube rho* left of contact': (given) => tube(given).rhoLeft,
  'Sod shock tube rho* right of contact': (given) => tube(given).rhoRight,
  'Sod shock tube shock speed': (given) => tube(given).rightWave[0],
  'Sod shock tube rarefaction head speed': (given) => tube(given).leftWave[0],
  'Sod shock tube rarefaction tail speed': (given) => tube(given).leftWave[1],
  'Toro test 2 (double rarefaction) p*': (given) => tube(given).p,
  'Toro test 3 (strong shock) p*': (given) => tube(given).p,
  'Toro test 3 u*': (given) => tube(given).u,
  'normal shock p2/p1': (given) => {
    const gamma = given('gamma');
    const pipe = new Pipe({
      cells: 2,
      length: 1,
      startArea: 1,
      endArea: 1,
      gamma,
      R: 1,
      friction: 0,
      heatFactor: 0,
      wallTemperature: 1,
      lossHeads: 0,
    });
    pipe.fill(1, 1 / gamma, 0, thrown(given));
    pipe.reconstruct(0);
    pipe.end.solve(1, 1, 0, 0);
    return pipe.end.pressure;
  },
  'normal shock rho2/rho1': (given) => shock(given).rhoLeft / given('gamma'),
  'normal shock T2/T1': (given) => (shock(given).p * given('gamma')) / shock(given).rhoLeft,
  'normal shock M2': (given) => {
    const { p, rhoLeft, leftWave } = shock(given);
    return -leftWave[0] / Math.sqrt((given('gamma') * p) / rhoLeft); // the gas behind it stands still
  },
});
