import { html, type TemplateResult } from 'lit';
import type { Cell } from '../graph/cell.ts';
import type { Drawn, DrawsResult } from '../graph/draws.ts';
import type { Verdict, VerdictKind } from '../graph/kind.ts';
import { lastGood } from '../graph/state.ts';
import { type DrawsQuestion, type Summary, summaryOf } from '../notebook/draws.ts';
import type { Store } from '../notebook/store.ts';
import { deserved, type Histogram, type Zone } from '../plots/histogram-figure.ts';
import { say } from '../units/phrase.ts';
import { toUnit } from '../units/unit.ts';
import { axisTitle } from './sweep-data.ts';
import { differenceOf, grouped, lower, shownOf } from './words.ts';

/** What was drawn, in the reader's units. */
export interface DrawsView {
  readonly histogram: Histogram;
  /** In words: the places, the verdicts' chances, and what had no answer. */
  readonly says: readonly (TemplateResult | string)[];
}

export function drawsView(store: Store, question: DrawsQuestion, result: DrawsResult): DrawsView {
  const { read, judges } = question;
  const { unit, digits } = shownOf(store, read);
  const show = (si: number): number => toUnit(si, unit);
  const after = unit.symbol === '°' ? '°' : '';
  const { draws, sorted, low, middle, high, ends } = summaryOf(result[0]!);
  const isFew = sorted.length < few;
  const histogram = {
    draws,
    sorted: sorted.map(show),
    low: show(isFew ? (sorted[0] ?? NaN) : low),
    middle: show(middle),
    high: show(isFew ? (sorted.at(-1) ?? NaN) : high),
    ends: [show(ends[0]), show(ends[1])] as const,
    isFew,
    here: show(result[0]!.here),
    axis: { title: axisTitle(store, read), digits, after },
    zones: zonesOf(store, question, show),
  };
  const places = placesSaid(store, question, histogram, summaryOf(result[0]!));
  const chances = judges.map((judge, j) => chancesOf(judge, result[j + 1]!));
  return {
    histogram: {
      ...histogram,
      label: `How often ${lower(read.label)} comes to what, in ${grouped(draws)} draws. ${places}`,
    },
    says: [places, ...chances, ...unanswered(store, result[0]!)],
  };
}

const few = 20;
/** With fewer draws it is said how far the ends are to be relied on. */
const many = 1000;

function placesSaid(
  store: Store,
  { read, isSlow }: DrawsQuestion,
  histogram: Omit<Histogram, 'label'>,
  { doubt }: Summary,
): string {
  const { low, middle, high, here, isFew, sorted, draws } = histogram;
  if (sorted.length === 0) return 'No draw has an answer.';
  const { symbol } = shownOf(store, read).unit;
  const tail = symbol === '°' || symbol === '' ? '' : ` ${symbol}`;
  const written = deserved(histogram);
  const name = lower(read.label);
  const stands = isSlow ? 'As it stands, worked out the same way, it is' : 'As it stands it is';
  return [
    isFew
      ? `So far ${name} came to ${written(low)} to ${written(high)}${tail}.`
      : `Nine draws of ten have ${name} between ${written(low)} and ${written(high)}${tail}, half of them under ${written(middle)}${tail}.`,
    isFew || draws >= many
      ? ''
      : ` These ends are good to about ± ${differenceOf(store, read, doubt)}: few draws know little of what is rare.`,
    Number.isFinite(here) ? ` ${stands} ${written(here)}${tail}.` : '',
  ].join('');
}

/** How often a verdict came to each of its words. A verdict that is drawn itself is its own judge. */
function chancesOf(judge: Cell<Verdict>, { words }: Drawn): TemplateResult {
  const kind = judge.kind as unknown as VerdictKind;
  const all = Object.values(words).reduce((sum, n) => sum + n, 0);
  const came = kind.words.filter(({ id }) => (words[id] ?? 0) > 0);
  return html`${judge.label}:
  ${came.map(
    ({ id, label, tone }, i) =>
      html`${i > 0 ? ', ' : ''}<b class="is-${tone}"><span class="sw is-${tone}"></span>${label}</b>
        ${chance(words[id]!, all)}`,
  )}${came.length === 0 ? 'no draw has one' : ''}.`;
}

/** A share in words: never 0 % or 100 % of what came, or did not come, at least once. */
export function chance(times: number, all: number): string {
  if (times === all) return `in every draw`;
  const percent = (100 * times) / all;
  return percent < 0.5
    ? 'under\u00a01\u00a0%'
    : percent > 99.5
      ? 'over\u00a099\u00a0%'
      : `${Math.round(percent)}\u00a0%`;
}

function unanswered(store: Store, { samples, why }: Drawn): readonly string[] {
  const lost = samples.reduce((sum, x) => sum + (Number.isNaN(x) ? 1 : 0), 0);
  if (lost === 0) return [];
  const how =
    lost === samples.length
      ? 'No draw has an answer'
      : `Without an answer: ${chance(lost, samples.length)} of the draws`;
  return [why ? `${how}. In the first of them: ${say(why, store.system)}` : `${how}.`];
}

/** The caution bands of the first verdict on it, as they stand. */
function zonesOf(store: Store, { judges }: DrawsQuestion, show: (si: number) => number): readonly Zone[] {
  const judge = judges[0];
  const verdict = judge && lastGood(store.state(judge));
  if (!verdict) return [];
  const edges = verdict.edges.map(show);
  return (judge.kind as unknown as VerdictKind).words.map(({ label, tone }, i) => ({
    tone,
    label,
    from: edges[i - 1] ?? null,
    to: edges[i] ?? null,
  }));
}
