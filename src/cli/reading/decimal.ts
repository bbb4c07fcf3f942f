// Decimals as whole numbers: the sums of a problem file may be told in decimals, and are added up in whole numbers of their smallest place
// (0.7 + 0.2 + 0.1 as 7 + 2 + 1 tenths), since a double holds no tenth exactly.

/** `units / 10 ** places`; 0.25 is 25 hundredths. */
export interface Decimal {
  readonly units: bigint;
  readonly places: number;
}

/** The decimal a number is written as. */
export function decimalOf(number: number): Decimal {
  if (Number.isSafeInteger(number)) return { units: BigInt(number), places: 0 };
  const [mantissa, exponent = "0"] = String(number).split("e") as [string, string?];
  const [whole, part = ""] = mantissa.split(".") as [string, string?];
  const units = BigInt(whole + part);
  const places = part.length - Number(exponent);
  return places >= 0 ? { units, places } : { units: units * 10n ** BigInt(-places), places: 0 };
}

export const times = (one: Decimal, two: Decimal): Decimal => ({ units: one.units * two.units, places: one.places + two.places });

/** How many of the units that `places` stand for. Only for as many places as the decimal has, or more. */
export const unitsAt = ({ units, places }: Decimal, at: number): bigint => units * 10n ** BigInt(at - places);

/** A whole number of such units as a number again. */
export function fromUnits(units: number, places: number): number {
  return places === 0 ? units : Number(`${units}e-${places}`);
}
