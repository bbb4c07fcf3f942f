// The finite-domain engine. Knows nothing of computers; imports nothing of ours.

export { type CountOptions, type CountPerValue, count, countPerValue } from "./count/count.js";
export { type Estimate, type EstimateOptions, estimateCount } from "./count/estimate.js";
export { type Explanation, type Explanations, explain, explainAll } from "./explain/explain.js";
export { type OneSet, oneReason, oneRepair, reasons, reasonsAndRepairs, repairs } from "./explain/reasons.js";
export { holds, solves } from "./model/holds.js";
export * from "./model/problem.js";
export { scopeOf } from "./model/scope.js";
export * from "./model/tasks.js";
export { type CheapestOptions, cheapest } from "./search/cheapest.js";
export { decide } from "./search/decide.js";
export { type ListOptions, list } from "./search/list.js";
export { possible } from "./search/possible.js";
export { openSession, type Session } from "./search/session.js";
