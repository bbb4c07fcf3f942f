// Every place where a record names another record or a thing inside another record: the links of the catalogue.
import type { BoardMatch, Build, FirmwareRange, Kind } from "../records/index.js";
import type { Catalogue } from "./catalogue.js";
import { type Ref, ref } from "./ref.js";

/** A use of another record's id. */
export interface Naming {
  readonly from: Ref;
  readonly kind: Kind;
  readonly id: string;
}

type Path = readonly (string | number)[];

/** All uses of record ids in the catalogue, in file order of the records. */
export function* namings(catalogue: Catalogue): Generator<Naming> {
  for (const board of catalogue.boards.values()) {
    const at = namer("board", board.id);
    yield at("bus", board.bus, "bus");
    for (const [i, id] of board.firmware.entries()) yield at("firmware", id, "firmware", i);
  }
  for (const family of catalogue.firmware.values()) {
    const at = namer("firmware", family.id);
    for (const [i, m] of family.boards.entries()) yield at("board", m.board, "boards", i, "board");
    for (const [i, id] of (family.replaces ?? []).entries()) yield at("firmware", id, "replaces", i);
    for (const [v, version] of family.versions.entries()) {
      for (const [i, m] of (version.boards ?? []).entries()) yield at("board", m.board, "versions", v, "boards", i, "board");
    }
  }
  for (const card of catalogue.cards.values()) {
    const at = namer("card", card.id);
    yield at("bus", card.bus, "bus");
    for (const [i, span] of (card.needs?.firmware ?? []).entries()) yield at("firmware", span.family, "needs", "firmware", i, "family");
    for (const [i, m] of (card.needs?.boards ?? []).entries()) yield at("board", m.board, "needs", "boards", i, "board");
    for (const [i, need] of (card.needs?.cards ?? []).entries()) {
      for (const [j, id] of need.any_of.entries()) yield at("card", id, "needs", "cards", i, "any_of", j);
    }
  }
  for (const conflict of catalogue.conflicts.values()) {
    const at = namer("conflict", conflict.id);
    for (const [i, m] of (conflict.when.boards ?? []).entries()) yield at("board", m.board, "when", "boards", i, "board");
    for (const [i, span] of (conflict.when.firmware ?? []).entries()) yield at("firmware", span.family, "when", "firmware", i, "family");
    for (const [i, c] of (conflict.when.cards ?? []).entries()) yield at("card", c.card, "when", "cards", i, "card");
    for (const [i, r] of (conflict.remedies ?? []).entries()) if (r.part !== undefined) yield at("part", r.part, "remedies", i, "part");
    for (const [i, e] of conflict.evidence.entries()) if (e.build !== undefined) yield at("build", e.build, "evidence", i, "build");
  }
  for (const build of catalogue.builds.values()) yield* namingsOfBuild(build);
}

/** All uses of record ids in one build. */
export function* namingsOfBuild(build: Build): Generator<Naming> {
  const at = namer("build", build.id);
  yield at("board", build.board, "board");
  if (build.firmware !== undefined) yield at("firmware", build.firmware, "firmware");
  for (const [i, c] of build.cards.entries()) yield at("card", c.card, "cards", i, "card");
  for (const [i, c] of (build.stands?.cards ?? []).entries()) yield at("card", c.card, "stands", "cards", i, "card");
  for (const [i, id] of (build.at_hand?.cards ?? []).entries()) yield at("card", id, "at_hand", "cards", i);
  for (const [i, id] of (build.at_hand?.parts ?? []).entries()) yield at("part", id, "at_hand", "parts", i);
  for (const role of ["device", "switch", "connector", "cable"] as const) {
    const id = build.switch?.[role];
    if (id !== undefined) yield at("part", id, "switch", role);
  }
  for (const [i, id] of (build.result?.conflicts ?? []).entries()) yield at("conflict", id, "result", "conflicts", i);
}

function namer(from: Kind, record: string) {
  return (kind: Kind, id: string, ...path: Path): Naming => ({ from: ref(from, record, ...path), kind, id });
}

/** All spans of firmware versions that records give. */
export function* spans(catalogue: Catalogue): Generator<{ readonly from: Ref; readonly span: FirmwareRange }> {
  for (const card of catalogue.cards.values())
    for (const [i, span] of (card.needs?.firmware ?? []).entries()) yield { from: ref("card", card.id, "needs", "firmware", i), span };
  for (const conflict of catalogue.conflicts.values())
    for (const [i, span] of (conflict.when.firmware ?? []).entries())
      yield { from: ref("conflict", conflict.id, "when", "firmware", i), span };
}

/** All places that name a board, perhaps with some of its revisions. */
export function* boardMatches(catalogue: Catalogue): Generator<{ readonly from: Ref; readonly match: BoardMatch }> {
  for (const family of catalogue.firmware.values()) {
    for (const [i, match] of family.boards.entries()) yield { from: ref("firmware", family.id, "boards", i), match };
    for (const [v, version] of family.versions.entries())
      for (const [i, match] of (version.boards ?? []).entries())
        yield { from: ref("firmware", family.id, "versions", v, "boards", i), match };
  }
  for (const card of catalogue.cards.values())
    for (const [i, match] of (card.needs?.boards ?? []).entries()) yield { from: ref("card", card.id, "needs", "boards", i), match };
  for (const conflict of catalogue.conflicts.values())
    for (const [i, match] of (conflict.when.boards ?? []).entries())
      yield { from: ref("conflict", conflict.id, "when", "boards", i), match };
}

export interface SettingUse {
  readonly card: string;
  readonly from: Ref;
  readonly positions: Readonly<Record<string, string | readonly string[]>>;
}

/** All places that name positions of a card's settings. */
export function* settingUses(catalogue: Catalogue): Generator<SettingUse> {
  for (const card of catalogue.cards.values()) {
    for (const [i, c] of (card.claims ?? []).entries())
      if (c.when) yield { card: card.id, from: ref("card", card.id, "claims", i, "when"), positions: c.when };
    for (const [i, c] of (card.impossible ?? []).entries())
      yield { card: card.id, from: ref("card", card.id, "impossible", i, "when"), positions: c.when };
  }
  for (const conflict of catalogue.conflicts.values())
    for (const [i, c] of (conflict.when.cards ?? []).entries())
      if (c.settings) yield { card: c.card, from: ref("conflict", conflict.id, "when", "cards", i, "settings"), positions: c.settings };
  for (const build of catalogue.builds.values()) {
    for (const [i, c] of build.cards.entries())
      if (c.settings) yield { card: c.card, from: ref("build", build.id, "cards", i, "settings"), positions: c.settings };
    for (const [i, c] of (build.stands?.cards ?? []).entries())
      if (c.settings) yield { card: c.card, from: ref("build", build.id, "stands", "cards", i, "settings"), positions: c.settings };
  }
}
