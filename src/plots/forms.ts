import type { Drawing, Sheet } from './drawing.ts';
import { lifts } from './forms/lifts.ts';
import { plate } from './forms/plate.ts';
import { section } from './forms/section.ts';
import { stack } from './forms/stack.ts';
import { travel } from './forms/travel.ts';

export type Form = (values: never, sheet: Sheet) => Drawing;

/** The drawn figures of the first screens, by the name a chapter declares them under. */
export const forms: Readonly<Record<string, Form>> = {
  lifts,
  plate,
  section,
  stack,
  travel,
};
