import {
  helmholtzFrequency,
  quarterWaveFrequency,
  returnAngle,
  speedOfSwings,
  swingsPerTurn,
  tuningVolume,
} from '../../src/physics/flow/tuning.ts';
import { expect, it } from 'vitest';
import { type Given, holdAgainst, numbered } from './printed.ts';
import rows from './tuning.json';

const rpm = Math.PI / 30;
const deg = Math.PI / 180;
const [foot, inch] = [0.3048, 0.0254];

const volume = (given: Given): number => tuningVolume(given('Vd_cm3') * 1e-6, given('rc'));
const frequency = (given: Given): number =>
  helmholtzFrequency({ length: given('L_mm') * 1e-3, area: given('A_mm2') * 1e-6 }, volume(given), given('c_m_s'));
const quarterWave = (given: Given): number => quarterWaveFrequency(given('L_mm') * 1e-3, given('c_m_s'));

holdAgainst(rows, [...numbered('TUN', 1, 5), ...numbered('TUN', 7, 9)], {
  'effective cylinder volume': (given) => volume(given) * 1e6,
  'Helmholtz frequency inlet pipe + cylinder': frequency,
  'tuned engine speed, Helmholtz': (given) => speedOfSwings(frequency(given), given('K')) / rpm,
  // 162/K x c x the root of A (rc - 1) / (L Vd (rc + 1)), taken at one everywhere and a ratio of 3.
  'US-form constant 162': () =>
    (speedOfSwings(helmholtzFrequency({ length: inch, area: inch ** 2 }, tuningVolume(inch ** 3, 3), foot), 1) / rpm) *
    Math.sqrt(2),
  'quarter-wave frequency, open-closed pipe': quarterWave,
  'next mode of the same pipe': (given) => 3 * quarterWave(given),
  'round-trip crank angle of a pulse': (given) =>
    returnAngle(given('L_mm') * 1e-3, given('c_m_s'), given('N_rpm') * rpm) / deg,
});

it('the published swings a turn are 2.0 to 2.5', () => expect(swingsPerTurn).toEqual({ least: 2, most: 2.5 }));
