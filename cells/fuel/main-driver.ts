import { type Linkage, pistonDrop } from '../../src/physics/linkage.ts';
import { cylinderVolume } from '../../src/physics/volumes.ts';
import type { OctaneDrivers } from './octane-drivers.ts';
import { type DriverName, usual } from './ordinary-engine.ts';
import { aluminumCredit, perOctane } from './practice.ts';

/** What is to be explained, SI. */
interface Case {
  /** Octane numbers between the two. */
  readonly apart: number;
  /** The gas dynamics asks for more octane than practice does; else for less. */
  readonly asksMore: boolean;
  readonly headMaterial: string;
  readonly altitude: number;
  readonly altitudeRelief: number;
  readonly linkage: Linkage;
  readonly bore: number;
  readonly clearanceVolume: number;
  readonly intakeClosing: number;
}
export interface Driver {
  readonly name: DriverName | 'heads';
  /** Octane numbers by which both would be nearer each other if it were as usual. */
  readonly numbers: number;
}
const least = 0.5; // octane numbers: less is not worth naming

/**
 * The one thing that, if it were as usual, would bring practice and gas dynamics nearest each other; null where none
 * would by half a number. What practice counts itself (height, closing, heads), it counts again then.
 */
export function mainDriver({ requirement, ordinary }: OctaneDrivers, c: Case): Driver | null {
  const sign = c.asksMore ? 1 : -1;
  const practiceGains: Partial<Record<DriverName, number>> = {
    pressure: (c.altitudeRelief * c.altitude) / perOctane,
    cam: turnedRatio(c) / perOctane,
  };
  const drivers: readonly Driver[] = [
    ...ordinary.map(({ name, requirement: then }) => ({
      name,
      numbers: sign * (requirement - then + (practiceGains[name] ?? 0)),
    })),
    ...(c.headMaterial === 'aluminum'
      ? [{ name: 'heads' as const, numbers: (sign * aluminumCredit) / perOctane }]
      : []),
  ];
  // One that does more than it takes leaves them apart again, the other way round.
  const nearer = ({ numbers }: Driver): number => c.apart - Math.abs(c.apart - numbers);
  return drivers.reduce<Driver | null>((most, d) => (nearer(d) > (most ? nearer(most) : least) ? d : most), null);
}

/** What the dynamic ratio would gain if the intake closed where it usually does. */
function turnedRatio({ linkage, bore, clearanceVolume, intakeClosing }: Case): number {
  const caught = (closing: number): number => cylinderVolume(bore, pistonDrop(linkage, Math.PI + closing));
  return (caught(usual.closing) - caught(intakeClosing)) / clearanceVolume;
}
