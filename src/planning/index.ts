// Planning: build and catalogue in, answer in trade words out. Imports catalogue and solver.
export * from "./answer.js";
export * from "./audit.js";
export { beforeYouBuy, type Purchase, type VersionVerdict, type Wanted } from "./buying.js";
export * from "./cell.js";
export { type Compiled, compile } from "./compile.js";
export { draftConflict } from "./conflict-draft.js";
export * from "./edit.js";
export { type Fitting, whatWouldFit } from "./fitting.js";
export { type Counts, countsOf, type Facet, grades, type KindCount, type Only, type Workable, waysOf, workables } from "./kinds.js";
export { matrix, type Region } from "./matrix.js";
export { type OpenFact, openFacts } from "./open-facts.js";
export { answer, type PlanOptions, plan } from "./plan.js";
export { ask, type Fault, type Misasked, type Question, running, switchable } from "./question.js";
export { tradeRules } from "./rules/index.js";
export { withCounts } from "./sentence.js";
export { asStanding, withCard } from "./standing.js";
export { verdictOf } from "./verdict.js";
