// A blank record of one kind, made from its schema: every required field with its question beside it, every other field
// as a comment to be opened when there is an answer. Nothing is filled in that nobody said.
import { type Kind, kinds, quoteText, schemaLineOf } from "../../records/index.js";

/** What of a JSON Schema the form looks at. */
interface Shape {
  readonly type?: string;
  readonly description?: string;
  readonly properties?: Readonly<Record<string, Shape>>;
  readonly required?: readonly string[];
  readonly items?: Shape | readonly Shape[];
  readonly anyOf?: readonly Shape[];
  readonly enum?: readonly string[];
  readonly const?: unknown;
  readonly patternProperties?: Readonly<Record<string, Shape>>;
}

/** Kinds whose records come in several types, each with fields of its own: part. */
export function typesOf(kind: Kind): readonly string[] {
  const shape = kinds[kind].schema as Shape;
  return (shape.anyOf ?? []).map((one) => String(one.properties?.type?.const));
}

export function recordForm(kind: Kind, id: string, type?: string): string {
  const whole = kinds[kind].schema as Shape;
  const shape = whole.anyOf?.find((one) => one.properties?.type?.const === type) ?? whole;
  const lines = [
    schemaLineOf(kind),
    `# ${shape.description ?? kind} Answer the questions; a line that begins with #: is optional, take the mark away to use it.`,
    "# A figure nobody knows is written: unknown. Then run: slotwright check",
    ...fields(shape, "", { id, ...(type ? { type } : {}) }),
  ];
  return `${lines.join("\n")}\n`;
}

function fields(shape: Shape, indent: string, given: Readonly<Record<string, string>> = {}): string[] {
  // What is not known when left out is asked for like what is required: whoever leaves it as it is has at least said so.
  const open = Object.entries(shape.properties ?? {}).flatMap(([name, field]) => (wordUnknown(field) ? [name] : []));
  const required = new Set([...(shape.required ?? []), ...open]);
  const all = Object.entries(shape.properties ?? {});
  const wanted = all.filter(([name]) => required.has(name));
  const others = all.filter(([name]) => !required.has(name));
  return [
    ...wanted.flatMap(([name, field]) =>
      given[name] === undefined ? asked(name, field, indent) : [`${indent}${name}: ${quoteText(given[name])}`],
    ),
    ...others.map(([name, field]) => `${indent}#: ${name}: # ${question(field)}`),
  ];
}

/** A required field, open for its answer. */
function asked(name: string, field: Shape, indent: string): string[] {
  const ask = `${indent}# ${question(field)}`;
  const item = itemOf(field);
  if (item?.properties) {
    const [first = "", ...rest] = fields(item, `${indent}    `);
    return [`${ask} One entry each.`, `${indent}${name}:`, `${indent}  - ${first.trimStart()}`, ...rest];
  }
  if (item) return [`${ask} A list.`, `${indent}${name}: []`];
  if (field.properties) return [ask, `${indent}${name}:`, ...fields(field, `${indent}  `)];
  if (field.const !== undefined) return [`${indent}${name}: ${String(field.const)}`];
  const told = field.anyOf?.find((one) => one.properties);
  if (wordUnknown(field) && told) {
    const inside = Object.entries(told.properties ?? {}).map(([inner, of]) => `${indent}#   ${inner}: ${question(of)}`);
    return [ask, `${indent}${name}: unknown`, `${indent}# Or ${name}: with these fields below it:`, ...inside];
  }
  if (mayBeUnknown(field) || wordUnknown(field)) return [ask, `${indent}${name}: unknown`];
  return [ask, `${indent}${name}:`];
}

/** What an entry of the list is asked for; a list that the word unknown may stand for is opened only where its entries ask for more such words. */
function itemOf(field: Shape): Shape | undefined {
  const list = field.type === "array" ? field : wordUnknown(field) ? field.anyOf?.find((one) => one.type === "array") : undefined;
  const item = list && !Array.isArray(list.items) ? (list.items as Shape | undefined) : undefined;
  return item && (list === field || Object.values(item.properties ?? {}).some(wordUnknown)) ? item : undefined;
}

/** A list, or fields of its own, or a word; and left out it is not known. */
function wordUnknown(field: Shape): boolean {
  return (
    field.anyOf?.some((one) => one.enum?.includes("unknown")) === true && field.anyOf.some((one) => one.type === "array" || one.properties)
  );
}

function mayBeUnknown(field: Shape): boolean {
  return field.anyOf?.some((one) => one.const === "unknown") === true;
}

function question(field: Shape): string {
  const words = field.enum ?? field.anyOf?.flatMap((one) => one.enum ?? []) ?? [];
  const list = field.anyOf?.some((one) => one.type === "array")
    ? "A list, or one of"
    : field.anyOf?.some((one) => one.properties)
      ? "Its fields, or one of"
      : "One of";
  const choice = words.length > 0 && words.length <= 40 ? ` ${list}: ${words.join(", ")}.` : "";
  return `${field.description ?? ""}${choice}${mayBeUnknown(field) ? " (Or unknown.)" : ""}`.trim();
}
