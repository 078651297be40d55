import type { Cell } from '../graph/cell.ts';
import { answersOf, fieldsOf } from '../graph/chapter.ts';
import { sentence, type Tone, type Verdict, type VerdictKind } from '../graph/kind.ts';
import { Probe } from '../graph/probe.ts';
import { NotSettled, type Snapshot } from '../graph/snapshot.ts';
import { Impossible, type State } from '../graph/state.ts';
import type { Phrase } from '../units/phrase.ts';
import type { Catalogue } from './catalogue.ts';
import { isLeft, trustsOf } from './trust.ts';

const rank = { comfortable: 0, borderline: 1, beyond: 2 };

/** A value for a cell that stands by itself or has a mover. */
export interface Change {
  readonly cell: Cell;
  readonly value: number;
}
/** What a change does to the cautions. */
export interface Cautions {
  /** Remarks that are silent now, verdicts whose word gets worse or that lose their answer: in full. */
  readonly on: readonly Phrase[];
  /** Remarks that fall silent, verdicts whose word gets better: by name. */
  readonly off: readonly string[];
  /** Names of those on which slow work decides: they are known once the change is made. */
  readonly later: readonly string[];
}

/**
 * What changes made together would do to the cautions: a change that mends one thing by spoiling another says so.
 * Leaving a range of trust is one. Throws Impossible where the changes cannot be made together.
 */
export function cautionsChanged(at: Snapshot, catalogue: Catalogue, changes: readonly Change[]): Cautions {
  const on: Phrase[] = [];
  const off: string[] = [];
  const later: string[] = [];
  for (const c of [...catalogue.cells.values()].filter(isCaution)) {
    const news = newsOf(at, changes, c);
    if (news === 'later') later.push(c.label);
    if (typeof news === 'string') continue;
    const { before, after, fault } = news;
    const [was, is] = [gravity(c, before), gravity(c, after)];
    if (fault && before !== undefined) on.push([`${c.label}: `, ...fault]);
    else if (is > was) on.push(saidBy(c, after));
    else if (is < was && !fault) off.push(nameOf(c, before));
  }
  for (const { cell, watched, range } of trustsOf(catalogue)) {
    const news = newsOf(at, changes, watched);
    if (typeof news === 'string') continue;
    const [was, is] = [isLeft(range, news.before), isLeft(range, news.after)];
    if (is && !was) on.push([`${cell.label}: outside the range it can be trusted in.`]);
    if (was && !is && !news.fault) off.push(`${cell.label}: outside its range`);
  }
  return { on: distinct(on), off: [...new Set(off)], later };
}

/** What a cell is and would be; its fault if it would have no answer. */
interface News {
  readonly before: unknown;
  readonly after: unknown;
  readonly fault: Phrase | null;
}
/** Same: nothing of the changes reaches it; later: slow work decides; never: something it reads has no answer anyway. */
function newsOf(at: Snapshot, changes: readonly Change[], read: Cell): News | 'same' | 'later' | 'never' {
  const vary = changes.map((change) => change.cell);
  try {
    const probe = new Probe(at, vary, [read]);
    if (read.role !== 'input' && probe.path.length === 0 && !vary.includes(read)) return 'same';
    if (probe.isSlow) return 'later';
    changes.forEach(({ value }, k) => probe.put(k, value));
    probe.tryRun();
    const state = at.state(at.graph.slotOf.get(read)!);
    const after = probe.tryGet(0);
    const before = state.is === 'ready' ? state.value : undefined;
    return { before, after, fault: after === undefined ? faultOf(probe) : null };
  } catch (error) {
    if (error instanceof NotSettled) return error.state.is === 'fault' ? 'never' : 'later';
    throw error;
  }
}
function faultOf(probe: Probe): Phrase {
  try {
    probe.get(0);
  } catch (error) {
    if (error instanceof Impossible) return error.phrase;
    throw error;
  }
  return [];
}

const isCaution = (c: Cell): boolean =>
  c.role !== 'input' && (c.kind.name === 'verdict' || (c.kind.name === 'remark' && c.about !== undefined));
const verdictKind = (c: Cell): VerdictKind => c.kind as unknown as VerdictKind;

/** How much of a caution a value is; one that says nothing is none. */
function gravity(c: Cell, value: unknown): number {
  if (value === undefined || value === null) return 0;
  return c.kind.name === 'verdict' ? rank[wordOf(c, value).tone] : 1;
}
const wordOf = (c: Cell, value: unknown): VerdictKind['words'][number] =>
  verdictKind(c).words.find((w) => w.id === (value as Verdict).word)!;
const saidBy = (c: Cell, value: unknown): Phrase =>
  c.kind.name === 'verdict' ? sentence(verdictKind(c), value as Verdict) : (value as Phrase);
const nameOf = (c: Cell, before: unknown): string =>
  c.kind.name === 'verdict' ? `${c.label}: ${wordOf(c, before).label}` : c.label;

const distinct = (phrases: readonly Phrase[]): readonly Phrase[] =>
  phrases.filter((p, i) => phrases.findIndex((q) => JSON.stringify(q) === JSON.stringify(p)) === i);

/** The cell that a remark is about, or the verdict itself. */
const aboutOf = (c: Cell): Cell => (c.role === 'input' ? c : (c.about ?? c));
/** How bad what a cell says is; a remark is never worse than borderline. */
const toneOf = (c: Cell, value: unknown): Tone => (c.kind.name === 'verdict' ? wordOf(c, value).tone : 'borderline');

/** What warns, in the order of the page. */
export function cautionsOf({ cells, chapters }: Catalogue): readonly Cell[] {
  const order = chapters.flatMap((c) => [...fieldsOf(c), ...answersOf(c)]);
  return [...cells.values()]
    .filter(isCaution)
    .toSorted((a, b) => order.indexOf(aboutOf(a)) - order.indexOf(aboutOf(b)));
}

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
    const was = before.is === 'ready' ? before.value : undefined;
    if (gravity(c, after.value) > gravity(c, was))
      warned.push({ about: aboutOf(c), words: saidBy(c, after.value), tone: toneOf(c, after.value) });
  }
  return warned;
}
