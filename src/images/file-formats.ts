// One door to the three file formats of device programmers: raw binary, Intel HEX, S-records.
import { readIntelHex, writeIntelHex } from "./intel-hex.js";
import type { FileFormat, MemoryFile } from "./memory-file.js";
import { readSRecords, writeSRecords } from "./s-record.js";

export const fileEnding: Readonly<Record<FileFormat, string>> = { bin: "bin", hex: "hex", srec: "s19" };

/** The text of a file when every byte of it is plain ASCII. */
export function asText(bytes: Uint8Array): string | undefined {
  let text = "";
  for (let at = 0; at < bytes.length; at += 8192) {
    const part = bytes.subarray(at, at + 8192);
    for (const b of part) if (b > 0x7e || (b < 0x20 && b !== 9 && b !== 10 && b !== 13)) return undefined;
    text += String.fromCharCode(...part);
  }
  return text;
}

/** The format a file is in, by its first characters: a text of records, else raw bytes. */
export function formatOf(bytes: Uint8Array): FileFormat {
  const start = asText(bytes.subarray(0, 64))?.trimStart();
  if (start === undefined || asText(bytes) === undefined) return "bin";
  if (/^:[0-9A-Fa-f]{10}/.test(start)) return "hex";
  if (/^S[0-9][0-9A-Fa-f]{6}/.test(start)) return "srec";
  return "bin";
}

export function readMemoryFile(bytes: Uint8Array, format: FileFormat = formatOf(bytes)): MemoryFile {
  if (format === "bin") {
    if (bytes.length > 0) return { kind: "read", format, bytes, base: 0, gaps: [] };
    return { kind: "refused", format, problems: [{ line: 0, says: "The file is empty.", expected: "at least one byte" }] };
  }
  const text = asText(bytes);
  if (text === undefined)
    return { kind: "refused", format, problems: [{ line: 0, says: "The file is not plain text.", expected: "lines of records" }] };
  return format === "hex" ? readIntelHex(text) : readSRecords(text);
}

export function writeMemoryFile(bytes: Uint8Array, format: FileFormat, title = ""): Uint8Array {
  if (format === "bin") return bytes;
  const text = format === "hex" ? writeIntelHex(bytes) : writeSRecords(bytes, 0, title);
  return Uint8Array.from(text, (c) => c.charCodeAt(0));
}
