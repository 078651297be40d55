import { input } from '../../src/graph/cell.ts';
import { choice, scalar } from '../../src/graph/kind.ts';
import { count, gap, length, rotation } from '../../src/units/quantity.ts';
import { inch, revolutionsPerMinute, si } from '../../src/units/unit.ts';

const inches = (low: number, high: number) => [si(low, inch), si(high, inch)] as const;

export const cylinders = input({
  id: 'cylinders',
  label: 'Cylinders',
  note: 'How many cylinders share the crankshaft.',
  kind: scalar(count),
  initial: 8,
  hard: [1, 24],
  slider: [1, 12],
});

export const bore = input({
  id: 'bore',
  label: 'Bore',
  note: 'Cylinder diameter as finished, after honing.',
  kind: scalar(length),
  initial: si(4.07, inch),
  hard: inches(0.5, 20),
  slider: inches(3, 5),
});

export const stroke = input({
  id: 'stroke',
  label: 'Stroke',
  note: 'Twice the crank throw.',
  kind: scalar(length),
  initial: si(3.54, inch),
  hard: inches(0.5, 20),
  slider: inches(2.5, 4.75),
});

export const rod = input({
  id: 'rod',
  label: 'Rod length, center to center',
  short: 'Rod',
  note: 'From the middle of the big end to the middle of the pin.',
  kind: scalar(length),
  initial: si(5.85, inch),
  hard: inches(0.5, 60),
  slider: inches(4.5, 7),
});

export const pinOffset = input({
  id: 'pinOffset',
  label: 'Pin offset, toward the major thrust face',
  short: 'Pin offset',
  note: 'How far the piston pin stands off the middle of the bore; it moves the dead centers a little.',
  kind: scalar(gap),
  initial: 0,
  hard: inches(-1, 1),
  slider: inches(-0.1, 0.1),
});

export const rodMaterial = input({
  id: 'rodMaterial',
  label: 'Rods',
  note: 'Aluminum rods grow and stretch more than steel ones, so the piston needs more room at the top.',
  kind: choice([
    { id: 'steel', label: 'Steel' },
    { id: 'aluminum', label: 'Aluminum' },
  ]),
  initial: 'steel',
});

export const engineSpeed = input({
  id: 'engineSpeed',
  label: 'Engine speed',
  note: 'The highest speed it will be run at; piston speeds are for this one.',
  kind: scalar(rotation),
  initial: si(5500, revolutionsPerMinute),
  hard: [si(1, revolutionsPerMinute), si(30_000, revolutionsPerMinute)],
  slider: [si(1000, revolutionsPerMinute), si(9000, revolutionsPerMinute)],
});
