// publish: the door of the room.

export { type BuildSiteOptions, type BuiltSite, buildSite } from "./build.js";
export { sheetFile } from "./sheet-file.js";
export { makePocket, type Pocket, type PocketOptions, type PocketPage } from "./single-file.js";
export { wire } from "./wire.js";
