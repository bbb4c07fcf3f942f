// Every conflict of the demo club can happen in a machine somebody could build, and the planner then says so with its record.
import { describe, expect, it } from "vitest";
import { applies, type Compiled, compile, forbids, withRules } from "../../src/planning/compile.js";
import { ask } from "../../src/planning/question.js";
import { conflictDrafts, occurrences } from "../../src/planning/rules/conflicts.js";
import { type Build, type Conflict, conflictClasses } from "../../src/records/index.js";
import { decide } from "../../src/solver/index.js";
import { demo } from "../support/demo.js";

/** A machine that meets the conditions: their cards, on each board they name, in as many modes as they ask for. */
function* machines(conflict: Conflict): Generator<Compiled> {
  const catalogue = demo();
  const boards = conflict.when.boards?.map((b) => b.board) ?? [...catalogue.boards.keys()];
  const families = conflict.when.firmware?.map((f) => f.family);
  for (const board of boards)
    for (const firmware of families ?? catalogue.boards.get(board)!.firmware)
      for (const extra of [[], ...[...catalogue.cards.keys()].map((id) => [id])]) {
        const wanted = (conflict.when.cards ?? []).map((c) => c.card);
        const cards = [...wanted, ...extra].map((card, i, all) => ({ card, ...(all.indexOf(card) < i ? { as: `${card}-${i}` } : {}) }));
        const several = Array.from({ length: conflict.when.modes_at_least ?? 1 }, (_, m) => ({ id: `m${m}` }));
        // All cards on in every mode; and, for cards that firmware keeps apart, one mode a card.
        const apart = cards.map((c, m) => ({ id: `m${m}`, cards: ["as" in c ? (c.as as string) : c.card] }));
        for (const modes of cards.length > 1 ? [several, apart] : [several]) {
          const build: Build = { id: "q", name: "q", board, firmware, cards, modes };
          const asked = ask(catalogue, build);
          if (asked.kind === "question") yield compile(asked.question);
        }
      }
}

function happens(conflict: Conflict): Compiled | undefined {
  for (const compiled of machines(conflict)) {
    const drafts = conflictDrafts(compiled.frame, conflict);
    if (drafts.length === 0) continue;
    // Sure rules of everything else, and the conditions of this conflict.
    const others = {
      ...compiled.facts,
      rules: compiled.facts.rules.filter(
        (r) => r.id === undefined || !compiled.sure[Number(r.id)]!.fact.refs.some((x) => x.kind === "conflict" && x.id === conflict.id),
      ),
    };
    const all = withRules(
      others,
      compiled.choices.flatMap((c) => c.rules),
    );
    for (const conj of occurrences(compiled.frame, conflict))
      if (
        decide(
          withRules(
            all,
            conj.map((l) => ({ kind: "unary" as const, ...l })),
          ),
        ).kind === "found"
      )
        return compiled;
  }
  return undefined;
}

describe("known conflicts", () => {
  const conflicts = [...demo().conflicts.values()];

  it("cover every class", () => {
    expect([...new Set(conflicts.map((c) => c.class))].sort()).toEqual([...conflictClasses].sort());
  });

  it.each(conflicts.filter((c) => c.status !== "disproved").map((c) => [c.id, c] as const))("%s can happen, and is told", (_, conflict) => {
    const compiled = happens(conflict);
    expect(compiled, "no machine meets its conditions").toBeDefined();
    const [draft] = conflictDrafts(compiled!.frame, conflict);
    expect(draft!.fact.refs[0]).toEqual({ kind: "conflict", id: conflict.id, pointer: "" });
    // With its conditions forced, the planner's own problems treat it as its record says.
    const when = occurrences(compiled!.frame, conflict);
    const found = decide(
      withRules(
        compiled!.facts,
        compiled!.choices.flatMap((c) => c.rules),
      ),
    );
    if (found.kind === "found" && draft!.kind !== "sure") expect(typeof applies(draft!, found.solution)).toBe("boolean");
    if (draft!.kind === "sure") expect(draft!.rules).toEqual(forbids(when));
    else expect(draft!.when).toEqual(when);
    if (conflict.effect === "blocks" && conflict.status === "confirmed")
      expect(draft!.kind).toBe((conflict.remedies ?? []).length > 0 ? "soft" : "sure");
    if (conflict.effect === "blocks" && conflict.status === "suspected") expect(draft!.kind).toBe("unknown");
  });

  it("count for nothing once disproved", () => {
    for (const c of conflicts.filter((x) => x.status === "disproved"))
      for (const compiled of machines(c)) {
        const told = [...compiled.sure, ...compiled.unsettled, ...compiled.soft].flatMap((d) => d.fact.refs);
        expect(
          told.some((r) => r.kind === "conflict" && r.id === c.id),
          c.id,
        ).toBe(false);
        break;
      }
  });
});
