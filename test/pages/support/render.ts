// The pages of a catalogue set in the test itself: the same view models and templates as the site, without its builder.
import type { VNode } from "preact";
import { renderToStaticMarkup } from "preact-render-to-string";
import type { Catalogue } from "../../../src/catalogue/index.js";
import { type Pages, pagesOf } from "../../../src/pages/index.js";
import { render as board } from "../../../templates/board.11ty.js";
import { render as build } from "../../../templates/build.11ty.js";
import { render as card } from "../../../templates/card.11ty.js";
import { render as conflict } from "../../../templates/conflict.11ty.js";
import { render as firmware } from "../../../templates/firmware.11ty.js";
import { render as list } from "../../../templates/list.11ty.js";
import { render as matrix } from "../../../templates/matrix.11ty.js";
import { render as sheet } from "../../../templates/sheet.11ty.js";
import { render as start } from "../../../templates/start.11ty.js";
import { type Page, parse } from "../parse.js";

/** Every page that states an answer, as the site has it. */
export function renderPages(catalogue: Catalogue): { readonly pages: Pages; readonly set: readonly Page[] } {
  const pages = pagesOf({ catalogue, texts: new Map(), lineOf: () => undefined, guide: [], downloads: [] });
  const setting = <V extends { readonly href: string }>(views: readonly V[], render: (shown: { view: V }) => VNode) =>
    views.map((view) => parse(view.href, renderToStaticMarkup(render({ view }))));
  return {
    pages,
    set: [
      ...setting(pages.start, start),
      ...setting(pages.lists, list),
      ...setting(pages.boards, board),
      ...setting(pages.matrices, matrix),
      ...setting(pages.firmware, firmware),
      ...setting(pages.cards, card),
      ...setting(pages.conflicts, conflict),
      ...setting(pages.builds, build),
      ...setting(pages.sheets, sheet),
    ],
  };
}
