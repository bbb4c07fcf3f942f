// Intel HEX, after the maker's specification of 1988 (revision A): record types 00 to 05.
// Written here because the libraries found read no S-records and name no line in their refusals.
import { itemAt, lastOf } from "../records/index.js";
import { fromHexDigits, Gatherer, type MemoryFile, sumOf, toHexDigits } from "./memory-file.js";

const lengths: Readonly<Record<number, number>> = { 1: 0, 2: 2, 3: 4, 4: 2, 5: 4 };
const names: Readonly<Record<number, string>> = {
  0: "data",
  1: "end of file",
  2: "extended segment address",
  3: "start segment address",
  4: "extended linear address",
  5: "start linear address",
};

/** One record taken apart, or why it is none. */
export type HexRecord =
  | { readonly kind: "record"; readonly type: number; readonly offset: number; readonly data: Uint8Array }
  | { readonly kind: "bad"; readonly says: string; readonly expected: string };

export function readHexRecord(line: string): HexRecord {
  const bad = (says: string, expected: string): HexRecord => ({ kind: "bad", says, expected });
  if (!line.startsWith(":")) return bad("The line does not begin with a colon.", "a record that begins with :");
  const all = fromHexDigits(line.slice(1));
  if (all === undefined) return bad("The line holds something that is not a pair of hex digits.", "pairs of 0-9 and A-F after the colon");
  if (all.length < 5) return bad(`The record has ${all.length} bytes.`, "at least 5: length, two of address, type, check byte");
  const count = itemAt(all, 0);
  if (all.length !== count + 5) return bad(`The record says ${count} data bytes and holds ${all.length - 5}.`, `${count} data bytes`);
  if (sumOf(all) !== 0) {
    const right = -sumOf(all.subarray(0, -1)) & 0xff;
    return bad(`The check byte is ${toHexDigits([lastOf(all)])}.`, `${toHexDigits([right])} for the bytes as they stand`);
  }
  const type = itemAt(all, 3);
  const wanted = lengths[type];
  if (names[type] === undefined) return bad(`Record type ${toHexDigits([type])} is not known.`, "type 00 to 05");
  if (wanted !== undefined && count !== wanted) return bad(`A record "${names[type]}" has ${count} data bytes.`, `${wanted} data bytes`);
  return { kind: "record", type, offset: itemAt(all, 1) * 256 + itemAt(all, 2), data: all.subarray(4, -1) };
}

export function readIntelHex(text: string): MemoryFile {
  const gather = new Gatherer();
  let base = 0;
  let segment = true;
  let ended = 0;
  for (const [index, raw] of text.split(/\r\n|\n|\r/).entries()) {
    const line = raw.trim();
    const number = index + 1;
    if (line === "") continue;
    if (gather.problems.length >= 20) break;
    if (ended > 0) {
      gather.refuse(number, `There is more after the end record of line ${ended}.`, "nothing after the end record");
      break;
    }
    const record = readHexRecord(line);
    if (record.kind === "bad") {
      gather.refuse(number, record.says, record.expected);
      continue;
    }
    const { type, offset, data } = record;
    if (type === 1) ended = number;
    if (type === 2 || type === 4) {
      segment = type === 2;
      base = (itemAt(data, 0) * 256 + itemAt(data, 1)) * (segment ? 16 : 0x10000);
    }
    if (type !== 0) continue;
    // Inside a segment the offset wraps at 64K; a linear address runs on.
    const before = segment ? Math.min(data.length, 0x10000 - offset) : data.length;
    gather.add(base + offset, data.subarray(0, before), number);
    gather.add(base, data.subarray(before), number);
  }
  if (ended === 0 && gather.problems.length === 0)
    gather.refuse(0, "The file has no end record; it may be cut short.", "a last line :00000001FF");
  return gather.finish("hex");
}

function hexRecord(type: number, offset: number, data: readonly number[] | Uint8Array): string {
  const body = [data.length, offset >> 8, offset & 0xff, type, ...data];
  return `:${toHexDigits([...body, -sumOf(body) & 0xff])}\n`;
}

/** Sixteen bytes a line; an extended linear address wherever the upper half of the address changes. */
export function writeIntelHex(bytes: Uint8Array, base = 0): string {
  const lines: string[] = [];
  let upper = 0;
  for (let at = 0; at < bytes.length; ) {
    const address = base + at;
    if (Math.floor(address / 0x10000) !== upper) {
      upper = Math.floor(address / 0x10000);
      lines.push(hexRecord(4, 0, [upper >> 8, upper & 0xff]));
    }
    const length = Math.min(16 - (address % 16), bytes.length - at);
    lines.push(hexRecord(0, address & 0xffff, bytes.subarray(at, at + length)));
    at += length;
  }
  return `${lines.join("")}:00000001FF\n`;
}
