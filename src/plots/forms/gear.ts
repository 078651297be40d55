import { box, circle, line, lined, path, points, type Sheet } from '../drawing.ts';
import { crankpin, type Linkage, pistonDrop } from '../piston.ts';

/** A cylinder lying on its side in a picture: crank at the left, head at the right; lengths in m until drawn. */
export interface Gear {
  readonly bore: number;
  readonly linkage: Linkage;
  readonly deckClearance: number;
}
/** Where everything stands in the picture. */
export interface Places {
  readonly k: number;
  readonly x: (along: number) => number;
  readonly y: (across: number) => number;
  readonly mid: number;
  readonly wall: number;
  readonly r: number;
  readonly deck: number;
  readonly crown: number;
  /** The crown's place at the top and at the bottom. */
  readonly high: number;
  readonly low: number;
  readonly pin: readonly [number, number];
}

export const ink = (width: number): string => `stroke="var(--ink)" stroke-width="${width}"`;
/** The piston's parts as shares of the bore: for the picture, in usual proportions. */
const share = {
  pinToCrown: 0.34,
  skirt: 0.19,
  boss: 0.11,
  ring: [0.074, 0.128, 0.177],
  web: 0.152,
  rod: 0.103,
  wrist: 0.074,
  journal: 0.088,
};

/** Lays a cylinder out over a width, with `head` (m) left for what is to the right of the block, `top` px above. */
export function laidOut(
  { bore, linkage: l, deckClearance }: Gear,
  angle: number,
  head: number,
  width: number,
  top: number,
): Places {
  const left = l.throw + 0.09 * bore;
  const deck = l.top + share.pinToCrown * bore + deckClearance;
  const k = (width - 4) / (left + deck + head);
  const wall = 12;
  const mid = top + wall + (bore / 2) * k;
  const [px, py] = crankpin(l, angle);
  const high = l.top + share.pinToCrown * bore;
  return {
    k,
    x: (along) => (left + along) * k,
    y: (across) => mid + across * k,
    mid,
    wall,
    r: bore / 2,
    deck,
    crown: high - pistonDrop(l, angle),
    high,
    low: high - l.travel,
    pin: [px, -py],
  };
}

/** Bore, crank circle, crank web, rod and piston, drawn where they stand. */
export function drawn({ bore, linkage: l }: Gear, at: Places, sheet: Sheet): string {
  const { x, y, r, deck, crown, low, mid, k, wall, pin } = at;
  const wrist = crown - share.pinToCrown * bore;
  const skirt = wrist - share.skirt * bore;
  const mouth = Math.max(0.6 * l.throw, low - 0.42 * bore);
  const bar = (x1: number, y1: number, x2: number, y2: number, width: number, fill: string): string =>
    line(x1, y1, x2, y2, `${ink(width)} stroke-linecap="round"`) +
    line(
      x1,
      y1,
      x2,
      y2,
      `stroke="var(--${fill})" stroke-width="${Math.max(1, width - 3).toFixed(1)}" stroke-linecap="round"`,
    );
  const outline: [number, number][] = [
    [x(crown), y(-r) + 1.5],
    [x(crown), y(r) - 1.5],
    [x(skirt), y(r) - 1.5],
    [x(skirt), y(r * 0.55)],
    [x(wrist + share.boss * bore), y(r * 0.55)],
    [x(wrist + share.boss * bore), y(-r * 0.55)],
    [x(skirt), y(-r * 0.55)],
    [x(skirt), y(-r) + 1.5],
  ];
  return [
    ...[-1, 1].map(
      (side) =>
        box(x(mouth), side > 0 ? y(r) : y(-r) - wall, (deck - mouth) * k, wall, lined('metal', sheet)) +
        line(x(mouth), y(side * r), x(deck), y(side * r), ink(1.5)),
    ),
    line(x(low), y(-r), x(low), y(r), 'stroke="var(--ink-3)" stroke-dasharray="4 3"'),
    circle(x(0), mid, l.throw * k, 'fill="none" stroke="var(--edge)" stroke-dasharray="1 4"'),
    bar(x(0), mid, x(pin[0]), y(pin[1]), share.web * bore * k, 'panel'),
    bar(x(pin[0]), y(pin[1]), x(wrist), y(-l.offset), share.rod * bore * k, 'paper'),
    path(`${points(outline)}Z`, `fill="var(--panel)" ${ink(1.5)} stroke-linejoin="round"`),
    ...share.ring.map(
      (ring) =>
        line(x(crown - ring * bore), y(-r) + 1, x(crown - ring * bore), y(-r * 0.86), ink(1)) +
        line(x(crown - ring * bore), y(r * 0.86), x(crown - ring * bore), y(r) - 1, ink(1)),
    ),
    circle(x(wrist), y(-l.offset), share.wrist * bore * k, `fill="var(--paper)" ${ink(1.5)}`),
    circle(x(0), mid, share.journal * bore * k, `fill="var(--paper)" ${ink(1.5)}`) +
      circle(x(0), mid, 2, 'fill="var(--ink)"'),
  ].join('');
}

/** The crank angle after firing top dead center that a place in the picture points at. */
export const angleAt = ({ linkage: l }: Gear, at: Places, hx: number, hy: number): number =>
  Math.atan2(-(hy - at.mid), hx - at.x(0)) - l.topAngle;
