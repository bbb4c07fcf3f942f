// How a template asks for one page per view model: Eleventy's pagination over one list of `pages`.
import type { PageHead, Pages } from "../../src/pages/index.js";

export interface Shown<V extends PageHead = PageHead> {
  readonly view: V;
}

export function paged(list: keyof Pages) {
  return {
    pagination: { data: `pages.${list}`, size: 1, alias: "view", addAllPagesToCollections: false },
    permalink: ({ view }: Shown) => `/${view.href}`,
    eleventyExcludeFromCollections: true,
    eleventyAllowMissingExtension: true,
  };
}
