// A cell of the matrix costs the same in a club of any size, whatever was asked before, and asking keeps nothing.
import { describe, expect, it } from "vitest";
import { cell, matrix } from "../../src/planning/index.js";
import { largeClub } from "./large-club.js";
import { clubSizes, complaints, type MatrixRow, measureMatrix } from "./matrix.js";

describe("the matrix of a large club", () => {
  it("costs per cell what that of a small club costs", () => {
    const rows = [clubSizes[0]!, clubSizes.at(-1)!].map((size) => measureMatrix(size, 600));
    expect([...complaints(rows)]).toEqual([]);
    // The club is not a trivial one: every verdict occurs.
    for (const row of rows) expect(Object.keys(row.verdicts).sort()).toEqual(["conditional", "ruled-out", "unknown", "workable"]);
  });

  it("is worked out cell by cell, only as far as it is read", () => {
    const catalogue = largeClub(clubSizes.at(-1)!);
    const cells = matrix(catalogue, { boards: ["board-7"], revisions: ["B"] });
    const first = Array.from({ length: 3 }, () => cells.next().value!);
    expect(first.map((c) => [c.board, c.revision, c.firmware, c.card])).toEqual(
      ["card-1", "card-2", "card-3"].map((card) => ["board-7", "B", "V1", card]),
    );
    for (const c of first) expect(c).toEqual(cell(catalogue, c));
    expect([...matrix(catalogue, { boards: ["board-7"], versions: ["V3"], cards: ["card-9"] })]).toHaveLength(3);
  });

  it("is held to its bounds by a gate that can fail", () => {
    const row: MatrixRow = { club: "c", whole: 1, asked: 1, msPerCell: 1, laterRatio: 1, keptMiB: 0, verdicts: {} };
    expect([...complaints([row, { ...row, msPerCell: 2 }])]).toHaveLength(1);
    expect([...complaints([row, { ...row, laterRatio: 3 }])]).toHaveLength(1);
    expect([...complaints([row, { ...row, keptMiB: 100 }])]).toHaveLength(1);
    expect([...complaints([row, { ...row, msPerCell: 1.1 }])]).toEqual([]);
  });
});
