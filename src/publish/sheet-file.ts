// The build sheet as one file that needs nothing beside it: for the printer, the shed, a memory stick.
import { type ComponentChild, h } from "preact";
import { renderToStaticMarkup } from "preact-render-to-string";
import { Lid } from "../../templates/parts/Lid.js";
import { Sheet } from "../../templates/parts/Sheet.js";
import type { LidPage, PageHead, SheetPage } from "../pages/index.js";

/** Nothing is loaded from anywhere; style and type faces stand in the file. */
const policy = "default-src 'none'; style-src 'unsafe-inline'; font-src data:";

/** `style` is the site's own style sheet, as text, with its type faces in it where they are to be shown. */
export function sheetFile(view: SheetPage, style: string): string {
  return filed(view, h(Sheet, { view }), style);
}

/** The card for the lid alone, as such a file. */
export function lidFile(view: LidPage, style: string): string {
  return filed(view, h(Lid, { view }), style);
}

function filed(view: PageHead, content: ComponentChild, style: string): string {
  const document = h(
    "html",
    { lang: "en" },
    h(
      "head",
      null,
      h("meta", { charset: "utf-8" }),
      h("meta", { "http-equiv": "Content-Security-Policy", content: policy }),
      h("meta", { name: "viewport", content: "width=device-width, initial-scale=1" }),
      h("title", null, view.title),
      // In a style element "</" is the one thing that could end it early.
      h("style", { dangerouslySetInnerHTML: { __html: style.replaceAll("</", "<\\/") } }),
    ),
    h(
      "body",
      null,
      view.notice === undefined ? null : h("p", { class: "notice", role: "note" }, view.notice),
      h("main", { id: "content" }, h("h1", null, view.title), content),
    ),
  );
  return `<!doctype html>\n${renderToStaticMarkup(document)}`;
}
