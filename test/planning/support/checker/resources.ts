// Ports, memory, interrupt lines and DMA channels: who takes which in a mode, whether a slot has the line, and who may share.
import type { Claims, DmaClaim, InterruptClaim, IoWindow, MemoryWindow } from "../../../../src/records/index.js";
import { bytesOf, known, memoryKnown, onBoard, onCard, settingsHold, standsAt } from "./facts.js";
import { keeps } from "./switching.js";
import { type Case, type Fitted, type ModeOfUse, no, type Objection, unknown } from "./world.js";

interface Owner {
  readonly name: string;
  readonly fitted?: Fitted;
  readonly io: readonly IoWindow[];
  readonly memory: readonly MemoryWindow[];
  readonly interrupts: readonly InterruptClaim[];
  readonly dma: readonly DmaClaim[];
}

export function resourceObjections(c: Case, mode: ModeOfUse): Objection[] {
  const owners = [boardAsOwner(c), ...c.fitted.map((f) => cardAsOwner(f, mode))];
  const pairs = owners.flatMap((a, i) => owners.slice(i + 1).map((b) => [a, b] as const));
  return [
    ...owners.flatMap((o) => (o.fitted ? linesReach(c, o, o.fitted) : [])),
    ...pairs.flatMap(([a, b]) => [...ports(c, a, b), ...memory(c, a, b)]),
    ...interruptLines(c, owners),
    ...channels(owners),
    ...c.fitted.flatMap((f) => openOf(c, f, mode)),
    ...openOnBoard(c, owners),
    ...openMainMemory(c, owners),
    ...openSpaces(c, owners),
    ...c.fitted.flatMap((f) => openPlace(f, mode)),
    ...openByMemory(c, owners),
  ];
}

type What = "io" | "memory" | "interrupts" | "dma";

/** Kinds that the bus has; a card can use lines and channels of its own edge only. */
const kindsHere = (c: Case): What[] => ["io", "memory", "interrupts", ...(c.world.bus.dma ? (["dma"] as const) : [])];

const notSaid = (claims: Claims, what: What) => claims[what] === undefined || claims[what] === "unknown";

/** "Left out: not known", entry by entry; a position is silent where another position of its setting says something of the kind. */
function openOf(c: Case, f: Fitted, mode: ModeOfUse): Objection[] {
  const edge = c.world.bus.edges.find((e) => e.id === f.card.edge);
  const kinds = kindsHere(c).filter((what) => !((what === "interrupts" || what === "dma") && edge?.[what]?.length === 0));
  const settings = (f.card.settings ?? []).filter((s) => onCard(s, f));
  const { claims } = f.card;
  return kinds
    .filter((what) => {
      if (!keeps(f, mode, what)) return false;
      const speaking = settings.filter((s) => s.positions.some((p) => p[what] !== undefined));
      if (speaking.some((s) => s.positions.some((p) => p.id === standsAt(f, s.id) && notSaid(p, what)))) return true;
      if (claims === "none") return false;
      if (claims === undefined || claims === "unknown") return true;
      const holding = claims.filter((entry) => onCard(entry, f) && settingsHold(f, entry.when));
      if (holding.length === 0 || holding.some((entry) => notSaid(entry, what))) return true;
      return speaking.length === 0 && holding.some((entry) => entry[what] === "settings");
    })
    .map((what) => unknown(`which ${what} ${f.as} takes`));
}

/** What a part of the board takes of a kind matters where a card takes some of it. */
function openOnBoard(c: Case, owners: readonly Owner[]): Objection[] {
  const parts = c.world.board.fixed.filter(
    (x) => onBoard(x, c) && (!x.when_memory || x.when_memory.some((m) => bytesOf(m) === c.machine.memory)),
  );
  const taking = (what: What) => owners.some((o) => o.fitted && o[what].length > 0);
  return parts.flatMap((part) =>
    kindsHere(c)
      .filter((what) => notSaid(part, what) && taking(what))
      .map((what) => unknown(`which ${what} ${part.name} of the board takes`)),
  );
}

/** The board is one owner, whatever it takes. */
function boardAsOwner(c: Case): Owner {
  const { fixed } = c.world.board;
  const here = fixed.filter((x) => onBoard(x, c) && (!x.when_memory || x.when_memory.some((m) => bytesOf(m) === c.machine.memory)));
  const sockets = c.world.board.firmware_sockets.filter((s) => onBoard(s, c)).map((s) => ({ memory: [s.window] }));
  const claims: Claims[] = [...here, ...sockets];
  return ownerOf("the board", undefined, [...claims, ...mainMemory(c, claims)], () => true);
}

/** "Left out: not known, where the bus names several": such a window of a card is open, one of the board where a card takes memory. */
function openSpaces(c: Case, owners: readonly Owner[]): Objection[] {
  if (!c.world.bus.spaces || !owners.some((o) => o.fitted && o.memory.length > 0)) return [];
  return owners.flatMap((o) => o.memory.filter((w) => w.space === undefined).map(() => unknown(`the space of a window of ${o.name}`)));
}

const toldMemory = (c: Case) => (typeof c.world.board.memory === "object" ? c.world.board.memory : undefined);

/** "Left out, or unknown: no card that answers at memory addresses is called workable"; so where the base is left out. */
function openMainMemory(c: Case, owners: readonly Owner[]): Objection[] {
  const told = c.world.board.memory === "none" || toldMemory(c)?.base !== undefined;
  return told || !owners.some((o) => o.fitted && o.memory.length > 0) ? [] : [unknown("where main memory lies")];
}

/** A part that is there with some amounts of memory may be there where nobody knows the amount. */
function openByMemory(c: Case, owners: readonly Owner[]): Objection[] {
  if (memoryKnown(c)) return [];
  const parts = c.world.board.fixed.filter((x) => onBoard(x, c) && x.when_memory);
  const taking = (what: What) => owners.some((o) => o.fitted && o[what].length > 0);
  return parts.flatMap((part) =>
    kindsHere(c)
      .filter((what) => part[what] !== "none" && taking(what))
      .map(() => unknown(`whether ${part.name} is there`)),
  );
}

/** "From its base up to the amount fitted, or to the first window of the board in its way." */
function mainMemory(c: Case, board: readonly Claims[]): Claims[] {
  const memory = toldMemory(c);
  if (memory?.base === undefined) return [];
  // Of a window whose space nobody knows it does not matter here: every machine with a card in memory is open then.
  const sameSpace = (w: MemoryWindow) => !c.world.bus.spaces || [memory.space, undefined].includes(w.space) || memory.space === undefined;
  const inTheWay = board.flatMap((x) => entries(x.memory)).filter(sameSpace);
  const free = (address: number) => !inTheWay.some((w) => w.base <= address && address < w.base + bytesOf(w.size));
  const { base } = memory;
  let size = 0;
  while (size < c.machine.memory && free(base + size)) size++;
  return size > 0 ? [{ memory: [{ base, size, ...(memory.space === undefined ? {} : { space: memory.space }) }] }] : [];
}

function claimsOf(f: Fitted): Claims[] {
  const positions = (f.card.settings ?? []).flatMap((s) => s.positions.filter((p) => p.id === standsAt(f, s.id)));
  return [...entries(f.card.claims).filter((claim) => onCard(claim, f) && settingsHold(f, claim.when)), ...positions];
}

function cardAsOwner(f: Fitted, mode: ModeOfUse): Owner {
  const { io, memory, ...rest } = ownerOf(f.as, f, claimsOf(f), (what) => keeps(f, mode, what));
  return { ...rest, io: io.flatMap((w) => placed(f, w)), memory: memory.flatMap((w) => placed(f, w)) };
}

/** "It begins at base plus this many addresses times the number of the slot"; nowhere for sure where nobody knows the number. */
function placed<W extends IoWindow | MemoryWindow>(f: Fitted, window: W): W[] {
  if (window.slot_step === undefined) return [window];
  const before = placings.get(window)?.get(f.slot.id);
  if (before) return before as W[];
  const number = known(f.slot.number);
  const made = number === undefined ? [] : [{ ...window, base: window.base + window.slot_step * number }];
  placings.set(window, (placings.get(window) ?? new Map<string, object[]>()).set(f.slot.id, made));
  return made;
}
const placings = new WeakMap<object, Map<string, object[]>>();

/** "Left out: not known, and no such card is called workable there." */
function openPlace(f: Fitted, mode: ModeOfUse): Objection[] {
  if (known(f.slot.number) !== undefined) return [];
  const following = (["io", "memory"] as const).filter(
    (what) =>
      keeps(f, mode, what) &&
      claimsOf(f).some((claim) => entries<IoWindow | MemoryWindow>(claim[what]).some((w) => w.slot_step !== undefined)),
  );
  return following.map((what) => unknown(`where ${f.as} answers in ${what}`));
}

function ownerOf(
  name: string,
  fitted: Fitted | undefined,
  claims: readonly Claims[],
  keptOf: (what: "io" | "memory" | "interrupts" | "dma") => boolean,
): Owner {
  const all = <T>(what: "io" | "memory" | "interrupts" | "dma", of: (claim: Claims) => readonly T[] | string | undefined): T[] =>
    keptOf(what) ? claims.flatMap((claim) => [...entries(of(claim))]) : [];
  return {
    name,
    ...(fitted ? { fitted } : {}),
    io: all("io", (x) => x.io),
    memory: all("memory", (x) => x.memory),
    interrupts: all("interrupts", (x) => x.interrupts),
    dma: all("dma", (x) => x.dma),
  };
}

/** The entries of a list that a word may stand for. */
function entries<T>(given: readonly T[] | string | undefined): readonly T[] {
  return Array.isArray(given) ? given : [];
}

type Run = Pick<IoWindow | MemoryWindow, "base" | "size" | "decoded_bits">;

/** The numbers of low address bits that may be looked at: the one written, all of them, or every one that still tells the ports apart. */
function mayLookAt(window: Run, bits: number): readonly number[] {
  const written = window.decoded_bits ?? bits;
  if (written !== "unknown") return [Math.min(written, bits)];
  return Array.from({ length: bits + 1 }, (_, d) => d).filter((d) => window.base + bytesOf(window.size) <= 2 ** d);
}

/** Every port the window answers at when so many bits are looked at, aliases included; kept, since it is asked for every machine. */
function answersAt(window: Run, looked: number, bits: number): Set<number> {
  const before = answers.get(window)?.get(looked);
  if (before) return before;
  const turn = 2 ** looked;
  const low = new Set(Array.from({ length: bytesOf(window.size) }, (_, i) => (window.base + i) % turn));
  const ports = new Set(Array.from({ length: 2 ** bits }, (_, port) => port).filter((port) => low.has(port % turn)));
  answers.set(window, (answers.get(window) ?? new Map<number, Set<number>>()).set(looked, ports));
  return ports;
}
const answers = new WeakMap<Run, Map<number, Set<number>>>();

/** In every case, in some, or in none, of what the two windows may look at, some port is answered by both. */
function meet(x: Run, y: Run, bits: number): "always" | "perhaps" | "never" {
  const cases = mayLookAt(x, bits).flatMap((dx) =>
    mayLookAt(y, bits).map((dy) => [...answersAt(x, dx, bits)].some((port) => answersAt(y, dy, bits).has(port))),
  );
  return cases.every((met) => met) ? "always" : cases.some((met) => met) ? "perhaps" : "never";
}

function ports(c: Case, a: Owner, b: Owner): Objection[] {
  const bits = c.world.bus.io_address_bits;
  const met = a.io.flatMap((x) => b.io.map((y) => meet(x, y, bits)));
  if (met.includes("always")) return [no(`${a.name} and ${b.name} both answer at a port`)];
  return met.includes("perhaps") ? [unknown(`${a.name} and ${b.name} may answer at one port`)] : [];
}

function memory(c: Case, a: Owner, b: Owner): Objection[] {
  const met = a.memory.flatMap((x) => b.memory.map((y) => fight(c, x, y)));
  if (met.includes("always")) return [no(`${a.name} and ${b.name} both answer in memory`)];
  return met.includes("perhaps") ? [unknown(`${a.name} and ${b.name} may both answer in memory`)] : [];
}

/** "Windows meet only in one space"; where the space of one is not known, the machine is open anyhow. */
function fight(c: Case, x: MemoryWindow, y: MemoryWindow): "always" | "perhaps" | "never" {
  const { spaces, memory_address_bits: lines } = c.world.bus;
  if (spaces && (x.space === undefined || x.space !== y.space)) return "never";
  const met = meet(x, y, spaces?.find((s) => s.id === x.space)?.bits ?? lines);
  // "Two such windows may lie at one place."
  if (x.takes_turns && y.takes_turns) return "never";
  const quiet = [keepsSilent(x, y), keepsSilent(y, x)];
  // One that keeps silent under the other makes an overlay; two that silence each other make none.
  const overlaid = quiet.includes("perhaps") ? "perhaps" : quiet[0] === quiet[1] ? "never" : "always";
  if (met === "never" || overlaid === "always") return "never";
  return met === "always" && overlaid === "never" ? "always" : "perhaps";
}

/** "Overlay lines under which it keeps silent ... where another window asserts one of them". */
function keepsSilent(under: MemoryWindow, over: MemoryWindow): "always" | "perhaps" | "never" {
  if (!under.yields_to || !over.asserts) return "never";
  if (under.yields_to === "unknown" || over.asserts === "unknown") return "perhaps";
  return under.yields_to.includes(over.asserts) ? "always" : "never";
}

/** The bus's own name of a line that may be written by any of its names. */
const lineOf = (c: Case, written: string) =>
  c.world.bus.interrupts.find((l) => l.id === written || l.also?.includes(written))?.id ?? written;

/** Lines reach a slot by its edge, unless the slot says which do; a card has only the lines of its own edge. */
function linesReach(c: Case, owner: Owner, f: Fitted): Objection[] {
  const edge = (id: string) => c.world.bus.edges.find((e) => e.id === id);
  const has = (given: readonly string[] | undefined, id: string) => !given || given.map((l) => lineOf(c, l)).includes(id);
  const reaches = (id: string, kind: "interrupts" | "dma") =>
    has(f.slot[kind] ?? edge(f.slot.edge)?.[kind], id) && has(edge(f.card.edge)?.[kind], id);
  return [
    ...owner.interrupts.filter((i) => !reaches(lineOf(c, i.line), "interrupts")).map((i) => no(`${i.line} does not reach ${f.as}`)),
    ...owner.dma.filter((d) => !reaches(d.channel, "dma")).map((d) => no(`${d.channel} does not reach ${f.as}`)),
  ];
}

/**
 * "never: one owner; if-shareable: several, when the line is level-triggered and every owner is shareable." An owner that drives the line
 * by its edges does not share it.
 */
function interruptLines(c: Case, owners: readonly Owner[]): Objection[] {
  return c.world.bus.interrupts.flatMap((line) => {
    const claims = owners.map((o) => o.interrupts.filter((i) => lineOf(c, i.line) === line.id)).filter((list) => list.length > 0);
    if (claims.length < 2) return [];
    const trigger = known(line.trigger);
    const share = known(line.share);
    const each = claims.flat();
    if (share === "never" || trigger === "edge") return [no(`${line.id} has several owners`)];
    if (each.some((i) => !i.shareable || i.mode === "edge")) return [no(`an owner of ${line.id} does not share it`)];
    return share === undefined || trigger === undefined ? [unknown(`whether ${line.id} can be shared`)] : [];
  });
}

function channels(owners: readonly Owner[]): Objection[] {
  const names = new Set(owners.flatMap((o) => o.dma.map((d) => d.channel)));
  return [...names].flatMap((name) => {
    const claims = owners.map((o) => o.dma.filter((d) => d.channel === name)).filter((list) => list.length > 0);
    return claims.length > 1 && claims.flat().some((d) => !d.shareable) ? [no(`${name} has several owners`)] : [];
  });
}
