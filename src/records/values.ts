// Reading single values out of records: sizes in bytes, facts that may be unknown.

/** The value of a fact nobody knows yet. Compare with `=== unknown`; never treat it as 0 or false. */
export const unknown = "unknown" as const;
export type Unknown = typeof unknown;

type FactForm<T> = T | Unknown | { readonly is: T | Unknown; readonly source?: string; readonly find?: string };

/** Bytes of a size as records write it: 16384, "16K", "1M" (K = 1024). */
export function bytes(size: number | string): number {
  if (typeof size === "number") return size;
  const unit = size.endsWith("M") ? 1024 * 1024 : 1024;
  return Number.parseInt(size, 10) * unit;
}

/** "64K", "1M", "300 bytes": a size as people say it. */
export function sizeText(count: number): string {
  if (count >= 1024 * 1024 && count % (1024 * 1024) === 0) return `${count / (1024 * 1024)}M`;
  if (count >= 1024 && count % 1024 === 0) return `${count / 1024}K`;
  return `${count} bytes`;
}

/** The value of a fact, or `unknown`. A fact left out altogether is unknown too. */
export function known<T>(fact: FactForm<T> | undefined): T | Unknown {
  if (fact === undefined) return unknown;
  if (typeof fact === "object" && fact !== null && "is" in fact) return fact.is;
  return fact as T | Unknown;
}

/** The entries of a list that a word may stand for: none of them where it is a word ("none", "unknown") or was left out. */
export function listed<T>(given: readonly T[] | string | undefined): readonly T[] {
  return typeof given === "object" ? given : [];
}

/** A limit in numbers: infinite where there is none ("any"), `unknown` where nobody wrote it down. */
export function limitOf(fact: FactForm<number | "any"> | undefined): number | Unknown {
  const is = known(fact);
  return is === "any" ? Number.POSITIVE_INFINITY : is;
}

/** How to find an unknown fact out, when the record says so. */
export function howToFind(fact: FactForm<unknown> | undefined): string | undefined {
  return typeof fact === "object" && fact !== null && "find" in fact ? (fact.find as string) : undefined;
}

/** Where a fact comes from, when the record says so. */
export function sourceOf(fact: FactForm<unknown> | undefined): string | undefined {
  return typeof fact === "object" && fact !== null && "source" in fact ? (fact.source as string) : undefined;
}

/** An address in hex with the prefix used everywhere: 0xD0000. */
export function hex(address: number, digits = 0): string {
  return `0x${address.toString(16).toUpperCase().padStart(digits, "0")}`;
}
