// A firmware socket's window is what its address lines can make: a power of two, on a multiple of itself.
import { bytes, hex } from "../../records/index.js";
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";

export const socketWindow: Rule = {
  name: "socket-window",
  says: "A firmware window is a power of two long and begins on a multiple of its length; upper pins are pins of the socket.",
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
