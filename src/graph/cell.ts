import type { Citation } from '../references.ts';
import type { Kind } from './kind.ts';
import type { ModelError } from './model-error.ts';

export type Range = readonly [low: number, high: number];

interface Words {
  /** The name in links and files: it lives for years. */
  readonly id: string;
  readonly label: string;
  /** A short name for narrow screens. */
  readonly short?: string;
  /** One sentence a machinist would say. */
  readonly note: string;
  /** Names it had in earlier releases. */
  readonly formerly?: readonly string[];
}

export interface Input<T = unknown> extends Words {
  readonly role: 'input';
  readonly kind: Kind<T>;
  readonly initial: T;
  /** What physics allows, SI: outside it there is no answer. */
  readonly hard?: Range;
  /** What the formulas were made for, SI: outside it answers are marked. */
  readonly trust?: Range;
  /** What a slider covers, SI: typing may leave it. */
  readonly slider?: Range;
}

/** A way to move a derived value: all these inputs are shifted together. */
export interface Mover {
  readonly label: string;
  readonly inputs: readonly Input<number>[];
  /** The value rises in a straight line as they shift, whatever else stands how: nothing has to be searched for. */
  readonly straight?: boolean;
}

/** A worked case in SI, run by one test for all cells and shown in the cell's help. */
export interface Example<G = unknown, T = unknown> {
  readonly given: G;
  readonly gives: T;
  readonly within: number;
}

export interface Derived<T> extends Words {
  readonly kind: Kind<T>;
  readonly from: From;
  readonly source: Citation;
  /** The formula, written with the names in `from`. */
  readonly formula: string;
  /** Range of trust for what it reads, SI; shown, never clamped. */
  readonly valid: Readonly<Record<string, Range>>;
  /** Range of trust for the value itself, SI. */
  readonly validValue: Range | undefined;
  readonly examples: readonly Example[];
  readonly movedBy: readonly Mover[];
  /** A remark stands beside this cell's field. */
  readonly about: Cell | undefined;
  readonly slider: Range | undefined;
  /**
   * Names in `from` that it may have an answer without: where one has no value it is given undefined. If it has none
   * then, what is wrong with the missing one is told.
   */
  readonly mayLack: readonly string[];
  /**
   * What the model itself is good for, a ± in SI: a figure, or a cell that works it out. The value does not stand on that
   * cell, so that it is none of its sources.
   */
  readonly modelError: number | Cell<ModelError> | undefined;
}
export interface Pure<T = unknown> extends Derived<T> {
  readonly role: 'cell';
  compute(given: never): T;
}

/** Work in steps: each yields the share done, or that and a provisional value of the same inputs. */
export type Steps<T> = Generator<number | Provisional<T>, T, void>;
export interface Provisional<T> {
  readonly value: T;
  readonly done: number;
}
/** Work that falls into independent parts, to be shared among workers. */
export interface Parts<G, T, P, R> {
  list(given: G): readonly P[];
  /** How many of the list make the first look: they go before other work. */
  first?(given: G): number;
  one(given: G, part: P): Steps<R>;
  /** The value from the parts done so far (in the order of the list), or undefined while they show nothing. */
  join(given: G, results: readonly (R | undefined)[]): T | undefined;
}
export interface Slow<T = unknown> extends Derived<T> {
  readonly role: 'slow';
  steps(given: never): Steps<T>;
  /** A quicker value, near enough for one of the many points of a sweep. */
  readonly rough: ((given: never) => T) | undefined;
  readonly parts: Parts<never, T, unknown, unknown> | undefined;
  /** It is worked on only while nothing else waits. */
  readonly idle: boolean;
}

export type Cell<T = unknown> = Input<T> | Pure<T> | Slow<T>;
export type From = Readonly<Record<string, Cell>>;
export type ValueOf<C> = C extends { readonly kind: Kind<infer T> } ? T : never;
/** The values of what is read; those in L may be missing. */
export type Given<F extends From, L extends keyof F = never> = {
  readonly [K in keyof F]: ValueOf<F[K]> | (K extends L ? undefined : never);
};

type Spec<F extends From, T, L extends keyof F & string = never> = Words & {
  readonly kind: Kind<T>;
  readonly from: F;
  readonly source: Citation;
  readonly formula: string;
  readonly valid?: { readonly [K in keyof F]?: Range };
  readonly validValue?: Range;
  readonly examples?: readonly Example<Given<F>, T>[];
  readonly movedBy?: readonly Mover[];
  readonly about?: Cell;
  readonly slider?: Range;
  readonly mayLack?: readonly L[];
  readonly modelError?: number | Cell<ModelError>;
};

const derived = <F extends From, T, L extends keyof F & string>(spec: Spec<F, T, L>) => ({
  ...spec,
  valid: (spec.valid ?? {}) as Readonly<Record<string, Range>>,
  validValue: spec.validValue,
  examples: (spec.examples ?? []) as readonly Example[],
  movedBy: spec.movedBy ?? [],
  about: spec.about,
  slider: spec.slider,
  mayLack: spec.mayLack ?? [],
  modelError: spec.modelError,
});

/** A value someone types. */
export const input = <T>(spec: Omit<Input<T>, 'role' | 'initial'> & { readonly initial: NoInfer<T> }): Input<T> => ({
  role: 'input',
  ...spec,
});

/** A value computed at once from others. `compute` must be pure and must not keep what it is given. */
export const cell = <const F extends From, T, const L extends keyof F & string = never>(
  spec: Spec<F, T, L> & { compute: (given: Given<F, L>) => T },
): Pure<T> => ({
  role: 'cell',
  ...derived(spec),
  compute: spec.compute,
});

/** A value that takes long: computed elsewhere, in steps. */
export const slow = <const F extends From, T>(
  spec: Spec<F, T> & {
    steps: (given: Given<F>) => Steps<T>;
    rough?: (given: Given<F>) => T;
    readonly idle?: true;
  },
): Slow<T> => ({
  role: 'slow',
  ...derived(spec),
  steps: spec.steps,
  rough: spec.rough,
  parts: undefined,
  idle: spec.idle ?? false,
});

/** A slow value made of independent parts. */
export const slowInParts = <const F extends From, T, P, R>(
  spec: Spec<F, T> & { parts: Parts<Given<F>, T, P, R>; rough?: (given: Given<F>) => T; readonly idle?: true },
): Slow<T> => ({
  role: 'slow',
  ...derived(spec),
  rough: spec.rough,
  steps: (given: Given<F>) => oneAfterAnother(spec.parts, given),
  parts: spec.parts,
  idle: spec.idle ?? false,
});

/** All parts in turn: how a slow value in parts runs where there is nobody to share with. */
function* oneAfterAnother<G, T, P, R>(parts: Parts<G, T, P, R>, given: G): Steps<T> {
  const list = parts.list(given);
  const results: (R | undefined)[] = list.map(() => undefined);
  for (const [i, part] of list.entries()) {
    const steps = parts.one(given, part);
    for (;;) {
      const step = steps.next();
      if (step.done) {
        results[i] = step.value;
        break;
      }
      yield (i + shareOf(step.value)) / list.length;
    }
    const value = i + 1 < list.length ? parts.join(given, results) : undefined;
    yield value === undefined ? (i + 1) / list.length : { value, done: (i + 1) / list.length };
  }
  const whole = parts.join(given, results);
  if (whole === undefined) throw new RangeError('There is nothing to join.');
  return whole;
}

/** The share done that a step tells of. */
export const shareOf = (step: number | Provisional<unknown>): number => (typeof step === 'number' ? step : step.done);

/** Runs steps to their end at once. */
export function drain<T>(steps: Steps<T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}
