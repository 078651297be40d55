import fc from 'fast-check';
import Qty from 'js-quantities';
import { describe, expect, it } from 'vitest';
import { sameDimension } from '../../src/units/dimension.ts';
import { unitNamed, unitsBySpelling } from '../../src/units/spellings.ts';
import * as units from '../../src/units/unit.ts';
import { differenceFromUnit, differenceToUnit, fromUnit, si, tidy, toUnit, type Unit } from '../../src/units/unit.ts';
import { holdAgainst, numbered } from '../sources/printed.ts';
import rows from '../sources/units.json';

const u = units;
const all = Object.entries(units).filter((entry): entry is [string, Unit] => typeof entry[1] === 'object');
const into = (from: Unit, to: Unit) => (): number => toUnit(fromUnit(1, from), to);
const cubicFoot = fromUnit(1, u.foot) ** 3;
const mercury = (given: (name: string) => number): number => toUnit(given('p_Pa'), u.inchOfMercury);

describe('the factors of NIST SP 811', () => {
  // Columns of a liquid at 60 °F: only the conventional ones are known here, as barometers and flow benches use them.
  const unknown: Readonly<Record<string, { readonly unit: Unit; readonly off: number }>> = {
    'UNI-09': { unit: u.inchOfMercury, off: 0.0029 }, // warm mercury is 0.28 % lighter
    'UNI-11': { unit: u.inchOfWater, off: 0.0011 }, // warm water 0.1 %
  };

  holdAgainst(
    rows.filter((row) => !(row.id in unknown)),
    numbered('UNI', 1, 19).filter((id) => !(id in unknown)),
    {
      inch: into(u.inch, u.millimeter),
      'pound-mass': () => fromUnit(1, u.poundPerCubicFoot) * cubicFoot,
      'pound-force': () => fromUnit(1, u.psi) * fromUnit(1, u.squareInch),
      'horsepower 550 ft lbf/s': () => fromUnit(1, u.horsepower),
      'metric horsepower 75 kgf m/s': () => fromUnit(1, u.metricHorsepower),
      psi: into(u.psi, u.pascal),
      'inch of mercury, conventional': into(u.inchOfMercury, u.pascal),
      'inch of mercury at 32 F': into(u.inchOfMercury, u.pascal), // the same within the printed digits
      'inch of water, conventional': into(u.inchOfWater, u.pascal),
      'cubic foot per minute': () => fromUnit(1, u.cubicFeetPerMinute),
      'cubic inch': into(u.cubicInch, u.cubicCentimeter),
      'pound-force foot': into(u.poundFoot, u.newtonMeter),
      'US gallon': into(u.gallon, u.liter),
      'degree F to K': (given) => toUnit(fromUnit(given('T_F'), u.fahrenheit), u.kelvin),
      'standard atmosphere in conventional inHg': mercury,
      '99 kPa in conventional inHg': mercury,
    },
  );

  it('leave two rows without a unit here, which lie as far off as their liquid is lighter', () => {
    const left = rows.filter((row) => row.id in unknown);
    expect(left).toHaveLength(Object.keys(unknown).length);
    for (const { id, expected } of left) {
      const share = fromUnit(1, unknown[id]!.unit) / expected - 1;
      expect(share).toBeGreaterThan(0);
      expect(share).toBeLessThan(unknown[id]!.off);
    }
  });
});

describe('js-quantities judges', () => {
  // What it calls our units. Its factors are printed with few digits for some: the third figure is the relative
  // difference that leaves.
  const exact = 1e-14;
  const asked: Readonly<Record<string, readonly [text: string, within: number]>> = {
    one: ['1', exact],
    percent: ['1 %', exact],
    meter: ['1 m', exact],
    centimeter: ['1 cm', exact],
    millimeter: ['1 mm', exact],
    inch: ['1 in', exact],
    foot: ['1 ft', exact],
    squareMillimeter: ['1 mm2', exact],
    squareCentimeter: ['1 cm2', exact],
    squareInch: ['1 in2', exact],
    cubicCentimeter: ['1 cm3', exact],
    liter: ['1 l', exact],
    cubicInch: ['1 in3', exact],
    gallon: ['1 gal', 1e-8],
    degree: ['1 deg', exact],
    radian: ['1 rad', exact],
    revolutionsPerMinute: ['1 rpm', exact],
    meterPerSecond: ['1 m/s', exact],
    footPerMinute: ['1 ft/min', exact],
    footPerSecond: ['1 ft/s', exact],
    meterPerSecondSquared: ['1 m/s2', exact],
    gravity: ['1 gee', exact],
    newton: ['1 N', exact],
    poundForce: ['1 lbf', 1e-6],
    newtonPerMillimeter: ['1 N/mm', exact],
    poundPerInch: ['1 lbf/in', 1e-6],
    gram: ['1 g', exact],
    millimeterDegree: ['1 mm*deg', exact],
    inchDegree: ['1 in*deg', exact],
    millimeterPerDegree: ['1 mm/deg', exact],
    inchPerDegree: ['1 in/deg', exact],
    millimeterPerDegreeSquared: ['1 mm/deg2', exact],
    inchPerDegreeSquared: ['1 in/deg2', exact],
    pascal: ['1 Pa', exact],
    kilopascal: ['1 kPa', exact],
    hectopascal: ['1 hPa', exact],
    bar: ['1 bar', exact],
    psi: ['1 psi', 1e-6],
    psiGauge: ['1 psi', 1e-6],
    psiAbsolute: ['1 psi', 1e-6],
    inchOfMercury: ['1 inHg', 1e-6],
    millimeterOfMercury: ['1 mmHg', 1e-6],
    inchOfWater: ['1 inH2O', 3e-5], // it has 249.082 Pa where the conventional inch has 249.089
    kelvin: ['1 tempK', exact],
    celsius: ['1 tempC', exact],
    fahrenheit: ['1 tempF', exact],
    kilogramPerCubicMeter: ['1 kg/m3', exact],
    poundPerCubicFoot: ['1 lb/ft3', exact],
    newtonMeter: ['1 N*m', exact],
    poundFoot: ['1 ft*lbf', 1e-6],
    kilowatt: ['1 kW', exact],
    horsepower: ['1 hp', 1e-8],
    metricHorsepower: ['75 kg*gee*m/s', exact], // its PS is another unit
    litersPerSecond: ['1 l/s', exact],
    cubicFeetPerMinute: ['1 ft3/min', exact],
    horsepowerPerCubicInch: ['1 hp/in3', 1e-8],
    kilowattPerLiter: ['1 kW/l', exact],
    poundPerHour: ['1 lb/h', exact],
    kilogramPerHour: ['1 kg/h', exact],
    poundPerHorsepowerHour: ['1 lb/hp*h', 1e-8],
    gramPerKilowattHour: ['1 g/kWh', exact],
    megajoulePerKilogram: ['1 MJ/kg', exact],
    kilojoulePerKilogram: ['1 kJ/kg', exact],
    btuPerPound: ['1 BTU/lb', 1e-6],
    perThreeThousandFeet: ['0.001 1/ft', 1], // it has no such figure: judged below
    perKilometer: ['1 1/km', exact],
  };

  it('every unit there is', () => {
    expect(Object.keys(asked).toSorted()).toEqual(all.map(([name]) => name).toSorted());
  });

  it.each(all.filter(([name]) => name !== 'perThreeThousandFeet'))('%s', (name, unit) => {
    const [text, within] = asked[name]!;
    const theirs = Qty(text).baseScalar;
    expect(Math.abs(fromUnit(1, unit) / theirs - 1)).toBeLessThanOrEqual(within);
  });

  it('a rate per 3000 ft', () => {
    expect(3000 * fromUnit(1, u.perThreeThousandFeet)).toBeCloseTo(Qty('1 1/ft').baseScalar, 14);
  });

  it('which units can be added, every pair of them', () => {
    const refused: string[] = [];
    for (const [one, a] of all)
      for (const [other, b] of all) {
        const theirs = Qty(asked[one]![0]).isCompatible(Qty(asked[other]![0]));
        if (sameDimension(a.dimension, b.dimension) !== theirs) refused.push(`${one} and ${other}`);
      }
    expect(refused).toEqual([]);
  });

  it.each([-40, 0, 32, 59, 212, 1000])('%s °F and °C', (degrees) => {
    expect(fromUnit(degrees, u.fahrenheit)).toBeCloseTo(Qty(degrees, 'tempF').to('tempK').scalar, 10);
    expect(fromUnit(degrees, u.celsius)).toBeCloseTo(Qty(degrees, 'tempC').to('tempK').scalar, 10);
    expect(toUnit(fromUnit(degrees, u.fahrenheit), u.celsius)).toBeCloseTo((degrees - 32) / 1.8, 10);
  });
});

describe('a temperature difference', () => {
  it('knows no zero point', () => {
    expect(differenceFromUnit(10, u.fahrenheit)).toBeCloseTo(Qty('10 degF').to('degK').scalar, 13);
    expect(differenceFromUnit(10, u.celsius)).toBe(10);
    expect(differenceToUnit(5, u.fahrenheit)).toBeCloseTo(9, 13);
  });

  it('is what lies between two temperatures', () => {
    for (const unit of [u.fahrenheit, u.celsius, u.kelvin])
      expect(fromUnit(95, unit) - fromUnit(60, unit)).toBeCloseTo(differenceFromUnit(35, unit), 10);
  });

  it('of every other unit is the figure itself', () => {
    for (const [name, unit] of all.filter(([, { offset }]) => offset === 0)) {
      expect(differenceFromUnit(3, unit), name).toBe(fromUnit(3, unit));
      expect(differenceToUnit(3, unit), name).toBe(toUnit(3, unit));
    }
  });

  it('is the only thing that sets them apart: no other unit has a zero of its own', () => {
    expect(all.filter(([, { offset }]) => offset !== 0).map(([name]) => name)).toEqual(['celsius', 'fahrenheit']);
  });
});

describe('there and back', () => {
  const some = fc
    .tuple(fc.double({ min: 1, max: 10, noNaN: true }), fc.integer({ min: -12, max: 9 }), fc.constantFrom(1, -1))
    .map(([mantissa, exponent, sign]) => sign * mantissa * 10 ** exponent);

  it.each(all)('%s keeps twelve digits', (_, unit) => {
    const property = fc.property(some, (x) => {
      const room = 1e-12 * Math.max(Math.abs(x), Math.abs(unit.offset / unit.factor));
      expect(Math.abs(toUnit(fromUnit(x, unit), unit) - x)).toBeLessThanOrEqual(room);
      expect(Math.abs(differenceToUnit(differenceFromUnit(x, unit), unit) - x)).toBeLessThanOrEqual(
        1e-12 * Math.abs(x),
      );
    });
    fc.assert(property, { seed: 811, numRuns: 100 });
  });

  it('a typed figure has no more digits in SI than it deserves', () => {
    expect(si(4.07, u.inch)).toBe(0.103378);
    expect(si(70, u.fahrenheit)).toBe(294.261111111111);
    expect(tidy(0.1 + 0.2)).toBe(0.3);
    expect(tidy(-0)).toBe(0);
    const property = fc.property(some, (x) => {
      expect(tidy(tidy(x))).toBe(tidy(x));
      expect(Math.abs(tidy(x) - x)).toBeLessThanOrEqual(5.01e-15 * Math.abs(x));
    });
    fc.assert(property, { seed: 1, numRuns: 1000 });
  });
});

describe('the spellings of units', () => {
  const written = all.flatMap(([name, unit]) => [unit.symbol, ...unit.spellings].map((s) => [s, name, unit] as const));

  it('name one unit each', () => {
    const seen = new Map<string, string>();
    for (const [spelling, name] of written) {
      expect(seen.get(spelling), `“${spelling}” of ${name}`).toBeUndefined();
      seen.set(spelling, name);
    }
  });

  it('all lead to their unit, and none but the plain figure has no spelling', () => {
    for (const [spelling, name, unit] of written) {
      if (spelling === '') expect(name).toBe('one');
      else expect(unitNamed(spelling), spelling).toBe(unit);
    }
    expect(unitsBySpelling.has('')).toBe(false);
    expect(unitsBySpelling.size).toBe(written.length - 1);
  });

  it('mean the same in capitals and small letters, or are told apart by an exact match', () => {
    for (const [spelling, , unit] of written.filter(([s]) => s !== ''))
      for (const other of [spelling.toUpperCase(), spelling.toLowerCase()]) {
        const found = unitNamed(other);
        expect(found, other).toBe(unitsBySpelling.get(other) ?? unit);
        expect(sameDimension(found!.dimension, unit.dimension), `${spelling} and ${other}`).toBe(true);
        expect(found!.factor, `${spelling} and ${other}`).toBe(unit.factor);
      }
  });

  it('have no spaces around them, and are not taken for figures or sums', () => {
    for (const [spelling] of written) {
      expect(spelling).toBe(spelling.trim());
      expect(spelling).not.toMatch(/^[.,+\-*^()]|^\d+$/);
    }
  });

  it('leave what is no unit alone', () => {
    for (const text of ['', 'mmm', 'inn', 'constructor', 'toString', '°', ' '].filter((t) => t !== '°'))
      expect(unitNamed(text), text).toBeUndefined();
  });
});
