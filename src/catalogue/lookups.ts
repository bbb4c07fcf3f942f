// Look-ups over the links: who names whom. Worked out once for a catalogue, at the first question.
import {
  type Board,
  type Build,
  type Bus,
  type Card,
  type Conflict,
  entryOf,
  type Firmware,
  type Kind,
  type Part,
} from "../records/index.js";
import { allOf, type Catalogue } from "./catalogue.js";
import { namings } from "./names.js";
import type { Ref } from "./ref.js";
import { inRange } from "./versions.js";

declare const linked: unique symbol;

/** An id that is known to be the id of a record of this catalogue. Only `linkedId` makes one. */
export type LinkedId<K extends Kind> = string & { readonly [linked]: K };

export function linkedId<K extends Kind>(catalogue: Catalogue, kind: K, id: string): LinkedId<K> | undefined {
  return allOf(catalogue, kind).has(id) ? (id as LinkedId<K>) : undefined;
}

/** The record of a linked id; it is there by construction. */
export function recordOf<K extends Kind>(catalogue: Catalogue, kind: K, id: LinkedId<K>) {
  return entryOf(allOf(catalogue, kind), id);
}

const cache = new WeakMap<Catalogue, ReadonlyMap<string, readonly Ref[]>>();

function usesByTarget(catalogue: Catalogue): ReadonlyMap<string, readonly Ref[]> {
  const known = cache.get(catalogue);
  if (known) return known;
  const made = new Map<string, Ref[]>();
  for (const { kind, id, from } of namings(catalogue)) {
    const key = `${kind}/${id}`;
    const list = made.get(key);
    if (list) list.push(from);
    else made.set(key, [from]);
  }
  cache.set(catalogue, made);
  return made;
}

/** Every place that names a record, in the order of the records. */
export function usesOf<K extends Kind>(catalogue: Catalogue, kind: K, id: LinkedId<K>): readonly Ref[] {
  return usesByTarget(catalogue).get(`${kind}/${id}`) ?? [];
}

function users<K extends Kind, T>(catalogue: Catalogue, kind: K, id: LinkedId<K>, by: Kind, from: ReadonlyMap<string, T>): readonly T[] {
  const ids = new Set(
    usesOf(catalogue, kind, id)
      .filter((r) => r.kind === by)
      .map((r) => r.id),
  );
  return [...ids].map((i) => entryOf(from, i));
}

/** Conflicts whose conditions name the card. */
export function conflictsOfCard(catalogue: Catalogue, card: LinkedId<"card">): readonly Conflict[] {
  return users(catalogue, "card", card, "conflict", catalogue.conflicts);
}

/** Conflicts whose conditions name the board; those that name no board at all hold for every board and are not listed. */
export function conflictsOfBoard(catalogue: Catalogue, board: LinkedId<"board">): readonly Conflict[] {
  return users(catalogue, "board", board, "conflict", catalogue.conflicts);
}

/** Conflicts whose spans hold a version of the family, or this very version. */
export function conflictsOfFirmware(catalogue: Catalogue, family: LinkedId<"firmware">, version?: string): readonly Conflict[] {
  const of = users(catalogue, "firmware", family, "conflict", catalogue.conflicts);
  if (version === undefined) return of;
  const record = entryOf(catalogue.firmware, family);
  return of.filter((c) => c.when.firmware?.some((span) => inRange(record, version, span)));
}

/** Builds with the card in them; tested ones carry a result. */
export function buildsOfCard(catalogue: Catalogue, card: LinkedId<"card">): readonly Build[] {
  return users(catalogue, "card", card, "build", catalogue.builds).filter((b) => b.cards.some((c) => c.card === card));
}

export function buildsOfBoard(catalogue: Catalogue, board: LinkedId<"board">): readonly Build[] {
  return users(catalogue, "board", board, "build", catalogue.builds);
}

/** Builds that carry a bench result, newest first. */
export function testedBuilds(catalogue: Catalogue): readonly Build[] {
  const tested = [...catalogue.builds.values()].flatMap((build) => (build.result ? [{ build, date: build.result.date }] : []));
  const newestFirst = tested.sort((a, b) => (a.date < b.date ? 1 : a.date > b.date ? -1 : a.build.id < b.build.id ? -1 : 1));
  return newestFirst.map(({ build }) => build);
}

export function cardsOfBus(catalogue: Catalogue, bus: LinkedId<"bus">): readonly Card[] {
  return users(catalogue, "bus", bus, "card", catalogue.cards);
}

export function boardsOfBus(catalogue: Catalogue, bus: LinkedId<"bus">): readonly Board[] {
  return users(catalogue, "bus", bus, "board", catalogue.boards);
}

export function boardsOfFirmware(catalogue: Catalogue, family: LinkedId<"firmware">): readonly Board[] {
  return entryOf(catalogue.firmware, family).boards.flatMap((m) => catalogue.boards.get(m.board) ?? []);
}

export function firmwareOfBoard(catalogue: Catalogue, board: LinkedId<"board">): readonly Firmware[] {
  return entryOf(catalogue.boards, board).firmware.flatMap((id) => catalogue.firmware.get(id) ?? []);
}

export function busOfBoard(catalogue: Catalogue, board: LinkedId<"board">): Bus | undefined {
  return catalogue.buses.get(entryOf(catalogue.boards, board).bus);
}

export function partsOfType<T extends Part["type"]>(catalogue: Catalogue, type: T): readonly Extract<Part, { type: T }>[] {
  return [...catalogue.parts.values()].filter((p): p is Extract<Part, { type: T }> => p.type === type);
}

/** Builds that use the part or have it at hand, and conflicts with a remedy that needs it. */
export function usersOfPart(
  catalogue: Catalogue,
  part: LinkedId<"part">,
): { readonly builds: readonly Build[]; readonly conflicts: readonly Conflict[] } {
  return {
    builds: users(catalogue, "part", part, "build", catalogue.builds),
    conflicts: users(catalogue, "part", part, "conflict", catalogue.conflicts),
  };
}

/** Tested builds a conflict was seen in, by its own evidence or by the build's result. */
export function buildsOfConflict(catalogue: Catalogue, conflict: LinkedId<"conflict">): readonly Build[] {
  const named = users(catalogue, "conflict", conflict, "build", catalogue.builds);
  const own = entryOf(catalogue.conflicts, conflict).evidence.flatMap((e) =>
    e.build === undefined ? [] : (catalogue.builds.get(e.build) ?? []),
  );
  return [...new Set([...named, ...own])];
}

/** Ids of records of a kind that could not be read and so are in no look-up. */
export function unreadIds(catalogue: Catalogue, kind: Kind): readonly string[] {
  const ids = catalogue.unread.filter((unread) => unread.kind === kind).map((unread) => unread.id);
  return [...new Set(ids)].filter((id) => !allOf(catalogue, kind).has(id));
}
