import type { Exploration, Task } from '../graph/explorer.ts';
import type { Fault } from '../graph/state.ts';

/** What a worker is asked to do; `task` numbers grow, and answers carry them. */
export type Ask =
  | { readonly task: number; readonly do: 'steps'; readonly cell: string; readonly given: object }
  | { readonly task: number; readonly do: 'part'; readonly cell: string; readonly given: object; readonly part: number }
  | { readonly task: number; readonly do: 'warm'; readonly cell: string }
  | { readonly task: number; readonly do: 'explore'; readonly kind: Exploration; readonly asked: Task<Exploration> }
  | { readonly task: number; readonly do: 'stop' };

export type Tell =
  | { readonly task: number; readonly is: 'waiting'; readonly done: number }
  | { readonly task: number; readonly is: 'coming'; readonly value: unknown; readonly done: number }
  | { readonly task: number; readonly is: 'ready'; readonly value: unknown }
  | { readonly task: number; readonly is: 'fault'; readonly fault: Fault }
  | { readonly task: number; readonly is: 'stopped' };
