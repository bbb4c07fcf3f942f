// The pack: every file of the built site in one piece with a table of where each begins, so that a browser keeps the whole site with two
// requests instead of thousands. Pure; what it weighs is stated and tested.
import { must } from "../../records/index.js";
export interface PackFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

export interface PackTable {
  readonly edition: string;
  /** By name: where it begins, how long it is. */
  readonly files: Readonly<Record<string, readonly [number, number]>>;
}

/** What the service worker tells pages while it keeps the site: `share` of the pack that has come, `room` it takes in bytes. */
export type Told =
  | { readonly slotwright: "keeping"; readonly share: number }
  | { readonly slotwright: "kept"; readonly room: number }
  | { readonly slotwright: "failed" };

/** What the pack of a site may weigh on the way to the reader, in bytes; the demo club stays below it. */
export const packBudget = 3_500_000;

/** Beginning of the names under which a site's editions are kept: two clubs on one server keep apart. `top` is the site's address. */
export function storesOf(top: string): string {
  return `slotwright ${new URL(top).pathname} `;
}

/** Files nobody needs without a network: they are made for other programs. */
const leftOut = /^(?:\.|offline\/|offline\.js$|data\/(?:records|verdicts)\.json$|data\/schema\/)/;

export function packOf(files: readonly PackFile[], edition: string): { readonly table: PackTable; readonly bytes: Uint8Array } {
  const kept = files.filter((f) => !leftOut.test(f.name)).sort((a, b) => (a.name < b.name ? -1 : 1));
  const table: Record<string, readonly [number, number]> = {};
  let at = 0;
  for (const { name, bytes } of kept) {
    table[name] = [at, bytes.length];
    at += bytes.length;
  }
  const whole = new Uint8Array(at);
  for (const { name, bytes } of kept) whole.set(bytes, must(table[name], name)[0]);
  return { table: { edition, files: table }, bytes: whole };
}

const types: Readonly<Record<string, string>> = {
  html: "text/html; charset=utf-8",
  js: "text/javascript; charset=utf-8",
  css: "text/css; charset=utf-8",
  json: "application/json",
  svg: "image/svg+xml",
  woff2: "font/woff2",
  atom: "application/atom+xml",
  csv: "text/csv; charset=utf-8",
  txt: "text/plain; charset=utf-8",
};

export function typeOf(name: string): string {
  return types[name.slice(name.lastIndexOf(".") + 1)] ?? "application/octet-stream";
}

/** The file an address below the site's top asks for; what stands after "?" belongs to the page's script, not to the file. */
export function fileAt(path: string): string {
  const name = decodeURIComponent(path);
  return name === "" || name.endsWith("/") ? `${name}index.html` : name;
}
