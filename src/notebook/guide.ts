import type { Cell } from '../graph/cell.ts';
import { type Catalogue, cellNamed } from './catalogue.ts';

/** Words with places for values: a cell's, as the page shows it, or the goal of what the step asks for. */
export type GuideWords = readonly (string | Cell | typeof goal)[];
export const goal = Symbol('goal');

/** One thing to try: move a cell by so much (SI) and watch what follows. */
export interface Trial {
  readonly say: GuideWords;
  readonly move: Cell;
  readonly by: number;
  readonly watch: readonly Cell[];
  /** Said once the cell has gone as far as it was to go. */
  readonly done: GuideWords;
}
export const ways = ['rise', 'fall', 'stay'] as const;
export type Way = (typeof ways)[number];
/** A question that the notebook itself answers: what `read` does when `vary` is moved by so much (SI) from where it stands. */
export interface Question {
  readonly ask: GuideWords;
  readonly vary: Cell;
  readonly by: number;
  readonly read: Cell;
  /** Said beside the answer: what the change leaves alone. */
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

/** What a guide's data has wrong, and in which step. */
export class GuideFault extends Error {}

type Loose = Readonly<Record<string, unknown>>;

/** Reads the `guide` of a scenario. Throws GuideFault with a sentence that names the step and what is wrong in it. */
export function readGuide(saved: unknown, catalogue: Catalogue): Guide {
  const guide = object(saved, 'The guide');
  const steps = list(guide.steps, 'The guide’s steps').map((step, i) => stepOf(step, `Step ${i + 1}`, catalogue));
  if (steps.length === 0) throw new GuideFault('The guide has no steps.');
  return { name: text(guide.name, 'The guide’s name'), steps };
}

function stepOf(saved: unknown, at: string, catalogue: Catalogue): GuideStep {
  const step = object(saved, at);
  return {
    heading: text(step.heading, `${at}: its heading`),
    text: list(step.text, `${at}: its text`).map((t) => wordsOf(t, `${at}: its text`, catalogue)),
    trial: step.try === undefined ? undefined : trialOf(object(step.try, `${at}: what it asks for`), at, catalogue),
    question:
      step.question === undefined ? undefined : questionOf(object(step.question, `${at}: its question`), at, catalogue),
    last: step.last === undefined ? undefined : text(step.last, `${at}: its last words`),
  };
}

function trialOf(saved: Loose, at: string, catalogue: Catalogue): Trial {
  return {
    say: wordsOf(saved.say, `${at}: what it asks for`, catalogue, true),
    move: movable(saved.move, at, catalogue),
    by: change(saved.by, at),
    watch: list(saved.watch, `${at}: what it watches`).map((id) => shownCell(id, at, catalogue)),
    done: wordsOf(saved.done, `${at}: what it says when that is done`, catalogue),
  };
}

function questionOf(saved: Loose, at: string, catalogue: Catalogue): Question {
  const choices = list(saved.choices, `${at}: its choices`).map((choice) => {
    const way = ways.find((w) => w === choice);
    if (!way) throw new GuideFault(`${at}: “${String(choice)}” is no choice; they are ${ways.join(', ')}.`);
    return way;
  });
  if (choices.length < 2) throw new GuideFault(`${at}: a question needs two choices or three.`);
  const because = object(saved.because, `${at}: its reasons`);
  const reason = (way: Way): string => text(because[way], `${at}: its reason for “${way}”`);
  const read = shownCell(saved.read, at, catalogue);
  if (read.kind.name !== 'scalar') throw new GuideFault(`${at}: ${read.label} is no figure that could rise or fall.`);
  return {
    ask: wordsOf(saved.ask, `${at}: its question`, catalogue, true),
    vary: movable(saved.vary, at, catalogue),
    by: change(saved.by, at),
    read,
    beside: saved.beside === undefined ? undefined : shownCell(saved.beside, at, catalogue),
    choices,
    right: text(saved.right, `${at}: its word for a right answer`),
    wrong: text(saved.wrong, `${at}: its word for a wrong answer`),
    because: { rise: reason('rise'), fall: reason('fall'), stay: reason('stay') },
  };
}

/** "{staticRatio} on paper": names in braces are cells; {goal} only where something is asked for. */
function wordsOf(saved: unknown, at: string, catalogue: Catalogue, hasGoal = false): GuideWords {
  return text(saved, at)
    .split(/(\{[^{}]*\})/)
    .filter((part) => part !== '')
    .map((part) => {
      if (!part.startsWith('{')) return part;
      const name = part.slice(1, -1);
      return name === 'goal' && hasGoal ? goal : shownCell(name, at, catalogue);
    });
}

const unspeakable = ['record', 'curve', 'table', 'remark'];
function shownCell(id: unknown, at: string, catalogue: Catalogue): Cell {
  const cell = typeof id === 'string' ? cellNamed(catalogue, id) : undefined;
  if (!cell) throw new GuideFault(`${at}: nothing is called “${String(id)}”.`);
  if (unspeakable.includes(cell.kind.name)) throw new GuideFault(`${at}: ${cell.label} cannot be said in a sentence.`);
  return cell;
}
function movable(id: unknown, at: string, catalogue: Catalogue): Cell {
  const cell = shownCell(id, at, catalogue);
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
function text(saved: unknown, what: string): string {
  if (typeof saved !== 'string' || saved.trim() === '') throw new GuideFault(`${what} is missing.`);
  return saved;
}
