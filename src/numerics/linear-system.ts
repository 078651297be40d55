/**
 * Solves a square system of linear equations for several right-hand sides by elimination with row interchanges.
 *
 * @param matrix the coefficients, a row an equation; not changed
 * @param rights the right-hand sides, one list each of as many figures as there are rows
 * @returns one solution a right-hand side, or null where the rows do not tell all unknowns apart
 * Source: G. E. Forsythe and C. B. Moler, Computer Solution of Linear Algebraic Systems, Prentice-Hall, 1967 (from memory).
 */
export function linearSystem(
  matrix: readonly Float64Array[],
  rights: readonly (readonly number[])[],
): readonly Float64Array[] | null {
  const n = matrix.length;
  const rows = matrix.map((row, i) => Float64Array.from([...row, ...rights.map((right) => right[i]!)]));
  const largest = rows.reduce((most, row) => row.subarray(0, n).reduce((m, v) => Math.max(m, Math.abs(v)), most), 0);
  for (let k = 0; k < n; k++) {
    let pivot = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(rows[i]![k]!) > Math.abs(rows[pivot]![k]!)) pivot = i;
    [rows[k], rows[pivot]] = [rows[pivot]!, rows[k]!];
    const top = rows[k]!;
    if (!(Math.abs(top[k]!) > largest * 1e-13)) return null;
    for (let i = k + 1; i < n; i++) {
      const row = rows[i]!;
      const share = row[k]! / top[k]!;
      if (share !== 0) for (let j = k; j < row.length; j++) row[j]! -= share * top[j]!;
    }
  }
  return rights.map((_, r) => {
    const found = new Float64Array(n);
    for (let i = n - 1; i >= 0; i--) {
      const row = rows[i]!;
      let rest = row[n + r]!;
      for (let j = i + 1; j < n; j++) rest -= row[j]! * found[j]!;
      found[i] = rest / row[i]!;
    }
    return found;
  });
}
