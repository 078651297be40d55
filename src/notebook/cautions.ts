import type { Cell } from '../graph/cell.ts';
import { answersOf, fieldsOf } from '../graph/chapter.ts';
import { sentence, type Tone, type Verdict, type VerdictKind } from '../graph/kind.ts';
import { Probe } from '../graph/probe.ts';
import type { Snapshot } from '../graph/snapshot.ts';
import type { State } from '../graph/state.ts';
import type { Phrase } from '../units/phrase.ts';
import type { Catalogue } from './catalogue.ts';

const rank = { comfortable: 0, borderline: 1, beyond: 2 };

/**
 * The cautions that a change of one cell would switch on: remarks that are silent now, verdicts whose word gets worse.
 * A change that mends one thing by spoiling another says so. Throws NotSettled.
 */
export const cautionsTurnedOn = (at: Snapshot, catalogue: Catalogue, vary: Cell, value: number): readonly Phrase[] =>
  cautionsOfAll(at, catalogue, [[vary, value]]);

/** Likewise for several cells that change together. Throws NotSettled, and Impossible if two of them move one input. */
export function cautionsOfAll(
  at: Snapshot,
  { cells }: Catalogue,
  changes: readonly (readonly [Cell, number])[],
): readonly Phrase[] {
  const vary = changes.map(([cell]) => cell);
  const warned: Phrase[] = [];
  for (const c of cells.values()) {
    if (!isCaution(c)) continue;
    const probe = new Probe(at, vary, [c]);
    if (probe.path.length === 0 || probe.isSlow) continue; // what takes long is said when it is there
    const before = at.state(at.graph.slotOf.get(c)!);
    changes.forEach(([, value], k) => probe.put(k, value));
    probe.tryRun();
    const after = probe.tryGet(0);
    const warning = warningOf(c, before.is === 'ready' ? before.value : undefined, after);
    if (warning) warned.push(warning);
  }
  return warned;
}

/** How bad what a cell says is; a remark is never worse than borderline. */
const toneOf = (c: Cell, value: unknown): Tone =>
  c.kind.name === 'verdict'
    ? (c.kind as unknown as VerdictKind).words.find((w) => w.id === (value as Verdict).word)!.tone
    : 'borderline';
/** The cell that a remark is about, or the verdict itself. */
const aboutOf = (c: Cell): Cell => (c.role === 'input' ? c : (c.about ?? c));

/** What warns, in the order of the page. */
export function cautionsOf({ cells, chapters }: Catalogue): readonly Cell[] {
  const order = chapters.flatMap((c) => [...fieldsOf(c), ...answersOf(c)]);
  return [...cells.values()]
    .filter(isCaution)
    .toSorted((a, b) => order.indexOf(aboutOf(a)) - order.indexOf(aboutOf(b)));
}
/** True for what warns: verdicts, and remarks about a field. */
const isCaution = (c: Cell): boolean =>
  c.kind.name === 'verdict' || (c.role !== 'input' && c.kind.name === 'remark' && c.about !== undefined);

/** Where a cell stands in one engine. */
type StateOf = (cell: Cell) => State;
/** What is said of a cell's value. */
interface Caution {
  readonly about: Cell;
  readonly words: Phrase;
  readonly tone: Tone;
}
/** What one engine warns of and another does not, or not as badly; of cells that have settled in both. */
export function cautionsBeside(cautions: readonly Cell[], engine: StateOf, other: StateOf): readonly Caution[] {
  const warned: Caution[] = [];
  for (const c of cautions) {
    const [after, before] = [engine(c), other(c)];
    if (after.is !== 'ready' || before.is === 'waiting' || before.is === 'coming') continue;
    const warning = warningOf(c, before.is === 'ready' ? before.value : undefined, after.value);
    if (warning) warned.push({ about: aboutOf(c), words: warning, tone: toneOf(c, after.value) });
  }
  return warned;
}

/** What a value warns of that the one before it did not, or not as badly; null if nothing. No value: undefined. */
function warningOf(c: Cell, before: unknown, after: unknown): Phrase | null {
  if (!after) return null;
  if (c.kind.name !== 'verdict') return before ? null : (after as Phrase);
  const isWorse = rank[toneOf(c, after)] > (before === undefined ? 0 : rank[toneOf(c, before)]);
  return isWorse ? sentence(c.kind as unknown as VerdictKind, after as Verdict) : null;
}
