/** Writes the rate of change of every state variable at `t` into `rate`. */
type Rates = (t: number, state: Float64Array, rate: Float64Array) => void;

/** Moves `state`, in place, from `t` to `t + step`. */
type Stepper = (t: number, step: number, state: Float64Array) => void;

/**
 * The classic fourth-order Runge-Kutta step. Its work space is made once, here, so that a step allocates nothing.
 *
 * @param size how many state variables there are
 * @param rates the equations
 * @returns the step
 * Source: W. Kutta, Zeitschrift für Mathematik und Physik 46 (1901) 435-453 (from memory).
 */
export function rungeKutta(size: number, rates: Rates): Stepper {
  const trial = new Float64Array(size);
  const rate = new Float64Array(size);
  const sum = new Float64Array(size);
  return (t, step, state) => {
    sum.fill(0);
    trial.set(state);
    for (let stage = 0; stage < 4; stage++) {
      rates(t + step * along[stage]!, trial, rate);
      const weight = weights[stage]!;
      const next = step * (along[stage + 1] ?? 0);
      for (let i = 0; i < size; i++) {
        sum[i]! += weight * rate[i]!;
        trial[i] = state[i]! + next * rate[i]!;
      }
    }
    for (let i = 0; i < size; i++) state[i]! += step * sum[i]!;
  };
}

const along = [0, 1 / 2, 1 / 2, 1];
const weights = [1 / 6, 1 / 3, 1 / 3, 1 / 6];
