// The shell of the single file: one HTML document with everything in it. Text that could end its element early is escaped here, and only here.
import { h } from "preact";
import { renderToStaticMarkup } from "preact-render-to-string";
import { menu } from "../pages/index.js";

/** Nothing may be loaded from anywhere and nothing sent: what the file needs is in it. */
const policy = [
  "default-src 'none'",
  "script-src 'unsafe-inline' blob:",
  "worker-src blob:",
  "style-src 'unsafe-inline'",
  "img-src data: blob:",
  "font-src data:",
  "base-uri 'none'",
  "form-action 'none'",
].join("; ");

export interface ShellParts {
  readonly title: string;
  readonly style: string;
  readonly script: string;
  /** Named pieces, compressed and in base64: a page looks in when it wants one. */
  readonly pieces: Readonly<Record<string, string>>;
  /** Content of the first page, shown before any script has run. */
  readonly first: string;
  /** Said above every page, those made when asked for among them. */
  readonly notice?: string | undefined;
  readonly made: string;
}

const inScript = (text: string) => text.replace(/<\/(script)/gi, "<\\/$1").replaceAll("<!--", "<\\!--");
const inStyle = (text: string) => text.replace(/<\/(style)/gi, "<\\/$1");
const raw = (html: string) => ({ __html: html });

export function shell({ title, style, script, pieces, notice, first, made }: ShellParts): string {
  const entries = [...menu, { text: "Search", href: "search.html", part: "search" }];
  const document = h(
    "html",
    { lang: "en" },
    h(
      "head",
      null,
      h("meta", { charset: "utf-8" }),
      h("meta", { "http-equiv": "Content-Security-Policy", content: policy }),
      h("meta", { name: "viewport", content: "width=device-width, initial-scale=1" }),
      h("meta", { name: "color-scheme", content: "light dark" }),
      h("title", null, title),
      h("link", { rel: "icon", href: "data:," }),
      h("style", { dangerouslySetInnerHTML: raw(inStyle(style)) }),
    ),
    h(
      "body",
      { class: "pocket", "data-root": "" },
      h("a", { class: "skip", href: "#content" }, "To the content"),
      h(
        "header",
        { class: "top" },
        h("a", { class: "home", href: "#index.html" }, "Slotwright"),
        h(
          "nav",
          { "aria-label": "Site" },
          h(
            "ul",
            null,
            entries.map((m) => h("li", { key: m.href }, h("a", { href: `#${m.href}`, "data-part": m.part }, m.text))),
          ),
        ),
        h(
          "search",
          { class: "find" },
          h(
            "form",
            null,
            h("label", { for: "find" }, "Search"),
            h("input", { id: "find", name: "q", type: "search", autocomplete: "off", placeholder: "model or symptom" }),
            h("button", { type: "submit" }, "Find"),
          ),
        ),
      ),
      notice === undefined ? null : h("p", { class: "notice", role: "note" }, notice),
      h("main", { id: "content", tabIndex: -1, dangerouslySetInnerHTML: raw(first) }),
      h(
        "footer",
        null,
        h(
          "p",
          null,
          h("a", { href: "#sure.html" }, "How sure is this?"),
          " ",
          h("a", { href: "#words.html" }, "Words"),
          " ",
          h("a", { href: "#cautions.html" }, "Cautions"),
          " ",
          h("a", { href: "#data/index.html" }, "About the data"),
        ),
        h("p", null, `One file that needs no network, made ${made}. It sends nothing anywhere.`),
        h(
          "p",
          null,
          "Before you open a machine, read the cautions. Nothing here replaces the rules and the licensed trades where you live.",
        ),
      ),
      ...Object.entries(pieces).map(([name, text]) =>
        h("script", { key: name, type: "text/plain", id: `piece-${name}`, dangerouslySetInnerHTML: raw(text) }),
      ),
      h("script", { dangerouslySetInnerHTML: raw(inScript(script)) }),
    ),
  );
  return `<!doctype html>\n${renderToStaticMarkup(document)}`;
}
