// A machine in a state that no mode of it plans, as a broken wire or a wrong contact leaves it: what the rules say of it. The machine is the
// combination as it is built; only which version runs and what is on are asked.
import type { Catalogue } from "../../catalogue/index.js";
import type { Build } from "../../records/index.js";
import type { Combination, Verdict } from "../answer/answer.js";
import { plan } from "../answer/plan.js";

export interface Running {
  readonly firmware: string;
  /** Copies that are on, as the build names them. */
  readonly on: readonly string[];
}

export interface RunningVerdict {
  readonly verdict: Verdict;
  /** What rules it out, what holds it back, or what would decide; empty where nothing is held against it. */
  readonly says: readonly string[];
}

export type JudgeRunning = (state: Running) => RunningVerdict;

/** Asked once for each state; a state that the records cannot be asked about is not known. */
export function judgeRunning(catalogue: Catalogue, combination: Combination): JudgeRunning {
  const known = new Map<string, RunningVerdict>();
  return ({ firmware, on }) => {
    const cards = combination.cards.map((c) => c.as).filter((as) => on.includes(as));
    const key = JSON.stringify([firmware, cards]);
    const verdict = known.get(key) ?? judged(catalogue, buildOf(combination, firmware, cards));
    known.set(key, verdict);
    return verdict;
  };
}

function judged(catalogue: Catalogue, build: Build): RunningVerdict {
  const answer = plan(catalogue, build, { most: 1, brief: true, narrow: true });
  if (answer.kind !== "answer") return { verdict: "unknown", says: [] };
  const [best] = answer.combinations;
  const facts = answer.reasons.flatMap((reason) => reason.facts.map((fact) => fact.says));
  const open = answer.unknowns.map((fact) => fact.says);
  const says = answer.verdict === "ruled-out" ? facts : answer.verdict === "unknown" ? open : (best?.conditions ?? []).map((c) => c.says);
  return { verdict: answer.verdict, says: [...new Set(says)] };
}

function buildOf({ board, revision, memory, firmwareFamily, cards }: Combination, firmware: string, on: readonly string[]): Build {
  return {
    id: "running",
    name: "Running",
    board,
    revision,
    ...(memory ? { memory } : {}),
    firmware: firmwareFamily,
    cards: cards.map((c) => ({
      card: c.card,
      as: c.as,
      ...(c.revision === "" ? {} : { revision: c.revision }),
      slot: c.slot,
      ...(Object.keys(c.settings).length > 0 ? { settings: { ...c.settings } } : {}),
    })),
    modes: [{ id: "running", firmware, cards: [...on] }],
  };
}
