import { readFileSync } from 'node:fs';
import { catalogue as cells, chapters, roomOf } from '../cells/index.ts';
import '../cells/output/cycle.work.ts';
import example from '../scenarios/edge-of-premium.json' with { type: 'json' };
import { type Cell, drain } from './graph/cell.ts';
import {
  type Curve,
  type CurveKind,
  type Scalar,
  type Table,
  type Verdict,
  type VerdictKind,
  type Optional,
  sentence,
} from './graph/kind.ts';
import { Impossible, type State } from './graph/state.ts';
import { sweepSteps } from './graph/sweep.ts';
import { typed } from './graph/typed.ts';
import type { Document } from './notebook/document.ts';
import { restore } from './notebook/restore.ts';
import { Store } from './notebook/store.ts';
import { type Phrase, say } from './units/phrase.ts';
import type { Quantity, System } from './units/quantity.ts';
import { tidy, toUnit } from './units/unit.ts';

/** What cannot be done, in one line for whoever called. */
class Refused extends Error {}

const usage =
  'evaluate FILE.json [--variant ID] [--set ID=VALUE]... [--hold ID=VALUE]... --get ID[,ID]... [--units us|si] [--sweep ID=FROM..TO/STEP] [--speeds FROM..TO/STEP], or --list';

interface Call {
  readonly files: string[];
  readonly set: string[];
  readonly hold: string[];
  readonly get: string[];
  variant: string | null;
  units: System | null;
  sweep: string | null;
  list: boolean;
}

/** Runs one call; returns what to print. Throws Refused. */
function evaluate(words: readonly string[]): unknown {
  const call = read(words);
  if (call.list) return list(call.units ?? 'us');
  if (call.files.length !== 1) throw new Refused(`Name one notebook file. Usage: ${usage}`);
  const wanted = call.get.map((id) => cellOf(id));
  if (wanted.length === 0) throw new Refused(`Say what to --get. Usage: ${usage}`);
  const document = open(call.files[0]!);
  const system = call.units ?? document.units.system;
  if (call.variant !== null && !document.variants.some((v) => v.id === call.variant))
    throw new Refused(
      `There is no variant "${call.variant}". It has: ${document.variants.map((v) => v.id).join(', ') || 'none'}.`,
    );
  const chosen = call.variant ?? document.chosen;
  const store = new Store({
    catalogue: { cells, chapters },
    open: { document: { ...document, chosen }, opened: document },
  });

  for (const [cell, value] of call.set.map((pair) => assignment(pair, system))) {
    if (cell.role !== 'input')
      throw new Refused(`"${cell.id}" is computed. Use --hold ${cell.id}=... to hold it at a value.`);
    store.set([[cell, value]], { what: 'set' });
  }
  for (const [cell, value] of call.hold.map((pair) => assignment(pair, system))) {
    if (cell.role === 'input') throw new Refused(`"${cell.id}" is an input. Use --set ${cell.id}=...`);
    store.hold(cell, value, { what: 'hold' });
  }
  store.watch(wanted, () => {});
  const answers: Record<string, unknown> = Object.fromEntries(
    wanted.map((cell) => [cell.id, answer(store, cell, system)]),
  );
  if (call.sweep !== null) answers.sweep = sweep(store, call.sweep, wanted, system);
  return answers;
}

function read(words: readonly string[]): Call {
  const call: Call = { files: [], set: [], hold: [], get: [], variant: null, units: null, sweep: null, list: false };
  for (let i = 0; i < words.length; i++) {
    const word = words[i]!;
    const next = (): string => {
      const value = words[++i];
      if (value === undefined) throw new Refused(`${word} needs a value. Usage: ${usage}`);
      return value;
    };
    if (word === '--set') call.set.push(next());
    else if (word === '--hold') call.hold.push(next());
    else if (word === '--get')
      call.get.push(
        ...next()
          .split(',')
          .map((id) => id.trim())
          .filter((id) => id !== ''),
      );
    else if (word === '--variant') call.variant = next();
    else if (word === '--sweep') call.sweep = next();
    else if (word === '--speeds') call.set.push(...speeds(next()));
    else if (word === '--list') call.list = true;
    else if (word === '--units') {
      const system = next();
      if (system !== 'us' && system !== 'si') throw new Refused('--units is us or si.');
      call.units = system;
    } else if (word.startsWith('--')) throw new Refused(`${word} is not known. Usage: ${usage}`);
    else call.files.push(word);
  }
  return call;
}

/** The speeds of the curves, rpm, as settings of their inputs. */
function speeds(words: string): readonly string[] {
  const [, from, to, step] = /^(.+?)\.\.(.+?)\/(.+)$/.exec(words) ?? [];
  if (!from || !to || !step) throw new Refused(`Write "${words}" as FROM..TO/STEP, in rpm.`);
  return [`curveFrom=${from}`, `curveTo=${to}`, `curveStep=${step}`];
}

function open(path: string): Document {
  let text: string;
  try {
    text = readFileSync(path, 'utf8');
  } catch {
    throw new Refused(`"${path}" cannot be read.`);
  }
  let saved: unknown;
  try {
    saved = JSON.parse(text);
  } catch {
    throw new Refused(`"${path}" is not JSON.`);
  }
  if (typeof saved !== 'object' || saved === null || Array.isArray(saved))
    throw new Refused(`"${path}" is not a notebook.`);
  const { document, repairs } = restore(saved, { cells, chapters }, example as Document);
  for (const repair of repairs) process.stderr.write(`${repair}\n`);
  return document;
}

function cellOf(id: string): Cell {
  const cell = cells.get(id);
  if (!cell || cell.kind.name === 'record') throw new Refused(`There is no "${id}". Use --list to see what there is.`);
  return cell;
}

function assignment(pair: string, system: System): readonly [Cell, unknown] {
  const [, id, text] = /^([^=]+)=(.*)$/s.exec(pair) ?? [];
  if (id === undefined || text === undefined) throw new Refused(`Write "${pair}" as ID=VALUE.`);
  const cell = cellOf(id.trim());
  const got = typed(cell.kind, text, system);
  if ('fault' in got) throw new Refused(`${cell.id}: ${got.fault}`);
  return [cell, got.value];
}

interface Answer {
  readonly value: unknown;
  readonly unit: string;
  readonly xUnit?: string;
  readonly state: State['is'];
  readonly message?: string;
}

function answer(store: Store, cell: Cell, system: System): Answer {
  const state = store.state(cell);
  const units = unitsOf(cell, system);
  if (state.is === 'fault')
    return { value: null, ...units, state: state.is, message: say(state.fault.message, system) };
  if (state.is === 'waiting')
    return { value: null, ...units, state: state.is, message: 'It waits for something that has no value.' };
  const outside = outOfTrust(store, cell, state.value);
  return {
    value: shown(store, cell, state.value, system),
    ...units,
    state: state.is,
    ...(outside ? { message: outside } : {}),
  };
}

/** An answer outside the range it can be trusted in is given all the same, with a word. */
function outOfTrust(store: Store, cell: Cell, value: unknown): string | null {
  if (cell.role === 'input') return null;
  const outside = ([low, high]: readonly [number, number], v: unknown): boolean =>
    typeof v === 'number' && (v < low || v > high);
  for (const [name, range] of Object.entries(cell.valid)) {
    const source = cell.from[name]!;
    const state = store.state(source);
    if (state.is === 'ready' && outside(range, state.value))
      return `Outside its range of trust: ${source.label.toLowerCase()}.`;
  }
  return cell.validValue && outside(cell.validValue, value) ? 'Outside its range of trust.' : null;
}

const inUnit = (si: number, quantity: Quantity, system: System): number =>
  Number(tidy(toUnit(si, quantity[system].unit)).toPrecision(12));

function shown(store: Store, cell: Cell, value: unknown, system: System): unknown {
  const { kind } = cell;
  switch (kind.name) {
    case 'scalar':
      return inUnit(value as number, (kind as Scalar).quantity, system);
    case 'optional':
      return value === null ? null : inUnit(value as number, (kind as unknown as Optional).of.quantity, system);
    case 'curve': {
      const { x, y } = value as Curve;
      const { x: xs, y: ys } = kind as unknown as CurveKind;
      return { x: Array.from(x, (v) => inUnit(v, xs, system)), y: Array.from(y, (v) => inUnit(v, ys, system)) };
    }
    case 'table':
      return (value as readonly (readonly number[])[]).map((row) =>
        row.map((v, i) => inUnit(v, (kind as unknown as Table).columns[i]!.quantity, system)),
      );
    case 'verdict': {
      const of = kind as unknown as VerdictKind;
      const v = value as Verdict;
      const edge = (i: number): number => inUnit(v.edges.at(i)!, of.quantity, system);
      return {
        word: v.word,
        value: inUnit(v.value, of.quantity, system),
        start: edge(0),
        end: edge(-1),
        sentence: say(sentence(of, v, store.spread(cell)?.plusMinus), system),
      };
    }
    case 'remark':
      return value === null ? null : say(value as Phrase, system);
    default:
      return value;
  }
}

function unitsOf(cell: Cell, system: System): { readonly unit: string; readonly xUnit?: string } {
  const { kind } = cell;
  const symbol = (quantity: Quantity): string => quantity[system].unit.symbol;
  switch (kind.name) {
    case 'scalar':
      return { unit: symbol((kind as Scalar).quantity) };
    case 'optional':
      return { unit: symbol((kind as unknown as Optional).of.quantity) };
    case 'verdict':
      return { unit: symbol((kind as unknown as VerdictKind).quantity) };
    case 'curve':
      return { unit: symbol((kind as unknown as CurveKind).y), xUnit: symbol((kind as unknown as CurveKind).x) };
    case 'table':
      return { unit: (kind as unknown as Table).columns.map((c) => symbol(c.quantity)).join(', ') };
    default:
      return { unit: '' };
  }
}

function sweep(store: Store, words: string, read: readonly Cell[], system: System): unknown {
  const [, id, from, to, step] = /^([^=]+)=(.+?)\.\.(.+?)\/(.+)$/.exec(words) ?? [];
  if (!id || !from || !to || !step) throw new Refused(`Write "${words}" as ID=FROM..TO/STEP.`);
  const vary = cellOf(id);
  if (vary.kind.name !== 'scalar') throw new Refused(`"${id}" is not a figure that can be swept.`);
  const { quantity } = vary.kind as Scalar;
  const [low, high] = [from, to].map((text) => assignment(`${id}=${text}`, system)[1] as number) as [number, number];
  const by = Number(step);
  const span = toUnit(high, quantity[system].unit) - toUnit(low, quantity[system].unit);
  if (!(by > 0 && by < Infinity))
    throw new Refused('The step of a sweep is a figure above zero, in the unit shown first.');
  const points = Math.floor(Math.abs(span) / by + 1e-9) + 1;
  if (points > 10_000) throw new Refused('A sweep has at most 10000 points.');
  const xs = Array.from({ length: points }, (_, i) => low + ((high - low) * (i * by)) / (Math.abs(span) || 1));
  let lines: readonly Float64Array[];
  try {
    lines = drain(sweepSteps(store.snapshot(), { vary, xs, read }))[0]!;
  } catch (error) {
    if (error instanceof Impossible || error instanceof Error)
      lines = read.map(() => new Float64Array(points).fill(NaN));
    else throw error;
  }
  const results = read.map((cell, j) => {
    const quantityOf =
      (cell.kind as Partial<Scalar>).quantity ?? (cell.kind as unknown as Partial<Optional>).of?.quantity;
    return [
      cell.id,
      {
        ...unitsOf(cell, system),
        y: Array.from(lines[j]!, (v) => (Number.isNaN(v) || !quantityOf ? null : inUnit(v, quantityOf, system))),
      },
    ];
  });
  return {
    id,
    unit: quantity[system].unit.symbol,
    x: xs.map((x) => inUnit(x, quantity, system)),
    results: Object.fromEntries(results),
  };
}

function list(system: System): unknown {
  return [...cells.values()]
    .filter((cell) => cell.kind.name !== 'record')
    .map((cell) => ({
      id: cell.id,
      role: cell.role === 'input' ? 'input' : 'result',
      kind: cell.kind.name,
      ...unitsOf(cell, system),
      chapter: roomOf.get(cell.id)!,
    }))
    .toSorted((a, b) => placeOf(a.chapter) - placeOf(b.chapter));
}

/** Where a room's chapter stands on the page; a room without one comes last. */
function placeOf(room: string): number {
  const at = chapters.findIndex((c) => c.id === room);
  return at < 0 ? chapters.length : at;
}

/** The command: prints JSON and returns the exit code. */
export function run(words: readonly string[]): number {
  try {
    process.stdout.write(`${JSON.stringify(evaluate(words), null, 2)}\n`);
    return 0;
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    process.stderr.write(`${error.message}\n`);
    return 2;
  }
}
