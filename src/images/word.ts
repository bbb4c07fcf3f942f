// A file that an owner gives for a version on their word. What can be seen to be something else is refused all the same: bytes the records
// know under another name, a half, an order that has to be turned first, a device that was not read.
import { bytes as bytesOf, type Firmware, known, sizeText, unknown } from "../records/index.js";
import type { Identification, Match } from "./identify.js";

export type Word =
  /** Known by checksum to be what it is given for. */
  | { readonly kind: "known" }
  /** Nothing speaks against it, and nothing for it: the records hold no checksum of the version. */
  | { readonly kind: "unchecked"; readonly says: string }
  /** The records hold a checksum of the version and these bytes do not have it: not taken for it unless that is said as well. */
  | { readonly kind: "different"; readonly says: string }
  | { readonly kind: "refused"; readonly says: string };

export function takeWord(one: Identification, bytes: Uint8Array, family: Firmware, version: string): Word {
  const asked = `${family.name} ${version}`;
  if (one.matches.some((m) => isAsked(m, family, version) && m.order === "as-is" && m.lies.kind === "whole")) return { kind: "known" };
  const [best] = one.matches;
  if (best) {
    const turned = isAsked(best, family, version) && best.image !== undefined;
    const next = turned ? "Name it with --dump, which puts it right." : `Name a file that holds ${asked}.`;
    return { kind: "refused", says: `${one.name} is not taken for ${asked}. ${best.says} ${next}` };
  }
  if (one.misread)
    return {
      kind: "refused",
      says: `${one.name} is not taken for ${asked}. ${one.misread.says} Read the device again, then name that file.`,
    };
  const empty = emptyText(bytes);
  if (empty !== undefined)
    return { kind: "refused", says: `${one.name} is not taken for ${asked}. ${empty} Read the device again, then name that file.` };
  const image = family.versions.find((v) => v.id === version)?.image;
  const size = known(image?.size);
  if (size !== unknown && bytesOf(size) !== bytes.length)
    return {
      kind: "refused",
      says: `${one.name} is not taken for ${asked}. It has ${sizeText(bytes.length)}, and the records know that version with ${sizeText(bytesOf(size))}.`,
    };
  return isRecorded(image)
    ? { kind: "different", says: `The records know ${asked} by a checksum that these bytes do not have.` }
    : { kind: "unchecked", says: `No checksum of ${asked} is recorded: not checked.` };
}

/** Whether the record holds a checksum to know the whole image by. */
export function isRecorded(image: Firmware["versions"][number]["image"] | undefined): boolean {
  return [image?.crc32, image?.sha1, image?.sha256].some((sum) => known(sum) !== unknown);
}

function isAsked({ family, version, lies }: Match, wanted: Firmware, id: string): boolean {
  return family === wanted.id && version === id && lies.kind !== "bad-dump";
}

/** Bytes that are all alike, or every second one of which is: no firmware lies so. */
function emptyText(bytes: Uint8Array): string | undefined {
  for (const [start, step, what] of [
    [0, 1, "Every byte"],
    [0, 2, "Every even byte"],
    [1, 2, "Every odd byte"],
  ] as const) {
    const first = bytes[start];
    if (first === undefined) continue;
    let alike = true;
    for (let at = start; at < bytes.length && alike; at += step) alike = bytes[at] === first;
    if (alike) return `${what} of it is ${first.toString(16).toUpperCase().padStart(2, "0")}: nothing was read there.`;
  }
  return undefined;
}
