import { phrase, type Phrase, value } from '../../src/units/phrase.ts';
import * as q from '../../src/units/quantity.ts';
import type { Driver } from './main-driver.ts';
import { usual } from './ordinary-engine.ts';

/** What an engine has in place of the usual, SI. */
export interface Unusual {
  /** At the speed in question, rad before top; and what the usual curve has there. */
  readonly spark: number;
  readonly usualSpark: number;
  readonly isHeld: boolean;
  readonly isPentRoof: boolean;
  readonly airTemperature: number;
  readonly stationPressure: number;
  readonly equivalenceRatio: number;
  /** kg of vapor to one of dry air */
  readonly moisture: number;
  readonly intakeClosing: number;
}

const { angle, ratio, share, airPressure, temperature, octane } = q;

/**
 * A sentence on where the octane numbers between practice and gas dynamics come from.
 *
 * @param apart how many there are
 * @param driver the one thing that most of them come from; null where there is none
 */
export function whyWords(apart: number, driver: Driver | null, e: Unusual): Phrase {
  if (driver === null) return ['No single figure explains it.'];
  const all = value(apart, octane);
  const come =
    driver.numbers < apart
      ? phrase`Of the ${all} numbers between them, ${value(driver.numbers, octane)} come from`
      : phrase`The ${all} numbers between them come from`;
  return phrase`${come} ${driverWords(driver.name, e)}.`;
}

function driverWords(name: Driver['name'], e: Unusual): Phrase {
  switch (name) {
    case 'spark':
      return phrase`a spark of ${value(e.spark, angle)} there${e.isHeld ? ', held to this fuel' : ''}: a total of ${value(e.isPentRoof ? usual.pentRoofSpark : usual.spark, angle)} would give ${value(e.usualSpark, angle)}`;
    case 'heat':
      return phrase`air of ${value(e.airTemperature, temperature)}, where ${value(usual.temperature, temperature)} is usual`;
    case 'pressure':
      return phrase`air of ${value(e.stationPressure, airPressure)}: practice allows for height by half of what the pressure does`;
    case 'mixture':
      return phrase`a mixture of ${value(e.equivalenceRatio, ratio)}, where ${value(usual.mixture, ratio)} is usual`;
    case 'moisture':
      return phrase`${value(e.moisture, share)} of water in the air, where ${value(usual.moisture, share)} is usual`;
    case 'exhaust':
      return ['an exhaust that holds burnt gas back'];
    case 'cam':
      return phrase`the intake closing at ${value(e.intakeClosing, angle)}, where ${value(usual.closing, angle)} is usual${e.intakeClosing > usual.closing ? ': waves fill what the ratio counts as lost' : ''}`;
    case 'heads':
      return ['aluminum heads, which practice credits and the gas dynamics does not know'];
  }
}
