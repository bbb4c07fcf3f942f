// Faults of the switch itself: knob or lever set wrongly, contacts that never make or never open.

import type { Join } from "../simulate/netlist.js";
import type { Fault } from "../types.js";
import type { FaultCase, FaultInput } from "./fault-case.js";

export function knobs({ built, candidate }: FaultInput): FaultCase[] {
  const { closed } = built.good;
  const n = closed.length;
  const make = (id: string, kind: Fault["kind"], says: string, fix: string, order: (p: number) => number): FaultCase => ({
    fault: { id, kind, says, fix },
    variant: { ...built.good, closed: closed.map((_, p) => closed[(order(p) + n) % n]!) },
    burn: false,
  });
  const reached = candidate.contacts.modeAt.filter((m) => m !== undefined).length;
  const cases = [
    make(
      "knob-reversed",
      "knob-reversed",
      "Positions counted from the wrong end",
      "Turn the switch or its labels round.",
      (p) => reached - 1 - p,
    ),
  ];
  if (candidate.contacts.part.form === "rotary" || candidate.contacts.part.form === "coded-rotary") {
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
    const hub = built.terminal.get(section.hub)!;
    return [...use.keys()]
      .filter((t) => t !== section.hub)
      .flatMap((terminal): FaultCase[] => {
        const node = built.terminal.get(terminal)!;
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
