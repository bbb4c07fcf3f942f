// Cases of the rule socket-rows.
import type { RuleCases } from "../../support/rule-cases.js";

type Socket = Parameters<RuleCases["good"][string]>[0]["board"][string]["firmware_sockets"][number];

/** The board's socket, and others that differ from it in this. */
function sockets(c: Parameters<RuleCases["good"][string]>[0], ...others: readonly Partial<Socket>[]): void {
  const board = c.board["tb-1"]!;
  const first = board.firmware_sockets[0]!;
  board.firmware_sockets = others.map((other, i) => ({ ...first, id: `IC${i + 1}`, ...other }));
}

export default {
  good: {
    "even and odd": (c) => {
      sockets(c, { lane: "even" }, { lane: "odd" });
    },
    "two in a row, the higher first": (c) => {
      sockets(c, { window: { base: 0xf8000, size: "32K" } }, { window: { base: 0xf0000, size: "32K" } });
    },
  },
  bad: {
    "windows with a gap between them": (c) => {
      sockets(c, {}, { window: { base: 0xe0000, size: "32K" } });
    },
    "even bytes alone": (c) => {
      sockets(c, { lane: "even" });
    },
    "even and odd of different width": (c) => {
      sockets(c, { lane: "even" }, { lane: "odd", data_width: 16 });
    },
  },
} satisfies RuleCases;
