import { read } from '../formula/read.ts';
import type { Quantity, System } from '../units/quantity.ts';
import type { Choice, Kind, Optional, Scalar, Table } from './kind.ts';
import { typedTable } from './typed-table.ts';

/** What was typed, or a sentence that says what to write instead. */
export type Typed = { readonly value: unknown } | { readonly fault: string };

/**
 * Reads a typed value of any kind that can be typed; figures without a unit are in the unit shown first in this system.
 * Apart from the kinds themselves, since a page that only shows values has no use for a parser.
 */
export function typed(kind: Kind<unknown>, text: string, system: System): Typed {
  switch (kind.name) {
    case 'scalar':
      return figure((kind as Scalar).quantity, text, system);
    case 'optional':
      return /^\s*(?:|-|not given|none)\s*$/i.test(text)
        ? { value: null }
        : figure((kind as unknown as Optional).of.quantity, text, system);
    case 'choice': {
      const { options } = kind as unknown as Choice;
      const found = options.find((o) => o.id === text.trim());
      return found ? { value: found.id } : { fault: `Choose one of: ${options.map((o) => o.id).join(', ')}.` };
    }
    case 'table':
      return rows(kind as unknown as Table, text, system);
    default:
      return { fault: `A ${kind.name} is not typed.` };
  }
}

function figure(quantity: Quantity, text: string, system: System): Typed {
  const got = read(text, quantity, quantity[system]);
  return 'fault' in got ? got : { value: got.si };
}

/** One line is rows as pairs, "0.1:64 0.2:128"; more are a table, a row a line. */
function rows(kind: Table, text: string, system: System): Typed {
  if (!/[:\n]/.test(text.trim())) return { fault: `Write each row as ${kind.columns.map((c) => c.id).join(':')}.` };
  const got = typedTable(kind, text, system);
  return 'fault' in got ? got : { value: got.rows };
}
