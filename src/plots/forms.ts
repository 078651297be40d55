import type { Drawing, Sheet } from './drawing.ts';
import { events } from './forms/events.ts';
import { filling } from './forms/filling.ts';
import { gaps } from './forms/gaps.ts';
import { lifts } from './forms/lifts.ts';
import { loop } from './forms/loop.ts';
import { motion } from './forms/motion.ts';
import { output } from './forms/output.ts';
import { plate } from './forms/plate.ts';
import { section } from './forms/section.ts';
import { stack } from './forms/stack.ts';
import { travel } from './forms/travel.ts';
import { verdictScale } from './forms/verdict-scale.ts';

type Form = (values: never, sheet: Sheet) => Drawing;

/** The drawn figures by the name a chapter declares them under. */
export const forms: Readonly<Record<string, Form>> = {
  events,
  filling,
  gaps,
  lifts,
  loop,
  motion,
  output,
  plate,
  section,
  stack,
  travel,
  verdictScale,
};
