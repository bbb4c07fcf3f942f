// Cases of the rule board-firmware.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "both name each other": (c) => {
      c.firmware.tm!.boards = [{ board: "tb-1", revisions: ["A", "B"] }];
    },
  },
  bad: {
    "the firmware does not name the board": (c) => {
      c.board.other = { ...c.board["tb-1"]!, id: "other", name: "Other board", model: "other" };
    },
    "the board does not name the firmware": (c) => {
      c.firmware.tm2 = {
        ...c.firmware.tm!,
        id: "tm2",
        name: "Tm2 firmware",
        versions: [{ id: "R1", image: { size: "32K", crc32: "unknown" } }],
      };
    },
    "a version names a board the family does not": (c) => {
      c.board.other = { ...c.board["tb-1"]!, id: "other", name: "Other board", model: "other" };
      c.firmware.tm2 = {
        ...c.firmware.tm!,
        id: "tm2",
        name: "Tm2 firmware",
        boards: [{ board: "other" }],
        versions: [{ id: "R1", boards: [{ board: "tb-1" }], image: { size: "32K", crc32: "unknown" } }],
      };
      c.board.other.firmware = ["tm2"];
    },
  },
} satisfies RuleCases;
