// The static server: types, head, not modified, missing pages, and no way out of its folder.
import { mkdirSync, symlinkSync, utimesSync, writeFileSync } from "node:fs";
import { request } from "node:http";
import { join } from "node:path";
import { afterEach, beforeEach, expect, it } from "vitest";
import { type Served, serve } from "../../src/cli/commands/serve.js";
import { freshFolder } from "../support/recorder.js";

interface Reply {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly body: string;
}

let served: Served;

beforeEach(async () => {
  const outer = freshFolder();
  const folder = join(outer, "site");
  mkdirSync(join(folder, "cards"), { recursive: true });
  mkdirSync(join(folder, "empty"));
  writeFileSync(join(outer, "secret.txt"), "secret");
  writeFileSync(join(folder, "index.html"), "<h1>Start</h1>");
  writeFileSync(join(folder, "cards", "index.html"), "<h1>Cards</h1>");
  writeFileSync(join(folder, "a b.css"), "p{}");
  writeFileSync(join(folder, "engine.wasm"), "x");
  writeFileSync(join(folder, "index.pf_meta"), "x");
  symlinkSync(join(outer, "secret.txt"), join(folder, "link.txt"));
  utimesSync(join(folder, "index.html"), 1_700_000_000, 1_700_000_000);
  served = await serve(folder);
});
afterEach(() => served.close());

/** Sends the path exactly as given: fetch would tidy it up first. */
function get(path: string, method = "GET", headers: Record<string, string> = {}): Promise<Reply> {
  const { port, hostname } = new URL(served.address);
  return new Promise((done, fail) => {
    const sent = request({ host: hostname, port, path, method, headers, agent: false }, (answer) => {
      let body = "";
      answer.setEncoding("utf8");
      answer.on("data", (piece: string) => {
        body += piece;
      });
      answer.on("end", () => done({ status: answer.statusCode ?? 0, headers: answer.headers, body }));
    });
    sent.on("error", fail);
    sent.end();
  });
}

it("listens on this machine only, on a port that was free", () => {
  expect(served.address).toMatch(/^http:\/\/127\.0\.0\.1:[1-9][0-9]+\/$/);
});

it("sends pages and files with their types", async () => {
  expect(await get("/")).toMatchObject({ status: 200, body: "<h1>Start</h1>" });
  expect((await get("/?x=1")).headers["content-type"]).toBe("text/html; charset=utf-8");
  expect((await get("/a%20b.css")).headers["content-type"]).toBe("text/css; charset=utf-8");
  expect((await get("/engine.wasm")).headers["content-type"]).toBe("application/wasm");
  expect((await get("/index.pf_meta")).headers["content-type"]).toBe("application/octet-stream");
  expect((await get("/")).headers["x-content-type-options"]).toBe("nosniff");
});

it("leads from a folder to its page, and keeps the question", async () => {
  expect((await get("/cards?b=1")).headers.location).toBe("/cards/?b=1");
  expect((await get("/cards")).status).toBe(301);
  expect((await get("/cards/")).body).toBe("<h1>Cards</h1>");
  expect((await get("/empty/")).status).toBe(404);
  expect((await get("/index.html/")).status).toBe(404);
});

it("answers HEAD without a body and refuses other methods", async () => {
  const head = await get("/", "HEAD");
  expect(head).toMatchObject({ status: 200, body: "" });
  expect(head.headers["content-length"]).toBe("14");
  const post = await get("/", "POST");
  expect(post.status).toBe(405);
  expect(post.headers.allow).toBe("GET, HEAD");
});

it("says 304 when nothing changed, by tag or by date", async () => {
  const first = await get("/");
  const tag = String(first.headers.etag);
  expect(await get("/", "GET", { "If-None-Match": tag })).toMatchObject({ status: 304, body: "" });
  expect((await get("/", "GET", { "If-None-Match": `"old", W/${tag}` })).status).toBe(304);
  expect((await get("/", "GET", { "If-None-Match": '"old"' })).status).toBe(200);
  expect((await get("/", "GET", { "If-Modified-Since": String(first.headers["last-modified"]) })).status).toBe(304);
  expect((await get("/", "GET", { "If-Modified-Since": new Date(0).toUTCString() })).status).toBe(200);
});

it("says 404 in the site's own words when it has a page for it", async () => {
  expect(await get("/none")).toMatchObject({ status: 404, body: "There is no such page.\n" });
});

it.each([
  "/../secret.txt",
  "/%2e%2e/secret.txt",
  "/cards/../../secret.txt",
  "/..%2fsecret.txt",
  "/cards/..%5c..%5csecret.txt",
  "/%00",
  "/%zz",
  "//../secret.txt",
  "/C:/x",
])("gives nothing outside the folder for %s", async (path) => {
  const reply = await get(path);
  expect([400, 404]).toContain(reply.status);
  expect(reply.body).not.toContain("secret");
});

it("follows no link that leads outside", async () => {
  expect((await get("/link.txt")).status).toBe(404);
});
