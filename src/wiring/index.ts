// Wiring: modes -> banks, lines, contacts, wires, proof, bench test, fault table. Imports catalogue, records, planning's types.
export { cautions, cautionsOf } from "./cautions.js";
export { partFaces } from "./connectors.js";
export * from "./images/index.js";
export { wiringOptions } from "./options.js";
export { type PanelPart, panelParts } from "./panel-parts.js";
export { planWiring } from "./plan.js";
export * from "./sheet.js";
export * from "./types.js";
