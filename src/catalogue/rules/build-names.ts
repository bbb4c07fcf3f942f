// A build names revisions, slots, versions and copies that its board, firmware and cards have.
import { type Build, bytes, sizeText } from "../../records/index.js";
import type { Catalogue } from "../catalogue.js";
import { copyName, findCopies } from "../copies.js";
import { type Ref, ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";
import { noSuch } from "../say.js";

export const buildNames: Rule = {
  name: "build-names",
  says: "A build names revisions, slots, memory, versions and copies that its board, firmware and cards have.",
  scope: ["build"],
  *check({ catalogue }): Iterable<Draft> {
    for (const build of catalogue.builds.values()) {
      yield* ofBoard(catalogue, build);
      yield* ofFirmware(catalogue, build);
      yield* ofCards(catalogue, build);
    }
  },
};

function* ofBoard(catalogue: Catalogue, build: Build): Iterable<Draft> {
  const board = catalogue.boards.get(build.board);
  if (!board) return;
  const place = (...path: (string | number)[]) => ref("build", build.id, ...path);
  const revisions = board.revisions.map((r) => r.id);
  const named: [string, Ref][] =
    typeof build.revision === "string"
      ? [[build.revision, place("revision")]]
      : (build.revision ?? []).map((r, i): [string, Ref] => [r, place("revision", i)]);
  if (build.stands?.revision !== undefined) named.push([build.stands.revision, place("stands", "revision")]);
  for (const [r, at] of named) {
    if (!revisions.includes(r)) yield noSuch(`revision of ${board.name}`, r, revisions, at, ref("board", board.id, "revisions"));
  }
  const options = board.memory?.options.map(bytes);
  for (const [size, at] of [
    [build.memory, place("memory")],
    [build.stands?.memory, place("stands", "memory")],
  ] as const) {
    if (size === undefined || !options || options.includes(bytes(size))) continue;
    yield {
      says: `${board.name} cannot be fitted with ${sizeText(bytes(size))}.`,
      at,
      expected: `one of: ${options.map(sizeText).join(", ")}`,
      actual: sizeText(bytes(size)),
      related: [{ says: "The amounts are given here.", at: ref("board", board.id, "memory", "options") }],
      hint: "Correct the amount, or add it to the board.",
    };
  }
  const slots = board.slots.map((s) => s.id);
  for (const list of ["cards", "stands"] as const) {
    const cards = list === "cards" ? build.cards : (build.stands?.cards ?? []);
    for (const [i, c] of cards.entries()) {
      if (c.slot === undefined || slots.includes(c.slot)) continue;
      const at = list === "cards" ? place("cards", i, "slot") : place("stands", "cards", i, "slot");
      yield noSuch(`slot on ${board.name}`, c.slot, slots, at, ref("board", board.id, "slots"));
    }
  }
}

function* ofFirmware(catalogue: Catalogue, build: Build): Iterable<Draft> {
  const board = catalogue.boards.get(build.board);
  const family = catalogue.firmware.get(build.firmware ?? board?.firmware[0] ?? "");
  if (!family) return;
  const place = (...path: (string | number)[]) => ref("build", build.id, ...path);
  const named: [string | undefined, Ref][] = [
    ...(build.modes ?? []).map((m, i): [string | undefined, Ref] => [m.firmware, place("modes", i, "firmware")]),
    ...(build.at_hand?.firmware ?? []).map((v, i): [string, Ref] => [v, place("at_hand", "firmware", i)]),
    [build.stands?.firmware, place("stands", "firmware")],
  ];
  const versions = family.versions.map((v) => v.id);
  for (const [v, at] of named) {
    if (v === undefined || versions.includes(v)) continue;
    yield noSuch(`version of ${family.name}`, v, versions, at, ref("firmware", family.id, "versions"));
  }
  if (build.firmware !== undefined && board && !board.firmware.includes(build.firmware)) {
    yield {
      says: `${family.name} is not firmware of ${board.name}.`,
      at: place("firmware"),
      expected: `one of: ${board.firmware.join(", ")}`,
      actual: build.firmware,
      related: [{ says: "The board's firmware is named here.", at: ref("board", board.id, "firmware") }],
      hint: "Correct it, or leave it out to take the board's first family.",
    };
  }
}

function* ofCards(catalogue: Catalogue, build: Build): Iterable<Draft> {
  const copies = build.cards.map(copyName);
  for (const [i, mode] of (build.modes ?? []).entries()) {
    for (const [j, name] of (mode.cards ?? []).entries()) {
      if (findCopies(build.cards, name).length === 0)
        yield noSuch("card in this build", name, copies, ref("build", build.id, "modes", i, "cards", j), ref("build", build.id, "cards"));
    }
  }
  for (const list of ["cards", "stands"] as const) {
    const cards = list === "cards" ? build.cards : (build.stands?.cards ?? []);
    for (const [i, c] of cards.entries()) {
      const card = catalogue.cards.get(c.card);
      if (!card || c.revision === undefined || card.revisions?.some((r) => r.id === c.revision)) continue;
      const at =
        list === "cards" ? ref("build", build.id, "cards", i, "revision") : ref("build", build.id, "stands", "cards", i, "revision");
      const names = (card.revisions ?? []).map((r) => r.id);
      yield noSuch(`revision of ${card.name}`, c.revision, names, at, ref("card", card.id, card.revisions ? "revisions" : "id"));
    }
  }
}
