const turns: Readonly<Record<string, number>> = {
  ArrowRight: 1,
  ArrowUp: 1,
  ArrowLeft: -1,
  ArrowDown: -1,
  PageUp: 10,
  PageDown: -10,
};

/** How many steps a key moves a slider, ten times as many with shift; 0 if the key is none of a slider's. */
export const stepsOf = ({ key, shiftKey }: KeyboardEvent): number => (turns[key] ?? 0) * (shiftKey ? 10 : 1);
