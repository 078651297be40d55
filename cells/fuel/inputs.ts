import { input } from '../../src/graph/cell.ts';
import { choice, scalar } from '../../src/graph/kind.ts';
import { altitude, octane, ratioPerAltitude, wholeShare } from '../../src/units/quantity.ts';
import { foot, perThreeThousandFeet, si } from '../../src/units/unit.ts';

export const fuelGrade = input({
  id: 'fuelGrade',
  label: 'Fuel grade',
  short: 'Fuel',
  note: 'The number on the pump: the mean of research and motor octane (AKI), of the blend as it is sold.',
  kind: choice([
    { id: '85', label: '85' },
    { id: '87', label: '87' },
    { id: '89', label: '89' },
    { id: '91', label: '91' },
    { id: '93', label: '93' },
    { id: 'flex', label: 'Flex' },
    { id: 'mixed', label: 'Mixed' },
  ]),
  initial: '91',
});

export const ethanolShare = input({
  id: 'ethanolShare',
  label: 'Ethanol in it, by volume',
  short: 'Ethanol',
  note: 'The posted octane already counts it; it moves the mixture, the heat and the cooling. Flex fuel holds 51 to 83 % by season: test it.',
  kind: scalar(wholeShare),
  initial: 0.1,
  hard: [0, 1],
  slider: [0, 0.85],
});

export const headMaterial = input({
  id: 'headMaterial',
  label: 'Heads',
  note: 'Aluminum carries heat away from the chamber, so it bears a little more.',
  kind: choice([
    { id: 'iron', label: 'Iron' },
    { id: 'aluminum', label: 'Aluminum' },
  ]),
  initial: 'iron',
});

export const altitudeRelief = input({
  id: 'altitudeRelief',
  label: 'Relief for altitude, of ratio',
  short: 'Relief',
  note: 'Thin air fills the cylinder less, so the band moves up. Common practice: half of what the pressure alone would give.',
  kind: scalar(ratioPerAltitude),
  initial: si(0.2, perThreeThousandFeet),
  hard: [0, si(2, perThreeThousandFeet)],
  slider: [0, si(0.5, perThreeThousandFeet)],
});

export const lowestAltitude = input({
  id: 'lowestAltitude',
  label: 'Lowest altitude it will see',
  short: 'Lowest',
  note: 'Roads go down: the second verdict is for there.',
  kind: scalar(altitude),
  initial: 0,
  hard: [si(-2000, foot), si(30_000, foot)],
  slider: [0, si(10_000, foot)],
});

export const baseRon = input({
  id: 'baseRon',
  label: 'Base fuel, research octane',
  short: 'Base RON',
  note: 'Of the gasoline you start from, as it is sold.',
  kind: scalar(octane),
  initial: 95,
  hard: [0, 130],
  slider: [85, 102],
});

export const baseMon = input({
  id: 'baseMon',
  label: 'Base fuel, motor octane',
  short: 'Base MON',
  note: 'Of the gasoline you start from, as it is sold.',
  kind: scalar(octane),
  initial: 85,
  hard: [0, 130],
  slider: [78, 92],
});

export const baseEthanol = input({
  id: 'baseEthanol',
  label: 'Ethanol already in the base',
  note: 'Its octane already counts it.',
  kind: scalar(wholeShare),
  initial: 0.1,
  hard: [0, 1],
  slider: [0, 0.2],
});

export const ethanolAdded = input({
  id: 'ethanolAdded',
  label: 'Ethanol added, of the whole',
  short: 'Ethanol added',
  note: 'Share of the finished mix, by volume. Lines, pumps, seals and mixture must suit it.',
  kind: scalar(wholeShare),
  initial: 0.1,
  hard: [0, 1],
  slider: [0, 0.85],
});

export const blendInteraction = input({
  id: 'blendInteraction',
  label: 'Blending bonus at its most, ×4',
  short: 'Bonus',
  note: 'Octane numbers by which the mix beats the straight line, as Z in Z x (1 − x); 0 leaves it out.',
  kind: scalar(octane),
  initial: 0,
  hard: [-50, 50],
  slider: [0, 30],
});
