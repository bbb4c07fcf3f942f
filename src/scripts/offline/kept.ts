// Says at the foot of the page that the site is kept on this device, once that is so, and how much room it takes. Says nothing before.
import { storesOf } from "./pack.js";

export async function sayKept(root: string): Promise<void> {
  const line = document.querySelector<HTMLElement>("#kept");
  if (!line || !("serviceWorker" in navigator) || !("caches" in globalThis)) return;
  const { active } = await navigator.serviceWorker.ready;
  if (active?.state !== "activated") {
    await new Promise<void>((done) => {
      active?.addEventListener("statechange", () => active.state === "activated" && done());
    });
  }
  const room = await roomOf(new URL(root === "" ? "." : root, location.href).href);
  if (room === undefined) return;
  const size = (room / 1_000_000).toLocaleString("en", { maximumFractionDigits: 1 });
  line.textContent = `This site is kept on this device and can be read without a network; it takes ${size}\u2009MB. Clearing the browser's data for this site frees it.`;
  line.hidden = false;
}

/** Bytes of the pack that is there; a browser short of room may have thrown it away. */
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
