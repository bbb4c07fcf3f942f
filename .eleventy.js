// Eleventy's settings: they wire, src/site works. The site is made by `slotwright site`, which gives the pages;
// `npx eleventy` on its own sets the demo club's pages without search and exports, after `npm run build`.
import { givePages, loadDemo, wire } from "./dist/src/site/eleventy.js";

export default async function (config) {
  wire(config);
  if (!config.globalData.pages) givePages(config, await loadDemo());
  return { dir: { input: "dist/templates", output: "_site" }, templateFormats: ["11ty.js"] };
}
