// Planner: all that runs in a browser, each script with an entry of its own. What publish has to know of them is handed out here.
export { bookOf, type PocketPage } from "./single-file/book.js";
export type { Sheets, Written } from "./single-file/made.js";
