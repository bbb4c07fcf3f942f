// Offers, at the foot of a page, to keep the site on this device for reading without a network: never unasked, with its size, with progress
// while it comes, and with a way to be rid of it. What is kept already says how much room it takes.
import { storesOf, type Told } from "./pack.js";

const megabytes = (bytes: number) => `${(bytes / 1_000_000).toLocaleString("en", { maximumFractionDigits: 1 })}\u2009MB`;

/** Does nothing where a browser keeps no copies: from a disk, in some private windows, without service workers. */
export async function offerCopy(root: string): Promise<void> {
  const line = document.querySelector<HTMLElement>("#kept");
  if (!line || !("serviceWorker" in navigator) || !("caches" in globalThis) || !location.protocol.startsWith("http")) return;
  const top = new URL(root === "" ? "." : root, location.href).href;
  navigator.serviceWorker.addEventListener("message", ({ data }: MessageEvent<Told>) => hear(line, top, data));
  navigator.serviceWorker.startMessages();
  const room = await roomOf(top);
  if (room !== undefined) return sayKept(line, top, room);
  // Its size is asked for only when the offer comes into sight.
  const seen = new IntersectionObserver((entries) => {
    if (!entries.some((e) => e.isIntersecting)) return;
    seen.disconnect();
    void offer(line, top);
  });
  seen.observe(line.parentElement ?? line);
}

function hear(line: HTMLElement, top: string, told: Told): void {
  if (told.slotwright === "keeping") set(line, `Keeping a copy of this site: ${Math.floor(told.share * 100)}\u2009%.`);
  else if (told.slotwright === "kept") sayKept(line, top, told.room);
  else sayFailed(line, top);
}

async function offer(line: HTMLElement, top: string, before = ""): Promise<void> {
  const size = await sizeOf(top);
  const label = `Keep a copy of this site${size === undefined ? "" : ` (${megabytes(size)})`}`;
  set(line, `${before}To read it without a network: `, { label, does: () => keep(line, top) });
}

/** Bytes to load; undefined where the server does not say. */
async function sizeOf(top: string): Promise<number | undefined> {
  const response = await fetch(new URL("offline/site.pack", top), { method: "HEAD" }).catch(() => undefined);
  return (response?.ok && Number(response.headers.get("content-length"))) || undefined;
}

async function keep(line: HTMLElement, top: string): Promise<void> {
  set(line, "Keeping a copy of this site: 0\u2009%.");
  try {
    const there = await navigator.serviceWorker.getRegistration(top);
    // A worker whose copy was thrown away fills it again; a new one fills it when it is installed.
    if (there?.active) return there.active.postMessage("keep");
    const { installing } = await navigator.serviceWorker.register(new URL("offline.js", top));
    installing?.addEventListener("statechange", () => installing.state === "redundant" && sayFailed(line, top));
  } catch {
    sayFailed(line, top);
  }
}

function sayFailed(line: HTMLElement, top: string): void {
  void offer(line, top, "The copy was not kept: the network went, this browser does not allow it, or there is no room. ");
}

function sayKept(line: HTMLElement, top: string, room: number): void {
  const says = `This site is kept on this device and can be read without a network; it takes ${megabytes(room)}. `;
  set(line, says, { label: "Drop the copy", does: () => drop(line, top) });
}

async function drop(line: HTMLElement, top: string): Promise<void> {
  const names = await caches.keys();
  await Promise.all(names.filter((name) => name.startsWith(storesOf(top))).map((name) => caches.delete(name)));
  await (await navigator.serviceWorker.getRegistration(top))?.unregister();
  await offer(line, top, "The copy is gone. ");
}

function set(line: HTMLElement, says: string, act?: { readonly label: string; readonly does: () => Promise<void> | void }): void {
  line.replaceChildren(says);
  if (act) {
    const button = document.createElement("button");
    button.type = "button";
    button.textContent = act.label;
    button.addEventListener("click", () => void act.does());
    line.append(button);
  }
  line.setAttribute("role", "status");
  line.hidden = false;
}

/** Bytes of the copy that is there; a browser short of room may have thrown it away. */
async function roomOf(top: string): Promise<number | undefined> {
  for (const name of await caches.keys()) {
    if (!name.startsWith(storesOf(top))) continue;
    const kept = await caches.open(name);
    // The worker names them from where it stands, which is the top.
    const [table, pack] = await Promise.all(["table", "pack"].map((part) => kept.match(new URL(part, top))));
    if (table && pack) return Number(pack.headers.get("content-length")) || (await pack.blob()).size;
  }
  return undefined;
}
