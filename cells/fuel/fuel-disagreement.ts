import { cell } from '../../src/graph/cell.ts';
import { remark } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { phrase, type Phrase, value } from '../../src/units/phrase.ts';
import { octane, rotation } from '../../src/units/quantity.ts';
import { airTemperature, altitude } from '../air/inputs.ts';
import { stationPressure } from '../air/station-pressure.ts';
import { vaporPressure } from '../air/vapor-pressure.ts';
import { bore } from '../block/inputs.ts';
import { linkage } from '../block/linkage.ts';
import { intakeClosing } from '../cam/intake-closing.ts';
import { clearanceVolume } from '../chamber/clearance-volume.ts';
import { chamberStyle, equivalenceRatio, sparkEntry } from '../output/inputs.ts';
import { octaneError } from '../spark/octane-error.ts';
import { octaneMargin } from '../spark/octane-margin.ts';
import { octaneRequirement } from '../spark/octane-requirement.ts';
import { octaneWorstSpeed } from '../spark/octane-worst-speed.ts';
import { whyWords } from './driver-words.ts';
import { fuelVerdict } from './fuel-verdict.ts';
import { altitudeRelief, headMaterial } from './inputs.ts';
import { mainDriver } from './main-driver.ts';
import { octaneDrivers } from './octane-drivers.ts';
import { practiceOctane } from './practice-octane.ts';

export const fuelDisagreement = cell({
  id: 'fuelDisagreement',
  label: 'Where practice and the gas dynamics differ',
  note: 'Practice reads the ratio alone; the gas dynamics also knows spark, heat, air, mixture and how the cylinder fills.',
  kind: remark,
  from: {
    fuelVerdict,
    practiceOctane,
    octaneMargin,
    octaneRequirement,
    octaneWorstSpeed,
    octaneDrivers,
    sparkEntry,
    chamberStyle,
    airTemperature,
    stationPressure,
    vaporPressure,
    equivalenceRatio,
    intakeClosing,
    headMaterial,
    altitude,
    altitudeRelief,
    linkage,
    bore,
    clearanceVolume,
  },
  mayLack: ['octaneMargin', 'octaneRequirement', 'octaneWorstSpeed', 'octaneDrivers'], // until they are worked out
  source: common('the band of practice, and the requirement by Douaud and Eyzat'),
  formula:
    'said where fuelVerdict is comfortable and octaneMargin under 0, or beyond and over 0: octaneRequirement at octaneWorstSpeed against practiceOctane, and which of octaneDrivers it comes from',
  compute: (now): Phrase | null => {
    const { fuelVerdict: practice, octaneMargin: margin, octaneRequirement: asked, octaneWorstSpeed: speed } = now;
    if (margin === undefined || asked === undefined || speed === undefined) return null;
    const asksMore = practice.word === 'comfortable' && margin < 0;
    if (!asksMore && !(practice.word === 'beyond' && margin > 0)) return null;
    const apart = Math.abs(asked - now.practiceOctane);
    const finds = asksMore
      ? 'comfortable; the gas dynamics asks for'
      : 'beyond the fuel; the gas dynamics asks for only';
    const level = Math.abs(margin) < 0.05; // shown as nothing
    const by = level
      ? ['just what the fuel has']
      : phrase`${value(Math.abs(margin), octane)} ${asksMore ? 'more' : 'less'} than the fuel has`;
    const drivers = now.octaneDrivers;
    const why: Phrase = drivers
      ? phrase`${whyWords(apart, mainDriver(drivers, { ...now, apart, asksMore }), {
          ...now,
          spark: drivers.spark,
          usualSpark: drivers.usualSpark,
          isHeld: now.sparkEntry === 'fuel',
          isPentRoof: now.chamberStyle === 'pentroof',
          moisture: (0.621945 * now.vaporPressure) / (now.stationPressure - now.vaporPressure), // ASHRAE 2017, eq. 20
        })} `
      : [];
    return phrase`Practice finds this ${finds} ${value(asked, octane)} octane at ${value(speed, rotation)}, ${by}. ${why}The gas dynamics is good for ${value(octaneError, octane)} numbers either way: take the worse of the two, and listen.`;
  },
});
