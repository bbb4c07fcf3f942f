// Where a page tells one case out of several, it says which, and never more than that case: marks, counts, releases, search filters.
import { describe, expect, it } from "vitest";
import { boardLine } from "../../src/pages/board.js";
import { buildPage } from "../../src/pages/build.js";
import { type CellKey, cellsOf, type Judge, type Judged } from "../../src/pages/cells.js";
import type { Context } from "../../src/pages/common.js";
import { firmwarePage } from "../../src/pages/firmware.js";
import { judge as askPlanning } from "../../src/pages/judge.js";
import { boardSummaries, cardMark } from "../../src/pages/summary.js";
import type { Answer } from "../../src/planning/index.js";
import { fits } from "../../src/search/index.js";
import { board, card, firmware, smallClub, tested } from "../planning/support/small-club.js";

const ctx: Context = { catalogue: smallClub({ cards: [card("a")] }), lineOf: () => undefined };
const empty = { reasons: [], unknowns: [], combinations: [], history: [], says: "" } as unknown as Answer;
const cellsWith = (verdict: (key: CellKey) => Judged["verdict"], evidence: (key: CellKey) => Judged["evidence"] = () => "inferred") => {
  const judge: Judge = {
    cell: (_, key) => ({ verdict: verdict(key), evidence: evidence(key), answer: empty }),
    build: () => ({ verdict: "ruled-out", evidence: "inferred", answer: empty }),
  };
  return cellsOf(ctx.catalogue, judge);
};

describe("the mark of a card", () => {
  it("names the machine its best case is of, the surest of the best", () => {
    const cells = cellsWith(
      ({ version }) => (version === "V1" ? "ruled-out" : "workable"),
      ({ revision, version }) => (revision === "D1" && version === "V3" ? "bench" : "inferred"),
    );
    const mark = cardMark(boardSummaries(ctx, cells, "a"));
    expect([mark?.verdict, mark?.evidence]).toEqual(["workable", "bench"]);
    expect(mark?.of).toMatchObject({ kind: "answer", says: "at best, revision D1 with V3 in the Board" });
  });

  it("is left out where no board has its bus", () => {
    expect(cardMark([])).toBeUndefined();
  });
});

describe("a count of cards on a board", () => {
  it("names the revision it is of, since another one differs", () => {
    const cells = cellsWith(({ revision }) => (revision === "D1" ? "workable" : "ruled-out"));
    expect(boardLine(ctx, cells, board).says).toContain("in revision D1 one card works");
  });
});

describe("a release", () => {
  it("is said to begin or end nothing that is not known", () => {
    const cells = cellsWith(({ version }) => (version === "V2" ? "unknown" : "ruled-out"));
    const [, second, third] = firmwarePage(ctx, cells, firmware).releases;
    expect([second?.begins, third?.ends]).toEqual([[], []]);
  });

  it("is said to begin what works from it on, and where", () => {
    const cells = cellsWith(({ version, revision }) => (version === "V2" && revision === "C" ? "conditional" : "ruled-out"));
    const [, second, third] = firmwarePage(ctx, cells, firmware).releases;
    expect(second?.begins.map((c) => [c.card.text, c.on])).toEqual([["Card A", ["Board"]]]);
    expect(third?.ends.map((c) => c.card.text)).toEqual(["Card A"]);
  });
});

describe("the page of a build", () => {
  const { result: _, ...question } = tested("question", [{ card: "a", slot: "S1" }]);

  it("that asks states planning's answer, not that it is not known", () => {
    const page = buildPage(ctx, cellsOf(ctx.catalogue, askPlanning), question);
    expect([page.mark.verdict, page.search?.verdict]).toEqual(["workable", "works"]);
  });

  it("that was tested states beside what was seen what the records say", () => {
    const build = tested("ran", [{ card: "a", slot: "S1" }]);
    const page = buildPage(
      ctx,
      cellsWith(() => "workable"),
      build,
    );
    expect([page.mark.verdict, page.now?.verdict]).toEqual(["workable", "ruled-out"]);
  });
});

describe("the search filters", () => {
  const entry = { kind: "card", boards: ["Skerry 16"], verdict: "works", verdictOn: { "Skerry 16": "works", "Skerry 24": "no" } };

  it("together ask for the answer on that board, not for the best on any", () => {
    expect(fits(entry, { verdict: "works" })).toBe(true);
    expect(fits(entry, { verdict: "works", board: "Skerry 16" })).toBe(true);
    expect(fits(entry, { verdict: "works", board: "Skerry 24" })).toBe(false);
    expect(fits({ ...entry, boards: ["Skerry 16", "Skerry 24"] }, { verdict: "works", board: "Skerry 24" })).toBe(false);
    expect(fits(entry, { verdict: "no", board: "Skerry 24" })).toBe(true);
    expect(fits(entry, { board: "Skerry 24" })).toBe(false);
  });
});
