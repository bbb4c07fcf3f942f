// Every name and every word of a club replaced by a sign that means nothing, and an answer put back into the old names. What an answer says
// may rest on what records mean, never on what things happen to be called.
import { kinds, type Loaded } from "../../../src/records/index.js";

/** A sign for each name and word, in both directions. Signs sort as the names do, or the other way round. */
export interface Renaming {
  rename<T>(value: T): T;
  /** The answer in the old names, as text. */
  back(answer: unknown): string;
}

/** Fields whose text is for people. */
const spoken = new Set([
  "name",
  "says",
  "why",
  "loss",
  "cause",
  "symptoms",
  "how",
  "find",
  "tell",
  "summary",
  "settle",
  "notes",
  "model",
  "maker",
]);
const naming = new Set(["id", "as", "also", "feature", "adds", "removes"]);

/** Words of the schemas (fields and closed lists of words), which nobody can rename. */
function fixedWords(): Set<string> {
  const words = new Set<string>();
  const walk = (shape: unknown): void => {
    if (typeof shape !== "object" || shape === null) return;
    for (const [key, value] of Object.entries(shape)) {
      if (key === "properties") for (const field of Object.keys(value as object)) words.add(field);
      if (key === "enum" || key === "const") for (const word of [value].flat()) words.add(String(word));
      walk(value);
    }
  };
  for (const { schema } of Object.values(kinds)) walk(schema);
  return words;
}

export function renamingOf(loaded: readonly Loaded[], also: readonly unknown[] = [], reverse = false): Renaming {
  const fixed = fixedWords();
  // What a pin of a memory device is called is what it does: A16, D0, /OE.
  for (const { record } of loaded) if ("type" in record && record.type === "memory") for (const pin of record.pins) fixed.add(pin.name);
  const renamable = (text: string) => !fixed.has(text) && !/^[0-9]+[KM]?$/.test(text);
  const found = new Set<string>();
  const collect = (value: unknown, key = ""): void => {
    if (Array.isArray(value)) for (const inner of value) collect(inner, key);
    else if (typeof value === "object" && value !== null) for (const [k, inner] of Object.entries(value)) collect(inner, k);
    else if (typeof value === "string" && (spoken.has(key) || naming.has(key)) && renamable(value)) found.add(value);
  };
  for (const { record } of loaded) collect(record);
  for (const value of also) collect(value);
  const sorted = [...found].sort((a, b) => a.localeCompare(b));
  if (reverse) sorted.reverse();
  const signs = new Map(sorted.map((name, n) => [name, `Q${String(n).padStart(5, "0")}Q`]));
  const names = new Map([...signs].map(([name, sign]) => [sign.toLowerCase(), name]));
  const rename = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(rename);
    if (typeof value === "object" && value !== null)
      return Object.fromEntries(Object.entries(value).map(([k, inner]) => [signs.get(k) ?? k, rename(inner)]));
    return typeof value === "string" ? (signs.get(value) ?? value) : value;
  };
  return {
    rename: <T>(value: T) => rename(value) as T,
    back: (answer) =>
      JSON.stringify(answer)
        .toLowerCase()
        .replace(/q\d{5}q/g, (sign) =>
          JSON.stringify(names.get(sign) ?? sign)
            .slice(1, -1)
            .toLowerCase(),
        ),
  };
}
