// Main memory that sits on cards: needs and limits go by what the machine has in all. Arithmetic; the bus is that of IEEE Std 696-1983.
import { describe, expect, it } from "vitest";
import { plan } from "../../../../src/planning/index.js";
import type { Board, Card, MemoryWindow } from "../../../../src/records/index.js";
import { clubOf } from "../support.js";
import { askOn, backplane, busWith, cardOn, reasonOf } from "./support.js";

const s696 = busWith({ id: "ieee-696", name: "IEEE 696 bus", memory_address_bits: 24, io_address_bits: 8 });
const K = 1024;
const ram = (id: string, base: number, size: number, more: Partial<MemoryWindow> = { main: true }): Card =>
  cardOn(s696, id, { claims: [{ memory: [{ base, size, is: "ram", ...more }] }] });
const needing = (needs: NonNullable<Card["needs"]>) => cardOn(s696, "needing", { needs });
const passive = (more: Partial<Board> = {}) => backplane(s696, 5, more);
const [low, high] = [ram("low", 0, 64 * K), ram("high", 64 * K, 64 * K)];

describe("memory on cards of a backplane that has none", () => {
  it("adds up for a card that needs so much", () => {
    const disk = needing({ memory_at_least: "128K" });
    expect(askOn(s696, passive(), [disk, low, high]).verdict).toBe("workable");
    const short = askOn(s696, passive(), [disk, low]);
    expect(short.verdict).toBe("ruled-out");
    expect(reasonOf(short)).toBe("needing needs at least 128K of memory.");
  });
  it("is too much for a card that bears less", () => {
    const old = needing({ memory_at_most: "64K" });
    expect(askOn(s696, passive(), [old, low]).verdict).toBe("workable");
    expect(askOn(s696, passive(), [old, low, high]).verdict).toBe("ruled-out");
  });
  it("counts for a card's need without its own", () => {
    const also = ram("also", 128 * K, 64 * K);
    expect(askOn(s696, passive(), [{ ...also, needs: { memory_at_least: "64K" } }]).verdict).toBe("ruled-out");
    expect(askOn(s696, passive(), [{ ...also, needs: { memory_at_least: "64K" } }, low]).verdict).toBe("workable");
  });
  it("is not known where no record speaks of main memory, or a card does not say whether its own counts", () => {
    const disk = needing({ memory_at_most: "64K" });
    expect(askOn(s696, passive(), [disk]).verdict).toBe("unknown");
    // The record as a keeper may leave it: nothing of what its memory counts for.
    const { main: _, ...window } = { base: 64 * K, size: 64 * K, is: "ram" as const, main: true };
    const club = clubOf(passive(), [disk, low, high], s696);
    const silent: Card = { ...club.cards.get("high")!, claims: [{ io: "none", memory: [window], interrupts: "none", dma: "none" }] };
    const cards = new Map(club.cards).set("high", silent);
    const build = { id: "q", name: "q", board: "board", cards: ["needing", "low", "high"].map((card) => ({ card })) };
    const answer = plan({ ...club, cards }, build);
    if (answer.kind !== "answer") throw new Error(answer.faults[0]!.says);
    expect(answer.verdict).toBe("unknown");
    expect(answer.unknowns[0]).toMatchObject({
      says: "needing fails with more than 64K of memory. Whether memory on a card counts with the board's is not known.",
      how: expect.stringContaining("see how much memory the machine then counts"),
    });
  });
  it("does not count where it is a page, or where the build says what there is in all", () => {
    const old = needing({ memory_at_most: "64K" });
    expect(askOn(s696, passive(), [old, low, ram("page", 64 * K, 64 * K, { main: false })]).verdict).toBe("workable");
    expect(askOn(s696, passive(), [old, low], { memory: "64K" }).verdict).toBe("workable");
    // The build says less than its cards have: one of the two is wrong.
    expect(askOn(s696, passive(), [old, low, high], { memory: "64K" }).verdict).toBe("unknown");
    expect(askOn(s696, passive(), [old, low, high], { memory: "128K" }).verdict).toBe("ruled-out");
  });
});

describe("memory on cards beside that of the board", () => {
  const board = passive({ memory: { options: ["64K", "128K"], base: 0 } });
  const more = ram("more", 512 * K, 64 * K);
  it("adds to it, so that a limit holds with the small amount only", () => {
    const answer = askOn(s696, board, [needing({ memory_at_most: "128K" }), more]);
    expect(answer.verdict).toBe("workable");
    expect(answer.possible.find((c) => c.id === "memory")!.values.map((v) => v.verdict)).toEqual(["workable", "ruled-out"]);
  });
  it("goes when a mode switches the card off and it lets go of its memory", () => {
    const off = { ...more, enable: { by: "contacts" as const, releases: ["memory" as const] } };
    const asked = (cards: readonly string[]) =>
      askOn(s696, passive({ memory: { options: ["64K"], base: 0 } }), [needing({ memory_at_most: "64K" }), off], {
        modes: [{ id: "m", cards: [...cards] }],
      }).verdict;
    expect([asked(["needing"]), asked(["needing", "more"])]).toEqual(["workable", "ruled-out"]);
  });
  it("follows the position it is set to", () => {
    const set = cardOn(s696, "set", {
      settings: [
        {
          id: "J1",
          name: "amount",
          by: "jumper",
          positions: [
            { id: "half", memory: [{ base: 512 * K, size: 32 * K, is: "ram", main: true }] },
            { id: "all", memory: [{ base: 512 * K, size: 64 * K, is: "ram", main: true }] },
          ],
        },
      ],
    });
    const answer = askOn(s696, passive({ memory: { options: ["64K"], base: 0 } }), [needing({ memory_at_least: "128K" }), set]);
    expect(answer.possible.find((c) => c.id === "setting:set:J1")!.values.map((v) => v.verdict)).toEqual(["ruled-out", "workable"]);
  });
});
