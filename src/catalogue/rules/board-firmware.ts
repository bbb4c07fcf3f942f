// Board and firmware name each other: a link told from one side only is missing on the other's page.
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";

export const boardFirmware: Rule = {
  name: "board-firmware",
  says: "A board names the firmware made for it, and the firmware names the board.",
  why: "A link written from one side only is missing on the other side's page, and the planner would plan with half of it.",
  mend: "Add the missing name on the side that lacks it, or take it out on the other.",
  scope: ["board", "firmware"],
  *check({ catalogue }): Iterable<Draft> {
    for (const board of catalogue.boards.values())
      for (const [i, id] of board.firmware.entries()) {
        const family = catalogue.firmware.get(id);
        if (!family || family.boards.some((m) => m.board === board.id)) continue;
        const related = [{ says: "The boards it names.", at: ref("firmware", id, "boards") }];
        yield {
          says: `${family.name} does not name this board.`,
          at: ref("board", board.id, "firmware", i),
          related,
          hint: "Add the board there, or take the firmware out here.",
        };
      }
    for (const family of catalogue.firmware.values()) {
      for (const [i, m] of family.boards.entries()) {
        const board = catalogue.boards.get(m.board);
        if (!board || board.firmware.includes(family.id)) continue;
        const related = [{ says: "The firmware it names.", at: ref("board", board.id, "firmware") }];
        yield {
          says: `${board.name} does not name this firmware.`,
          at: ref("firmware", family.id, "boards", i, "board"),
          related,
          hint: "Add the firmware there, or take the board out here.",
        };
      }
      for (const [v, version] of family.versions.entries())
        for (const [i, m] of (version.boards ?? []).entries()) {
          if (!catalogue.boards.has(m.board) || family.boards.some((f) => f.board === m.board)) continue;
          const related = [{ says: "The boards of the family.", at: ref("firmware", family.id, "boards") }];
          yield {
            says: `${version.id} names a board the family does not.`,
            at: ref("firmware", family.id, "versions", v, "boards", i, "board"),
            related,
            hint: "Add the board to the family's boards.",
          };
        }
    }
  },
};
