import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { deflateRawSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { roomOf } from '../../cells/index.ts';
import type { Input } from '../../src/graph/cell.ts';
import type { Json } from '../../src/graph/kind.ts';
import { baseValue, isBase, latestBase } from '../../src/notebook/base.ts';
import { type Document, longestLink } from '../../src/notebook/document.ts';
import { type Opened, pack, unpack } from '../../src/notebook/link.ts';
import { restore } from '../../src/notebook/restore.ts';
import type { Store } from '../../src/notebook/store.ts';
import { blank, catalogue, example, opened, quick, scenario, scenarios, valueOf } from './notebooks.ts';

const savedIn = (found: Opened): unknown => {
  if (found === null || 'fault' in found) throw new Error(`no document: ${JSON.stringify(found)}`);
  return found.saved;
};
const travelled = async (document: Document): Promise<Document> => {
  const { document: arrived, repairs } = restore(
    savedIn(await unpack(await pack(document, blank))),
    catalogue,
    example,
  );
  expect(repairs).toEqual([]);
  return arrived;
};
const faultOf = (found: Opened): string => {
  if (found === null || !('fault' in found)) throw new Error(`no fault: ${JSON.stringify(found)?.slice(0, 100)}`);
  return found.fault;
};
const sentence = /^[A-Z][^.]+\.( [A-Z][^.]+\.)*$/;

const sent: readonly (readonly [name: string, Document])[] = [
  ...Object.keys(scenarios).map((name) => [name, scenario(name)] as const),
  ['two-cams, late', { ...scenario('two-cams'), chosen: 'late' }],
];

describe.each(sent)('a link of %s', (name, document) => {
  it('brings the same document, in less than 2,000 signs', async () => {
    const fragment = await pack(document, blank);
    console.info(`${name}: ${fragment.length} signs`);
    expect(fragment).toMatch(/^1\.[\w-]+$/);
    expect(fragment.length).toBeLessThan(2000);
    expect(longestLink).toBe(8000);
    for (const opens of [fragment, `#${fragment}`])
      expect(restore(savedIn(await unpack(opens)), catalogue, example).document).toEqual(document);
  });

  it('brings it whichever notebook stands in for what is missing, as long as it is the same one at both ends', async () => {
    for (const [, fallback] of sent)
      expect(restore(savedIn(await unpack(await pack(document, fallback))), catalogue, fallback).document).toEqual(
        document,
      );
  });

  it('carries the answers the sender saw', async () => {
    const store = opened(document);
    const values = Object.fromEntries(
      document.pins.map((id) => {
        const value = valueOf(store, id);
        return [id, typeof value === 'number' ? value : (value as { readonly word: string }).word];
      }),
    );
    const answers = { release: '0.1.0', values };
    expect((await travelled({ ...document, answers })).answers).toEqual(answers);
    expect((await pack({ ...document, answers }, blank)).length).toBeLessThan(2000);
  });

  it('cut short anywhere gets a sentence', async () => {
    const fragment = await pack(document, blank);
    for (let end = 2; end < fragment.length; end += 7)
      expect(faultOf(await unpack(fragment.slice(0, end)))).toMatch(sentence);
    for (let end = fragment.length - 6; end < fragment.length; end++)
      expect(faultOf(await unpack(fragment.slice(0, end)))).toMatch(sentence);
  });

  it('with one sign changed gets a sentence: nobody computes another engine', async () => {
    const fragment = await pack(document, blank);
    const signs = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';
    let unused = 0;
    for (let i = 2; i < fragment.length; i++) {
      const other = signs[(signs.indexOf(fragment[i]!) + 1 + (i % 63)) % 64]!;
      const found = await unpack(fragment.slice(0, i) + other + fragment.slice(i + 1));
      if (found !== null && 'fault' in found) expect(found.fault).toMatch(sentence);
      // The last bits of the packing and of its last sign mean nothing; all else does.
      else if (++unused > 2 || i < fragment.length - 2) throw new Error(`sign ${i} can be changed`);
      else expect(restore(savedIn(found), catalogue, example).document).toEqual(document);
    }
  });
});

it('always says which base it stands on: a later release has another latest one', async () => {
  for (const [, document] of sent)
    for (const base of [1, 2, 3])
      expect(savedIn(await unpack(await pack({ ...document, base }, blank)))).toMatchObject({ version: 1, base });
});

it('a notebook that says nothing makes a short link and comes back', async () => {
  expect((await pack(blank, blank)).length).toBeLessThan(100);
  expect(await travelled(blank)).toEqual(blank);
});

it('words in any script, and figures to the last digit, come back', async () => {
  const text = fc.string({ unit: 'grapheme', maxLength: 60 });
  const figure = fc.double({ noNaN: true, noDefaultInfinity: true }).map((n) => (n === 0 ? 0 : n)); // JSON has no −0
  await fc.assert(
    fc.asyncProperty(text, text, figure, figure, async (title, name, bore, deckClearance) => {
      const document: Document = {
        ...example,
        title,
        inputs: { bore },
        held: { deckClearance },
        units: { system: 'si', fields: { bore: 'us' } },
        variants: [{ id: 'a', name, inputs: { bore: bore / 2 }, held: { deckClearance: null } }],
        chosen: 'a',
      };
      expect(await travelled(document)).toEqual(document);
    }),
    { numRuns: 60, seed: 20260703 },
  );
});

describe('what is no link of ours', () => {
  it.each(['', '#', 'cam', '#cam', '#/cam/closing', '1', '#1', '.', 'x.AAAA', '-1.AAAA', '1234.AAAA', ' 1.AAAA'])(
    '“%s” holds no link, and nothing is said',
    async (fragment) => expect(await unpack(fragment)).toBeNull(),
  );

  const bomb = (text: string): string => `1.${deflateRawSync(text, { level: 9 }).toString('base64url')}`;
  it.each([
    ['nothing packed', '1.', /cut short or damaged/],
    ['signs that do not belong', '1.AAA+AAA/', /changed on its way/],
    ['a blank in the middle', '1.AAA AAA', /changed on its way/],
    ['half a sign', '1.A', /cut short or damaged/],
    ['noise', '1.VGhpcyBpcyBub2lzZQ', /cut short or damaged/],
    ['a text that is no JSON', bomb('{"version":1,'), /cut short or damaged/],
    ['bytes that are no text', `1.${deflateRawSync(Buffer.of(0xff, 0xfe, 0x80)).toString('base64url')}`, /cut short/],
    ['a check that does not fit', bomb('{"version":1,"title":"x","check":"0"}'), /changed on its way/],
    ['no check', bomb('{"version":1,"title":"x"}'), /changed on its way/],
    ['a list', bomb('[{"version":1}]'), /changed on its way/],
    ['a later version', `2.${'A'.repeat(40)}`, /newer release/],
    ['a much later version', '999.anything at all', /newer release/],
    ['a million signs', `1.${'A'.repeat(1_000_000)}`, /far too long/],
    ['a million bytes of nothing', bomb(' '.repeat(1_000_000)), /unpacks to more/],
    ['a hundred million bytes of nothing', bomb(' '.repeat(40_000_000)), /unpacks to more/],
    ['a little more than a notebook can be', bomb(JSON.stringify({ title: 'x'.repeat(256_000) })), /unpacks to more/],
  ])('%s gets a sentence', async (_, fragment, said) => {
    const fault = faultOf(await unpack(fragment));
    expect(fault).toMatch(sentence);
    expect(fault).toMatch(said);
  });

  it('any text at all gets a sentence, a document or silence, and nothing throws', async () => {
    const any = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 80 }),
      fc.string({ maxLength: 80 }).map((s) => `1.${s}`),
      fc.uint8Array({ maxLength: 80 }).map((bytes) => `1.${Buffer.from(bytes).toString('base64url')}`),
      fc.jsonValue().map((value) => bomb(JSON.stringify(value))),
    );
    await fc.assert(
      fc.asyncProperty(any, async (fragment) => {
        const found = await unpack(fragment);
        if (found !== null && 'fault' in found) expect(found.fault).toMatch(sentence);
        if (found !== null && 'saved' in found) restore(found.saved, catalogue, example);
      }),
      { numRuns: 300, seed: 20260704 },
    );
  });

  it('a notebook of 200 kB still opens', async () =>
    expect(savedIn(await unpack(await pack({ ...example, sentence: 'x'.repeat(200_000) }, blank)))).toMatchObject({
      version: 1,
    }));
});

// ------------------------------------------------------------------------------------------------- released links

const address = new URL('../links.txt', import.meta.url);
const basePath = (n: number): URL => new URL(`../../src/notebook/bases/${n}.json`, import.meta.url);
const sha256 = (n: number): string =>
  createHash('sha256')
    .update(readFileSync(basePath(n)))
    .digest('hex');

/** What the pins of a document say, rounded to nine digits: arithmetic may change in the last few. */
function pinned(store: Store): Record<string, Json> {
  return Object.fromEntries(
    store.document.pins.map((id) => {
      const value = valueOf(store, id);
      return [id, typeof value === 'number' ? Number(value.toPrecision(9)) : (value as { readonly word: string }).word];
    }),
  );
}

const lines = readFileSync(address, 'utf8')
  .split('\n')
  .filter((line) => line !== '' && !line.startsWith('#'))
  .map((line) => line.split('\t'));
const released = lines.filter(([name]) => !name!.startsWith('base '));
const hashes = lines.filter(([name]) => name!.startsWith('base '));

describe('every link ever released', () => {
  it('is in the list, the starting points among them', () => {
    for (const line of released) expect(line).toHaveLength(3);
    const names = released.map(([name]) => name);
    for (const [name] of sent) expect(names).toContain(`${name} 0.1.0`);
    expect(new Set(names).size).toBe(names.length);
  });

  it.each(released.map(([name, fragment, results]) => [name!, fragment!, results!] as const))(
    '%s opens and gives what it gave',
    async (_, fragment, results) => {
      const { document, repairs, newer } = restore(savedIn(await unpack(`#${fragment}`)), catalogue, example);
      expect(repairs).toEqual([]);
      expect(newer).toBe(false);
      expect(pinned(opened(document))).toEqual(JSON.parse(results));
    },
  );
});

describe('the numbered bases', () => {
  it.each(hashes.map(([name, hash]) => [name!, hash!] as const))(
    '%s is what it was when it was released',
    (name, hash) => expect(sha256(Number(name.slice(5)))).toBe(hash),
  );
  it('are all in the list', () => {
    expect(hashes.map(([name]) => name)).toEqual(Array.from({ length: latestBase }, (_, i) => `base ${i + 1}`));
    expect(existsSync(basePath(latestBase + 1))).toBe(false);
    expect([0, 1, latestBase + 1, 1.5, '1', NaN].map(isBase)).toEqual([false, true, false, false, false, false]);
  });

  const inputs = [...catalogue.cells.values()].filter((cell): cell is Input => cell.role === 'input');
  it('the latest one holds every input at the value it starts with, and nothing else', () => {
    const latest = JSON.parse(readFileSync(basePath(latestBase), 'utf8')) as Record<string, Json>;
    expect(latest).toEqual(Object.fromEntries(inputs.map((input) => [input.id, input.kind.save(input.initial)])));
    expect(inputs.length).toBeGreaterThan(50);
  });
  it('know every input, and restore to what they say', () => {
    for (const input of inputs) {
      const saved = baseValue(latestBase, input.id);
      expect(saved, input.id).not.toBe(undefined);
      expect(input.kind.restore(saved), input.id).toEqual(input.initial);
    }
    for (const id of ['dynamicRatio', 'constructor', '__proto__', 'nothing']) expect(baseValue(1, id)).toBe(undefined);
  });
});

describe('a notebook on base 1, which knew no valves', () => {
  const named = (n: number): Record<string, Json> =>
    JSON.parse(readFileSync(basePath(n), 'utf8')) as Record<string, Json>;
  const [first, second] = [named(1), named(2)];
  const later = Object.keys(second).filter((id) => !Object.hasOwn(first, id));

  it('has base 1’s own values as they were, and base 2’s for what came later', () => {
    expect(later).toContain('rockerRatio');
    expect(later).not.toContain('bore');
    for (const id of Object.keys(first)) expect(baseValue(1, id), id).toEqual(first[id]);
    for (const id of later) expect(baseValue(1, id), id).toEqual(second[id]);
  });

  it.each(sent)('computes what base 2 computes without any figure of a valve: %s', (_, document) => {
    const without = (inputs: Document['inputs']): Document['inputs'] =>
      Object.fromEntries(Object.entries(inputs).filter(([id]) => !later.includes(id)));
    const old: Document = {
      ...document,
      base: 1,
      inputs: without(document.inputs),
      variants: document.variants.map((v) => ({ ...v, inputs: without(v.inputs) })),
    };
    const [before, now] = [opened(old), opened(document)];
    const others = quick.filter(
      (cell) => cell.role !== 'input' && !['valves', 'breathing', 'output'].includes(roomOf.get(cell.id)!),
    );
    expect(others.length).toBeGreaterThan(80);
    for (const cell of others) expect(before.state(cell), cell.id).toEqual(now.state(cell));
  });
});

/** Before a release: with its number as LINKS in the environment, today's links of the starting points join the list. */
it('a line for the list can be made of each starting point', async () => {
  const release = process.env.LINKS;
  const made = await Promise.all(
    sent.map(async ([name, document]) =>
      [`${name} ${release}`, await pack(document, blank), JSON.stringify(pinned(opened(document)))].join('\t'),
    ),
  );
  for (const line of made) expect(line).toMatch(/^[a-z, -]+ \S+\t1\.[\w-]+\t\{"displacement":0\.00\d+,.*"\}$/);
  if (release !== undefined) writeFileSync(address, `${readFileSync(address, 'utf8').trimEnd()}\n${made.join('\n')}\n`);
});
