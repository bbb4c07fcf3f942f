// Cases of the rule left-out.

import type { TestClub } from "../../support/club.js";
import type { RuleCases } from "../../support/rule-cases.js";
import { spellOutBoard, spellOutCard } from "../../support/spell-out.js";

/** The club with everything written, and then kept as it is written. */
function written(c: TestClub): TestClub {
  for (const [id, card] of Object.entries(c.card)) c.card[id] = spellOutCard(card);
  for (const [id, board] of Object.entries(c.board)) c.board[id] = spellOutBoard(board);
  c.asWritten = true;
  return c;
}

export default {
  good: {
    "everything written": (c) => {
      written(c);
    },
    "a kind nobody knows, declared": (c) => {
      written(c).card.tc!.claims = [{ io: "settings", memory: "unknown", interrupts: "settings", dma: "settings" }];
    },
    "claims nobody knows, declared": (c) => {
      written(c).card.tc!.claims = "unknown";
    },
    "a board's current nobody knows, declared": (c) => {
      written(c).board["tb-1"]!.rails[0]!.board_A = "unknown";
    },
    "main memory nobody knows, declared, and a slot nobody asks a bus master of": (c) => {
      const board = written(c).board["tb-1"]!;
      board.memory = "unknown";
      for (const slot of board.slots) delete slot.bus_master;
    },
    "a kind the card's edge does not carry": (c) => {
      const { bus, card } = written(c);
      bus.tb!.edges[0]!.dma = [];
      card.tc!.claims = [{ io: "settings", memory: "none", interrupts: "settings" }];
      for (const setting of card.tc!.settings!) for (const position of setting.positions) delete position.dma;
    },
  },
  bad: {
    "no claims at all": (c) => {
      delete written(c).card.tc!.claims;
    },
    "one kind left out": (c) => {
      written(c).card.tc!.claims = [{ io: "settings", memory: "none", interrupts: "settings" }];
    },
    "an entry for one position alone": (c) => {
      written(c).card.tc!.claims = [{ when: { J1: "300" }, io: "settings", memory: "none", interrupts: "settings", dma: "settings" }];
    },
    "a position that is silent where another speaks": (c) => {
      delete written(c).card.tc!.settings![0]!.positions[1]!.io;
    },
    "a part of the board": (c) => {
      delete written(c).board["tb-1"]!.fixed[0]!.interrupts;
    },
    "what a card does on the chain": (c) => {
      delete written(c).card.tc!.chain;
    },
    "what it does on one of several chains": (c) => {
      written(c).bus.tb!.chains!.push({ id: "K", name: "acknowledge chain" });
      c.card.tc!.chain = { G: "uses" };
    },
    "what an empty slot does to the chain": (c) => {
      delete written(c).board["tb-1"]!.chains![0]!.empty;
    },
    "in which address space a window lies": (c) => {
      const { bus, board, card } = written(c);
      bus.tb!.spaces = ["A16", "A24"].map((id) => ({ id, name: id, bits: 24 }));
      const inA24 = <T extends { space?: string }>(w: T) => Object.assign(w, { space: "A24" });
      for (const part of board["tb-1"]!.fixed) if (Array.isArray(part.memory)) part.memory.map(inA24);
      Object.assign(board["tb-1"]!.memory!, { space: "A24" });
      card.tc!.claims = [{ io: "settings", memory: [{ base: 0xc0000, size: "4K", main: false }], interrupts: "settings", dma: "settings" }];
    },
    "the number of a slot, where a card answers by it": (c) => {
      const { card } = written(c);
      const window = { base: 0xc0000, size: 0x1000, slot_step: 0x1000, main: false };
      card.tc!.claims = [{ io: "settings", memory: [window], interrupts: "settings", dma: "settings" }];
    },
    "whether memory of a card counts as main memory": (c) => {
      const windows = [
        { base: 0xc0000, size: "4K" },
        { base: 0xd0000, size: "4K", is: "rom" as const },
      ];
      written(c).card.tc!.claims = [{ io: "settings", memory: windows, interrupts: "settings", dma: "settings" }];
    },
    "where main memory lies": (c) => {
      delete written(c).board["tb-1"]!.memory;
    },
    "where main memory begins": (c) => {
      written(c).board["tb-1"]!.memory = { options: ["256K", "512K"] };
    },
    "whether a slot takes a bus master, where a card must be one": (c) => {
      const { board, card } = written(c);
      card.tc!.needs = { bus_master: true };
      delete board["tb-1"]!.slots[0]!.bus_master;
    },
    "how long and how high a card may be": (c) => {
      const [slot] = written(c).board["tb-1"]!.slots;
      delete slot!.longest_mm;
      delete slot!.highest_mm;
    },
    "what one card may take": (c) => {
      delete written(c).board["tb-1"]!.rails[0]!.per_slot_A;
    },
    "what the supply gives in all": (c) => {
      delete written(c).board["tb-1"]!.total_W;
    },
    "what the board takes itself": (c) => {
      delete written(c).board["tb-1"]!.rails[0]!.board_A;
    },
  },
} satisfies RuleCases;
