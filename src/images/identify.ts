// Which image a dump holds, and how it lies in it. A match needs a checksum of the record; size alone is never one.
import { type Firmware, itemAt, sizeText } from "../records/index.js";
import { type Checksums, checksums } from "./checksums.js";
import { crc32 } from "./crc32.js";
import { type AgreedBy, agrees, type KnownImage, knownImages } from "./known-image.js";
import { looksLike } from "./looks-like.js";
import { hexAddress } from "./memory-file.js";
import { findMisreading, type Misreading } from "./misread.js";
import { joinLanes, swapBytes, swapWords, timesHeld } from "./rearrange.js";

/** How the bytes of the dump are to be exchanged to give the image. */
export type Order = "as-is" | "byte-swapped" | "word-swapped" | "byte-and-word-swapped";

export type Lies =
  | { readonly kind: "whole" }
  | { readonly kind: "held"; readonly times: number }
  /** Part of a longer dump: a device read at a larger size, or one of several banks. */
  | { readonly kind: "inside"; readonly offset: number }
  /** A half that the records list by its own checksum; the other half is needed too. */
  | { readonly kind: "half"; readonly lane: "even" | "odd" }
  /** Two dumps that are the halves of one image: its even and odd bytes or words, or (of sockets in a row) one part after the other. */
  | { readonly kind: "two-halves"; readonly even: string; readonly odd: string; readonly by: "bytes" | "words" | "parts" }
  /** A file the records list as damaged. */
  | { readonly kind: "bad-dump" };

export interface Match {
  readonly family: string;
  readonly version: string;
  readonly order: Order;
  readonly lies: Lies;
  /** The strongest checksum that agreed; all the record gives and the platform offers were compared. */
  readonly by: AgreedBy;
  readonly says: string;
  /** The plain image; left out for a half alone and for a bad dump. */
  readonly image?: Uint8Array;
}

export interface Identification {
  readonly name: string;
  readonly sums: Checksums;
  /** Best first. Empty: not known; then `looks` says what it looks like. */
  readonly matches: readonly Match[];
  readonly looks: readonly string[];
  /** The known image it would be, read rightly. No match: nothing is burned from it. */
  readonly misread?: Misreading | undefined;
  readonly says: string;
}

const orders: readonly { readonly order: Order; readonly undo: (bytes: Uint8Array) => Uint8Array; readonly says: string }[] = [
  { order: "as-is", undo: (b) => b, says: "" },
  { order: "byte-swapped", undo: swapBytes, says: "with the bytes of each word exchanged" },
  { order: "word-swapped", undo: swapWords, says: "with the words of each 32 bits exchanged" },
  { order: "byte-and-word-swapped", undo: (b) => swapWords(swapBytes(b)), says: "with bytes and words exchanged" },
];

function named(image: KnownImage): string {
  return `${image.familyName} ${image.version}`;
}

function sentence(image: KnownImage, order: string, lies: Lies): string {
  const how = (() => {
    switch (lies.kind) {
      case "whole":
        return order === "" ? "It is" : `It is, ${order},`;
      case "held":
        return `It holds ${lies.times} times over${order === "" ? "" : `, ${order},`}`;
      case "inside":
        return `From ${hexAddress(lies.offset)} on it holds${order === "" ? "" : `, ${order},`}`;
      case "half":
        return `It is the ${lies.lane} half of`;
      case "two-halves":
        return lies.by === "parts"
          ? `${lies.even} and, after it, ${lies.odd} together are`
          : `${lies.even} (even ${lies.by}) and ${lies.odd} (odd ${lies.by}) together are`;
      case "bad-dump":
        return "It is a file known to be damaged, of";
      default:
        return lies satisfies never;
    }
  })();
  return `${how} ${named(image)}.`;
}

/** Every place and order in which a known image could stand in the dump. */
async function findImages(bytes: Uint8Array, images: readonly KnownImage[]): Promise<Match[]> {
  const found: Match[] = [];
  const times = timesHeld(bytes);
  for (const { order, undo, says } of orders) {
    if (order !== "as-is" && bytes.length % (order === "byte-swapped" ? 2 : 4) !== 0) continue;
    const turned = undo(bytes);
    for (const size of new Set(images.map((i) => i.size))) {
      if (size === "unknown" || size > turned.length) continue;
      for (let offset = 0; offset + size <= turned.length; offset += size) {
        const part = turned.subarray(offset, offset + size);
        const sum = crc32(part);
        for (const image of images.filter((i) => i.size === size && (i.crc32 === "unknown" || i.crc32 === sum))) {
          const by = await agrees(image, part);
          if (by === undefined) continue;
          // Image after image, all alike: said once.
          const repeats = turned.length / size;
          const held = Number.isInteger(repeats) && repeats > 1 && times % repeats === 0;
          const lies: Lies =
            turned.length === size ? { kind: "whole" } : held ? { kind: "held", times: repeats } : { kind: "inside", offset };
          if (held && offset > 0) continue;
          found.push({
            family: image.family,
            version: image.version,
            order,
            lies,
            by,
            says: sentence(image, says, lies),
            image: part.slice(),
          });
        }
      }
    }
  }
  return found;
}

/** Files the records list by their own checksum. What can be turned into the image was found by turning it; halves and bad dumps remain. */
function findCirculating(bytes: Uint8Array, images: readonly KnownImage[]): Match[] {
  const sum = crc32(bytes);
  return images.flatMap((image) =>
    image.circulating
      .filter((c) => c.size === bytes.length && c.crc32 === sum)
      .flatMap((c): Match[] => {
        const base = { family: image.family, version: image.version, order: "as-is", by: "crc32" } as const;
        const note = c.note === undefined ? "" : ` ${c.note}`;
        if (c.as === "even-half" || c.as === "odd-half") {
          const lies: Lies = { kind: "half", lane: c.as === "even-half" ? "even" : "odd" };
          return [{ ...base, lies, says: `${sentence(image, "", lies)} The other half is needed too.${note}` }];
        }
        if (c.as === "bad-dump") {
          const lies: Lies = { kind: "bad-dump" };
          return [{ ...base, lies, says: `${sentence(image, "", lies)}${note}` }];
        }
        return [];
      }),
  );
}

/** A plain image before a turned one, whole before part, a proven match before a bad dump. */
function rank(match: Match): number {
  const lies = { whole: 0, held: 1, "two-halves": 2, inside: 3, half: 4, "bad-dump": 5 }[match.lies.kind];
  return lies * 4 + orders.findIndex((o) => o.order === match.order);
}

async function identified(name: string, bytes: Uint8Array, images: readonly KnownImage[]): Promise<Identification> {
  const sums = await checksums(bytes);
  const matches = [...(await findImages(bytes, images)), ...findCirculating(bytes, images)].sort((a, b) => rank(a) - rank(b));
  const sizes = images.flatMap((i) => (i.size === "unknown" ? [] : [i.size]));
  const misread = matches.length > 0 ? undefined : await findMisreading(bytes, images);
  const looks = matches.length > 0 ? [] : misread ? [`${misread.says} Read the device again.`] : looksLike(bytes, sizes);
  const unproven = images.filter((i) => i.size === bytes.length && i.crc32 === "unknown" && i.sha1 === "unknown" && i.sha256 === "unknown");
  if (matches.length === 0 && !misread && unproven.length > 0)
    looks.push(
      `It has the size of ${unproven.map(named).join(", ")}, whose checksums are not recorded; it can be neither confirmed nor denied.`,
    );
  const says = matchText(matches) ?? `Not an image the records know (${sizeText(bytes.length)}, CRC-32 ${sums.crc32}). ${looks.join(" ")}`;
  return { name, sums, matches, looks, ...(misread ? { misread } : {}), says };
}

/** What it is; of a device with several banks every one of them that is known. */
function matchText([best, ...others]: readonly Match[]): string | undefined {
  if (best?.lies.kind !== "inside") return best?.says;
  const offset = ({ lies }: Match) => (lies.kind === "inside" ? lies.offset : 0);
  const banks = [best, ...others.filter((m) => m.lies.kind === "inside" && m.order === best.order)];
  return banks
    .sort((a, b) => offset(a) - offset(b))
    .map((m) => m.says)
    .join(" ");
}

/** What one dump is, held against the firmware records. */
export async function identify(bytes: Uint8Array, firmware: Iterable<Firmware>, name = "The dump"): Promise<Identification> {
  return identified(name, bytes, knownImages(firmware));
}

function join(first: Uint8Array, second: Uint8Array, by: "bytes" | "words" | "parts"): Uint8Array {
  return by === "parts" ? concatenated(first, second) : joinLanes(first, second, by === "bytes" ? 1 : 2);
}

function concatenated(first: Uint8Array, second: Uint8Array): Uint8Array {
  const out = new Uint8Array(first.length + second.length);
  out.set(first);
  out.set(second, first.length);
  return out;
}

export interface NamedBytes {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** Several dumps together: each on its own, and every two of one length as the halves of an image, either way round. */
export async function identifyTogether(dumps: readonly NamedBytes[], firmware: Iterable<Firmware>): Promise<Identification[]> {
  const images = knownImages(firmware);
  const alone = await Promise.all(dumps.map((d) => identified(d.name, d.bytes, images)));
  const pairs: Match[] = [];
  for (const [i, even] of dumps.entries())
    for (const [k, odd] of dumps.entries()) {
      if (i === k || even.bytes.length !== odd.bytes.length) continue;
      for (const by of ["bytes", "words", "parts"] as const) {
        const joined = join(even.bytes, odd.bytes, by);
        for (const match of await findImages(joined, images)) {
          const image = images.find((m) => m.family === match.family && m.version === match.version);
          if (match.lies.kind === "inside" || match.order !== "as-is" || !image) continue;
          // One after the other two dumps of one image are that image twice, not its parts.
          if (by === "parts" && match.lies.kind !== "whole") continue;
          const lies: Lies = { kind: "two-halves", even: even.name, odd: odd.name, by };
          pairs.push({ ...match, lies, says: sentence(image, "", lies) });
        }
      }
    }
  return alone.map((one) => {
    const mine = pairs.filter((p) => p.lies.kind === "two-halves" && (p.lies.even === one.name || p.lies.odd === one.name));
    if (mine.length === 0) return one;
    const matches = [...one.matches, ...mine].sort((a, b) => rank(a) - rank(b));
    return { ...one, matches, looks: [], misread: undefined, says: itemAt(matches, 0).says };
  });
}
