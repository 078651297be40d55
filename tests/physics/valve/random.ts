/** Numbers that look random and are the same on every run (a linear congruence; D. E. Knuth's constants, from memory). */
export function randomFrom(seed: number): (min: number, max: number) => number {
  let state = BigInt(seed);
  return (min, max) => {
    state = (state * 6364136223846793005n + 1442695040888963407n) & 0xffffffffffffffffn;
    return min + (max - min) * (Number(state >> 11n) / 2 ** 53);
  };
}
