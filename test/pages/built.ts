// Every page of the built site (site-folder.ts), parsed.
import { type Page, parse } from "./parse.js";
import { files, read } from "./site-folder.js";

export type { Element, Page } from "./parse.js";
export { files, read } from "./site-folder.js";

export const pages: readonly Page[] = files
  .filter((name) => name.endsWith(".html") && !name.startsWith("pagefind/"))
  .sort()
  .map((name) => parse(name, read(name)));
