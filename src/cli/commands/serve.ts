// A static server for the built site: one folder, this machine only, nothing outside the folder.
import { createReadStream, realpathSync, type Stats, statSync } from "node:fs";
import { createServer, type IncomingMessage, type Server, type ServerResponse } from "node:http";
import type { AddressInfo } from "node:net";
import { extname, join, sep } from "node:path";

const types: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".mjs": "text/javascript; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".map": "application/json; charset=utf-8",
  ".webmanifest": "application/manifest+json; charset=utf-8",
  ".svg": "image/svg+xml; charset=utf-8",
  ".xml": "application/xml; charset=utf-8",
  ".atom": "application/atom+xml; charset=utf-8",
  ".csv": "text/csv; charset=utf-8",
  ".txt": "text/plain; charset=utf-8",
  ".yaml": "application/yaml; charset=utf-8",
  ".dxf": "image/vnd.dxf",
  ".png": "image/png",
  ".jpg": "image/jpeg",
  ".webp": "image/webp",
  ".ico": "image/x-icon",
  ".woff2": "font/woff2",
  ".wasm": "application/wasm",
};

export interface Served {
  readonly address: string;
  readonly server: Server;
  close(): Promise<void>;
}

/** Serves a folder; port 0 takes any free one. */
export async function serve(folder: string, port = 0, host = "127.0.0.1"): Promise<Served> {
  const root = realpathSync(folder);
  const server = createServer((request, response) => answer(root, request, response));
  await new Promise<void>((done, fail) => {
    server.once("error", fail);
    server.listen(port, host, done);
  });
  const { port: taken } = server.address() as AddressInfo;
  const name = host.includes(":") ? `[${host}]` : host;
  const close = () =>
    new Promise<void>((done) => {
      server.close(() => done());
      server.closeAllConnections();
    });
  return { address: `http://${name}:${taken}/`, server, close };
}

/** What an address leads to. */
type Outcome =
  | { readonly kind: "file"; readonly status: number; readonly found: FoundFile }
  | { readonly kind: "words"; readonly status: number; readonly says: string; readonly headers?: Readonly<Record<string, string>> };

function answer(root: string, request: IncomingMessage, response: ServerResponse): void {
  response.setHeader("X-Content-Type-Options", "nosniff");
  response.setHeader("Cache-Control", "no-cache");
  const outcome = outcomeOf(root, request.method ?? "", request.url ?? "/");
  if (outcome.kind === "file") send(request, response, outcome.status, outcome.found);
  else plain(request, response, outcome);
}

function outcomeOf(root: string, method: string, url: string): Outcome {
  if (method !== "GET" && method !== "HEAD") {
    return { kind: "words", status: 405, says: "Only GET and HEAD are answered here.", headers: { Allow: "GET, HEAD" } };
  }
  const [path = "", query] = url.split("?", 2);
  const parts = partsOf(path);
  if (parts === undefined) return { kind: "words", status: 400, says: "This address cannot be read." };
  const found = insideOnly(root, join(root, ...parts));
  if (found?.info.isDirectory()) {
    if (!path.endsWith("/")) {
      const there = `/${parts.map(encodeURIComponent).join("/")}/${query === undefined ? "" : `?${query}`}`;
      return { kind: "words", status: 301, says: "The page stands one step further.", headers: { Location: there } };
    }
    const index = insideOnly(root, join(root, ...parts, "index.html"));
    return index?.info.isFile() ? { kind: "file", status: 200, found: index } : missing(root);
  }
  return found?.info.isFile() && !path.endsWith("/") ? { kind: "file", status: 200, found } : missing(root);
}

/** The steps of an address, decoded; undefined when one of them is not a plain name. */
function partsOf(path: string): string[] | undefined {
  if (!path.startsWith("/")) return undefined;
  try {
    const parts = path
      .split("/")
      .filter((part) => part !== "")
      .map(decodeURIComponent);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: a control character has no place in a name
    return parts.every((part) => part !== "." && part !== ".." && !/[/\\:\u0000-\u001f]/.test(part)) ? parts : undefined;
  } catch {
    return undefined;
  }
}

interface FoundFile {
  readonly file: string;
  readonly info: Stats;
}

/** A file that exists and, links followed, still lies inside the folder. */
function insideOnly(root: string, file: string): FoundFile | undefined {
  try {
    const real = realpathSync(file);
    if (real !== root && !real.startsWith(root + sep)) return undefined;
    return { file: real, info: statSync(real) };
  } catch {
    return undefined;
  }
}

function missing(root: string): Outcome {
  const page = insideOnly(root, join(root, "404.html"));
  return page?.info.isFile() ? { kind: "file", status: 404, found: page } : { kind: "words", status: 404, says: "There is no such page." };
}

function send(request: IncomingMessage, response: ServerResponse, status: number, { file, info }: FoundFile): void {
  const tag = `"${info.size.toString(36)}-${Math.floor(info.mtimeMs).toString(36)}"`;
  response.setHeader("ETag", tag);
  response.setHeader("Last-Modified", info.mtime.toUTCString());
  if (status === 200 && unchanged(request, tag, info)) {
    response.writeHead(304).end();
    return;
  }
  response.setHeader("Content-Type", types[extname(file).toLowerCase()] ?? "application/octet-stream");
  response.setHeader("Content-Length", info.size);
  response.writeHead(status);
  if (request.method === "HEAD") {
    response.end();
    return;
  }
  createReadStream(file)
    .on("error", () => response.destroy())
    .pipe(response);
}

function unchanged(request: IncomingMessage, tag: string, info: Stats): boolean {
  const tags = request.headers["if-none-match"];
  if (tags !== undefined) return tags.split(",").some((one) => one.trim().replace(/^W\//, "") === tag || one.trim() === "*");
  const since = Date.parse(request.headers["if-modified-since"] ?? "");
  return !Number.isNaN(since) && Math.floor(info.mtimeMs / 1000) * 1000 <= since;
}

function plain(request: IncomingMessage, response: ServerResponse, outcome: Extract<Outcome, { kind: "words" }>): void {
  const body = `${outcome.says}\n`;
  response.writeHead(outcome.status, {
    "Content-Type": "text/plain; charset=utf-8",
    "Content-Length": Buffer.byteLength(body),
    ...outcome.headers,
  });
  response.end(request.method === "HEAD" ? undefined : body);
}
