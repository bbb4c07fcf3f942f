// What the planner's workers answer, asked directly: the summary of the catalogue, answers with counts, reasons with one-tap repairs, sheets, files in and out.
import { describe, expect, it } from "vitest";
import { gather, type PlannerRecords } from "../../src/catalogue/index.js";
import { compile } from "../../src/encoding/index.js";
import { resolveBuild } from "../../src/machine/index.js";
import { forumText } from "../../src/planner/state/forum.js";
import { blank, buildOf } from "../../src/planner/state/moves.js";
import { matching, type Offer } from "../../src/planner/ui/Combobox.js";
import { summarizeCatalogue } from "../../src/planner/worker/catalogue-summary.js";
import { readBuild, writeBuild } from "../../src/planner/worker/files.js";
import { sheetOf } from "../../src/planner/worker/sheet.js";
import { countsOf, plan } from "../../src/planning/index.js";
import { plannerRecords } from "../../src/publish/exports/index.js";
import { type Build, readOne, readRecords } from "../../src/records/index.js";
import { demo, demoFiles } from "../support/demo.js";

const catalogue = demo();
const gannet = "gannet-fixed-disk-controller";
const asked = (build: Build) => {
  const answer = plan(catalogue, build);
  if (answer.kind !== "answer") throw new Error(answer.faults.map((f) => f.says).join(" "));
  return answer;
};

describe("the records the planner is given", () => {
  it("make the same catalogue as the files", () => {
    const { records, ...flaws } = JSON.parse(plannerRecords(catalogue)) as PlannerRecords;
    const again = gather(records, flaws);
    expect([...again.cards.values()]).toEqual([...catalogue.cards.values()]);
    expect([...again.builds.keys()]).toEqual([...catalogue.builds.keys()]);
    expect(readRecords(demoFiles()).records.length).toBe(
      [again.buses, again.boards, again.firmware, again.cards, again.conflicts, again.builds, again.parts].reduce((n, m) => n + m.size, 0) +
        1,
    );
  });
});

describe("the summary of the catalogue", () => {
  const summary = summarizeCatalogue(catalogue);

  it("offers every board with how to tell its revisions, and every card", () => {
    expect(summary.boards.map((b) => b.id)).toEqual([...catalogue.boards.keys()]);
    for (const b of summary.boards) for (const r of b.revisions) expect(r.tell).not.toBe("");
    expect(summary.cards).toHaveLength(catalogue.cards.size);
  });

  it("opens builds of the club without their result: what is asked again is a question", () => {
    expect(summary.builds["everyday-office"]).toMatchObject({ board: "skerry-16t" });
    expect(Object.values(summary.builds).some((b) => "result" in b)).toBe(false);
  });

  const offers = summary.cards.map((c): Offer => ({ id: c.id, name: c.name, more: `${c.maker} ${c.model}, ${c.does.join(", ")}` }));
  const first = (typed: string) => matching(offers, typed)[0]?.id;

  it("finds cards by name, by model, by what they do, in any order of words", () => {
    const card = summary.cards.find((c) => c.id === gannet)!;
    expect(first("gannet")).toBe(gannet);
    expect(first("disk gann")).toBe(gannet);
    expect(first(card.model)).toBe(gannet);
    expect(matching(offers, "network").every((o) => /network/i.test(`${o.name} ${o.more}`))).toBe(true);
    expect(matching(offers, "network").length).toBeGreaterThan(1);
    expect(matching(offers, "zzz")).toEqual([]);
    expect(matching(offers, "")).toHaveLength(offers.length);
  });
});

const facetsOf = (build: Build, steps?: number) => {
  const question = resolveBuild(catalogue, build);
  if (question.kind !== "question") throw new Error("misasked");
  return countsOf(compile(question.question), () => (steps ? { steps } : undefined)).facets;
};

describe("facets", () => {
  it("add up to the count of the answer, for every choice", () => {
    const build: Build = { ...blank, board: "skerry-16t", cards: [{ card: gannet }] };
    const answer = asked(build);
    const facets = facetsOf(build);
    expect(facets.map((f) => f.choice)).toEqual(["revision", "memory", "firmware:always"]);
    for (const f of facets) expect(Object.values(f.counts).reduce((sum, n) => sum + BigInt(n), 0n)).toBe(BigInt(answer.count));
  });

  it("agree with the planner on what is impossible", () => {
    const build: Build = { ...blank, board: "skerry-16t", cards: [{ card: gannet }] };
    const firmware = asked(build).possible.find((c) => c.id === "firmware:always")!;
    const counts = facetsOf(build).find((f) => f.choice === "firmware:always")!.counts;
    for (const v of firmware.values) expect(counts[v.value] === "0", v.value).toBe(v.verdict !== "workable");
    expect(Object.values(counts)).toContain("0");
  });

  it("are left out when the count did not come to an end", () => {
    expect(facetsOf({ ...blank, board: "skerry-16t", cards: [{ card: gannet }] }, 1)).toEqual([]);
  });
});

describe("repairs", () => {
  it("lead where they say, as edits, for every question of the club that has no answer", () => {
    const none = [...catalogue.builds.values()]
      .map((b) => [b, plan(catalogue, b)] as const)
      .flatMap(([b, a]) => (a.kind === "answer" && a.repairs.length > 0 ? [[b, a] as const] : []));
    expect(none.length).toBeGreaterThan(5);
    for (const [build, answer] of none) {
      for (const repair of answer.repairs.filter((r) => r.kind !== "by-hand").slice(0, 3)) {
        const to = buildOf({ base: build, moves: [{ do: "all", says: "", edits: repair.edits }] });
        expect(to).toEqual(repair.build);
        const again = plan(catalogue, to, { brief: true });
        expect(again, `${build.id}: ${repair.says}`).toMatchObject({ kind: "answer", verdict: repair.verdict });
      }
    }
  });
});

describe("a sheet", () => {
  it("of a machine in one mode names every card, slot and setting, and opens with the cautions", () => {
    const build: Build = { ...blank, board: "skerry-16t", cards: [{ card: gannet }] };
    const way = asked(build).combinations[0]!;
    const sheet = sheetOf(catalogue, build, way);
    if (sheet.kind !== "plain") throw new Error("not plain");
    expect(sheet.cautions.map((c) => c.title)).toContain("Mains inside the supply");
    const text = JSON.stringify(sheet.tables);
    for (const [id, at] of Object.entries(way.cards[0]!.settings)) {
      expect(text).toContain(JSON.stringify(id));
      expect(text).toContain(JSON.stringify(at));
    }
    expect(sheet.drawings).toHaveLength(4);
    expect(sheet.noSwitch).toBeUndefined();
  });

  it("of a switched machine has its fault table; where no wiring can be had, why not and the ways out", () => {
    const build = catalogue.builds.get("saltmarsh-three-mode-skerry")!;
    const way = asked(build).combinations[0]!;
    const sheet = sheetOf(catalogue, build, way);
    if (sheet.kind !== "switched") throw new Error("not switched");
    expect(sheet.html).toContain('id="faults"');
    expect(sheet.html).toContain('id="two-faults"');
    const poor = sheetOf(catalogue, { ...build, switch: { switch: "toggle-spst" } }, way);
    if (poor.kind !== "plain") throw new Error("a single contact cannot switch three modes");
    expect(poor.noSwitch?.reasons.length).toBeGreaterThan(0);
  });
});

describe("text for a post", () => {
  it("holds machine, cards, answer, best way and address, in plain lines", () => {
    const build: Build = { ...blank, board: "skerry-16t", revision: "D1", cards: [{ card: gannet, slot: "S5" }] };
    const name = (key: string) => summarizeCatalogue(catalogue).names[key] ?? key;
    const text = forumText(build, asked(build), name, "http://club.example/planner.html#b=x");
    expect(text).toMatch(/^Machine: Skerry 16T, revision D1\nCard: Gannet fixed-disk controller \(in S5\)\n/);
    expect(text).toMatch(/\nAnswer: works/);
    expect(text).toContain("\nBest combination: ");
    expect(text).toContain("http://club.example/planner.html#b=x");
    expect(text).not.toMatch(/[<>\u202f\t]/);
  });

  it("tells an impossible build's reasons and what would help", () => {
    const build: Build = { ...blank, board: "skerry-16t", cards: [{ card: gannet }, { card: "tallow-bus-tracer" }] };
    const text = forumText(build, asked(build), (k) => k, "");
    expect(text).toContain("\nWhy not: ");
    expect(text).toContain("\nWould help: ");
  });
});

describe("a build file", () => {
  it("that the planner writes is read back as the same build, without a finding", () => {
    for (const build of [...catalogue.builds.values()].slice(0, 40)) {
      const text = writeBuild({ build });
      const { record, findings } = readOne("build", text);
      expect(findings, build.id).toEqual([]);
      expect(record).toEqual(build);
    }
  });

  it("that cannot be read is told by line and column", () => {
    const read = readBuild(catalogue, { text: "id: x\nname: X\nboard: skerry-16t\ncards:\n  - crad: gannet\n", file: "mine.yaml" });
    if (read.kind !== "unreadable") throw new Error("it was read");
    expect(read.findings[0]!.at).toMatchObject({ file: "mine.yaml", line: 5 });
    expect(read.findings[0]!.at.column).toBeGreaterThan(1);
  });

  it("that names what the records lack is not opened: every name by line and column, with the one that was meant", () => {
    const text =
      "id: x\nname: X\nboard: skerry-16t\ncards: []\nat_hand:\n  cards: [gannet-fixed-disk-controler]\nswitch:\n  device: 27c04\nstands:\n  firmware: R44A\n";
    const read = readBuild(catalogue, { text, file: "mine.yaml" });
    if (read.kind !== "unresolved") throw new Error(`it is ${read.kind}`);
    expect(read.findings.map((f) => [f.at.line, f.at.column, f.says, f.hint])).toEqual([
      [6, 11, 'No card is called "gannet-fixed-disk-controler".', 'Did you mean "gannet-fixed-disk-controller"?'],
      [8, 11, 'No part is called "27c04".', expect.stringContaining("Did you mean")],
      [10, 13, 'No version of Skerry Monitor is called "R44A".', 'Did you mean "R4A"?'],
    ]);
  });
});
