import type { Drawing, Sheet } from './drawing.ts';
import { events } from './forms/events.ts';
import { gaps } from './forms/gaps.ts';
import { lifts } from './forms/lifts.ts';
import { motion } from './forms/motion.ts';
import { plate } from './forms/plate.ts';
import { section } from './forms/section.ts';
import { stack } from './forms/stack.ts';
import { travel } from './forms/travel.ts';
import { verdictScale } from './forms/verdict-scale.ts';

type Form = (values: never, sheet: Sheet) => Drawing;

/** The drawn figures by the name a chapter declares them under. */
export const forms: Readonly<Record<string, Form>> = {
  events,
  gaps,
  lifts,
  motion,
  plate,
  section,
  stack,
  travel,
  verdictScale,
};
