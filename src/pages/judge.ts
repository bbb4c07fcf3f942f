// Asks planning about one card alone on one board revision under one firmware version, all else open.
import type { Catalogue } from "../catalogue/index.js";
import { type Answer, cellAnswer } from "../planning/index.js";
import type { CellKey, Judge } from "./cells.js";

export const judge: Judge = (catalogue: Catalogue, key: CellKey) => {
  const answer = cellAnswer(catalogue, { ...key, firmware: key.version });
  if (answer.kind === "misasked")
    return { verdict: "unknown", evidence: "inferred", answer: refused(answer.faults.map((f) => f.says).join(" ")) };
  return { verdict: answer.verdict, evidence: answer.combinations[0]?.evidence ?? "inferred", answer };
};

/** A question that cannot be put: the record it needs is not there. */
function refused(says: string): Answer {
  return {
    kind: "answer",
    finished: true,
    verdict: "unknown",
    says,
    count: "0",
    exact: false,
    hanging: "0",
    hangingExact: false,
    combinations: [],
    possible: [],
    reasons: [],
    reasonsComplete: false,
    repairs: [],
    repairsComplete: { givingUp: "none", twoModes: "none", moreModes: "none" },
    unknowns: [],
    unread: [],
    history: [],
  };
}
