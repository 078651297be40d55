import { root } from '../../src/numerics/root.ts';
import { dynamicRatio } from '../../src/physics/compression.ts';
import {
  linkage,
  peakPistonSpeed,
  peakPistonSpeedAngle,
  pistonAcceleration,
  pistonDrop,
  pistonVelocity,
} from '../../src/physics/linkage.ts';
import { compressionRatio, cylinderVolume, meanPistonSpeed } from '../../src/physics/volumes.ts';
import { type Given, holdAgainst, numbered } from './printed.ts';
import rows from './slider-crank.json';

const deg = Math.PI / 180;
const rpm = Math.PI / 30;
const found = (value: number | null): number => value ?? NaN;

const unit = (given: Given) => linkage(2, given('R_rod_over_crank'), 0); // a crank of 1 m
const square = (given: Given) => linkage(given('S_mm') / 1000, given('rod_mm') / 1000, 0);

/** Dynamic ratio of a cylinder of unit swept volume. */
const effective = (given: Given): number => {
  const clearance = 1 / (given('rc_static') - 1);
  const drop = pistonDrop(unit(given), given('IVC_deg_ABDC') * deg - Math.PI);
  return dynamicRatio(clearance + drop / 2, clearance);
};

/**
 * Where the acceleration would vanish if it had two harmonics: what an all but endless rod adds to the cosine is the
 * second harmonic, here scaled up to the rod at hand.
 */
const zeroOfTwoHarmonics = (ratio: number): number => {
  const endless = 1e-4;
  const second = (angle: number): number =>
    (pistonAcceleration(linkage(2, 1 / endless, 0), angle, 1) - Math.cos(angle)) / endless;
  return found(root((angle) => Math.cos(angle) + second(angle) / ratio, 0, Math.PI / 2));
};

holdAgainst(rows, numbered('KIN', 1, 34), {
  'piston displacement from TDC / stroke': (given) => pistonDrop(unit(given), given('theta_deg_ATDC') * deg) / 2,
  'instantaneous / mean piston speed': (given) =>
    pistonVelocity(unit(given), given('theta_deg_ATDC') * deg, 1) / meanPistonSpeed(2, 1),
  'crank angle of maximum piston speed': (given) => peakPistonSpeedAngle(unit(given)) / deg,
  'maximum / mean piston speed': (given) => peakPistonSpeed(unit(given), 1) / meanPistonSpeed(2, 1),
  'angle of zero piston acceleration, 2nd-harmonic approximation': (given) =>
    zeroOfTwoHarmonics(given('R_rod_over_crank')) / deg,
  'same case, exact (not harmonic) angle': (given) => peakPistonSpeedAngle(unit(given)) / deg,
  'mean piston speed': (given) => meanPistonSpeed(given('stroke_mm') / 1000, given('N_rpm') * rpm),
  'mean piston speed, US form': (given) =>
    (meanPistonSpeed(given('stroke_in') * 0.0254, given('N_rpm') * rpm) / 0.3048) * 60,
  'bore = stroke, 3.0 L square V6': (given) => {
    const one = given('Vd_total_L') / 1000 / given('n_cyl');
    return 1000 * found(root((bore) => cylinderVolume(bore, bore / given('B_over_S')) - one, 0.01, 1));
  },
  'mean piston speed, same engine': (given) => meanPistonSpeed(given('S_mm') / 1000, given('N_rpm') * rpm),
  'clearance volume, same engine': (given) =>
    found(root((clearance) => compressionRatio(given('Vd_cyl_cm3'), clearance) - given('rc'), 1, 500)),
  'piston speed at 20 deg ATDC, same engine': (given) =>
    pistonVelocity(square(given), given('theta_deg_ATDC') * deg, given('N_rpm') * rpm),
  'piston travel at 20 deg ATDC, same engine': (given) =>
    1000 * pistonDrop(square(given), given('theta_deg_ATDC') * deg),
  'V/Vc': (given) => {
    const clearance = 1 / (given('rc') - 1);
    return (clearance + pistonDrop(unit(given), given('theta_deg') * deg) / 2) / clearance;
  },
  'effective compression ratio from intake closing': effective,
});
