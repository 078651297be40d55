import { read } from '../formula/read.ts';
import type { System } from '../units/quantity.ts';
import { tidy, toUnit } from '../units/unit.ts';
import type { Rows, Table } from './kind.ts';

/** Rows in SI, with a word on what was passed over; or a sentence that says which line to mend. */
export type TypedTable = { readonly rows: Rows; readonly notice: string | null } | { readonly fault: string };

const most = 2000;

/**
 * Reads a table as it comes out of a spreadsheet, a file or a letter: a row a line, the columns parted by tabs,
 * semicolons, spaces or commas; lines of words above the first row are passed over. Or rows as pairs: "0:0 5:0.001".
 * A comma that may be a decimal mark or part two columns is not guessed at.
 */
export function typedTable(kind: Table, text: string, system: System): TypedTable {
  if (text.includes(':')) return pairs(kind, text, system);
  const rows: (readonly number[])[] = [];
  let heading = 0;
  for (const [i, line] of text.split(/\r\n?|\n/).entries()) {
    const parts = partsOf(line);
    if (parts.length === 0) continue;
    const got = row(kind, parts, system);
    if (!('fault' in got)) rows.push(got.row);
    else if (rows.length === 0 && parts.every((part) => !/\d/.test(part))) heading++;
    else return { fault: `Line ${i + 1}: ${got.fault}` };
  }
  if (rows.length > most) return { fault: `A table has at most ${most} rows; this one has ${rows.length}.` };
  if (rows.length === 0 && heading > 0) return { fault: `There are only words here. ${asked(kind)}` };
  const units = kind.columns.map((c) => `${c.label.toLowerCase()} (${c.quantity[system].unit.symbol})`).join(' and ');
  const lines = heading === 1 ? 'A heading line was' : `${heading} heading lines were`;
  return { rows, notice: heading > 0 ? `${lines} passed over; the figures were read as ${units}.` : null };
}

/** The rows as text that is read back as the same rows. */
export function tableText(kind: Table, rows: Rows, system: System): string {
  const figure = (value: number, i: number): string =>
    String(Number(tidy(toUnit(value, kind.columns[i]!.quantity[system].unit)).toPrecision(12)));
  return rows.map((each) => each.map(figure).join('\t')).join('\n');
}

const asked = ({ columns }: Table): string =>
  `Write ${columns.map((c) => c.label.toLowerCase()).join(' and ')} on each line, with a tab, a semicolon or a space between.`;

function partsOf(line: string): readonly string[] {
  const text = line.trim();
  if (text === '') return [];
  const mark = ['\t', ';'].find((each) => text.includes(each));
  // "10, 0.005": a comma before a space parts columns; so does one without any space, if it is the only one.
  const parts = mark ? text.split(mark) : /\s/.test(text) ? text.split(/\s*,\s+|\s+/) : text.split(',');
  return parts.map((part) => part.trim());
}

type Row = { readonly row: readonly number[] } | { readonly fault: string };

function row(kind: Table, parts: readonly string[], system: System): Row {
  const { columns } = kind;
  if (parts.length !== columns.length) {
    const found = parts.length === 1 ? 'There is only one figure' : `There are ${parts.length} figures`;
    return { fault: `${found} where ${columns.length} belong. ${asked(kind)}` };
  }
  const figures: number[] = [];
  for (const [i, part] of parts.entries()) {
    const { label, quantity } = columns[i]!;
    const got = read(part, quantity, quantity[system]);
    if ('fault' in got) return { fault: part === '' ? `The ${label.toLowerCase()} is missing.` : got.fault };
    figures.push(got.si);
  }
  return { row: figures };
}

function pairs(kind: Table, text: string, system: System): TypedTable {
  const rows: (readonly number[])[] = [];
  for (const pair of text.trim().split(/[\s;]+/)) {
    const parts = pair.split(':');
    if (parts.length !== kind.columns.length)
      return { fault: `Write each row as ${kind.columns.map((c) => c.id).join(':')}.` };
    const got = row(kind, parts, system);
    if ('fault' in got) return { fault: `Row ${rows.length + 1}: ${got.fault}` };
    rows.push(got.row);
  }
  return { rows, notice: null };
}
