// Files: writing that survives being cut off: one file, a folder as a whole, the lock beside it. Uses Node; knows nothing of what it writes.

export { fillFolder } from "./fill-folder.js";
export { explainSystemError, FileRefusal } from "./refusal.js";
export { checkFolder, type FolderJob, replaceFolder, standsIn } from "./replace-folder.js";
export { checkFile, writeFile } from "./write-file.js";
