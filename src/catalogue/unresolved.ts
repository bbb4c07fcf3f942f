// What a build names and the records do not have: ids of records, and revisions, slots, versions, copies and positions inside them.
// One function for every command and page that takes a build, and for the house rules, so that none lets through what another refuses.
import { type Build, type BuildCard, bytes, goesBy, type Kind } from "../records/index.js";
import { referencesOfBuild } from "./build-references.js";
import { allOf, type Catalogue } from "./catalogue.js";
import { copyName, findCopies } from "./copies.js";
import { type Ref, ref } from "./ref.js";
import { mainMemory } from "./unsaid.js";

export interface Unresolved {
  /** Steps into the build. */
  readonly path: readonly (string | number)[];
  /** The name stands as a field name, not as a value. */
  readonly on?: "key";
  /** A record, a name inside a record, an amount of memory, or a part that is there but of another type. */
  readonly about: "record" | "name" | "memory" | "part-type";
  /** Of `record`: its kind. */
  readonly kind?: Kind;
  /** What it should be, in trade words: "slot of Skerry 16". */
  readonly what: string;
  readonly name: string;
  /** Names that would do. */
  readonly declared: readonly string[];
  /** Where they are declared, when in another record or elsewhere in this one. */
  readonly home?: Ref | undefined;
}

/** Types of part that the choices of a switched machine ask for. */
export const partTypes = { device: "memory", switch: "switch", connector: "connector", cable: "cable" } as const;

/** What a record of a kind is called in a sentence. */
export function kindWord(kind: Kind): string {
  return kind === "firmware" ? "firmware family" : kind;
}

/** Everything a build names that cannot be found, nor is in a file that could not be read, in the order of its fields as far as they are checked one by one. */
export function unresolvedNames(catalogue: Catalogue, build: Build): readonly Unresolved[] {
  return [
    ...recordsNamed(catalogue, build),
    ...ofBoard(catalogue, build),
    ...ofFirmware(catalogue, build),
    ...ofCards(catalogue, build),
    ...ofParts(catalogue, build),
    ...ofResult(build),
  ];
}

function* recordsNamed(catalogue: Catalogue, build: Build): Iterable<Unresolved> {
  for (const { kind, id, path } of referencesOfBuild(build)) {
    const of = allOf(catalogue, kind);
    if (of.has(id) || catalogue.unread.some((unread) => goesBy(unread, kind, id))) continue;
    yield { path, about: "record", kind, what: kindWord(kind), name: id, declared: [...of.keys()] };
  }
}

function* ofBoard(catalogue: Catalogue, build: Build): Iterable<Unresolved> {
  const board = catalogue.boards.get(build.board);
  if (!board) return;
  const revisions = board.revisions.map((r) => r.id);
  const named: (readonly [string | undefined, Unresolved["path"]])[] = [
    ...(typeof build.revision === "string"
      ? [[build.revision, ["revision"]] as const]
      : (build.revision ?? []).map((r, i) => [r, ["revision", i]] as const)),
    [build.stands?.revision, ["stands", "revision"]],
  ];
  for (const [name, path] of named)
    yield* missing(name, revisions, { path, what: `revision of ${board.name}`, home: ref("board", board.id, "revisions") });
  const options = mainMemory(board)?.options.map(bytes);
  for (const [size, path] of [
    [build.memory, ["memory"]],
    [build.stands?.memory, ["stands", "memory"]],
  ] as const) {
    if (size === undefined || !options || options.includes(bytes(size))) continue;
    const home = ref("board", board.id, "memory", "options");
    yield { path, about: "memory", what: board.name, name: String(bytes(size)), declared: options.map(String), home };
  }
  const slots = board.slots.map((s) => s.id);
  for (const { card, path } of everyCard(build))
    yield* missing(card.slot, slots, { path: [...path, "slot"], what: `slot on ${board.name}`, home: ref("board", board.id, "slots") });
}

function* ofFirmware(catalogue: Catalogue, build: Build): Iterable<Unresolved> {
  const board = catalogue.boards.get(build.board);
  const family = catalogue.firmware.get(build.firmware ?? board?.firmware[0] ?? "");
  if (!family) return;
  const versions = family.versions.map((v) => v.id);
  const home = ref("firmware", family.id, "versions");
  const what = `version of ${family.name}`;
  for (const [i, m] of (build.modes ?? []).entries()) yield* missing(m.firmware, versions, { path: ["modes", i, "firmware"], what, home });
  for (const [i, w] of (build.wishes?.together ?? []).entries())
    yield* missing(w.firmware, versions, { path: ["wishes", "together", i, "firmware"], what, home });
  // What lies in a drawer, or is in the machine today, may be of another family than the one that is asked about: of any that there is,
  // and of one whose record could not be read as well.
  if (catalogue.unread.some((unread) => unread.kind === undefined || unread.kind === "firmware")) return;
  const any = new Set([...catalogue.firmware.values()].flatMap((f) => f.versions.map((v) => v.id)));
  for (const [i, v] of (build.at_hand?.firmware ?? []).entries())
    if (!any.has(v)) yield* missing(v, versions, { path: ["at_hand", "firmware", i], what, home });
  const now = build.stands?.firmware;
  if (now !== undefined && !any.has(now)) yield* missing(now, versions, { path: ["stands", "firmware"], what, home });
}

function* ofCards(catalogue: Catalogue, build: Build): Iterable<Unresolved> {
  const copies = build.cards.map(copyName);
  for (const { name, path } of copiesNamed(build))
    if (findCopies(build.cards, name).length === 0)
      yield* missing(name, copies, { path, what: "card in this build", home: ref("build", build.id, "cards") });
  for (const { card: chosen, path } of everyCard(build)) {
    const card = catalogue.cards.get(chosen.card);
    if (!card) continue;
    yield* missing(chosen.revision, card.revisions?.map((r) => r.id) ?? [], {
      path: [...path, "revision"],
      what: `revision of ${card.name}`,
      home: ref("card", card.id, card.revisions ? "revisions" : "id"),
    });
    const settings = card.settings ?? [];
    for (const [id, position] of Object.entries(chosen.settings ?? {})) {
      const at = settings.findIndex((s) => s.id === id);
      const setting = settings[at];
      const where = { path: [...path, "settings", id] };
      if (!setting) {
        const names = settings.map((s) => s.id);
        const home = ref("card", card.id, card.settings ? "settings" : "id");
        yield* missing(id, names, { ...where, what: `setting of ${card.name}`, home, on: "key" });
        continue;
      }
      const names = setting.positions.map((p) => p.id);
      const home = ref("card", card.id, "settings", at, "positions");
      yield* missing(position, names, { ...where, what: `position of ${id} on ${card.name}`, home });
    }
  }
}

function* ofParts(catalogue: Catalogue, build: Build): Iterable<Unresolved> {
  for (const role of Object.keys(partTypes) as (keyof typeof partTypes)[]) {
    const part = catalogue.parts.get(build.switch?.[role] ?? "");
    const type = partTypes[role];
    if (!part || part.type === type) continue;
    const declared = [...catalogue.parts.values()].filter((p) => p.type === type).map((p) => p.id);
    const what = type === "memory" ? "memory device" : type;
    yield { path: ["switch", role], about: "part-type", what, name: part.id, declared, home: ref("part", part.id, "type") };
  }
}

function* ofResult(build: Build): Iterable<Unresolved> {
  const modes = (build.modes ?? []).map((m) => m.id);
  const home = build.modes ? ref("build", build.id, "modes") : undefined;
  for (const [i, m] of (build.result?.modes ?? []).entries())
    yield* missing(m.mode, modes, { path: ["result", "modes", i, "mode"], what: "mode in this build", home });
}

/** Names of copies in modes and wishes, each with where it is written. */
function* copiesNamed({
  modes = [],
  wishes = {},
}: Build): Iterable<{ readonly name: string; readonly path: readonly (string | number)[] }> {
  const lists: (readonly [readonly string[] | undefined, Unresolved["path"]])[] = [
    ...modes.map((m, i) => [m.cards, ["modes", i, "cards"]] as const),
    ...modes.map((m, i) => [m.on_or_off, ["modes", i, "on_or_off"]] as const),
    ...(wishes.together ?? []).map((w, i) => [w.cards, ["wishes", "together", i, "cards"]] as const),
    [wishes.always, ["wishes", "always"]],
    [wishes.alone, ["wishes", "alone"]],
  ];
  for (const [names, path] of lists) for (const [at, name] of (names ?? []).entries()) yield { name, path: [...path, at] };
}

/** Cards of the machine as it is wanted and as it stands, each with where it is written. */
function* everyCard(build: Build): Iterable<{ readonly card: BuildCard; readonly path: readonly (string | number)[] }> {
  for (const [i, card] of build.cards.entries()) yield { card, path: ["cards", i] };
  for (const [i, card] of (build.stands?.cards ?? []).entries()) yield { card, path: ["stands", "cards", i] };
}

function* missing(
  name: string | undefined,
  declared: readonly string[],
  about: Pick<Unresolved, "path" | "what" | "home" | "on">,
): Iterable<Unresolved> {
  if (name !== undefined && !declared.includes(name)) yield { about: "name", name, declared, ...about };
}
