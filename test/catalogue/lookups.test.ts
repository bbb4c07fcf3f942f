// Look-ups over the links, and the type that only the linker makes.
import { describe, expect, expectTypeOf, test } from "vitest";
import * as C from "../../src/catalogue/index.js";
import { linkClub, testClub } from "../support/club.js";

const club = testClub();
club.card.other = { ...club.card.tc!, id: "other", name: "Other card", model: "other" };
club.build.question = { id: "question", name: "Question", board: "tb-1", cards: [], stands: { cards: [{ card: "other" }] } };
club.build.older = {
  id: "older",
  name: "Older",
  board: "tb-1",
  revision: "A",
  modes: [{ id: "day", firmware: "R1" }],
  cards: [],
  result: { by: "Ann", date: "1989", outcome: "worked" },
};
const { catalogue, findings } = linkClub(club);
const id = <K extends Parameters<typeof C.linkedId>[1]>(kind: K, name: string) => C.linkedId(catalogue, kind, name)!;
const ids = (list: readonly { readonly id: string }[]) => list.map((r) => r.id);

test("the club of this test is in order", () => expect(findings).toEqual([]));

describe("look-ups", () => {
  test("conflicts by card, board, firmware and version", () => {
    expect(ids(C.conflictsOfCard(catalogue, id("card", "tc")))).toEqual(["tx"]);
    expect(ids(C.conflictsOfCard(catalogue, id("card", "other")))).toEqual([]);
    expect(ids(C.conflictsOfBoard(catalogue, id("board", "tb-1")))).toEqual(["tx"]);
    expect(ids(C.conflictsOfFirmware(catalogue, id("firmware", "tm")))).toEqual(["tx"]);
    expect(ids(C.conflictsOfFirmware(catalogue, id("firmware", "tm"), "R1"))).toEqual([]);
    expect(ids(C.conflictsOfFirmware(catalogue, id("firmware", "tm"), "R1A"))).toEqual(["tx"]);
  });

  test("builds by card and board; a card that only stands in the machine now is not in the build", () => {
    expect(ids(C.buildsOfCard(catalogue, id("card", "tc")))).toEqual(["tbd"]);
    expect(ids(C.buildsOfCard(catalogue, id("card", "other")))).toEqual([]);
    expect(ids(C.buildsOfBoard(catalogue, id("board", "tb-1")))).toEqual(["older", "question", "tbd"]);
    expect(ids(C.testedBuilds(catalogue)), "newest first").toEqual(["tbd", "older"]);
  });

  test("cards and boards by bus, firmware by board, parts by type and by use", () => {
    expect(ids(C.cardsOfBus(catalogue, id("bus", "tb")))).toEqual(["other", "tc"]);
    expect(ids(C.boardsOfBus(catalogue, id("bus", "tb")))).toEqual(["tb-1"]);
    expect(ids(C.firmwareOfBoard(catalogue, id("board", "tb-1")))).toEqual(["tm"]);
    expect(ids(C.boardsOfFirmware(catalogue, id("firmware", "tm")))).toEqual(["tb-1"]);
    expect(C.partsOfType(catalogue, "switch").map((s) => s.positions)).toEqual([["up", "down"]]);
    expect(ids(C.usersOfPart(catalogue, id("part", "t-27c256")).builds)).toEqual(["tbd"]);
    expect(ids(C.buildsOfConflict(catalogue, id("conflict", "tx")))).toEqual(["tbd"]);
  });

  test("every use of a record has a place", () => {
    const uses = C.usesOf(catalogue, "card", id("card", "tc")).map((r) => {
      const at = C.placeOf(catalogue, r);
      return `${at.file}:${at.line} ${at.text?.trim()}`;
    });
    expect(uses).toHaveLength(4);
    expect(new Set(uses).size).toBe(4);
    for (const use of uses) expect(use).toMatch(/^(builds|conflicts)\/\w+\.yaml:\d+ .*tc/);
  });
});

describe("types", () => {
  test("a plain text is no linked id, nor is the id of another kind", () => {
    expect(C.linkedId(catalogue, "card", "nobody")).toBeUndefined();
    // @ts-expect-error a text that nobody looked up
    C.conflictsOfCard(catalogue, "tc");
    // @ts-expect-error the id of a board where a card is asked for
    C.conflictsOfCard(catalogue, id("board", "tb-1"));
    expectTypeOf(C.recordOf(catalogue, "card", id("card", "tc")).edge).toBeString();
  });
});
