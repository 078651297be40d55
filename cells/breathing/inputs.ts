import { input, type Range } from '../../src/graph/cell.ts';
import { choice, type Rows, scalar, table } from '../../src/graph/kind.ts';
import * as q from '../../src/units/quantity.ts';
import * as u from '../../src/units/unit.ts';

interface Figure {
  readonly id: string;
  readonly label: string;
  readonly short?: string;
  readonly note: string;
  readonly initial: number;
  readonly hard: readonly [number, number];
  readonly slider: readonly [number, number];
}
const figureIn =
  (quantity: q.Quantity, unit: u.Unit) =>
  ({ initial, hard, slider, ...words }: Figure) => {
    const range = ([low, high]: readonly [number, number]): Range => [u.si(low, unit), u.si(high, unit)];
    return input({
      ...words,
      kind: scalar(quantity),
      initial: u.si(initial, unit),
      hard: range(hard),
      slider: range(slider),
    });
  };
const across = figureIn(q.length, u.inch);
const along = figureIn(q.pipeLength, u.inch);
const dropped = figureIn(q.pressureDrop, u.inchOfMercury);
const plain = figureIn(q.ratio, u.one);

const columns = [
  { id: 'lift', label: 'Lift', quantity: q.gap },
  { id: 'flow', label: 'Flow', quantity: q.airFlow },
] as const;
const bench = (inches: readonly number[], flows: readonly number[]): Rows =>
  inches.map((lift, i) => [u.si(lift, u.inch), u.si(flows[i]!, u.cubicFeetPerMinute)]);
const lifts = [0.1, 0.2, 0.3, 0.4, 0.5];

export const intakeFlow = input({
  id: 'intakeFlow',
  label: 'Intake flow',
  note: 'From the flow bench, by rising valve lift. Left empty, the flow is guessed from the valve’s diameter.',
  kind: table(columns),
  initial: bench(lifts, [64, 128, 180, 215, 232]),
});
export const exhaustFlow = input({
  id: 'exhaustFlow',
  label: 'Exhaust flow',
  note: 'From the flow bench, by rising valve lift. Left empty, the flow is guessed from the valve’s diameter.',
  kind: table(columns),
  initial: bench(lifts, [47.4, 94.7, 133.2, 159.1, 171.7]),
});
export const flowDepression = figureIn(
  q.depression,
  u.inchOfWater,
)({
  id: 'flowDepression',
  label: 'Bench depression',
  note: 'What the bench pulled, both tables; figures are mostly quoted at 28 inches of water.',
  initial: 28,
  hard: [1, 100],
  slider: [10, 30],
});

export const throatShare = input({
  id: 'throatShare',
  label: 'Throat, of the valve’s diameter',
  short: 'Throat',
  note: 'The port just under the seat, both valves. Common practice, no source.',
  kind: scalar(q.wholeShare),
  initial: 0.88,
  hard: [0.3, 1],
  slider: [0.8, 0.95],
});
export const stemDiameter = across({
  id: 'stemDiameter',
  label: 'Valve stem diameter',
  short: 'Stem',
  note: 'Both valves.',
  initial: 0.342,
  hard: [0, 1],
  slider: [0.2, 0.4],
});
export const valveSeatAngle = input({
  id: 'valveSeatAngle',
  label: 'Valve seat angle',
  short: 'Seat angle',
  note: 'Of the seat itself, from the plane of the valve’s head, both valves.',
  kind: scalar(q.angle),
  initial: u.si(45, u.degree),
  hard: [u.si(5, u.degree), u.si(75, u.degree)],
  slider: [u.si(30, u.degree), u.si(55, u.degree)],
});
export const valveSeatWidth = across({
  id: 'valveSeatWidth',
  label: 'Valve seat width',
  short: 'Seat width',
  note: 'Outer radius of the seat less its inner, both valves.',
  initial: 0.06,
  hard: [0, 0.5],
  slider: [0.03, 0.12],
});

export const runnerLength = along({
  id: 'runnerLength',
  label: 'Runner length',
  note: 'From the intake valve’s seat to the plenum, the port in the head included.',
  initial: 9.5,
  hard: [0.5, 80],
  slider: [4, 20],
});
export const runnerDiameter = across({
  id: 'runnerDiameter',
  label: 'Runner diameter',
  note: 'Of a circle with the runner’s mean area.',
  initial: 1.75,
  hard: [0.3, 8],
  slider: [1.2, 2.4],
});
export const runnerLoss = plain({
  id: 'runnerLoss',
  label: 'Runner losses, velocity heads',
  short: 'Runner losses',
  note: 'Entry and bends, which no flow bench sees: about 0.6 for a cast street manifold, 0.25 for straight runners. From handbooks of pipe flow.',
  initial: 0.6,
  hard: [0, 10],
  slider: [0, 1.5],
});
export const plenumVolume = figureIn(
  q.displacementVolume,
  u.cubicInch,
)({
  id: 'plenumVolume',
  label: 'Plenum volume',
  note: 'What the runners draw from, under the carburetor.',
  initial: 184,
  hard: [1, 5000],
  slider: [20, 400],
});
export const manifoldType = input({
  id: 'manifoldType',
  label: 'Intake manifold',
  note: 'Whether all cylinders draw from one plenum, or each half of them from its own.',
  kind: choice([
    { id: 'single', label: 'Single plane' },
    { id: 'dual', label: 'Dual plane' },
  ]),
  initial: 'single',
});
export const crankLayout = input({
  id: 'crankLayout',
  label: 'Crankshaft',
  note: 'Only a V8 has the choice: on a cross-plane crank the cylinders of one bank do not fire at even spaces.',
  kind: choice([
    { id: 'even', label: 'Even firing' },
    { id: 'crossPlane', label: 'Cross-plane' },
  ]),
  initial: 'crossPlane',
});

export const primaryLength = along({
  id: 'primaryLength',
  label: 'Primary length',
  note: 'From the exhaust valve’s seat to the collector, the port in the head included.',
  initial: 34,
  hard: [1, 150],
  slider: [10, 48],
});
export const primaryDiameter = across({
  id: 'primaryDiameter',
  label: 'Primary diameter',
  note: 'Inside.',
  initial: 1.75,
  hard: [0.3, 8],
  slider: [1.3, 2.2],
});
export const primaryLoss = plain({
  id: 'primaryLoss',
  label: 'Primary losses, velocity heads',
  short: 'Primary losses',
  note: 'The bends. From handbooks of pipe flow.',
  initial: 0.4,
  hard: [0, 10],
  slider: [0, 1.5],
});
export const primarySoundSpeed = figureIn(
  q.gasSpeed,
  u.footPerSecond,
)({
  id: 'primarySoundSpeed',
  label: 'Wave speed in the primaries',
  short: 'Wave speed',
  note: 'Common practice, no source: 1700 ft/s, the sound of the hot gas less what the outflow holds it back.',
  initial: 1700,
  hard: [800, 3000],
  slider: [1400, 2000],
});
export const collectorLength = along({
  id: 'collectorLength',
  label: 'Collector length',
  note: 'From where the primaries join to the open end or the pipe behind.',
  initial: 15,
  hard: [1, 200],
  slider: [6, 36],
});
export const collectorDiameter = across({
  id: 'collectorDiameter',
  label: 'Collector diameter',
  note: 'Inside.',
  initial: 3,
  hard: [0.5, 12],
  slider: [2, 4],
});
export const trim = input({
  id: 'trim',
  label: 'The engine runs',
  note: 'Bare as on a dyno, with open headers, or with fan, pumps, alternator and mufflers as in the car.',
  kind: choice([
    { id: 'bare', label: 'Bare' },
    { id: 'street', label: 'Street trim' },
  ]),
  initial: 'bare',
});
export const exhaustBackPressure = figureIn(
  q.backPressure,
  u.psi,
)({
  id: 'exhaustBackPressure',
  label: 'Exhaust back pressure',
  short: 'Back pressure',
  note: 'Behind the collector, wide open, at the engine speed of the first chapter. Common practice, no source: 3 to 4 psi on a street exhaust.',
  initial: 3.6,
  hard: [0, 30],
  slider: [0, 10],
});

export const carburetorFlow = figureIn(
  q.airFlow,
  u.cubicFeetPerMinute,
)({
  id: 'carburetorFlow',
  label: 'Carburetor flow',
  short: 'Carburetor',
  note: 'As rated, all barrels open, at the drop below.',
  initial: 680,
  hard: [5, 10_000],
  slider: [150, 1000],
});
export const carburetorRating = dropped({
  id: 'carburetorRating',
  label: 'Carburetor rated at',
  short: 'Rated at',
  note: 'The pressure drop its flow is stated at: by custom 1.5 inHg for four barrels, 3.0 inHg for one or two.',
  initial: 1.5,
  hard: [0.1, 12],
  slider: [0.5, 3],
});
export const assumedVolumetricEfficiency = input({
  id: 'assumedVolumetricEfficiency',
  label: 'Volumetric efficiency, assumed',
  short: 'Assumed VE',
  note: 'A guess, for what follows here. Common practice, no source: 85 % for a street engine, 95 % for a good one at its peak.',
  kind: scalar(q.wholeShare),
  initial: 0.85,
  hard: [0.1, 1.5],
  slider: [0.6, 1.1],
});
export const runnerSwings = input({
  id: 'runnerSwings',
  label: 'Swings of the runner while shut',
  short: 'Swings',
  note: 'How many the air in the runner makes before the valve opens again: few are strong, many are weak.',
  kind: scalar(q.count),
  initial: 4,
  hard: [1, 12],
  slider: [2, 6],
});

// Practice edges, no source: the reader's to move.
export const carburetorLarge = dropped({
  id: 'carburetorLarge',
  label: 'Carburetor large under',
  short: 'Large under',
  note: 'Common practice, no source: with less drop than this at full demand its signal is weak at low speed.',
  initial: 0.5,
  hard: [0, 12],
  slider: [0.2, 1],
});
export const carburetorSmall = dropped({
  id: 'carburetorSmall',
  label: 'Carburetor small over',
  short: 'Small over',
  note: 'Common practice, no source: a drop over this at full demand costs power.',
  initial: 1.5,
  hard: [0, 12],
  slider: [1, 3],
});
