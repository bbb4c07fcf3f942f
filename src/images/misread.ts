// A known image that was read wrongly: lines crossed or inverted on the way. Found by undoing each such mistake and asking the checksums.
// It is told and never taken: a reader that crosses two lines may do worse things too.
import { crc32 } from "./crc32.js";
import { agrees, type KnownImage } from "./known-image.js";
import { hexAddress } from "./memory-file.js";
import { timesHeld } from "./rearrange.js";

export interface Misreading {
  readonly family: string;
  readonly version: string;
  readonly how: "inverted" | "halves-exchanged" | "data-lines" | "address-lines";
  /** The two lines that are exchanged. */
  readonly lines?: readonly [number, number];
  readonly says: string;
}

/** Longer dumps are not tried: every pair of address lines costs a walk over all bytes. */
const longest = 1024 * 1024;

/** The whole dump, or where it is none of them a run of the length of an image: a device of several banks, each read the same wrong way. */
export async function findMisreading(bytes: Uint8Array, images: readonly KnownImage[]): Promise<Misreading | undefined> {
  const once = bytes.subarray(0, bytes.length / timesHeld(bytes));
  const found = await misreadingOf(once, images);
  if (found || once.length > longest) return found;
  const sizes = new Set(images.flatMap(({ size }) => (size === "unknown" || size >= once.length ? [] : [size])));
  for (const size of sizes)
    for (let offset = 0; offset + size <= once.length; offset += size) {
      const bank = await misreadingOf(once.subarray(offset, offset + size), images);
      if (bank) return { ...bank, says: `From ${hexAddress(offset)} on: ${bank.says.charAt(0).toLowerCase()}${bank.says.slice(1)}` };
    }
  return undefined;
}

async function misreadingOf(once: Uint8Array, images: readonly KnownImage[]): Promise<Misreading | undefined> {
  const first = once[0];
  if (once.every((b) => b === first)) return undefined;
  const candidates = images.filter((image) => image.size === once.length && once.length <= longest);
  for (const width of new Set(candidates.map((image) => image.width))) {
    const these = candidates.filter((image) => image.width === width);
    for (const { turned, how, lines } of mistakes(once, width)) {
      const sum = crc32(turned);
      for (const image of these) {
        if (image.crc32 !== "unknown" && image.crc32 !== sum) continue;
        if ((await agrees(image, turned)) === undefined) continue;
        const { family, version, familyName } = image;
        return { family, version, how, ...(lines ? { lines } : {}), says: words(how, lines ?? [0, 0], `${familyName} ${version}`) };
      }
    }
  }
  return undefined;
}

interface Mistake {
  readonly turned: Uint8Array;
  readonly how: Misreading["how"];
  readonly lines?: readonly [number, number];
}

function* mistakes(bytes: Uint8Array, width: number): Generator<Mistake> {
  yield { turned: bytes.map((b) => ~b & 0xff), how: "inverted" };
  const half = bytes.length / 2;
  if (Number.isInteger(half)) {
    const turned = new Uint8Array(bytes.length);
    turned.set(bytes.subarray(half));
    turned.set(bytes.subarray(0, half), half);
    yield { turned, how: "halves-exchanged" };
  }
  const unit = width / 8;
  for (const lines of pairs(width)) yield { turned: exchangeData(bytes, unit, lines), how: "data-lines", lines };
  const count = Math.log2(bytes.length / unit);
  if (!Number.isInteger(count)) return;
  for (const lines of pairs(count)) {
    const turned = new Uint8Array(bytes.length);
    for (let at = 0; at < bytes.length / unit; at += 1)
      for (let part = 0; part < unit; part += 1) turned[at * unit + part] = bytes[exchangeBits(at, lines) * unit + part] ?? 0;
    yield { turned, how: "address-lines", lines };
  }
}

/** Two data lines of a device that gives `unit` bytes at a time, the low byte first. */
function exchangeData(bytes: Uint8Array, unit: number, [a, b]: readonly [number, number]): Uint8Array {
  const out = bytes.slice();
  for (let at = 0; at + unit <= bytes.length; at += unit) {
    const [low, high] = [at + (a >> 3), at + (b >> 3)];
    const differ = (((bytes[low] ?? 0) >> (a & 7)) ^ ((bytes[high] ?? 0) >> (b & 7))) & 1;
    out[low] = (out[low] ?? 0) ^ (differ << (a & 7));
    out[high] = (out[high] ?? 0) ^ (differ << (b & 7));
  }
  return out;
}

function* pairs(count: number): Generator<readonly [number, number]> {
  for (let a = 0; a < count; a += 1) for (let b = a + 1; b < count; b += 1) yield [a, b];
}

function exchangeBits(value: number, [a, b]: readonly [number, number]): number {
  const differ = ((value >> a) ^ (value >> b)) & 1;
  return value ^ ((differ << a) | (differ << b));
}

function words(how: Misreading["how"], [a, b]: readonly [number, number], image: string): string {
  switch (how) {
    case "inverted":
      return `With every bit inverted it is ${image}: something between device and reader inverts the data.`;
    case "halves-exchanged":
      return `With its two halves exchanged it is ${image}: the highest address line is inverted, or two files were joined in the wrong order.`;
    case "data-lines":
      return `With D${a} and D${b} exchanged it is ${image}: those two data lines are crossed.`;
    case "address-lines":
      return `With A${a} and A${b} exchanged it is ${image}: those two address lines are crossed.`;
    default:
      return how satisfies never;
  }
}
