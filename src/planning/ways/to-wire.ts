// Combinations that one switch might be built for, as wiring asks for them: in rounds, best first. All of a round are equally mild, have
// equally many versions over their ways, and are proven at least so well; no round holds anything better than one before it. Within a round
// only what a switch can tell apart makes two combinations: board revision, the version of each way, revisions that a card is switched in.
import type { Catalogue } from "../../catalogue/index.js";
import { applies, type Compiled, changeCost, complement, type Frame, modeKept, possibleChanges, withRules } from "../../encoding/index.js";
import { resolveBuild } from "../../machine/index.js";
import { type Build, itemAt } from "../../records/index.js";
import { type Budget, type Constraint, type Cost, cheapest, type Problem, type Solution, type Variable } from "../../solver/index.js";
import type { Combination } from "../answer/answer.js";
import { combinationOf } from "../answer/combination.js";
import { type Proven, provenModes } from "../answer/evidence.js";
import { grades } from "../answer/kinds.js";
import { atLeastProven } from "../answer/proofs.js";
import { slotFreedom, slotsAt } from "../answer/representatives.js";
import { compileSettled } from "../answer/settle.js";
import { atMostLevel } from "../answer/verdict.js";

export interface Round {
  readonly offers: readonly Offer[];
  /** There are no others of this round. */
  readonly complete: boolean;
}

export interface Offer {
  /** Of its kind the one that has least held against it, then the fewest changes from the machine as it stands. */
  readonly combination: Combination;
  /** The same with the slots that each card may stand in. */
  readonly told: () => Combination;
}

export interface ToWireOptions {
  /** Most offers of one round (default 200). */
  readonly most?: number;
  readonly budget?: Budget;
}

/** Steps each search may take when the caller names no budget. */
const defaultBudget: Budget = { steps: 400_000 };

/** No rounds where the build names what nobody knows, or nothing works. */
export function* combinationsToWire(catalogue: Catalogue, build: Build, options: ToWireOptions = {}): Generator<Round> {
  const request = resolveBuild(catalogue, build);
  if (request.kind !== "question") return;
  const { most = 200, budget = defaultBudget } = options;
  const compiled = compileSettled(request.question);
  const { frame } = compiled;
  const proven = provenModes(compiled.question);
  const project = toldApart(frame);
  const problems = compiled.unsettled.length > 0 ? [compiled.certain, compiled.possible] : [compiled.certain];
  for (const problem of problems)
    for (const level of [...new Set([1, ...compiled.soft.map((s) => s.level)])].sort((a, b) => a - b))
      for (let versions = 1; versions <= frame.firmware.length; versions++) {
        const { problem: even, costs } = counted(compiled, withVersions(frame, atMostLevel(compiled, problem, level), versions));
        for (const grade of grades) {
          const narrowed = atLeastProven(frame, even, grade);
          if (!narrowed) continue;
          const { solutions, proven: complete } = cheapest(narrowed, costs, { k: most, project }, budget);
          if (solutions.length === 0 && complete) continue;
          const offers = solutions.map((s) => offerOf(compiled, s.solution.slice(0, frame.variables.length), proven, budget));
          yield { offers, complete: complete && solutions.length < most };
        }
      }
}

function offerOf(compiled: Compiled, solution: Solution, proven: readonly Proven[], budget: Budget): Offer {
  const told = () => {
    const open = compiled.unsettled.some((u) => applies(u, solution));
    return combinationOf(compiled, solution, slotFreedom(compiled, solution, open, budget), proven);
  };
  return { combination: combinationOf(compiled, solution, slotsAt(compiled, solution), proven), told };
}

function toldApart(frame: Frame): readonly number[] {
  const revisions = frame.question.cards.flatMap((c, at) => (c.card.enable?.revisions ? [itemAt(frame.cards, at).revision] : []));
  return [frame.revision, ...frame.firmware, ...revisions];
}

/** With a variable for each remedy, loss and note, so that the fewest are taken, then the fewest changes, then the least trouble. */
function counted({ soft, frame }: Compiled, problem: Problem): { readonly problem: Problem; readonly costs: readonly Cost[] } {
  const variables: Variable[] = [...problem.variables];
  const rules: Constraint[] = [];
  const met = soft.map(({ when, level }, at) => {
    const variable = variables.push({ name: `met:${at}`, size: 2 }) - 1;
    for (const literals of when) rules.push({ kind: "forbid", literals: [...literals, { variable, values: [0] }] });
    return { variable, level };
  });
  const held = [3, 2, 1].map(
    (level): Cost => ({ terms: met.filter((m) => m.level === level).map(({ variable }) => ({ variable, weights: [0, 1] })) }),
  );
  return { problem: { variables, rules: [...problem.rules, ...rules] }, costs: [...held, changesMade(frame), changeCost(frame)] };
}

/** How many changes there are from the machine as it stands, whatever their trouble. */
function changesMade(frame: Frame): Cost {
  return {
    terms: possibleChanges(frame).map(({ variable, from }) => ({
      variable,
      weights: Array.from({ length: itemAt(frame.variables, variable).size }, (_, v) => (v === from ? 0 : 1)),
    })),
  };
}

/** The problem with every mode kept, and exactly so many versions over all of them. */
function withVersions(frame: Frame, problem: Problem, count: number): Problem {
  const variables: Variable[] = [...problem.variables];
  const rules: Constraint[] = frame.firmware.map((_, mode) => ({ kind: "unary", ...modeKept(frame, mode) }));
  const runs = frame.question.versions.map((version, v) => {
    const variable = variables.push({ name: `runs:${version.id}`, size: 2 }) - 1;
    const somewhere = frame.firmware.map((firmware) => ({ variable: firmware, values: [v] }));
    for (const literal of somewhere) rules.push({ kind: "clause", literals: [complement(variables, literal), { variable, values: [1] }] });
    rules.push({ kind: "clause", literals: [{ variable, values: [0] }, ...somewhere] });
    return variable;
  });
  rules.push({ kind: "cardinality", variables: runs, values: [1], min: count, max: count });
  return { variables, rules: withRules(problem, rules).rules };
}
