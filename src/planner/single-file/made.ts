// Pages that the single file makes when they are asked for, because finished they would be too heavy for it: records line by line,
// and the build sheets of the club's switched machines, which the planner's workers draw.

import type { Surroundings } from "../start.js";
import type { PocketPage } from "./book.js";
import { piece } from "./pieces.js";

/** By the name of its page: the record's file, the record's name and page, and its text. */
export type Written = Readonly<Record<string, readonly [file: string, name: string, page: string, text: string]>>;

/** By the name of a sheet's page: the build it is of. */
export type Sheets = Readonly<Record<string, string>>;

export async function isMade(name: string): Promise<boolean> {
  return isWritten(name) || (await buildOf(name)) !== undefined;
}

export async function madePage(name: string, around: () => Promise<Surroundings>): Promise<PocketPage | undefined> {
  if (isWritten(name)) return written(name);
  const build = await buildOf(name);
  return build === undefined ? undefined : sheet(build, await around());
}

const isWritten = (name: string) => name.startsWith("source/");

async function buildOf(name: string): Promise<string | undefined> {
  const sheets = JSON.parse(await piece("sheets")) as Sheets;
  return Object.hasOwn(sheets, name) ? sheets[name] : undefined;
}

async function written(name: string): Promise<PocketPage | undefined> {
  const found = (JSON.parse(await piece("written")) as Written)[name];
  if (!found) return undefined;
  const [file, record, page, text] = found;
  const up = "../".repeat(name.split("/").length - 1);
  const lines = text.split("\n").map((line, i) => `<li id="L${i + 1}"><code>${escaped(line || " ")}</code></li>`);
  return [
    `${escaped(record)} as written`,
    `${titled("As written", file)}<p>The record behind <a href="${up}${escaped(page)}">${escaped(record)}</a>.</p><ol class="source">${lines.join("")}</ol>`,
  ];
}

async function sheet(id: string, { solve, bench }: Surroundings): Promise<PocketPage | undefined> {
  const build = (await solve.opened()).builds[id];
  if (!build) return undefined;
  const view = await bench.ask("sheet", { build });
  // A machine without a switch has no sheet of its own on the site either.
  return view.kind === "switched"
    ? [escaped(view.title), `${titled("Build sheet", view.title)}<div class="sheet">${view.html}</div>`]
    : undefined;
}

function titled(kind: string, heading: string): string {
  return `<div class="title"><p class="kind">${kind}</p><h1>${escaped(heading)}</h1></div>`;
}

function escaped(text: string): string {
  return text.replace(/[&<>"]/g, (c) => `&#${c.charCodeAt(0)};`);
}
