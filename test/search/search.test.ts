// The small search index: exact numbers, symptoms in people's own words, typing errors, filters.
import { describe, expect, it } from "vitest";
import { finder } from "../../src/search/find.js";
import { askedTerms, asName, root, termsOf } from "../../src/search/terms.js";
import { entries } from "../publish/search-entries.js";

const { find } = finder(entries);

describe("terms", () => {
  it.each([
    ["hangs", "hang"],
    ["hanging", "hang"],
    ["stopped", "stop"],
    ["memories", "memory"],
    ["address", "address"],
    ["R5.1", "R5.1"],
  ])("%s is sought as %s", (word, stem) => expect(root(word)).toBe(stem));

  it("take everyday words for one", () => {
    expect(askedTerms("freezes")).toEqual(["freez", ...termsOf("hangs")]);
    expect(askedTerms("reboots")).toEqual(["reboot", ...termsOf("restarts")]);
  });

  it("keep a number whole in a question, and in parts in a record", () => {
    expect(askedTerms("FS-200")).toEqual(["fs200"]);
    expect(termsOf("FS-200")).toEqual(["fs200", "fs", "200"]);
    expect(asName("fs 200")).toBe("fs200");
  });
});

describe("finding", () => {
  const cards = entries.filter((e) => e.kind === "card");

  it("puts the very thing first for every model number and every name", () => {
    const missed = entries
      .filter((e) => e.kind === "card" || e.kind === "board" || e.kind === "part")
      .flatMap((e) => [e.title, e.names[0]!].map((asked) => ({ asked, wanted: e })))
      .filter(({ asked, wanted }) => {
        const [first] = find(asked);
        return !(
          first?.how === "exact" &&
          [first.entry.title, ...first.entry.names].map(asName).includes(asName(asked)) &&
          first.entry.kind === wanted.kind
        );
      });
    expect(missed.map((m) => m.asked)).toEqual([]);
  });

  it("finds each problem by each of its symptoms, among the first five", () => {
    const problems = entries.filter((e) => e.kind === "known problem");
    expect(problems.length).toBeGreaterThan(50);
    const missed = problems.flatMap((p) =>
      p.symptoms.filter(
        (s) =>
          !find(s)
            .slice(0, 5)
            .some((h) => h.entry.href === p.href || h.entry.symptoms.includes(s)),
      ),
    );
    expect(missed).toEqual([]);
  });

  it("forgives one wrong, missing or doubled letter in a card's name", () => {
    const missed = cards.flatMap((c) => {
      const [first = "", ...rest] = c.title.split(" ");
      if (first.length < 6) return [];
      const slips = [
        first.slice(0, 3) + first.slice(4),
        `${first.slice(0, 4)}${first[3]}${first.slice(4)}`,
        `${first.slice(0, 3)}q${first.slice(4)}`,
      ];
      return slips
        .map((s) => [s, ...rest].join(" "))
        .filter(
          (asked) =>
            !find(asked)
              .slice(0, 4)
              .some((h) => h.entry.title === c.title),
        );
    });
    expect(missed).toEqual([]);
  });

  it("keeps to its filters", () => {
    const hits = find("disk", { kind: "known problem" });
    expect(hits.length).toBeGreaterThan(0);
    expect(hits.every((h) => h.entry.kind === "known problem")).toBe(true);
    const board = entries.find((e) => e.kind === "board")!.title;
    const there = find("disk", { board, verdict: "works" });
    expect(there.length).toBeGreaterThan(0);
    expect(there.every((h) => h.entry.boards.includes(board) && h.entry.verdict === "works")).toBe(true);
  });

  it("finds nothing for nothing, and says so for nonsense", () => {
    expect(find("")).toEqual([]);
    expect(find("qqqq zzzz xxxx").filter((h) => h.how !== "near")).toEqual([]);
  });
});
