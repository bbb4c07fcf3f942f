// Asks planning what pages state: about one card alone on one board revision under one firmware version, and about a whole build.
import type { InvalidBuild } from "../machine/index.js";
import { type Answer, cellAnswer, plan } from "../planning/index.js";
import type { Judge, Judged } from "./cells.js";

export const judge: Judge = {
  cell: (catalogue, key) => judged(cellAnswer(catalogue, { ...key, firmware: key.version })),
  build: (catalogue, build) => judged(plan(catalogue, build, { brief: true })),
};

function judged(answer: Answer | InvalidBuild): Judged {
  if (answer.kind === "misasked")
    return { verdict: "unknown", evidence: "inferred", answer: refused(answer.faults.map((f) => f.says).join(" ")) };
  return { verdict: answer.verdict, evidence: answer.combinations[0]?.evidence ?? "inferred", answer };
}

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
    taken: [],
    combinations: [],
    possible: [],
    reasons: [],
    reasonsComplete: false,
    repairs: [],
    repairsComplete: { givingUp: "none", twoModes: "none", moreModes: "none", ways: "none" },
    unknowns: [],
    unread: [],
    history: [],
  };
}
