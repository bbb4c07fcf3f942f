// The drawings of a board as it comes: its slots, what it takes of the address spaces and what cards may claim there, the load on its rails.
import { type Catalogue, claimSites, claimsAnywhere, claimsInSlot, mainMemory } from "../catalogue/index.js";
import { addressMap, type MapWindow, railBars, slotPlan } from "../drawing/index.js";
import {
  type Board,
  type Bus,
  bytes,
  type Claims,
  hex,
  type IoWindow,
  known,
  limitOf,
  listed,
  type MemoryWindow,
  sizeText,
  truncateList,
  unknown,
} from "../records/index.js";
import { listText } from "./common.js";
import { type Figure, figure } from "./marks.js";

/** How long a slot is drawn: to its limit; open-ended (undefined) where any card fits. */
export function drawnLength(slot: Board["slots"][number]): number | "unknown" | undefined {
  const most = limitOf(slot.longest_mm);
  return most === Number.POSITIVE_INFINITY ? undefined : most;
}

export function planSlots(board: Board) {
  return board.slots.map((s) => ({ id: s.id, edge: s.edge, position: s.position, longest_mm: drawnLength(s), opening: s.opening }));
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

/** Whether a window belongs on the map that is drawn: the one of its address space. */
type OnMap = (window: { readonly space?: string | undefined }) => boolean;

function mainMemoryWindows(board: Board, taken: readonly MapWindow[], onMap: OnMap): readonly MapWindow[] {
  const main = mainMemory(board);
  const { options = [], base } = main && onMap(main) ? main : {};
  const most = Math.max(0, ...options.map((o) => bytes(o)));
  if (most === 0 || base === undefined) return [];
  // Memory beyond the first thing in its way is reached otherwise; the board's own record says how.
  const end = Math.min(base + most, ...taken.map((w) => w.base).filter((t) => t > base));
  return [{ base, size: end - base, owner: `main memory, up to ${sizeText(most)}` }];
}

/** What the board takes of memory: its own windows and those of its firmware sockets. Sockets of one window are drawn once. */
function ownMemory(board: Board, onMap: OnMap): readonly MapWindow[] {
  const fixed = board.fixed.flatMap((f) =>
    listed(f.memory)
      .filter(onMap)
      .map((w) => ({ base: w.base, size: bytes(w.size), owner: owner(f) })),
  );
  const sockets: MapWindow[] = [];
  for (const { id, window, revisions } of board.firmware_sockets) {
    if (!onMap(window)) continue;
    const here = { base: window.base, size: bytes(window.size) };
    const same = (w: MapWindow) => w.base === here.base && w.size === here.size;
    if (fixed.some(same)) continue;
    const on = revisions ? `, revision ${listText(revisions)}` : "";
    const at = sockets.findIndex(same);
    const before = sockets[at];
    if (before) sockets[at] = { ...before, owner: `${before.owner}; ${id}${on}` };
    else sockets.push({ ...here, owner: `firmware, socket ${id}${on}` });
  }
  const taken = [...fixed, ...sockets];
  return [...mainMemoryWindows(board, taken, onMap), ...taken];
}

/** Ports of the board; what looks at few address bits answers again further up, drawn as one run a number of bits. */
function ownPorts(board: Board, bits: number): readonly MapWindow[] {
  const windows = board.fixed.flatMap((f) => listed(f.io).map((w) => ({ ...w, owner: owner(f) })));
  const written = new Set(windows.map((w) => w.decoded_bits));
  const partial = [...written].flatMap((d) => (typeof d === "number" && d < bits ? [d] : []));
  const echoes = partial.map((d): MapWindow => {
    const base = 2 ** d;
    const owners = [...new Set(windows.filter((w) => w.decoded_bits === d).map((w) => w.owner))];
    return { base, size: 2 ** bits - base, owner: listText(owners), perhaps: `again every ${hex(base)}` };
  });
  return [...windows.map(({ base, size, owner }) => ({ base, size, owner })), ...echoes];
}

/** Where cards made for the board's bus can be set to answer: runs that meet are one, with the cards that claim in it. */
function cardWindows(catalogue: Catalogue, board: Board, space: "memory" | "io", onMap: OnMap = () => true): readonly MapWindow[] {
  const claimed = [...catalogue.cards.values()]
    .filter((card) => card.bus === board.bus)
    .flatMap((card) =>
      claimSites(card)
        .flatMap(({ claims: written }) => [claimsAnywhere(written), ...board.slots.map((s) => claimsInSlot(written, s) ?? {})])
        .flatMap((claims: Claims) =>
          listed<IoWindow | MemoryWindow>(claims[space])
            .filter((w) => onMap("space" in w ? w : {}))
            .map((w) => ({ from: w.base, to: w.base + bytes(w.size), name: card.name })),
        ),
    )
    .sort((a, b) => a.from - b.from);
  const runs: { from: number; to: number; names: Set<string> }[] = [];
  for (const { from, to, name } of claimed) {
    const last = runs.at(-1);
    if (last && from < last.to) {
      last.to = Math.max(last.to, to);
      last.names.add(name);
    } else runs.push({ from, to, names: new Set([name]) });
  }
  return runs.map(({ from, to, names }) => ({ base: from, size: to - from, owner: truncateList([...names], 2), perhaps: "if fitted" }));
}

/** The whole of both address spaces of the board's bus; none when its bus is not on record. */
export function mapFigures(catalogue: Catalogue, board: Board): readonly { title: string; drawing: Figure }[] {
  const bus = catalogue.buses.get(board.bus);
  if (!bus) return [];
  const map = (space: "memory" | "ports", bits: number, windows: readonly MapWindow[], named = "") => {
    const title = `${board.name}: ${space === "memory" ? `memory addresses${named && ` in ${named}`}` : "ports"} the board takes, and where cards can answer`;
    return {
      title: space === "memory" ? `Memory${named && `, ${named}`}` : "Ports",
      drawing: figure(
        (prefix, width) => addressMap({ title, space, from: 0, to: 2 ** bits, windows }, prefix, width),
        `${space}-${board.id}${named && `-${named}`}`,
      ),
    };
  };
  const memoryMaps = memorySpaces(bus).map(({ bits, named, onMap }) =>
    map("memory", bits, [...ownMemory(board, onMap), ...cardWindows(catalogue, board, "memory", onMap)], named),
  );
  return [
    ...memoryMaps,
    map("ports", bus.io_address_bits, [...ownPorts(board, bus.io_address_bits), ...cardWindows(catalogue, board, "io")]),
  ];
}

/** One map a space; a window that does not say in which it lies is on each. */
function memorySpaces(bus: Bus): readonly { readonly bits: number; readonly named?: string; readonly onMap: OnMap }[] {
  if (!bus.spaces) return [{ bits: bus.memory_address_bits, onMap: () => true }];
  return bus.spaces.map(({ id, bits }) => ({ bits, named: id, onMap: (w) => w.space === undefined || w.space === id }));
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
