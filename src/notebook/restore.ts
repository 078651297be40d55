import type { Json } from '../graph/kind.ts';
import { isBase, latestBase } from './base.ts';
import { type Catalogue, cellNamed } from './catalogue.ts';
import {
  type Document,
  documentVersion,
  type Item,
  longestName,
  mostVariants,
  type Saved,
  type Variant,
} from './document.ts';
import { figureItem, isFigure, isNumeric, isObject, type Loose } from './restore-item.ts';

/** A valid document, what had to be mended (in plain words), and whether a newer release wrote it. */
export interface Restored {
  readonly document: Document;
  readonly repairs: readonly string[];
  readonly newer: boolean;
}

const most = { title: 120, sentence: 600, variants: mostVariants, pins: 8, items: 60, name: longestName };

/**
 * Makes a valid document of anything. What is sound is left alone; what is not is left out, with a sentence.
 * `fallback` stands in for what is missing altogether.
 */
export function restore(anything: unknown, catalogue: Catalogue, fallback: Document): Restored {
  if (!isObject(anything))
    return { document: fallback, repairs: ['This was not a notebook, so the example is shown.'], newer: false };
  const repairs: string[] = [];
  const mend = (sentence: string): undefined => void repairs.push(sentence);
  const newer = typeof anything.version === 'number' && anything.version > documentVersion;
  if (newer) mend('A newer release wrote this notebook. What this one knows is shown; the original is left as it is.');
  else if (anything.version !== undefined && anything.version !== documentVersion)
    mend('The notebook’s version could not be read.');

  const base = isBase(anything.base)
    ? anything.base
    : (anything.base !== undefined && mend('Its starting values are unknown here; today’s are used.'), latestBase);
  const variants = variantsOf(anything.variants, catalogue, mend);
  const answers = answersOf(anything.answers, catalogue);
  return {
    repairs,
    newer,
    document: {
      version: documentVersion,
      base,
      title: text(anything.title, most.title, fallback.title, 'title', mend),
      sentence: text(anything.sentence, most.sentence, '', 'opening sentence', mend),
      inputs: values(anything.inputs, catalogue, 'input', 'inputs', mend),
      held: values(anything.held, catalogue, 'derived', 'held values', mend),
      units: unitsOf(anything.units, catalogue, mend),
      tolerances: tolerancesOf(anything.tolerances, catalogue, mend),
      variants,
      chosen: chosenOf(anything.chosen, variants, mend),
      pins: pinsOf(anything.pins, catalogue, fallback.pins, mend),
      page: pageOf(anything.page, catalogue, fallback.page, mend),
      ...(answers ? { answers } : {}),
    },
  };
}

type Mend = (sentence: string) => undefined;

function object(thing: unknown, what: string, mend: Mend): Loose {
  if (isObject(thing)) return thing;
  if (thing !== undefined) mend(`The ${what} could not be read.`);
  return {};
}
function array(thing: unknown, what: string, mend: Mend): readonly unknown[] {
  if (Array.isArray(thing)) return thing;
  if (thing !== undefined) mend(`The ${what} could not be read.`);
  return [];
}

function text(thing: unknown, longest: number, otherwise: string, what: string, mend: Mend): string {
  if (thing === undefined) return otherwise;
  if (typeof thing !== 'string') return mend(`The ${what} could not be read.`) ?? otherwise;
  if (thing.length <= longest) return thing;
  mend(`The ${what} was too long and is cut short.`);
  return thing.slice(0, longest);
}

function values(thing: unknown, catalogue: Catalogue, role: 'input' | 'derived', what: string, mend: Mend): Saved {
  const sound: Record<string, Json> = {};
  for (const [id, saved] of Object.entries(object(thing, what, mend))) {
    const cell = cellNamed(catalogue, id);
    if (!cell) mend(`Nothing is called “${id.slice(0, 40)}” here; it is left out.`);
    else if ((cell.role === 'input') !== (role === 'input'))
      mend(`${cell.label} cannot be ${role === 'input' ? 'typed' : 'held'}; it is left out.`);
    else if (role === 'derived' && saved === null) sound[cell.id] = null; // let go in this variant alone
    else {
      const value = cell.kind.restore(saved);
      if (value === undefined) mend(`${cell.label} could not be read; its starting value is used.`);
      else sound[cell.id] = cell.kind.save(value);
    }
  }
  return sound;
}

function unitsOf(thing: unknown, catalogue: Catalogue, mend: Mend): Document['units'] {
  const units = object(thing, 'units', mend);
  const isSystem = (s: unknown): s is 'us' | 'si' => s === 'us' || s === 'si';
  if (units.system !== undefined && !isSystem(units.system))
    mend('The system of units could not be read; US units are shown.');
  const fields: Record<string, 'us' | 'si'> = {};
  for (const [id, system] of Object.entries(object(units.fields, 'units of the fields', mend))) {
    const cell = cellNamed(catalogue, id);
    if (cell && isSystem(system)) fields[cell.id] = system;
    else mend(`The unit of “${id.slice(0, 40)}” could not be read.`);
  }
  return { system: isSystem(units.system) ? units.system : 'us', fields };
}

function tolerancesOf(thing: unknown, catalogue: Catalogue, mend: Mend): Document['tolerances'] {
  const sound: Record<string, number> = {};
  for (const [id, tolerance] of Object.entries(object(thing, 'tolerances', mend))) {
    const cell = cellNamed(catalogue, id);
    if (cell && isNumeric(cell) && isFigure(tolerance) && tolerance >= 0) sound[cell.id] = tolerance;
    else mend(`The ± of “${cell?.label ?? id.slice(0, 40)}” could not be read.`);
  }
  return sound;
}

function variantsOf(thing: unknown, catalogue: Catalogue, mend: Mend): readonly Variant[] {
  const variants: Variant[] = [];
  for (const [i, v] of array(thing, 'variants', mend).entries()) {
    if (!isObject(v)) {
      mend(`Variant ${i + 1} could not be read.`);
      continue;
    }
    if (variants.length === most.variants) {
      mend(`Only the first ${most.variants} variants are kept.`);
      break;
    }
    const wanted = typeof v.id === 'string' && v.id !== '' ? v.id.slice(0, most.name) : '';
    const taken = (id: string): boolean => id === '' || variants.some((other) => other.id === id);
    let id = wanted;
    for (let n = i + 1; taken(id); n++) id = `variant${n}`;
    if (id !== v.id) mend(`Variant ${i + 1} had no name of its own.`);
    variants.push({
      id,
      name: text(v.name, most.name, id, `name of variant ${i + 1}`, mend),
      inputs: values(v.inputs, catalogue, 'input', `inputs of variant ${i + 1}`, mend),
      held: values(v.held, catalogue, 'derived', `held values of variant ${i + 1}`, mend),
    });
  }
  return variants;
}

function chosenOf(thing: unknown, variants: readonly Variant[], mend: Mend): string | null {
  if (thing === undefined || thing === null) return null;
  const found = variants.find((v) => v.id === thing);
  return found ? found.id : (mend('The chosen variant is not there.') ?? null);
}

function pinsOf(thing: unknown, catalogue: Catalogue, otherwise: readonly string[], mend: Mend): readonly string[] {
  if (thing === undefined) return otherwise;
  const pins: string[] = [];
  for (const id of array(thing, 'pinned answers', mend)) {
    const cell = typeof id === 'string' ? cellNamed(catalogue, id) : undefined;
    if (!cell) mend('A pinned answer is not known here.');
    else if (!pins.includes(cell.id) && pins.length < most.pins) pins.push(cell.id);
  }
  return pins;
}

/**
 * Chapters that a document does not name (a later release brought them) follow in their order. They do not count
 * toward the most a page may hold: there is always room for them.
 */
function pageOf(thing: unknown, catalogue: Catalogue, otherwise: readonly Item[], mend: Mend): readonly Item[] {
  if (thing === undefined) return otherwise;
  const items: Item[] = [];
  const chapters = new Set<string>();
  const ids = new Set<string>();
  const add = (item: Item): void => {
    let { id } = item;
    for (let n = 1; ids.has(id); n++) id = `${item.id.slice(0, most.name - 4)}${n}`;
    ids.add(id);
    items.push(id === item.id ? item : { ...item, id });
  };
  for (const [i, item] of array(thing, 'page', mend).entries()) {
    const room = items.length - chapters.size < most.items || (isObject(item) && item.type === 'chapter');
    const made = room ? itemOf(item, catalogue, chapters) : undefined;
    if (made) add(made);
    else mend(`Part ${i + 1} of the page could not be read and is left out.`);
  }
  for (const { id } of catalogue.chapters) if (!chapters.has(id)) add({ id, type: 'chapter', chapter: id });
  return items;
}

function itemOf(thing: unknown, catalogue: Catalogue, chapters: Set<string>): Item | undefined {
  if (!isObject(thing) || typeof thing.id !== 'string' || thing.id === '' || thing.id.length > most.name)
    return undefined;
  if (thing.type === 'chapter') {
    const found = catalogue.chapters.find((c) => c.id === thing.chapter);
    if (!found || chapters.has(found.id)) return undefined;
    chapters.add(found.id);
    return { id: thing.id, type: 'chapter', chapter: found.id };
  }
  return figureItem(thing, thing.id, catalogue);
}

function answersOf(thing: unknown, catalogue: Catalogue): Document['answers'] {
  if (!isObject(thing) || typeof thing.release !== 'string' || !isObject(thing.values)) return undefined;
  const saw: Record<string, Json> = {};
  for (const [id, value] of Object.entries(thing.values)) {
    const cell = cellNamed(catalogue, id);
    if (cell && (isFigure(value) || typeof value === 'string')) saw[cell.id] = value;
  }
  return { release: thing.release.slice(0, 20), values: saw };
}
