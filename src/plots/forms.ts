import type { Drawing, Sheet } from './drawing.ts';
import { plate } from './forms/plate.ts';
import { stack } from './forms/stack.ts';
import { travel } from './forms/travel.ts';
import { verdictScale } from './forms/verdict-scale.ts';

type Form = (values: never, sheet: Sheet) => Drawing;

/** The drawn figures by the name a chapter declares them under. */
export const forms: Readonly<Record<string, Form>> = { plate, stack, travel, verdictScale };
