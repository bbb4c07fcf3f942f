// How the firmware sockets of one board make one window: one that holds the whole width or two that hold even and odd bytes, and of
// either any number in a row, each row with the addresses that follow those before it.
import { bytes, type FirmwareSocket, itemAt } from "../records/index.js";

export interface SocketRows {
  /** Lowest addresses first; in a row the even bytes first. */
  readonly rows: readonly (readonly FirmwareSocket[])[];
  readonly base: number;
  /** Bytes of one row, and of all. */
  readonly rowBytes: number;
  readonly window: number;
}

/** The rows, or why they make none: then no image can be laid out for these sockets. */
export function socketRows(sockets: readonly FirmwareSocket[]): SocketRows | { readonly says: string } {
  const [first] = sockets;
  if (!first) return { says: "There is no firmware socket." };
  const lane = (s: FirmwareSocket) => s.lane ?? "whole";
  const names = sockets.map((s) => `${s.id} (${lane(s)})`).join(", ");
  const bases = [...new Set(sockets.map((s) => s.window.base))].sort((a, b) => a - b);
  const rows = bases.map((base) =>
    sockets.filter((s) => s.window.base === base).sort((a, b) => (lane(a) < lane(b) ? -1 : lane(a) > lane(b) ? 1 : 0)),
  );
  const kinds = new Set(rows.map((row) => row.map(lane).join(" ")));
  const [kind] = kinds;
  if (kinds.size > 1 || (kind !== "whole" && kind !== "even odd"))
    return {
      says: `Sockets ${names} make no window together: in each place one must hold the whole width, or one the even and one the odd bytes.`,
    };
  const size = bytes(first.window.size);
  const unlike = sockets.find((s) => bytes(s.window.size) !== size || s.data_width !== first.data_width || s.pins !== first.pins);
  if (unlike) return { says: `Sockets ${first.id} and ${unlike.id} differ in window, width or pins.` };
  const gap = bases.findIndex((base, i) => base !== itemAt(bases, 0) + i * size);
  if (gap >= 0) return { says: `Sockets ${names} have windows that do not follow one another; an image lies in one piece.` };
  const window = size * rows.length;
  if (!Number.isInteger(Math.log2(window))) return { says: `The window of ${names} is not a power of two.` };
  return { rows, base: itemAt(bases, 0), rowBytes: size, window };
}
