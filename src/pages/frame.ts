// What every page's frame needs: the menu and the content security policy.
import { plannerPage } from "./links.js";

export const menu: readonly { readonly text: string; readonly href: string; readonly part: string }[] = [
  { text: "Boards", href: "boards/index.html", part: "boards" },
  { text: "Cards", href: "cards/index.html", part: "cards" },
  { text: "Firmware", href: "firmware/index.html", part: "firmware" },
  { text: "Problems", href: "conflicts/index.html", part: "conflicts" },
  { text: "Tested", href: "builds/index.html", part: "builds" },
  { text: "Parts", href: "parts/index.html", part: "parts" },
  { text: "Planner", href: plannerPage, part: "planner" },
];

/** Nothing from another host, no script or style written into the page. The search engine is WebAssembly. */
export const policy = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "style-src 'self'",
  "img-src 'self' data:",
  "font-src 'self'",
  "connect-src 'self'",
  "worker-src 'self' blob:",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'self'",
].join("; ");
