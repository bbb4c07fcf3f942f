// What holds in every file of tests, whichever ran before it in the same process.
import { afterEach } from "vitest";
import { removeFreshFolders } from "./fresh-folder.js";

afterEach(removeFreshFolders);
