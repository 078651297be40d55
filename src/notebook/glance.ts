import type { Catalogue } from './catalogue.ts';
import type { Document } from './document.ts';
import type { Slots } from './slots.ts';

interface Options {
  /** What is known so far: of what else a notebook holds nothing is shown yet. */
  readonly catalogue: Catalogue;
  /** What a first visit opens. */
  readonly example: Document;
  readonly slots: Slots;
}

/** The notebook that the desk is going to open, for the first readouts. Nothing is marked, and nothing said of faults. */
export async function glance(hash: string, { catalogue, example, slots }: Options): Promise<Document> {
  const sent = isLink(hash) ? await (await import('./link.ts')).unpack(hash) : null;
  const saved = sent && 'saved' in sent ? (slots.visit(hash)?.document ?? sent.saved) : slots.mine()?.document;
  if (saved === undefined) return example;
  return (await import('./restore.ts')).restore(saved, catalogue, example).document;
}

/** True for the fragment of an address that holds a notebook, and is no jump on the page. */
export const isLink = (hash: string): boolean => /^#?\d+\./.test(hash);
