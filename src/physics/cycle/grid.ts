/** How fine a cycle is computed. */
export type GridName = 'coarse' | 'medium' | 'fine';

/** Lengths of a pipe's cells, m, and the Courant number. */
export interface Grid {
  readonly runner: number;
  readonly exhaust: number;
  readonly courant: number;
}

/** Torque of the coarse and the medium within about 0.3 and 0.1 % rms of the fine. */
export const grids: Readonly<Record<GridName, Grid>> = {
  coarse: { runner: 0.025, exhaust: 0.05, courant: 0.95 },
  medium: { runner: 0.015, exhaust: 0.027, courant: 0.8 },
  fine: { runner: 0.008, exhaust: 0.014, courant: 0.8 },
};

/** Cells of a pipe of a length, m: four or more, so that a wave in it has a shape. */
export function cellsIn(length: number, cell: number): number {
  return Math.max(4, Math.round(length / cell));
}
