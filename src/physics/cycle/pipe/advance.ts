import { block, type Column, leastDensity, leastPressure } from './column.ts';
import { halfSlope } from './edges.ts';

/**
 * Takes a column one step on, given its edges and what passes through its two end faces: quasi-one-dimensional Euler
 * equations for mass, momentum, energy and burnt gas, second order (MUSCL-Hancock), fluxes by HLLC with the sound
 * speeds of the cells, wall friction, loss heads and wall heat.
 *
 * One loop does it all: cell i + 1 is reconstructed, the flux between i and i + 1 follows, and cell i is brought up to
 * date, while what is still needed of the old cells travels along in locals. Nothing is allocated.
 *
 * @param dt s
 * Sources: E. F. Toro, Riemann Solvers and Numerical Methods for Fluid Dynamics, secs. 10.4 (HLLC) and 14.4
 * (MUSCL-Hancock), from memory; the wall's heat transfer by the Reynolds analogy with 3 m/s of turbulence left in gas
 * that stands still (common practice, no source).
 */
export function advance(column: Column, dt: number): void {
  const { state, edges, fluxes, cells, gamma, wallTemperature } = column;
  const gammaLess1 = gamma - 1;
  const perGammaLess1 = 1 / gammaLess1;
  const perR = 1 / column.R;
  const drag = dt * column.drag;
  const warming = dt * column.warming * perR;
  const wallHeat = column.R * wallTemperature;
  const courant = dt / column.dx;
  const halfCourant = 0.5 * courant;

  // Where in the state the blocks begin. `| 0` at every index says that it stays in 32 bits, which spares a check.
  const stride = (cells + 2) | 0;
  const uAt = (block.u * stride) | 0;
  const pAt = (block.p * stride) | 0;
  const burntAt = (block.burnt * stride) | 0;
  const soundAt = (block.sound * stride) | 0;
  const lightAt = (block.lightness * stride) | 0;
  const momentumAt = (block.momentum * stride) | 0;
  const energyAt = (block.energy * stride) | 0;
  const burntDensityAt = (block.burntDensity * stride) | 0;
  const areaAt = (block.area * stride) | 0;
  const perVolumeAt = (block.perVolume * stride) | 0;
  const wideningAt = (block.widening * stride) | 0;
  const taperAt = (block.taper * stride) | 0;

  // this cell, as it was
  let rho = state[1]!;
  let u = state[uAt + 1]!;
  let p = state[pAt + 1]!;
  let light = state[lightAt + 1]!;
  let sound = state[soundAt + 1]!;
  let pHalf = 0.5 * (edges[2]! + edges[6]!); // its pressure half a step on
  // the left side of the face ahead, half a step on
  let rhoL = edges[4]!;
  let uL = edges[5]!;
  let pL = edges[6]!;
  let burntL = edges[7]!;
  // from this cell to the next
  let rhoStep = state[2]! - rho;
  let uStep = state[uAt + 2]! - u;
  let pStep = state[pAt + 2]! - p;
  let burntStep = state[burntAt + 2]! - state[burntAt + 1]!;
  // through the face behind
  let massIn = fluxes[0]!;
  let forceIn = fluxes[1]!;
  let powerIn = fluxes[2]!;
  let burntIn = fluxes[3]!;
  let wave = 0;

  for (let i = 1; i <= cells; i = (i + 1) | 0) {
    const next = (i + 1) | 0;
    const after = (i + 2) | 0;
    let massOut = 0;
    let forceOut = 0;
    let powerOut = 0;
    let burntOut = 0;
    // the next cell: half slopes, and the state of its two faces half a step on
    const rhoNext = state[next]!;
    const uNext = state[(uAt + next) | 0]!;
    const pNext = state[(pAt + next) | 0]!;
    const lightNext = state[(lightAt + next) | 0]!;
    const soundNext = state[(soundAt + next) | 0]!;
    const burntNext = state[(burntAt + next) | 0]!;
    const rhoAfter = state[after]! - rhoNext;
    const uAfter = state[(uAt + after) | 0]! - uNext;
    const pAfter = state[(pAt + after) | 0]! - pNext;
    const burntAfter = state[(burntAt + after) | 0]! - burntNext;
    const rhoSlope = halfSlope(rhoStep, rhoAfter);
    const uSlope = halfSlope(uStep, uAfter);
    const pSlope = halfSlope(pStep, pAfter);
    const burntSlope = halfSlope(burntStep, burntAfter);
    const drift = courant * uNext;
    const swelling = courant * uSlope + halfCourant * uNext * state[(taperAt + next) | 0]!;
    const rhoMid = rhoNext - drift * rhoSlope - swelling * rhoNext;
    const uMid = uNext - drift * uSlope - courant * pSlope * lightNext;
    const pHalfNext = pNext - drift * pSlope - gamma * swelling * pNext;
    const burntMid = burntNext - drift * burntSlope;
    const rhoR = rhoMid - rhoSlope;
    const uR = uMid - uSlope;
    const pR = pHalfNext - pSlope;
    const rhoLNext = rhoMid + rhoSlope;
    const uLNext = uMid + uSlope;
    const pLNext = pHalfNext + pSlope;
    const burntLNext = burntMid + burntSlope;
    rhoStep = rhoAfter;
    uStep = uAfter;
    pStep = pAfter;
    burntStep = burntAfter;

    // HLLC: the outer waves, the contact between them (push / weight), and the flux of the side it leaves behind
    const soundL = uL - sound;
    const otherL = uR - soundNext;
    const sL = otherL < soundL ? otherL : soundL;
    const soundR = uR + soundNext;
    const otherR = uL + sound;
    const sR = otherR > soundR ? otherR : soundR;
    const weightL = rhoL * (sL - uL);
    const weightR = rhoR * (sR - uR);
    const push = pR - pL + weightL * uL - weightR * uR;
    const weight = weightL - weightR; // negative
    if (push <= 0) {
      const energy = pL * perGammaLess1 + 0.5 * rhoL * uL * uL;
      if (sL < 0) {
        const contact = push / weight;
        const d = weight / (sL * weight - push); // 1 / (sL - contact)
        const pStar = pL + weightL * (contact - uL);
        massOut = weightL * d * contact;
        forceOut = massOut * contact + pStar;
        powerOut = contact * (((sL - uL) * energy - pL * uL + pStar * contact) * d + pStar);
      } else {
        massOut = rhoL * uL;
        forceOut = massOut * uL + pL;
        powerOut = uL * (energy + pL);
      }
      burntOut = massOut * burntL;
    } else {
      const energy = pR * perGammaLess1 + 0.5 * rhoR * uR * uR;
      if (sR > 0) {
        const contact = push / weight;
        const d = weight / (sR * weight - push);
        const pStar = pR + weightR * (contact - uR);
        massOut = weightR * d * contact;
        forceOut = massOut * contact + pStar;
        powerOut = contact * (((sR - uR) * energy - pR * uR + pStar * contact) * d + pStar);
      } else {
        massOut = rhoR * uR;
        forceOut = massOut * uR + pR;
        powerOut = uR * (energy + pR);
      }
      burntOut = massOut * (burntMid - burntSlope);
    }
    const area = state[(areaAt + i) | 0]!;
    massOut *= area;
    forceOut *= area;
    powerOut *= area;
    burntOut *= area;
    if (i === cells) {
      massOut = fluxes[4]!;
      forceOut = fluxes[5]!;
      powerOut = fluxes[6]!;
      burntOut = fluxes[7]!;
    }

    // this cell
    const per = dt * state[(perVolumeAt + i) | 0]!;
    const pace = rho * Math.abs(u);
    let rhoNew = rho + per * (massIn - massOut);
    const momentum =
      state[(momentumAt + i) | 0]! +
      per * (forceIn - forceOut + pHalf * state[(wideningAt + i) | 0]!) -
      drag * pace * u;
    let energy =
      state[(energyAt + i) | 0]! + per * (powerIn - powerOut) + warming * (pace + 3 * rho) * (wallHeat - p * light);
    const burntDensity = state[(burntDensityAt + i) | 0]! + per * (burntIn - burntOut);
    if (!(rhoNew > leastDensity)) {
      rhoNew = leastDensity;
      column.floors++;
    }
    const lightNew = 1 / rhoNew;
    const uNew = momentum * lightNew;
    let pNew = gammaLess1 * (energy - 0.5 * momentum * uNew);
    if (!(pNew > leastPressure)) {
      pNew = leastPressure;
      energy = pNew * perGammaLess1 + 0.5 * momentum * uNew;
      column.floors++;
    }
    const soundNew = Math.sqrt(gamma * pNew * lightNew);
    const fastest = Math.abs(uNew) + soundNew;
    if (fastest > wave) wave = fastest;
    state[i] = rhoNew;
    state[(uAt + i) | 0] = uNew;
    state[(pAt + i) | 0] = pNew;
    state[(burntAt + i) | 0] = burntDensity * lightNew;
    state[(soundAt + i) | 0] = soundNew;
    state[(lightAt + i) | 0] = lightNew;
    state[(momentumAt + i) | 0] = momentum;
    state[(energyAt + i) | 0] = energy;
    state[(burntDensityAt + i) | 0] = burntDensity;

    rho = rhoNext;
    u = uNext;
    p = pNext;
    light = lightNext;
    sound = soundNext;
    pHalf = pHalfNext;
    rhoL = rhoLNext;
    uL = uLNext;
    pL = pLNext;
    burntL = burntLNext;
    massIn = massOut;
    forceIn = forceOut;
    powerIn = powerOut;
    burntIn = burntOut;
  }
  column.wave = wave;
}
