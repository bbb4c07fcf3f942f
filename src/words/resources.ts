// The kinds of resource that things take, as people say them.
import type { Unsaid } from "../catalogue/index.js";
import type { Board, ResourceKind } from "../records/index.js";
import { listText } from "./text.js";

export const resourceWords: Readonly<Record<ResourceKind, string>> = {
  io: "ports",
  memory: "memory addresses",
  interrupts: "interrupt lines",
  dma: "DMA channels",
};

/** "Which ports and DMA channels Tallow bus tracer takes is not written down." */
export function unsaidText(kinds: readonly ResourceKind[], who: string): string {
  return `Which ${listText(kinds.map((kind) => resourceWords[kind]))} ${who} takes is not written down.`;
}

export function mainMemoryLies(board: Pick<Board, "name">): string {
  return `Where the main memory of ${board.name} lies is not written down.`;
}

/** A card's name, with the settings under which its record is silent. */
export function unsaidOwner(name: string, gap: Unsaid): string {
  const set = Object.entries(gap.settings).map(([id, positions]) => `${id} at ${listText(positions, "or")}`);
  return set.length > 0 ? `${name} with ${listText(set)}` : name;
}
