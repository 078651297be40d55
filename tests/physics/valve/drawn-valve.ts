import { WalkedPiston } from '../walked-piston.ts';
import type { DrawnLobe } from './drawn-lobe.ts';

type Point = readonly [number, number, number];

const plus = (a: Point, b: Point, times = 1): Point => [a[0] + times * b[0], a[1] + times * b[1], a[2] + times * b[2]];
const dot = (a: Point, b: Point): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** An engine's upper end, to be drawn. Lengths in m, angles in rad; events after the top of the gas exchange. */
export interface Drawing {
  readonly throw: number;
  readonly rod: number;
  /** How far the cylinder's line stands from the shaft, toward the crankpin's downgoing side. */
  readonly line: number;
  readonly deck: number;
  readonly gasket: number;
  readonly seatDepth: number;
  readonly milling: number;
  readonly reliefDepth: number;
  readonly valveAngle: number;
  readonly headRadius: number;
  readonly crown: 'relief' | 'flat';
  /** Peak of the lobe, after top dead center. */
  readonly peak: number;
  readonly lobe: DrawnLobe;
  readonly rocker: number;
}

/**
 * Smallest gap between a drawn valve head and a drawn crown, looked for every so many degrees from 90 before to 90
 * after: rim points of a tilted disk that slides along its own axis, and the plane of the crown or of its relief.
 */
export function drawnClearance(d: Drawing, stepDegrees = 0.02): { readonly gap: number; readonly angle: number } {
  // Height 0 is the block's deck; the valve leans in the plane of x and z and opens down along `axis`.
  const axis: Point = [Math.sin(d.valveAngle), 0, -Math.cos(d.valveAngle)];
  const down: Point = [0, 0, -1];
  const milledFace = d.gasket;
  const lowestEdge = milledFace - d.milling + d.seatDepth;
  const rim = rimOf(d, axis, lowestEdge);
  const foot = rim.reduce((low, point) => (point[2] < low[2] ? point : low));
  const normal: Point = d.crown === 'relief' ? axis : down;
  const look: Point = d.crown === 'relief' ? axis : down;

  const piston = new WalkedPiston(d.throw, d.rod, d.line);
  const top = piston.deadCenter(0);
  let least = { gap: Infinity, angle: 0 };
  for (let angle = -90; angle <= 90; angle += stepDegrees) {
    const turn = (angle * Math.PI) / 180;
    const drop = piston.height(top) - piston.height(top + turn);
    const crown: Point = [foot[0], 0, -d.deck - drop - (d.crown === 'relief' ? d.reliefDepth : 0)];
    const lift = d.rocker * d.lobe.liftAt(turn - d.peak);
    for (const point of rim) {
      const moved = plus(point, axis, lift);
      // Along the line of sight until the plane: (crown - moved) . n / (look . n)
      const gap = dot(plus(crown, moved, -1), normal) / dot(look, normal);
      if (gap < least.gap) least = { gap, angle: turn };
    }
  }
  return least;
}

/** Points around the head's lower face, lying so that the lowest of them is at a height. */
function rimOf(d: Drawing, axis: Point, lowest: number): readonly Point[] {
  const across: Point = [-axis[2], 0, axis[0]]; // in the face, in the plane of lean
  const along: Point = [0, 1, 0];
  const raw = Array.from({ length: 24 }, (_, i): Point => {
    const turn = (2 * Math.PI * i) / 24;
    const out = plus([0, 0, 0], across, d.headRadius * Math.cos(turn));
    return plus(out, along, d.headRadius * Math.sin(turn));
  });
  const floor = Math.min(...raw.map((point) => point[2]));
  return raw.map((point): Point => [point[0], point[1], point[2] - floor + lowest]);
}
