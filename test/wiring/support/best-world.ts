// Random small machines of several modes, planned and to be wired: versions without an image that fits, revisions with other sockets, cards
// that a switch can or cannot reach, tested builds, a machine that stands.
import type { Catalogue } from "../../../src/catalogue/index.js";
import type { Board, Build, BuildCard, Card, Conflict, Firmware, Part } from "../../../src/records/index.js";
import { board, card, smallClub } from "../../planning/support/small-club.js";
import { Random, range } from "../../support/solver/random.js";
import { changeOver, grounding, m27c010, m27c020, m27c040, pair, resistor, rotary, socket32 } from "./world.js";

export interface BestWorld {
  readonly catalogue: Catalogue;
  readonly build: Build;
}

const versions = ["V1", "V2", "V3"];
const names = ["a", "b", "c"];

/** Where they are to differ, the first card wants old versions and the others new ones. */
function randomCard(id: string, random: Random, differ: boolean): Card {
  const some = (chance: number) => random.next() < chance;
  const from = differ ? (id === "a" ? 0 : random.int(1, 2)) : random.int(0, 2);
  const upTo = differ ? (id === "a" ? random.int(0, 1) : 2) : random.int(from, 2);
  const soft = some(0.15);
  const enable = soft
    ? ({ by: "setting", setting: "S", off: "off", releases: ["io", "firmware"] } as const)
    : { ...random.pick([pair(true), pair(false), grounding(true), changeOver]), releases: ["io", "firmware"] as const };
  const jumper = { id: "J1", name: "n", by: "jumper", default: "x", positions: [{ id: "x" }, { id: "y", io: [{ base: 0x310, size: 4 }] }] };
  const software = { id: "S", name: "on", by: "software", positions: [{ id: "on" }, { id: "off" }] };
  const settings = [...(some(0.3) ? [jumper] : []), ...(soft ? [software] : [])];
  return card(id, {
    enable: { ...enable, ...(some(0.2) ? { revisions: ["2"] } : {}) } as unknown as Card["enable"],
    revisions: some(0.4) ? ["1", "2"].map((revision) => ({ id: revision, tell: "t" })) : [{ id: "2", tell: "t" }],
    settings: settings.length > 0 ? (settings as Card["settings"]) : undefined,
    power: [{ rail: "+5", worst_A: some(0.1) ? "unknown" : 1 }],
    claims: some(0.3) ? [{ io: [{ base: 0x300, size: 4 }] }] : [],
    needs: differ || some(0.5) ? { firmware: [{ family: "line", from: versions[from]!, upTo: versions[upTo]! }] } : undefined,
    ...(some(0.3) ? { sources: [{ id: "manual", kind: "manual", says: "Manual." }] } : {}),
  });
}

function randomConflict(at: number, random: Random): Conflict {
  return {
    id: `problem-${at}`,
    name: "Problem",
    class: "timing",
    when: { cards: [{ card: random.pick(names) }], firmware: [{ family: "line", from: random.pick(versions) }] },
    effect: random.pick(["degrades", "degrades", "cosmetic", "blocks"]),
    ...(random.next() < 0.5 ? { remedies: [{ says: "Mend it.", lifts: "all", costs: "an evening" }] } : {}),
    symptoms: ["It stops."],
    cause: "Told so.",
    status: random.pick(["confirmed", "suspected"]),
    evidence: [{ grade: "reported", says: "Told." }],
  } as unknown as Conflict;
}

export function bestWorld(seed: number): BestWorld {
  const random = new Random(seed + 4_242);
  const some = (chance: number) => random.next() < chance;
  const held = names.slice(0, random.int(2, 3));
  const differ = some(0.6);
  const cards = held.map((id) => randomCard(id, random, differ));
  const size = () => random.pick(["32K", "64K", "64K", "128K", "unknown"] as const);
  const line: Partial<Firmware> = { versions: versions.map((id) => ({ id, image: { size: size(), crc32: "unknown" } })) };
  const carries = () => random.pick(["driven", "high", "low", "open"] as const);
  const socket = (): Board["firmware_sockets"][number] => ({
    ...socket32,
    upper_pins: [{ pin: 1, carries: "supply" }, ...[2, 30, 31].map((pin) => ({ pin, carries: carries() }))],
  });
  const odd = some(0.5) ? { wired_for: "27C999" } : {};
  const sockets = some(0.6)
    ? [
        { ...socket(), revisions: ["C"], ...odd },
        { ...socket(), revisions: ["D1"] },
      ]
    : [socket()];
  const parts: Part[] = [m27c010, resistor];
  for (const device of [m27c020, m27c040]) if (some(0.7)) parts.push(device);
  for (const part of [rotary(1, 2, "toggle"), rotary(2, 2, "toggle"), rotary(3, 4), rotary(4, 3), rotary(6, 4)])
    if (some(0.55)) parts.push(part);
  const settingsOf = (c: Card): Pick<BuildCard, "settings"> =>
    c.settings ? { settings: Object.fromEntries(c.settings.map((s) => [s.id, random.pick(s.positions).id])) } : {};
  const placed = () =>
    cards.map((c, at): BuildCard => ({ card: c.id, slot: `S${at + 1}`, revision: random.pick(c.revisions!).id, ...settingsOf(c) }));
  const ids = ["one", "other", "third"].slice(0, random.int(2, 3));
  const modes = ids.map((id) => ({
    id,
    cards: held.filter((card) => (differ && some(0.8) ? (card === "a") === (id === "one") : some(0.6))),
    ...(some(0.15) ? { firmware: random.pick(versions) } : {}),
  }));
  const tests = Array.from(
    { length: random.pick([0, 0, 1, 2]) },
    (_, at): Build => ({
      id: `tested-${at}`,
      name: "Tested",
      board: "board",
      revision: random.pick(["C", "D1"]),
      firmware: "line",
      cards: placed(),
      modes: modes.map((m) => ({ ...m, firmware: random.pick(versions) })),
      result: { by: "Ada", date: "2019-05", outcome: "worked" },
    }),
  );
  const fixed = some(0.7);
  const build: Build = {
    id: "question",
    name: "Question",
    board: "board",
    // Where each stands makes no difference to a switch, and many more machines to put together.
    cards: held.map((id, at) => ({ card: id, ...(fixed ? { slot: `S${at + 1}` } : {}) })),
    modes,
    ...(some(0.6) ? { stands: { revision: random.pick(["C", "D1"]), firmware: random.pick(versions), cards: placed().slice(0, 1) } } : {}),
    ...(some(0.3) ? { at_hand: { firmware: random.some(versions, 0.5), parts: parts.filter(() => some(0.5)).map((p) => p.id) } } : {}),
  };
  const catalogue = smallClub({
    board: { firmware_sockets: sockets, slots: board.slots.slice(0, 3) },
    firmware: line,
    cards,
    parts,
    builds: tests,
    conflicts: range(random.pick([0, 1, 1, 2])).map((at) => randomConflict(at, random)),
  });
  return { catalogue, build };
}
