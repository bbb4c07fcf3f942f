// The drawings of a board as it comes, without cards: its slots, what it takes of the address spaces, the load on its rails.
import { addressMap, type MapWindow, railBars, slotPlan } from "../drawing/index.js";
import { type Board, bytes, known, sizeText, unknown } from "../records/index.js";
import { listText } from "./common.js";
import { type Figure, figure } from "./marks.js";

export function planSlots(board: Board) {
  return board.slots.map((s) => ({ id: s.id, edge: s.edge, position: s.position, longest_mm: known(s.longest_mm), opening: s.opening }));
}

export function slotFigure(board: Board): Figure {
  return figure((prefix, width) => slotPlan({ board: board.name, slots: planSlots(board), cards: [] }, prefix, width), `slots-${board.id}`);
}

function owner(fixed: Board["fixed"][number]): string {
  const when = fixed.when_memory
    ? `with ${listText(
        fixed.when_memory.map((m) => sizeText(bytes(m))),
        "or",
      )}`
    : "";
  const on = fixed.revisions ? `revision ${listText(fixed.revisions)}` : "";
  return [fixed.name, on, when].filter(Boolean).join(", ");
}

function mainMemory(board: Board): readonly MapWindow[] {
  const most = Math.max(0, ...(board.memory?.options ?? []).map((o) => bytes(o)));
  if (most === 0) return [];
  const base = board.memory?.base ?? 0;
  const taken = board.fixed.flatMap((f) => f.memory ?? []).map((w) => w.base);
  // Memory beyond the first thing in its way is reached otherwise; the board's own record says how.
  const end = Math.min(base + most, ...taken.filter((t) => t > base));
  return [{ base, size: end - base, owner: `main memory, up to ${sizeText(most)}` }];
}

export function mapFigures(board: Board): readonly { title: string; drawing: Figure }[] {
  const memory = [
    ...mainMemory(board),
    ...board.fixed.flatMap((f) => (f.memory ?? []).map((w) => ({ base: w.base, size: bytes(w.size), owner: owner(f) }))),
  ];
  const ports = board.fixed.flatMap((f) => (f.io ?? []).map((w) => ({ base: w.base, size: w.size, owner: owner(f) })));
  const map = (space: "memory" | "ports", windows: readonly MapWindow[], least: number) => {
    const to = Math.max(least, ...windows.map((w) => w.base + w.size));
    const title = `${board.name}: ${space === "memory" ? "memory addresses" : "ports"} the board itself takes`;
    return {
      title: space === "memory" ? "Memory" : "Ports",
      drawing: figure((prefix, width) => addressMap({ title, space, from: 0, to, windows }, prefix, width), `${space}-${board.id}`),
    };
  };
  return [...(memory.length > 0 ? [map("memory", memory, 0x100000)] : []), ...(ports.length > 0 ? [map("ports", ports, 0x400)] : [])];
}

/** Rails of the newest revision, loaded by the board alone. */
export function railFigure(board: Board): Figure {
  const newest = board.revisions.at(-1)?.id ?? "";
  const loads = board.rails
    .filter((r) => !r.revisions || r.revisions.includes(newest))
    .map((r) => {
      const limit = known(r.limit_A);
      const used = known(r.board_A);
      return {
        rail: r.rail,
        used_A: used,
        limit_A: limit === unknown ? unknown : Number((limit * (r.derate ?? 1)).toFixed(2)),
        ...(used === unknown ? { unknownFrom: ["the board itself"] } : {}),
      };
    });
  return figure((prefix, width) => railBars(loads, prefix, width), `rails-${board.id}`);
}
