import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type HeadInRelief, radialClearance } from '../../../src/physics/valve/radial.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const anyHead = fc.record({
  valveDiameter: between(0.03, 0.055),
  reliefDiameter: between(0.055, 0.065),
  offset: between(-0.003, 0.003),
  valveAngle: between(0, 0.5),
  drop: between(0, 0.01),
});

/** Rim points of a drawn head, each as far as it is from the drawn relief's axis: the least room any of them has. */
function drawn({ valveDiameter, reliefDiameter, offset, valveAngle, drop }: HeadInRelief): number {
  // Bore down is -z. The valve's axis goes through the origin and leans toward +x as it goes down.
  const axis = [Math.sin(valveAngle), 0, -Math.cos(valveAngle)] as const;
  const middle = [offset, 0, -drop] as const; // of the relief, carried down by the piston
  let room = Infinity;
  for (let i = 0; i < 720; i++) {
    const turn = (2 * Math.PI * i) / 720;
    const r = valveDiameter / 2;
    const point = [r * Math.cos(turn) * -axis[2], r * Math.sin(turn), r * Math.cos(turn) * axis[0]] as const;
    const [x, y, z] = [point[0] - middle[0], point[1] - middle[1], point[2] - middle[2]];
    const along = x * axis[0] + y * axis[1] + z * axis[2];
    const out = Math.hypot(x - along * axis[0], y - along * axis[1], z - along * axis[2]);
    room = Math.min(room, reliefDiameter / 2 - out);
  }
  return room;
}

describe('radialClearance', () => {
  it('is the least room that any point on the rim of a drawn head has in a drawn relief', () => {
    fc.assert(
      fc.property(anyHead, (head) => {
        expect(Math.abs(radialClearance(head) - drawn(head))).toBeLessThan(1e-9);
      }),
    );
  });

  it('is half the difference of the diameters when head and relief share their axis', () =>
    expect(
      radialClearance({ valveDiameter: 0.05, reliefDiameter: 0.055, offset: 0, valveAngle: 0.3, drop: 0 }),
    ).toBeCloseTo(0.0025, 15));

  it('is negative where the head would foul the wall', () =>
    expect(
      radialClearance({ valveDiameter: 0.05, reliefDiameter: 0.052, offset: 0.002, valveAngle: 0, drop: 0.004 }),
    ).toBeCloseTo(-0.001, 15));
});
