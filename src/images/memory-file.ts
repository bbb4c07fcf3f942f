// What a file for a device programmer holds once read: bytes from a first address on, with the gaps it left.
// Readers give this or say line by line why not.
import { itemAt, lastOf } from "../records/index.js";

export type FileFormat = "bin" | "hex" | "srec";

export interface ReadProblem {
  /** Counted from 1; 0 for the file as a whole. */
  readonly line: number;
  readonly says: string;
  readonly expected: string;
}

export type MemoryFile =
  | {
      readonly kind: "read";
      readonly format: FileFormat;
      readonly bytes: Uint8Array;
      /** Address of the first byte. */
      readonly base: number;
      /** Runs no record filled; they hold FF. */
      readonly gaps: readonly { readonly from: number; readonly to: number }[];
      /** Text of the header record, when there is one. */
      readonly header?: string | undefined;
    }
  | { readonly kind: "refused"; readonly format: FileFormat; readonly problems: readonly ReadProblem[] };

/** Larger than any device this is for; a damaged address would else ask for gigabytes. */
export const mostBytes = 64 * 1024 * 1024;

interface Chunk {
  readonly at: number;
  readonly bytes: Uint8Array;
  readonly line: number;
}

/** Gathers records into one run of bytes. */
export class Gatherer {
  readonly #chunks: Chunk[] = [];
  readonly problems: ReadProblem[] = [];

  add(at: number, bytes: Uint8Array, line: number): void {
    if (bytes.length > 0) this.#chunks.push({ at, bytes, line });
  }

  refuse(line: number, says: string, expected: string): void {
    this.problems.push({ line, says, expected });
  }

  finish(format: FileFormat, header?: string): MemoryFile {
    const chunks = [...this.#chunks].sort((a, b) => a.at - b.at || a.line - b.line);
    if (this.problems.length === 0 && chunks.length === 0) this.refuse(0, "The file holds no data.", "at least one data record");
    if (this.problems.length > 0) return { kind: "refused", format, problems: this.problems };
    const base = itemAt(chunks, 0).at;
    const end = chunks.reduce((far, c) => Math.max(far, c.at + c.bytes.length), base);
    if (end - base > mostBytes) {
      const far = lastOf(chunks);
      this.refuse(
        far.line,
        `The records lie ${end - base} bytes apart, from ${hexAddress(base)} to ${hexAddress(end - 1)}.`,
        `at most ${mostBytes} bytes from first to last`,
      );
      return { kind: "refused", format, problems: this.problems };
    }
    const bytes = new Uint8Array(end - base).fill(0xff);
    const gaps: { from: number; to: number }[] = [];
    let filled = base;
    for (const chunk of chunks) {
      if (chunk.at > filled) gaps.push({ from: filled, to: chunk.at });
      for (let i = 0; i < chunk.bytes.length; i++) {
        const at = chunk.at + i;
        // Saying the same thing twice is harmless; saying two things is not.
        if (at < filled && bytes[at - base] !== chunk.bytes[i]) {
          this.refuse(chunk.line, `Address ${hexAddress(at)} is given twice with different bytes.`, "each address once");
          return { kind: "refused", format, problems: this.problems };
        }
        bytes[at - base] = itemAt(chunk.bytes, i);
      }
      filled = Math.max(filled, chunk.at + chunk.bytes.length);
    }
    return { kind: "read", format, bytes, base, gaps, header };
  }
}

export function hexAddress(at: number): string {
  return `0x${at.toString(16).toUpperCase().padStart(4, "0")}`;
}

/** The bytes of a string of hex digits; undefined when it is not one. */
export function fromHexDigits(digits: string): Uint8Array | undefined {
  if (digits.length % 2 !== 0 || !/^[0-9A-Fa-f]*$/.test(digits)) return undefined;
  return Uint8Array.from({ length: digits.length / 2 }, (_, i) => Number.parseInt(digits.slice(2 * i, 2 * i + 2), 16));
}

export function toHexDigits(bytes: readonly number[] | Uint8Array): string {
  return [...bytes].map((b) => b.toString(16).toUpperCase().padStart(2, "0")).join("");
}

/** Low eight bits of the sum: both record formats build their check byte from it. */
export function sumOf(bytes: readonly number[] | Uint8Array): number {
  let sum = 0;
  for (const b of bytes) sum += b;
  return sum & 0xff;
}
