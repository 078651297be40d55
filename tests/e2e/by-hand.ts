interface Engine {
  /** Chamber, cm³. */
  readonly chamber?: number;
  /** Intake closing, degrees after bottom. */
  readonly closing?: number;
}
interface Figures {
  readonly staticRatio: number;
  readonly dynamicRatio: number;
  /** On the gauge, psi. */
  readonly crankingPressure: number;
}

/**
 * The README's case for a pocket calculator, with another chamber or closing: plane geometry of crank and rod, volumes
 * of cylinders, and one power law. It shares no code with the notebook and works in inches throughout.
 */
export function byHand({ chamber = 70, closing = 61 }: Engine): Figures {
  const cubicInch = 2.54 ** 3; // cm³, exact by definition of the inch
  const disc = (diameter: number): number => (Math.PI / 4) * diameter ** 2;
  const left =
    (chamber + 6.0) / cubicInch + disc(4.16) * 0.041 + disc(4.07) * 0.012 + (disc(4.07) - disc(4.046)) * 0.28;
  const turned = ((180 + closing) * Math.PI) / 180;
  const travel = 1.77 + 5.85 - 1.77 * Math.cos(turned) - Math.sqrt(5.85 ** 2 - (1.77 * Math.sin(turned)) ** 2);
  const dynamicRatio = (disc(4.07) * travel + left) / left;
  return {
    staticRatio: (disc(4.07) * 3.54 + left) / left,
    dynamicRatio,
    crankingPressure: 14.34 * (dynamicRatio ** 1.25 - 1),
  };
}
