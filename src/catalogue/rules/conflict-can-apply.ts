// A conflict whose conditions no machine can meet warns nobody.
import { bytes, type Conflict, entryOf, itemAt } from "../../records/index.js";
import type { Catalogue } from "../catalogue.js";
import { type Ref, ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";
import { mainMemory } from "../unsaid.js";
import { inRange, runsOn } from "../versions.js";

export const conflictCanApply: Rule = {
  name: "conflict-can-apply",
  says: "Some machine meets the conditions of a conflict, and not every machine does.",
  why: "A conflict no machine can meet warns nobody, and one that every machine meets warns of everything.",
  mend: "Correct the condition that excludes the others, or name what the conflict is about.",
  scope: ["conflict"],
  *check({ catalogue }): Iterable<Draft> {
    for (const c of catalogue.conflicts.values()) {
      if (!Object.keys(c.when).some((k) => k !== "adjacent")) {
        yield {
          says: "The conflict has no condition, so it would hold for every machine.",
          at: ref("conflict", c.id, "when"),
          on: "key",
          hint: "Name the board, the firmware or the cards it is about.",
        };
        continue;
      }
      const found = [
        memory(c),
        adjacent(c),
        onBus(catalogue, c),
        settable(catalogue, c),
        onBoard(catalogue, c),
        onFirmware(catalogue, c),
      ].find((d) => d);
      if (found) yield { ...found, hint: found.hint ?? "Correct the condition." };
    }
  },
};

const at = (c: Conflict, ...path: (string | number)[]): Ref => ref("conflict", c.id, "when", ...path);

function memory(c: Conflict): Draft | undefined {
  const { memory_at_least: least, memory_at_most: most } = c.when;
  if (least === undefined || most === undefined || bytes(least) <= bytes(most)) return undefined;
  const related = [{ says: "The upper end.", at: at(c, "memory_at_most") }];
  return { says: "No amount of memory is at least this and at most that.", at: at(c, "memory_at_least"), related };
}

function adjacent(c: Conflict): Draft | undefined {
  if (!c.when.adjacent || (c.when.cards?.length ?? 0) >= 2) return undefined;
  return { says: "Neighbouring slots need two cards.", at: at(c, "adjacent"), hint: "Name both cards, or leave adjacent out." };
}

/** Cards and boards of one conflict share a bus. */
function onBus(catalogue: Catalogue, c: Conflict): Draft | undefined {
  const cards = (c.when.cards ?? []).map((m) => catalogue.cards.get(m.card));
  const first = cards.find((card) => card);
  if (!first) return undefined;
  for (const [i, card] of cards.entries()) {
    if (!card || card.bus === first.bus) continue;
    const related = [{ says: `${first.name} is made for ${first.bus}.`, at: ref("card", first.id, "bus") }];
    return { says: `${card.name} and ${first.name} are made for different buses and never meet.`, at: at(c, "cards", i, "card"), related };
  }
  const boards = c.when.boards?.map((m) => catalogue.boards.get(m.board));
  if (!boards || boards.some((b) => !b || b.bus === first.bus)) return undefined;
  const related = [{ says: `${first.name} is made for ${first.bus}.`, at: ref("card", first.id, "bus") }];
  return { says: `${first.name} goes into none of these boards.`, at: at(c, "boards"), related };
}

/** The positions that are named can stand together on the card. */
function settable(catalogue: Catalogue, c: Conflict): Draft | undefined {
  for (const [i, m] of (c.when.cards ?? []).entries()) {
    const wanted = new Map(Object.entries(m.settings ?? {}).map(([s, p]) => [s, typeof p === "string" ? [p] : p]));
    for (const [j, { when, why }] of (catalogue.cards.get(m.card)?.impossible ?? []).entries()) {
      const barred = Object.entries(when).every(([s, p]) => wanted.get(s)?.length === 1 && entryOf(wanted, s)[0] === p);
      if (!barred) continue;
      const related = [{ says: why, at: ref("card", m.card, "impossible", j, "when") }];
      return { says: `The positions named cannot stand together on ${m.card}.`, at: at(c, "cards", i, "settings"), related };
    }
  }
  return undefined;
}

/** Slots that are named, and amounts of memory, are those of a board that is named. */
function onBoard(catalogue: Catalogue, c: Conflict): Draft | undefined {
  const asks = c.when.memory_at_least !== undefined || c.when.memory_at_most !== undefined || c.when.cards?.some((m) => m.slots || m.edge);
  if (!asks) return undefined;
  const named = c.when.boards?.map((m) => catalogue.boards.get(m.board));
  if (named?.some((b) => !b)) return undefined;
  const boards = (named ?? [...catalogue.boards.values()]).filter((b) => b !== undefined);
  if (boards.length === 0) return undefined;
  for (const [i, m] of (c.when.cards ?? []).entries()) {
    const card = catalogue.cards.get(m.card);
    const mine = boards.filter((b) => !card || b.bus === card.bus);
    const theirs = new Set(mine.flatMap((b) => b.slots.map((slot) => slot.id)));
    const related = mine.map((b) => ({ says: `The slots of ${b.name}.`, at: ref("board", b.id, "slots") }));
    for (const [j, name] of (m.slots ?? []).entries()) {
      if (theirs.has(name)) continue;
      const where = mine.length === 1 ? itemAt(mine, 0).name : "any of the boards";
      return {
        says: `There is no slot ${name} on ${where}.`,
        at: at(c, "cards", i, "slots", j),
        expected: [...theirs].join(", "),
        related,
      };
    }
    const edges = catalogue.buses.get(card?.bus ?? "")?.edges;
    if (m.edge !== undefined && edges && !edges.some((e) => e.id === m.edge))
      return { says: `There is no edge ${m.edge} on the bus.`, at: at(c, "cards", i, "edge"), expected: edges.map((e) => e.id).join(", ") };
  }
  const options = boards.flatMap((b) => mainMemory(b)?.options.map(bytes) ?? [Number.NaN]);
  if (options.some(Number.isNaN)) return undefined;
  for (const field of ["memory_at_least", "memory_at_most"] as const) {
    const limit = c.when[field];
    if (limit === undefined) continue;
    const met = options.some((o) => (field === "memory_at_least" ? o >= bytes(limit) : o <= bytes(limit)));
    const related = boards.map((b) => ({ says: `What ${b.name} can be fitted with.`, at: ref("board", b.id, "memory", "options") }));
    if (!met) return { says: "None of the boards can be fitted with that much or little memory.", at: at(c, field), related };
  }
  return undefined;
}

/** Some version of a span runs on some board and revision that is named. */
function onFirmware(catalogue: Catalogue, c: Conflict): Draft | undefined {
  if (!c.when.boards || !c.when.firmware) return undefined;
  const boards = c.when.boards.flatMap((m) => {
    const board = catalogue.boards.get(m.board);
    return board ? [{ m, board }] : [];
  });
  if (boards.length < c.when.boards.length) return undefined;
  for (const span of c.when.firmware) {
    const family = catalogue.firmware.get(span.family);
    if (!family) return undefined;
    const runs = family.versions.some(
      (v) =>
        inRange(family, v.id, span) &&
        boards.some(({ m, board }) => (m.revisions ?? board.revisions.map((r) => r.id)).some((r) => runsOn(family, v, board, r))),
    );
    if (runs) return undefined;
  }
  const related = boards.map(({ board }) => ({
    says: `Firmware of ${board.name}.`,
    at: ref("board", board.id, "firmware"),
  }));
  return { says: "No version in these spans runs on the boards and revisions named.", at: at(c, "firmware"), related };
}
