import type { Draft } from 'immer';
import type { Ground } from '../graph/explorer.ts';
import type { Json } from '../graph/kind.ts';
import { Probe } from '../graph/probe.ts';
import { baseValue } from './base.ts';
import { longestName, mostVariants, type Variant } from './document.ts';
import type { Looking } from './looking.ts';
import type { Store } from './store.ts';

/**
 * Keeps a design as a variant that holds only what differs from the notebook itself; what is looked at stays. The first
 * variant makes two: what is there is "A" from then on. Returns a sentence where there is no room, else null.
 */
export function keepDesign(store: Store, looking: Looking, at: readonly number[], name: string): string | null {
  const { document } = store;
  const { variants } = document;
  const first: Variant[] =
    variants.length === 0 ? [{ id: freeId(store, 'variant'), name: 'A', inputs: {}, held: {} }] : [];
  if (variants.length + first.length >= mostVariants)
    return `A notebook holds at most ${mostVariants} variants. Remove one first.`;
  const { inputs, held } = groundWith(looking, at);
  const differs = (saved: Json | undefined, now: Json | undefined): boolean =>
    JSON.stringify(saved) !== JSON.stringify(now);
  const kept: Variant = {
    id: freeId(store, 'best'),
    name: freeName(name, [...variants, ...first]),
    inputs: pick(inputs, (id, saved) => differs(saved, document.inputs[id] ?? baseValue(document.base, id))),
    held: {
      // Null lets go in this variant what the notebook itself holds.
      ...Object.fromEntries(
        Object.keys(document.held)
          .filter((id) => !(id in held))
          .map((id) => [id, null]),
      ),
      ...pick(held, (id, saved) => differs(saved, document.held[id])),
    },
  };
  store.change({ what: `Kept “${kept.name}” as a variant`, announce: true }, (draft) => {
    draft.variants.push(...([...first, kept] as Draft<Variant>[]));
    if (first[0]) draft.chosen = first[0].id;
  });
  return null;
}

/** The engine that was looked at, with the inputs of a design: what it moves, is moved as dragging moves it. */
function groundWith({ at: snapshot, ground, question }: Looking, design: readonly number[]): Ground {
  const { vary } = question!;
  const inputs = { ...ground.inputs };
  const held = { ...ground.held };
  const probe = new Probe(snapshot, vary, vary);
  design.forEach((value, k) => probe.put(k, value));
  probe.tryRun();
  vary.forEach((cell, k) => {
    const moved = probe.movedTo(k);
    if (moved) for (const { input, value } of moved) inputs[input.id] = input.kind.save(value);
    else if (cell.role === 'input') inputs[cell.id] = cell.kind.save(design[k]!);
    else held[cell.id] = cell.kind.save(design[k]!);
  });
  return { inputs, held };
}

const pick = (saved: Ground['inputs'], keeps: (id: string, value: Json) => boolean): Readonly<Record<string, Json>> =>
  Object.fromEntries(Object.entries(saved).filter(([id, value]) => keeps(id, value)));
/** Nor the id of one that was there at the start: its starting values are not this one's. */
function freeId({ document, opened }: Store, stem: string): string {
  const ids = [...document.variants, ...opened.variants].map((v) => v.id);
  let n = 1;
  while (ids.includes(`${stem}${n}`)) n++;
  return `${stem}${n}`;
}
function freeName(name: string, others: readonly Variant[]): string {
  const isTaken = (text: string): boolean => others.some((v) => v.name.toLowerCase() === text.toLowerCase());
  let free = name.slice(0, longestName);
  for (let n = 2; isTaken(free); n++) free = `${name.slice(0, longestName - 5)} (${n})`;
  return free;
}
