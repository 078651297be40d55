/*
 * Arithmetic of a symmetric lobe. Angles in rad of crankshaft, except the lobe separation, which is in rad of camshaft
 * as on a cam card. A negative answer means the event lies on the other side of its dead center.
 */

/**
 * Opening of the intake, before top dead center; with the exhaust's centerline, closing of the exhaust after it.
 *
 * @param duration crank angle open, at the lift the card states
 * @param centerline middle of the lobe, from top dead center: after it for the intake, before it for the exhaust
 */
export function opening(duration: number, centerline: number): number {
  return duration / 2 - centerline;
}

/**
 * Closing of the intake, after bottom dead center; with the exhaust's centerline, opening of the exhaust before it.
 *
 * @param duration crank angle open, at the lift the card states
 * @param centerline middle of the lobe, from top dead center: after it for the intake, before it for the exhaust
 */
export function closing(duration: number, centerline: number): number {
  return duration / 2 + centerline - Math.PI;
}

/**
 * Middle of the exhaust lobe, before top dead center.
 *
 * @param separation lobe separation, rad of camshaft
 * @param intakeCenterline after top dead center
 */
export function exhaustCenterline(separation: number, intakeCenterline: number): number {
  return 2 * separation - intakeCenterline;
}

/**
 * Duration of a lobe from its two events, at the lift they were read at.
 *
 * @param opens intake: before top dead center; exhaust: before bottom dead center
 * @param closes intake: after bottom dead center; exhaust: after top dead center
 */
export function durationBetween(opens: number, closes: number): number {
  return opens + closes + Math.PI;
}

/**
 * Lobe separation, rad of camshaft, from the overlap of two lobes.
 *
 * @param duration crank angle open: of both lobes, or the mean of the two
 * @param overlap crank angle during which both valves are open
 */
export function separationFromOverlap(duration: number, overlap: number): number {
  return (duration - overlap) / 2;
}
