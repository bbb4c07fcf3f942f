// What is kept of a record that could not be read: where it went wrong, what it is, and the least it can still be meant to say.
import { describe, expect, it } from "vitest";
import { link } from "../../src/catalogue/index.js";
import { readRecords, type Unread } from "../../src/records/index.js";

const conflict = (when: string, more = "status: confirmed") => `# yaml-language-server: $schema=../schema/conflict.json
id: quarrel
name: Quarrel
class: timing
when: {${when}}
effect: block
symptoms: [x]
cause: x
${more}
evidence: [{grade: reported, says: x}]
`;

function only(file: string, content: string): Unread {
  const { records, failed } = readRecords([{ file, content }]);
  expect([records.length, failed.length]).toEqual([0, 1]);
  return failed[0] as Unread;
}

describe("a file that could not be read", () => {
  it("keeps its kind by the folder, its id, and the place of its first mistake", () => {
    expect(only("conflicts/other.yaml", conflict("memory_at_least: 1K"))).toMatchObject({
      kind: "conflict",
      id: "quarrel",
      file: "conflicts/other.yaml",
      line: 6,
      column: 9,
      says: "effect should be one of: blocks, degrades, cosmetic.",
      hint: "Did you mean blocks?",
    });
    expect(only("cards/sprat.yaml", "id: [\n")).toMatchObject({ kind: "card", id: "sprat", file: "cards/sprat.yaml" });
    expect(only("cards/sprat.yaml", "id: 12\n")).toMatchObject({ kind: "card", id: "sprat" });
    expect(only("cards/sprat.yaml", "")).toMatchObject({ kind: "card", id: "sprat", line: 1 });
  });

  it("in no folder of records is of the kind whose shape it has, and else may be of any", () => {
    const sound = conflict("memory_at_least: 1K").replace("block\n", "blocks\n");
    expect(only("conflict/quarrel.yaml", sound)).toMatchObject({ kind: "conflict", conflict: { when: { memory_at_least: "1K" } } });
    expect(only("conflicts/quarrel.yml", sound)).toMatchObject({ kind: "conflict", id: "quarrel" });
    const lost = only("problems/quarrel.yaml", "when: {memory_at_least: 2K}\n");
    expect(lost.kind).toBeUndefined();
    expect(lost.conflict).toEqual({ when: { memory_at_least: "2K" }, disproved: false });
  });
});

describe("a known problem keeps the conditions that can be read, and none that could leave a machine out by mistake", () => {
  it.each<[string, object]>([
    ["boards: [{board: a, revisions: [C]}, {board: b}]", { boards: [{ board: "a", revisions: ["C"] }, { board: "b" }] }],
    ["boards: [{board: a, revisions: C}]", { boards: [{ board: "a" }] }],
    ["boards: [{board: a}, {bord: b}]", {}],
    ["boards: a", {}],
    ["bords: [{board: a}]", {}],
    ["firmware: [{family: f, from: R4}]", { firmware: [{ family: "f", from: "R4" }] }],
    ["firmware: [{family: f, from: R4}, {family: f, upTo: 4}]", {}],
    [
      "cards: [{card: a, slots: [S1]}, {card: b, slots: S2}]",
      {
        cards: [
          { card: "a", slots: ["S1"] },
          { card: "b", even_disabled: true },
        ],
      },
    ],
    ["cards: [{card: a}, {kard: b}], adjacent: true", { cards: [{ card: "a" }] }],
    ["cards: [{card: a}, {card: b}], adjacent: true", { cards: [{ card: "a" }, { card: "b" }], adjacent: true }],
    ["cards: [{card: a, even_disable: true}]", { cards: [{ card: "a", even_disabled: true }] }],
    ["cards: [{card: a, even_disabled: ja}]", { cards: [{ card: "a", even_disabled: true }] }],
    ["cards: [{card: a, even_disabled: false}]", { cards: [{ card: "a", even_disabled: false }] }],
    ["memory_at_least: 256 K, memory_at_most: 1M", { memory_at_most: "1M" }],
  ])("when: {%s}", (when, kept) => {
    expect(only("conflicts/quarrel.yaml", conflict(when)).conflict).toEqual({ when: kept, disproved: false });
  });

  it("which is nothing where the text is no YAML, or names one field twice", () => {
    for (const more of ["status: [", "status: confirmed\nstatus: disproved"])
      expect(only("conflicts/quarrel.yaml", conflict("memory_at_least: 1K", more)).conflict).toEqual({ when: {}, disproved: false });
  });

  it("and that it was disproved", () => {
    expect(only("conflicts/quarrel.yaml", conflict("memory_at_least: 1K", "status: disproved")).conflict?.disproved).toBe(true);
    expect(only("conflicts/quarrel.yaml", conflict("memory_at_least: 1K", "status: disprove")).conflict?.disproved).toBe(false);
  });
});

describe("a bench result", () => {
  const build = (more: string) => `id: b\nname: B\nboard: skerry\ncards: [{card: a}]\n${more}\n`;
  const result = "result: {by: Ada, date: '2020', outcome: worked}";
  it.each<[string, string, object | undefined]>([
    ["of which all can be read but the memory", `memory: much\n${result}`, { board: "skerry", cards: ["a"], worked: true }],
    ["with a misspelt outcome", "result: {by: Ada, date: '2020', outcome: workd}", { board: "skerry", cards: ["a"], worked: false }],
    [
      "with a mode that failed",
      `memory: much\nresult: {by: Ada, date: '2020', outcome: worked, modes: [{mode: m, outcome: failed}]}`,
      { board: "skerry", cards: ["a"], worked: false },
    ],
    ["that is none", "memory: much", undefined],
    ["that may be one", "resutl: {}", { board: "skerry", cards: ["a"], worked: false }],
    [
      "with a card too many in one line",
      `memory: much\n${result}`.replace("memory", "revision: [[D1]]\nmemory"),
      { board: "skerry", cards: ["a"], worked: true },
    ],
  ])("%s", (_, more, kept) => {
    expect(only("builds/b.yaml", build(more)).test).toEqual(kept);
  });

  it("of which nothing can be read may be of any machine", () => {
    expect(only("builds/b.yaml", build("result: [")).test).toEqual({ worked: false });
  });
});

describe("a linked catalogue", () => {
  it("counts the second of two files with one id as unread, and lists every error", () => {
    const text = conflict("memory_at_least: 1K").replace("block\n", "blocks\n");
    const { records, failed, findings } = readRecords([
      { file: "conflicts/quarrel.yaml", content: text },
      { file: "conflicts/zwist.yaml", content: text.replace("1K", "4K") },
    ]);
    const { catalogue } = link(records, { failed, findings });
    expect(catalogue.unread).toEqual([
      expect.objectContaining({
        kind: "conflict",
        file: "conflicts/zwist.yaml",
        line: 2,
        column: 5,
        conflict: expect.objectContaining({ when: { memory_at_least: "4K" } }),
      }),
    ]);
    expect(catalogue.errors.map((e) => `${e.file}:${e.line}`)).toContain("conflicts/zwist.yaml:2");
  });

  it("forgets conditions of an unread problem that name what no record has", () => {
    const { records, failed, findings } = readRecords([
      { file: "conflicts/quarrel.yaml", content: conflict("cards: [{card: nobody}], memory_at_most: 1M") },
    ]);
    expect(link(records, { failed, findings }).catalogue.unread[0]?.conflict?.when).toEqual({ memory_at_most: "1M" });
  });
});
