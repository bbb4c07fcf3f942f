// Planning: build and catalogue in, answer in trade words out. Imports catalogue and solver.
export * from "./answer/answer.js";
export { reasonsSentence, repairsSentence } from "./answer/completeness.js";
export { type Counts, countsOf, type Facet, grades, type KindCount, type Only, type Workable, waysOf, workables } from "./answer/kinds.js";
export { answer, type PlanOptions, plan } from "./answer/plan.js";
export { withCounts } from "./answer/sentence.js";
export { answerUnread } from "./answer/unread.js";
export { verdictOf } from "./answer/verdict.js";
export { type Compiled, compile } from "./encode/compile.js";
export { tradeRules } from "./encode/rules/index.js";
export * from "./questions/audit.js";
export { beforeYouBuy, type Purchase, type VersionVerdict, type Wanted } from "./questions/buying.js";
export * from "./questions/cell.js";
export { type CellCase, cellCases, type Latitude } from "./questions/cell-cases.js";
export { draftConflict } from "./questions/conflict-draft.js";
export { type Fitting, whatWouldFit } from "./questions/fitting.js";
export { matrix, type Region } from "./questions/matrix.js";
export { type OpenFact, openFacts } from "./questions/open-facts.js";
