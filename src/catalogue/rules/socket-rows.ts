// Firmware sockets that make one window together, so that an image can be laid out for them.
import { type Board, bytes, type FirmwareSocket, itemAt } from "../../records/index.js";
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";
import { socketRows } from "../socket-row.js";
import { meetMemory, type Spaces } from "../windows.js";

export const socketRowsRule: Rule = {
  name: "socket-rows",
  says: "The firmware sockets of a revision make one window together: whole or even and odd, alike, each place after the one before.",
  why: "For sockets in another order no image can be laid out, so a machine with this board can be planned, but neither burned for nor switched.",
  mend: "Correct the windows, lanes and widths; or leave the record as it is, if the board is so.",
  scope: ["board"],
  *check({ catalogue }): Iterable<Draft> {
    for (const board of catalogue.boards.values()) {
      const bus = catalogue.buses.get(board.bus);
      if (!bus) continue;
      const told = new Set<string>();
      for (const { id } of board.revisions) {
        const sockets = board.firmware_sockets.filter((s) => !s.revisions || s.revisions.includes(id));
        if (sockets.length === 0 || !sockets.every(isSound) || overlap(sockets, bus)) continue;
        const rows = socketRows(sockets);
        if (!("says" in rows) || told.has(rows.says)) continue;
        told.add(rows.says);
        yield {
          level: "warning",
          says: rows.says,
          at: ref("board", board.id, "firmware_sockets", board.firmware_sockets.indexOf(itemAt(sockets, 0)), "lane"),
          on: "key",
          hint: "Correct it if the board is otherwise; for sockets as they stand here nothing is burned and no switch is planned.",
        };
      }
    }
  },
};

/** Others tell a window that cannot be. */
function isSound({ window }: FirmwareSocket): boolean {
  const size = bytes(window.size);
  return Number.isInteger(Math.log2(size)) && window.base % size === 0;
}

function overlap(sockets: Board["firmware_sockets"], bus: Spaces): boolean {
  return sockets.some((a, i) =>
    sockets.slice(i + 1).some((b) => meetMemory(a.window, b.window, bus) && [a.lane, b.lane].sort().join() !== "even,odd"),
  );
}
