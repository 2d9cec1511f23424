/** An order of chance that anyone can repeat from its seed. */

const MULTIPLIER = 1664525n;
const INCREMENT = 1013904223n;
const MODULUS = 2n ** 32n;

/**
 * The places 0 to count - 1 in an order of chance: swapped from the last down (Fisher and Yates), drawn by
 * x = (1664525 x + 1013904223) mod 2^32 (Numerical Recipes). The seed is a whole number from 0 on.
 */
export function randomOrder(count: number, seed: number): number[] {
  const order = Array.from({ length: count }, (_, index) => index);
  let x = BigInt(seed) % MODULUS;
  for (let i = count - 1; i >= 1; i -= 1) {
    x = (MULTIPLIER * x + INCREMENT) % MODULUS;
    const j = Number((x * BigInt(i + 1)) / MODULUS);
    [order[i], order[j]] = [order[j] ?? 0, order[i] ?? 0];
  }
  return order;
}
