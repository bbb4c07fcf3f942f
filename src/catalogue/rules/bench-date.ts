// A test was made after what it tested was there, and not tomorrow.
import { type Build, itemAt } from "../../records/index.js";
import type { Catalogue } from "../catalogue.js";
import { type Ref, ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";
import { versionIndex } from "../versions.js";

export const benchDate: Rule = {
  name: "bench-date",
  says: "A test lies in the past, and after the firmware, revisions and cards it tested.",
  why: "A test dated before the thing it tested cannot have happened so; one of the dates, or the revision named, is wrong.",
  mend: "Look the date up in the tester's notes, and correct it or the revision, card or firmware that is younger.",
  scope: ["build"],
  *check({ catalogue, today }): Iterable<Draft> {
    for (const build of catalogue.builds.values()) {
      const date = build.result?.date;
      if (date === undefined) continue;
      const at = ref("build", build.id, "result", "date");
      if (today !== undefined && date > today.slice(0, date.length)) {
        yield { says: `The test is dated ${date}, which lies ahead.`, at, hint: "Correct the date." };
        continue;
      }
      for (const { what, date: since, home } of things(catalogue, build)) {
        const n = Math.min(date.length, since.length);
        if (date.slice(0, n) >= since.slice(0, n)) continue;
        yield {
          says: `The test is dated ${date}, but ${what} is of ${since}.`,
          at,
          related: [{ says: `${what} is dated here.`, at: home }],
          hint: "Correct one of the dates, or the version or revision the build names.",
        };
      }
    }
  },
};

function* things(catalogue: Catalogue, build: Build): Iterable<{ what: string; date: string; home: Ref }> {
  const board = catalogue.boards.get(build.board);
  const family = catalogue.firmware.get(build.firmware ?? board?.firmware[0] ?? "");
  const versions = new Set((build.modes ?? []).flatMap((m) => (m.firmware === undefined ? [] : [m.firmware])));
  for (const v of versions) {
    const i = family ? versionIndex(family, v) : -1;
    const date = family?.versions[i]?.date;
    if (family && date !== undefined) yield { what: `${family.name} ${v}`, date, home: ref("firmware", family.id, "versions", i, "date") };
  }
  const b = board?.revisions.findIndex((r) => r.id === build.revision) ?? -1;
  const boardDate = board?.revisions[b]?.date;
  if (board && boardDate !== undefined)
    yield {
      what: `${board.name} revision ${itemAt(board.revisions, b).id}`,
      date: boardDate,
      home: ref("board", board.id, "revisions", b, "date"),
    };
  for (const c of build.cards) {
    const card = catalogue.cards.get(c.card);
    const i = card?.revisions?.findIndex((r) => r.id === c.revision) ?? -1;
    const date = card?.revisions?.[i]?.date;
    if (card && date !== undefined)
      yield { what: `${card.name} revision ${c.revision}`, date, home: ref("card", card.id, "revisions", i, "date") };
  }
}
