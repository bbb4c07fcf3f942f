// Runs of firmware versions said as people say them, and the answer of a card page drawn from its cells.
import { describe, expect, it } from "vitest";
import { cellsOf, type Judge } from "../../src/pages/cells.js";
import type { Context } from "../../src/pages/common.js";
import { groupsOf, revisionsText, spanOf } from "../../src/pages/runs.js";
import { boardSummaries, cardAnswer } from "../../src/pages/summary.js";
import type { Answer } from "../../src/planning/index.js";
import { demo } from "../support/demo.js";

describe("a span", () => {
  const all = ["R2", "R4", "R4A", "R5", "R6"];
  it.each<[string[], string, boolean]>([
    [all, "any version", false],
    [["R5", "R6"], "from R5 on", true],
    [["R2", "R4", "R4A"], "up to R4A", true],
    [["R4A"], "R4A alone", false],
    [["R6"], "R6 alone", false],
    [["R4", "R4A"], "R4 and R4A", false],
    [["R4", "R4A", "R5"], "R4 to R5", false],
  ])('%j is said %j, without "under" before it: %j', (versions, text, bare) => expect(spanOf(all, versions)).toEqual({ text, bare }));
});

describe("revisions", () => {
  it("are all, or named", () => {
    expect(revisionsText(["B", "C"], ["B", "C"])).toBe("every revision");
    expect(revisionsText(["B", "C", "D1"], ["B", "C"])).toBe("revision B and C");
  });
});

const answer = { reasons: [], unknowns: [], combinations: [], history: [], says: "" } as unknown as Answer;
const ctx: Context = { catalogue: demo(), lineOf: () => undefined };
const board = [...demo().boards.values()][0]!;
const card = [...demo().cards.values()].find((c) => c.bus === board.bus)!;
const judged = (verdict: (version: string, revision: string, board: string) => "workable" | "ruled-out" | "unknown"): Judge => {
  return {
    cell: (_, key) => ({ verdict: verdict(key.version, key.revision, key.board), evidence: "inferred", answer }),
    build: () => ({ verdict: "unknown", evidence: "inferred", answer }),
  };
};

describe("a card's answer", () => {
  it("is a plain yes where everything works, and a plain no where nothing does", () => {
    const says = (judge: Judge) => cardAnswer(boardSummaries(ctx, cellsOf(ctx.catalogue, judge), card.id));
    expect(says(judged(() => "workable"))).toMatch(/^Works under any firmware in the .*\.$/);
    expect(says(judged(() => "ruled-out"))).toBe("As far as is known it works in none of the boards here.");
  });

  it("never rounds not known up", () => {
    const says = cardAnswer(
      boardSummaries(
        ctx,
        cellsOf(
          ctx.catalogue,
          judged(() => "unknown"),
        ),
        card.id,
      ),
    );
    expect(says).toMatch(/^Is not known to work/);
    expect(says).not.toMatch(/^Works/);
  });

  it("names the revision that differs", () => {
    const odd = board.revisions[0]!.id;
    const cells = cellsOf(
      ctx.catalogue,
      judged((_, revision, b) => (b === board.id && revision === odd ? "ruled-out" : "workable")),
    );
    expect(groupsOf(ctx.catalogue, cells, board.id, card.id).length).toBe(2);
    expect(cardAnswer(boardSummaries(ctx, cells, card.id))).toContain(`Not in the ${board.name} ${odd}.`);
  });
});
