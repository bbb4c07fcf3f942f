// Planning: build and catalogue in, answer in trade words out. Imports catalogue and solver.
export * from "./answer.js";
export * from "./audit.js";
export * from "./cell.js";
export { type Compiled, compile } from "./compile.js";
export * from "./edit.js";
export { answer, type PlanOptions, plan } from "./plan.js";
export { ask, type Fault, type Misasked, type Question, running, switchable } from "./question.js";
export { tradeRules } from "./rules/index.js";
export { verdictOf } from "./verdict.js";
