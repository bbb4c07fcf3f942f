// The demo club says at least once everything a record can say, so that every page and rule has something to show.
import { expect, test } from "vitest";
import { allOf, link } from "../../src/catalogue/index.js";
import { fieldGuide, formatFinding, type Kind, readRecords } from "../../src/records/index.js";
import { demo, demoFiles } from "../support/demo.js";

/** Fields the demo leaves out, with the reason. One that comes into use must leave this list. */
const left: Readonly<Record<string, string>> = {
  "board fixed[].interrupts[].shareable": "the boards keep their lines to themselves",
  "board fixed[].dma[].shareable": "the boards keep their channels to themselves",
  "board fixed[].find": "nothing is unknown of what its boards take",
  "card claims[].interrupts[].shareable": "shareable lines stand in positions of settings",
  "board firmware_sockets[].window.space": "the bus of the demo has one address space",
  "board memory.space": "the bus of the demo has one address space",
  "board fixed[].memory[].space": "the bus of the demo has one address space",
  "bus spaces": "the bus of the demo has one address space",
  "bus spaces[].bits": "the bus of the demo has one address space",
  "bus spaces[].id": "the bus of the demo has one address space",
  "bus spaces[].name": "the bus of the demo has one address space",
  "card claims[].memory[].space": "the bus of the demo has one address space",
  "card settings[].positions[].memory[].space": "the bus of the demo has one address space",
  "board fixed[].memory[].asserts": "no overlays on the bus of the demo",
  "board fixed[].memory[].yields_to": "no overlays on the bus of the demo",
  "bus overlay_lines": "no overlays on the bus of the demo",
  "bus overlay_lines[].id": "no overlays on the bus of the demo",
  "bus overlay_lines[].says": "no overlays on the bus of the demo",
  "card claims[].memory[].asserts": "no overlays on the bus of the demo",
  "card claims[].memory[].yields_to": "no overlays on the bus of the demo",
  "card settings[].positions[].memory[].asserts": "no overlays on the bus of the demo",
  "card settings[].positions[].memory[].yields_to": "no overlays on the bus of the demo",
  "board fixed[].memory[].decoded_bits": "memory of the demo looks at every line",
  "card claims[].memory[].decoded_bits": "memory of the demo looks at every line",
  "card settings[].positions[].memory[].decoded_bits": "memory of the demo looks at every line",
  "board fixed[].memory[].takes_turns": "boards of the demo have no window that software opens; cards have",
  "card claims[].memory[].takes_turns": "windows that software opens stand in positions of settings",
  "board slots[].number": "no card of the demo answers at addresses that follow its slot",
  "board fixed[].io[].slot_step": "a part of the board stands in no slot",
  "board fixed[].memory[].slot_step": "a part of the board stands in no slot",
  "card claims[].io[].slot_step": "no card of the demo answers at addresses that follow its slot",
  "card claims[].memory[].slot_step": "no card of the demo answers at addresses that follow its slot",
  "card settings[].positions[].io[].slot_step": "no card of the demo answers at addresses that follow its slot",
  "card settings[].positions[].memory[].slot_step": "no card of the demo answers at addresses that follow its slot",
  "board fixed[].memory[].main": "main memory of a board has a field of its own",
  "bus chains[].most": "the grant chain of the demo serves every slot",
  "firmware versions[].image.width": "every image of the demo is for one socket width, told by the board",
  "build stands.cards[].as": "no machine of the demo stands with two of one kind",
};

/** Fields every record opens with; they are common to all kinds and counted over all of them together. */
const common = /^(sources|allow|notes|summary)\b/;

function* paths(value: unknown, path: string): Iterable<string> {
  if (typeof value !== "object" || value === null) return;
  for (const [name, inner] of Object.entries(value)) {
    const here = Array.isArray(value) ? `${path}[]` : path === "" ? name : `${path}.${name}`;
    if (!Array.isArray(value)) yield here;
    yield* paths(inner, here);
  }
}

test("every field of the schemas occurs in the demo, but those with a reason", () => {
  const catalogue = demo();
  const used = new Set<string>();
  const kinds = fieldGuide().map((g) => g.kind as Kind);
  for (const kind of kinds)
    for (const record of allOf(catalogue, kind).values()) {
      const label = "type" in record ? `part(${record.type})` : kind;
      for (const path of paths(record, "")) used.add(`${label} ${path}`);
    }
  const wanted = fieldGuide().flatMap(({ kind, fields }) =>
    fields
      .map((f) => f.path.replace(/^\((\w+)\) (.*)$/, "($1)\t$2"))
      .map((path) => (path.includes("\t") ? `${kind}${path.replace("\t", " ")}` : `${kind} ${path}`))
      .filter((path) => !path.includes("<name>") && !common.test(path.slice(path.indexOf(" ") + 1))),
  );
  expect(wanted.length).toBeGreaterThan(250);
  expect(wanted.filter((path) => !used.has(path)).sort()).toEqual(Object.keys(left).sort());
});

test("nothing is to be said against any of its records", () => {
  const reading = readRecords(demoFiles());
  const { findings } = link(reading.records, { failed: reading.failed, today: new Date().toISOString().slice(0, 10) });
  expect([...reading.findings, ...findings].map(formatFinding).join("\n\n")).toBe("");
  expect(reading.records.length).toBeGreaterThan(150);
});
