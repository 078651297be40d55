import type { Document } from './document.ts';

/** A link's fragment is its version, a point, and the document packed: JSON, deflate-raw, then base64url. */
const linkVersion = 1;
const longestOpened = 64_000;
const largestInflated = 256_000;

/** What a fragment held, or why it cannot be opened. Null: there is no link in it. */
export type Opened = { readonly saved: unknown } | { readonly fault: string } | null;

/** What a document holds where it says nothing, whatever stands in for its title, pins and page. */
const silent: Partial<Document> = {
  sentence: '',
  inputs: {},
  held: {},
  units: { system: 'us', fields: {} },
  tolerances: {},
  variants: [],
  chosen: null,
};

/**
 * Packs a document into a fragment (without #). Left out is what `restore` puts back by itself; `blank` is its fallback,
 * which stands in for title, pins and page. The base always travels: a later release has another latest one.
 */
export async function pack(document: Document, blank: Document): Promise<string> {
  const { title, pins, page } = blank;
  const implied: Partial<Document> = { ...silent, title, pins, page };
  const slim = Object.fromEntries(
    Object.entries(document).filter(
      ([key, value]) => JSON.stringify(value) !== JSON.stringify(implied[key as keyof Document]),
    ),
  );
  const text = JSON.stringify({ ...slim, check: checkOf(slim) });
  const bytes = await through(new TextEncoder().encode(text), new CompressionStream('deflate-raw'), Infinity);
  return `${linkVersion}.${base64url(bytes)}`;
}

/** Opens a fragment (with or without #). Never throws: a broken link gets a sentence. */
export async function unpack(fragment: string): Promise<Opened> {
  const text = fragment.replace(/^#/, '');
  const parts = /^(\d{1,3})\.(.*)$/s.exec(text);
  if (!parts) return null;
  const packed = parts[2]!;
  if (Number(parts[1]) > linkVersion)
    return { fault: 'A newer release made this link. Open it where that release runs.' };
  if (packed.length > longestOpened) return { fault: 'This link is far too long to be one of ours.' };
  if (!/^[\w-]*$/.test(packed))
    return { fault: 'This link has been changed on its way: it holds signs that do not belong in it.' };
  try {
    const bytes = await through(fromBase64url(packed), new DecompressionStream('deflate-raw'), largestInflated);
    const saved = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes)) as unknown;
    return checked(saved) ?? { fault: 'This link has been changed on its way. Ask for it again.' };
  } catch (error) {
    return {
      fault:
        error instanceof TooLarge
          ? 'This link unpacks to more than a notebook can be.'
          : 'This link is cut short or damaged. Ask for it again.',
    };
  }
}

/**
 * Deflate without a wrapper has no checksum, and one sign changed in a link leaves it readable, with other figures, in
 * one case of seven: so the document carries its own. FNV-1a, 32 bits.
 */
function checkOf(saved: object): string {
  let hash = 0x811c9dc5;
  for (const byte of new TextEncoder().encode(JSON.stringify(saved))) hash = Math.imul(hash ^ byte, 0x01000193);
  return (hash >>> 0).toString(36);
}
/** What was saved, without its check; null if there is none or the two do not belong together. */
function checked(saved: unknown): { readonly saved: unknown } | null {
  if (typeof saved !== 'object' || saved === null || !('check' in saved)) return null;
  const { check, ...rest } = saved;
  return check === checkOf(rest) ? { saved: rest } : null;
}

class TooLarge extends Error {}

/** Runs bytes through a (de)compression stream, refusing to hold more than `most` bytes. */
async function through(
  bytes: Uint8Array<ArrayBuffer>,
  stream: CompressionStream | DecompressionStream,
  most: number,
): Promise<Uint8Array> {
  const writer = stream.writable.getWriter();
  // A damaged stream fails on the reading side too, where it is caught.
  void writer.write(bytes).catch(() => {});
  void writer.close().catch(() => {});
  const chunks: Uint8Array[] = [];
  let size = 0;
  const reader = stream.readable.getReader();
  for (;;) {
    const { done, value } = (await reader.read()) as { done: boolean; value?: Uint8Array };
    if (done) break;
    size += value!.length;
    if (size > most) {
      void reader.cancel().catch(() => {});
      throw new TooLarge();
    }
    chunks.push(value!);
  }
  const whole = new Uint8Array(size);
  let at = 0;
  for (const chunk of chunks) {
    whole.set(chunk, at);
    at += chunk.length;
  }
  return whole;
}

function base64url(bytes: Uint8Array): string {
  let text = '';
  for (let i = 0; i < bytes.length; i += 8192) text += String.fromCharCode(...bytes.subarray(i, i + 8192));
  return btoa(text).replace(/\+/g, '-').replace(/\//g, '_').replace(/=+$/, '');
}
const fromBase64url = (text: string): Uint8Array<ArrayBuffer> =>
  Uint8Array.from(atob(text.replace(/-/g, '+').replace(/_/g, '/')), (c) => c.charCodeAt(0));
