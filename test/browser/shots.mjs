// Takes pictures of every kind of page and puts them on one contact sheet: npm run shots [-- <folder of the site>] [-- --only card,matrix]
// Widths 360, 768 and 1280, light, dark and as printed. For people to look at; it judges nothing.
import { existsSync, mkdirSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";
import { ensureChromium, launchArguments } from "../support/chromium.mjs";
import { serveFolder } from "./serve.mjs";

const top = fileURLToPath(new URL("../..", import.meta.url));
const words = process.argv.slice(2);
const option = (name) => words.find((w) => w.startsWith(`--${name}=`))?.split("=")[1];
const site = resolve(words.find((w) => !w.startsWith("--")) ?? join(top, "_site"));
const out = resolve(option("out") ?? join(top, "_shots"));
if (!existsSync(join(site, "index.html"))) throw new Error(`${site} holds no built site. Make it first: npx slotwright site`);

const first = (folder, wish) => {
  const pages = readdirSync(join(site, folder)).filter((f) => f.endsWith(".html") && f !== "index.html");
  return `${folder}/${pages.find((f) => f.includes(wish)) ?? pages[0]}`;
};
const pages = {
  start: "index.html",
  boards: "boards/index.html",
  board: first("boards", "16t"),
  matrix: first("matrix", "16t--d1"),
  cards: "cards/index.html",
  card: first("cards", "gannet"),
  tracer: first("cards", "tallow"),
  firmware: first("firmware", "monitor"),
  problems: "conflicts/index.html",
  problem: first("conflicts", "tracer"),
  builds: "builds/index.html",
  build: first("builds", "three"),
  sheet: first("builds", "-sheet"),
  planner: "planner.html#b=skerry-16t&c=gannet-fixed-disk-controller&c=samphire-network-card",
  "planner-no": "planner.html#b=skerry-16t&c=tallow-bus-tracer&c=gannet-fixed-disk-controller",
  parts: "parts/index.html",
  device: "parts/27c040.html",
  connector: "parts/de-9-socket.html",
  switch: first("parts", "rotary-3x4"),
  bus: first("buses", ""),
  cautions: "cautions.html",
  sure: "sure.html",
  worth: "worth-finding-out.html",
  data: "data/index.html",
  guide: "data/guide/card.html",
  source: first("source/cards", "tallow"),
  search: "search.html",
  results: "search.html?q=hangs",
  missing: "404.html",
};
const only = option("only")?.split(",");
const kinds = Object.entries(pages).filter(([name]) => !only || only.includes(name));
const looks = [
  ["360-light", 360, "light"],
  ["360-dark", 360, "dark"],
  ["768-light", 768, "light"],
  ["1280-light", 1280, "light"],
  ["1280-dark", 1280, "dark"],
  ["print", 794, "print"],
].filter(([name]) => !option("looks") || option("looks").split(",").includes(name));

rmSync(out, { recursive: true, force: true });
mkdirSync(out, { recursive: true });
const server = await serveFolder(site);
const browser = await chromium.launch({ executablePath: ensureChromium(), args: [...launchArguments] });
try {
  for (const [look, width, scheme] of looks) {
    const context = await browser.newContext({
      viewport: { width, height: width < 500 ? 740 : 900 },
      colorScheme: scheme === "dark" ? "dark" : "light",
      reducedMotion: "reduce",
    });
    const page = await context.newPage();
    if (scheme === "print") await page.emulateMedia({ media: "print" });
    for (const [name, path] of kinds) {
      await page.goto(`${server.address}/${path}`, { waitUntil: "networkidle" });
      await page.evaluate(() => document.fonts.ready);
      await page.screenshot({ path: join(out, `${name}-${look}.png`), fullPage: true });
    }
    await context.close();
    console.log(`${look}: ${kinds.length} pages`);
  }
  const rows = kinds.map(([name]) => {
    const cells = looks.map(
      ([look]) => `<td><a href="${name}-${look}.png"><img src="${name}-${look}.png" alt="${name}, ${look}"></a></td>`,
    );
    return `<tr><th>${name}</th>${cells.join("")}</tr>`;
  });
  const style =
    "body{font:16px serif}td{vertical-align:top;padding:6px}img{width:220px;max-height:420px;object-fit:cover;object-position:top;border:1px solid #999}";
  const heads = looks.map(([look]) => `<th>${look}</th>`).join("");
  const sheet = `<!doctype html><meta charset="utf-8"><title>Contact sheet</title><style>${style}</style><table><tr><th></th>${heads}</tr>${rows.join("")}</table>`;
  writeFileSync(join(out, "index.html"), sheet);
  console.log(`Contact sheet: ${join(out, "index.html")}`);
} finally {
  await browser.close();
  server.close();
}
