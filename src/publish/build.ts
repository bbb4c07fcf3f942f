// Builds the whole site into a folder: pages through Eleventy, exports, search index, assets. Uses Node.
// The folder is replaced as a whole when everything is there, so that a failed build leaves the old site standing.
import { cpSync, existsSync, mkdirSync, writeFileSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";
import type { EleventyConfig } from "@11ty/eleventy";
import type { Catalogue } from "../catalogue/index.js";
import { type FolderJob, replaceFolder } from "../files/index.js";
import { entriesOf, type Pages, pagesOf } from "../pages/index.js";
import { fieldGuide, jsonSchemas, locator } from "../records/index.js";
import { downloads, exportsOf, plannerRecords } from "./exports/index.js";
import { indexPages } from "./search-index.js";
import { givePages } from "./wire.js";
import { writePack } from "./write-pack.js";

export interface BuildSiteOptions {
  readonly catalogue: Catalogue;
  /** Every record file with its text, by the name the catalogue knows it under. */
  readonly records: readonly { readonly file: string; readonly text?: string }[];
  /** Pictures that records name, by the name they have there. */
  readonly pictures?: readonly { readonly name: string; readonly bytes: Uint8Array }[];
  /** The folder to make. An older site there is replaced, what else is in it stays; a folder that holds other things is refused. */
  readonly out: string;
  /** Put the site into a folder that holds other things. */
  readonly replace?: boolean;
  /** The folder as the person named it. */
  readonly shown?: string;
  /** Told as the work goes on: what is being done, and how much of it. */
  readonly say?: (line: string) => void;
  /** Address the site will be served from, for the feed; left out, links in it stay relative. */
  readonly address?: string | undefined;
}

export interface BuiltSite {
  readonly out: string;
  readonly pages: number;
  readonly files: number;
}

/** The folder of a site as a place to write to. */
export function siteJob({ out, shown = out, replace = false }: Pick<BuildSiteOptions, "out" | "shown" | "replace">): FolderJob {
  return { folder: resolve(out), shown, list: ".slotwright-site", maker: "slotwright site", replace };
}

/** The folder of the package: the one that holds .eleventy.js, whether this runs from dist/ or from sources. */
export function packageTop(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(folder, ".eleventy.js"))) {
    const up = dirname(folder);
    if (up === folder) throw new Error("The folder with .eleventy.js was not found above the site build.");
    folder = up;
  }
  return folder;
}

export function pagesFor(catalogue: Catalogue, records: BuildSiteOptions["records"], pictures: BuildSiteOptions["pictures"] = []): Pages {
  const texts = new Map(records.flatMap((r) => (r.text === undefined ? [] : [[r.file, r.text] as const])));
  const locators = new Map<string, ReturnType<typeof locator>>();
  const guide = fieldGuide().map((g) => ({
    kind: g.kind,
    folder: g.folder,
    description: g.description,
    fields: g.fields.map((f) => ({
      path: f.path,
      words: f.fact ? `${f.words}, or unknown` : f.words,
      needed: f.required ? "needed" : "",
      description: f.description,
    })),
  }));
  return pagesOf({
    catalogue,
    texts,
    pictures: new Set(pictures.map((p) => p.name)),
    guide,
    downloads: downloads.map((d) => ({ link: { text: d.name.replace(/^data\//, ""), href: d.name }, says: d.says })),
    lineOf(file, pointer) {
      const text = texts.get(file);
      if (text === undefined) return undefined;
      const at = locators.get(file) ?? locator(file, text);
      locators.set(file, at);
      return at(pointer).line;
    },
  });
}

export interface Rendered {
  readonly url: string;
  readonly content: string;
}

/** Every page as HTML. */
export async function render(top: string, pages: Pages): Promise<readonly Rendered[]> {
  const before = process.cwd();
  // Eleventy takes its input and its ignore lists from where it runs; the package's own folder is the one safe place.
  process.chdir(top);
  try {
    const { default: Eleventy } = await import("@11ty/eleventy");
    const eleventy = new Eleventy("dist/templates", "_site", {
      quietMode: true,
      source: "script",
      configPath: ".eleventy.js",
      config: (config: EleventyConfig) => givePages(config, pages),
    });
    return await eleventy.toJSON();
  } finally {
    process.chdir(before);
  }
}

export async function buildSite(options: BuildSiteOptions): Promise<BuiltSite> {
  const job = siteJob(options);
  const counted = await replaceFolder(job, (folder) => fillSite(folder, options));
  return { out: job.folder, ...counted };
}

async function fillSite(folder: string, options: BuildSiteOptions): Promise<Omit<BuiltSite, "out">> {
  const { catalogue, records, pictures, say = () => {} } = options;
  const top = packageTop();
  const write = (name: string, content: string | Uint8Array) => {
    const file = join(folder, name);
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, content);
  };
  say("Working out the answers");
  const pages = pagesFor(catalogue, records, pictures);
  for (const { name, bytes } of pictures ?? []) write(name, bytes);
  say("Setting the pages");
  const rendered = await render(top, pages);
  for (const page of rendered) write(fileOf(page.url), page.content);
  say("Writing the exports");
  const exported = exportsOf({ catalogue, pages, schemas: jsonSchemas(), address: options.address?.replace(/\/?$/, "/") ?? "" });
  for (const { name, content } of exported) write(name, content);
  // Packed by us: not every host packs what it sends, and an answer waits for them.
  write("data/planner.pack", gzipSync(plannerRecords(catalogue), { level: 9 }));
  const assets = join(top, "dist", "templates", "assets");
  cpSync(assets, join(folder, "assets"), { recursive: true });
  write("assets/search-data.js", `globalThis.slotwrightSearch=${JSON.stringify(entriesOf(pages))};\n`);
  say(`Indexing ${rendered.length} pages for search`);
  const found = await indexPages(rendered.map((p) => ({ name: fileOf(p.url), content: p.content })));
  for (const { name, content } of found) write(`pagefind/${name}`, content);
  say("Packing it for reading without a network");
  const packed = writePack(folder);
  return { pages: rendered.length, files: rendered.length + exported.length + found.length + packed };
}

/** Eleventy names a page by its address; "/boards/" is boards/index.html. */
export function fileOf(url: string): string {
  return (url.endsWith("/") ? `${url}index.html` : url).slice(1);
}
