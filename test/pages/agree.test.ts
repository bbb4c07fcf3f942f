// One verdict, many places: matrix, card page, search and exports say the same of every card on every board and version.
import { describe, expect, it } from "vitest";
import { cellAnchor, formerAnchor } from "../../src/pages/links.js";
import { verdictWords } from "../../src/words/index.js";
import { pages, read } from "./built.js";

const matrices = pages.filter((p) => p.name.startsWith("matrix/"));
/** The words at the end of a row and the notes under it are cells as well, and state nothing by themselves. */
const cellsOf = (m: (typeof matrices)[number]) => m.find("td").filter((td) => td.attributes["data-verdict"] !== undefined);
const cards = new Map(pages.filter((p) => p.name.startsWith("cards/") && p.name !== "cards/index.html").map((p) => [p.name, p]));

/** On a card's page: the state of the stretch each anchor stands in. */
const stateOf = new Map<string, string>(
  [...cards].flatMap(([name, page]) =>
    page.all
      .filter((e) => e.attributes.class === "anchor")
      .map((e) => [`../${name}#${e.attributes.id}`, e.parent!.attributes.class!.replace(/^run /, "")] as const),
  ),
);

describe("the matrix", () => {
  it("has a page for every revision and a row for every card, each cell leading to its own reasons", () => {
    expect(matrices.length).toBeGreaterThan(5);
    for (const m of matrices) {
      const links = cellsOf(m).map((td) => td.children[0]!.attributes.href!);
      expect(links.length, m.name).toBeGreaterThan(100);
      expect(new Set(links).size, m.name).toBe(links.length);
      expect(
        cellsOf(m)
          .filter((td) => {
            const link = td.children[0]!;
            const state = stateOf.get(link.attributes.href!);
            const { word } = Object.values(verdictWords).find((w) => w.css === state)!;
            const drawn = link.children[0]!.attributes.class!.startsWith(`ink ${state}`);
            return !drawn || !new RegExp(` ${word}(?:,|$)`).test(link.text);
          })
          .map((td) => td.text),
        m.name,
      ).toEqual([]);
    }
  });

  it("agrees with the export, cell by cell", () => {
    const { verdicts } = JSON.parse(read("data/verdicts.json")) as {
      verdicts: {
        board: string;
        revision: string;
        family: string;
        firmware: string;
        card: string;
        verdict: keyof typeof verdictWords;
        evidence: string | null;
      }[];
    };
    const cells = matrices.flatMap(cellsOf);
    expect(verdicts.length).toBe(cells.length);
    for (const v of verdicts) {
      const place = { board: v.board, revision: v.revision, family: v.family, version: v.firmware };
      const key = `../cards/${v.card}.html#${cellAnchor(place)}`;
      expect(stateOf.get(key), key).toBe(verdictWords[v.verdict].css);
      // Addresses of before anchors named the family.
      const former = `../cards/${v.card}.html#${formerAnchor(place)}`;
      expect(stateOf.get(former), former).toBe(verdictWords[v.verdict].css);
    }
    // The demo shows every state; otherwise this would prove little.
    expect(new Set(verdicts.map((v) => v.verdict)).size).toBe(4);
    expect(new Set(verdicts.map((v) => v.evidence)).size).toBeGreaterThan(2);
  });

  it("claims no evidence for a no", () => {
    const { verdicts } = JSON.parse(read("data/verdicts.json")) as { verdicts: { verdict: string; evidence: string | null }[] };
    expect(verdicts.filter((v) => (v.verdict === "ruled-out") !== (v.evidence === null))).toEqual([]);
  });
});
