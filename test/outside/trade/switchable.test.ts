// The usual two-lever build: a 27C160 with four images of 512 KiB, A18 and A19 over contacts to ground, one card enable on the first
// lever. Common practice, no source: the arithmetic of bank lines.
import { describe, expect, it } from "vitest";
import { levelOf, type Netlist, solve, together } from "../../../src/wiring/simulate/netlist.js";
import { fitOf, socketFor } from "./devices.js";

const truth = [
  { levers: [false, false], levels: ["high", "high"], image: "D", offset: 0x180000, card: false },
  { levers: [true, false], levels: ["low", "high"], image: "C", offset: 0x100000, card: true },
  { levers: [false, true], levels: ["high", "low"], image: "B", offset: 0x080000, card: false },
  { levers: [true, true], levels: ["low", "low"], image: "A", offset: 0, card: true },
] as const;

describe("two levers, four images, one card", () => {
  const fit = fitOf("27C160", socketFor("27C160", 16, 0x80000));
  // Ground, supply, A18, A19, card point, and the levers' contacts to ground.
  const net: Netlist = { nodes: ["ground", "supply", "A18", "A19", "card"], joins: [], pullUps: [2, 3], strong: [] };
  it("has its bank lines on pins 1 and 42", () =>
    expect(fit.lines.map((l) => [l.line, l.pin])).toEqual([
      ["A18", 1],
      ["A19", 42],
    ]));
  for (const row of truth) {
    it(`levers ${row.levers.map((l) => (l ? "closed" : "open")).join(", ")}: image ${row.image}`, () => {
      const [first, second] = row.levers;
      const solved = solve(net, [
        ...(first
          ? ([
              [0, 2],
              [0, 4],
            ] as const)
          : []),
        ...(second ? ([[0, 3]] as const) : []),
      ]);
      const levels = [levelOf(solved, 2), levelOf(solved, 3)];
      expect(levels).toEqual(row.levels);
      const bank = levels.reduce((sum, level, i) => sum + (level === "high" ? 2 ** fit.lines[i]!.bit : 0), 0);
      expect(["A", "B", "C", "D"][bank]).toBe(row.image);
      expect(bank * 0x80000).toBe(row.offset);
      expect(together(solved, 4, 0)).toBe(row.card);
    });
  }
});
