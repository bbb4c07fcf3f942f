// Scripts: what pages that stand without the planner run. What the single file and publish take of them is handed out here.
export { inflate } from "./offline/inflate.js";
export { type PackFile, packOf } from "./offline/pack.js";
export { anchored, unfold } from "./page/anchor.js";
export { matrixFilters } from "./page/filters.js";
export { boardPicker } from "./page/picker.js";
