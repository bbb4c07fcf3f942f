// One question, one answer: whatever the built site states (page, drawing beside a word, search entry, export) is read back from its data
// and must be what planning says when it is asked the same question. A sample with a fixed seed; everything when LONG is set.
import { describe, expect, it } from "vitest";
import type { SearchEntry } from "../../src/pages/index.js";
import { evidenceWords, outcomeWords, type Verdict, verdictOrder, verdictWords } from "../../src/words/index.js";
import { demo } from "../support/demo.js";
import { Random } from "../support/solver/random.js";
import { type Element, pages, read } from "./built.js";
import { asker, bestOf, text } from "./support/ask.js";
import { exportedOf, foundOf, isExample, type Statement, statementsOf } from "./support/statements.js";

const club = demo();
const ask = asker(club);
const onPages = pages.flatMap(statementsOf);
const search = JSON.parse(
  read("assets/search-data.js")
    .replace(/^[^=]*=/, "")
    .replace(/;\s*$/, ""),
) as SearchEntry[];
const stated: readonly Statement[] = [
  ...onPages,
  ...foundOf(search),
  ...exportedOf("data/verdicts.json", (JSON.parse(read("data/verdicts.json")) as { verdicts: never[] }).verdicts),
];

/** So many of a list, drawn with a fixed seed; all of it in a long run. */
function drawn<T>(list: readonly T[], many: number, seed: number): readonly T[] {
  if (process.env.LONG) return list;
  const random = new Random(seed);
  return [...list]
    .map((item) => ({ item, at: random.next() }))
    .sort((a, b) => a.at - b.at)
    .slice(0, many)
    .map(({ item }) => item);
}

const disagreements = (list: readonly Statement[]) =>
  list.flatMap((s) => {
    const told = bestOf(s, ask);
    const same = told.verdict === s.verdict && (s.evidence === undefined || s.evidence === told.evidence);
    return same ? [] : [`${s.place}: states ${text(s)}; planning says ${text(told)} of ${s.asks.join(" or ")}`];
  });

describe("every mark of the site", () => {
  const kinds = ["data-verdict", "data-outcome", "data-effect"] as const;
  const marks = pages.flatMap((p) => p.all.filter((e) => /(^| )(mk|mark)( |$)/.test(e.attributes.class ?? "")).map((e) => ({ p, e })));
  const stating = (e: Element | undefined): Element | undefined =>
    !e || kinds.some((k) => e.attributes[k] !== undefined) ? e : stating(e.parent);

  it("states what it is a mark of, or explains the marks", () => {
    expect(marks.length).toBeGreaterThan(3000);
    expect(marks.filter(({ e }) => !stating(e) && !isExample(e)).map(({ p, e }) => `${p.name}: ${e.text}`)).toEqual([]);
  });

  it("says in words what it states", () => {
    const wrong = marks.flatMap(({ p, e }) => {
      const { "data-verdict": verdict, "data-evidence": evidence } = e.attributes;
      if (verdict === undefined) return [];
      const part = (css: string) => e.children.find((c) => c.attributes.class === css)?.text;
      const word = verdictWords[verdict as Verdict];
      const sure = evidence === undefined ? undefined : `, ${evidenceWords[evidence as keyof typeof evidenceWords].word}`;
      const right = part("word") === word.word && part("ev") === sure && e.attributes.class === `mark ${word.css}`;
      return right ? [] : [`${p.name}: ${e.text}`];
    });
    expect(wrong).toEqual([]);
  });

  it("of a bench result is what the record says", () => {
    const results = pages.flatMap((p) => p.all.filter((e) => e.attributes["data-outcome"] !== undefined));
    expect(results.length).toBeGreaterThan(club.builds.size);
    for (const { attributes, children } of results) {
      const result = club.builds.get(attributes["data-build"] ?? "")?.result;
      const mode = attributes["data-mode"];
      const outcome = mode === undefined ? result?.outcome : result?.modes?.find((m) => m.mode === mode)?.outcome;
      expect(attributes["data-outcome"], attributes["data-build"]).toBe(outcome);
      expect(children.find((c) => c.attributes.class === "word")?.text).toBe(outcome && outcomeWords[outcome].word);
    }
  });

  it("of a known problem is what the record says", () => {
    const problems = pages.flatMap((p) => p.all.filter((e) => e.attributes["data-effect"] !== undefined));
    expect(problems.length).toBeGreaterThan(club.conflicts.size);
    for (const { attributes } of problems) {
      const conflict = club.conflicts.get(attributes["data-conflict"] ?? "");
      expect([attributes["data-effect"], attributes["data-status"]]).toEqual([conflict?.effect, conflict?.status]);
    }
  });
});

describe("a question", () => {
  it("is answered alike wherever it is answered", () => {
    const byQuestion = new Map<string, Statement[]>();
    for (const s of stated) {
      const key = [...s.asks].sort().join(" ");
      const before = byQuestion.get(key);
      if (before) before.push(s);
      else byQuestion.set(key, [s]);
    }
    expect(byQuestion.size).toBeGreaterThan(2000);
    const differ = [...byQuestion.values()].filter(
      (list) => new Set(list.map((s) => s.verdict)).size > 1 || new Set(list.flatMap((s) => s.evidence ?? [])).size > 1,
    );
    expect(differ.map((list) => list.map((s) => `${s.place}: ${text(s)}`))).toEqual([]);
  });

  it("is asked in every kind of place", () => {
    const places = [
      "matrix/",
      "cards/index",
      "cards/gannet",
      "firmware/",
      "builds/index",
      "builds/",
      "-sheet.html",
      "search ",
      "data/verdicts.json",
    ];
    const quiet = places.filter((place) => !stated.some((s) => s.place.includes(place)));
    // The list of builds tells results; what the records say of each stands on its page.
    expect(quiet).toEqual(["builds/index"]);
  });

  it("of the matrix is answered as planning answers it", () => {
    expect(
      disagreements(
        drawn(
          stated.filter((s) => s.place.startsWith("data/verdicts")),
          150,
          7,
        ),
      ),
    ).toEqual([]);
  });

  it("of one or several machines is answered as planning answers it", () => {
    const others = stated.filter(
      (s) => !s.place.startsWith("data/verdicts") && !s.place.startsWith("matrix/") && !s.place.includes("<span> "),
    );
    const cards = others.filter((s) => s.place.startsWith("cards/"));
    expect(disagreements(drawn(cards, 60, 8))).toEqual([]);
    expect(
      disagreements(
        drawn(
          others.filter((s) => !cards.includes(s)),
          60,
          9,
        ),
      ),
    ).toEqual([]);
  });
});

describe("a best case", () => {
  it("is the best of all cells of its card, and the mark names the machine it is of", () => {
    const cells = stated.filter((s) => s.place.startsWith("data/verdicts"));
    const rank = (s: Statement) => verdictOrder.indexOf(s.verdict);
    for (const { id } of club.cards.values()) {
      const own = cells.filter((s) => s.asks[0]?.includes(`c=${id}`) && s.asks[0].split(/[&;]/).includes(`c=${id}`));
      const top = onPages.find((s) => s.place.startsWith(`cards/${id}.html `));
      expect(top && rank(top), id).toBe(Math.min(...own.map(rank)));
    }
  });
});

describe("a count of answers", () => {
  it("is the count of the best answers in the matrix", () => {
    const cells = statementsByMachine();
    const counts = pages.flatMap((p) => p.all.filter((e) => e.attributes["data-counts"] !== undefined).map((e) => ({ p, e })));
    expect(counts.length).toBeGreaterThan(20);
    for (const { p, e } of counts) {
      const machine = cells.get(e.attributes["data-asks"] ?? "");
      const best = [...(machine?.values() ?? [])].map((verdicts) => verdictOrder.find((v) => verdicts.includes(v)));
      const told = Object.fromEntries((e.attributes["data-counts"] ?? "").split(" ").map((pair) => pair.split(":")));
      for (const v of verdictOrder) expect(Number(told[v] ?? 0), `${p.name} ${v}`).toBe(best.filter((b) => b === v).length);
    }
  });

  /** Verdicts of the matrices by machine ("b=...&r=..."), then by card. */
  function statementsByMachine(): ReadonlyMap<string, ReadonlyMap<string, Verdict[]>> {
    const { verdicts } = JSON.parse(read("data/verdicts.json")) as {
      verdicts: { board: string; revision: string; card: string; verdict: Verdict }[];
    };
    const machines = new Map<string, Map<string, Verdict[]>>();
    for (const v of verdicts) {
      const key = `b=${v.board}&r=${v.revision}`;
      const cards = machines.get(key) ?? new Map<string, Verdict[]>();
      cards.set(v.card, [...(cards.get(v.card) ?? []), v.verdict]);
      machines.set(key, cards);
    }
    return machines;
  }
});

describe("what begins or ceases to work with a release", () => {
  it("does so by planning's answers", () => {
    const changes = pages.flatMap((p) => p.all.filter((e) => e.attributes["data-change"] !== undefined));
    expect(changes.length).toBeGreaterThan(5);
    const works = ["workable", "conditional"];
    for (const { attributes, text: says } of changes) {
      const [was, is] = [attributes["data-before"], attributes["data-asks"]].map((asks) => ask(asks ?? "").verdict);
      const [no, yes] = attributes["data-change"] === "works" ? [was, is] : [is, was];
      expect(no, says).toBe("ruled-out");
      expect(works, says).toContain(yes);
    }
  });
});
