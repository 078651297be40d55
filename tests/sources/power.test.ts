import {
  airflowDemand,
  meanEffectivePressure,
  powerFromTorque,
  powerPerVolume,
  specificFuelConsumption,
} from '../../src/physics/performance.ts';
import rows from './power.json';
import { holdAgainst, numbered } from './printed.ts';

const rpm = Math.PI / 30;
const inch = 0.0254;
const pound = 0.45359237;
const foot = 12 * inch;
const poundForce = pound * 9.80665;
const horsepower = 550 * foot * poundForce;
const psi = poundForce / inch ** 2;
const footPound = poundForce * foot;
const withoutDisplacement = numbered('UNI', 20, 31).filter((id) => id !== 'UNI-28' && id !== 'UNI-29');

holdAgainst(rows, withoutDisplacement, {
  'power constant 33000/(2 pi)': () => horsepower / powerFromTorque(footPound, rpm),
  'kW constant 60000/(2 pi)': () => 1000 / powerFromTorque(1, rpm),
  'power from torque': (given) => powerFromTorque(given('T_lbf_ft') * footPound, given('N_rpm') * rpm) / horsepower,
  'BMEP from torque, 4-stroke, US': (given) =>
    meanEffectivePressure(given('T_lbf_ft') * footPound, given('Vd_in3') * inch ** 3) / psi,
  'BMEP from torque, 4-stroke, SI': (given) => meanEffectivePressure(given('T_Nm'), given('Vd_L') / 1000) / 1000,
  'torque from BMEP 1000 kPa, 5.7 L': (given) =>
    (given('bmep_kPa') * 1000) / meanEffectivePressure(1, given('Vd_L') / 1000),
  'BMEP from power, 4-stroke, US': (given) => {
    const torque = (given('P_hp') * horsepower) / powerFromTorque(1, given('N_rpm') * rpm);
    return meanEffectivePressure(torque, given('Vd_in3') * inch ** 3) / psi;
  },
  'bsfc conversion': (given) =>
    specificFuelConsumption((given('bsfc_lb_per_hph') * pound) / 3600, horsepower) * 1000 * 3.6e6,
  'theoretical airflow at 100 % VE, 4-stroke': (given) =>
    (airflowDemand(given('Vd_in3') * inch ** 3, given('N_rpm') * rpm, 1) / foot ** 3) * 60,
  'specific power conversion': (given) =>
    powerPerVolume(given('P_hp') * horsepower, given('Vd_in3') * inch ** 3) / horsepower / 1000,
});
