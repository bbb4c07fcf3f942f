// The record schemas as JSON Schema (draft 2020-12) documents, for editors and for whoever reads the exports.
import { type Kind, kinds } from "./schema/index.js";
import type { Shape } from "./shape.js";

export type JsonSchema = Readonly<Record<string, unknown>>;

/** One document a kind. They are the very objects records are judged by, so they cannot drift apart. */
export function jsonSchemas(): Readonly<Record<Kind, JsonSchema>> {
  return Object.fromEntries(
    (Object.keys(kinds) as Kind[]).map((kind) => [
      kind,
      { $schema: "https://json-schema.org/draft/2020-12/schema", title: kind, ...(plain(kinds[kind].schema as Shape) as JsonSchema) },
    ]),
  ) as unknown as Record<Kind, JsonSchema>;
}

/** Only what the standard knows: discriminator, refersTo and unit are helps of our own, and TypeBox's marks are symbols. */
function plain(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(plain);
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .filter(([key, inner]) => !isOwnHelp(key, inner))
      .map(([key, inner]) => [key, plain(inner)]),
  );
}

/** A keyword, not a field of a record that happens to have its name: there a schema would stand. */
function isOwnHelp(key: string, inner: unknown): boolean {
  if (key === "refersTo" || key === "unit") return typeof inner === "string";
  return key === "discriminator" && typeof inner === "object" && inner !== null && "propertyName" in inner;
}
