import { input } from '../../src/graph/cell.ts';
import { optional, scalar } from '../../src/graph/kind.ts';
import { chamberVolume as volume, faceArea, gap, length } from '../../src/units/quantity.ts';
import { cubicCentimeter, inch, si, squareInch } from '../../src/units/unit.ts';

const inches = (low: number, high: number) => [si(low, inch), si(high, inch)] as const;
const cubic = (low: number, high: number) => [si(low, cubicCentimeter), si(high, cubicCentimeter)] as const;

export const chamberVolume = input({
  id: 'chamberVolume',
  label: 'Chamber volume',
  short: 'Chamber',
  note: 'The pocket in the head, valves and plug in, filled from a burette; before the milling entered below.',
  kind: scalar(volume),
  initial: si(70, cubicCentimeter),
  hard: cubic(0.1, 5000),
  slider: cubic(40, 100),
});

export const milling = input({
  id: 'milling',
  label: 'Milled off the head',
  short: 'Milling',
  note: 'It also lowers the valves toward the pistons, shortens the pushrods’ room, shifts the manifold’s faces, and retards a belt- or chain-driven overhead cam.',
  kind: scalar(gap),
  initial: 0,
  hard: inches(0, 1),
  slider: inches(0, 0.12),
});

export const chamberDeckArea = input({
  id: 'chamberDeckArea',
  label: 'Chamber’s area at the head face',
  short: 'Chamber area',
  note: 'The outline of the chamber where it meets the gasket; it turns milling into volume.',
  kind: scalar(faceArea),
  initial: si(9.4, squareInch),
  hard: [si(0.1, squareInch), si(300, squareInch)],
  slider: [si(5, squareInch), si(14, squareInch)],
});

export const gasketBore = input({
  id: 'gasketBore',
  label: 'Gasket opening',
  note: 'The gasket’s own opening, not the bore.',
  kind: scalar(length),
  initial: si(4.16, inch),
  hard: inches(0.5, 20),
  slider: inches(3, 5),
});

export const gasketThickness = input({
  id: 'gasketThickness',
  label: 'Gasket thickness, compressed',
  short: 'Gasket',
  note: 'As crushed under torqued bolts.',
  kind: scalar(gap),
  initial: si(0.041, inch),
  hard: inches(0, 1),
  slider: inches(0.015, 0.1),
});

export const deckHeight = input({
  id: 'deckHeight',
  label: 'Deck height',
  note: 'Crankshaft center line to the block’s head face.',
  kind: optional(scalar(length)),
  initial: null,
  hard: inches(1, 60),
  slider: inches(7, 11),
});

export const compressionHeight = input({
  id: 'compressionHeight',
  label: 'Compression height',
  note: 'Piston pin center to the flat of the crown.',
  kind: optional(scalar(length)),
  initial: null,
  hard: inches(0.1, 20),
  slider: inches(1, 2),
});

export const crownVolume = input({
  id: 'crownVolume',
  label: 'Piston crown, dish and reliefs add',
  short: 'Crown',
  note: 'Dish and valve reliefs are positive, a dome is negative.',
  kind: scalar(volume),
  initial: si(6, cubicCentimeter),
  hard: cubic(-2000, 2000),
  slider: cubic(-20, 30),
});

export const topLandHeight = input({
  id: 'topLandHeight',
  label: 'Top land height',
  note: 'Edge of the crown to the first ring.',
  kind: scalar(gap),
  initial: si(0.28, inch),
  hard: inches(0, 3),
  slider: inches(0.1, 0.5),
});

export const topLandClearance = input({
  id: 'topLandClearance',
  label: 'Top land clearance, diametral',
  short: 'Land clearance',
  note: 'Bore minus top land diameter, cold; the land is far smaller than the skirt.',
  kind: scalar(gap),
  initial: si(0.024, inch),
  hard: inches(0, 0.4),
  slider: inches(0.01, 0.05),
});

// The four edges of the squish verdict are common practice, no source, and the reader's to move.
export const squishContact = input({
  id: 'squishContact',
  label: 'Squish: contact risk below',
  note: 'With steel rods, hot and at speed, less than this lets the piston touch. Common practice, no source.',
  kind: scalar(gap),
  initial: si(0.035, inch),
  hard: inches(0, 0.5),
  slider: inches(0.02, 0.06),
});

export const squishClose = input({
  id: 'squishClose',
  label: 'Squish: close up to',
  note: 'Close enough to stir the charge well. Common practice, no source.',
  kind: scalar(gap),
  initial: si(0.045, inch),
  hard: inches(0, 0.5),
  slider: inches(0.03, 0.08),
});

export const squishOpen = input({
  id: 'squishOpen',
  label: 'Squish: open up to',
  note: 'Beyond this the band no longer does much. Common practice, no source.',
  kind: scalar(gap),
  initial: si(0.06, inch),
  hard: inches(0, 0.5),
  slider: inches(0.04, 0.1),
});

export const squishAluminum = input({
  id: 'squishAluminum',
  label: 'Squish: more with aluminum rods',
  note: 'Added to all three edges when the rods are aluminum. Common practice, no source.',
  kind: scalar(gap),
  initial: si(0.02, inch),
  hard: inches(0, 0.5),
  slider: inches(0, 0.04),
});
