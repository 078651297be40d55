/** An element of some markup, with its attributes and the text straight inside it. */
export interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  text: string;
}

const name = '[A-Za-z_][\\w.-]*';
const attribute = new RegExp(`\\s+(${name})\\s*=\\s*"([^"<]*)"`, 'y');
const open = new RegExp(`<(${name})`, 'y');
const close = new RegExp(`</(${name})\\s*>`, 'y');
const entity = /&(?:#\d+|#x[\da-fA-F]+|amp|lt|gt|quot|apos);/g;

/**
 * Reads svg markup by the rules of XML 1.0 that matter here (tags nest and close, attributes are quoted and named once,
 * "<" and "&" stand only where they may), and returns its elements in order. Throws an Error that says what is wrong.
 */
export function elementsOf(markup: string): readonly Element[] {
  const found: Element[] = [];
  const around: Element[] = [];
  let at = 0;
  const take = (pattern: RegExp): RegExpExecArray | null => {
    pattern.lastIndex = at;
    const got = pattern.exec(markup);
    if (got) at = pattern.lastIndex;
    return got;
  };
  const wrong = (what: string): Error => new Error(`${what}: …${markup.slice(Math.max(0, at - 40), at + 60)}`);
  while (at < markup.length) {
    const ended = take(close);
    if (ended) {
      if (around.pop()?.name !== ended[1]) throw wrong(`</${ended[1]}> closes nothing`);
      continue;
    }
    const begun = take(open);
    if (begun) {
      const attributes: Record<string, string> = {};
      for (let pair = take(attribute); pair; pair = take(attribute)) {
        if (Object.hasOwn(attributes, pair[1]!)) throw wrong(`${pair[1]} is given twice`);
        attributes[pair[1]!] = plain(pair[2]!, wrong);
      }
      const element: Element = { name: begun[1]!, attributes, text: '' };
      found.push(element);
      const end = take(/\s*(\/?)>/y);
      if (!end) throw wrong(`<${begun[1]} is not closed`);
      if (end[1] === '') around.push(element);
      continue;
    }
    const words = take(/[^<]+/y);
    if (!words) throw wrong('a stray "<"');
    const home = around.at(-1);
    if (home) home.text += plain(words[0], wrong);
  }
  if (around.length > 0) throw wrong(`<${around.at(-1)!.name}> is left open`);
  return found;
}

function plain(text: string, wrong: (what: string) => Error): string {
  if (text.replaceAll(entity, '').includes('&')) throw wrong('a bare "&"');
  return text
    .replaceAll(/&#(\d+);/g, (_, code: string) => String.fromCodePoint(Number(code)))
    .replaceAll(/&#x([\da-fA-F]+);/g, (_, code: string) => String.fromCodePoint(Number.parseInt(code, 16)))
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&apos;', "'")
    .replaceAll('&amp;', '&');
}

/** What the text elements say, in order. */
export const wordsOf = (markup: string): string[] =>
  elementsOf(markup)
    .filter((e) => e.name === 'text' || e.name === 'tspan')
    .map((e) => e.text.replaceAll(/[\u00a0\u202f]/g, ' ').trim())
    .filter((text) => text !== '');
