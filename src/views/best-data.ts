import type { Design } from '../graph/problem.ts';
import { isGood } from '../graph/problem.ts';
import type { BestQuestion } from '../notebook/bests.ts';
import type { Looking } from '../notebook/looking.ts';
import { alike, brokenBy, leftOutBy } from '../notebook/shown-designs.ts';
import type { Store } from '../notebook/store.ts';
import type { Twin } from '../plots/drawing.ts';
import type { DesignCloud } from '../plots/design-cloud.ts';
import { toUnit } from '../units/unit.ts';
import { aimDifference, aimName, aimShown, inOneLine, toldOf } from './best-words.ts';
import { lower, senseOf, shownOf } from './words.ts';

/** The designs as a cloud in the reader's units: two aims over each other, or one over the first input. */
export function cloudOf(
  store: Store,
  question: BestQuestion,
  looking: Looking,
  shown: readonly Design[],
  chosen: number,
): DesignCloud {
  const { aims, vary, item } = question;
  const { found } = looking;
  const [up, across] = aims;
  const [input] = vary;
  const upUnit = aimShown(store, up!.cell);
  const acrossUnit = across ? aimShown(store, across.cell) : shownOf(store, input!);
  const dot = (design: Design): readonly [number, number] => [
    toUnit(across ? design.aims[1]! : design.at[0]!, acrossUnit.unit),
    toUnit(design.aims[0]!, upUnit.unit),
  ];
  const sign = ({ unit }: typeof upUnit): string => (unit.symbol === '°' ? '°' : '');
  const title = (name: string, { unit }: typeof upUnit): string =>
    unit.symbol === '' || unit.symbol === '°' ? name : `${name}, ${unit.symbol}`;
  const present = presentOf(looking);
  const [{ from, to }] = item.vary as [BestQuestion['item']['vary'][number]];
  const sense = across ? undefined : senseOf(input!);
  return {
    label: labelOf(store, question, shown),
    x: {
      title: across
        ? title(aimName(store, across.cell, across.item), acrossUnit)
        : sense
          ? `${input!.label}, ${sense.words}`
          : title(input!.label, acrossUnit),
      sign: sign(acrossUnit),
      ...(across
        ? {}
        : { domain: [toUnit(Math.min(from, to), acrossUnit.unit), toUnit(Math.max(from, to), acrossUnit.unit)] }),
    },
    y: { title: title(aimName(store, up!.cell, up!.item), upUnit), sign: sign(upUnit) },
    tried: found.tried.filter(isGood).map(dot),
    shown: shown.map(dot),
    chosen,
    present: present ? dot(present) : null,
    isFront: across !== undefined,
  };
}

/** The setting as it was, with what it came to; not once the engine is another. */
export function presentOf({ found: { tried }, start, isPast }: Looking): Design | undefined {
  const [first] = tried;
  const isThere = !isPast && start !== undefined && first?.at.join() === start.join();
  return isThere && first?.aims.every((v) => Number.isFinite(v)) ? first : undefined;
}
function labelOf(store: Store, question: BestQuestion, shown: readonly Design[]): string {
  const [first] = shown;
  const names = question.aims.map(({ cell, item }) => lower(aimName(store, cell, item))).join(' against ');
  if (!first) return `No design yet that keeps to the limits: ${names}.`;
  const line = inOneLine(toldOf(store, { ...question, limits: [] }, first, []));
  return `${shown.length} designs, ${names}. The first: ${line}.`;
}

/** The designs that are told of as a table. */
export function bestTwin(store: Store, question: BestQuestion, looking: Looking, shown: readonly Design[]): Twin {
  const rows = shown.map((design) => toldOf(store, question, design, looking.rowOf(design.at)));
  return {
    columns: ['No.', ...(rows[0] ?? []).map(({ name }) => name)],
    rows: rows.map((told, i) => [String(i + 1), ...told.map(({ text }) => text)]),
  };
}

/** How many were tried, and what became of the others. */
export function countsOf(question: BestQuestion, { found, done }: Looking): string {
  const named = (counts: readonly number[]): string =>
    counts.flatMap((n, k) => (n > 0 ? [`${n} by ${lower(question.limits[k]!.cell.label)}`] : [])).join(', ');
  const out = leftOutBy(question, found);
  const broken = brokenBy(question, found);
  const parts = [
    `Worked out: ${done}.`,
    out.some((n) => n > 0) ? `Left out before any work: ${named(out)}.` : '',
    broken.by.some((n) => n > 0) ? `Of those worked out, ruled out: ${named(broken.by)}.` : '',
    broken.none > 0 ? `Without an answer: ${broken.none}.` : '',
  ];
  return parts.filter((part) => part !== '').join(' ');
}

/** A difference under half a percent is one that a model of an engine does not tell. */
const little = 0.005;

/** What there is to doubt: the best lie closer together than the model, or the ±, can tell apart. */
export function doubtOf(store: Store, question: BestQuestion, shown: readonly Design[]): string {
  if (shown.length < 2) return '';
  const [aim, other] = question.aims;
  if (other) {
    const narrow = question.aims.filter((_, k) => {
      const values = shown.map((design) => design.aims[k]!);
      return Math.max(...values) - Math.min(...values) <= little * Math.abs(values[0]!);
    });
    return narrow
      .map(
        ({ cell, item }) =>
          `All of these lie within half a percent in ${lower(aimName(store, cell, item))}: closer than two builds can be told apart.`,
      )
      .join(' ');
  }
  const plusMinus =
    aim!.item.from === undefined && store.live.isQuick(aim!.cell) ? (store.spread(aim!.cell)?.plusMinus ?? 0) : 0;
  const [first] = shown;
  const within = shown.filter(({ aims }) => Math.abs(aims[0]! - first!.aims[0]!) <= plusMinus).length;
  if (within > 1)
    return `The ± of the result, ${aimDifference(store, aim!.cell, plusMinus)}, is larger than the differences among ${within === shown.length ? 'all of these' : `the first ${within}`}.`;
  const near = alike(shown, little);
  return near > 1
    ? `${near === shown.length ? 'All of these' : `The first ${near}`} lie within half a percent: closer than two builds can be told apart.`
    : '';
}
