// Amounts as they are written, counted in whole billionths (nA, nW), so that a sum of them is exact and an overload of a hair is one.
// What is finer than that counts against the machine: draws go up, limits go down. 0.3 A at 3.3 V is 990,000,000 nW, no more and no less.

const places = 9;

/** No amount counts for more (10,000 A or W): so sums of a hundred cards stay whole numbers that a double holds. */
export const most_nano = 1e13;

/** What is drawn: the product of the factors in billionths, rounded up. */
export const drawn_nano = (...factors: readonly number[]): number => Math.min(most_nano, Number(product(factors, "up")));

/** What may be drawn: the product of the factors in billionths, rounded down; always below what counts for the most. */
export const allowed_nano = (...factors: readonly number[]): number => Math.min(most_nano - 1, Number(product(factors, "down")));

/** Billionths back in the unit: 1,250,000,000 nA is 1.25 A. */
export const ofNano = (amount: number): number => amount / 10 ** places;

function product(factors: readonly number[], rounding: "up" | "down"): bigint {
  let digits = 1n;
  let decimals = -places;
  for (const factor of factors) {
    const read = asDecimal(factor);
    digits *= read.digits;
    decimals += read.decimals;
  }
  if (decimals <= 0) return digits * 10n ** BigInt(-decimals);
  const by = 10n ** BigInt(decimals);
  const whole = digits / by;
  return rounding === "up" && digits % by > 0n ? whole + 1n : whole;
}

/** A number of 0 or more as its shortest decimal says it: 0.85 is 85 with 2 decimals, not the binary fraction beside it. */
function asDecimal(value: number): { readonly digits: bigint; readonly decimals: number } {
  const [mantissa = "0", exponent = "0"] = String(value).split("e");
  const [whole = "0", fraction = ""] = mantissa.split(".");
  return { digits: BigInt(whole + fraction), decimals: fraction.length - Number(exponent) };
}
