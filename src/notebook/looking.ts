import { randomLcg } from 'd3-random';
import { best } from '../graph/best.ts';
import { designRow } from '../graph/designs.ts';
import type { Explorer, Ground } from '../graph/explorer.ts';
import type { Ask, Design, Figures, Found } from '../graph/problem.ts';
import { breathe } from '../graph/slices.ts';
import { NotSettled, type Snapshot } from '../graph/snapshot.ts';
import { Impossible } from '../graph/state.ts';
import type { Phrase } from '../units/phrase.ts';
import { type BestQuestion, bestQuestionOf, figuresOf, problemOf, quickFigures, quickReadings } from './bests.ts';
import type { BestItem } from './document.ts';
import type { Store } from './store.ts';
import { groundOf } from './sweeps.ts';

/** How a look for the best came to its end. */
type Ending = { readonly is: 'done' | 'stopped' | 'edited' } | { readonly is: 'fault'; readonly message: Phrase };

/** Between two breaths, in ms: a hand that moves something meanwhile is followed. */
const breath = 10;

/**
 * A look for the best designs: asks the search what to find out, and finds it out, on the page or elsewhere, until it is
 * done, told to stop, or the engine is edited. What it found stays.
 */
export class Looking {
  readonly item: BestItem;
  question: BestQuestion | null = null;
  /** The setting as it was then, if it lay in the ranges: the first that is tried. */
  start: readonly number[] | undefined;
  /** Null while it goes on. */
  ending: Ending | null = null;
  /** The engine that was looked at. */
  readonly at: Snapshot;
  readonly ground: Ground;
  private readonly began = performance.now();
  private readonly store: Store;
  private readonly explorer: Explorer | null;
  private readonly tell: () => void;
  private readonly groundKey: string;
  /** What the search knows, and what has come of the batch that it waits for. */
  private sofar: Found = { tried: [], leftOut: [] };
  private batch: Design[] = [];
  private readonly rows = new Map<string, readonly number[]>();
  private readonly unwatch: () => void;
  private stops: (() => void)[] = [];
  private breathed = performance.now();

  constructor(store: Store, item: BestItem, explorer: Explorer | null, tell: () => void) {
    this.store = store;
    this.item = item;
    this.explorer = explorer;
    this.tell = tell;
    this.at = store.snapshot();
    this.ground = groundOf(store);
    this.groundKey = JSON.stringify(this.ground);
    this.unwatch = store.watchAll(() => {
      if (this.isPast) this.end({ is: 'edited' });
    });
    void this.run();
  }
  stop(): void {
    this.end({ is: 'stopped' });
  }
  /** True once the engine is another than the one that was looked at. */
  get isPast(): boolean {
    return JSON.stringify(groundOf(this.store)) !== this.groundKey;
  }
  get found(): Found {
    const { tried, leftOut } = this.sofar;
    return { tried: [...tried, ...this.batch], leftOut };
  }
  /** How many designs were worked out by now. */
  get done(): number {
    return this.sofar.tried.length + this.batch.length;
  }
  /** All that was read of a design. */
  rowOf(at: readonly number[]): readonly number[] {
    return this.rows.get(at.join())!;
  }
  /** What is left to do, in seconds as long as those before; undefined before there is anything to go by. */
  get secondsLeft(): number | undefined {
    if (this.done === 0) return undefined;
    return ((performance.now() - this.began) / 1000 / this.done) * (this.item.budget - this.done);
  }

  private end(ending: Ending): void {
    if (this.ending) return;
    this.ending = ending;
    for (const stop of this.stops) stop();
    this.unwatch();
    this.tell();
  }
  private async run(): Promise<void> {
    try {
      const { store } = this;
      const question = bestQuestionOf(this.item, store.catalogue, this.at);
      // Each look throws the same dice: asked again, it says the same.
      const problem = problemOf(store, question, randomLcg(0.5));
      this.question = question;
      this.start = problem.start;
      const search = best(problem);
      for (let step = search.next(); !this.ending;) {
        if (step.done) return this.end({ is: 'done' });
        this.sofar = step.value.found;
        const figures = await this.answer(question, step.value);
        if (this.ending) return; // half a batch, or one that nobody waits for any more
        step = search.next(figures);
        this.batch = [];
      }
    } catch (error) {
      this.end({ is: 'fault', message: whyNot(error) });
    }
  }
  private async answer(question: BestQuestion, { of, designs }: Ask): Promise<readonly Figures[]> {
    if (of === 'all' && question.isSlow) return this.elsewhere(question, designs);
    const readings = of === 'all' ? question.readings : quickReadings(question);
    const figures: Figures[] = [];
    for (const design of designs) {
      const row = designRow(this.at, question.vary, design, readings);
      figures.push(of === 'all' ? this.keep(question, design, row) : quickFigures(question, row));
      await this.breathe();
      if (this.ending) return [];
    }
    await this.breathe();
    return figures;
  }
  /** Each design is a task of its own, so that all who can work do. Where it is stopped nothing comes. */
  private elsewhere(question: BestQuestion, designs: Ask['designs']): Promise<readonly Figures[]> {
    const { explorer, ground } = this;
    if (!explorer) throw new Impossible(['This takes long, and there is nobody to work it out.']);
    const read = question.readings.map(({ cell, take }) => ({ cell: cell.id, take }));
    const vary = question.vary.map((cell) => cell.id);
    const figures: (Figures | undefined)[] = designs.map(() => undefined);
    return new Promise((answered, failed) => {
      this.stops = designs.map((design, i) =>
        explorer.explore('designs', { ...ground, vary, designs: [design], read }, (news) => {
          if (news.is === 'fault') return failed(new Impossible(news.message));
          if (news.is !== 'ready') return;
          const row = news.result[0]!;
          figures[i] = this.keep(question, design, row);
          this.tell();
          if (figures.every((each) => each !== undefined)) answered(figures);
        }),
      );
    });
  }
  private keep(question: BestQuestion, at: readonly number[], row: readonly number[]): Figures {
    const figures = figuresOf(question, row);
    this.rows.set(at.join(), row);
    this.batch.push({ at, ...figures });
    return figures;
  }
  private async breathe(): Promise<void> {
    if (performance.now() - this.breathed < breath) return;
    this.tell();
    await breathe();
    this.breathed = performance.now();
  }
}

function whyNot(error: unknown): Phrase {
  if (error instanceof Impossible) return error.phrase;
  if (error instanceof NotSettled)
    return error.state.is === 'fault' ? error.state.fault.message : [`${error.cell.label} has no value yet.`];
  throw error;
}
