import { catalogue as cells, chapters, roomOf } from '../../cells/index.ts';
import edge from '../../scenarios/edge-of-premium.json' with { type: 'json' };
import { type Cell, drain, type Input } from '../../src/graph/cell.ts';
import { drawSteps } from '../../src/graph/draws.ts';
import { Live } from '../../src/graph/live.ts';
import { mapSteps } from '../../src/graph/map.ts';
import { snapshot } from '../../src/graph/snapshot.ts';
import { sweepSteps } from '../../src/graph/sweep.ts';
import type { Document } from '../../src/notebook/document.ts';
import { Store } from '../../src/notebook/store.ts';
import { closing as closingOf } from '../../src/physics/cam-events.ts';
import { linkage as linkageOf, pistonDrop } from '../../src/physics/linkage.ts';
import { cylinderVolume } from '../../src/physics/volumes.ts';

const document = edge as unknown as Document;
const stands = (c: Cell): boolean => c.role === 'slow' || (c.role === 'cell' && Object.values(c.from).some(stands));
const quick = [...cells.values()].filter((c) => !stands(c));
const cell = (id: string) => cells.get(id)!;
/** The results of the first six chapters: what is looked at while those of valves, breathing and output are closed. */
const later = ['valves', 'breathing', 'output'];
const six = quick.filter((c) => !later.includes(roomOf.get(c.id)!));
const open = (looked = quick): Store => {
  const store = new Store({
    catalogue: { cells, chapters },
    open: { document, opened: document },
    runner: { start: () => () => {} },
  });
  store.watch(looked, () => {});
  return store;
};

export const oneInput = (): (() => void) => aroundInputs(six);
export const oneInputOfAll = (): (() => void) => aroundInputs(quick);
/** One input changed, all quick results settled: on the graph alone. Goes round all numeric inputs. */
function aroundInputs(looked: typeof quick): () => void {
  const { live } = open(looked);
  const inputs = looked.filter((c): c is Input<number> => c.role === 'input' && c.kind.name === 'scalar');
  const starts = inputs.map((c) => (live.state(c) as { value: number }).value);
  let n = 0;
  return () => {
    const i = n++ % inputs.length;
    live.set(inputs[i]!, starts[i]! * (1 + (Math.floor(n / inputs.length) % 2) * 1e-6) + 1e-12);
    live.run();
  };
}

/** The same with undo, patches and the document kept. */
export function oneEdit(): () => void {
  const store = open(six);
  const bore = cell('bore') as Input;
  let n = 0;
  return () => store.set([[bore, 0.103 + (n++ % 100) * 1e-6]], { what: 'bench', gesture: n });
}

/** One input of the valve train changed, lifts, clearances and all other quick results settled: on the graph alone. */
export function liftAndClearance(): () => void {
  const { live } = open();
  const [lift, rocker] = [cell('intakeLobeLift'), cell('rockerRatio')] as Input<number>[];
  let n = 0;
  return () => {
    // By turns: one finds its lobe anew, the other lifts both valves by it.
    if (n++ % 2 === 0) live.set(lift!, 0.0078 + (n % 100) * 1e-7);
    else live.set(rocker!, 1.5 + (n % 100) * 1e-4);
    live.run();
  };
}

const degree = Math.PI / 180;
const xs = Float64Array.from({ length: 200 }, (_, i) => (40 + i * 0.2) * degree);
const members = [62, 66, 70, 74, 78].map((n) => n * 1e-6);

/** A sweep of dynamic ratio against intake closing, 200 points, one line for each of five chambers. */
export function sweep(): () => number {
  const at = snapshot(open().live);
  const ask = {
    vary: cell('intakeClosing'),
    xs,
    family: { vary: cell('chamberVolume'), values: members },
    read: [cell('dynamicRatio')],
  };
  return () => drain(sweepSteps(at, ask))[4]![0]![199]!;
}

/** Dynamic ratio written inline: the advance for a closing, its range, and a gap where there is no answer. */
function ratioInline(): (chamber: number, at: number) => number {
  const live: Live = open().live;
  const v = (id: string): number => (live.state(cell(id)) as { value: number }).value;
  const linkage = linkageOf(v('stroke'), v('rod'), v('pinOffset'));
  const [bore, duration, centerline] = [v('bore'), v('intakeDuration'), v('intakeCenterline')];
  const rest = v('gasketVolume') + v('deckVolume') + v('crownVolume') + v('creviceVolume') - v('milledVolume');
  return (chamber, at) => {
    const clearance = chamber + rest;
    const advance = closingOf(duration, centerline) - at;
    const closing = closingOf(duration, centerline) - advance;
    const lost = Math.abs(advance) > (2 * Math.PI) / 3 || closing >= Math.PI || closing <= -Math.PI;
    const stroke = pistonDrop(linkage, Math.PI + closing);
    const trapped = clearance + cylinderVolume(bore, stroke);
    const ratio = trapped / clearance;
    return lost || !(clearance > 0) || !Number.isFinite(ratio) ? NaN : ratio;
  };
}

/** The sweep's arithmetic written inline. */
export function sweepInline(): () => number {
  const ratio = ratioInline();
  return () => {
    const out = members.map(() => new Float64Array(xs.length));
    for (let m = 0; m < members.length; m++)
      for (let i = 0; i < xs.length; i++) out[m]![i] = ratio(members[m]!, xs[i]!);
    return out[4]![199]!;
  };
}

const [closings, chambers] = [
  Float64Array.from({ length: 200 }, (_, i) => (40 + i * 0.2) * degree),
  Float64Array.from({ length: 200 }, (_, i) => (60 + i * 0.1) * 1e-6),
];

/** A map of dynamic ratio over intake closing (by moving the cam) and chamber volume, 200 points each way. */
export function map(): () => number {
  const at = snapshot(open().live);
  const ask = {
    x: { vary: cell('intakeClosing'), values: closings },
    y: { vary: cell('chamberVolume'), values: chambers },
    read: [cell('dynamicRatio')],
  };
  return () => drain(mapSteps(at, ask)).rows[0]![39_999]!;
}

/** The same arithmetic written inline. */
export function mapInline(): () => number {
  const ratio = ratioInline();
  return () => {
    const out = new Float64Array(40_000);
    for (let m = 0; m < 200; m++) for (let i = 0; i < 200; i++) out[m * 200 + i] = ratio(chambers[m]!, closings[i]!);
    return out[39_999]!;
  };
}

/** 10,000 draws of some results, every ± of the notebook at once. */
const drawing =
  (...ids: readonly string[]) =>
  (): (() => number) => {
    const at = snapshot(open().live);
    const tolerances = new Map(Object.entries(document.tolerances).map(([id, tolerance]) => [cell(id), tolerance]));
    const ask = { tolerances, reads: ids.map(cell), count: 10_000, seed: 1 };
    return () => drain(drawSteps(at, ask)).at(-1)!.samples[9999]!;
  };
/** All that a hydraulic cam's compression comes to. */
export const drawsOfCompression = drawing(
  'clearanceVolume',
  'staticRatio',
  'dynamicRatio',
  'crankingPressure',
  'crankingPressureLow',
  'fuelVerdict',
  'fuelVerdictLow',
);
/** Lobes that are found anew in every draw, one and both. */
export const drawsOfClearance = drawing('intakeClearance', 'intakeClearanceVerdict');
export const drawsOfOverlap = drawing('overlapArea');
