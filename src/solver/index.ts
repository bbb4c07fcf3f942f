// The finite-domain engine. Knows nothing of computers; imports nothing of ours.
export * from "./problem.js";
export * from "./tasks.js";
