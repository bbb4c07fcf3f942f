// The built site as the tests see it: the folder SITE_DIR names, or _site at the top. A missing build fails; it is never skipped.
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join, relative, resolve, sep } from "node:path";
import { fileURLToPath } from "node:url";
import { parseDocument } from "htmlparser2";

const top = fileURLToPath(new URL("../..", import.meta.url));

export const siteFolder = resolve(process.env.SITE_DIR ?? join(top, "_site"));

if (!existsSync(join(siteFolder, ".slotwright-site"))) {
  throw new Error(`No built site in ${siteFolder}. Build it first: npm run build && node dist/src/cli/main.js site --out _site`);
}

export interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly Element[];
  readonly parent?: Element;
  /** All text in it, spaces drawn together. */
  readonly text: string;
}

export interface Page {
  readonly name: string;
  readonly html: string;
  readonly all: readonly Element[];
  readonly find: (tag: string) => readonly Element[];
}

interface Node {
  readonly type: string;
  readonly name?: string;
  readonly attribs?: Record<string, string>;
  readonly children?: readonly Node[];
  readonly data?: string;
}

function textOf(node: Node): string {
  return node.type === "text" ? (node.data ?? "") : (node.children ?? []).map(textOf).join("");
}

function elements(nodes: readonly Node[], parent: Element | undefined, into: Element[]): Element[] {
  const here: Element[] = [];
  for (const node of nodes) {
    if (node.name === undefined) continue;
    const children: Element[] = [];
    const element: Element = {
      name: node.name,
      attributes: node.attribs ?? {},
      children,
      parent,
      text: textOf(node).replace(/\s+/g, " ").trim(),
    };
    into.push(element);
    here.push(element);
    children.push(...elements(node.children ?? [], element, into));
  }
  return here;
}

export function parse(name: string, html: string): Page {
  const all: Element[] = [];
  elements(parseDocument(html).children as unknown as Node[], undefined, all);
  return { name, html, all, find: (tag) => all.filter((e) => e.name === tag) };
}

/** Every file of the site, named from its top with "/". */
export const files: readonly string[] = readdirSync(siteFolder, { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile())
  .map((entry) => relative(siteFolder, join(entry.parentPath, entry.name)).split(sep).join("/"));

export const read = (name: string) => readFileSync(join(siteFolder, name), "utf8");

export const pages: readonly Page[] = files
  .filter((name) => name.endsWith(".html") && !name.startsWith("pagefind/"))
  .sort()
  .map((name) => parse(name, read(name)));
