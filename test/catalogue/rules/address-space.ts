// Cases of the rule address-space.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "the last window there is": (c) => {
      c.card.tc!.claims = [{ memory: [{ base: 0xfc000, size: "16K" }], io: [{ base: 0xfff8, size: 8 }] }];
    },
  },
  bad: {
    "a part of the board that follows a slot": (c) => {
      c.board["tb-1"]!.fixed[0]!.io = [{ base: 0x3d4, size: 2, slot_step: 16 }];
    },
    "memory above what few lines tell apart": (c) => {
      c.board["tb-1"]!.fixed[0]!.memory = [{ base: 0xb8000, size: "16K", decoded_bits: 16 }];
    },
    "memory outside its own space": (c) => {
      c.bus.tb!.spaces = [{ id: "A16", name: "short", bits: 16 }];
      c.board["tb-1"]!.firmware_sockets[0]!.window.space = "A16";
      c.card.tc!.claims = [{ io: "settings", memory: "none", interrupts: "settings", dma: "settings" }];
      c.board["tb-1"]!.fixed[0]!.memory = [{ base: 0x8000, size: "16K", space: "A16" }];
      Object.assign(c.board["tb-1"]!.memory!, { space: "A16" });
    },
    "a window beyond the lines of the bus": (c) => {
      c.card.tc!.claims = [{ memory: [{ base: 0xfe000, size: "16K" }] }];
    },
    "a window beyond the lines of the edge": (c) => {
      c.bus.tb!.edges[0]!.address_bits = 16;
      c.card.tc!.claims = [{ memory: [{ base: 0xd000, size: "16K" }] }];
    },
    "ports beyond the lines of the bus": (c) => {
      c.board["tb-1"]!.fixed[0]!.io = [{ base: 0xfffc, size: 8 }];
    },
    "more decoded bits than there are": (c) => {
      c.card.tc!.settings![0]!.positions[0]!.io = [{ base: 0x300, size: 8, decoded_bits: 20 }];
    },
    "ports above the bits that are decoded": (c) => {
      c.card.tc!.settings![0]!.positions[0]!.io = [{ base: 0x700, size: 8, decoded_bits: 10 }];
    },
    "a firmware window beyond the end": (c) => {
      c.board["tb-1"]!.firmware_sockets[0]!.window = { base: 0x100000, size: "32K" };
    },
  },
} satisfies RuleCases;
