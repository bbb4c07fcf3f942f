// What a text was read as, kept for the next time the same text stands in the same file: parsing is most of what opening a club takes.
// The whole text is the key, so that nothing is ever taken for what it was before it changed.
import type { Finding } from "./finding.js";
import type { Kind, RecordOf } from "./schema/index.js";

export interface TextRead {
  readonly record?: RecordOf[Kind];
  /** What was parsed, when it is no record of its kind. */
  readonly value?: unknown;
  readonly text?: string;
  readonly findings: readonly Finding[];
}

/** Texts kept at most; then all are let go. A club has hundreds, and each is a few kilobytes. */
const most = 2000;

const kept = new Map<string, Map<string, TextRead>>();
let count = 0;

/** What the text was read as before under this name, or else what `read` makes of it. All who ask share one value, which nobody can change. */
export function keptOr(name: string, text: string, read: () => TextRead): TextRead {
  const known = kept.get(text)?.get(name);
  if (known) return known;
  if (count >= most) {
    kept.clear();
    count = 0;
  }
  const made = freeze(read());
  const under = kept.get(text) ?? new Map<string, TextRead>();
  kept.set(text, under.set(name, made));
  count += 1;
  return made;
}

function freeze<T>(value: T): T {
  if (typeof value !== "object" || value === null || Object.isFrozen(value)) return value;
  for (const inner of Object.values(value)) freeze(inner);
  return Object.freeze(value);
}
