// Building blocks shared by every record kind: facts that may be unknown, addresses, ranges, claims.
// Each block is a JSON Schema (draft 2020-12) with its TypeScript type inferred from it.
import { type Static, type TObject, type TProperties, type TSchema, Type } from "@sinclair/typebox";
import type { Unit } from "../quantity.js";
import type { ResourceKind } from "./resource-kinds.js";

/** An object that takes no fields but its own. `description` feeds editors and the field guide. */
export function strict<P extends TProperties>(description: string, properties: P): TObject<P> {
  return Type.Object(properties, { additionalProperties: false, description });
}

/** One of a closed set of words, as one JSON Schema `enum`, so that a bad word is one finding. */
export function oneOf<const W extends readonly string[]>(words: W, description: string) {
  return Type.Unsafe<W[number]>({ type: "string", enum: [...words], description });
}

export function list<S extends TSchema>(of: S, description: string) {
  return Type.Array(of, { description, minItems: 1 });
}

/** Exactly two of a thing. Written as a list of length two, which every JSON Schema draft reads alike. */
export function pair<S extends TSchema>(of: S, description: string) {
  return Type.Unsafe<[Static<S>, Static<S>]>({ type: "array", items: of, minItems: 2, maxItems: 2, description });
}

export const optional = Type.Optional;

export function text(description: string) {
  return Type.String({ description, minLength: 1 });
}

/** A count of things. */
export function whole(description: string, minimum = 0) {
  return Type.Integer({ description, minimum });
}

/** A whole number of something that has a unit. */
export function wholeOf(unit: Unit, description: string, minimum = 0) {
  return Type.Integer({ description, minimum, unit });
}

/** A place in an address space. */
export function address(description: string) {
  return wholeOf("address", description);
}

/** A measure, in the unit its field names; never below zero. */
export function amount(unit: Unit, description: string = unit) {
  return Type.Number({ description, minimum: 0, unit });
}

/** The most of something, or the word `any` where there is no limit. Left out is not "any": nobody has written it down. */
export function most(unit: Unit, description: string) {
  return Type.Union([amount(unit, description), Type.Literal("any")], { description });
}

/** A measure that may lie below zero. */
export function signed(unit: Unit, description: string) {
  return Type.Number({ description, unit });
}

export function flag(description: string) {
  return Type.Boolean({ description });
}

/** Identifier of a record: lower-case words joined by hyphens; also the file's name. */
export const Id = Type.String({
  pattern: "^[a-z0-9]+(-[a-z0-9]+)*$",
  description: "Identifier: lower-case words and digits joined by hyphens, the same as the file name.",
});

/** Kinds of record that other records name. Written out, since the schemas of the kinds are made from this file. */
export type ReferredKind = "bus" | "board" | "firmware" | "card" | "conflict" | "build" | "part";

/** A reference: the id of another record. `refersTo` says of which kind, so that whoever looks for references finds every one. */
export function idOf(kind: ReferredKind, what: string) {
  return Type.String({ pattern: "^[a-z0-9]+(-[a-z0-9]+)*$", description: `Identifier of ${what}.`, refersTo: kind });
}

/** Identifier inside a record (slot, setting, revision, line): as it is printed on the thing. */
export function mark(description: string) {
  return Type.String({ pattern: "^[A-Za-z0-9+./_-][A-Za-z0-9+./_ -]*$", description, maxLength: 40 });
}

/** Dates are written YYYY, YYYY-MM or YYYY-MM-DD: as exact as is known. */
export function when(description: string) {
  return Type.String({ pattern: "^[0-9]{4}(-[0-9]{2}(-[0-9]{2})?)?$", description });
}

export function hexDigest(digits: number, description: string) {
  return Type.String({ pattern: `^[0-9a-f]{${digits}}$`, description });
}

/** Bytes: a whole number (0x4000) or a number with K or M (16K; K = 1024). */
export function size(description: string) {
  return Type.Union([Type.Integer({ minimum: 1, unit: "bytes" }), Type.String({ pattern: "^[1-9][0-9]*[KM]$" })], { description });
}

/**
 * A fact that may be unknown. Three ways to write it:
 *   350                                    the plain value
 *   unknown                                not known, never read as 0
 *   {is: 350, source: maker-manual}        the value (or unknown) with where it comes from, or how to find it out
 */
export function fact<S extends TSchema>(value: S, description: string) {
  return Type.Union(
    [
      value,
      Type.Literal("unknown"),
      strict("A fact with its source, or with the way to find it out.", {
        is: Type.Union([value, Type.Literal("unknown")], { description: "The value, or the word unknown." }),
        source: optional(text("Where it comes from: a source id of this record, or words.")),
        find: optional(text("How to find it out when it is unknown: what to measure, which marking to read.")),
      }),
    ],
    { description },
  );
}

/** Where a record's facts come from. */
export const Source = strict("Where facts of this record come from.", {
  id: mark("Short name that facts of this record refer to."),
  kind: oneOf(
    [
      "manual",
      "schematic",
      "data-sheet",
      "standard",
      "measured",
      "bench",
      "letter",
      "club-night",
      "hearsay",
      "photo",
      "common-practice",
      "memory",
    ],
    "What sort of source it is; it decides how much weight a fact carries.",
  ),
  says: text("Title, page, date: enough for somebody else to find it."),
  by: optional(text("Who wrote or measured it.")),
  date: optional(when("When.")),
  url: optional(Type.String({ description: "Address, when it is public.", pattern: "^https?://" })),
});
export type Source = Static<typeof Source>;

/** Limits a fact to some revisions of the record it stands in; left out, it holds for all of them. */
export const OnRevisions = list(mark("A revision of this record."), "Holds for these revisions only; all when left out.");

/** How many low address bits a thing looks at. With fewer than there are, it answers again at aliases. */
function decodedBits(description: string) {
  return optional(Type.Union([whole("So many.", 1), Type.Literal("unknown")], { description }));
}

/** Where a window begins that follows the slot of its card. */
const slotStep = optional(
  wholeOf(
    "address",
    "The window follows the slot (geographic address): it begins at base plus this many addresses times the number of the slot. Left out: it begins at base in every slot.",
    1,
  ),
);

/** A run of addresses. Ports of a card that decodes few bits answer again at aliases. */
export const IoWindow = strict("A run of port addresses.", {
  base: address("First port, usually written in hex (0x300)."),
  slot_step: slotStep,
  size: whole("Number of ports.", 1),
  decoded_bits: decodedBits(
    "How many low address bits the card looks at; left out: all of them. 10 means it answers again every 0x400. unknown where nobody has looked: it may then answer again further up.",
  ),
});
export type IoWindow = Static<typeof IoWindow>;

/** Which of the address spaces of a bus a window lies in. */
export const inSpace = optional(
  mark(
    "The address space of the bus it lies in: windows meet only in one space. A thing that answers in two has two windows. Left out: the only one, or not known, where the bus names several.",
  ),
);

export const MemoryWindow = strict("A run of memory addresses.", {
  base: address("First address, usually written in hex (0xD0000)."),
  slot_step: slotStep,
  size: size("Length in bytes (0x4000 or 16K)."),
  space: inSpace,
  is: optional(oneOf(["ram", "rom", "registers", "option-rom"], "What answers there.")),
  decoded_bits: decodedBits(
    "How many low address bits it looks at; left out: all of them. 16 means it answers again every 64K, where the bus has more lines. unknown where nobody has looked: it may then answer again further up.",
  ),
  asserts: optional(
    mark(
      "Overlay line of the bus that it pulls while it answers, so that what yields to the line keeps silent under it. unknown where nobody has looked. Left out: none.",
    ),
  ),
  yields_to: optional(
    Type.Union([list(mark("An overlay line."), "Lines."), Type.Literal("unknown")], {
      description:
        "Overlay lines of the bus under which it keeps silent: it may lie where another window asserts one of them, and only there. Two that yield still meet. unknown where nobody has looked. Left out: none.",
    }),
  ),
  main: optional(
    flag(
      "Its bytes are main memory: they count with those on the board and on other cards. Left out: not known, where ram answers or nothing is said of what does; else no.",
    ),
  ),
  takes_turns: optional(
    flag(
      "It answers only while its software opens it, and that software closes it before another is opened; two such windows may lie at one place (default no).",
    ),
  ),
});
export type MemoryWindow = Static<typeof MemoryWindow>;

export const InterruptClaim = strict("Use of an interrupt line.", {
  line: mark("The line as the bus names it, or one of its other names."),
  mode: optional(
    oneOf(
      ["edge", "level"],
      "How the card drives it; left out: as the bus triggers. A card that drives it by edges shares it with nobody.",
    ),
  ),
  shareable: optional(flag("The card lets go of the line between requests and its software looks for others (default no).")),
});
export type InterruptClaim = Static<typeof InterruptClaim>;

export const DmaClaim = strict("Use of a DMA channel.", {
  channel: mark("The channel as the bus names it."),
  shareable: optional(flag("The card lets go of the channel when idle (default no).")),
});
export type DmaClaim = Static<typeof DmaClaim>;

/**
 * The resources of one kind that a thing takes. Four ways to write it: a list; `none`; `unknown`; `settings` where allowed. Left out is not
 * none: nobody has written it down.
 */
function taken<S extends TSchema, const W extends readonly string[]>(of: S, words: W, description: string) {
  return optional(Type.Union([list(of, description), oneOf(words, "Or one of these words.")], { description }));
}

function claimFields<const W extends readonly string[]>(words: W, leftOut: string) {
  return {
    io: taken(IoWindow, words, `Port windows it answers at, or none; ${leftOut}`),
    memory: taken(MemoryWindow, words, `Memory windows it answers at, or none; ${leftOut}`),
    interrupts: taken(InterruptClaim, words, `Interrupt lines it drives, or none; ${leftOut}`),
    dma: taken(DmaClaim, words, `DMA channels it uses, or none; ${leftOut}`),
  };
}

const find = optional(text("How to find out what is unknown here: what to measure, which sheet to read."));

const plain = ["none", "unknown"] as const;

/** What a part of the board takes. */
export const Claims = strict("Resources taken: ports, memory, interrupts, DMA.", {
  ...claimFields(plain, "left out: not known, where the bus has any."),
  find,
});

/** What one position of a setting adds. */
export const PositionClaims = strict(
  "Resources taken in this position.",
  claimFields(
    plain,
    "left out: none, where no position of this setting says anything of this kind; else not known. Where a position takes some, the others say none.",
  ),
);

/** What a card takes whatever its settings, or when the named settings stand so. */
export const ConditionalClaims = strict("Resources taken when the named settings stand so. Each entry says all four kinds.", {
  when: optional(
    Type.Record(Type.String(), Type.Union([mark("Position."), Type.Array(mark("Position."), { minItems: 1 })]), {
      description:
        "Setting id: position, or a list of positions. All must hold; one that this revision of the card lacks never does. Left out: always.",
    }),
  ),
  revisions: optional(OnRevisions),
  ...claimFields(
    [...plain, "settings"],
    "settings: only what the settings say in their positions; left out: not known, where the bus and the card's edge have any.",
  ),
  find,
  source: optional(text("Where it comes from.")),
});
export type ConditionalClaims = Static<typeof ConditionalClaims>;

/** What any of them says: a part of the board, a card, a position of a setting. */
export type Claims = Pick<ConditionalClaims, ResourceKind>;

/** A span of firmware versions over the order the firmware record declares. */
export const FirmwareRange = strict("A span of versions of one firmware family, in the declared order.", {
  family: idOf("firmware", "the firmware family"),
  from: optional(mark("First version that belongs to it.")),
  upTo: optional(mark("Last version that belongs to it.")),
  before: optional(mark("First version that no longer belongs to it.")),
  except: optional(list(mark("A version."), "Versions inside the span that do not belong to it.")),
  only: optional(list(mark("A version."), "Just these versions.")),
});
export type FirmwareRange = Static<typeof FirmwareRange>;

export const BoardMatch = strict("A board, perhaps only some of its revisions.", {
  board: idOf("board", "the board"),
  revisions: optional(list(mark("A revision of that board."), "Only these revisions.")),
});
export type BoardMatch = Static<typeof BoardMatch>;

/** Fields every record opens with. */
export const head = {
  id: Id,
  name: text("Name as people say it."),
  summary: optional(text("One sentence a friend would say about it.")),
  sources: optional(list(Source, "Where the facts come from.")),
  allow: optional(
    list(
      strict("A finding this record is allowed to have for now.", {
        rule: text("Name of the house rule."),
        reason: text("Why it is allowed."),
        until: optional(when("When it should be looked at again.")),
      }),
      "Exceptions to house rules; each becomes a finding itself once it is no longer needed.",
    ),
  ),
  notes: optional(text("Anything else worth knowing.")),
};
