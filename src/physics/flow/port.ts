import { interpolate } from '../../numerics/interpolate.ts';
import { benchArea } from './bench.ts';
import { curtainArea } from './valve-area.ts';

/** What a valve and its port pass: effective area (m2) against lift (m), rising from the valve shut. */
export interface Port {
  readonly lift: readonly number[];
  readonly area: readonly number[];
}

/** Effective area at a lift (m), m2: straight lines from row to row, and beyond the last row what that has. */
export function openArea(port: Port, lift: number): number {
  return interpolate(port.lift, port.area, lift);
}

/**
 * A port as a flow bench found it.
 *
 * @param rows lift (m) and flow (m3/s), by rising lift; a row with the valve shut may lead
 * @param depression of the bench, Pa
 * @throws RangeError saying in words which row is wrong
 */
export function portFromBench(rows: readonly (readonly number[])[], depression: number): Port {
  rows.forEach((row, i) => requireRow(rows, row, i));
  const open = rows.filter((row) => row[0]! > 0);
  if (open.length < 2) throw new RangeError('A flow table needs at least two rows with the valve off its seat.');
  if (!open.some((row) => row[1]! > 0)) throw new RangeError('Nothing flows in this table.');
  return {
    lift: [0, ...open.map((row) => row[0]!)],
    area: [0, ...open.map((row) => benchArea(row[1]!, depression))],
  };
}

function requireRow(rows: readonly (readonly number[])[], [lift, flow]: readonly number[], i: number): void {
  const before = rows[i - 1]?.[0];
  const no = (words: string): never => {
    throw new RangeError(words);
  };
  if (!(lift! >= 0 && lift! < Infinity)) no(`Row ${i + 1} of the flow table has a lift below zero.`);
  if (!(flow! >= 0 && flow! < Infinity)) no(`Row ${i + 1} of the flow table has a flow below zero.`);
  if (lift === 0 && flow !== 0) no(`Row ${i + 1} of the flow table flows with the valve shut.`);
  if (lift === before) no(`Rows ${i} and ${i + 1} of the flow table stand at the same lift.`);
  if (lift! < before!) no(`Row ${i + 1} of the flow table lifts less than row ${i}: sort the rows by lift.`);
}

// Discharge coefficient on the curtain at lifts of 0, 0.05, 0.10 ... 0.40 of the head's diameter. The shape of an intake
// valve with a sharp-cornered seat: J. B. Heywood, 1988, fig. 6-18, read from memory to 0.25, and a guess on from there.
// Real ports lie 0.08 to either side.
const onCurtain = [0.7, 0.68, 0.66, 0.62, 0.58, 0.52, 0.46, 0.405, 0.36];
const step = 0.05;

/**
 * A guess at a port that no bench has seen, from the diameter of its valve's head, m: intake or exhaust, of middling
 * make. Beyond a lift of 0.40 of the diameter it passes no more.
 */
export function portFromValve(diameter: number): Port {
  const lift = onCurtain.map((_, i) => i * step * diameter);
  return { lift, area: onCurtain.map((share, i) => share * curtainArea(diameter, lift[i]!)) };
}
