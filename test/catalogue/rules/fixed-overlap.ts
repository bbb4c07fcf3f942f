// Cases of the rule fixed-overlap.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "the same ports on other revisions": (c) => {
      c.board["tb-1"]!.fixed[0]!.revisions = ["A"];
      c.board["tb-1"]!.fixed.push({ name: "Second screen", revisions: ["B"], io: [{ base: 0x3d4, size: 2 }] });
    },
    "even and odd sockets at one window": (c) => {
      const [socket] = c.board["tb-1"]!.firmware_sockets;
      c.board["tb-1"]!.firmware_sockets = [
        { ...socket!, lane: "even" },
        { ...socket!, id: "IC8", lane: "odd" },
      ];
    },
    "a window that yields to the other": (c) => {
      const window = { base: 0xb8000, size: "4K" };
      c.bus.tb!.overlay_lines = [{ id: "OVER", says: "Silences what yields to it." }];
      c.board["tb-1"]!.fixed[0]!.memory = [{ ...window, asserts: "OVER" }];
      c.board["tb-1"]!.fixed.push({ name: "Second screen", memory: [{ ...window, yields_to: ["OVER"] }] });
    },
    "with other amounts of memory": (c) => {
      const memory = [{ base: 0xa0000, size: "4K" }];
      c.board["tb-1"]!.fixed.push({ name: "Small", when_memory: ["256K"], memory }, { name: "Large", when_memory: ["512K"], memory });
    },
  },
  bad: {
    "memory windows": (c) => {
      c.board["tb-1"]!.fixed.push({ name: "Second screen", memory: [{ base: 0xb9000, size: "4K" }] });
    },
    "an alias of memory": (c) => {
      c.board["tb-1"]!.fixed[0]!.memory = [{ base: 0x8000, size: "4K", decoded_bits: 16 }];
      c.board["tb-1"]!.fixed.push({ name: "Second screen", memory: [{ base: 0xb8000, size: "4K" }] });
    },
    "an alias of ports": (c) => {
      c.board["tb-1"]!.fixed.push({ name: "Printer", io: [{ base: 0x7d4, size: 1 }] });
    },
    "one line under two names": (c) => {
      c.board["tb-1"]!.fixed.push({ name: "Clock", interrupts: [{ line: "I2" }] }, { name: "Keys", interrupts: [{ line: "I9" }] });
    },
    "two sockets at one window": (c) => {
      c.board["tb-1"]!.firmware_sockets.push({ ...c.board["tb-1"]!.firmware_sockets[0]!, id: "IC8" });
    },
  },
} satisfies RuleCases;
