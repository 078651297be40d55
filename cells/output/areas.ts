import type { Curve } from '../../src/graph/kind.ts';
import { interpolate } from '../../src/numerics/interpolate.ts';
import { openArea, type Port } from '../../src/physics/flow/port.ts';

const degree = Math.PI / 180;
const cycle = 4 * Math.PI;

/** Effective area of a valve at each crank degree, from 180 before firing top, 722 of them; m2. */
export const areasOf = (lift: Curve, port: Port): Float64Array =>
  Float64Array.from({ length: 722 }, (_, i) => {
    const angle = ((((i - 180) * degree) % cycle) + cycle) % cycle;
    const inside = angle >= lift.x[0]! && angle <= lift.x[lift.x.length - 1]!;
    return inside ? openArea(port, interpolate(lift.x, lift.y, angle)) : 0;
  });
