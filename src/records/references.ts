// References: every place in a record where the id of another record stands, found by walking the record along its schema.
// A field made with `idOf` is a reference from then on; there is no second list to keep.
import { type Kind, kinds, type RecordOf } from "./schema/index.js";
import type { Shape } from "./shape.js";

export interface Reference {
  /** Kind of the record that is named. */
  readonly kind: Kind;
  readonly id: string;
  /** Where the id stands: steps into the record. */
  readonly path: readonly (string | number)[];
}

/** All references of a record, in the order of its fields. */
export function references<K extends Kind>(kind: K, record: RecordOf[K]): readonly Reference[] {
  return [...walk(kinds[kind].schema as Shape, record, [])];
}

function* walk(shape: Shape, value: unknown, path: Reference["path"]): Generator<Reference> {
  if (!leads(shape)) return;
  if (shape.anyOf) {
    // A word that stands for no id ("unknown") is a branch of its own.
    if (shape.anyOf.some((branch) => branch.const !== undefined && branch.const === value)) return;
    for (const branch of branchesFor(shape, value)) yield* walk(branch, value, path);
  } else if (typeof value === "string") {
    if (shape.refersTo !== undefined) yield { kind: shape.refersTo as Kind, id: value, path };
  } else if (Array.isArray(value)) {
    if (shape.items) for (const [i, inner] of value.entries()) yield* walk(shape.items, inner, [...path, i]);
  } else if (typeof value === "object" && value !== null) {
    const any = Object.values(shape.patternProperties ?? {})[0];
    for (const [name, inner] of Object.entries(value)) {
      const field = shape.properties && Object.hasOwn(shape.properties, name) ? shape.properties[name] : any;
      if (field) yield* walk(field, inner, [...path, name]);
    }
  }
}

/** Of a union of types the one the record says it is; else every branch, since those of another type find nothing to walk. */
function branchesFor(shape: Shape, value: unknown): readonly Shape[] {
  const all = shape.anyOf ?? [];
  const by = shape.discriminator?.propertyName;
  if (by === undefined || typeof value !== "object" || value === null) return all;
  return all.filter((branch) => branch.properties?.[by]?.const === (value as Readonly<Record<string, unknown>>)[by]);
}

const known = new WeakMap<Shape, boolean>();

/** True when a reference can stand somewhere inside. */
function leads(shape: Shape): boolean {
  const before = known.get(shape);
  if (before !== undefined) return before;
  const inside = [
    ...(shape.items ? [shape.items] : []),
    ...(shape.anyOf ?? []),
    ...Object.values(shape.properties ?? {}),
    ...Object.values(shape.patternProperties ?? {}),
  ];
  const found = shape.refersTo !== undefined || inside.some(leads);
  known.set(shape, found);
  return found;
}
