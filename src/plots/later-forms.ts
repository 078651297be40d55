import type { Form } from './forms.ts';
import { difference } from './forms/difference.ts';
import { events } from './forms/events.ts';
import { filling } from './forms/filling.ts';
import { gaps } from './forms/gaps.ts';
import { loop } from './forms/loop.ts';
import { margins } from './forms/margins.ts';
import { motion } from './forms/motion.ts';
import { octane } from './forms/octane.ts';
import { output } from './forms/output.ts';
import { residualWork } from './forms/residual-work.ts';
import { sparkHook } from './forms/spark-hook.ts';
import { sparks } from './forms/sparks.ts';
import { valveFlow } from './forms/valve-flow.ts';
import { verdictScale } from './forms/verdict-scale.ts';
import { waves } from './forms/waves.ts';

/** Those of the chapters further down: they are loaded when one of them comes into sight. */
export const laterForms: Readonly<Record<string, Form>> = {
  difference,
  events,
  filling,
  gaps,
  loop,
  margins,
  motion,
  octane,
  output,
  residualWork,
  sparkHook,
  sparks,
  valveFlow,
  verdictScale,
  waves,
};
