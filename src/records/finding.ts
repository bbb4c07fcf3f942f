// A Finding: one thing wrong (or worth knowing) about the data, with its place. Plain text, colour only when printed.

/** Closed set of codes; DEVELOPERS.md and the tests list each with an example. House rules use their own name. */
export type FindingCode =
  | "yaml-syntax"
  | "yaml-duplicate-key"
  | "yaml-alias"
  | "yaml-tab"
  | "yaml-tag"
  | "yaml-many-documents"
  | "file-encoding"
  | "file-empty"
  | "file-too-large"
  | "file-place"
  | "file-schema-line"
  | "shape-unknown-field"
  | "shape-missing-field"
  | "shape-wrong-type"
  | "shape-bad-word"
  | "shape-bad-value"
  | `rule-${string}`;

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
