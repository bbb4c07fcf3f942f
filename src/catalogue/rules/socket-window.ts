// A firmware socket's window is what its address lines can make: a power of two, on a multiple of itself.
import { bytes, type FirmwareSocket, hex } from "../../records/index.js";
import type { Catalogue } from "../catalogue.js";
import { partsOfType } from "../lookups.js";
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";

export const socketWindow: Rule = {
  name: "socket-window",
  says: "A firmware window is a power of two long and begins on a multiple of its length; upper pins are pins of the socket, and within the window they carry the line that its device has there.",
  why: "Address lines halve a space and halve it again; a window of another length or place is a slip.",
  mend: "Correct the length, the first address or the pin.",
  scope: ["board"],
  *check({ catalogue }): Iterable<Draft> {
    for (const board of catalogue.boards.values())
      for (const [i, s] of board.firmware_sockets.entries()) {
        const at = (...path: (string | number)[]) => ref("board", board.id, "firmware_sockets", i, ...path);
        const size = bytes(s.window.size);
        if (!Number.isInteger(Math.log2(size)))
          yield {
            says: `A window of ${size} bytes is not a power of two.`,
            at: at("window", "size"),
            hint: "Address lines make windows of 8K, 16K, 32K and so on.",
          };
        else if (s.window.base % size !== 0) {
          const related = [{ says: "Its length.", at: at("window", "size") }];
          yield {
            says: `A window of ${hex(size)} bytes cannot begin at ${hex(s.window.base)}.`,
            at: at("window", "base"),
            expected: `a multiple of ${hex(size)}`,
            related,
            hint: "Correct the base or the length.",
          };
        }
        for (const [j, p] of (s.upper_pins ?? []).entries()) {
          if (p.pin > s.pins)
            yield {
              says: `The socket has ${s.pins} pins, and no pin ${p.pin}.`,
              at: at("upper_pins", j, "pin"),
              related: [{ says: "The number of pins.", at: at("pins") }],
              hint: "Count the pins of the socket, not of the larger device.",
            };
          if (p.carries === "driven" && p.line === undefined)
            yield {
              says: `Pin ${p.pin} is driven, but by which address line is not said.`,
              at: at("upper_pins", j, "carries"),
              hint: "Add line: A15, say.",
            };
          const wanted = p.carries === "driven" ? lineFor(catalogue, s, p.pin) : undefined;
          if (wanted !== undefined && p.line !== undefined && /^A\d+$/.test(p.line) && p.line !== wanted.board)
            yield {
              says: `Pin ${p.pin} carries ${p.line}, and the ${s.wired_for} has its ${wanted.device} there, which is ${wanted.board} of the board.`,
              at: at("upper_pins", j, "line"),
              expected: wanted.board,
              related: [{ says: "What it is wired for.", at: at("wired_for") }],
              hint: "Follow the trace of that pin; a device in a socket that is wired otherwise shows its bytes in another order.",
            };
          if (p.carries === "rail" && p.line === undefined)
            yield {
              says: `Pin ${p.pin} carries another supply than +5 V, but which is not said.`,
              at: at("upper_pins", j, "carries"),
              hint: 'Add line: "+12", say; of +5 V write carries: supply.',
            };
        }
      }
  },
};

/** The address line that a pin within the window has in the device the socket is wired for, and which line of the board that is. */
function lineFor(catalogue: Catalogue, s: FirmwareSocket, pin: number): { readonly device: string; readonly board: string } | undefined {
  const device = partsOfType(catalogue, "memory").find((m) => m.family === s.wired_for);
  const name = device?.pins.find((p) => p.pin + (s.pins - device.pins.length) / 2 === pin)?.name;
  const line = /^A(\d+)$/.exec(name ?? "")?.[1];
  if (!device || line === undefined) return undefined;
  // The lines of a device count its words; one of 16 bits that is read by bytes has a line below A0.
  const word = Math.max(...device.organisations.map((o) => o.width), s.data_width) / 8;
  const board = Number(line) + Math.log2(word * (s.lane === undefined || s.lane === "whole" ? 1 : 2));
  return board < Math.log2(bytes(s.window.size)) ? { device: `A${line}`, board: `A${board}` } : undefined;
}
