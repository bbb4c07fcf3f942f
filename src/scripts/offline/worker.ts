// The service worker: keeps the whole site on the reader's device and hands it out when the network does not answer. While there is a
// network the page always comes from there, so that nothing read is ever older than what the club has published.
import { inflate } from "./inflate.js";
import { fileAt, type PackTable, storesOf, type Told, typeOf } from "./pack.js";

declare const edition: string;

interface Kept {
  readonly table: PackTable;
  readonly whole: Blob;
}

interface Event {
  waitUntil(done: Promise<unknown>): void;
}
interface Asked extends Event {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}
interface Page {
  postMessage(told: Told): void;
}
interface Scope {
  readonly registration: { readonly scope: string };
  readonly clients: {
    claim(): Promise<void>;
    matchAll(which: { readonly includeUncontrolled: boolean }): Promise<readonly Page[]>;
  };
  skipWaiting(): Promise<void>;
  addEventListener(name: "install" | "activate", listener: (event: Event) => void): void;
  addEventListener(name: "message", listener: (event: Event & { readonly data: unknown }) => void): void;
  addEventListener(name: "fetch", listener: (event: Asked) => void): void;
}

const scope = self as unknown as Scope;
const top = scope.registration.scope;
const mine = storesOf(top);
const store = `${mine}${edition}`;
/** A network that has not answered by then is taken for none; a page is wanted sooner than a file it loads. */
const patience_ms = { navigate: 4000, other: 8000 } as const;
/** After one failure the pack answers at once for so long. */
const rest_ms = 15_000;

let restUntil = 0;
let opened: Promise<Kept | undefined> | undefined;

scope.addEventListener("install", (event) => {
  event.waitUntil(fill().then(() => scope.skipWaiting()));
});

scope.addEventListener("message", (event) => {
  if (event.data === "keep") event.waitUntil(fill().catch(() => tell({ slotwright: "failed" })));
});

scope.addEventListener("activate", (event) => {
  event.waitUntil(
    caches
      .keys()
      .then((names) => Promise.all(names.filter((n) => n.startsWith(mine) && n !== store).map((n) => caches.delete(n))))
      .then(() => scope.clients.claim()),
  );
});

scope.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method !== "GET" || !request.url.startsWith(top)) return;
  event.respondWith(answer(request));
});

async function tell(told: Told): Promise<void> {
  for (const page of await scope.clients.matchAll({ includeUncontrolled: true })) page.postMessage(told);
}

/** Fetches table and pack and keeps both; the pack is kept inflated, so that a file is a slice of it. */
async function fill(): Promise<void> {
  const cache = await caches.open(store);
  const [table, packed] = await Promise.all([whole(`offline/table.json?${edition}`), whole(`offline/site.pack?${edition}`)]);
  await cache.put("table", table);
  const pack = await inflate(await counted(packed).blob());
  // Its length is written beside it, so that a page can say how much room it takes without opening it.
  await cache.put("pack", new Response(pack, { headers: { "content-length": String(pack.size) } }));
  opened = undefined;
  await tell({ slotwright: "kept", room: pack.size });
}

/** The same response, which tells the pages how much of it has come; not more than all, though a server may have packed it for the way. */
function counted(response: Response): Response {
  const all = Number(response.headers.get("content-length"));
  if (!response.body || !(all > 0)) return response;
  let come = 0;
  let told = 0;
  const count = new TransformStream<Uint8Array, Uint8Array>({
    transform(piece, to) {
      come += piece.length;
      const share = Math.min(0.99, come / all);
      if (share - told >= 0.01) {
        told = share;
        void tell({ slotwright: "keeping", share });
      }
      to.enqueue(piece);
    },
  });
  return new Response(response.body.pipeThrough(count));
}

async function whole(name: string): Promise<Response> {
  const response = await fetch(new URL(name, top), { cache: "no-cache" });
  if (!response.ok) throw new Error(`${name}: ${response.status}`);
  return response;
}

async function answer(request: Request): Promise<Response> {
  const resting = Date.now() < restUntil;
  if (resting) {
    const kept = await fromPack(request);
    if (kept) return kept;
  }
  try {
    const response = await inTime(fetch(request), request.mode === "navigate" ? patience_ms.navigate : patience_ms.other);
    // A gateway that answers for a dead server is no network either.
    if (response.status < 500) return response;
    return (await fromPack(request)) ?? response;
  } catch {
    restUntil = Date.now() + rest_ms;
    return (await fromPack(request)) ?? (await missing(request));
  }
}

function inTime(answer: Promise<Response>, ms: number): Promise<Response> {
  return new Promise((done, fail) => {
    const end = setTimeout(() => fail(new Error("no answer in time")), ms);
    answer.then(done, fail).finally(() => clearTimeout(end));
  });
}

function open(): Promise<Kept | undefined> {
  opened ??= read().then((kept) => {
    if (!kept) opened = undefined;
    return kept;
  });
  return opened;
}

async function read(): Promise<Kept | undefined> {
  const cache = await caches.open(store);
  const [table, pack] = await Promise.all([cache.match("table"), cache.match("pack")]);
  return table && pack ? { table: (await table.json()) as PackTable, whole: await pack.blob() } : undefined;
}

async function fromPack(request: Request): Promise<Response | undefined> {
  const kept = await open();
  return kept && slice(kept, fileAt(new URL(request.url).pathname.slice(new URL(top).pathname.length)), 200);
}

function slice({ table, whole }: Kept, name: string, status: number): Response | undefined {
  const found = table.files[name];
  if (!found) return undefined;
  const type = typeOf(name);
  return new Response(whole.slice(found[0], found[0] + found[1], type), { status, headers: { "content-type": type } });
}

async function missing(request: Request): Promise<Response> {
  const kept = request.mode === "navigate" ? await open() : undefined;
  return (kept && slice(kept, "404.html", 404)) ?? Response.error();
}
