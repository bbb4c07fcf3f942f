// An expansion card: what it takes, what it needs, how it is set, how it is switched off.
import { type Static, Type } from "@sinclair/typebox";
import {
  amount,
  BoardMatch,
  ConditionalClaims,
  FirmwareRange,
  fact,
  flag,
  head,
  idOf,
  list,
  mark,
  OnRevisions,
  oneOf,
  optional,
  PositionClaims,
  size,
  strict,
  text,
  when,
  whole,
} from "./common.js";

export const CardRevision = strict("A revision of the card.", {
  id: mark("As marked."),
  date: optional(when("First seen.")),
  tell: text("How to tell it apart."),
  changes: optional(text("What changed.")),
});

export const Position = strict("One position of a setting.", {
  id: mark("Short name: the value it gives, or the marking."),
  how: optional(text("What to do with the jumper or switch: J3 1-2 closed.")),
  ...PositionClaims.properties,
});

export const Setting = strict("A jumper, switch or software setting.", {
  id: mark("As printed: J3, SW1-4."),
  name: text("What it sets."),
  by: oneOf(["jumper", "dip", "software", "solder"], "How it is set."),
  default: optional(mark("Position it left the factory with.")),
  positions: list(Position, "Every position it can take."),
  revisions: optional(
    list(
      mark("A revision of this record."),
      "Only these revisions have it, all when left out; on the others it takes nothing and is no choice.",
    ),
  ),
});
export type Setting = Static<typeof Setting>;

export const RailDraw = strict("Current taken from one rail.", {
  rail: mark("Rail of the bus."),
  idle_A: optional(fact(amount("A"), "Idle, in A.")),
  worst_A: fact(amount("A"), "Worst case, in A; unknown is never 0."),
  start_A: optional(fact(amount("A"), "At start-up, in A; told, not judged.")),
  basis: optional(oneOf(["measured", "claimed", "estimated"], "Where the figure comes from.")),
  revisions: optional(OnRevisions),
});

export const Needs = strict("What the card needs. Everything left out is not needed.", {
  firmware: optional(list(FirmwareRange, "Firmware it works with: any one of these spans.")),
  features: optional(list(mark("A feature id."), "Firmware features it needs, all of them.")),
  boards: optional(list(BoardMatch, "Boards it works on: any one of these. Left out: any board with its bus.")),
  memory_at_least: optional(size("Least main memory, on the board and on other cards together.")),
  memory_at_most: optional(size("Most main memory, on the board and on other cards together; above it the card fails.")),
  clock_at_most_MHz: optional(fact(amount("MHz"), "Fastest bus clock it follows.")),
  cards: optional(
    list(
      strict(
        "Another card it needs, running in the same mode, switched on or not to be switched off: any one of those named, and not this copy itself.",
        {
          any_of: list(idOf("card", "a card"), "Cards that will do."),
          why: text("What for."),
        },
      ),
      "Other cards it needs.",
    ),
  ),
  bus_master: optional(flag("Must stand in a slot where a bus master works.")),
  rails: optional(list(mark("A rail."), "Rails that must be there at all.")),
  other: optional(list(text("A need the rules do not judge (a drive, a cable, software)."), "What else you would have to get.")),
});
export type Needs = Static<typeof Needs>;

export const Enable = strict("How the card is switched off while it stays in its slot.", {
  by: oneOf(
    ["contacts", "setting"],
    "contacts: two or three points to wire to a switch; setting: one of its settings. A mode can switch the card off by contacts, or by a setting that software makes; a card that it cannot switch off runs in every mode.",
  ),
  sense: optional(oneOf(["closed-enables", "open-enables", "change-over"], "What enables it. change-over: common to one of two throws.")),
  points: optional(
    list(
      strict("A point to wire.", {
        id: mark("As printed: J9-1."),
        role: oneOf(
          ["a", "b", "common", "on", "off", "ground"],
          "a/b: the two ends of a simple contact; common/on/off: of a change-over; ground: its own ground.",
        ),
        current_mA: optional(amount("mA", "Current through it, in mA.")),
      }),
      "Points on the card that the switch is wired to.",
    ),
  ),
  revisions: optional(OnRevisions),
  setting: optional(mark("The setting, when it is one.")),
  off: optional(mark("Its position that switches the card off.")),
  releases: list(
    oneOf(["io", "memory", "interrupts", "dma", "firmware", "features", "clock", "cards", "chain", "memory-size"], "A resource or need."),
    "What it lets go of when off: io, memory, interrupts, dma as claimed; its need of firmware, features, clock, cards, memory-size; chain: it passes the chain on. It keeps its slot and its current always, and all else not listed here.",
  ),
});
export type Enable = Static<typeof Enable>;

export const Panel = strict("A lead the card brings to the outside.", {
  name: text("What the lead is for."),
  conductors: whole("Conductors it needs.", 1),
  signals: optional(list(mark("A signal."), "Signals, in the order of its header.")),
  current_A: optional(fact(amount("A"), "Most current in one conductor, in A.")),
  connector: optional(text("Connector on the card.")),
});

const onChain = ["uses", "passes", "breaks", "unknown"] as const;

export const Card = strict("An expansion card.", {
  ...head,
  maker: text("Maker as marked."),
  model: text("Model as marked."),
  years: optional(text("When it was made.")),
  does: list(mark("A word."), "What it is for: disk, memory, network, trace, tape, serial, graphics, sound, clock, tool."),
  bus: idOf("bus", "the bus it is made for"),
  edge: mark("Its edge (edge id of the bus)."),
  revisions: optional(list(CardRevision, "Revisions, oldest first; left out when only one is known.")),
  room: strict("The room it takes.", {
    length_mm: fact(amount("mm"), "Length in mm."),
    height_mm: fact(amount("mm"), "Height in mm."),
    slots: optional(whole("Slots it takes, counted upwards from its own (default 1); the board must have them all.", 1)),
    opening: optional(flag("It uses the rear opening of its slot.")),
  }),
  power: list(
    RailDraw,
    "Current per rail; several entries for one rail add up. Each rail named for a revision must be there on the board.",
  ),
  claims: optional(
    Type.Union([list(ConditionalClaims, "Entries that hold together."), oneOf(["none", "unknown"], "Or one of these words.")], {
      description:
        "Resources it takes whatever the settings, or under settings taken together; none: it takes nothing at all. Left out, unknown, or where no entry holds: what it takes is not known, and no machine with it is called workable untested.",
    }),
  ),
  settings: optional(list(Setting, "Jumpers, switches and software settings.")),
  impossible: optional(
    list(
      strict("Positions that cannot stand together.", {
        when: Type.Record(Type.String(), mark("Position."), {
          description: "Setting id: position; all together, on revisions that have these settings.",
        }),
        why: text("Why not."),
      }),
      "Positions of several settings that exclude one another.",
    ),
  ),
  needs: optional(Needs),
  chain: optional(
    Type.Union(
      [
        oneOf(onChain, "The same on every chain."),
        Type.Record(Type.String(), oneOf(onChain, "On this chain."), { description: "Chain id of the bus: what it does on it." }),
      ],
      {
        description:
          "What it does on the chains of the bus: uses (and passes on), passes, breaks. One word for all of them, or a word for each. Left out, or a chain that is not named: not known.",
      },
    ),
  ),
  enable: optional(Enable),
  panel: optional(list(Panel, "Leads it brings to the outside.")),
  termination: optional(text("Terminators: where, which kind.")),
  cooling: optional(text("What it needs of air.")),
});
export type Card = Static<typeof Card>;
