// Makes the single file from a club's records: pages through Eleventy as for the site, the planner's scripts, the small search index,
// each compressed. Uses Node.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import type { Catalogue } from "../catalogue/index.js";
import { entriesOf, type Pages } from "../pages/index.js";
import { bookOf, type PocketPage, type Sheets, type Written } from "../planner/index.js";
import { noticeText } from "../words/index.js";
import { type BuildSiteOptions, fileOf, packageTop, pagesFor, render } from "./build.js";
import { plannerRecords } from "./exports/index.js";
import { shell } from "./single-file-shell.js";

export interface PocketOptions {
  readonly catalogue: Catalogue;
  readonly records: BuildSiteOptions["records"];
  /** The day it is made, as it is to be written on the file: 2026-05-31. */
  readonly made: string;
  readonly say?: (line: string) => void;
}

export interface Pocket {
  readonly html: string;
  readonly pages: number;
}

/** Pages of which the file has its own. */
const ownPages = ["404.html", "search.html", "planner.html"];

export async function makePocket({ catalogue, records, made, say = () => {} }: PocketOptions): Promise<Pocket> {
  const top = packageTop();
  const assets = join(top, "dist", "templates", "assets");
  const asset = (name: string) => readFileSync(join(assets, name), "utf8");
  const own = (name: string) => readFileSync(join(top, "dist", "templates", "single-file", name), "utf8");
  say("Working out the answers");
  const pages = pagesFor(catalogue, records);
  say("Setting the pages");
  const rendered = await render(top, pages);
  say("Packing them into one file");
  // Too heavy as finished pages, sources and sheets are made from the records when they are asked for (`made.ts`).
  const leftOut = new Set([...ownPages, ...[...pages.sources, ...pages.sheets].map((p) => p.href)]);
  const kept = rendered
    .map((p) => ({ name: fileOf(p.url), content: p.content }))
    .filter((p) => !leftOut.has(p.name))
    .sort((a, b) => (a.name < b.name ? -1 : 1));
  const finished = Object.fromEntries(kept.map(({ name, content }) => [name, pageOf(name, content)]));
  const html = shell({
    title: catalogue.club ? `${catalogue.club.name} \u2013 Slotwright` : "Slotwright",
    style: withFonts(`${asset("site.css")}\n${asset("planner.css")}\n${own("pocket.css")}`, assets),
    script: own("pocket.js"),
    pieces: {
      search: squeezed(JSON.stringify(entriesOf(pages).filter((e) => finished[e.href] || e.href === "planner.html"))),
      records: squeezed(plannerRecords(catalogue)),
      workers: squeezed(own("workers.js")),
      pages: squeezed(JSON.stringify(bookOf(finished))),
      sheets: squeezed(JSON.stringify(Object.fromEntries(pages.sheets.map((s) => [s.href, s.of])) satisfies Sheets)),
      written: squeezed(JSON.stringify(writtenOf(pages))),
    },
    notice: noticeText(catalogue),
    first: finished["index.html"]?.[1] ?? "",
    made,
  });
  return { html, pages: kept.length };
}

function writtenOf(pages: Pages): Written {
  return Object.fromEntries(pages.sources.map((s) => [s.href, [s.file, s.record.text, s.record.href, s.lines.join("\n")] as const]));
}

function squeezed(text: string): string {
  return gzipSync(text, { level: 9 }).toString("base64");
}

/**
 * Title and main part of a page of ours; the templates write them in one form only. Without the question beside each verdict: nothing in
 * a browser reads it, and they weigh 45 kB.
 */
function pageOf(name: string, content: string): PocketPage {
  const title = between(content, "<title>", "</title>");
  const open = content.indexOf("<main");
  const from = content.indexOf(">", open) + 1;
  const to = content.lastIndexOf("</main>");
  if (title === undefined || open < 0 || to < from) throw new Error(`${name} has no title or no main part.`);
  return [title, content.slice(from, to).replace(/ data-asks="[^"]*"/g, "")];
}

function between(text: string, before: string, after: string): string | undefined {
  const from = text.indexOf(before);
  const to = text.indexOf(after, from);
  return from < 0 || to < 0 ? undefined : text.slice(from + before.length, to);
}

function withFonts(css: string, assets: string): string {
  return css.replace(/url\("?(fonts\/[a-z0-9-]+\.woff2)"?\)/g, (_, name: string) => {
    return `url(data:font/woff2;base64,${readFileSync(join(assets, name)).toString("base64")})`;
  });
}
