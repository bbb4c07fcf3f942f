// Cases of the rule socket-window.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "another window": (c) => {
      c.board["tb-1"]!.firmware_sockets[0]!.window = { base: 0xf8000, size: "32K" };
    },
    "a line of one of two sockets, which counts pairs of bytes": (c) => {
      Object.assign(c.board["tb-1"]?.firmware_sockets[0] ?? {}, {
        lane: "even",
        window: { base: 0xf0000, size: "64K" },
        upper_pins: [{ pin: 27, carries: "driven", line: "A15" }],
      });
      const [even] = c.board["tb-1"]!.firmware_sockets;
      c.board["tb-1"]!.firmware_sockets.push({ ...even!, id: "IC8", lane: "odd" });
    },
    "a rail of another voltage": (c) => {
      Object.assign(c.board["tb-1"]?.firmware_sockets[0] ?? {}, { upper_pins: [{ pin: 1, carries: "rail", line: "+12" }] });
    },
  },
  bad: {
    "a length that is no power of two": (c) => {
      c.board["tb-1"]!.firmware_sockets[0]!.window = { base: 0xe0000, size: "96K" };
    },
    "a base that is no multiple of the length": (c) => {
      c.board["tb-1"]!.firmware_sockets[0]!.window.base = 0xf4000;
    },
    "a pin the socket lacks": (c) => {
      c.board["tb-1"]!.firmware_sockets[0]!.upper_pins = [{ pin: 31, carries: "high" }];
    },
    "a rail without its name": (c) => {
      Object.assign(c.board["tb-1"]?.firmware_sockets[0] ?? {}, { upper_pins: [{ pin: 1, carries: "rail" }] });
    },
    "a driven pin without its line": (c) => {
      c.board["tb-1"]!.firmware_sockets[0]!.upper_pins = [{ pin: 27, carries: "driven" }];
    },
    "a line within the window that is another line of the board": (c) => {
      c.board["tb-1"]!.firmware_sockets[0]!.upper_pins = [{ pin: 27, carries: "driven", line: "A15" }];
    },
  },
} satisfies RuleCases;
