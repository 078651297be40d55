/** What a model leaves open about its own value, SI: about two cases in three lie within the ±. */
export interface ModelError {
  readonly plusMinus: number;
  /** What it is made of, each in words, with the change it is good for. */
  readonly shares: readonly { readonly label: string; readonly change: number }[];
}
