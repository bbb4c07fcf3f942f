// Our validation against a general validator (ajv) on the emitted schemas: both must agree on what fits, on good
// records and on thousands of damaged ones; and ours must say one thing for one mistake.
import { Ajv2020 } from "ajv/dist/2020.js";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { jsonSchemas, type Kind, kinds } from "../../src/records/index.js";
import { type Shape, wordsOfPattern } from "../../src/records/shape.js";
import { validate } from "../../src/records/validate.js";
import { sample } from "../support/samples.js";

const ajv = new Ajv2020({ strict: true, allErrors: false });
const ajvOf = Object.fromEntries(Object.entries(jsonSchemas()).map(([kind, schema]) => [kind, ajv.compile(schema)]));
const all = Object.keys(kinds) as Kind[];
const shape = (kind: Kind) => kinds[kind].schema as Shape;

test.each(all)("a %s that fits is let through by both", (kind) => {
  for (const record of sample(kind)) {
    expect(validate(shape(kind), record)).toEqual([]);
    expect(ajvOf[kind]!(record), JSON.stringify(ajvOf[kind]!.errors)).toBe(true);
  }
});

const oddities = [
  null,
  0,
  -1,
  1.5,
  1e300,
  "",
  " ",
  "unknown",
  "unknwon",
  "0x10",
  "16K",
  "16k",
  "1987",
  true,
  [],
  {},
  [null],
  { is: 5 },
  { is: "unknown", find: "look" },
  { is: [] },
  "ä",
  "a\nb",
];

/** Every place in a value, as paths. */
function places(value: unknown, path: readonly (string | number)[] = []): readonly (readonly (string | number)[])[] {
  if (typeof value !== "object" || value === null) return [path];
  return [path, ...Object.entries(value).flatMap(([k, v]) => places(v, [...path, Array.isArray(value) ? Number(k) : k]))];
}
function damage(value: unknown, path: readonly (string | number)[], how: "replace" | "drop" | "add", by: unknown): unknown {
  const copy = structuredClone(value);
  if (path.length === 0)
    return how === "add" && typeof copy === "object" && copy !== null && !Array.isArray(copy) ? { ...copy, surprise: by } : by;
  let at = copy as Record<string | number, unknown>;
  for (const p of path.slice(0, -1)) at = at[p] as Record<string | number, unknown>;
  const last = path.at(-1)!;
  if (how === "drop") {
    if (Array.isArray(at)) at.splice(Number(last), 1);
    else delete at[last];
  } else if (how === "add" && typeof at[last] === "object" && at[last] !== null)
    (at[last] as Record<string, unknown>)[Array.isArray(at[last]) ? String((at[last] as unknown[]).length) : "surprise"] = by;
  else at[last] = by;
  return copy;
}

test.each(all)("on damaged %s records both agree, and both outcomes occur", (kind) => {
  const records = sample(kind);
  const spots = records.map((r) => places(r));
  const seen = { fits: 0, not: 0 };
  const damages = fc.tuple(fc.nat(), fc.nat(), fc.constantFrom("replace", "drop", "add"), fc.constantFrom(...oddities));
  fc.assert(
    fc.property(fc.array(damages, { minLength: 1, maxLength: 3 }), (list) => {
      const [n] = list[0]!;
      let value: unknown = records[n % records.length];
      for (const [, spot, how, by] of list) {
        const here = spots[n % records.length]!;
        try {
          value = damage(value, here[spot % here.length]!, how as "replace", by);
        } catch {
          // The place went with an earlier damage.
        }
      }
      const fits = validate(shape(kind), value).length === 0;
      seen[fits ? "fits" : "not"] += 1;
      expect(fits).toBe(ajvOf[kind]!(value));
    }),
    { numRuns: 800, seed: 7 },
  );
  expect(seen.fits).toBeGreaterThan(20);
  expect(seen.not).toBeGreaterThan(200);
});

describe("one mistake is one finding", () => {
  const card = sample("card")[0]! as unknown as Record<string, unknown>;
  const memory = sample("part").find((p) => p.type === "memory") as unknown as Record<string, unknown>;
  const first = (kind: Kind, value: unknown) => {
    const found = validate(shape(kind), value);
    expect(found).toHaveLength(1);
    return found[0]!;
  };

  test("a fact of the wrong type: the number is asked for, with the word unknown", () => {
    const room = { length_mm: "long", height_mm: 100 };
    expect(first("card", { ...card, room })).toMatchObject({
      code: "shape-bad-value",
      pointer: "/room/length_mm",
      expected: "a number of at least 0 or the word unknown",
      actual: 'the text "long"',
    });
  });

  test("unknown misspelt is noticed", () => {
    expect(first("card", { ...card, room: { length_mm: "unknwon", height_mm: 100 } }).hint).toBe("Did you mean unknown?");
  });

  test("a number below the least of a fact", () => {
    expect(first("card", { ...card, room: { length_mm: -4, height_mm: 100 } })).toMatchObject({
      pointer: "/room/length_mm",
      code: "shape-bad-value",
    });
  });

  test("a mistake inside the long form of a fact is told there", () => {
    const room = { length_mm: { is: 100, sorce: "manual" }, height_mm: 100 };
    expect(first("card", { ...card, room })).toMatchObject({
      code: "shape-unknown-field",
      pointer: "/room/length_mm/sorce",
      hint: "Did you mean source?",
    });
  });

  test("a part without, or with a misspelt, type", () => {
    const { type: _, ...without } = memory;
    expect(first("part", without)).toMatchObject({ code: "shape-missing-field", pointer: "" });
    expect(first("part", { ...memory, type: "memroy" })).toMatchObject({
      code: "shape-bad-word",
      pointer: "/type",
      hint: "Did you mean memory?",
    });
  });

  test("a required field misspelt", () => {
    const { maker, ...rest } = card;
    expect(first("card", { ...rest, makers: maker })).toMatchObject({ code: "shape-unknown-field", hint: "Did you mean maker?" });
  });

  test("a year without quotes", () => {
    const sources = [{ id: "man", kind: "manual", says: "Manual", date: 1987 }];
    expect(first("card", { ...card, sources })).toMatchObject({
      code: "shape-wrong-type",
      hint: 'Put it in quotes, so that it is read as text: "1987".',
    });
  });

  test("a size in the wrong spelling", () => {
    const claims = [{ memory: [{ base: 0xd0000, size: "16KB" }] }];
    expect(first("card", { ...card, claims })).toMatchObject({
      code: "shape-bad-value",
      expected: "a whole number of at least 1 or a size with K or M (16K, 1M)",
    });
  });

  test("yes instead of true", () => {
    expect(first("card", { ...card, room: { length_mm: 1, height_mm: 1, opening: "yes" } }).hint).toBe("Write true.");
  });

  test("a decimal comma within braces, which begins the next field", () => {
    expect(first("card", { ...card, power: [{ rail: "+5", worst_A: 0, 8: null }] }).hint).toBe(
      "A comma begins the next field; write a decimal point: worst_A: 0.8.",
    );
    expect(first("card", { ...card, power: [{ rail: "+5", worst_A: 0, idle_A: 1, 8: null }] }).hint).toMatch(
      /decimal comma, write a point/,
    );
  });

  test("a field left empty: only one that need not be there may go", () => {
    expect(first("card", { ...card, name: null }).hint).toBe("Write a value after the colon.");
    expect(first("card", { ...card, summary: null }).hint).toBe("Write a value after the colon, or leave the field out.");
  });

  test("a number with its unit", () => {
    expect(first("card", { ...card, room: { length_mm: "120 mm", height_mm: 1 } }).hint).toBe("Write the number alone: 120.");
  });
});

test("schemas hold only what the judge knows, and every pattern has words and every field a description", () => {
  const known = new Set(
    "type description properties patternProperties required additionalProperties items minItems maxItems enum const pattern minLength maxLength minimum maximum anyOf discriminator refersTo unit".split(
      " ",
    ),
  );
  let fields = 0;
  const walk = (s: Shape, at: string): void => {
    for (const key of Object.keys(s)) expect(known, at).toContain(key);
    if (s.pattern !== undefined && !s.patternProperties) expect(wordsOfPattern(s.pattern), `${at}: ${s.pattern}`).toBeTruthy();
    for (const [name, field] of Object.entries(s.properties ?? {})) {
      fields += 1;
      expect(field.description, `${at}.${name} has a description`).toBeTruthy();
      walk(field, `${at}.${name}`);
    }
    for (const inner of [s.items, ...(s.anyOf ?? []), ...Object.values(s.patternProperties ?? {})]) if (inner) walk(inner, at);
    if (s.type === "object" && s.properties) expect(s.additionalProperties, at).toBe(false);
  };
  for (const kind of all) walk(shape(kind), kind);
  expect(fields).toBeGreaterThan(300);
});
