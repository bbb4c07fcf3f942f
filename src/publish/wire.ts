// What Eleventy must be told: which pages there are, and that a template returns JSX, escaped by default.
import type { EleventyConfig } from "@11ty/eleventy";
import type { VNode } from "preact";
import { renderToStaticMarkup } from "preact-render-to-string";
import type { Pages } from "../pages/index.js";

interface Engine {
  readonly defaultRenderer: (data: unknown) => Promise<string | VNode>;
}

/** Every template that returns JSX is rendered to a whole document. */
export function wire(config: EleventyConfig): void {
  // The templates are compiled into dist/, which version control leaves out.
  config.setUseGitIgnore(false);
  config.addExtension("11ty.js", {
    key: "11ty.js",
    compile() {
      return async function (this: Engine, data: unknown) {
        const out = await this.defaultRenderer(data);
        return typeof out === "string" ? out : `<!doctype html>\n${renderToStaticMarkup(out)}`;
      };
    },
  });
}

export function givePages(config: EleventyConfig, pages: Pages): void {
  config.addGlobalData("pages", pages);
}
