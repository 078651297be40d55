import { input } from '../../src/graph/cell.ts';
import { choice, optional, scalar } from '../../src/graph/kind.ts';
import { angle, gaugePressure, leakArea, ratio, rotation, temperature } from '../../src/units/quantity.ts';
import { degree, fahrenheit, psi, revolutionsPerMinute, si, squareMillimeter } from '../../src/units/unit.ts';

export const closingConvention = input({
  id: 'closingConvention',
  label: 'Ratio shown first is from',
  short: 'From',
  note: 'Shops quote a dynamic ratio from different closings; the fuel verdict always reads the seat.',
  kind: choice([
    { id: 'seat', label: 'The seat' },
    { id: 'at050', label: '0.050 in' },
    { id: 'at050plus', label: '0.050 in, plus' },
  ]),
  initial: 'seat',
});

export const closingAllowance = input({
  id: 'closingAllowance',
  label: 'Allowance after 0.050 in',
  short: 'Allowance',
  note: 'Degrees some shops add to the closing at 0.050 in to guess at the seat. Common practice, no source.',
  kind: scalar(angle),
  initial: si(15, degree),
  hard: [0, si(120, degree)],
  slider: [0, si(40, degree)],
});

export const crankingExponent = input({
  id: 'crankingExponent',
  label: 'Cranking exponent',
  short: 'Exponent',
  note: 'How steeply pressure rises with ratio on a cranking gauge: less than the 1.4 of a sealed hot cylinder, because starters turn slowly past cold walls and rings leak.',
  kind: scalar(ratio),
  initial: 1.25,
  hard: [1, 1.67],
  trust: [1.15, 1.35],
  slider: [1.1, 1.4],
});

export const gaugeReading = input({
  id: 'gaugeReading',
  label: 'My gauge read',
  note: 'From an engine with exactly these figures: it finds the exponent your gauge, starter and rings make.',
  kind: optional(scalar(gaugePressure)),
  initial: null,
  hard: [si(1, psi), si(2000, psi)],
  slider: [si(80, psi), si(260, psi)],
});

export const crankingSpeed = input({
  id: 'crankingSpeed',
  label: 'Cranking speed',
  note: 'What the starter does with all plugs out. Common practice, no source.',
  kind: scalar(rotation),
  initial: si(200, revolutionsPerMinute),
  hard: [si(10, revolutionsPerMinute), si(5000, revolutionsPerMinute)],
  slider: [si(100, revolutionsPerMinute), si(400, revolutionsPerMinute)],
});

export const ringLeakArea = input({
  id: 'ringLeakArea',
  label: 'Ring leak, one cylinder',
  short: 'Ring leak',
  note: 'Area of the hole that would leak as much as the rings do. Common practice, no source.',
  kind: scalar(leakArea),
  initial: si(0.5, squareMillimeter),
  hard: [0, si(100, squareMillimeter)],
  slider: [0, si(3, squareMillimeter)],
});

export const crankingWallTemperature = input({
  id: 'crankingWallTemperature',
  label: 'Wall temperature while cranking',
  short: 'Walls',
  note: 'A warm engine, stopped for the test. Common practice, no source.',
  kind: scalar(temperature),
  initial: si(160, fahrenheit),
  hard: [si(-100, fahrenheit), si(600, fahrenheit)],
  slider: [si(30, fahrenheit), si(230, fahrenheit)],
});
