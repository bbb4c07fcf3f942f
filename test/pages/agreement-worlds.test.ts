// One question, one answer, in clubs nobody thought up: the pages, search and export of random worlds state what planning says. Some of
// what works in them was tested, worked or failed; builds that ask stand beside.
import { describe, expect, it } from "vitest";
import { type Catalogue, gather } from "../../src/catalogue/index.js";
import { fillBuild } from "../../src/machine/index.js";
import { entriesOf } from "../../src/pages/index.js";
import { plan } from "../../src/planning/index.js";
import { exportsOf } from "../../src/publish/exports/index.js";
import type { Build, Loaded } from "../../src/records/index.js";
import { verdictOrder } from "../../src/words/index.js";
import { loadedOf } from "../planning/support/loaded.js";
import { randomSetup } from "../planning/support/world.js";
import { Random } from "../support/solver/random.js";
import { asker, bestOf, text } from "./support/ask.js";
import { renderPages } from "./support/render.js";
import { exportedOf, foundOf, type Statement, statementsOf } from "./support/statements.js";

const worlds = process.env.LONG ? 1_000 : 40;
const first = Number(process.env.SEED ?? 1);

const load = (record: Build) => ({ kind: "build", record, file: "" }) as Loaded;

/** A random club with a question and some tests of what works in it, of the whole machine and of single cards. */
function clubOf(seed: number): Catalogue {
  const { catalogue, build } = randomSetup(seed);
  const random = new Random(seed + 3);
  const single = build.cards
    .slice(0, 1)
    .map(({ card }): Build => ({ id: "single", name: "Single", board: build.board, cards: [{ card }] }));
  const tested = [build, ...single].flatMap((question) => {
    const answer = plan(catalogue, question, { brief: true, most: 3 });
    const ways = answer.kind === "answer" ? answer.combinations : [];
    return ways
      .filter(() => random.next() < 0.6)
      .map((way, n) => ({
        ...fillBuild(question, way),
        id: `${question.id}-tested-${n}`,
        result: {
          by: random.pick(["Ada", "Bo"]),
          date: "2019-05",
          outcome: random.pick(["worked", "worked", "failed", "partly"] as const),
        },
      }));
  });
  return gather([...loadedOf(catalogue), load({ ...build, name: "The question" }), ...[...single, ...tested].map(load)]);
}

function statedIn(catalogue: Catalogue): readonly Statement[] {
  const { pages, set } = renderPages(catalogue);
  const files = exportsOf({ catalogue, pages, schemas: {}, address: "" });
  const verdicts = JSON.parse(files.find((f) => f.name === "data/verdicts.json")?.content ?? "{}") as { verdicts: never[] };
  return [...set.flatMap(statementsOf), ...foundOf(entriesOf(pages)), ...exportedOf("data/verdicts.json", verdicts.verdicts)];
}

describe("random clubs", () => {
  it(`state what planning says, ${worlds} of them`, { timeout: 3_600_000 }, () => {
    const seen = new Set<string>();
    let questions = 0;
    for (let seed = first; seed < first + worlds; seed++) {
      const catalogue = clubOf(seed);
      const ask = asker(catalogue);
      const stated = statedIn(catalogue);
      const wrong = stated.flatMap((s) => {
        const told = bestOf(s, ask);
        const same = told.verdict === s.verdict && (s.evidence === undefined || s.evidence === told.evidence);
        return same ? [] : [`${s.place}: states ${text(s)}; planning says ${text(told)} of ${s.asks.join(" or ")}`];
      });
      expect(wrong, `seed ${seed}`).toEqual([]);
      for (const s of stated)
        seen
          .add(s.verdict)
          .add(s.evidence ?? "none")
          .add(s.place.split(/[/ ]/)[0] ?? "");
      questions += stated.length;
    }
    if (process.env.SHOW) console.log(questions, [...seen]);
    expect(questions).toBeGreaterThan(worlds * 10);
    for (const what of [...verdictOrder, "bench", "inferred", "cards", "matrix", "firmware", "builds", "search", "data"])
      expect(seen).toContain(what);
  });
});
