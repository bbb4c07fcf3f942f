// What the built site's search knows, read back from the file that its search page loads.
import type { SearchEntry } from "../../src/pages/search/entries.js";
import { read } from "../pages/site-folder.js";

export const entries = JSON.parse(
  read("assets/search-data.js")
    .replace(/^[^[]*/, "")
    .replace(/;\s*$/, ""),
) as SearchEntry[];
