// Clubs whose names no longer match: linking never throws, tells something, and every finding has a place in a file.
import fc from "fast-check";
import { expect, test } from "vitest";
import { link } from "../../src/catalogue/index.js";
import { type Kind, kinds, type Loaded, readRecords, writeRecord } from "../../src/records/index.js";
import { testClub } from "../support/club.js";
import { spellOutBoard, spellOutCard } from "../support/spell-out.js";

type Path = readonly (string | number)[];

/** Every text, number and list entry of a value, as paths. */
function leaves(value: unknown, path: Path = []): readonly Path[] {
  if (typeof value !== "object" || value === null) return [path];
  const inner = Object.entries(value).flatMap(([k, v]) => leaves(v, [...path, Array.isArray(value) ? Number(k) : k]));
  return Array.isArray(value) && value.length > 1 ? [...inner, ...value.map((_, i) => [...path, i])] : inner;
}

const words = [
  "tc",
  "tb",
  "tb-1",
  "tm",
  "tx",
  "tbd",
  "t-switch",
  "S1",
  "S2",
  "J1",
  "J2",
  "300",
  "R1",
  "R1A",
  "A",
  "B",
  "I2",
  "I9",
  "+5",
  "long",
  "day",
  "man",
  "nobody",
  "1990",
  "2001-02-30",
];

test("shuffled names and numbers", () => {
  const seen = { clean: 0, told: 0, unread: 0 };
  const change = fc.record({ record: fc.nat(), spot: fc.nat(), how: fc.constantFrom("word", "number", "drop"), by: fc.nat() });
  fc.assert(
    fc.property(fc.array(change, { minLength: 1, maxLength: 5 }), (changes) => {
      const club = testClub();
      for (const [id, card] of Object.entries(club.card)) club.card[id] = spellOutCard(card);
      for (const [id, board] of Object.entries(club.board)) club.board[id] = spellOutBoard(board);
      const all = (Object.keys(kinds) as Kind[]).flatMap((kind) =>
        Object.values(club[kind]).map((record) => ({ kind, record: record as object })),
      );
      for (const { record, spot, how, by } of changes) {
        const target = all[record % all.length]!.record;
        const spots = leaves(target);
        const path = spots[spot % spots.length]!;
        let at = target as Record<string | number, unknown>;
        for (const p of path.slice(0, -1)) at = at[p] as typeof at;
        const last = path.at(-1)!;
        if (how === "drop" && Array.isArray(at)) at.splice(Number(last), 1);
        else if (how === "drop") delete at[last];
        else if (how === "number" && typeof at[last] === "number") at[last] = [0, 1, 7, 0x10000, 3e9][by % 5];
        else if (typeof at[last] === "string") at[last] = words[by % words.length];
      }
      const files = all.map(({ kind, record }, i) => ({
        file: `${kinds[kind].folder}/f${i}.yaml`,
        content: writeRecord(kind, record as Loaded["record"]),
      }));
      const reading = readRecords(files);
      const { findings } = link(reading.records, { failed: reading.failed, today: "2000-01-01" });
      const rest = findings.filter((f) => f.code !== "rule-file-name");
      seen[reading.failed.length > 0 ? "unread" : rest.length > 0 ? "told" : "clean"] += 1;
      for (const f of findings) {
        for (const at of [f.at, ...(f.related ?? []).map((r) => r.at)]) expect(at.text, `${f.says} ${at.file}${at.pointer}`).toBeTruthy();
        expect(f.says).not.toMatch(/undefined|NaN|\[object/);
      }
    }),
    { numRuns: 120, seed: 5 },
  );
  expect(Math.min(seen.clean, seen.told, seen.unread), JSON.stringify(seen)).toBeGreaterThan(5);
});
