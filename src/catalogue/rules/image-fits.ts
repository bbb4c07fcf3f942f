// An image fits into the window of the boards it runs on, and fills it evenly.
import { type Board, bytes, known, sizeText } from "../../records/index.js";
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";
import { socketRows } from "../socket-row.js";
import { runsOn } from "../versions.js";

export const imageFits: Rule = {
  name: "image-fits",
  says: "An image fits the firmware window of every board its version runs on.",
  why: "An image longer than its window cannot be read to its end, and one that does not divide it cannot be repeated to fill it.",
  mend: "Correct the size of the image or of the window, or the boards and revisions the version is said to run on.",
  scope: ["firmware"],
  *check({ catalogue }): Iterable<Draft> {
    for (const family of catalogue.firmware.values()) {
      for (const [v, version] of family.versions.entries()) {
        const size = known(version.image.size);
        if (size === "unknown") continue;
        for (const board of catalogue.boards.values()) {
          const revisions = board.revisions.filter((r) => runsOn(family, version, board, r.id));
          const rooms = revisions.map((r) => windowOf(board, r.id));
          const room = rooms.find((w) => bytes(size) > w) ?? rooms.find((w) => w % bytes(size) !== 0);
          if (room === undefined) continue;
          const too = bytes(size) > room;
          yield {
            says: too
              ? `The image of ${version.id} (${sizeText(bytes(size))}) is longer than the firmware window of ${board.name} (${sizeText(room)}).`
              : `The image of ${version.id} (${sizeText(bytes(size))}) does not fill the window of ${board.name} (${sizeText(room)}) a whole number of times.`,
            at: ref("firmware", family.id, "versions", v, "image", "size"),
            related: [{ says: "The window.", at: ref("board", board.id, "firmware_sockets", 0, "window", "size") }],
            hint: "Correct the size, the window, or the boards the version runs on.",
          };
        }
      }
    }
  },
};

/** The firmware window a revision has: sockets that share one window count once, as each gives its whole extent. */
function windowOf(board: Board, revision: string): number {
  const sockets = board.firmware_sockets.filter((s) => !s.revisions || s.revisions.includes(revision));
  const rows = socketRows(sockets);
  return "says" in rows ? Math.max(0, ...sockets.map((s) => bytes(s.window.size))) : rows.window;
}
