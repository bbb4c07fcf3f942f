// Wiring: modes -> banks, lines, contacts, wires, proof, bench test, fault table. Imports catalogue, records, planning's types.
export * from "./images/index.js";
export * from "./types.js";
