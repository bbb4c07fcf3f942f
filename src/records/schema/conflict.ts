// A known problem: when these conditions hold, this symptom, from this cause, with these remedies, on this evidence.
import { type Static, Type } from "@sinclair/typebox";
import { BoardMatch, FirmwareRange, flag, head, idOf, list, mark, oneOf, optional, size, strict, text, when, whole } from "./common.js";

export const conflictClasses = [
  "io-overlap",
  "io-alias",
  "mem-overlap",
  "rom-scan",
  "irq-dup",
  "irq-alias",
  "irq-unreachable",
  "dma-dup",
  "dma-limit",
  "timing",
  "power-rail",
  "power-neg",
  "inrush",
  "mech-width",
  "mech-bracket",
  "firmware-min",
  "firmware-max",
  "socket-wiring",
  "width-order",
  "bank-float",
  "bank-live",
  "ram-hole",
  "cache-shadow",
  "termination",
  "mirror-drawing",
  "clone-rev",
  "heat",
  "ground",
] as const;

export const CardCondition = strict("A card of the machine, and how it stands.", {
  card: idOf("card", "the card"),
  revisions: optional(list(mark("A revision."), "Only these revisions.")),
  settings: optional(
    Type.Record(Type.String(), Type.Union([mark("Position."), Type.Array(mark("Position."), { minItems: 1 })]), {
      description: "Setting id: position, or a list of positions; all must hold, and one that this revision of the card lacks does not.",
    }),
  ),
  slots: optional(list(mark("A slot."), "Only in these slots of the board.")),
  edge: optional(mark("Only in slots of this edge.")),
  even_disabled: optional(flag("Also when the card is switched off (default: only while it runs).")),
});
export type CardCondition = Static<typeof CardCondition>;

export const Remedy = strict("A way out.", {
  says: text("What to do, in a sentence that begins with a verb."),
  leaves: oneOf(["nothing", "cosmetic", "degrades"], "What remains after it."),
  loss: optional(text("What is lost, when something remains.")),
  costs: oneOf(["jumper", "slot", "firmware", "part", "solder", "trace-cut"], "The dearest thing it takes."),
  part: optional(idOf("part", "the part it needs")),
});
export type Remedy = Static<typeof Remedy>;

export const EvidenceNote = strict("What it rests on.", {
  grade: oneOf(
    ["bench", "documented", "reported"],
    "bench: a dated test; documented: a maker's or club's paper; reported: someone said so.",
  ),
  says: text("What was seen or read."),
  by: optional(text("Who.")),
  date: optional(when("When.")),
  build: optional(idOf("build", "the tested build it was seen in")),
});

export const Conflict = strict("A known problem.", {
  ...head,
  class: oneOf(conflictClasses, "Class of conflict."),
  when: strict("Conditions; all that are given must hold at once, in one mode.", {
    boards: optional(list(BoardMatch, "Any one of these boards.")),
    firmware: optional(list(FirmwareRange, "Any one of these spans.")),
    cards: optional(list(CardCondition, "All of these cards; one named twice means two copies.")),
    adjacent: optional(
      flag(
        "The first two cards stand side by side: a slot that one takes is next to a slot that the other takes; says nothing where fewer than two are named.",
      ),
    ),
    memory_at_least: optional(size("Main memory of at least this.")),
    memory_at_most: optional(size("Main memory of at most this.")),
    modes_at_least: optional(whole("The machine has at least this many modes (a switch is fitted).", 1)),
  }),
  effect: oneOf(
    ["blocks", "degrades", "cosmetic"],
    "blocks: does not work, unless one of the remedies is taken; degrades: works with a loss; cosmetic: only looks odd.",
  ),
  loss: optional(text("What is lost, when it degrades.")),
  symptoms: list(text("What people see, in their words."), "Symptoms, in the words people search for."),
  cause: text("Why it happens; say so when it is not known."),
  remedies: optional(list(Remedy, "Ways out, cheapest first.")),
  status: oneOf(
    ["confirmed", "suspected", "disproved"],
    "confirmed: it is so. suspected: a block leaves the answer open until the test is made and rules nothing out, whatever remedies there are; a loss or an oddity is told as if it were so. disproved is history.",
  ),
  settle: optional(text("The test that would settle it, when suspected.")),
  evidence: list(EvidenceNote, "What it rests on."),
});
export type Conflict = Static<typeof Conflict>;
