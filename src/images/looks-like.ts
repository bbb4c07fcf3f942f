// What an unknown dump looks like, for somebody who has to find out what went wrong when it was read.
// Every sentence is something seen in the bytes; none is a guess at which image it was meant to be.
import { itemAt, lastOf, sizeText } from "../records/index.js";
import { asText, formatOf } from "./file-formats.js";
import { hexAddress } from "./memory-file.js";
import { optionRom } from "./option-rom.js";
import { timesHeld } from "./rearrange.js";

const magics: readonly { readonly start: readonly number[]; readonly what: string }[] = [
  { start: [0x50, 0x4b, 0x03, 0x04], what: "a ZIP archive; unpack it and name the file inside" },
  { start: [0x1f, 0x8b], what: "a gzip archive; unpack it and name the file inside" },
  { start: [0x37, 0x7a, 0xbc, 0xaf], what: "a 7z archive; unpack it and name the file inside" },
  { start: [0x25, 0x50, 0x44, 0x46], what: "a PDF document" },
  { start: [0x7f, 0x45, 0x4c, 0x46], what: "a program file (ELF), not the bytes of a device" },
];

function hexByte(value: number): string {
  return value.toString(16).toUpperCase().padStart(2, "0");
}

/** Length of the run of one value the bytes end in. */
function tail(bytes: Uint8Array): number {
  let n = 0;
  while (n < bytes.length && bytes[bytes.length - 1 - n] === bytes[bytes.length - 1]) n++;
  return n;
}

/** Data bits that never change, of those that should. */
function stuckBits(bytes: Uint8Array): string[] {
  let ones = 0;
  let zeros = 0;
  for (const b of bytes) {
    ones |= b;
    zeros |= ~b & 0xff;
  }
  return Array.from({ length: 8 }, (_, bit) => bit).flatMap((bit) => {
    if ((ones & (1 << bit)) === 0) return [`D${bit} is always low`];
    if ((zeros & (1 << bit)) === 0) return [`D${bit} is always high`];
    return [];
  });
}

/** Address lines that make no difference to the contents. */
function deadLines(bytes: Uint8Array): number[] {
  const lines = Math.log2(bytes.length);
  if (!Number.isInteger(lines)) return [];
  return Array.from({ length: lines }, (_, line) => line).filter((line) => {
    const step = 2 ** line;
    for (let i = 0; i < bytes.length; i++) if ((i & step) === 0 && bytes[i] !== bytes[i + step]) return false;
    return true;
  });
}

function sizeRemarks(size: number, sizes: readonly number[]): string[] {
  const says: string[] = [];
  if (size % 2 === 1) says.push(`Its length, ${size} bytes, is odd; no memory device has an odd number of bytes.`);
  else if (!Number.isInteger(Math.log2(size)))
    says.push(`Its length, ${size} bytes, is not a power of two, as devices are; it may be cut short or carry a header.`);
  const known = [...new Set(sizes)].sort((a, b) => a - b);
  if (known.includes(size)) return [...says, `A known image has this size (${sizeText(size)}), but other checksums.`];
  const above = known.find((k) => k > size);
  const below = known.filter((k) => k < size).at(-1);
  if (above !== undefined && size > above * 0.9) says.push(`It is ${above - size} bytes short of a known image of ${sizeText(above)}.`);
  if (below !== undefined && size < below * 1.1)
    says.push(`It is ${size - below} bytes longer than a known image of ${sizeText(below)}; it may carry a header.`);
  if (known.includes(size * 2))
    says.push(
      `It is half as long as a known image of ${sizeText(size * 2)}: perhaps the even or the odd half of one. Name the other half as well.`,
    );
  return says;
}

export function looksLike(bytes: Uint8Array, knownSizes: readonly number[]): string[] {
  if (bytes.length === 0) return ["It is empty."];
  const first = itemAt(bytes, 0);
  if (bytes.every((b) => b === first)) {
    const why =
      first === 0xff
        ? "an erased device, or a reader with nothing in its socket"
        : first === 0
          ? "a device without supply, or a socket with every data pin pulled low"
          : "a reader that made no contact";
    return [`Every byte is ${hexByte(first)}: ${why}.`, ...sizeRemarks(bytes.length, knownSizes)];
  }
  const says: string[] = [];
  const magic = magics.find((m) => m.start.every((b, i) => bytes[i] === b));
  if (magic) return [`It looks like ${magic.what}.`];
  const format = formatOf(bytes);
  if (format !== "bin") return [`It is a text of ${format === "hex" ? "Intel HEX" : "S-"} records; read it as such.`];
  if (asText(bytes) !== undefined) return ["It is plain text, not the bytes of a device."];
  if ((first === 0x55 && bytes[1] === 0xaa) || (first === 0xaa && bytes[1] === 0x55)) {
    const header = optionRom(bytes);
    says.push(
      header.valid
        ? "It begins as the option ROM of a card does, not as the firmware of a board, and its sum is right."
        : `It begins as the option ROM of a card does, not as the firmware of a board. ${header.says}`,
    );
  }
  says.push(...sizeRemarks(bytes.length, knownSizes));
  const held = timesHeld(bytes);
  if (held > 1)
    says.push(
      `The same ${sizeText(bytes.length / held)} stand in it ${held} times over: read as a larger device than it is, or filled up with copies.`,
    );
  const dead = deadLines(bytes.subarray(0, bytes.length / held));
  if (dead.length > 0)
    says.push(`Address line ${dead.map((l) => `A${l}`).join(", ")} makes no difference: a bent pin, or no contact there.`);
  const stuck = stuckBits(bytes);
  if (stuck.length > 0) says.push(`Data bit ${stuck.join(", ")}: a bent pin, or no contact there.`);
  for (const [lane, name] of [
    ["even", 0],
    ["odd", 1],
  ] as const) {
    const value = itemAt(bytes, name);
    if (bytes.every((b, i) => i % 2 !== name || b === value))
      says.push(`Every ${lane} byte is ${hexByte(value)}: one half of a pair is missing.`);
  }
  const end = tail(bytes);
  if (end >= 256 && end >= bytes.length / 64)
    says.push(
      `The last ${end} bytes, from ${hexAddress(bytes.length - end)} on, are all ${hexByte(lastOf(bytes))}: padding, or the end was not read.`,
    );
  if (says.length === 0) says.push("Nothing about it is odd; it may be an image the records do not know.");
  return says;
}
