// Faults of the switch itself: knob or lever set wrongly, contacts that never make or never open.

import { entryOf, itemAt } from "../../records/index.js";
import { hasStop } from "../../switching/index.js";
import type { Join } from "../simulate/netlist.js";
import type { Fault } from "../types.js";
import type { FaultCase, FaultInput } from "./fault-case.js";

/** A rotary turns from its first position to the last within the stop, and no further however the knob sits; a coded one turns round. */
export function knobs({ built, candidate }: FaultInput): FaultCase[] {
  const { closed } = built.good;
  const { part, modeAt } = candidate.contacts;
  const n = closed.length;
  const last = modeAt.findLastIndex((m) => m !== undefined);
  const within = (p: number) => (hasStop(part) ? Math.min(Math.max(p, 0), last) : (p + n) % n);
  const make = (id: string, kind: Fault["kind"], says: string, fix: string, order: (p: number) => number): FaultCase => ({
    fault: { id, kind, says, fix },
    variant: {
      ...built.good,
      closed: closed.map((_, p) => itemAt(closed, within(order(p)))),
      unreached: new Set(closed.flatMap((_, p) => (hasStop(part) && within(order(p)) !== order(p) ? [p] : []))),
    },
    burn: false,
  });
  const cases = [
    make("knob-reversed", "knob-reversed", "Positions counted from the wrong end", "Turn the switch or its labels round.", (p) => last - p),
  ];
  if (part.form === "rotary" || part.form === "coded-rotary") {
    cases.push(
      make("knob-offset:+1", "knob-offset", "Knob fixed one position too low", "Loosen the knob and set it one position up.", (p) => p + 1),
    );
    cases.push(
      make(
        "knob-offset:-1",
        "knob-offset",
        "Knob fixed one position too high",
        "Loosen the knob and set it one position down.",
        (p) => p - 1,
      ),
    );
  }
  return cases;
}

export function contactsStuck({ built, candidate }: FaultInput): FaultCase[] {
  const { contacts } = candidate;
  return contacts.sections.flatMap((section, s) => {
    const use = contacts.uses[s];
    if (!use) return [];
    const hub = entryOf(built.terminal, section.hub);
    return [...use.keys()]
      .filter((t) => t !== section.hub)
      .flatMap((terminal): FaultCase[] => {
        const node = entryOf(built.terminal, terminal);
        const is = ([a, b]: Join) => (a === hub && b === node) || (a === node && b === hub);
        const name = `${section.hub} to ${terminal}`;
        return [
          {
            fault: {
              id: `contact-stuck:${terminal}:dead`,
              kind: "contact-stuck",
              says: `Contact ${name} never makes`,
              fix: "Clean the switch or fit another.",
            },
            variant: { ...built.good, closed: built.good.closed.map((joins) => joins.filter((j) => !is(j))) },
            burn: false,
          },
          {
            fault: {
              id: `contact-stuck:${terminal}:welded`,
              kind: "contact-stuck",
              says: `Contact ${name} never opens`,
              fix: "Fit another switch.",
            },
            variant: {
              ...built.good,
              closed: built.good.closed.map((joins) => (joins.some(is) ? joins : [...joins, [hub, node] as Join])),
            },
            burn: false,
          },
        ];
      });
  });
}
