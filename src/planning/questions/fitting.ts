// The other way round: which cards of the catalogue would work in a machine as it stands, without touching anything that is in it,
// with one change, with two. The count is proven least by the engine.
import { type Catalogue, unreadIds } from "../../catalogue/index.js";
import { applies, changeCount, changesOf, compile, possibleChanges, standing } from "../../encoding/index.js";
import { asStanding, findFaults, type InvalidBuild, resolveBuild, withCard } from "../../machine/index.js";
import { type Build, itemAt } from "../../records/index.js";
import { cheapest } from "../../solver/index.js";
import type { Verdict } from "../answer/answer.js";
import { atMostLevel, conditionalFrom } from "../answer/verdict.js";

export interface Fitting {
  readonly card: string;
  /** Fewest changes to what stands already; undefined when nothing within two changes works. */
  readonly changes: number;
  readonly says: readonly string[];
  readonly verdict: Exclude<Verdict, "ruled-out">;
}

/** Cards that would work with at most `most` changes, fewest first. What hangs on a missing fact is told as unknown, after the sure ones. */
export function whatWouldFit(catalogue: Catalogue, build: Build, most = 2): readonly Fitting[] | InvalidBuild {
  const faults = findFaults(catalogue, build);
  if (faults.length > 0) return { kind: "misasked", faults };
  const machine = asStanding(build);
  const here = new Set(build.cards.map((c) => c.card));
  const found = [...catalogue.cards.keys(), ...unreadIds(catalogue, "card")].flatMap((card) =>
    here.has(card) ? [] : (fitOf(catalogue, withCard(machine, card), card, most) ?? []),
  );
  const order = { workable: 0, conditional: 1, unknown: 2 } as const;
  return found.sort((a, b) => a.changes - b.changes || order[a.verdict] - order[b.verdict] || a.card.localeCompare(b.card));
}

function fitOf(catalogue: Catalogue, wish: Build, card: string, most: number): Fitting | undefined {
  const asked = resolveBuild(catalogue, wish);
  // Neither the card nor what it would have to be changed for is known; it is named, so that it is not taken for one that does not fit.
  if (asked.kind === "unread") return { card, changes: 0, says: [], verdict: "unknown" };
  if (asked.kind !== "question") return undefined;
  const compiled = compile(asked.question);
  const { frame } = compiled;
  const cost = changeCount(frame);
  const tries = [
    { verdict: "workable", problem: atMostLevel(compiled, compiled.certain, conditionalFrom - 1) },
    { verdict: "conditional", problem: compiled.certain },
    { verdict: "unknown", problem: compiled.possible },
  ] as const;
  let best: Fitting | undefined;
  for (const { verdict, problem } of tries) {
    if (best && best.changes === 0) break;
    const s = cheapest(problem, [cost], { k: 1 }).solutions[0];
    if (!s || itemAt(s.cost, 0) > most || (best && itemAt(s.cost, 0) >= best.changes)) continue;
    if (verdict === "unknown" && !compiled.unsettled.some((u) => applies(u, s.solution))) continue;
    const own = possibleChanges(frame).filter(
      (c) => c.as !== undefined && frame.question.cards.some((q) => q.as === c.as && !standing(frame.question, q)),
    );
    const words = new Set(own.map((c) => c.words(itemAt(s.solution, c.variable))));
    best = { card, changes: itemAt(s.cost, 0), says: changesOf(frame, s.solution).filter((w) => !words.has(w)), verdict };
  }
  return best;
}
