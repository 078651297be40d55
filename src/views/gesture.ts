const pause = 600; // ms: arrow presses closer than this are one

/** Tells which edits belong together: pointer down to up, focus to blur, arrow presses in quick succession. */
export class Gesture {
  private token: object | null = null;
  private keyed: { token: object; at: number } | null = null;

  begin(): void {
    this.token = {};
  }
  end(): void {
    this.token = null;
  }
  /** The token of the gesture that goes on, if there is one. */
  get now(): object | undefined {
    return this.token ?? undefined;
  }
  get key(): object {
    const at = performance.now();
    this.keyed = this.keyed && at - this.keyed.at < pause ? { ...this.keyed, at } : { token: {}, at };
    return this.keyed.token;
  }
}
