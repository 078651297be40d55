import { input } from '../../src/graph/cell.ts';
import { choice, optional, type Rows, scalar, table } from '../../src/graph/kind.ts';
import { angle, engineTorque, fineRatio, ratio, rotation } from '../../src/units/quantity.ts';
import { degree, poundFoot, revolutionsPerMinute, si } from '../../src/units/unit.ts';

export const sparkEntry = input({
  id: 'sparkEntry',
  label: 'Spark advance is given as',
  short: 'Spark as',
  note: 'One figure stands for the total, 20 degrees less at 800 rpm and all in at 2800; a table says it speed by speed; best is what gives most torque, whatever the fuel bears; held to this fuel is the best, but never past where knock is due.',
  kind: choice([
    { id: 'total', label: 'Total advance' },
    { id: 'table', label: 'A table' },
    { id: 'best', label: 'Best' },
    { id: 'fuel', label: 'Held to this fuel' },
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

/** A figure the model assumes, over its ordinary value; about two engines in three lie inside `trust` (common practice). */
const factor = (
  id: string,
  label: string,
  note: string,
  trust: readonly [number, number],
  hard: readonly [number, number] = [0.3, 3],
) => input({ id, label, note, kind: scalar(fineRatio), initial: 1, hard, trust, slider: [0.5, 1.6] });

export const flowFactor = factor(
  'flowFactor',
  'Flow of both valves, times',
  'On top of what the bench says: a bench draws steadily, an engine does not.',
  [0.95, 1.05],
  [0.5, 2],
);
export const burnFactor = factor(
  'burnFactor',
  'Time to burn, times',
  'Over 1 burns slower and asks for more spark: shape of the chamber, swirl and plug decide it.',
  [0.8, 1.25],
);
export const heatFactor = factor(
  'heatFactor',
  'Heat to the cylinder walls, times',
  'Over 1 loses more heat to head, bore and piston.',
  [0.8, 1.5],
);
export const frictionFactor = factor(
  'frictionFactor',
  'Rubbing friction, times',
  'Rings, bearings and valve train; accessories and pumping are not in it.',
  [0.8, 1.2],
);
export const lossFactor = factor(
  'lossFactor',
  'Losses of runners and primaries, times',
  'Entries and bends, over the velocity heads of the breathing chapter.',
  [0.5, 1.5],
);

export const measuredTorque = input({
  id: 'measuredTorque',
  label: 'Peak torque, measured',
  short: 'Measured peak',
  note: 'What a dyno read in the air of the air chapter, not corrected, with the engine trimmed and sparked as said here.',
  kind: optional(scalar(engineTorque)),
  initial: null,
  hard: [si(1, poundFoot), si(5000, poundFoot)],
  slider: [si(50, poundFoot), si(600, poundFoot)],
});

export const fittedFactor = input({
  id: 'fittedFactor',
  label: 'Scale, to meet a measured peak',
  short: 'Scale',
  note: 'One peak cannot tell which of them is to blame: choose the one you know least about.',
  kind: choice([
    { id: 'none', label: 'Nothing' },
    { id: 'flow', label: 'Flow' },
    { id: 'burn', label: 'Burn' },
    { id: 'heat', label: 'Heat' },
    { id: 'friction', label: 'Friction' },
    { id: 'loss', label: 'Losses' },
  ]),
  initial: 'none',
});
