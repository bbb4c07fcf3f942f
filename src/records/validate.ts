// Judges a value against a record schema and says what is wrong in a person's terms: one mistake, one misfit.
// A general validator reports every branch of a union that did not fit; this one walks the same schema but
// first picks the branch the writer meant. The tests hold it against such a validator on mutated records.

import type { FindingCode } from "./finding.js";
import { itemAt, must } from "./must.js";
import { nearest, truncateList } from "./nearest.js";
import { step } from "./pointer.js";
import { hintForNumber, isReadWhole } from "./quantity.js";
import { describe, flat, type Shape, unitOf, words } from "./shape.js";

export interface ValidationIssue {
  readonly code: FindingCode;
  readonly pointer: string;
  readonly on: "key" | "value";
  readonly says: string;
  readonly expected?: string;
  readonly actual?: string;
  readonly hint?: string;
}

/** A value as it stands in the file, by its pointer: 1.10 where the value is 1.1. Undefined when nobody knows. */
export type Written = (pointer: string) => string | undefined;

/** Every misfit of a value, in the order of the schema. Empty means it fits. */
export function validate(shape: Shape, value: unknown, pointer = "", written: Written = () => undefined): readonly ValidationIssue[] {
  const wrong = (of: Shape, what: unknown, at: string, code?: FindingCode) => issueOf(of, what, at, written, code);
  if (shape.anyOf) return validateUnion(shape, value, pointer, written);
  if (shape.const !== undefined)
    return value === shape.const ? [] : [wrong(shape, value, pointer, typeof value === "string" ? "shape-bad-word" : "shape-wrong-type")];
  switch (shape.type) {
    case "object":
      return isMapping(value) ? validateObject(shape, value, pointer, written) : [wrong(shape, value, pointer)];
    case "array":
      return Array.isArray(value) ? validateList(shape, value, pointer, written) : [wrong(shape, value, pointer)];
    case "string":
      return typeof value === "string" ? validateText(shape, value, pointer, written) : [wrong(shape, value, pointer)];
    case "integer":
    case "number":
      return typeof value === "number" && Number.isFinite(value)
        ? validateNumber(shape, value, pointer, written)
        : [wrong(shape, value, pointer)];
    case "boolean":
      return typeof value === "boolean" ? [] : [wrong(shape, value, pointer)];
    default:
      throw new Error(`A schema holds something judge does not know: ${JSON.stringify(shape).slice(0, 80)}`);
  }
}

function isMapping(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function fieldOf(pointer: string): string {
  const last = pointer.slice(pointer.lastIndexOf("/") + 1);
  return pointer === ""
    ? "The record"
    : /^[0-9]+$/.test(last)
      ? `Entry ${Number(last) + 1} of ${fieldOf(pointer.slice(0, pointer.lastIndexOf("/")))}`
      : last;
}

function issueOf(shape: Shape, value: unknown, pointer: string, written: Written, code: FindingCode = "shape-wrong-type"): ValidationIssue {
  const expected = words(shape);
  const source = written(pointer);
  return {
    code,
    pointer,
    on: "value",
    says: `${fieldOf(pointer)} should be ${expected}.`,
    expected,
    actual: describe(value, source),
    hint: hintFor(shape, value, source),
  };
}

const leaveOut = "Write a value after the colon, or leave the field out.";

/** The next action for a value of the wrong type or spelling. */
function hintFor(shape: Shape, value: unknown, source: string | undefined): string {
  const kinds = flat(shape);
  const has = (type: string) => kinds.some((k) => k.type === type);
  if (value === null && source && has("string"))
    return `Write a value after the colon; for the word itself, put it in quotes: "${source}".`;
  if (value === null) return leaveOut;
  if ((typeof value === "number" || typeof value === "boolean") && has("string"))
    return `Put it in quotes, so that it is read as text: "${source ?? value}".`;
  const text = typeof value === "string" ? textHint(shape, kinds, value) : undefined;
  if (text !== undefined) return text;
  if (!Array.isArray(value) && typeof value !== "string" && has("array"))
    return "Write it as a list: each entry begins with a dash and a space.";
  if (has("object")) return "Write fields below it, one a line: name: value.";
  return shape.description ?? "Compare it with another record of its kind.";
}

function textHint(shape: Shape, kinds: readonly Shape[], value: string): string | undefined {
  const has = (type: string) => kinds.some((k) => k.type === type);
  const near = nearest(
    value,
    kinds.flatMap((k) => k.enum ?? (typeof k.const === "string" ? [k.const] : [])),
  );
  if (near) return `Did you mean ${near}?`;
  if (has("boolean") && /^(yes|no|on|off|true|false)$/i.test(value)) return `Write ${/^(yes|on|true)$/i.test(value) ? "true" : "false"}.`;
  const number = has("number") || has("integer") ? hintForNumber(value.trim(), unitOf(shape), !has("number")) : undefined;
  if (number !== undefined) return number;
  if (has("array") && /^-\S/.test(value)) return "Put a space after each dash.";
  return has("array") && !has("object") ? `Write it as a list: [${value}].` : undefined;
}

/** Picks the branch the writer meant: the one named by the discriminator, else the one of the same type. */
function validateUnion(shape: Shape, value: unknown, pointer: string, written: Written): readonly ValidationIssue[] {
  const branches = flat(shape);
  const found = shape.discriminator?.propertyName;
  if (found !== undefined) {
    if (!isMapping(value)) return [issueOf(itemAt(branches, 0), value, pointer, written)];
    const named = branches.map((b) => must(b.properties?.[found], found).const as string);
    const type = value[found];
    if (type === undefined) return [missing(found, `one of: ${named.join(", ")}`, pointer)];
    const branch = branches[named.indexOf(type as string)];
    if (branch) return validate(branch, value, pointer, written);
    const choice: Shape = { type: "string", enum: named };
    return validate(choice, type, step(pointer, found), written);
  }
  if (branches.some((b) => validate(b, value, pointer, written).length === 0)) return [];
  const list = branches.find((b) => b.type === "array");
  // One entry written without its dash is an entry of the list, not another kind of thing.
  if (list && isMapping(value) && !branches.some((b) => b.type === "object")) return [issueOf(list, value, pointer, written)];
  const same = branches.filter((b) => b.const === undefined && sameType(b, value));
  if (same.length > 0 && (isMapping(value) || Array.isArray(value))) return validate(itemAt(same, 0), value, pointer, written);
  if (same.length === 1 && typeof value === "number") return validate(itemAt(same, 0), value, pointer, written);
  return [issueOf(shape, value, pointer, written, typeof value === "string" ? "shape-bad-value" : "shape-wrong-type")];
}

function sameType(shape: Shape, value: unknown): boolean {
  if (isMapping(value)) return shape.type === "object";
  if (Array.isArray(value)) return shape.type === "array";
  if (typeof value === "number") return shape.type === "number" || shape.type === "integer";
  return typeof value === shape.type;
}

function missing(name: string, expected: string, pointer: string): ValidationIssue {
  const where = pointer === "" ? "The record" : fieldOf(pointer);
  return {
    code: "shape-missing-field",
    pointer,
    on: "key",
    says: `${where} lacks the field ${name}.`,
    expected: `${name}: ${expected}`,
    hint: `Add ${name} here; write unknown where a fact may be unknown.`,
  };
}

function validateObject(
  shape: Shape,
  value: Readonly<Record<string, unknown>>,
  pointer: string,
  written: Written,
): readonly ValidationIssue[] {
  const out: ValidationIssue[] = [];
  const own = shape.properties ?? {};
  const pattern = Object.values(shape.patternProperties ?? {})[0];
  const lacking = (shape.required ?? []).filter((name) => !Object.hasOwn(value, name));
  const strangers = pattern ? [] : Object.keys(value).filter((name) => !Object.hasOwn(own, name));
  // A misspelt required field is one mistake, not a missing field and an unknown one.
  const misspelt = new Map(
    strangers.map((name) => [
      name,
      nearest(
        name,
        Object.keys(own).filter((o) => !Object.hasOwn(value, o)),
      ),
    ]),
  );
  for (const name of lacking) {
    if ([...misspelt.values()].includes(name)) continue;
    const field = must(own[name], name);
    const plain = flat(field).some((f) => f.const === "unknown");
    const m = missing(name, words(field), pointer);
    out.push(plain ? m : { ...m, hint: `Add ${name} here. ${field.description ?? ""}`.trim() });
  }
  for (const [name, inner] of Object.entries(value)) {
    const at = step(pointer, name);
    const field = Object.hasOwn(own, name) ? own[name] : pattern;
    if (field) {
      const needed = inner === null && shape.required?.includes(name);
      const told = validate(field, inner, at, written);
      out.push(...(needed ? told.map((m) => (m.hint === leaveOut ? { ...m, hint: "Write a value after the colon." } : m)) : told));
    } else {
      const near = misspelt.get(name);
      const hint = near ? `Did you mean ${near}?` : (decimalComma(value, name) ?? `Fields here: ${truncateList(Object.keys(own), 12)}.`);
      const where = pointer === "" ? "a record of this kind" : fieldOf(pointer);
      out.push({ code: "shape-unknown-field", pointer: at, on: "key", says: `${name} is not a field of ${where}.`, hint });
    }
  }
  return out;
}

/** "worst_A: 0,8" within braces is two fields to YAML: worst_A with 0, and one called 8 without a value. */
function decimalComma(value: Readonly<Record<string, unknown>>, name: string): string | undefined {
  if (!/^[0-9]+$/.test(name) || value[name] !== null) return undefined;
  const numbers = Object.entries(value).filter(([, whole]) => Number.isInteger(whole));
  return numbers.length === 1
    ? `A comma begins the next field; write a decimal point: ${itemAt(numbers, 0)[0]}: ${itemAt(numbers, 0)[1]}.${name}.`
    : `A comma begins the next field; if ${name} stands behind a decimal comma, write a point.`;
}

function validateList(shape: Shape, value: readonly unknown[], pointer: string, written: Written): readonly ValidationIssue[] {
  const short = shape.minItems !== undefined && value.length < shape.minItems;
  const long = shape.maxItems !== undefined && value.length > shape.maxItems;
  if (short || long) {
    const actual = `${value.length} entries`;
    const hint = value.length === 0 ? "Add an entry, or leave the field out when it is optional." : "Compare it with the field guide.";
    return [
      {
        code: "shape-bad-value",
        pointer,
        on: "value",
        says: `${fieldOf(pointer)} should be ${words(shape)}.`,
        expected: words(shape),
        actual,
        hint,
      },
    ];
  }
  return value.flatMap((inner, i) => validate(must(shape.items, "shape.items"), inner, step(pointer, i), written));
}

function validateText(shape: Shape, value: string, pointer: string, written: Written): readonly ValidationIssue[] {
  if (shape.enum) return shape.enum.includes(value) ? [] : [issueOf(shape, value, pointer, written, "shape-bad-word")];
  const short = shape.minLength !== undefined && value.length < shape.minLength;
  const long = shape.maxLength !== undefined && [...value].length > shape.maxLength;
  const odd = shape.pattern !== undefined && !new RegExp(shape.pattern, "u").test(value);
  return short || long || odd ? [issueOf(shape, value, pointer, written, "shape-bad-value")] : [];
}

function validateNumber(shape: Shape, value: number, pointer: string, written: Written): readonly ValidationIssue[] {
  const fits =
    (shape.type === "number" || Number.isInteger(value)) &&
    (shape.minimum === undefined || value >= shape.minimum) &&
    (shape.maximum === undefined || value <= shape.maximum);
  if (!fits) return [issueOf(shape, value, pointer, written, "shape-bad-value")];
  const source = written(pointer);
  return source === undefined || isReadWhole(source, value) ? [] : [shortened(shape, value, pointer, source)];
}

/** Of a number with more digits than a computer keeps, what would be read is said: nobody changes a figure in silence. */
function shortened(shape: Shape, value: number, pointer: string, source: string): ValidationIssue {
  return {
    code: "shape-bad-value",
    pointer,
    on: "value",
    says: `${fieldOf(pointer)} has more digits than are kept: ${source} would be read as ${value}.`,
    expected: words(shape),
    actual: describe(value, source),
    hint: `Write it in 15 digits at most: ${Number(value.toPrecision(15))}.`,
  };
}
