// planner: the door of the room.
export { type PackFile, packOf } from "./offline/pack.js";
export type { Written } from "./single-file/made.js";
