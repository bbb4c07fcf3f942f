// The sockets a plan switches: one that holds the whole width, or a pair that holds even and odd bytes.
// Says which they are for a board revision; what device stands in them is for device.ts.
import { type Board, bytes, type FirmwareSocket, known } from "../../records/index.js";
import type { WiringReason } from "../types.js";

export interface Sockets {
  readonly sockets: readonly { readonly socket: FirmwareSocket; readonly lane: "whole" | "even" | "odd"; readonly pointer: string }[];
  /** First address of the window. */
  readonly base: number;
  /** Bytes of the window over all lanes. */
  readonly window: number;
  /** Bytes of the window that each device holds. */
  readonly share: number;
  /** Data bits of each device. */
  readonly width: number;
  /** Data bits over all lanes. */
  readonly totalWidth: number;
  /** Slowest access time that works in every socket; unknown when one of them is. */
  readonly slowest_ns: number | "unknown";
}

export function socketsOf(board: Board, revision: string): Sockets | { readonly reason: WiringReason } {
  const found = board.firmware_sockets
    .map((socket, index) => ({ socket, lane: socket.lane ?? "whole", pointer: `/firmware_sockets/${index}` }))
    .filter(({ socket }) => !socket.revisions || socket.revisions.includes(revision));
  const reason = (code: "no-socket" | "sockets-differ", says: string) => ({
    reason: { code, says, refs: [{ kind: "board", id: board.id, pointer: "/firmware_sockets" }] },
  });
  const first = found[0];
  if (!first) return reason("no-socket", `The record of ${board.name} names no firmware socket for revision ${revision}.`);
  const lanes = found.map((s) => s.lane).join(" ");
  const base = first.socket.window.base;
  const window = bytes(first.socket.window.size);
  const width = first.socket.data_width;
  if (found.length === 1 && first.lane === "whole") {
    if (!isPowerOfTwo(window)) return reason("sockets-differ", `The window of ${first.socket.id} is not a power of two.`);
    return { sockets: found, base, window, share: window, width, totalWidth: width, slowest_ns: known(first.socket.slowest_ns) };
  }
  if (found.length !== 2 || !["even odd", "odd even"].includes(lanes)) {
    return reason(
      "sockets-differ",
      `${board.name} ${revision} has firmware sockets ${found.map((s) => `${s.socket.id} (${s.lane})`).join(", ")}; ` +
        "a plan needs one socket that holds the whole width, or one for even and one for odd bytes.",
    );
  }
  const same = found.every(
    ({ socket }) =>
      socket.window.base === base &&
      bytes(socket.window.size) === window &&
      socket.data_width === width &&
      socket.pins === first.socket.pins,
  );
  if (!same || !isPowerOfTwo(window)) {
    return reason("sockets-differ", `Sockets ${found.map((s) => s.socket.id).join(" and ")} differ in window, width or pins.`);
  }
  const times = found.map(({ socket }) => known(socket.slowest_ns));
  const slowest = times.reduce((a, b) => (a === "unknown" || b === "unknown" ? "unknown" : Math.min(a, b)));
  const ordered = [...found].sort((a, b) => (a.lane === "even" ? 0 : 1) - (b.lane === "even" ? 0 : 1));
  return { sockets: ordered, base, window, share: window / 2, width, totalWidth: width * 2, slowest_ns: slowest };
}

export function isPowerOfTwo(n: number): boolean {
  return n > 0 && Number.isInteger(Math.log2(n));
}
