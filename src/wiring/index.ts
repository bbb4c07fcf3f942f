// Wiring: modes -> banks, lines, contacts, wires, proof, bench test, fault table. Imports catalogue, records, planning's types.
export { cautions, cautionsOf } from "./cautions.js";
export * from "./images/index.js";
export { planWiring } from "./plan.js";
export * from "./types.js";
