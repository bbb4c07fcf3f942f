// A build: a machine with choices filled in. Every choice left out is a hole the planner fills.
// With a result it is a tested build: one form for the question and for the answer.
import { type Static, Type } from "@sinclair/typebox";
import { flag, head, idOf, list, mark, oneOf, optional, size, strict, text, when, whole, wholeOf } from "./common.js";

const positions = Type.Record(Type.String(), mark("Position."), { description: "Setting id: position." });

export const BuildCard = strict("A card of the machine.", {
  card: idOf("card", "the card"),
  as: optional(mark("Name of this copy, when the machine has two of one kind. A copy without it is called by its card's id.")),
  revision: optional(mark("Its revision; a hole when left out.")),
  slot: optional(mark("Its slot; a hole when left out.")),
  settings: optional(positions),
});
export type BuildCard = Static<typeof BuildCard>;

export const Mode = strict("One way to run the machine.", {
  id: mark("Short name."),
  name: optional(text("What it is for.")),
  firmware: optional(mark("Firmware version; a hole when left out.")),
  cards: optional(
    Type.Array(
      mark(
        "A copy by its name: what it has after as, or its card's id when it has none. A card's id that no copy is called by: all its copies.",
      ),
      {
        description:
          "Cards switched on in this mode; left out: all; an empty list, []: none. A card that nothing can switch off runs all the same.",
      },
    ),
  ),
  on_or_off: optional(
    list(
      mark("A copy by its name; a card's id that no copy is called by: all its copies."),
      "Cards of which it does not matter whether they are on in this mode: the planner takes them as on or off, whichever works and changes least between the modes. They are not among those of the field cards. A tested build leaves nothing open.",
    ),
  ),
  safest: optional(flag("The mode the machine should fall into when a wire breaks.")),
});
export type Mode = Static<typeof Mode>;

const copyMark = mark("A copy by its name; a card's id that no copy is called by: all its copies.");

export const Wishes = strict(
  "What is wanted of the machine where one way to run it may not do: the planner finds the fewest ways that grant it. Without wishes every card is on in one way at least.",
  {
    together: optional(
      list(
        strict("Something that one way must have.", {
          cards: optional(list(copyMark, "Cards that are on in it at the same time.")),
          firmware: optional(mark("The firmware version it runs.")),
        }),
        "What must be had together, in some way.",
      ),
    ),
    always: optional(list(copyMark, "Cards that are on in every way.")),
    alone: optional(
      list(
        copyMark,
        "Cards only ever needed by themselves: where one is on, every other card that can be switched off is off, but for those that are always on.",
      ),
    ),
    ways_at_most: optional(whole("Most ways that would be put up with.", 1)),
  },
);
export type Wishes = Static<typeof Wishes>;

export const ModeResult = strict("What was seen in one mode.", {
  mode: mark("The mode."),
  outcome: oneOf(["worked", "failed", "partly"], "What came of it."),
  symptoms: optional(list(text("What was seen."), "Symptoms.")),
  notes: optional(text("More.")),
});

export const Result = strict(
  "What came of it on the bench. A result that worked proves that machine, as it was: board revision, memory, cards with revision, slot and settings, and in each mode the firmware and the cards that were on, all written down. Exactly that machine is not held back by figures nobody wrote down nor by suspected conflicts, unless another bench had it fail; a confirmed conflict and a clash of the records stand against it all the same. A machine that differs in one respect is judged as if it had not been tested.",
  {
    by: text("Who tested it."),
    date: when("When."),
    outcome: oneOf(["worked", "failed", "partly"], "As a whole."),
    hours: optional(wholeOf("h", "Hours it ran.")),
    modes: optional(list(ModeResult, "Mode by mode.")),
    symptoms: optional(list(text("What was seen."), "Symptoms, in plain words.")),
    faults_open: optional(list(text("A fault."), "Faults left open.")),
    conflicts: optional(list(idOf("conflict", "a conflict record"), "Conflict records that explain what went wrong.")),
    remedies: optional(list(text("What was done."), "Remedies that were taken.")),
    open_question: optional(text("Why the result and the rules disagree, as far as anyone knows; declares the disagreement as known.")),
    photo: optional(
      text(
        "A picture: a file in the folder photos (photos/lever.jpg) or an address, then a comma and whose it is; or in words where it can be seen.",
      ),
    ),
  },
);
export type Result = Static<typeof Result>;

export const Build = strict("A machine with choices filled in; with a result, a tested build.", {
  ...head,
  board: idOf("board", "the board"),
  revision: optional(
    Type.Union([mark("The revision."), list(mark("A revision."), "One of these.")], {
      description: "Board revision; a hole when left out.",
    }),
  ),
  memory: optional(size("Main memory fitted; a hole when left out.")),
  firmware: optional(idOf("firmware", "the firmware family; the board's first when left out")),
  cards: Type.Array(BuildCard, { description: "Cards of the machine." }),
  modes: optional(list(Mode, "Modes; left out: one mode with every card on.")),
  wishes: optional(Wishes),
  at_hand: optional(
    strict("What the owner has already; it costs nothing.", {
      firmware: optional(list(mark("A version."), "Firmware versions.")),
      cards: optional(
        list(
          Type.Union(
            [
              idOf("card", "a card, of which one is at hand"),
              strict("Several of one card.", { card: idOf("card", "the card"), count: whole("How many of it.", 1) }),
            ],
            { description: "A card, one of it; or card and count." },
          ),
          "Cards, beside those that stand in the machine.",
        ),
      ),
      parts: optional(list(idOf("part", "a part"), "Parts.")),
    }),
  ),
  stands: optional(
    strict("The machine as it stands now; changes are counted from it.", {
      revision: optional(mark("Board revision.")),
      memory: optional(size("Memory fitted.")),
      firmware: optional(mark("Firmware version.")),
      cards: optional(list(BuildCard, "Cards in it, with slots and settings.")),
    }),
  ),
  switch: optional(
    strict("Parts chosen for the switched machine; left out, the planner chooses.", {
      device: optional(idOf("part", "the memory device")),
      switch: optional(idOf("part", "the switch")),
      connector: optional(idOf("part", "the panel connector")),
      cable: optional(idOf("part", "the cable")),
    }),
  ),
  result: optional(Result),
});
export type Build = Static<typeof Build>;
