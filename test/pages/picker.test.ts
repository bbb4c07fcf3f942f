// "Does it work in mine?" answers the question it was asked: every case it shows is what the planner says of that very machine, none is
// missing, and what is left open is shown from best to worst.
import { describe, expect, it } from "vitest";
import { type Catalogue, mainMemory } from "../../src/catalogue/index.js";
import { cardPage } from "../../src/pages/card.js";
import type { CaseView } from "../../src/pages/cases.js";
import { cellsOf } from "../../src/pages/cells.js";
import { type Context, refView } from "../../src/pages/common.js";
import { judge } from "../../src/pages/judge.js";
import { cellAnchor } from "../../src/pages/links.js";
import { mayBe, type Picked, speaksOfMachine } from "../../src/pages/picker.js";
import { type Answer, cellBuild, plan } from "../../src/planning/index.js";
import { type Build, bytes, type Card, type Conflict, type Firmware } from "../../src/records/index.js";
import { verdictOrder } from "../../src/words/index.js";
import { card, firmware, smallClub, tested } from "../planning/support/small-club.js";
import { randomSetup } from "../planning/support/world.js";
import { demo } from "../support/demo.js";
import { Random } from "../support/solver/random.js";

interface Machine {
  readonly board: string;
  readonly revision: string;
  readonly family: string;
  readonly version: string;
  readonly memory: string;
  readonly cardRevision: string;
}

function planned(catalogue: Catalogue, of: Card, m: Machine): Answer {
  const build: Build = cellBuild({ ...m, firmware: m.version, card: of.id });
  const board = catalogue.boards.get(m.board);
  const memory = (board && mainMemory(board))?.options.find((o) => String(bytes(o)) === m.memory);
  const answer = plan(catalogue, {
    ...build,
    ...(memory === undefined ? {} : { memory }),
    cards: [{ card: of.id, ...(m.cardRevision === "" ? {} : { revision: m.cardRevision }) }],
  });
  if (answer.kind !== "answer") throw new Error(JSON.stringify(answer));
  return answer;
}

/** Asks the page as the picker does, and the planner as a person would, for some of the machines the page can be asked about. */
function compare(catalogue: Catalogue, of: Card, every: number, random: Random): { asked: number; split: number } {
  const ctx: Context = { catalogue, lineOf: () => undefined };
  const cells = cellsOf(catalogue, judge);
  const page = cardPage(ctx, cells, of);
  const views = page.where.flatMap((w) => w.groups.flatMap((g) => g.runs.flatMap((r) => r.asked)));
  const pick = (picked: Picked): readonly CaseView[] =>
    views.filter((v) => speaksOfMachine(v.anchors, picked)).flatMap((v) => v.cases.filter((c) => mayBe(c.of, picked)));
  let [asked, split] = [0, 0];
  for (const group of page.picker.boards)
    for (const board of group.revisions)
      for (const version of board.versions) {
        if (random.next() * every > 1) continue;
        const at = { board: group.board, revision: board.value };
        const column = cells.columns(group.board, board.value).find((c) => cellAnchor({ ...at, ...c }) === version.value);
        if (!column) throw new Error(`no column ${version.text}`);
        const memories = board.memories.map((m) => m.value);
        const revisions = page.picker.cardRevisions.map((r) => r.value);
        const each = (memories.length > 0 ? memories : [""]).flatMap((memory) =>
          (revisions.length > 0 ? revisions : [""]).map((cardRevision) => ({ memory, cardRevision })),
        );
        const machine = { board: group.board, revision: board.value, ...column };
        const answers = each.map((m) => planned(catalogue, of, { ...machine, ...m }));
        const told = `${of.id} ${board.text} ${version.text}`;
        each.forEach((m, at) => {
          const shown = pick({ anchors: [version.value], ...m });
          const answer = answers[at];
          expect(shown.length, `${told} ${JSON.stringify(m)}`).toBe(1);
          expect(shown[0]?.mark.verdict, `${told} ${JSON.stringify(m)}`).toBe(answer?.verdict);
          const best = answer?.combinations[0];
          // One record may stand behind several notes. Of two tests that prove a machine equally well either may be named, so a case of
          // machines with any memory is held to the question that leaves the memory open.
          const same = (shown[0]?.of ?? []).every((o) => o.memories.length === 0)
            ? planned(catalogue, of, { ...machine, ...m, memory: "" })
            : answer;
          const behind = new Set((same?.combinations[0]?.rests ?? []).flatMap((r) => r.refs.map((x) => refView(ctx, x).href)));
          expect(new Set(shown[0]?.rests.flatMap((r) => r.refs.map((x) => x.href))), told).toEqual(behind);
          if (best) expect(shown[0]?.mark.evidence, `${told} ${JSON.stringify(m)}`).toBe(best.evidence);
          asked++;
        });
        const open = pick({ anchors: [version.value], memory: "", cardRevision: "" }).map((c) => c.mark.verdict);
        expect(new Set(open), told).toEqual(new Set(answers.map((a) => a.verdict)));
        expect(open, told).toEqual([...open].sort((a, b) => verdictOrder.indexOf(a) - verdictOrder.indexOf(b)));
        expect(planned(catalogue, of, { ...machine, memory: "", cardRevision: "" }).verdict, told).toBe(open[0]);
        if (new Set(open).size > 1) split++;
      }
  return { asked, split };
}

const sum = (of: readonly { asked: number; split: number }[]) =>
  of.reduce((a, b) => ({ asked: a.asked + b.asked, split: a.split + b.split }), { asked: 0, split: 0 });

describe("the picker of a card's page", () => {
  it("agrees with the planner over the demo, memory and revision of the card named or left open", () => {
    const random = new Random(7);
    const cards = [...demo().cards.values()].filter((_, at) => process.env.LONG || at % 12 === 0);
    const all = cards.map((of) => compare(demo(), of, process.env.LONG ? 1 : 4, random));
    expect(sum(all).asked).toBeGreaterThan(cards.length * 10);
    expect(sum(all).split).toBeGreaterThan(0);
  });

  it("agrees with the planner in random clubs", () => {
    const random = new Random(11);
    const worlds = process.env.LONG ? 1_000 : 100;
    const all = Array.from({ length: worlds }, (_, seed) => {
      const { catalogue } = randomSetup(90_000 + seed);
      return sum([...catalogue.cards.values()].map((of) => compare(catalogue, of, 2, random)));
    });
    expect(sum(all).asked).toBeGreaterThan(worlds);
    expect(sum(all).split).toBeGreaterThan(0);
  });
});

describe("two families of firmware with versions of one name", () => {
  const of = card("a", { needs: { firmware: [{ family: "line", from: "V2" }] } });
  const other: Firmware = {
    ...firmware,
    id: "other",
    versions: ["V2", "V3", "V4"].map((id) => ({ id, image: { size: "64K", crc32: "unknown" } })),
  };
  const catalogue = smallClub({ board: { firmware: ["line", "other"] }, otherFirmware: [other], cards: [of] });
  const page = cardPage({ catalogue, lineOf: () => undefined }, cellsOf(catalogue, judge), of);
  const versions = page.picker.boards[0]?.revisions[0]?.versions ?? [];

  it("are two choices with two answers, told apart also where the families are called the same", () => {
    expect(versions.map((v) => v.text)).toEqual(["V1", "Line (line): V2", "Line (line): V3", "Line (other): V2", "Line (other): V3", "V4"]);
    const runs = page.where.flatMap((w) => w.groups.flatMap((g) => g.runs));
    const said = versions.map((v) => runs.filter((r) => r.anchors.some((a) => a.id === v.value)).map((r) => r.mark.verdict));
    expect(said).toEqual([["ruled-out"], ["workable"], ["workable"], ["ruled-out"], ["ruled-out"], ["ruled-out"]]);
    compare(catalogue, of, 1, new Random(3));
  });

  it("keep the former address of a version that is the only one of its name", () => {
    const former = page.where.flatMap((w) => w.groups.flatMap((g) => g.runs.flatMap((r) => r.anchors.flatMap((a) => a.former ?? []))));
    expect(former.sort()).toEqual(["on-board--c--v1", "on-board--c--v4", "on-board--d1--v1", "on-board--d1--v4"]);
  });
});

describe("a card of which one revision is stopped by a confirmed problem", () => {
  const two = card("a", {
    revisions: [
      { id: "1", tell: "t" },
      { id: "2", tell: "t" },
    ],
  });
  const stops: Conflict = {
    id: "stops",
    name: "It stops",
    class: "io-alias",
    when: { cards: [{ card: "a", revisions: ["1"] }] },
    effect: "blocks",
    symptoms: ["s"],
    cause: "c",
    status: "confirmed",
    evidence: [],
  };
  const inS1 = { card: "a", slot: "S1", revision: "2" };
  const catalogue = smallClub({ cards: [two], conflicts: [stops], builds: [tested("ran", [inS1])] });
  const where = cardPage({ catalogue, lineOf: () => undefined }, cellsOf(catalogue, judge), two).where;
  const runs = where.flatMap((w) => w.groups.flatMap((g) => g.runs));

  it("is not said to work without more: the revision that does not is named beside it", () => {
    expect(runs.map((r) => [r.mark.verdict, r.decides])).toEqual(runs.map(() => ["workable", "not with revision 1 of the card"]));
    expect(where.map((w) => w.says).join()).toMatch(/^Works under any firmware.*; not with revision 1 of the card\.$/);
  });

  it("has the evidence of each version alone, and says how the test had it", () => {
    const bench = runs
      .flatMap((r) => r.asked)
      .filter((a) => a.cases.some((c) => c.mark.evidence === "bench" && c.mark.verdict === "workable"));
    expect(bench.map((a) => a.of)).toEqual(["Revision D1 with V2"]);
    expect(bench[0]?.cases[0]?.placing).toContain("Seen on the bench in slot S1 and J1 at x.");
  });
});
