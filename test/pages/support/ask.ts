// Planning asked what a page states, and how two answers compare. Each question is asked once.
import type { Catalogue } from "../../../src/catalogue/index.js";
import { plan } from "../../../src/planning/index.js";
import { type Evidence, evidenceOrder, type Verdict, verdictOrder } from "../../../src/words/index.js";
import { questionOf, type Statement } from "./statements.js";

export interface Told {
  readonly verdict: Verdict;
  readonly evidence?: Evidence;
}

/** The answer of planning to an address, as the commands ask it, without what takes long and says nothing of the verdict. */
export function asker(catalogue: Catalogue): (asks: string) => Told {
  const known = new Map<string, Told>();
  return (asks) => {
    const before = known.get(asks);
    if (before) return before;
    const answer = plan(catalogue, questionOf(asks), { brief: true });
    if (answer.kind !== "answer") throw new Error(`${asks}: ${answer.faults.map((f) => f.says).join(" ")}`);
    const evidence = answer.combinations[0]?.evidence;
    const told: Told = { verdict: answer.verdict, ...(answer.verdict !== "ruled-out" && evidence ? { evidence } : {}) };
    known.set(asks, told);
    return told;
  };
}

const rank = ({ verdict, evidence }: Told) =>
  verdictOrder.indexOf(verdict) * 10 + (evidence === undefined ? 0 : evidenceOrder.indexOf(evidence));

/** What planning says of all that a statement speaks of: the best of it. */
export function bestOf(statement: Statement, ask: (asks: string) => Told): Told {
  const [best] = statement.asks.map(ask).sort((a, b) => rank(a) - rank(b));
  if (!best) throw new Error(`${statement.place} asks nothing.`);
  return best;
}

export const text = ({ verdict, evidence }: Told) => (evidence === undefined ? verdict : `${verdict}, ${evidence}`);
