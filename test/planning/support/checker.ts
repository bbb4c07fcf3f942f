// An independent judge of one fully chosen machine: slow, plain, written from the meaning of the records and sharing no code
// with src/planning. It answers what is wrong for sure, what hangs on a missing fact, and how bad the remaining effect is.
import type { Board, Build, Bus, Card, Claims, Conflict, Firmware } from "../../../src/records/index.js";

export interface World {
  readonly bus: Bus;
  readonly board: Board;
  readonly family: Firmware;
  readonly cards: ReadonlyMap<string, Card>;
  readonly conflicts: readonly Conflict[];
}

/** One complete way to fill the holes. `slot` is an index into board.slots. */
export interface Machine {
  readonly revision: string;
  readonly memory: number;
  readonly firmware: readonly string[];
  readonly cards: readonly { readonly slot: number; readonly revision: string; readonly settings: Readonly<Record<string, string>> }[];
}

export interface Judgement {
  readonly bad: readonly string[];
  readonly open: readonly string[];
  /** 0 nothing, 1 cosmetic, 2 loss, 3 remedy. */
  readonly level: number;
}

const isUnknown = (f: unknown): boolean =>
  f === undefined || f === "unknown" || (typeof f === "object" && f !== null && (f as { is?: unknown }).is === "unknown");
const value = (f: unknown): number => (typeof f === "object" && f !== null ? (f as { is: number }).is : (f as number));
const word = (f: unknown): string => (typeof f === "object" && f !== null ? (f as { is: string }).is : (f as string));
const toBytes = (s: number | string): number => (typeof s === "number" ? s : Number(s.slice(0, -1)) * (s.endsWith("K") ? 1024 : 1048576));

interface Holder {
  readonly card: number;
  readonly claims: Claims;
}

export function judge(world: World, build: Build, machine: Machine): Judgement {
  const bad: string[] = [];
  const open: string[] = [];
  let level = 0;
  const { board, bus, family } = world;
  const cards = build.cards.map((b, i) => ({
    ...machine.cards[i]!,
    as: b.as ?? b.card,
    card: world.cards.get(b.card)!,
    at: board.slots[machine.cards[i]!.slot]!,
  }));
  const modes = build.modes ?? [{ id: "always" }];
  const on = (r: readonly string[] | undefined) => !r || r.includes(machine.revision);

  // Settings a revision lacks stay at their first position; excluded pairs.
  for (const c of cards) {
    for (const s of c.card.settings ?? [])
      if (s.revisions && !s.revisions.includes(c.revision) && c.settings[s.id] !== s.positions[0]!.id) bad.push("setting not there");
    for (const pair of c.card.impossible ?? [])
      if (Object.entries(pair.when).every(([id, p]) => c.settings[id] === p)) bad.push("positions exclude one another");
  }

  // Slots.
  for (const c of cards) {
    if (c.card.bus !== board.bus) bad.push("other bus");
    const edge = bus.edges.find((e) => e.id === c.card.edge)!;
    if (!edge.fits.includes(c.at.edge)) bad.push("edge");
    if (!on(c.at.revisions)) bad.push("slot not on this revision");
    for (const [size, most] of [
      [c.card.room.length_mm, c.at.longest_mm],
      [c.card.room.height_mm, c.at.highest_mm],
    ]) {
      if (most === undefined) continue;
      if (isUnknown(size) || isUnknown(most)) open.push("size");
      else if (value(size) > value(most)) bad.push("too big");
    }
    for (let k = 1; k < (c.card.room.slots ?? 1); k++) {
      const covered = board.slots.find((s) => s.position === c.at.position + k);
      if (!covered) bad.push("over the end");
      else if (cards.some((d) => d !== c && d.at === covered)) bad.push("covered slot");
    }
  }
  for (let i = 0; i < cards.length; i++)
    for (let j = i + 1; j < cards.length; j++) {
      if (cards[i]!.at === cards[j]!.at) bad.push("same slot");
      else if (
        cards[i]!.card.room.opening &&
        cards[j]!.card.room.opening &&
        cards[i]!.at.opening !== undefined &&
        cards[i]!.at.opening === cards[j]!.at.opening
      )
        bad.push("same opening");
    }

  // Claims, as they stand.
  const claimsOf = (i: number): Claims[] => {
    const c = cards[i]!;
    const out: Claims[] = [];
    for (const q of c.card.claims ?? []) {
      if (q.revisions && !q.revisions.includes(c.revision)) continue;
      if (Object.entries(q.when ?? {}).every(([id, p]) => (Array.isArray(p) ? p : [p]).includes(c.settings[id]!))) out.push(q);
    }
    for (const s of c.card.settings ?? []) {
      if (s.revisions && !s.revisions.includes(c.revision)) continue;
      out.push(s.positions.find((p) => p.id === c.settings[s.id])!);
    }
    return out;
  };
  const canonical = (name: string) => bus.interrupts.find((l) => l.id === name || (l.also ?? []).includes(name))?.id ?? name;
  cards.forEach((c, i) => {
    const cardEdge = bus.edges.find((e) => e.id === c.card.edge)!;
    const slotEdge = bus.edges.find((e) => e.id === c.at.edge)!;
    for (const q of claimsOf(i)) {
      for (const x of q.interrupts ?? []) {
        const has = (l: readonly string[] | undefined) => l === undefined || l.map(canonical).includes(canonical(x.line));
        if (!has(cardEdge.interrupts) || !has(c.at.interrupts ?? slotEdge.interrupts)) bad.push("interrupt does not reach");
      }
      for (const x of q.dma ?? []) {
        const has = (l: readonly string[] | undefined) => l === undefined || l.includes(x.channel);
        if (!has(cardEdge.dma) || !has(c.at.dma ?? slotEdge.dma)) bad.push("dma does not reach");
      }
    }
  });

  // Mode by mode.
  const ownClaims: Claims[] = [
    ...board.fixed.filter((f) => on(f.revisions) && (!f.when_memory || f.when_memory.map(toBytes).includes(machine.memory))),
    ...board.firmware_sockets
      .filter((s) => on(s.revisions))
      .map((s) => ({ memory: [{ base: s.window.base, size: s.window.size }] }) as Claims),
  ];
  modes.forEach((mode, m) => {
    const version = machine.firmware[m]!;
    // A name is a copy's; only a card's id that is no copy's name means all copies of the card. No list: all are on.
    const isCopy = (name: string) => cards.some((c) => c.as === name);
    const listed = (i: number) =>
      !mode.cards || mode.cards.some((name) => (isCopy(name) ? cards[i]!.as === name : cards[i]!.card.id === name));
    const canBeOff = (i: number) => {
      const e = cards[i]!.card.enable;
      if (!e || (e.revisions && !e.revisions.includes(cards[i]!.revision))) return false;
      return e.by === "contacts" || cards[i]!.card.settings?.find((s) => s.id === e.setting)?.by === "software";
    };
    const runs = (i: number) => listed(i) || !canBeOff(i);
    const keeps = (i: number, what: string) => runs(i) || !cards[i]!.card.enable!.releases.includes(what as never);

    const v = family.versions.find((x) => x.id === version)!;
    if (!(v.boards ?? family.boards).some((b) => b.board === board.id && (!b.revisions || b.revisions.includes(machine.revision))))
      bad.push("firmware not for this board");
    if (machine.memory > 0 && v.memory_at_least !== undefined && machine.memory < toBytes(v.memory_at_least))
      bad.push("firmware wants memory");

    const holders = (what: string): Holder[] => [
      ...ownClaims.map((claims) => ({ card: -1, claims })),
      ...cards.flatMap((_, i) => (keeps(i, what) ? claimsOf(i).map((claims) => ({ card: i, claims })) : [])),
    ];
    const everyPair = (what: string, meet: (a: Claims, b: Claims) => "bad" | "open" | undefined) => {
      const all = holders(what);
      for (let i = 0; i < all.length; i++)
        for (let j = i + 1; j < all.length; j++) {
          if (all[i]!.card === all[j]!.card) continue;
          const r = meet(all[i]!.claims, all[j]!.claims);
          if (r === "bad") bad.push(what);
          if (r === "open") open.push(what);
        }
    };
    everyPair("io", (a, b) => {
      for (const x of a.io ?? [])
        for (const y of b.io ?? []) {
          // Every address of the bus, one by one: does each of the two answer there?
          const answers = (w: typeof x, address: number) => {
            const mask = w.decoded_bits === undefined ? -1 : (1 << w.decoded_bits) - 1;
            for (let k = 0; k < w.size; k++) if (((w.base + k) & mask) === (address & mask)) return true;
            return false;
          };
          for (let address = 0; address < 2 ** bus.io_address_bits; address++) if (answers(x, address) && answers(y, address)) return "bad";
        }
      return undefined;
    });
    everyPair("memory", (a, b) => {
      for (const x of a.memory ?? [])
        for (const y of b.memory ?? [])
          if (!(x.shareable && y.shareable) && x.base < y.base + toBytes(y.size) && y.base < x.base + toBytes(x.size)) return "bad";
      return undefined;
    });
    everyPair("interrupts", (a, b) => {
      let seen: "open" | undefined;
      for (const x of a.interrupts ?? [])
        for (const y of b.interrupts ?? []) {
          if (canonical(x.line) !== canonical(y.line)) continue;
          const line = bus.interrupts.find((l) => l.id === canonical(x.line));
          if (!line) continue;
          const willing = x.shareable && y.shareable && x.mode !== "edge" && y.mode !== "edge";
          const trigger = isUnknown(line.trigger) ? "unknown" : word(line.trigger);
          const share = isUnknown(line.share) ? "unknown" : word(line.share);
          if (!willing || trigger === "edge" || share === "never") return "bad";
          if (trigger === "unknown" || share === "unknown") seen = "open";
        }
      return seen;
    });
    everyPair("dma", (a, b) => {
      for (const x of a.dma ?? []) for (const y of b.dma ?? []) if (x.channel === y.channel && !(x.shareable && y.shareable)) return "bad";
      return undefined;
    });

    const has = new Set<string>();
    for (const x of family.versions) {
      for (const f of x.adds ?? []) has.add(f);
      for (const f of x.removes ?? []) has.delete(f);
      if (x.id === version) break;
    }
    const spanHolds = (s: { family: string; from?: string; upTo?: string; before?: string; except?: string[]; only?: string[] }) => {
      const place = (id: string) => family.versions.findIndex((x) => x.id === id);
      const p = place(version);
      return (
        s.family === family.id &&
        (!s.only || s.only.includes(version)) &&
        !(s.except ?? []).includes(version) &&
        (s.from === undefined || p >= place(s.from)) &&
        (s.upTo === undefined || p <= place(s.upTo)) &&
        (s.before === undefined || p < place(s.before))
      );
    };
    cards.forEach((c, i) => {
      const n = c.card.needs ?? {};
      if (n.firmware && keeps(i, "firmware") && !n.firmware.some(spanHolds)) bad.push("needs firmware");
      if (n.features && keeps(i, "features") && !n.features.every((f) => has.has(f))) bad.push("needs feature");
      if (machine.memory > 0 && keeps(i, "memory-size")) {
        if (n.memory_at_least !== undefined && machine.memory < toBytes(n.memory_at_least)) bad.push("needs memory");
        if (n.memory_at_most !== undefined && machine.memory > toBytes(n.memory_at_most)) bad.push("too much memory");
      }
      for (const need of n.cards ?? [])
        if (keeps(i, "cards") && !cards.some((d, j) => j !== i && need.any_of.includes(d.card.id) && listed(j))) bad.push("needs a card");
    });

    for (const k of world.conflicts) {
      if (k.status === "disproved") continue;
      const w = k.when;
      if (w.boards && !w.boards.some((b) => b.board === board.id && (!b.revisions || b.revisions.includes(machine.revision)))) continue;
      if (w.firmware && !w.firmware.some(spanHolds)) continue;
      if (w.memory_at_least !== undefined && machine.memory < toBytes(w.memory_at_least)) continue;
      if (w.memory_at_most !== undefined && machine.memory > toBytes(w.memory_at_most)) continue;
      if (w.modes_at_least !== undefined && modes.length < w.modes_at_least) continue;
      const fits = (want: NonNullable<typeof w.cards>[number], i: number) =>
        cards[i]!.card.id === want.card &&
        (want.even_disabled || runs(i)) &&
        (!want.revisions || want.revisions.includes(cards[i]!.revision)) &&
        (!want.slots || want.slots.includes(cards[i]!.at.id)) &&
        (!want.edge || want.edge === cards[i]!.at.edge) &&
        Object.entries(want.settings ?? {}).every(([id, p]) => (Array.isArray(p) ? p : [p]).includes(cards[i]!.settings[id]!));
      const assign = (left: NonNullable<typeof w.cards>, used: number[]): boolean => {
        if (left.length === 0) {
          if (!w.adjacent || used.length < 2) return true;
          return Math.abs(cards[used[0]!]!.at.position - cards[used[1]!]!.at.position) === 1;
        }
        return cards.some((_, i) => !used.includes(i) && fits(left[0]!, i) && assign(left.slice(1), [...used, i]));
      };
      if (!assign(w.cards ?? [], [])) continue;
      if (k.effect === "cosmetic") level = Math.max(level, 1);
      else if (k.effect === "degrades") level = Math.max(level, 2);
      else if (k.status === "suspected") open.push("suspected conflict");
      else if ((k.remedies ?? []).length > 0) level = Math.max(level, 3);
      else bad.push("conflict");
    }
  });

  // Needs that no mode changes, and the chain.
  cards.forEach((c) => {
    const n = c.card.needs ?? {};
    if (n.boards && !n.boards.some((b) => b.board === board.id && (!b.revisions || b.revisions.includes(machine.revision))))
      bad.push("not for this board");
    if (n.clock_at_most_MHz !== undefined) {
      if (isUnknown(n.clock_at_most_MHz) || isUnknown(board.clock_MHz)) open.push("clock");
      else if (value(board.clock_MHz) > value(n.clock_at_most_MHz)) bad.push("clock");
    }
    if (n.bus_master) {
      if (c.at.bus_master === undefined || c.at.bus_master === false) bad.push("bus master");
      else if (isUnknown(c.at.bus_master)) open.push("bus master");
    }
    for (const rail of n.rails ?? []) if (!board.rails.some((r) => r.rail === rail && on(r.revisions))) bad.push("rail not there");
    if (c.card.chain === "uses") {
      const order = board.chain ?? [];
      const place = order.indexOf(c.at.id);
      if (place < 0) bad.push("not on the chain");
      for (const before of order.slice(0, Math.max(0, place))) {
        const there = cards.find((d) => d.at.id === before);
        if (there?.card.chain === "breaks" || (!there && bus.chain?.broken_by_empty)) bad.push("chain broken");
      }
    }
  });

  // Currents.
  const drawn = (i: number, rail: string) =>
    cards[i]!.card.power.filter((p) => p.rail === rail && (!p.revisions || p.revisions.includes(cards[i]!.revision)));
  const rails = [...new Set(cards.flatMap((c) => c.card.power.map((p) => p.rail)))];
  for (const rail of rails) {
    const users = cards.flatMap((c, i) => (c.card.power.some((p) => p.rail === rail) ? [i] : []));
    const limits = board.rails.filter((r) => r.rail === rail && on(r.revisions));
    if (limits.length === 0) bad.push("no such rail");
    for (const i of users) if (drawn(i, rail).some((p) => isUnknown(p.worst_A))) open.push("current");
    for (const limit of limits) {
      if (isUnknown(limit.limit_A) || (limit.board_A !== undefined && isUnknown(limit.board_A))) open.push("limit");
      else {
        const left = value(limit.limit_A) * (limit.derate ?? 1) - (limit.board_A === undefined ? 0 : value(limit.board_A));
        const sum = users.reduce((s, i) => s + drawn(i, rail).reduce((t, p) => t + (isUnknown(p.worst_A) ? 0 : value(p.worst_A)), 0), 0);
        if (sum > left + 1e-9) bad.push("rail overloaded");
      }
      // What one slot gives is judged whether or not the whole is known.
      if (limit.per_slot_A !== undefined)
        for (const i of users)
          for (const p of drawn(i, rail)) {
            if (isUnknown(p.worst_A)) continue;
            if (isUnknown(limit.per_slot_A)) open.push("per slot");
            else if (value(p.worst_A) > value(limit.per_slot_A)) bad.push("slot overloaded");
          }
    }
  }
  if (board.total_W !== undefined && cards.some((c) => c.card.power.length > 0)) {
    if (isUnknown(board.total_W)) open.push("power");
    else {
      const volts = (rail: string) => Math.abs(bus.rails.find((r) => r.id === rail)?.volts ?? 0);
      const own = board.rails
        .filter((r) => on(r.revisions))
        .reduce((s, r) => s + (r.board_A === undefined || isUnknown(r.board_A) ? 0 : value(r.board_A) * volts(r.rail)), 0);
      const all = cards.reduce(
        (s, _, i) =>
          s +
          rails.reduce(
            (t, rail) => t + drawn(i, rail).reduce((u, p) => u + (isUnknown(p.worst_A) ? 0 : value(p.worst_A) * volts(rail)), 0),
            0,
          ),
        0,
      );
      if (all > value(board.total_W) * (board.total_derate ?? 1) - own + 1e-9) bad.push("supply overloaded");
    }
  }
  return { bad, open, level };
}
