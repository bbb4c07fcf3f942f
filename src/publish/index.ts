// Publish: what writes files: pages, exports, search index, offline pack, single file. Uses Node; imports every room but cli.

export { type BuildSiteOptions, type BuiltSite, buildSite, siteJob } from "./build.js";
export { lidFile, sheetFile } from "./sheet-file.js";
export { type BenchFile, benchFiles } from "./sheet-files.js";
export { makePocket, type Pocket, type PocketOptions } from "./single-file.js";
export { wire } from "./wire.js";
