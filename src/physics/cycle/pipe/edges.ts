import { block, type Column } from './column.ts';

/** Half of van Leer's slope: the harmonic mean of the differences on either side, 0 at an extremum. */
export const halfSlope = (before: number, after: number): number => {
  const product = before * after;
  return product > 0 ? product / (before + after) : 0;
};

/** The steepest half slope that an end cell may have, in its own density, pressure and sound speed (our choice). */
const steepest = 0.25;

/**
 * Readies a column for its ends to be solved: the faces of the two end cells half a step on, by the equations for rho,
 * u, p and burnt inside the cell. The faces of the other cells are made in the step itself.
 *
 * @param dt s
 * Source: E. F. Toro, Riemann Solvers and Numerical Methods for Fluid Dynamics, sec. 14.4 (MUSCL-Hancock); B. van Leer,
 * J. Comput. Phys. 32, 1979 (slopes); both from memory.
 */
export function makeEdges(column: Column, dt: number): void {
  endCell(column, dt, 1, -1, 0);
  endCell(column, dt, column.cells, 1, 8);
}

/**
 * The outer face of an end cell, then its inner one. The cell goes on with the slope that leads to it from its neighbor:
 * with none a quarter wave in eight cells loses a tenth more of its height in four periods. The slope is limited, so
 * that density and pressure stay positive at the face; burnt gas has none, so that its share stays within 0 and 1. A
 * cell beyond the end is given what makes van Leer's slope the same.
 *
 * @param side 1: the neighbor is towards the start and the outside towards the end; -1: the other way
 */
function endCell(column: Column, dt: number, cell: number, side: 1 | -1, into: number): void {
  const { state, edges } = column;
  const stride = column.cells + 2;
  const uAt = block.u * stride + cell;
  const pAt = block.p * stride + cell;
  const burntAt = block.burnt * stride + cell;
  const rho = state[cell]!;
  const u = state[uAt]!;
  const p = state[pAt]!;
  const burnt = state[burntAt]!;
  const rhoStep = rho - state[cell - side]!;
  const uStep = u - state[uAt - side]!;
  const pStep = p - state[pAt - side]!;
  // outward
  const rhoSlope = held(0.5 * rhoStep, steepest * rho);
  const uSlope = held(0.5 * uStep, steepest * state[block.sound * stride + cell]!);
  const pSlope = held(0.5 * pStep, steepest * p);
  state[cell + side] = rho + beyond(rhoStep, rhoSlope);
  state[uAt + side] = u + beyond(uStep, uSlope);
  state[pAt + side] = p + beyond(pStep, pSlope);
  state[burntAt + side] = burnt;

  const along = (side * dt) / column.dx;
  const drift = along * u;
  const swelling = along * uSlope + ((0.5 * dt) / column.dx) * u * state[block.taper * stride + cell]!;
  const rhoMid = rho - drift * rhoSlope - swelling * rho;
  const uMid = u - drift * uSlope - along * pSlope * state[block.lightness * stride + cell]!;
  const pMid = p - drift * pSlope - column.gamma * swelling * p;
  edges[into] = rhoMid + rhoSlope;
  edges[into + 1] = uMid + uSlope;
  edges[into + 2] = pMid + pSlope;
  edges[into + 3] = burnt;
  edges[into + 4] = rhoMid - rhoSlope;
  edges[into + 5] = uMid - uSlope;
  edges[into + 6] = pMid - pSlope;
  edges[into + 7] = burnt;
}

function held(slope: number, most: number): number {
  if (slope > most) return most;
  return slope < -most ? -most : slope;
}

/** The step to the cell beyond that has this half slope by van Leer, given the step to the end cell. */
function beyond(step: number, slope: number): number {
  return slope === 0.5 * step ? step : (step * slope) / (step - slope);
}
