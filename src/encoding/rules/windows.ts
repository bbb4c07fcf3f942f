// Address windows: two things that answer at one address drive the bus against each other. Ports count with their aliases.
import { ioMeeting, memoryMeeting } from "../../catalogue/index.js";
import { hex, listed } from "../../records/index.js";
import { ports, type Taken, takings, together } from "../claims.js";
import { type Draft, fact, never, type TradeRule } from "../draft.js";
import type { Frame } from "../frame.js";

export const ioWindows: TradeRule = {
  name: "io-windows",
  says: "No two things answer at one port, aliases of partly decoded cards included.",
  drafts: (frame) =>
    pairs(frame, "io", (a, b) => {
      for (const x of listed(a.claims.io))
        for (const y of listed(b.claims.io)) {
          const met = ioMeeting(x, y, frame.question.bus.io_address_bits);
          if (met)
            return `both answer at port ${ports(met.from, met.to)}${met.aliased ? ", because one of them looks at too few address lines and answers again further up" : ""}`;
        }
      return undefined;
    }),
};

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
