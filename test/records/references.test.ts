// Every place where a record names another is found from the schema alone.
import { describe, expect, test } from "vitest";
import { referencesOfBuild } from "../../src/catalogue/build-references.js";
import { type Build, jsonSchemas, type Kind, kinds, references } from "../../src/records/index.js";
import type { Shape } from "../../src/records/shape.js";
import { sample } from "../support/samples.js";

const all = Object.keys(kinds) as Kind[];

/** A value with every field in it, made from a schema: lists of one entry, each text told by `textFor`. */
function filled(shape: Shape, textFor: (shape: Shape) => string): unknown {
  if (shape.anyOf) return filled(shape.anyOf.find((b) => b.const === undefined) ?? {}, textFor);
  if (shape.const !== undefined) return shape.const;
  if (shape.properties) return Object.fromEntries(Object.entries(shape.properties).map(([name, field]) => [name, filled(field, textFor)]));
  if (shape.patternProperties) return { any: filled(Object.values(shape.patternProperties)[0] ?? {}, textFor) };
  if (shape.items) return [filled(shape.items, textFor)];
  return shape.type === "string" ? textFor(shape) : 1;
}

function textsOf(value: unknown): string[] {
  if (typeof value === "string") return [value];
  return typeof value === "object" && value !== null ? Object.values(value).flatMap(textsOf) : [];
}

describe.each(all)("in a %s", (kind) => {
  test("every field that is described as the identifier of another record is found, and nothing else", () => {
    const branches = ((kinds[kind].schema as Shape).discriminator ? (kinds[kind].schema as Shape).anyOf : undefined) ?? [
      kinds[kind].schema as Shape,
    ];
    for (const shape of branches) {
      let number = 0;
      const isReference = (field: Shape) => /^Identifier of /.test(field.description ?? "");
      const record = filled(shape, (field) => (isReference(field) ? `named-${++number}` : "word"));
      const wanted = textsOf(record).filter((text) => text.startsWith("named-"));
      expect(references(kind, record as never).map((r) => r.id)).toEqual(wanted);
    }
  });
});

test("the list of a build's references is the one its schema gives", () => {
  const shape = kinds.build.schema as Shape;
  let number = 0;
  const build = filled(shape, (field) => (/^Identifier of /.test(field.description ?? "") ? `named-${++number}` : "word")) as Build;
  const several = { ...build, at_hand: { ...build.at_hand, cards: ["one", { card: "two", count: 2 }] } };
  for (const one of [build, several, sample("build")[0] as unknown as Build]) {
    const key = (found: ReturnType<typeof referencesOfBuild>) => found.map((r) => `${r.kind} ${r.id} ${r.path.join("/")}`).sort();
    expect(key(referencesOfBuild(one))).toEqual(key(references("build", one)));
    expect(referencesOfBuild(one).length).toBeGreaterThan(2);
  }
});

test("a reference says which kind it names and where it stands", () => {
  const [build] = sample("build");
  const found = references("build", { ...build, switch: { cable: "t-cable" } } as never).map((r) => [r.kind, r.id, r.path.join("/")]);
  expect(found).toContainEqual(["card", "tc", "stands/cards/0/card"]);
  expect(found).toContainEqual(["part", "t-cable", "switch/cable"]);
  expect(found).toContainEqual(["conflict", "tx", "result/conflicts/0"]);
});

test("the published schemas hold only what the standard knows", () => {
  expect(JSON.stringify(jsonSchemas())).not.toContain("refersTo");
});
