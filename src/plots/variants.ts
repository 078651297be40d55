/** One of the variants a figure shows: its name, and its place among them, by which its lines are dashed. */
export interface Shown {
  readonly name: string;
  /** From 0; the same as long as the variants are. */
  readonly place: number;
}
/** The values of another variant than the one the figure is about. */
export interface Overlaid<V> extends Shown {
  readonly values: V;
}
/** What a form that shows other variants is given besides its own values. */
export interface WithOthers<V> {
  /** The variant that the figure is about; undefined where there is only one engine. */
  readonly self?: Shown;
  readonly others?: readonly Overlaid<V>[];
}

const dashes = ['', '8 4', '.1 5', '14 4 2 4'];

/** How the lines of a variant are stroked, as attributes; dots are a little wider than what they stand for. */
export function strokeOf(place: number, width: number): string {
  const dash = dashes[place % dashes.length]!;
  const isDotted = dash.startsWith('.');
  return `stroke-width="${isDotted ? width * 1.37 : width}"${dash === '' ? '' : ` stroke-dasharray="${dash}"`}${isDotted ? ' stroke-linecap="round"' : ''}`;
}
