// What a card or board takes of the machine's resources, as lines of text: ports, memory, interrupts, DMA.
import { unsaidOfCard, unsaidOfPart } from "../catalogue/index.js";
import { type Board, type Bus, bytes, type Card, type Claims, hex, listed, type MemoryWindow, sizeText } from "../records/index.js";
import { unsaidOwner, unsaidText } from "../words/index.js";
import { spanText } from "./common.js";

export interface ClaimLine {
  readonly kind: "ports" | "memory" | "interrupt" | "DMA";
  readonly what: string;
  readonly note?: string | undefined;
}

const answers: Readonly<Record<string, string>> = { ram: "RAM", rom: "ROM", registers: "registers", "option-rom": "option ROM" };

export function claimLines(claims: Claims): readonly ClaimLine[] {
  return [
    ...listed(claims.io).map((w) => ({
      kind: "ports" as const,
      what: placeText(w),
      note: againText(w.decoded_bits),
    })),
    ...listed(claims.memory).map((w) => ({
      kind: "memory" as const,
      what: `${placeText({ ...w, size: bytes(w.size) })}${w.space === undefined ? "" : ` in ${w.space}`}`,
      note: [
        sizeText(bytes(w.size)),
        w.is ? answers[w.is] : "",
        w.main ? "counts as main memory" : "",
        againText(w.decoded_bits),
        ...overlayText(w),
      ]
        .filter(Boolean)
        .join(", "),
    })),
    ...listed(claims.interrupts).map((i) => ({
      kind: "interrupt" as const,
      what: i.line,
      note: [i.mode ? `${i.mode}-driven` : "", i.shareable ? "lets others share it" : ""].filter(Boolean).join(", ") || undefined,
    })),
    ...listed(claims.dma).map((d) => ({
      kind: "DMA" as const,
      what: d.channel,
      note: d.shareable ? "lets go of it when idle" : undefined,
    })),
  ];
}

/** "0x300–0x30F", or where it lies in each slot. */
function placeText(w: { readonly base: number; readonly size: number; readonly slot_step?: number }): string {
  const span = spanText(w.base, w.size);
  return w.slot_step === undefined ? span : `${span} plus ${hex(w.slot_step)} times the number of the slot`;
}

function againText(decoded: number | "unknown" | undefined): string | undefined {
  if (decoded === undefined) return undefined;
  return decoded === "unknown"
    ? "how many address bits it looks at is not known, so it may answer again further up"
    : `looks at ${decoded} address bits, so it answers again every ${hex(2 ** decoded)}`;
}

function overlayText({ asserts, yields_to: yields, takes_turns: turns }: MemoryWindow): readonly string[] {
  return [
    ...(turns ? ["takes turns with others by software"] : []),
    ...(asserts === undefined
      ? []
      : [asserts === "unknown" ? "which overlay line it asserts is not known" : `asserts ${asserts} while it answers`]),
    ...(yields === undefined
      ? []
      : [yields === "unknown" ? "to which overlay line it yields is not known" : `keeps silent under ${yields.join(", ")}`]),
  ];
}

/** All of it in one line: "ports 0x300–0x30F, interrupt 5" */
export function claimText(claims: Claims): string {
  return (
    claimLines(claims)
      .map((c) => `${c.kind} ${c.what}`)
      .join(", ") || "nothing"
  );
}

/** What a card's record leaves open of what it takes, a sentence each, with the way to find it out. */
export function openOfCard(card: Card, bus: Bus | undefined): readonly string[] {
  if (!bus) return [];
  return unsaidOfCard(card, bus).map((gap) => withWay(unsaidText(gap.kinds, unsaidOwner(card.name, gap)), gap.find));
}

/** The same of one part of a board; empty when everything is written. */
export function openOfPart(part: Board["fixed"][number], board: Board, bus: Bus | undefined): string {
  const kinds = bus ? unsaidOfPart(part, bus) : [];
  return kinds.length > 0 ? withWay(unsaidText(kinds, `${part.name} of ${board.name}`), part.find) : "";
}

function withWay(says: string, find: string | undefined): string {
  return find === undefined ? says : `${says} ${find}`;
}
