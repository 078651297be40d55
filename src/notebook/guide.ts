import type { Cell, Input } from '../graph/cell.ts';
import type { Choice } from '../graph/kind.ts';
import type { Catalogue } from './catalogue.ts';
import { GuideFault } from './guide-fault.ts';
import {
  type GuideWords,
  type Names,
  shownCell,
  text,
  type ValuePlace,
  valuePlace,
  variantNamed,
  wordsOf,
} from './guide-words.ts';

/** One thing to try. */
export type Trial = FieldTrial | ChooseTrial | OpenTrial;
/** Move a field's figure by so much (SI), or its choice to another, and watch what follows. */
export interface FieldTrial {
  readonly is: 'field';
  readonly say: GuideWords;
  readonly move: Cell;
  /** By how much a figure is to move; the id of a choice. */
  readonly to: number | string;
  readonly watch: readonly ValuePlace[];
  /** Said once the field stands as it was to stand. */
  readonly done: GuideWords;
}
/** Choose a variant, by its id. */
interface ChooseTrial {
  readonly is: 'choose';
  readonly say: GuideWords;
  readonly variant: string;
  readonly done: GuideWords;
}
/** Open a chapter at one of its figures; both by their ids. */
interface OpenTrial {
  readonly is: 'open';
  readonly say: GuideWords;
  readonly chapter: string;
  readonly figure: string;
}
export const ways = ['rise', 'fall', 'stay'] as const;
export type Way = (typeof ways)[number];
/** A question that the notebook itself answers: what `read` does when `vary` is moved by so much (SI) from where it stands. */
export interface Question {
  readonly ask: GuideWords;
  /** The variant it is asked of, by its id; undefined: the one that is looked at. */
  readonly of: string | undefined;
  readonly vary: Cell;
  readonly by: number;
  readonly read: Cell;
  /** Said beside the answer: what the change leaves alone, or does as well. */
  readonly beside: Cell | undefined;
  readonly choices: readonly Way[];
  readonly right: string;
  readonly wrong: string;
  readonly because: Readonly<Record<Way, string>>;
}
export interface GuideStep {
  readonly heading: string;
  readonly text: readonly GuideWords[];
  readonly trial: Trial | undefined;
  readonly question: Question | undefined;
  /** Said at the foot of the step. */
  readonly last: string | undefined;
}
export interface Guide {
  readonly name: string;
  readonly steps: readonly GuideStep[];
}

type Loose = Readonly<Record<string, unknown>>;

/**
 * Reads the `guide` of a scenario, which may name the notebook's variants. Throws GuideFault with a sentence that names
 * the step and what is wrong in it.
 */
export function readGuide(saved: unknown, catalogue: Catalogue, variants: Names['variants'] = []): Guide {
  const guide = object(saved, 'The guide');
  const names = { catalogue, variants };
  const steps = list(guide.steps, 'The guide’s steps').map((step, i) => stepOf(step, `Step ${i + 1}`, names));
  if (steps.length === 0) throw new GuideFault('The guide has no steps.');
  return { name: text(guide.name, 'The guide’s name'), steps };
}

function stepOf(saved: unknown, at: string, names: Names): GuideStep {
  const step = object(saved, at);
  return {
    heading: text(step.heading, `${at}: its heading`),
    text: list(step.text, `${at}: its text`).map((t) => wordsOf(t, `${at}: its text`, names)),
    trial: step.try === undefined ? undefined : trialOf(object(step.try, `${at}: what it asks for`), at, names),
    question:
      step.question === undefined ? undefined : questionOf(object(step.question, `${at}: its question`), at, names),
    last: step.last === undefined ? undefined : text(step.last, `${at}: its last words`),
  };
}

function trialOf(saved: Loose, at: string, names: Names): Trial {
  const asked = ['move', 'choose', 'open'].filter((key) => saved[key] !== undefined);
  if (asked.length !== 1) throw new GuideFault(`${at}: it is to ask for one thing: move, choose or open.`);
  const say = wordsOf(saved.say, `${at}: what it asks for`, names, true);
  if (saved.open !== undefined) return { is: 'open', say, ...figureNamed(saved.open, at, names) };
  const done = wordsOf(saved.done, `${at}: what it says when that is done`, names);
  if (saved.choose !== undefined) return { is: 'choose', say, variant: variantNamed(saved.choose, at, names), done };
  return { is: 'field', say, done, ...moveOf(saved, at, names), watch: watched(saved.watch, at, names) };
}
function moveOf(saved: Loose, at: string, names: Names): Pick<FieldTrial, 'move' | 'to'> {
  if (saved.to === undefined) return { move: movable(saved.move, at, names), to: change(saved.by, at) };
  const move = shownCell(saved.move, at, names);
  if (!isChoice(move)) throw new GuideFault(`${at}: ${move.label} is no choice.`);
  const to: unknown = saved.to;
  const option = (move.kind as Choice).options.find((o) => o.id === to);
  if (!option) throw new GuideFault(`${at}: “${String(to)}” is not to be chosen for ${move.label}.`);
  return { move, to: option.id };
}
const watched = (saved: unknown, at: string, names: Names): readonly ValuePlace[] =>
  list(saved, `${at}: what it watches`).map((id) => valuePlace(id, at, names));
function figureNamed(id: unknown, at: string, { catalogue }: Names): Pick<OpenTrial, 'chapter' | 'figure'> {
  const chapter = catalogue.chapters.find(({ figures }) => figures?.some((f) => f.id === id));
  if (!chapter) throw new GuideFault(`${at}: no figure is called “${String(id)}”.`);
  return { chapter: chapter.id, figure: String(id) };
}

function questionOf(saved: Loose, at: string, names: Names): Question {
  const choices = list(saved.choices, `${at}: its choices`).map((choice) => {
    const way = ways.find((w) => w === choice);
    if (!way) throw new GuideFault(`${at}: “${String(choice)}” is no choice; they are ${ways.join(', ')}.`);
    return way;
  });
  if (choices.length < 2) throw new GuideFault(`${at}: a question needs two choices or three.`);
  const because = object(saved.because, `${at}: its reasons`);
  const reason = (way: Way): string => text(because[way], `${at}: its reason for “${way}”`);
  const read = shownCell(saved.read, at, names);
  if (read.kind.name !== 'scalar') throw new GuideFault(`${at}: ${read.label} is no figure that could rise or fall.`);
  return {
    ask: wordsOf(saved.ask, `${at}: its question`, names, true),
    of: saved.of === undefined ? undefined : variantNamed(saved.of, at, names),
    vary: movable(saved.vary, at, names),
    by: change(saved.by, at),
    read,
    beside: saved.beside === undefined ? undefined : shownCell(saved.beside, at, names),
    choices,
    right: text(saved.right, `${at}: its word for a right answer`),
    wrong: text(saved.wrong, `${at}: its word for a wrong answer`),
    because: { rise: reason('rise'), fall: reason('fall'), stay: reason('stay') },
  };
}

const isChoice = (cell: Cell): cell is Input<string> => cell.role === 'input' && cell.kind.name === 'choice';
function movable(id: unknown, at: string, names: Names): Cell {
  const cell = shownCell(id, at, names);
  if (cell.kind.name !== 'scalar' || (cell.role !== 'input' && cell.movedBy.length === 0))
    throw new GuideFault(`${at}: ${cell.label} is no field that can be moved.`);
  return cell;
}
function change(saved: unknown, at: string): number {
  if (typeof saved !== 'number' || !Number.isFinite(saved) || saved === 0)
    throw new GuideFault(`${at}: it does not say by how much something is to move.`);
  return saved;
}
function object(saved: unknown, what: string): Loose {
  if (typeof saved !== 'object' || saved === null || Array.isArray(saved))
    throw new GuideFault(`${what} cannot be read.`);
  return saved as Loose;
}
function list(saved: unknown, what: string): readonly unknown[] {
  if (!Array.isArray(saved)) throw new GuideFault(`${what} cannot be read.`);
  return saved;
}
