// Writing a record as YAML the way the club's files look: fields in the order of the schema, addresses in hex.
import { Document, isMap, isScalar, isSeq, type Node, type ScalarTag, type YAMLMap } from "yaml";
import { schemaLineOf } from "./read.js";
import { type Kind, kinds, type RecordOf } from "./schema/index.js";
import type { Shape } from "./shape.js";
import { hex } from "./values.js";

/** Hex with upper-case digits, as address maps print it. */
const hexTag: ScalarTag = {
  tag: "tag:yaml.org,2002:int",
  default: true,
  identify: () => false,
  format: "HEX",
  test: /^0x[0-9a-fA-F]+$/,
  resolve: (text) => Number.parseInt(text, 16),
  stringify: (node) => hex(Number(node.value)),
};

/** The text of a record file, with the line that names its schema. Reading it back gives the same record. */
export function writeRecord<K extends Kind>(kind: K, record: RecordOf[K]): string {
  const doc = new Document(ordered(kinds[kind].schema as Shape, record), { customTags: (tags) => [hexTag, ...tags], version: "1.2" });
  dress(doc.contents as Node, undefined, 0);
  return `${schemaLineOf(kind)}\n${doc.toString({ lineWidth: 110, flowCollectionPadding: false })}`;
}

/** The same value with fields in the order of the schema; names a keeper chose stay as they are. */
function ordered(shape: Shape, value: unknown): unknown {
  if (Array.isArray(value)) return value.map((inner) => ordered(shape.items ?? {}, inner));
  if (typeof value !== "object" || value === null) return value;
  const given = value as Readonly<Record<string, unknown>>;
  const branch = branchFor(shape, given);
  const own = branch.properties ?? {};
  const names = [
    ...Object.keys(own).filter((n) => given[n] !== undefined),
    ...Object.keys(given).filter((n) => !Object.hasOwn(own, n) && given[n] !== undefined),
  ];
  const pattern = Object.values(branch.patternProperties ?? {})[0];
  return Object.fromEntries(names.map((n) => [n, ordered(own[n] ?? pattern ?? {}, given[n])]));
}

function branchFor(shape: Shape, value: Readonly<Record<string, unknown>>): Shape {
  if (!shape.anyOf) return shape;
  const found = shape.discriminator?.propertyName;
  if (found !== undefined) return shape.anyOf.find((b) => b.properties?.[found]?.const === value[found]) ?? {};
  return shape.anyOf.find((b) => b.type === "object") ?? {};
}

/** Addresses in hex; lists of plain values and small tables of numbers on one line. */
function dress(node: Node | null, field: string | undefined, depth: number): void {
  if (isScalar(node)) {
    if (typeof node.value === "number" && (field === "base" || (field === "size" && node.value >= 1024))) node.format = "HEX";
    return;
  }
  if (isSeq(node)) {
    for (const inner of node.items) dress(inner as Node, field, depth + 1);
    node.flow = node.items.length === 0 || (node.items.every(isScalar) && lengthOf(node.items) < 80);
    return;
  }
  if (!isMap(node)) return;
  for (const pair of (node as YAMLMap<{ value: string }, Node | null>).items) dress(pair.value, String(pair.key.value), depth + 1);
  const values = node.items.map((p) => p.value);
  const small =
    depth > 0 && values.every((v) => isScalar(v) && (typeof v.value !== "string" || v.value.length <= 24)) && lengthOf(values) < 50;
  node.flow = node.items.length === 0 || small;
}

function lengthOf(scalars: readonly unknown[]): number {
  return scalars.reduce((sum: number, s) => sum + (isScalar(s) ? String(s.value).length + 2 : 0), 0);
}
