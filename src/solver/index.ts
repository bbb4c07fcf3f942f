// The finite-domain engine. Knows nothing of computers; imports nothing of ours.
export { type CheapestOptions, cheapest } from "./cheapest.js";
export { type CountOptions, type CountPerValue, count, countPerValue } from "./count.js";
export { decide } from "./decide.js";
export { type Explanation, type Explanations, explain, explainAll } from "./explain.js";
export { holds, solves } from "./holds.js";
export { type ListOptions, list } from "./list.js";
export { possible } from "./possible.js";
export * from "./problem.js";
export { type OneSet, oneReason, oneRepair, reasons, reasonsAndRepairs, repairs } from "./reasons.js";
export { openSession, type Session } from "./session.js";
export * from "./tasks.js";
