const cycle = 4 * Math.PI;

/** Where the page's crank stands, for every figure on a crank axis; no part of the notebook, and not saved with it. */
class Crank {
  private place: number | undefined;
  private readonly calls = new Set<() => void>();

  /** Rad from firing top dead center, over the two turns of a cycle; undefined until somebody has turned it. */
  get angle(): number | undefined {
    return this.place;
  }
  turn(angle: number | undefined): void {
    this.place = angle === undefined ? undefined : ((angle % cycle) + cycle) % cycle;
    for (const call of this.calls) call();
  }
  watch(call: () => void): () => void {
    this.calls.add(call);
    return () => this.calls.delete(call);
  }
}
export const crank = new Crank();
