import { input, type Range } from '../../src/graph/cell.ts';
import { choice, optional, type Rows, scalar, table } from '../../src/graph/kind.ts';
import { angle, fineRatio, force, gap, length, mass, stiffness } from '../../src/units/quantity.ts';
import { degree, gram, inch, poundForce, poundPerInch, si } from '../../src/units/unit.ts';

const inches = (low: number, high: number): Range => [si(low, inch), si(high, inch)];
const degrees = (low: number, high: number): Range => [si(low, degree), si(high, degree)];

interface Figure {
  readonly id: string;
  readonly label: string;
  readonly short?: string;
  readonly note: string;
  readonly initial: number;
  readonly hard: readonly [number, number];
  readonly slider: readonly [number, number];
}
const thin = ({ initial, hard, slider, ...words }: Figure) =>
  input({ ...words, kind: scalar(gap), initial: si(initial, inch), hard: inches(...hard), slider: inches(...slider) });
const wide = ({ initial, hard, slider, ...words }: Figure) =>
  input({
    ...words,
    kind: scalar(length),
    initial: si(initial, inch),
    hard: inches(...hard),
    slider: inches(...slider),
  });

export const intakeLobeLift = thin({
  id: 'intakeLobeLift',
  label: 'Intake lobe lift',
  note: 'At the tappet, before any rocker.',
  initial: 0.31,
  hard: [0.06, 1],
  slider: [0.2, 0.5],
});
export const exhaustLobeLift = thin({
  id: 'exhaustLobeLift',
  label: 'Exhaust lobe lift',
  note: 'At the tappet, before any rocker.',
  initial: 0.315,
  hard: [0.06, 1],
  slider: [0.2, 0.5],
});

const at200 = (id: string, label: string) =>
  input({
    id,
    label,
    note: 'A third point from the card frees the shape of the lobe; leave it out if the card has none.',
    kind: optional(scalar(angle)),
    initial: null,
    hard: degrees(1, 500),
    slider: degrees(80, 200),
  });
export const intakeDuration200 = at200('intakeDuration200', 'Intake duration at 0.200 in');
export const exhaustDuration200 = at200('exhaustDuration200', 'Exhaust duration at 0.200 in');

export const lobeSource = input({
  id: 'lobeSource',
  label: 'The lobes come',
  note: 'From the card, symmetric, or as lift was read degree by degree, with flanks as different as they like.',
  kind: choice([
    { id: 'card', label: 'From the card' },
    { id: 'table', label: 'From a table of lift' },
  ]),
  initial: 'card',
});
export const lobeTableAngles = input({
  id: 'lobeTableAngles',
  label: 'Angles of the tables',
  note: 'Printed tables are mostly in degrees of the cam; a wheel on the crank turns twice as far.',
  kind: choice([
    { id: 'cam', label: 'Cam degrees' },
    { id: 'crank', label: 'Crank degrees' },
  ]),
  initial: 'cam',
});
const columns = [
  { id: 'angle', label: 'Angle', quantity: angle },
  { id: 'lift', label: 'Lift', quantity: gap },
] as const;
const ofLobe = (id: string, label: string) =>
  input({
    id,
    label,
    note: 'Lift at the tappet against a growing angle, from zero over the peak to zero; the zero of the angles may be anywhere.',
    kind: table(columns),
    initial: [] as Rows,
  });
export const intakeLobeTable = ofLobe('intakeLobeTable', 'Intake lobe table');
export const exhaustLobeTable = ofLobe('exhaustLobeTable', 'Exhaust lobe table');

export const rockerRatio = input({
  id: 'rockerRatio',
  label: 'Rocker ratio',
  note: 'Valve lift over tappet lift, as stated or as measured with two dial indicators.',
  kind: scalar(fineRatio),
  initial: 1.52,
  hard: [0.5, 3],
  slider: [1.4, 1.8],
});
export const intakeLash = thin({
  id: 'intakeLash',
  label: 'Intake lash, hot',
  note: 'Gap at the valve, solid tappets only; hydraulic tappets take it up.',
  initial: 0,
  hard: [0, 0.1],
  slider: [0, 0.03],
});
export const exhaustLash = thin({
  id: 'exhaustLash',
  label: 'Exhaust lash, hot',
  note: 'Gap at the valve, solid tappets only; hydraulic tappets take it up.',
  initial: 0,
  hard: [0, 0.1],
  slider: [0, 0.03],
});

export const intakeValveDiameter = wide({
  id: 'intakeValveDiameter',
  label: 'Intake valve diameter',
  note: 'Of the head.',
  initial: 2,
  hard: [0.3, 8],
  slider: [1.4, 2.3],
});
export const exhaustValveDiameter = wide({
  id: 'exhaustValveDiameter',
  label: 'Exhaust valve diameter',
  note: 'Of the head.',
  initial: 1.58,
  hard: [0.3, 8],
  slider: [1.2, 1.9],
});

const leaning = (id: string, label: string) =>
  input({
    id,
    label,
    note: 'Between the valve’s axis and the bore’s.',
    kind: scalar(angle),
    initial: si(20, degree),
    hard: degrees(0, 60),
    slider: degrees(0, 30),
  });
export const intakeValveAngle = leaning('intakeValveAngle', 'Intake valve angle, from the bore');
export const exhaustValveAngle = leaning('exhaustValveAngle', 'Exhaust valve angle, from the bore');

export const crownAtValve = input({
  id: 'crownAtValve',
  label: 'Under the valves the crown is',
  short: 'Crown',
  note: 'A relief cut parallel to the valve’s face, or the flat of the crown.',
  kind: choice([
    { id: 'relief', label: 'Relieved' },
    { id: 'flat', label: 'Flat' },
  ]),
  initial: 'relief',
});
export const intakeReliefDepth = thin({
  id: 'intakeReliefDepth',
  label: 'Intake relief depth',
  note: 'Along the bore, from the flat of the crown.',
  initial: 0.09,
  hard: [0, 1],
  slider: [0, 0.3],
});
export const exhaustReliefDepth = thin({
  id: 'exhaustReliefDepth',
  label: 'Exhaust relief depth',
  note: 'Along the bore, from the flat of the crown.',
  initial: 0.09,
  hard: [0, 1],
  slider: [0, 0.3],
});
export const intakeSeatDepth = thin({
  id: 'intakeSeatDepth',
  label: 'Intake valve below the head face',
  short: 'Intake depth',
  note: 'From the unmilled face, along the bore, to the lowest edge of the closed valve; positive when it stands back.',
  initial: 0.11,
  hard: [-1, 2],
  slider: [0, 0.3],
});
export const exhaustSeatDepth = thin({
  id: 'exhaustSeatDepth',
  label: 'Exhaust valve below the head face',
  short: 'Exhaust depth',
  note: 'From the unmilled face, along the bore, to the lowest edge of the closed valve; positive when it stands back.',
  initial: 0.12,
  hard: [-1, 2],
  slider: [0, 0.3],
});
export const reliefCut = thin({
  id: 'reliefCut',
  label: 'Cut all reliefs deeper by',
  short: 'Cut',
  note: 'It gives room and takes compression: the volume goes into the clearance volume.',
  initial: 0,
  hard: [0, 0.5],
  slider: [0, 0.1],
});
export const intakeReliefDiameter = wide({
  id: 'intakeReliefDiameter',
  label: 'Intake relief diameter',
  note: 'As cut into the crown.',
  initial: 2.16,
  hard: [0.3, 9],
  slider: [1.5, 2.5],
});
export const exhaustReliefDiameter = wide({
  id: 'exhaustReliefDiameter',
  label: 'Exhaust relief diameter',
  note: 'As cut into the crown.',
  initial: 1.74,
  hard: [0.3, 9],
  slider: [1.3, 2.1],
});
export const crownThickness = thin({
  id: 'crownThickness',
  label: 'Crown thickness under the reliefs',
  short: 'Crown left',
  note: 'Measured where the deepest relief is, before any further cut.',
  initial: 0.2,
  hard: [0.01, 2],
  slider: [0.1, 0.4],
});

// Practice minimums, no source: the reader's to move.
export const intakeMinimum = thin({
  id: 'intakeMinimum',
  label: 'Least intake clearance',
  note: 'Common practice, no source: more with aluminum rods.',
  initial: 0.08,
  hard: [0, 0.5],
  slider: [0.04, 0.15],
});
export const exhaustMinimum = thin({
  id: 'exhaustMinimum',
  label: 'Least exhaust clearance',
  note: 'Common practice, no source: the piston chases the exhaust valve, so it needs more.',
  initial: 0.1,
  hard: [0, 0.5],
  slider: [0.04, 0.15],
});
export const clearanceAluminum = thin({
  id: 'clearanceAluminum',
  label: 'More with aluminum rods',
  note: 'Added to both minimums. Common practice, no source.',
  initial: 0.03,
  hard: [0, 0.5],
  slider: [0, 0.06],
});
export const crownMinimum = thin({
  id: 'crownMinimum',
  label: 'Least crown under a relief',
  note: 'Common practice, no source: ask the piston’s maker.',
  initial: 0.15,
  hard: [0, 1],
  slider: [0.08, 0.25],
});
export const radialMinimum = thin({
  id: 'radialMinimum',
  label: 'Least radial clearance',
  note: 'Valve head to the wall of its relief. Common practice, no source.',
  initial: 0.05,
  hard: [0, 0.5],
  slider: [0.02, 0.1],
});

export const springSeatForce = input({
  id: 'springSeatForce',
  label: 'Spring force on the seat',
  short: 'Seat force',
  note: 'At installed height.',
  kind: scalar(force),
  initial: si(120, poundForce),
  hard: [0, si(2000, poundForce)],
  slider: [si(60, poundForce), si(250, poundForce)],
});
export const springRate = input({
  id: 'springRate',
  label: 'Spring rate',
  note: 'Of nested springs, the sum.',
  kind: scalar(stiffness),
  initial: si(370, poundPerInch),
  hard: [0, si(5000, poundPerInch)],
  slider: [si(150, poundPerInch), si(700, poundPerInch)],
});
export const valveSideMass = input({
  id: 'valveSideMass',
  label: 'Mass moving with the intake valve',
  short: 'Valve mass',
  note: 'Valve, retainer, locks, a third of the spring and the rocker’s share, on a kitchen scale.',
  kind: scalar(mass),
  initial: si(255, gram),
  hard: [si(1, gram), si(5000, gram)],
  slider: [si(100, gram), si(400, gram)],
});
export const springInstalledHeight = wide({
  id: 'springInstalledHeight',
  label: 'Spring installed height',
  note: 'Seat to retainer, valve closed.',
  initial: 1.8,
  hard: [0.2, 6],
  slider: [1.4, 2.2],
});
export const springSolidHeight = wide({
  id: 'springSolidHeight',
  label: 'Spring solid height',
  note: 'With all coils touching.',
  initial: 1.15,
  hard: [0.1, 6],
  slider: [0.9, 1.5],
});
export const retainerToSeal = wide({
  id: 'retainerToSeal',
  label: 'Retainer to seal, valve closed',
  note: 'Measured with a light spring.',
  initial: 0.56,
  hard: [0, 4],
  slider: [0.4, 0.8],
});
export const readAtLift = thin({
  id: 'readAtLift',
  label: 'Read the lobes at, tappet lift',
  short: 'Read at',
  note: 'Durations and events below are read at this lift.',
  initial: 0.1,
  hard: [0.0001, 1],
  slider: [0.004, 0.3],
});
