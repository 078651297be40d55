import { Impossible } from '../../src/graph/state.ts';
import type { ValveSeat } from '../../src/physics/flow/valve-area.ts';

interface Given {
  readonly throatShare: number;
  readonly stemDiameter: number;
  readonly valveSeatAngle: number;
  readonly valveSeatWidth: number;
}

/** A valve and its seat as the fields have them, or a refusal that names the field; diameter in m. */
export function seatOf(
  diameter: number,
  { throatShare, stemDiameter, valveSeatAngle, valveSeatWidth }: Given,
): ValveSeat {
  const throat = throatShare * diameter;
  if (stemDiameter >= throat) throw new Impossible(['The stem fills the throat.'], 'stemDiameter');
  if (2 * valveSeatWidth >= diameter) throw new Impossible(['The seat is too wide for the valve.'], 'valveSeatWidth');
  return { diameter, width: valveSeatWidth, angle: valveSeatAngle, throat, stem: stemDiameter };
}
