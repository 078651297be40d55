/** The figure of a value, for sweeps and differences: a verdict's is what it judges; what has none is NaN. */
export const numeric = (value: unknown): number =>
  typeof value === 'number' && Number.isFinite(value)
    ? value
    : typeof value === 'object' && value !== null && 'value' in value && typeof value.value === 'number'
      ? value.value
      : NaN;
