/** Density, speed and pressure of a gas, in any consistent units. */
export interface GasState {
  readonly rho: number;
  readonly u: number;
  readonly p: number;
}

/** The exact solution where two gases meet. */
export interface Meeting {
  /** Pressure and speed between the two outer waves. */
  readonly p: number;
  readonly u: number;
  /** Densities on either side of the contact. */
  readonly rhoLeft: number;
  readonly rhoRight: number;
  /** Speeds of the outer waves: head and tail of a rarefaction, twice the same for a shock. */
  readonly leftWave: readonly [number, number];
  readonly rightWave: readonly [number, number];
  /** The gas on the ray x / t. */
  readonly at: (ray: number) => GasState;
}

/**
 * The Riemann problem of one gas, solved exactly by Newton's method for the pressure in the middle.
 *
 * Source: E. F. Toro, Riemann Solvers and Numerical Methods for Fluid Dynamics, ch. 4 (from memory): f_K of eqs. 4.6 and
 * 4.7, the two-rarefaction guess 4.46, sampling 4.5.
 */
export function meeting(left: GasState, right: GasState, gamma: number): Meeting {
  const sound = (g: GasState): number => Math.sqrt((gamma * g.p) / g.rho);
  const z = (gamma - 1) / (2 * gamma);
  const [cL, cR] = [sound(left), sound(right)];
  let p = ((cL + cR - 0.5 * (gamma - 1) * (right.u - left.u)) / (cL / left.p ** z + cR / right.p ** z)) ** (1 / z);
  const jump = (x: number, g: GasState): readonly [number, number] => {
    const c = sound(g);
    if (x > g.p) {
      const [a, b] = [2 / ((gamma + 1) * g.rho), (g.p * (gamma - 1)) / (gamma + 1)];
      const root = Math.sqrt(a / (x + b));
      return [(x - g.p) * root, root * (1 - (x - g.p) / (2 * (b + x)))];
    }
    const ratio = x / g.p;
    return [((2 * c) / (gamma - 1)) * (ratio ** z - 1), ratio ** (z - 1) / (g.rho * c)];
  };
  for (let turn = 0; turn < 200; turn++) {
    const [fL, dL] = jump(p, left);
    const [fR, dR] = jump(p, right);
    const next = Math.max(p - (fL + fR + right.u - left.u) / (dL + dR), 1e-3 * p);
    const settled = Math.abs(next - p) < 1e-14 * p;
    p = next;
    if (settled) break;
  }
  const u = 0.5 * (left.u + right.u + jump(p, right)[0] - jump(p, left)[0]);

  const behind = (g: GasState, side: 1 | -1): { rho: number; wave: readonly [number, number] } => {
    const ratio = p / g.p;
    if (ratio > 1) {
      const k = (gamma - 1) / (gamma + 1);
      const speed = g.u + side * sound(g) * Math.sqrt(((gamma + 1) / (2 * gamma)) * ratio + z);
      return { rho: (g.rho * (ratio + k)) / (k * ratio + 1), wave: [speed, speed] };
    }
    return { rho: g.rho * ratio ** (1 / gamma), wave: [g.u + side * sound(g), u + side * sound(g) * ratio ** z] };
  };
  const fromLeft = behind(left, -1);
  const fromRight = behind(right, 1);

  const at = (ray: number): GasState => {
    const side = ray < u ? -1 : 1;
    const [g, { rho, wave }] = side < 0 ? [left, fromLeft] : [right, fromRight];
    if (side * ray > side * wave[0]) return g;
    if (side * ray < side * wave[1]) return { rho, u, p };
    const inFan = (2 / (gamma + 1)) * (-side * sound(g) + 0.5 * (gamma - 1) * g.u + ray);
    const c = side * (ray - inFan);
    const ratio = c / sound(g);
    return { rho: g.rho * ratio ** (2 / (gamma - 1)), u: inFan, p: g.p * ratio ** (1 / z) };
  };
  return {
    p,
    u,
    rhoLeft: fromLeft.rho,
    rhoRight: fromRight.rho,
    leftWave: fromLeft.wave,
    rightWave: fromRight.wave,
    at,
  };
}
