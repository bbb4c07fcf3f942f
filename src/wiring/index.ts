// Wiring: contacts -> banks, wires, proof, bench test, fault table, sheet.

export type { Wiring, WiringOptions } from "./answer-types.js";
export type { Observation } from "./bench-types.js";
export { type BestBuilt, type BestWiring, type Built, bestWiring, type ToBuild } from "./best.js";
export type { FigureDifference, Figures } from "./figures.js";
export { partFaces } from "./harness/connectors.js";
export { switchConnector } from "./harness/loom.js";
export { type PanelPart, panelParts } from "./harness/panel-parts.js";
export { wiringOptions } from "./options.js";
export { planWiring } from "./plan.js";
export { cautions, cautionsOf } from "./report/cautions.js";
export { planSingleVersion, type SingleVersion } from "./single-version.js";
export * from "./types.js";
