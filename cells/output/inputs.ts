import { input } from '../../src/graph/cell.ts';
import { choice, type Rows, scalar, table } from '../../src/graph/kind.ts';
import { angle, ratio, rotation } from '../../src/units/quantity.ts';
import { degree, revolutionsPerMinute, si } from '../../src/units/unit.ts';

export const sparkEntry = input({
  id: 'sparkEntry',
  label: 'Spark advance is given as',
  short: 'Spark as',
  note: 'One figure stands for the total, 20 degrees less at 800 rpm and all in at 2800; a table says it speed by speed; best is what gives most torque, whatever the fuel bears.',
  kind: choice([
    { id: 'total', label: 'Total advance' },
    { id: 'table', label: 'A table' },
    { id: 'best', label: 'Best' },
  ]),
  initial: 'total',
});

export const totalSpark = input({
  id: 'totalSpark',
  label: 'Total spark advance',
  short: 'Total spark',
  note: 'Before top dead center, wide open, when all of it is in.',
  kind: scalar(angle, { short: 'BTDC', words: 'before top dead center' }),
  initial: si(34, degree),
  hard: [si(-20, degree), si(80, degree)],
  slider: [si(10, degree), si(50, degree)],
});

export const sparkAdvance = input({
  id: 'sparkAdvance',
  label: 'Spark advance table',
  short: 'Spark table',
  note: 'Advance before top dead center, wide open, by rising engine speed.',
  kind: table([
    { id: 'speed', label: 'Engine speed', quantity: rotation },
    { id: 'advance', label: 'Advance', quantity: angle },
  ]),
  initial: [] as Rows,
});

export const equivalenceRatio = input({
  id: 'equivalenceRatio',
  label: 'Equivalence ratio',
  short: 'Mixture',
  note: 'Fuel over what the air could just burn, wide open: over 1 is rich.',
  kind: scalar(ratio),
  initial: 1.15,
  hard: [0.6, 2],
  trust: [0.8, 1.4],
  slider: [0.8, 1.4],
});

export const chamberStyle = input({
  id: 'chamberStyle',
  label: 'Chamber style',
  short: 'Chamber',
  note: 'A pent roof with its plug in the middle burns faster.',
  kind: choice([
    { id: 'wedge', label: 'Wedge' },
    { id: 'pentroof', label: 'Pent roof' },
  ]),
  initial: 'wedge',
});

export const cylinderBanks = input({
  id: 'cylinderBanks',
  label: 'The cylinders stand',
  short: 'Cylinders',
  note: 'Two on a crankpin in a vee: fewer main bearings, less friction.',
  kind: choice([
    { id: 'inline', label: 'In line' },
    { id: 'vee', label: 'In a vee' },
  ]),
  initial: 'vee',
});

const speed = (id: string, label: string, note: string, initial: number, slider: readonly [number, number]) =>
  input({
    id,
    label,
    note,
    kind: scalar(rotation),
    initial: si(initial, revolutionsPerMinute),
    hard: [si(id === 'curveStep' ? 50 : 400, revolutionsPerMinute), si(15_000, revolutionsPerMinute)],
    slider: [si(slider[0], revolutionsPerMinute), si(slider[1], revolutionsPerMinute)],
  });
export const curveFrom = speed(
  'curveFrom',
  'Curve from',
  'The lowest speed of the curve; under 1600 rpm the model reads high.',
  1000,
  [800, 3000],
);
export const curveTo = speed('curveTo', 'Curve to', 'The highest speed of the curve.', 6500, [4000, 9000]);
export const curveStep = speed('curveStep', 'Curve in steps of', 'Smaller steps take longer.', 500, [100, 1000]);
