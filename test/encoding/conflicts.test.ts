// Every conflict of the demo club can happen in a machine somebody could build, and the planner then says so with its record.
import { describe, expect, it } from "vitest";
import { type Compiled, compile, forbids, withRules } from "../../src/encoding/compile.js";
import { conflictDrafts, occurrences } from "../../src/encoding/rules/conflicts.js";
import { withChoice } from "../../src/machine/index.js";
import { resolveBuild } from "../../src/machine/resolve.js";
import { holes } from "../../src/planning/answer/possible.js";
import { plan } from "../../src/planning/index.js";
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
          const asked = resolveBuild(catalogue, build);
          if (asked.kind === "question") yield compile(asked.question);
        }
      }
}

/**
 * One machine in which the conflict happens and everything else is in order, with every choice made.
 * `settled`: nothing else hangs on a missing fact either; some cards are nowhere without one.
 */
function happens(conflict: Conflict, settled: boolean): Build | undefined {
  for (const compiled of machines(conflict)) {
    if (conflictDrafts(compiled.frame, conflict).length === 0) continue;
    // Sure rules of everything else, nothing open besides this conflict, and its conditions.
    const ofThis = (d: { fact: { refs: readonly { kind: string; id: string }[] } }) =>
      d.fact.refs.some((x) => x.kind === "conflict" && x.id === conflict.id);
    const sure = compiled.facts.rules.filter((r) => r.id === undefined || !ofThis(compiled.sure[Number(r.id)]!));
    const open = !settled ? [] : compiled.unsettled.filter((u) => !ofThis(u)).flatMap((u) => forbids(u.when));
    const all = { variables: compiled.facts.variables, rules: [...sure, ...open, ...compiled.choices.flatMap((c) => c.rules)] };
    for (const conj of occurrences(compiled.frame, conflict)) {
      const found = decide(
        withRules(
          all,
          conj.map((l) => ({ kind: "unary" as const, ...l })),
        ),
      );
      if (found.kind === "found") return chosen(compiled, found.solution);
    }
  }
  return undefined;
}

/** The build with every hole filled as in the solution. */
function chosen(compiled: Compiled, solution: readonly number[]): Build {
  return holes(compiled.frame).reduce((build, hole) => {
    const value = hole.values[solution[hole.variable]!]?.value;
    return value === undefined || value === "" || (hole.id === "memory" && value === "0") ? build : withChoice(build, hole.id, value);
  }, compiled.question.build);
}

describe("known conflicts", () => {
  const conflicts = [...demo().conflicts.values()];

  it("cover every class", () => {
    expect([...new Set(conflicts.map((c) => c.class))].sort()).toEqual([...conflictClasses].sort());
  });

  it.each(conflicts.filter((c) => c.status !== "disproved").map((c) => [c.id, c] as const))("%s can happen, and is told", (_, conflict) => {
    const settled = happens(conflict, true);
    const build = settled ?? happens(conflict, false);
    if (!build) throw new Error("no machine meets its conditions");
    const answer = plan(demo(), build);
    if (answer.kind !== "answer") throw new Error(answer.faults[0]!.says);
    const own = (refs: readonly { kind: string; id: string }[]) => refs.some((r) => r.kind === "conflict" && r.id === conflict.id);
    const best = answer.combinations[0];
    const condition = best?.conditions.find((c) => own(c.refs));
    if (conflict.effect === "cosmetic" || conflict.effect === "degrades") {
      expect(condition?.kind).toBe(conflict.effect === "cosmetic" ? "cosmetic" : "loss");
      expect(settled ? ["workable", "conditional"] : ["unknown"]).toContain(answer.verdict);
    } else if (conflict.status === "suspected") {
      expect(answer.verdict).toBe("unknown");
      expect(answer.unknowns.find((u) => own(u.refs))?.how).toBe(conflict.settle);
    } else if ((conflict.remedies ?? []).length > 0) {
      expect(answer.verdict).toBe(settled ? "conditional" : "unknown");
      expect(condition?.kind).toBe("remedy");
      expect(condition?.ways.map((w) => w.says)).toEqual(conflict.remedies!.map((r) => r.says));
    } else {
      expect(answer.verdict).toBe("ruled-out");
      const fact = answer.reasons.flatMap((r) => r.facts).find((f) => own(f.refs));
      expect(fact?.says).toContain(conflict.symptoms[0]);
    }
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
