// Pages that are lists: what stands under which heading is decided by the records, not by how their pages are called.
import { expect, test } from "vitest";
import type { Context } from "../../src/pages/common.js";
import { buildList } from "../../src/pages/lists.js";
import { smallClub, tested } from "../planning/support/small-club.js";

test("tested builds stand under their board, whatever their ids make of the addresses of their pages", () => {
  const ids = ["index", "loop-sheet", "loop"];
  const catalogue = smallClub({ builds: ids.map((id) => tested(id, [{ card: "a", slot: "S1" }])) });
  const ctx: Context = { catalogue, lineOf: () => undefined };
  const list = buildList(ctx);
  expect(list.groups.map((g) => [g.title, g.lines.map((l) => l.link.text).sort()])).toEqual([["Board", [...ids].sort()]]);
  expect(new Set(list.groups.flatMap((g) => g.lines.map((l) => l.link.href))).size).toBe(ids.length);
});
