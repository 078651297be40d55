import type { Problem } from './problem.ts';
import { isGood } from './problem.ts';
import { distance, type Field, type Known, type Place } from './field.ts';
import { ahead, distinct, frontOf } from './front.ts';
import { breachOf, type Guess, guessAround, usualSizes } from './guess.ts';

/** How far round a known design is looked, as shares of the ranges: near and far in turn. */
const reaches = [0.25, 0.1, 0.04, 0.015];

interface Candidate extends Guess {
  readonly place: Place;
}

/** Picks places to try next: round the best of what is known, where it is expected to be better. */
export class Scout {
  private readonly problem: Problem;
  private readonly field: Field;
  private parents: readonly Known[] = [];
  /** The aims that are to be beaten: the best so far, and what is expected of those picked already. */
  private targets: (readonly number[])[] = [];
  private widths: readonly number[] = [];
  private sizes: readonly number[] = [];
  private isAnyGood = false;

  constructor(problem: Problem, field: Field) {
    this.problem = problem;
    this.field = field;
  }

  /** Looks at what is known by now, before a batch is picked. */
  begin(): void {
    const { senses } = this.problem;
    const { tried, leftOut } = this.field;
    const good = tried.filter(isGood);
    const front = frontOf(good, senses);
    this.isAnyGood = good.length > 0;
    this.targets = front.map((n) => n.aims);
    const measured = front.length > 1 ? front : good;
    this.widths = senses.map((_, k) => {
      const values = measured.map((n) => n.aims[k]!);
      return Math.max(...values) - Math.min(...values) || 1;
    });
    this.sizes = usualSizes(this.problem, this.field);
    if (!this.isAnyGood) {
      const breach = new Map([...tried, ...leftOut].map((n) => [n, breachOf(n, this.sizes)]));
      this.parents = [...breach.keys()].toSorted((a, b) => breach.get(a)! - breach.get(b)!).slice(0, 3);
    } else if (senses.length > 1) this.parents = front;
    else {
      const ranked = good.toSorted((a, b) => senses[0]! * (b.aims[0]! - a.aims[0]!));
      this.parents = distinct(ranked, (n) => n.unit, 0.1, 4);
    }
  }

  /** The i-th pick of a batch, none of those that are asked for already; null where nothing is to be expected. */
  next(i: number, asked: readonly Place[]): Place | null {
    const parent = this.pickParent();
    if (!parent) return null;
    const reach = reaches[i % reaches.length]!;
    const guess = guessAround(this.problem, this.field, this.sizes, parent.unit);
    const apart = reach / 20;
    const taken = [...this.field.tried, ...this.field.leftOut, ...asked].filter(
      (n) => distance(n.unit, parent.unit) < 4 * reach + apart,
    );
    let chosen: Candidate | null = null;
    // Each round looks closer round the best place of the one before.
    for (const [count, share] of [
      [40 * this.problem.spans.length + 20, 1],
      [30, 1 / 4],
      [30, 1 / 16],
    ] as const) {
      const round = chosen?.place.unit ?? parent.unit;
      for (let c = 0; c < count; c++) {
        const place = this.field.nearest(this.near(round, reach * share));
        if (this.field.isKnown(place) || asked.some((n) => n.key === place.key)) continue;
        if (taken.some((n) => distance(n.unit, place.unit) < apart)) continue;
        const candidate = { place, ...guess(place.unit) };
        if (!chosen || this.isBetter(candidate, chosen)) chosen = candidate;
      }
      if (!chosen) return null;
    }
    if (chosen && chosen.breach === 0) this.targets.push(chosen.aims);
    return chosen?.place ?? null;
  }

  /** The best most often; of a front its ends, and what stands beside its gaps. */
  private pickParent(): Known | undefined {
    const { parents } = this;
    const { random, senses } = this.problem;
    const any = (): number => Math.floor(random() * parents.length);
    if (senses.length === 1 || !this.isAnyGood) return parents[random() < 0.65 ? 0 : any()];
    if (random() < 0.3) return parents[random() < 0.5 ? 0 : parents.length - 1];
    const [a, b] = [any(), any()];
    return parents[this.gapAt(a) > this.gapAt(b) ? a : b];
  }
  private gapAt(i: number): number {
    const beside = [this.parents[i - 1], this.parents[i + 1]].filter((n) => n !== undefined);
    const gaps = beside.map((n) =>
      Math.hypot(...n.aims.map((v, k) => (v - this.parents[i]!.aims[k]!) / this.widths[k]!)),
    );
    return Math.max(0, ...gaps);
  }

  private isBetter(a: Candidate, b: Candidate): boolean {
    return a.breach !== b.breach ? a.breach < b.breach : this.merit(a) > this.merit(b);
  }
  /** How far the aims of a place are expected to be ahead of every one that is to be beaten. */
  private merit({ aims }: Guess): number {
    const { senses } = this.problem;
    const share = (values: readonly number[]): number[] => values.map((v, k) => v / this.widths[k]!);
    const mine = share(aims);
    if (this.targets.length === 0) return senses.reduce<number>((sum, sense, k) => sum + sense * mine[k]!, 0);
    return Math.min(...this.targets.map((target) => ahead(mine, share(target), senses)));
  }

  /** A place by chance round another: in more than two dimensions some coordinates often stay as they are. */
  private near(unit: readonly number[], reach: number): number[] {
    const { random } = this.problem;
    const few = unit.length > 2 && random() < 0.5;
    const sure = Math.floor(random() * unit.length);
    return unit.map((u, k) => (few && k !== sure && random() < 0.5 ? u : u + reach * this.bell()));
  }
  /** A figure by chance that is normally distributed (Box and Muller, Annals of Mathematical Statistics 29, 1958, 610). */
  private bell(): number {
    const { random } = this.problem;
    return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  }
}
