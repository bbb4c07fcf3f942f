// Eleventy's settings: they wire, src/publish works. `slotwright site` runs Eleventy and gives it the pages of a club.
import { wire } from "./dist/src/publish/index.js";

export default function (config) {
  if (!config.globalData.pages) throw new Error("Eleventy is run by `slotwright site`, which reads the club's records first.");
  wire(config);
  return { dir: { input: "dist/templates", output: "_site" }, templateFormats: ["11ty.js"] };
}
