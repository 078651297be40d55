import { createRequire } from 'node:module';

/** What the tests use of ODEX (E. Hairer's extrapolation integrator). */
interface OdexSolver {
  relativeTolerance: number | readonly number[];
  absoluteTolerance: number | readonly number[];
  solve(
    rates: (t: number, y: number[]) => number[],
    from: number,
    start: readonly number[],
    to: number,
  ): { readonly y: number[]; readonly outcome: number };
}

// The package ships TypeScript sources that do not pass our stricter settings, so its types are not read.
const require = createRequire(import.meta.url);
const odex = require('odex') as { readonly Solver: new (size: number) => OdexSolver };

export const { Solver } = odex;
