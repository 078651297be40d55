import type { EngineCycle } from './cycle.ts';

const ofGas = 3; // of the cylinder: mass, energy, burnt mass
const ofSpark = 2; // advance, knock

/** How many numbers of a state are gas; they come first. */
export function gasSize({ runner, primary, collector, plenum, junction }: EngineCycle): number {
  return runner.size + primary.size + collector.size + plenum.size + junction.size + ofGas;
}

/** How many numbers a state has: gas, the neighbors' records, the spark and its knock. */
export function stateSize(cycle: EngineCycle): number {
  return gasSize(cycle) + cycle.plenum.neighbors.size + cycle.junction.neighbors.size + ofSpark;
}

/** Writes the state between two cycles. */
export function writeState(cycle: EngineCycle, into: Float64Array): void {
  const { runner, primary, collector, chamber, plenum, junction } = cycle;
  let at = 0;
  for (const part of [runner, primary, collector, plenum, junction]) at = part.write(into, at);
  into[at] = chamber.gas.m;
  into[at + 1] = chamber.gas.U;
  into[at + 2] = chamber.gas.m * chamber.gas.burnt;
  at = plenum.neighbors.write(into, at + ofGas);
  at = junction.neighbors.write(into, at);
  into[at] = cycle.search.advance;
  into[at + 1] = cycle.search.excess;
}

/**
 * Takes on a written state, or a mixture of some.
 *
 * @returns whether it was one a gas can have; otherwise nothing is changed
 */
export function readState(cycle: EngineCycle, from: Float64Array): boolean {
  if (!isReadable(cycle, from)) return false;
  const { runner, primary, collector, chamber, plenum, junction } = cycle;
  let at = 0;
  for (const part of [runner, primary, collector, plenum, junction]) at = part.read(from, at);
  const { gas } = chamber;
  gas.m = from[at]!;
  gas.U = from[at + 1]!;
  gas.burnt = Math.max(0, Math.min(1, from[at + 2]! / gas.m));
  gas.state();
  at = plenum.neighbors.read(from, at + ofGas);
  at = junction.neighbors.read(from, at);
  cycle.search.advance = from[at]!;
  cycle.search.excess = Math.min(5, Math.max(0.2, from[at + 1]!));
  return true;
}

function isReadable(cycle: EngineCycle, from: Float64Array): boolean {
  let at = 0;
  for (const pipe of [cycle.runner, cycle.primary, cycle.collector]) {
    if (!pipe.readable(from, at)) return false;
    at += pipe.size;
  }
  for (const volume of [cycle.plenum, cycle.junction]) {
    if (!(from[at]! > 0 && from[at + 1]! > 0)) return false;
    at += volume.size;
  }
  return from[at]! > 0;
}
