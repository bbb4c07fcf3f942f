// The part of JSON Schema that record schemas use, and how to say a shape or a value in words.
import { itemAt, must } from "./must.js";
import type { Unit } from "./quantity.js";

/** What a schema of ours may hold. A test walks every schema and fails on anything else. */
export interface Shape {
  readonly type?: string;
  readonly description?: string;
  readonly properties?: Readonly<Record<string, Shape>>;
  readonly patternProperties?: Readonly<Record<string, Shape>>;
  readonly required?: readonly string[];
  readonly additionalProperties?: boolean;
  readonly items?: Shape;
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly enum?: readonly string[];
  readonly const?: unknown;
  readonly pattern?: string;
  readonly minLength?: number;
  readonly maxLength?: number;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly anyOf?: readonly Shape[];
  readonly discriminator?: { readonly propertyName: string };
  /** The text is the id of a record of this kind. No keyword of the standard: other readers pass over it. */
  readonly refersTo?: string;
  /** What the number is counted in; our own, not part of JSON Schema. */
  readonly unit?: Unit;
}

/** A shape, or the branches of a union of any depth. */
export function flat(shape: Shape): readonly Shape[] {
  return shape.anyOf ? shape.anyOf.flatMap(flat) : [shape];
}

/** What a number there is counted in, when the schema says so. */
export function unitOf(shape: Shape): Unit | undefined {
  return shape.unit ?? shape.anyOf?.map(unitOf).find((unit) => unit !== undefined);
}

/** What a pattern asks for, in words. A test fails when a schema has a pattern without words. */
const patternWords: Readonly<Record<string, string>> = {
  "^[a-z0-9]+(-[a-z0-9]+)*$": "an identifier (lower-case words and digits joined by hyphens)",
  "^[A-Za-z0-9+./_-][A-Za-z0-9+./_ -]*$": "a short name (letters, digits, + - . / _ and spaces)",
  "^[0-9]{4}(-[0-9]{2}(-[0-9]{2})?)?$": 'a date in quotes ("1987", "1987-05" or "1987-05-21")',
  "^[1-9][0-9]*[KM]$": "a size with K or M (16K, 1M)",
  "^https?://": "an address that begins with http:// or https://",
};

export function wordsOfPattern(pattern: string): string | undefined {
  const digest = /^\^\[0-9a-f\]\{([0-9]+)\}\$$/.exec(pattern);
  return digest ? `${digest[1]} hex digits in lower case, in quotes` : patternWords[pattern];
}

/** A shape in words: "a number of at least 0, or the word unknown". */
export function words(shape: Shape): string {
  if (shape.anyOf) {
    // A fact's long form {is: ...} is one more way to write it, not another thing to expect.
    const [first, ...rest] = [...new Set(shape.anyOf.filter((b) => !b.properties?.is).map(words))];
    return rest.length === 0 ? (first ?? "a mapping") : `${[first, ...rest.slice(0, -1)].join(", ")} or ${rest.at(-1)}`;
  }
  if (shape.const !== undefined) return `the word ${String(shape.const)}`;
  if (shape.enum) return `one of: ${shape.enum.join(", ")}`;
  switch (shape.type) {
    case "object":
      return shape.patternProperties
        ? `a mapping of names to values, each ${words(itemAt(Object.values(shape.patternProperties), 0))}`
        : "a mapping of fields";
    case "array": {
      const of = `each ${words(must(shape.items, "shape.items"))}`;
      if (shape.minItems !== undefined && shape.minItems === shape.maxItems) return `a list of exactly ${shape.minItems} entries, ${of}`;
      return shape.minItems ? `a list with at least one entry, ${of}` : `a list, ${of}`;
    }
    case "string": {
      const what = shape.pattern === undefined ? "text" : (wordsOfPattern(shape.pattern) ?? `text like ${shape.pattern}`);
      return shape.maxLength === undefined ? what : `${what}, at most ${shape.maxLength} characters`;
    }
    case "integer":
    case "number": {
      const what = shape.type === "integer" ? "a whole number" : "a number";
      if (shape.minimum !== undefined && shape.maximum !== undefined) return `${what} from ${shape.minimum} to ${shape.maximum}`;
      return shape.minimum === undefined ? what : `${what} of at least ${shape.minimum}`;
    }
    case "boolean":
      return "true or false";
    default:
      return "a value";
  }
}

/** A value in words, for "actual"; `source` is how the file writes it. */
export function describe(value: unknown, source?: string): string {
  if (value === null || value === undefined) return "nothing";
  if (Array.isArray(value)) return value.length === 0 ? "an empty list" : `a list of ${value.length}`;
  switch (typeof value) {
    case "string":
      return value === "" ? "an empty text" : `the text "${value.length > 40 ? `${value.slice(0, 40)}…` : value}"`;
    case "number":
      return `the number ${source ?? value}`;
    case "boolean":
      return source ?? `${value}`;
    default:
      return "a mapping";
  }
}
