import { cylinderVolume } from '../../src/physics/volumes.ts';
import rows from './displacement.json';
import { type Given, holdAgainst, numbered } from './printed.ts';

const displacement = (given: Given): number =>
  given('n_cyl') * cylinderVolume(given('bore_in') * 0.0254, given('stroke_in') * 0.0254);
const cubicInches = (given: Given): number => displacement(given) / 0.0254 ** 3;

const listed = numbered('DIS', 1, 5);
holdAgainst(rows, ['UNI-28', 'UNI-29', ...listed, ...listed.map((id) => `${id}c`)], {
  'displacement V8': cubicInches,
  'same in cm3': (given) => displacement(given) * 1e6,
  'displacement as listed, whole in3': cubicInches,
  'displacement from bore and stroke': cubicInches,
});
