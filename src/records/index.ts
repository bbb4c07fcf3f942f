// Records: shapes, values, findings, reading. Imports nothing of ours.
export * from "./finding.js";
export * from "./schema/index.js";
export * from "./values.js";
