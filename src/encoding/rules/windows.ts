// Address windows: two things that answer at one address drive the bus against each other. Ports count with their aliases.
import { ioMeeting, memoryMeeting, overlay } from "../../catalogue/index.js";
import { hex, listed, type MemoryWindow } from "../../records/index.js";
import { capital, ports, type ResourceClaim, resourceClaims, together } from "../claims.js";
import { type ConstraintDraft, fact, never, type TradeRule, unsettled } from "../draft.js";
import type { Frame } from "../frame.js";

export const ioWindows: TradeRule = {
  name: "io-windows",
  says: "No two things answer at one port, aliases of partly decoded cards included.",
  drafts: (frame) => [...pairs(frame, "io", (a, b) => meetingPorts(frame, a, b)), ...perhapsAliased(frame)],
};

function meetingPorts(frame: Frame, a: ResourceClaim, b: ResourceClaim): string | undefined {
  for (const x of listed(a.claims.io))
    for (const y of listed(b.claims.io)) {
      const met = ioMeeting(x, y, frame.question.bus.io_address_bits);
      if (met)
        return `both answer at port ${ports(met.from, met.to)}${met.aliased ? ", because one of them looks at too few address lines and answers again further up" : ""}`;
    }
  return undefined;
}

const looksUnknown = ({ claims }: ResourceClaim) => listed(claims.io).some((w) => w.decoded_bits === "unknown");

/** Pairs that meet only if a card looks at so few address lines as nobody has ruled out. */
function perhapsAliased(frame: Frame): ConstraintDraft[] {
  const all = resourceClaims(frame).filter((t) => listed(t.claims.io).length > 0);
  const bits = frame.question.bus.io_address_bits;
  return all.flatMap((a, i) =>
    all.slice(i + 1).flatMap((b): ConstraintDraft[] => {
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
  says: "No two things answer at one memory address of one space, aliases included, unless one yields to an overlay line that the other asserts.",
  drafts: (frame) => [...pairs(frame, "memory", (a, b) => fighting(frame, a, b)), ...perhapsFighting(frame)],
};

/** Memory at which both answer for sure. */
function fighting(frame: Frame, a: ResourceClaim, b: ResourceClaim): string | undefined {
  for (const x of listed(a.claims.memory))
    for (const y of listed(b.claims.memory)) {
      const met = memoryMeeting(x, y, frame.question.bus);
      if (met && overlay(x, y) === "no") return `both answer at memory ${hex(met.from, 5)}–${hex(met.to, 5)}${whyStill(x, y, met.aliased)}`;
    }
  return undefined;
}

function whyStill(x: MemoryWindow, y: MemoryWindow, aliased: boolean): string {
  if (aliased) return ", because one of them looks at too few address lines and answers again further up";
  const both = listed(x.yields_to).filter((line) => listed(y.yields_to).includes(line));
  return both.length > 0 ? `; both yield to ${both.join(", ")}, and neither asserts it` : "";
}

/** Pairs that meet only if few address lines are looked at, or unless one yields to the other, where nobody knows. */
function perhapsFighting(frame: Frame): ConstraintDraft[] {
  const all = resourceClaims(frame).filter((t) => listed(t.claims.memory).length > 0);
  return all.flatMap((a, i) =>
    all.slice(i + 1).flatMap((b): ConstraintDraft[] => {
      if (a.card === b.card || fighting(frame, a, b)) return [];
      const open = mayFight(frame, a, b);
      if (!open) return [];
      const told = fact("memory-windows", capital(open.says), a.ref, b.ref);
      return unsettled(frame, told, open.how, ...together(frame, a, b, "memory").map((there) => [...a.when, ...b.when, ...there]));
    }),
  );
}

function mayFight(frame: Frame, a: ResourceClaim, b: ResourceClaim): { readonly says: string; readonly how: string } | undefined {
  const { bus } = frame.question;
  for (const x of listed(a.claims.memory))
    for (const y of listed(b.claims.memory)) {
      const met = memoryMeeting(x, y, bus, "fewest");
      const yields = overlay(x, y);
      if (!met || yields === "yes") continue;
      if (memoryMeeting(x, y, bus)) {
        const says = `${a.who} and ${b.who} lie at one memory address, ${hex(met.from, 5)}; whether one yields to the other there is not known.`;
        return { says, how: howToOverlay };
      }
      const who = [x.decoded_bits === "unknown" ? [a.who] : [], y.decoded_bits === "unknown" ? [b.who] : []].flat();
      const looks = `How many address lines ${who.join(" and ")} ${who.length > 1 ? "look" : "looks"} at is not known`;
      return { says: `${looks}; with few of them ${a.who} and ${b.who} answer at one memory address.`, how: howToLookAtMemory };
    }
  return undefined;
}

const howToOverlay =
  "Look in the schematic of each for the overlay lines of the bus: which of them it drives while it answers, and under which it switches its drivers off.";

const howToLookAtMemory =
  "Follow the address lines to its decoder and count them, or write to it and read at addresses further up by powers of two: where it answers again, it does not look at that line.";

/** Every pair of takings that clash, in the modes in which both are there. */
export function pairs(
  frame: Frame,
  what: "io" | "memory" | "interrupts" | "dma",
  clash: (a: ResourceClaim, b: ResourceClaim) => string | undefined,
): ConstraintDraft[] {
  const all = resourceClaims(frame).filter((t) => listed<unknown>(t.claims[what]).length > 0);
  return all.flatMap((a, i) =>
    all.slice(i + 1).flatMap((b): ConstraintDraft[] => {
      if (a.card === b.card) return [];
      const says = clash(a, b);
      if (!says) return [];
      const rule = what === "io" ? "io-windows" : what === "memory" ? "memory-windows" : what === "interrupts" ? "interrupts" : "dma";
      const told = fact(rule, `${a.card === undefined ? capital(a.who) : a.who} and ${b.who}: ${says}.`, a.ref, b.ref);
      return never(frame, told, ...together(frame, a, b, what).map((there) => [...a.when, ...b.when, ...there]));
    }),
  );
}
