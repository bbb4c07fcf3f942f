// What a card needs of the machine: firmware, features, board, memory, clock, other cards, a bus-master slot, rails.
import { featuresOf, inRange, rangeText } from "../../catalogue/index.js";
import type { Release } from "../../machine/index.js";
import { bytes, itemAt, known, sizeText, unknown } from "../../records/index.js";
import type { Literal } from "../../solver/index.js";
import { type ConstraintDraft, fact, memoryUnknown, never, ref, refusedByMemory, type TradeRule, unsettled } from "../draft.js";
import {
  always,
  cardIn,
  complement,
  eachCard,
  eachMode,
  type Frame,
  holdsIn,
  inSlot,
  modeKept,
  onRevisions,
  runsIn,
  runsVersion,
} from "../frame.js";
import { type Holds, knowsMachineMemory, lessThan, memoryHolds, moreThan } from "../machine-memory.js";

export const needs: TradeRule = {
  name: "needs",
  says: "What a card needs is there in every mode in which the card runs or does not let go of the need.",
  drafts: (frame) =>
    eachCard(frame).flatMap(({ at }) => [...ofFirmware(frame, at), ...ofMachine(frame, at), ...ofCards(frame, at), ...ofSlot(frame, at)]),
};

/** Modes in which the card holds on to the need, each with what makes it do so. */
function modesNeeding(frame: Frame, at: number, what: Release) {
  return eachMode(frame).flatMap(({ at: m }) => {
    const holds = holdsIn(frame, m, at, what);
    return holds.values.length === 0 ? [] : [{ at: m, holds }];
  });
}

function ofFirmware(frame: Frame, at: number): ConstraintDraft[] {
  const { family } = frame.question;
  const { card } = itemAt(frame.question.cards, at);
  const out: ConstraintDraft[] = [];
  const spans = card.needs?.firmware;
  if (spans) {
    const words = spans.filter((s) => s.family === family.id).map(rangeText);
    const says =
      words.length > 0 ? `${card.name} needs ${family.name} ${words.join(", or ")}.` : `${card.name} is not made for ${family.name}.`;
    const told = fact("needs-firmware", says, ref("card", card.id, "/needs/firmware"));
    for (const { at: m, holds } of modesNeeding(frame, at, "firmware"))
      out.push(...never(frame, told, [cardIn(frame, at), holds, runsVersion(frame, m, (v) => !spans.some((s) => inRange(family, v, s)))]));
  }
  (card.needs?.features ?? []).forEach((feature, i) => {
    const words = family.features?.find((f) => f.id === feature)?.says ?? feature;
    const told = fact(
      "needs-feature",
      `${card.name} needs firmware that has: ${words}.`,
      ref("card", card.id, `/needs/features/${i}`),
      ref("firmware", family.id, "/features"),
    );
    for (const { at: m, holds } of modesNeeding(frame, at, "features"))
      out.push(...never(frame, told, [cardIn(frame, at), holds, runsVersion(frame, m, (v) => !featuresOf(family, v).has(feature))]));
  });
  return out;
}

function ofMachine(frame: Frame, at: number): ConstraintDraft[] {
  const { board } = frame.question;
  const { card } = itemAt(frame.question.cards, at);
  const { needs: n } = card;
  if (!n) return [];
  const here = cardIn(frame, at);
  const out: ConstraintDraft[] = [];
  const { boards } = n;
  if (boards) {
    const words = boards.map((b) => (b.revisions ? `${b.board} revision ${b.revisions.join(", ")}` : b.board)).join(", or ");
    out.push(
      ...never(frame, fact("needs-board", `${card.name} works on ${words} only.`, ref("card", card.id, "/needs/boards")), [
        here,
        onRevisions(frame, (r) => !boards.some((b) => b.board === board.id && (!b.revisions || b.revisions.includes(r)))),
      ]),
    );
  }
  const inModes = (says: string, pointer: string, fails: Holds): ConstraintDraft[] => {
    const told = fact("needs-memory", says, ref("card", card.id, pointer));
    const modes = modesNeeding(frame, at, "memory-size").map(({ at: m, holds }) => ({ m, when: [here, holds, modeKept(frame, m)] }));
    if (!knowsMachineMemory(frame)) return memoryUnknown(frame, told, ...modes.map(({ when }) => when));
    return modes.flatMap(({ m, when }) => refusedByMemory(frame, told, memoryHolds(frame, m, fails, at), when));
  };
  const { memory_at_least: least, memory_at_most: most } = n;
  if (least !== undefined)
    out.push(
      ...inModes(`${card.name} needs at least ${sizeText(bytes(least))} of memory.`, "/needs/memory_at_least", lessThan(bytes(least))),
    );
  if (most !== undefined)
    out.push(
      ...inModes(`${card.name} fails with more than ${sizeText(bytes(most))} of memory.`, "/needs/memory_at_most", moreThan(bytes(most))),
    );
  if (n.clock_at_most_MHz !== undefined) {
    const [limit, clock] = [known(n.clock_at_most_MHz), known(board.clock_MHz)];
    const refs = [ref("card", card.id, "/needs/clock_at_most_MHz"), ref("board", board.id, "/clock_MHz")];
    const modes = modesNeeding(frame, at, "clock").map(({ at: m, holds }) => [here, holds, modeKept(frame, m)]);
    if (limit === unknown || clock === unknown) {
      const how =
        typeof n.clock_at_most_MHz === "object" && n.clock_at_most_MHz.find
          ? n.clock_at_most_MHz.find
          : "Run it for an hour, warm, with a memory test, and note the bus clock.";
      const says = `How fast a bus ${card.name} follows is not known; ${board.name} runs at ${clock === unknown ? "an unknown clock" : `${clock} MHz`}.`;
      out.push(...unsettled(frame, fact("needs-clock", says, ...refs), how, ...modes));
    } else if (clock > limit) {
      const says = `${card.name} follows at most ${limit} MHz; ${board.name} runs at ${clock} MHz.`;
      out.push(...never(frame, fact("needs-clock", says, ...refs), ...modes));
    }
  }
  (n.rails ?? []).forEach((rail, i) => {
    const lacks = onRevisions(frame, (r) => !board.rails.some((l) => l.rail === rail && (!l.revisions || l.revisions.includes(r))));
    out.push(
      ...never(
        frame,
        fact(
          "rails",
          `${card.name} needs ${rail} V, which ${board.name} does not have.`,
          ref("card", card.id, `/needs/rails/${i}`),
          ref("board", board.id, "/rails"),
        ),
        [here, lacks],
      ),
    );
  });
  return out;
}

function ofCards(frame: Frame, at: number): ConstraintDraft[] {
  const { card, as } = itemAt(frame.question.cards, at);
  return (card.needs?.cards ?? []).flatMap((need, i): ConstraintDraft[] => {
    const names = need.any_of.map((id) => frame.question.catalogue.cards.get(id)?.name ?? id);
    const told = fact(
      "needs-card",
      `${card.name} needs ${names.join(" or ")} running beside it: ${need.why}`,
      ref("card", card.id, `/needs/cards/${i}`),
    );
    const rules = modesNeeding(frame, at, "cards").flatMap(({ at: m, holds }) => {
      const out = { variable: itemAt(frame.cards, at).slot, values: [frame.question.slots.length] };
      const off = { variable: itemAt(frame.firmware, m), values: [frame.question.versions.length] };
      const letsGo = complement(frame.variables, holds);
      // A card that the mode leaves out helps all the same where nothing can switch it off: then only in such revisions.
      const helpers = eachCard(frame)
        .filter(({ asked: other }) => need.any_of.includes(other.card.id) && other.as !== as)
        .map((h) => ({ ...h, runs: runsIn(frame, m, h.at) }))
        .filter(({ runs }) => runs.values.length > 0)
        .map((h) => [cardIn(frame, h.at), ...(always(frame, h.runs) ? [] : [h.runs])]);
      const oneOfEach = helpers.reduce<Literal[][]>((all, both) => all.flatMap((head) => both.map((l) => [...head, l])), [[]]);
      return oneOfEach.map((some) => ({ kind: "clause" as const, literals: [out, off, letsGo, ...some] }));
    });
    return rules.length === 0 ? [] : [{ kind: "sure", fact: told, rules }];
  });
}

function ofSlot(frame: Frame, at: number): ConstraintDraft[] {
  const { card } = itemAt(frame.question.cards, at);
  const { board } = frame.question;
  if (!card.needs?.bus_master) return [];
  const refs = [ref("card", card.id, "/needs/bus_master"), ref("board", board.id, "/slots")];
  const able = (s: (typeof board.slots)[number]) => known(s.bus_master);
  return [
    ...never(
      frame,
      fact(
        "needs-bus-master",
        `${card.name} is a bus master; only ${
          board.slots
            .filter((s) => able(s) === true)
            .map((s) => s.id)
            .join(", ") || "no slot"
        } of ${board.name} is known to take one.`,
        ...refs,
      ),
      [inSlot(frame, at, (s) => able(s) === false)],
    ),
    ...board.slots.flatMap((slot) =>
      able(slot) === unknown
        ? unsettled(
            frame,
            fact("needs-bus-master", `Whether a bus master works in ${slot.id} of ${board.name} is not known.`, ...refs),
            `Trace the bus-request line from ${slot.id} to the arbiter, or try it with a known good card.`,
            [inSlot(frame, at, (s) => s.id === slot.id)],
          )
        : [],
    ),
  ];
}
