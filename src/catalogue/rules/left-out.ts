// What the planner must know and a record leaves out: no answer can be sure before it is written down, if only as none, 0 or unknown.
import { type Board, type Bus, type Card, listed, type ResourceKind, resourceKinds } from "../../records/index.js";
import { type ClaimSite, claimSites, fixedSites } from "../claims.js";
import { type Ref, ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";
import { followsSlot } from "../slot-windows.js";
import { mainMemory, mainMemoryLiesAnywhere, unsaidOfCard, unsaidOfPart } from "../unsaid.js";
import { lacksSpace, mayBeMain } from "../windows.js";

export const leftOut: Rule = {
  name: "left-out",
  says: "Cards and boards say all that decides: what they take of every kind, a board its own current and its limits.",
  why: "What is left out is not none: nobody has written it down, so every machine that hangs on it is answered with not known.",
  mend: "Write what it takes; write none, or 0 for a current, where it takes nothing, and unknown where nobody knows.",
  scope: ["card", "board"],
  *check({ catalogue }): Iterable<Draft> {
    for (const card of catalogue.cards.values()) {
      const bus = catalogue.buses.get(card.bus);
      if (!bus) continue;
      for (const gap of unsaidOfCard(card, bus)) {
        const kinds = gap.kinds.filter((kind) => !saysUnknown(card, gap.path, kind));
        const at = ref("card", card.id, ...gap.path);
        if (kinds.length > 0) yield* told(kinds, "The card", at, gap.path.at(-2) === "positions");
      }
      yield* perhapsMain(card);
      yield* windowsWithoutSpace(bus, "card", card, claimSites(card));
    }
    for (const card of catalogue.cards.values())
      for (const { id, name } of catalogue.buses.get(card.bus)?.chains ?? []) {
        const silent = card.chain === undefined || (typeof card.chain === "object" && card.chain[id] === undefined);
        if (!silent) continue;
        yield {
          level: "note",
          says: `The card does not say what it does on the ${name}; that is read as not known.`,
          at: card.chain ? ref("card", card.id, "chain") : ref("card", card.id),
          hint: card.chain ? `Add ${id}: passes, uses or breaks.` : "Add chain: passes, uses or breaks.",
        };
      }
    // A club without a card that must be bus master is not asked which slots take one.
    const masters = new Set([...catalogue.cards.values()].flatMap((card) => (card.needs?.bus_master ? [card.bus] : [])));
    const following = new Set(
      [...catalogue.cards.values()].flatMap((card) => (claimSites(card).some(({ claims }) => followsSlot(claims)) ? [card.bus] : [])),
    );
    for (const board of catalogue.boards.values()) {
      const bus = catalogue.buses.get(board.bus);
      for (const [i, part] of board.fixed.entries()) {
        const kinds = (bus ? unsaidOfPart(part, bus) : []).filter((kind) => part[kind] === undefined);
        if (kinds.length > 0) yield* told(kinds, "This part of the board", ref("board", board.id, "fixed", i), false);
      }
      if (board.memory !== "unknown" && mainMemoryLiesAnywhere(board))
        yield {
          level: "note",
          says: "The board does not say where its main memory lies; no card that answers at memory addresses can be called workable.",
          at: mainMemory(board) ? ref("board", board.id, "memory") : ref("board", board.id),
          hint: mainMemory(board)
            ? "Add base: 0 on most boards."
            : "Add memory with base and options; none where memory sits on cards, unknown when nobody knows.",
        };
      if (bus) yield* spaceless(bus, board);
      if (bus && following.has(bus.id))
        for (const [i, slot] of board.slots.entries())
          if (slot.number === undefined)
            yield {
              level: "note",
              says: `Slot ${slot.id} does not say which number it gives a card; where a card answers that follows the slot is not known there.`,
              at: ref("board", board.id, "slots", i),
              hint: "Add number: what the slot's own contacts say, or unknown.",
            };
      for (const [i, chain] of (board.chains ?? []).entries())
        if (chain.empty === undefined)
          yield {
            level: "note",
            says: `What an empty slot does to the ${nameOfChain(bus, chain.chain)} is not written down; that is read as not known.`,
            at: ref("board", board.id, "chains", i),
            hint: "Add empty: breaks, passes, jumper or plug.",
          };
      yield* limits(board, masters);
      for (const [i, rail] of board.rails.entries())
        if (rail.board_A === undefined)
          yield {
            level: "note",
            says: `What the board itself takes from ${rail.rail} V is not written down; what is left for cards is not known.`,
            at: ref("board", board.id, "rails", i),
            hint: "Add board_A in A: 0 when it takes nothing, unknown when nobody has measured it.",
          };
    }
  },
};

function* perhapsMain(card: Card): Iterable<Draft> {
  for (const { path, claims } of claimSites(card))
    for (const [i, window] of listed(claims.memory).entries())
      if (mayBeMain(window) === "perhaps")
        yield {
          level: "note",
          says: "The window does not say whether its bytes count as main memory; that is read as not known.",
          at: ref("card", card.id, ...path, "memory", i),
          hint: "Add main: true where firmware and programs use it with the board's memory, else false.",
        };
}

function* windowsWithoutSpace(bus: Bus, kind: "board" | "card", { id }: Board | Card, sites: readonly ClaimSite[]): Iterable<Draft> {
  for (const { path, claims } of sites)
    for (const [i, window] of listed(claims.memory).entries())
      if (lacksSpace(bus, window)) yield withoutSpace(bus, ref(kind, id, ...path, "memory", i));
}

/** Windows of a board on a bus with several address spaces, its sockets and main memory among them. */
function* spaceless(bus: Bus, board: Board): Iterable<Draft> {
  yield* windowsWithoutSpace(bus, "board", board, fixedSites(board));
  for (const [i, { window }] of board.firmware_sockets.entries())
    if (lacksSpace(bus, window)) yield withoutSpace(bus, ref("board", board.id, "firmware_sockets", i, "window"));
  const main = mainMemory(board);
  if (main && lacksSpace(bus, main)) yield withoutSpace(bus, ref("board", board.id, "memory"));
}

function withoutSpace(bus: Bus, at: Ref): Draft {
  return {
    level: "note",
    says: `The window does not say which address space of ${bus.name} it lies in; that is read as not known.`,
    at,
    hint: `Add space: ${listed(bus.spaces)
      .map((s) => s.id)
      .join(", or ")}.`,
  };
}

function nameOfChain(bus: Bus | undefined, id: string): string {
  return bus?.chains?.find((c) => c.id === id)?.name ?? `chain ${id}`;
}

/** Limits: a number, any, or unknown. */
function* limits(board: Board, masters: ReadonlySet<string>): Iterable<Draft> {
  const missing = (at: Ref, field: string, what: string, unit: string): Draft => ({
    level: "note",
    says: `${what} is not written down; that is read as not known.`,
    at,
    hint: `Add ${field} in ${unit}: any where there is no limit, unknown when nobody has measured it.`,
  });
  for (const [i, slot] of board.slots.entries()) {
    const at = ref("board", board.id, "slots", i);
    if (slot.longest_mm === undefined) yield missing(at, "longest_mm", `How long a card slot ${slot.id} takes`, "mm");
    if (slot.bus_master === undefined && masters.has(board.bus))
      yield {
        level: "note",
        says: `Whether a bus master works in slot ${slot.id} is not written down; that is read as not known.`,
        at,
        hint: "Add bus_master: true, false, or unknown when nobody has tried it.",
      };
    if (slot.highest_mm === undefined) yield missing(at, "highest_mm", `How high a card slot ${slot.id} takes`, "mm");
  }
  for (const [i, rail] of board.rails.entries())
    if (rail.per_slot_A === undefined)
      yield missing(ref("board", board.id, "rails", i), "per_slot_A", `What one card may take from ${rail.rail} V`, "A");
  if (board.total_W === undefined) yield missing(ref("board", board.id), "total_W", "What the supply can give in all", "W");
}

function* told(kinds: readonly ResourceKind[], who: string, at: Ref, inPosition: boolean): Iterable<Draft> {
  const words = resourceKinds.filter((kind) => kinds.includes(kind));
  const where = inPosition ? " in this position, and another position of the setting does" : "";
  yield {
    level: "note",
    says: `${who} does not say what it takes of ${words.join(", ")}${where}; that is read as not known.`,
    at,
    hint: `Write what it takes, or none: ${words.map((kind) => `${kind}: none`).join(", ")}.`,
  };
}

/** A gap that is declared is no slip. */
function saysUnknown(record: unknown, path: readonly (string | number)[], kind: ResourceKind): boolean {
  let here = record;
  for (const step of path) here = (here as Record<string | number, unknown>)[step];
  return here === "unknown" || (typeof here === "object" && here !== null && (here as Record<string, unknown>)[kind] === "unknown");
}
