// Random worlds for the search for ways: cards that fit and can mostly be switched off, and wishes over them.
import type { Build, Card, Wishes } from "../../../src/records/index.js";
import { Random } from "../../support/solver/random.js";
import { spellOutBoard, spellOutCard } from "../../support/spell-out.js";
import type { Wanted } from "./ways-reference.js";
import { randomSetup, type Setup } from "./world.js";

/** A random world whose cards fit, can mostly be switched off, and mostly fight over ports and firmware, and wishes over them. */
export function setupOf(seed: number): Setup & { readonly build: Build } {
  const setup = randomSetup(seed);
  const random = new Random(seed + 77_777);
  const versions = setup.world.family.versions.map((v) => v.id);
  const everything = ["io", "memory", "interrupts", "dma", "firmware", "features", "memory-size", "cards", "clock", "chain"] as const;
  for (const card of setup.world.cards.values() as Iterable<Card & { settings?: unknown; claims?: unknown; enable?: unknown }>) {
    if (random.next() < 0.15) continue;
    if (random.next() < 0.5) delete card.settings;
    Object.assign(card, { room: {}, edge: "short", bus: "bus", power: [], impossible: undefined });
    if (random.next() < 0.6) Object.assign(card, { claims: [{ io: [{ base: random.int(50, 53), size: random.int(1, 2) }] }] });
    const from = random.next() < 0.5 ? { from: random.pick(versions) } : { upTo: random.pick(versions) };
    Object.assign(card, { needs: random.next() < 0.6 ? { firmware: [{ family: "fw", ...from }] } : undefined });
    if (random.next() < 0.9)
      Object.assign(card, { enable: { ...(card.enable ?? {}), by: "contacts", releases: random.some(everything, 0.9).concat(["io"]) } });
  }
  const names = setup.build.cards.map((c) => c.as ?? c.card);
  const some = (chance: number) => random.next() < chance;
  const together = Array.from({ length: random.pick([0, 0, 1, 2]) }, () => ({
    ...(some(0.7) ? { cards: random.some(names, 0.6) } : {}),
    ...(some(0.5) ? { firmware: random.pick(versions) } : {}),
  }));
  const wishes: Wishes = {
    ...(together.length > 0 ? { together } : {}),
    ...(some(0.2) ? { always: [random.pick(names)] } : {}),
    ...(some(0.2) ? { alone: [random.pick(names)] } : {}),
    ...(some(0.3) ? { ways_at_most: random.int(1, 2) } : {}),
  };
  // In most worlds nothing but ports, firmware, conflicts and jumpers stands in the way, so that dividing helps.
  const { board } = setup.world;
  if (random.next() < 0.85) {
    Object.assign(board, { rails: [{ rail: "+5", limit_A: 99 }], total_W: undefined, chains: undefined, clock_MHz: 4, memory: "none" });
    Object.assign(board, { slots: board.slots.map(({ id, position }) => ({ id, position, edge: "long" })), firmware_sockets: [] });
    for (const conflict of setup.world.conflicts) if (!conflict.when.cards) Object.assign(conflict, { status: "disproved" });
    for (const version of setup.world.family.versions) Object.assign(version, { memory_at_least: undefined, boards: undefined });
  }
  // In most of them everything is written down; what is left out there is none.
  if (random.next() < 0.85) {
    Object.assign(board, spellOutBoard(board));
    for (const card of setup.world.cards.values()) if (random.next() < 0.95) Object.assign(card, spellOutCard(card));
  }
  // What the cards lost is pinned no more.
  const cards = setup.build.cards.map(({ settings, ...c }) =>
    setup.world.cards.get(c.card)?.settings && settings ? { ...c, settings } : c,
  );
  const { modes: _, memory, ...rest } = setup.build;
  const build = { ...rest, cards, ...(typeof board.memory === "object" && memory !== undefined ? { memory } : {}) };
  return { ...setup, build: Object.keys(wishes).length > 0 ? { ...build, wishes } : build };
}

export function wantedOf(build: Build): Wanted {
  const places = (names: readonly string[] = []) =>
    build.cards.flatMap((c, at) =>
      names.some((n) => (build.cards.some((o) => (o.as ?? o.card) === n) ? (c.as ?? c.card) === n : c.card === n)) ? [at] : [],
    );
  return {
    cards: build.cards.map((_, at) => at),
    together: (build.wishes?.together ?? []).map((w) => ({ ...w, cards: places(w.cards) })),
    always: places(build.wishes?.always),
    alone: places(build.wishes?.alone),
  };
}
