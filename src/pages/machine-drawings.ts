// From a combination to what the drawings of the machine show: slots with cards, both address maps, rail loads.
// It gathers facts of the records for one mode; what fits and what fights was decided by planning.
import { type Catalogue, claimsAnywhere, claimsInSlot, fewestBits, labelCopies, mainMemory, pairCopies } from "../catalogue/index.js";
import type { AddressMap, MapWindow, RailLoad, SlotPlan } from "../drawing/index.js";
import type { Combination, PlacedCard } from "../planning/index.js";
import { type Board, type Build, bytes, type Card, type Claims, hex, known, listed, unknown } from "../records/index.js";
import { drawnLength } from "./board-figures.js";
import { listText } from "./common.js";

export interface MachineDrawings {
  readonly slots: SlotPlan;
  readonly memory: AddressMap;
  readonly ports: AddressMap;
  readonly rails: readonly RailLoad[];
}

export interface MachineOptions {
  /** The mode shown; left out: all modes in one, each window with the modes it answers in. */
  readonly mode?: string;
  /** The machine as it stands now: windows it lacks are marked new. */
  readonly stands?: Build["stands"];
}

const answers: Readonly<Record<string, string>> = { ram: "RAM", rom: "ROM", registers: "registers", "option-rom": "option ROM" };

/** Everything a card claims with its revision and settings as they stand. */
function claimsOf(card: Card, revision: string, settings: Readonly<Record<string, string>>): readonly Claims[] {
  const always = listed(card.claims).filter((claim) => {
    if (claim.revisions && !claim.revisions.includes(revision)) return false;
    return Object.entries(claim.when ?? {}).every(([setting, wanted]) => {
      const stands = settings[setting];
      return stands !== undefined && (typeof wanted === "string" ? wanted === stands : wanted.includes(stands));
    });
  });
  const set = (card.settings ?? [])
    .filter((setting) => !setting.revisions || setting.revisions.includes(revision))
    .flatMap((setting) => setting.positions.filter((position) => position.id === settings[setting.id]));
  return [...always, ...set];
}

function isOn(combination: Combination, mode: string | undefined, as: string): boolean {
  const shown = combination.modes.find((m) => m.id === mode);
  return shown === undefined || shown.enabled.includes(as);
}

/** The modes a card is on in, when all modes are shown together and it is off in some. */
function onlyIn(combination: Combination, mode: string | undefined, as: string): readonly string[] | undefined {
  if (mode !== undefined) return undefined;
  const on = combination.modes.filter((m) => m.enabled.includes(as));
  return on.length === combination.modes.length ? undefined : on.map((m) => m.id);
}

/** A window, with the number of address bits that are looked at when that is not all of them. */
interface PartlyDecoded extends MapWindow {
  readonly decoded?: number | undefined;
}

interface Windows {
  readonly memory: readonly PartlyDecoded[];
  readonly ports: readonly PartlyDecoded[];
}

function againText(decoded: number | "unknown" | undefined): string | undefined {
  return typeof decoded === "number" ? `again every ${hex(2 ** decoded)}` : undefined;
}

/** Where nobody knows how many bits are looked at, as few as can be, so that nothing it may answer at is drawn as free. */
function decodedAtLeast(w: {
  readonly base: number;
  readonly size: number;
  readonly decoded_bits?: number | "unknown";
}): number | undefined {
  return w.decoded_bits === "unknown" ? fewestBits(w) : w.decoded_bits;
}

function windowsOf(claims: readonly Claims[], owner: string, off: { memory: boolean; io: boolean }): Windows {
  return {
    memory: claims
      .flatMap((c) => listed(c.memory))
      .map((w) => ({
        base: w.base,
        size: bytes(w.size),
        owner,
        what: [w.is && answers[w.is], w.space && `in ${w.space}`, againText(w.decoded_bits)].filter(Boolean).join(", ") || undefined,
        off: off.memory || undefined,
        decoded: decodedAtLeast({ ...w, size: bytes(w.size) }),
      })),
    ports: claims
      .flatMap((c) => listed(c.io))
      .map((w) => ({
        base: w.base,
        size: w.size,
        owner,
        what: againText(w.decoded_bits),
        off: off.io || undefined,
        decoded: decodedAtLeast(w),
      })),
  };
}

function boardWindows(board: Board, combination: Combination): Windows {
  const mine = (revisions: readonly string[] | undefined) => revisions === undefined || revisions.includes(combination.revision);
  const fixed = board.fixed.filter(
    (f) =>
      mine(f.revisions) &&
      (!f.when_memory || (combination.memory !== undefined && f.when_memory.some((m) => bytes(m) === combination.memory))),
  );
  const taken = fixed.map((f) => windowsOf([f], f.name, { memory: false, io: false }));
  const base = mainMemory(board)?.base;
  const main =
    base === undefined || combination.memory === undefined ? [] : [{ base, size: combination.memory, owner: "Main memory", what: "RAM" }];
  const sockets = board.firmware_sockets
    .filter((s) => mine(s.revisions))
    .map((s) => ({ base: s.window.base, size: bytes(s.window.size), owner: "Firmware", what: `socket ${s.id}` }));
  // Sockets of one window (even and odd bytes) and a window the board names itself are one window on the map.
  const memory: PartlyDecoded[] = [];
  for (const w of [...main, ...taken.flatMap((t) => t.memory), ...sockets])
    if (!memory.some((m) => m.base === w.base && m.size === w.size)) memory.push(w);
  return { memory, ports: taken.flatMap((t) => t.ports) };
}

function standingWindows(catalogue: Catalogue, combination: Combination, stands: Build["stands"]): Set<string> {
  const found = new Set<string>();
  for (const [as, there] of pairCopies(combination.cards, stands?.cards ?? [])) {
    const card = catalogue.cards.get(there.card);
    if (!card) continue;
    const settings = Object.fromEntries((card.settings ?? []).flatMap((s) => (s.default === undefined ? [] : [[s.id, s.default]])));
    const windows = windowsOf(claimsOf(card, there.revision ?? "", { ...settings, ...there.settings }), as, {
      memory: false,
      io: false,
    });
    for (const [space, list] of Object.entries(windows))
      for (const w of list as MapWindow[]) found.add(`${space} ${w.owner} ${w.base} ${w.size}`);
  }
  return found;
}

function railLoads(board: Board, combination: Combination, cards: readonly (readonly [PlacedCard, Card])[]): RailLoad[] {
  const mine = (revisions: readonly string[] | undefined, revision: string) => revisions === undefined || revisions.includes(revision);
  return combination.headroom.map(({ rail, used_A, limit_A }) => {
    const own = known(board.rails.find((r) => r.rail === rail && mine(r.revisions, combination.revision))?.board_A);
    const draws = cards.flatMap(([placed, card]) =>
      card.power
        .filter((p) => p.rail === rail && mine(p.revisions, placed.revision))
        .map((p) => ({ name: card.name, worst: known(p.worst_A) })),
    );
    const sure = [own, ...draws.map((d) => d.worst)].filter((a): a is number => a !== unknown);
    return {
      rail,
      used_A,
      limit_A,
      atLeast_A: sure.reduce((sum, a) => sum + a, 0),
      unknownFrom: [...(own === unknown ? ["the board itself"] : []), ...draws.filter((d) => d.worst === unknown).map((d) => d.name)],
    };
  });
}

/** A card that looks at few address bits answers again further up, so nothing up there may be drawn as free. */
function portMap(name: string, bits: number, windows: readonly PartlyDecoded[]): AddressMap {
  const map = { title: `Port addresses of the ${name}`, space: "ports", from: 0 } as const;
  const plain = windows.map(({ decoded, ...w }): MapWindow => w);
  const period = Math.min(...windows.map((w) => 2 ** (w.decoded ?? bits)), 2 ** bits);
  if (windows.every((w) => w.base + w.size <= period)) {
    const again = period < 2 ** bits ? `; the same again every ${hex(period)} for what looks at few address bits` : "";
    return { ...map, title: `${map.title}${again}`, to: period, windows: plain };
  }
  return { ...map, to: 2 ** bits, windows: [...plain, ...echoesOf(windows, bits)] };
}

/** Where what looks at few address bits answers again. Where it would be drawn more often than can be seen, it is one run. */
function echoesOf(windows: readonly PartlyDecoded[], bits: number): readonly MapWindow[] {
  return windows.flatMap(({ decoded, ...w }) => {
    if (decoded === undefined || decoded >= bits) return [];
    const [turn, times] = [2 ** decoded, 2 ** (bits - decoded) - 1];
    const echo = { ...w, what: undefined, alias: true };
    if (times > 1024) return [{ ...echo, base: turn, size: 2 ** bits - turn }];
    return Array.from({ length: times }, (_, k): MapWindow => ({ ...echo, base: w.base + (k + 1) * turn }));
  });
}

/** Undefined when the catalogue lacks the board or one of the cards. */
export function machineDrawings(catalogue: Catalogue, combination: Combination, options: MachineOptions = {}): MachineDrawings | undefined {
  const board = catalogue.boards.get(combination.board);
  const bus = board && catalogue.buses.get(board.bus);
  if (!board || !bus) return undefined;
  const labels = labelCopies(combination.cards, (id) => catalogue.cards.get(id)?.name ?? id);
  const cards: (readonly [PlacedCard, Card])[] = [];
  for (const placed of combination.cards) {
    const card = catalogue.cards.get(placed.card);
    if (!card) return undefined;
    cards.push([placed, { ...card, name: labels.get(placed.as) ?? card.name }]);
  }
  const on = (placed: PlacedCard) => isOn(combination, options.mode, placed.as);
  const standing = standingWindows(catalogue, combination, options.stands);
  const taken = cards.map(([placed, card]) => {
    const releases = card.enable?.releases ?? [];
    const off = { memory: !on(placed) && releases.includes("memory"), io: !on(placed) && releases.includes("io") };
    const slot = board.slots.find((s) => s.id === placed.slot);
    const claims = claimsOf(card, placed.revision, placed.settings).flatMap((c) => [
      claimsAnywhere(c),
      (slot && claimsInSlot(c, slot)) ?? {},
    ]);
    const windows = windowsOf(claims, card.name, off);
    const modes = onlyIn(combination, options.mode, placed.as);
    const mark = (space: string) => (w: MapWindow) =>
      options.stands !== undefined && !standing.has(`${space} ${placed.as} ${w.base} ${w.size}`) ? { ...w, change: "new" as const } : w;
    const held = (resource: "memory" | "io") => (releases.includes(resource) ? modes : undefined);
    return {
      memory: windows.memory.map(mark("memory")).map((w) => ({ ...w, modes: held("memory") })),
      ports: windows.ports.map(mark("ports")).map((w) => ({ ...w, modes: held("io") })),
    };
  });
  const own = boardWindows(board, combination);
  const memory: readonly PartlyDecoded[] = [...own.memory, ...taken.flatMap((t) => t.memory)];
  const memoryBits = Math.max(...(bus.spaces?.map((s) => s.bits) ?? [bus.memory_address_bits]));
  const name = `${board.name} ${combination.revision}`;
  return {
    slots: {
      board: name,
      slots: board.slots
        .filter((s) => !s.revisions || s.revisions.includes(combination.revision))
        .map((s) => ({
          id: s.id,
          edge: s.edge,
          position: s.position,
          longest_mm: drawnLength(s),
          opening: s.opening,
        })),
      cards: cards.map(([placed, card]) => ({
        name: card.name,
        slot: placed.slot,
        takes: card.room.slots ?? 1,
        length_mm: known(card.room.length_mm),
        usesOpening: card.room.opening === true,
        freedom: placed.freedom,
        off: !on(placed),
      })),
    },
    memory: {
      title: `Memory addresses of the ${name}${bus.spaces ? `; ${listText(bus.spaces.map((s) => s.id))} drawn in one` : ""}`,
      space: "memory",
      from: 0,
      to: 2 ** memoryBits,
      windows: [...memory.map(({ decoded: _, ...w }): MapWindow => w), ...echoesOf(memory, memoryBits)],
    },
    ports: portMap(name, bus.io_address_bits, [...own.ports, ...taken.flatMap((t) => t.ports)]),
    rails: railLoads(board, combination, cards),
  };
}
