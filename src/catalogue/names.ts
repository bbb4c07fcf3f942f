// Every place where a record names another record or a thing inside another record: the links of the catalogue.
import { type BoardMatch, type Build, type FirmwareRange, type Kind, kinds, listed, references } from "../records/index.js";
import { referencesOfBuild } from "./build-references.js";
import { allOf, type Catalogue } from "./catalogue.js";
import { type Ref, ref } from "./ref.js";

/** A use of another record's id. */
export interface Naming {
  readonly from: Ref;
  readonly kind: Kind;
  readonly id: string;
}

/** All uses of record ids in the catalogue, kind by kind, in file order of the records. */
export function* namings(catalogue: Catalogue): Generator<Naming> {
  for (const from of Object.keys(kinds) as Kind[])
    for (const record of allOf(catalogue, from).values())
      for (const { kind, id, path } of references(from, record)) yield { from: ref(from, record.id, ...path), kind, id };
}

/** All uses of record ids in one build. */
export function* namingsOfBuild(build: Build): Generator<Naming> {
  for (const { kind, id, path } of referencesOfBuild(build)) yield { from: ref("build", build.id, ...path), kind, id };
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

/** All places in cards and conflicts that name positions of a card's settings; what builds name is looked up in `unresolved.ts`. */
export function* settingUses(catalogue: Catalogue): Generator<SettingUse> {
  for (const card of catalogue.cards.values()) {
    for (const [i, c] of listed(card.claims).entries())
      if (c.when) yield { card: card.id, from: ref("card", card.id, "claims", i, "when"), positions: c.when };
    for (const [i, c] of (card.impossible ?? []).entries())
      yield { card: card.id, from: ref("card", card.id, "impossible", i, "when"), positions: c.when };
  }
  for (const conflict of catalogue.conflicts.values())
    for (const [i, c] of (conflict.when.cards ?? []).entries())
      if (c.settings) yield { card: c.card, from: ref("conflict", conflict.id, "when", "cards", i, "settings"), positions: c.settings };
}
