import type { Cell } from '../graph/cell.ts';
import type { Verdict, VerdictKind } from '../graph/kind.ts';
import type { Snapshot } from '../graph/snapshot.ts';
import { isMovableOn, type MapFound, type MapQuestion, presentOn } from '../notebook/maps.ts';
import type { Store } from '../notebook/store.ts';
import { between, betweenStanding, type Grid } from '../plots/grid.ts';
import { type Axis, extent } from '../plots/line-figure.ts';
import type { MapGround, MapPicture } from '../plots/map-figure.ts';
import type { Trade } from '../plots/map-trade.ts';
import { fromUnit, toUnit } from '../units/unit.ts';
import { axisTitle, exact, tick } from './sweep-data.ts';
import { differenceOf, lower, shownOf } from './words.ts';

/** Where another verdict on the same result parts differently by more than this, its edges are drawn as well. */
const apart = 0.1;

/** Turns what a map found into a figure's ground, in the reader's units. */
export function mapGround(store: Store, question: MapQuestion, { values, stands, judged }: MapFound): MapGround {
  const { x, y, read, item, isSlow } = question;
  const { unit } = shownOf(store, read);
  const gridOf = (si: Float64Array, across: number, up: number): Grid => ({
    across,
    up,
    values: Float64Array.from(si, (v) => toUnit(v, unit)),
  });
  const axis = (cell: Cell, from: number, to: number): Axis => ({
    title: axisTitle(store, cell),
    domain: [whole(toUnit(from, shownOf(store, cell).unit)), whole(toUnit(to, shownOf(store, cell).unit))],
    text: tick(store, cell),
    exact: exact(store, cell),
  });
  const [first, second] = judged.map(({ judge, points, edges }) => ({
    words: wordsOf(judge),
    edges: edges.map((edge) => gridOf(edge, ...points)),
  }));
  const isElsewhere =
    first !== undefined &&
    second !== undefined &&
    second.edges.some((edge, i) =>
      Array.from(edge.values).some((v, n) => Math.abs(v - first.edges[i]!.values[n]!) > apart),
    );
  return {
    x: axis(x.vary, item.x.from, item.x.to),
    y: axis(y.vary, item.y.from, item.y.to),
    z: { title: axisTitle(store, read), exact: exact(store, read) },
    grid: gridOf(values, x.values.length, y.values.length),
    stands: isSlow ? stands : null,
    words: first?.words ?? [],
    edges: first?.edges ?? [],
    others: isElsewhere ? second.edges : [],
  };
}
const wordsOf = (judge: Cell<Verdict>): VerdictKind['words'] => (judge.kind as unknown as VerdictKind).words;
/** Without the last digits that a change of units leaves. */
const whole = (v: number): number => Number(v.toPrecision(12));

/** The ground with the present setting on it. A slow map's value there lies between its points. */
export function mapPicture(store: Store, at: Snapshot, question: MapQuestion, ground: MapGround): MapPicture {
  const { x, y, read } = question;
  const now = presentOn(at, question);
  const place = {
    x: whole(toUnit(now.x, shownOf(store, x.vary).unit)),
    y: whole(toUnit(now.y, shownOf(store, y.vary).unit)),
  };
  const [u, v] = [shareOf(ground.x, place.x), shareOf(ground.y, place.y)];
  const inside = [u, v].every((share) => share >= -1e-9 && share <= 1 + 1e-9);
  const { across, up } = ground.grid;
  const known = (ground.stands && betweenStanding(ground.grid, ground.stands)) ?? ground.grid;
  const z = question.isSlow
    ? between(known, clamped(u) * (across - 1), clamped(v) * (up - 1))
    : toUnit(now.z, shownOf(store, read).unit);
  const mark = inside ? { ...place, z, movable: isMovableOn(at, question) } : null;
  return { ground, mark, label: said(question, ground, mark) };
}
const clamped = (share: number): number => Math.min(1, Math.max(0, share));
const shareOf = ({ domain: [from, to] }: Axis, value: number): number => (value - from) / (to - from);

/** What there is to see, in a sentence: how far the values go, and where they are least and most. */
function said({ read, x, y }: MapQuestion, ground: MapGround, mark: MapPicture['mark']): string {
  const { grid, z } = ground;
  const range = extent([grid.values]);
  const title = `${read.label} over ${lower(x.vary.label)} and ${lower(y.vary.label)}`;
  if (!range) return `${title}: no answer.`;
  const where = (value: number): string => {
    const place = Array.from(grid.values).indexOf(value);
    return placeOf(ground, place % grid.across, Math.floor(place / grid.across));
  };
  const [low, high] = range;
  const ends = `from ${z.exact(low)} at ${where(low)} to ${z.exact(high)} at ${where(high)}`;
  const here = mark && Number.isFinite(mark.z) ? `; ${z.exact(mark.z)} as it stands` : '';
  return `${title}: ${ends}${here}.`;
}
function placeOf({ x, y, grid }: MapGround, k: number, i: number): string {
  const on = ({ domain: [from, to], exact, text }: Axis, share: number): string =>
    (exact ?? text)(from + (to - from) * share);
  return `${on(x, k / (grid.across - 1))}, ${on(y, i / (grid.up - 1))}`;
}

/** What a step along one axis is worth in the other, in words. */
export function tradeWords(store: Store, { x, y, read }: MapQuestion, { word, dx, dy }: Trade): string {
  const amount = (cell: Cell, shown: number): string => {
    const { unit } = shownOf(store, cell);
    const figure = differenceOf(store, cell, fromUnit(shown, unit) - fromUnit(0, unit));
    return `${figure}${unit.symbol === '°' ? '°' : unit.symbol === '' ? '' : ` ${unit.symbol}`}`;
  };
  const where = word === null ? `For the same ${lower(read.label)}` : `Along the edge of “${word}”`;
  return `${where}, ${amount(x.vary, dx)} more ${lower(x.vary.label)} makes up for ${amount(y.vary, Math.abs(dy))} ${dy < 0 ? 'less' : 'more'} ${lower(y.vary.label)}. `;
}
