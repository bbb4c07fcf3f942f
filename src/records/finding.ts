// A Finding: one thing wrong (or worth knowing) about the data, with its place. Plain text, colour only when printed.

/** Codes of reading: a file that is not what a record file is, or not in the shape of its kind. */
export const readingCodes = [
  /** Not YAML, or YAML of a sort records do not use. */
  "yaml-syntax",
  "yaml-duplicate-key",
  /** An anchor or an alias. */
  "yaml-alias",
  /** A tab where spaces indent. */
  "yaml-tab",
  "yaml-tag",
  "yaml-many-documents",
  /** A text that a # cuts short. */
  "yaml-comment",
  /** Not UTF-8, or with control characters; a byte order mark is a warning. */
  "file-encoding",
  "file-empty",
  "file-too-large",
  /** In no folder of records, or without the name ending .yaml. */
  "file-place",
  /** Line 1 does not name the schema. */
  "file-schema-line",
  "shape-unknown-field",
  "shape-missing-field",
  "shape-wrong-type",
  /** A word that is none of those allowed. */
  "shape-bad-word",
  /** The right type, but not a value that can stand here. */
  "shape-bad-value",
] as const;

/** Closed set of codes. A house rule's code is rule- and its name; the rules are listed in the catalogue. */
export type FindingCode = (typeof readingCodes)[number] | `rule-${string}`;

/** Place of a value: a JSON pointer into a file; line and column counted from 1, filled in from the file's text. */
export interface Place {
  readonly file: string;
  readonly pointer: string;
  readonly line: number;
  readonly column: number;
  /** The source line, for the caret. */
  readonly text?: string;
  /** How many characters the caret underlines. */
  readonly span?: number;
}

export interface Finding {
  readonly code: FindingCode;
  readonly level: "error" | "warning" | "note";
  /** What is wrong, in one sentence. */
  readonly says: string;
  readonly at: Place;
  /** The other places that matter, each with a word on why. */
  readonly related?: readonly { readonly says: string; readonly at: Place }[];
  readonly expected?: string;
  readonly actual?: string;
  /** What to do next: the near-miss, the place to put it, the command to run. */
  readonly hint?: string;
}
