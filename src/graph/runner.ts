import { drain, type Slow } from './cell.ts';
import { faultOf } from './compute.ts';
import type { Fault } from './state.ts';

/** Word from a job: a share done, a provisional value, the value, or why there is none. */
export type News =
  | { readonly is: 'waiting'; readonly done: number }
  | { readonly is: 'coming'; readonly value: unknown; readonly done: number }
  | { readonly is: 'ready'; readonly value: unknown }
  | { readonly is: 'fault'; readonly fault: Fault };

/** A slow cell to compute. `owner` tells live graphs apart, so that they do not stop one another's jobs. */
export interface Job {
  readonly owner: number;
  readonly cell: Slow;
  readonly given: Readonly<Record<string, unknown>>;
  /** Its live graph is not the one the page is about: it goes behind the others. */
  readonly isOther?: boolean;
}

/** Runs slow cells somewhere: reports any number of times, at once or later, until it is told to stop. */
export interface Runner {
  start(job: Job, report: (news: News) => void): () => void;
}

/** Runs a job to its end at once: for tests, and inside a worker. */
export const inline: Runner = {
  start({ cell, given }, report) {
    try {
      report({ is: 'ready', value: drain(cell.steps(given as never)) });
    } catch (error) {
      report({ is: 'fault', fault: faultOf(error, cell) });
    }
    return () => {};
  },
};
