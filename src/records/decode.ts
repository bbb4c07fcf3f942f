// From bytes to text: UTF-8 only. What cannot be read is a finding, never a guess.
import type { Finding } from "./finding.js";
import { locator } from "./place.js";

/** A record is a few kilobytes; a file above this is not one. */
export const largestFile = 256 * 1024;

export interface Decoded {
  readonly text?: string;
  readonly findings: readonly Finding[];
}

export function decode(file: string, content: Uint8Array | string): Decoded {
  const start = { file, pointer: "", line: 1, column: 1 };
  const refuse = (code: Finding["code"], says: string, hint: string): Decoded => ({
    findings: [{ code, level: "error", says, at: start, hint }],
  });
  if (content.length > largestFile) {
    return refuse(
      "file-too-large",
      `The file is ${Math.round(content.length / 1024)} KB long; a record holds at most ${largestFile / 1024} KB.`,
      "Put each record in a file of its own, and pictures or dumps outside the data folder.",
    );
  }
  const save = "Save it as UTF-8 (most editors: Save as, Encoding, UTF-8).";
  let text: string;
  if (typeof content === "string") text = content;
  else {
    const [a, b] = content;
    if ((a === 0xff && b === 0xfe) || (a === 0xfe && b === 0xff)) return refuse("file-encoding", "The file is in UTF-16.", save);
    text = new TextDecoder("utf-8", { ignoreBOM: true }).decode(content);
    const bad = text.indexOf("\ufffd");
    if (bad >= 0 && !validUtf8(content)) {
      const at = locator(file, text)("", { offset: [bad, bad + 1] });
      return { findings: [{ code: "file-encoding", level: "error", says: "The file has bytes that are not UTF-8.", at, hint: save }] };
    }
  }
  const findings: Finding[] = [];
  if (text.startsWith("\ufeff")) {
    text = text.slice(1);
    findings.push({
      code: "file-encoding",
      level: "warning",
      says: "The file opens with a byte order mark.",
      at: start,
      hint: "Save it as UTF-8 without BOM. The rest was read all the same.",
    });
  }
  if (text.split(/\r\n?|\n/).every((l) => /^\s*(#|$)/.test(l)))
    return refuse("file-empty", "The file holds no record.", "Fill it in, or delete it.");
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
  const odd = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f]|\r(?!\n)/.exec(text);
  if (odd) {
    const cr = odd[0] === "\r";
    const at = locator(file, text)("", { offset: [odd.index, odd.index + 1] });
    const says = cr
      ? "A line ends with a carriage return alone."
      : `The file holds a control character (code ${odd[0].charCodeAt(0)}); it may be in UTF-16 or not be text at all.`;
    const hint = cr ? "Save it with LF or CRLF line ends." : save;
    return { findings: [...findings, { code: "file-encoding", level: "error", says, at, hint }] };
  }
  return { text, findings };
}

function validUtf8(content: Uint8Array): boolean {
  try {
    new TextDecoder("utf-8", { fatal: true }).decode(content);
    return true;
  } catch {
    return false;
  }
}
