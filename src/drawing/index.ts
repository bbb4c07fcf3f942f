// Drawings: plain data in, inline SVG out. Imports planning's and wiring's types only.
export * from "./address-map.js";
export * from "./bank-map.js";
export * from "./card-face.js";
export * from "./connector-face.js";
export * from "./device-pins.js";
export * from "./evidence-time.js";
export * from "./panel.js";
export * from "./panel-dxf.js";
export * from "./panel-template.js";
export * from "./rail-bars.js";
export * from "./slot-plan.js";
export * from "./switch-back.js";
export * from "./switch-wiring.js";
export * from "./verdict-mark.js";
