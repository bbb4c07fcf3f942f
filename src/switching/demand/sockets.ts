// The sockets a plan switches: one that holds the whole width, or a pair that holds even and odd bytes, or several of these in a row.
// Says which they are for a board revision; what device stands in them is for device.ts.
import { socketRows } from "../../catalogue/index.js";
import { type Board, type FirmwareSocket, itemAt, known } from "../../records/index.js";
import type { WiringReason } from "../types.js";

/** Which part of each window a device holds where sockets in a row share it. */
export interface WindowPart {
  /** Counted from 1, lowest addresses first. */
  readonly place: number;
  readonly of: number;
  /** Bytes of the part, over the lanes. */
  readonly size: number;
}

export interface Sockets {
  /** Row after row; in a row the even bytes first. */
  readonly sockets: readonly {
    readonly socket: FirmwareSocket;
    readonly lane: "whole" | "even" | "odd";
    /** Left out where one row holds the whole window. */
    readonly part?: WindowPart;
  }[];
  /** First address of the window. */
  readonly base: number;
  /** Bytes of the window over all lanes and rows. */
  readonly window: number;
  /** Bytes of the window that each device holds. */
  readonly share: number;
  readonly rows: number;
  /** Data bits of each device. */
  readonly width: number;
  /** Data bits over all lanes. */
  readonly totalWidth: number;
  /** Slowest access time that works in every socket; unknown when one of them is. */
  readonly slowest_ns: number | "unknown";
}

export function socketsOf(board: Board, revision: string): Sockets | { readonly reason: WiringReason } {
  const found = board.firmware_sockets.filter((socket) => !socket.revisions || socket.revisions.includes(revision));
  const reason = (code: "no-socket" | "sockets-differ", says: string) => ({
    reason: { code, says, refs: [{ kind: "board", id: board.id, pointer: "/firmware_sockets" }] },
  });
  if (found.length === 0) return reason("no-socket", `The record of ${board.name} names no firmware socket for revision ${revision}.`);
  const made = socketRows(found);
  if ("says" in made) return reason("sockets-differ", `${board.name} ${revision}: ${made.says}`);
  const { rows, base, rowBytes, window } = made;
  const lanes = itemAt(rows, 0).length;
  const width = itemAt(found, 0).data_width;
  const times = found.map((socket) => known(socket.slowest_ns));
  return {
    sockets: rows.flatMap((row, r) =>
      row.map((socket) => ({
        socket,
        lane: socket.lane ?? "whole",
        ...(rows.length === 1 ? {} : { part: { place: r + 1, of: rows.length, size: rowBytes } }),
      })),
    ),
    base,
    window,
    share: rowBytes / lanes,
    rows: rows.length,
    width,
    totalWidth: width * lanes,
    slowest_ns: times.reduce((a, b) => (a === "unknown" || b === "unknown" ? "unknown" : Math.min(a, b))),
  };
}

export function isPowerOfTwo(n: number): boolean {
  return n > 0 && Number.isInteger(Math.log2(n));
}
