// The field guide: every field of every kind of record, as rows for a page. Made from the schemas.
import { must } from "./must.js";
import { type Kind, kinds } from "./schema/index.js";
import { type Shape, words } from "./shape.js";

export interface GuideField {
  /** slots[].id; <name> stands for a name the keeper chooses; (memory) for one type of part. */
  readonly path: string;
  /** What may be written there. */
  readonly words: string;
  readonly required: boolean;
  /** It may be given as unknown, or as {is, source, find}. */
  readonly fact: boolean;
  readonly description: string;
  /** How deep it stands, counted from 0. */
  readonly depth: number;
}

export interface GuideKind {
  readonly kind: Kind;
  readonly folder: string;
  readonly description: string;
  readonly fields: readonly GuideField[];
}

export function fieldGuide(): readonly GuideKind[] {
  return (Object.keys(kinds) as Kind[]).map((kind) => {
    const shape = kinds[kind].schema as Shape;
    return { kind, folder: kinds[kind].folder, description: shape.description ?? "", fields: fieldsOf(shape) };
  });
}

function fieldsOf(shape: Shape): readonly GuideField[] {
  const found = shape.discriminator?.propertyName;
  if (found === undefined) return [...walk(shape, "", 0)];
  return must(shape.anyOf, "shape.anyOf").flatMap((branch) => {
    const rows = [...walk(branch, "", 0)];
    return rows.map((row) => ({
      ...row,
      path: `(${String(must(branch.properties?.[found], found).const)}) ${row.path}`,
    }));
  });
}

function* walk(shape: Shape, path: string, depth: number): Generator<GuideField> {
  const required = new Set(shape.required ?? []);
  for (const [name, field] of Object.entries(shape.properties ?? {})) {
    const here = path === "" ? name : `${path}.${name}`;
    const fact = isFact(field);
    yield { path: here, words: words(field), required: required.has(name), fact, description: field.description ?? "", depth };
    if (!fact) yield* inside(field, here, depth + 1);
  }
}

function* inside(shape: Shape, path: string, depth: number): Generator<GuideField> {
  // A list that a word may stand for: the list is walked.
  for (const branch of shape.discriminator ? [] : (shape.anyOf ?? [])) yield* inside(branch, path, depth);
  if (shape.items) yield* inside(shape.items, `${path}[]`, depth);
  for (const inner of Object.values(shape.patternProperties ?? {})) yield* inside(inner, `${path}.<name>`, depth);
  if (shape.properties) yield* walk(shape, path, depth);
}

/** A fact's long form is explained once on the page, not at every fact. */
function isFact(shape: Shape): boolean {
  return shape.anyOf?.some((b) => b.properties?.is !== undefined) ?? false;
}
