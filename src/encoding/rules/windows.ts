// Address windows: two things that answer at one address drive the bus against each other. Ports count with their aliases.
import { ioMeeting, memoryMeeting } from "../../catalogue/index.js";
import { hex, listed } from "../../records/index.js";
import { ports, type Taken, takings, together } from "../claims.js";
import { type Draft, fact, never, type TradeRule, unsettled } from "../draft.js";
import type { Frame } from "../frame.js";

export const ioWindows: TradeRule = {
  name: "io-windows",
  says: "No two things answer at one port, aliases of partly decoded cards included.",
  drafts: (frame) => [...pairs(frame, "io", (a, b) => meetingPorts(frame, a, b)), ...perhapsAliased(frame)],
};

function meetingPorts(frame: Frame, a: Taken, b: Taken): string | undefined {
  for (const x of listed(a.claims.io))
    for (const y of listed(b.claims.io)) {
      const met = ioMeeting(x, y, frame.question.bus.io_address_bits);
      if (met)
        return `both answer at port ${ports(met.from, met.to)}${met.aliased ? ", because one of them looks at too few address lines and answers again further up" : ""}`;
    }
  return undefined;
}

const looksUnknown = ({ claims }: Taken) => listed(claims.io).some((w) => w.decoded_bits === "unknown");

/** Pairs that meet only if a card looks at so few address lines as nobody has ruled out. */
function perhapsAliased(frame: Frame): Draft[] {
  const all = takings(frame).filter((t) => listed(t.claims.io).length > 0);
  const bits = frame.question.bus.io_address_bits;
  return all.flatMap((a, i) =>
    all.slice(i + 1).flatMap((b): Draft[] => {
      const open = [a, b].filter(looksUnknown);
      if (open.length === 0 || a.card === b.card || meetingPorts(frame, a, b)) return [];
      const may = listed(a.claims.io).some((x) => listed(b.claims.io).some((y) => ioMeeting(x, y, bits, "fewest")));
      if (!may) return [];
      const who = open.map((t) => t.who).join(" and ");
      const says = `How many address lines ${who} ${open.length > 1 ? "look" : "looks"} at is not known; with few of them ${a.who} and ${b.who} answer at one port.`;
      const told = fact("io-windows", capital(says), a.ref, b.ref);
      return unsettled(frame, told, howToLook, ...together(frame, a, b, "io").map((there) => [...a.when, ...b.when, ...there]));
    }),
  );
}

const howToLook =
  "Follow the address lines to the card's decoder and count them, or read a port of the card at addresses 0x400, 0x800, 0x1000 and further up: where it answers again, it does not look at that line.";

export const memoryWindows: TradeRule = {
  name: "memory-windows",
  says: "No two things answer at one memory address, unless both are made to share it.",
  drafts: (frame) =>
    pairs(frame, "memory", (a, b) => {
      for (const x of listed(a.claims.memory))
        for (const y of listed(b.claims.memory)) {
          const met = memoryMeeting(x, y);
          if (met) return `both answer at memory ${hex(met.from, 5)}–${hex(met.to, 5)}`;
        }
      return undefined;
    }),
};

/** Every pair of takings that clash, in the modes in which both are there. */
export function pairs(
  frame: Frame,
  what: "io" | "memory" | "interrupts" | "dma",
  clash: (a: Taken, b: Taken) => string | undefined,
): Draft[] {
  const all = takings(frame).filter((t) => listed<unknown>(t.claims[what]).length > 0);
  return all.flatMap((a, i) =>
    all.slice(i + 1).flatMap((b): Draft[] => {
      if (a.card === b.card) return [];
      const says = clash(a, b);
      if (!says) return [];
      const rule = what === "io" ? "io-windows" : what === "memory" ? "memory-windows" : what === "interrupts" ? "interrupts" : "dma";
      const told = fact(rule, `${a.card === undefined ? capital(a.who) : a.who} and ${b.who}: ${says}.`, a.ref, b.ref);
      return never(frame, told, ...together(frame, a, b, what).map((there) => [...a.when, ...b.when, ...there]));
    }),
  );
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
