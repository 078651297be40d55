/** A poppet valve and its seat. */
export interface ValveSeat {
  /** Of the valve's head, m. */
  readonly diameter: number;
  /** Width of the seat, seen along the valve's axis: its outer radius less its inner, m. */
  readonly width: number;
  /** Angle of the seat from the plane of the head, rad: 45 degrees as a rule. */
  readonly angle: number;
  /** Inner diameter of the port just under the seat, m. */
  readonly throat: number;
  /** Diameter of the stem, m. */
  readonly stem: number;
}

/** Area of a circle, m2, by its diameter, m. */
export function roundArea(diameter: number): number {
  return (Math.PI / 4) * diameter ** 2;
}

/** The curtain between a valve's head (diameter, m) and its seat at a lift (m): the wall of a cylinder, m2. */
export function curtainArea(diameter: number, lift: number): number {
  return Math.PI * diameter * lift;
}

/** What the throat leaves around the stem, m2. */
export function throatArea({ throat, stem }: Pick<ValveSeat, 'throat' | 'stem'>): number {
  return (Math.PI / 4) * (throat ** 2 - stem ** 2); // eq. 6.9
}

/**
 * The least area a valve leaves at a lift, by plane geometry, m2: a cone's side square to the seat at first, then the
 * slant from the edge of the head to the edge of the seat, at last the throat around the stem.
 *
 * @param seat
 * @param lift m
 * @throws RangeError where no such valve can be made
 * Source: J. B. Heywood, 1988, eqs. 6.7-6.9 (from memory).
 */
export function leastArea(seat: ValveSeat, lift: number): number {
  refuse(seat);
  return Math.min(underHead(seat, lift), throatArea(seat));
}

/**
 * The lift, m, from which the throat and no longer the lift sets the least area.
 *
 * @throws RangeError where no such valve can be made
 * Source: J. B. Heywood, 1988, the limits of eqs. 6.7-6.9 (from memory).
 */
export function throatLift(seat: ValveSeat): number {
  refuse(seat);
  const slant = throatArea(seat) / (Math.PI * (seat.diameter - seat.width));
  if (slant > seat.width / Math.sin(seat.angle))
    return Math.sqrt(slant ** 2 - seat.width ** 2) + seat.width * Math.tan(seat.angle);
  // The throat is met while the cone still grows: its area is a parabola in the lift.
  const { cos, sin, span } = cone(seat);
  const share = throatArea(seat) / (Math.PI * cos);
  return (2 * share) / (span + Math.sqrt(span ** 2 + 4 * sin * cos * share));
}

function underHead(seat: ValveSeat, lift: number): number {
  const { diameter, width, angle } = seat;
  const { cos, sin, span } = cone(seat);
  if (lift <= width / (sin * cos)) return Math.PI * lift * cos * (span + lift * sin * cos); // eq. 6.7
  return Math.PI * (diameter - width) * Math.hypot(lift - width * Math.tan(angle), width); // eq. 6.8
}

const cone = ({ diameter, width, angle }: ValveSeat) => ({
  cos: Math.cos(angle),
  sin: Math.sin(angle),
  span: diameter - 2 * width,
});

function refuse({ diameter, width, angle, throat, stem }: ValveSeat): void {
  if (!(width >= 0 && diameter > 2 * width)) throw new RangeError('The seat is too wide for the valve.');
  if (!(angle > 0 && angle < Math.PI / 2)) throw new RangeError('The angle of the seat lies between 0 and 90 degrees.');
  if (!(stem >= 0 && throat > stem)) throw new RangeError('The stem fills the throat.');
  if (!(throat <= diameter)) throw new RangeError('The throat is wider than the valve.');
}
