// The search page: the small index answers at once and also from a disk; over a web server Pagefind adds the full text of the pages.

import { verdictMark } from "../../drawing/index.js";
import type { SearchEntry } from "../../pages/index.js";
import { itemAt, must } from "../../records/index.js";
import { type Filters, finder, fits, type Hit } from "../../search/index.js";

interface PagefindResult {
  readonly id: string;
  data(): Promise<{ readonly url: string; readonly excerpt: string; readonly meta: Readonly<Record<string, string>> }>;
}
interface Pagefind {
  options(options: Readonly<Record<string, unknown>>): Promise<void>;
  init(): Promise<void>;
  search(
    question: string,
    options: { filters: Readonly<Record<string, string>> },
  ): Promise<{ readonly results: readonly PagefindResult[] }>;
}

declare global {
  // Set by assets/search-data.js, a plain script so that it also loads from a disk.
  var slotwrightSearch: readonly SearchEntry[] | undefined;
}

const most = 40;
const form = must(document.querySelector<HTMLFormElement>("form.search"), "the search form");
const box = must(form.querySelector<HTMLInputElement>("input[name=q]"), "the box to search in");
const said = must(document.getElementById("said"), "where the search says what it found");
const found = must(document.getElementById("found"), "the list of what was found");
const entries = globalThis.slotwrightSearch ?? [];
const known = finder(entries);

/** Pagefind when it can be had: it needs a web server, since a browser loads no module from a disk. */
let fullText: Promise<Pagefind | undefined> | undefined;
function pagefind(): Promise<Pagefind | undefined> {
  fullText ??= load().catch(() => undefined);
  return fullText;
}

async function load(): Promise<Pagefind | undefined> {
  if (location.protocol === "file:") return undefined;
  const address = new URL("pagefind/pagefind.js", document.baseURI).href;
  const engine = (await import(address)) as Pagefind;
  await engine.options({ excerptLength: 24 });
  await engine.init();
  return engine;
}

function filters(): Filters {
  const data = new FormData(form);
  const of = (name: string) => String(data.get(name) ?? "") || undefined;
  return { kind: of("kind"), board: of("board"), verdict: of("verdict") };
}

function element(name: string, css: string, ...children: readonly (string | Node)[]): HTMLElement {
  const made = document.createElement(name);
  if (css) made.className = css;
  made.append(...children);
  return made;
}

/** Pagefind marks the words it found; nothing else of its excerpt is taken as markup. */
function excerpt(html: string): readonly (string | Node)[] {
  return html.split(/(<mark>.*?<\/mark>)/g).map((part) => {
    const inside = /^<mark>(.*)<\/mark>$/.exec(part);
    return inside ? element("mark", "", plain(itemAt(inside, 1))) : plain(part);
  });
}

function plain(html: string): string {
  return new DOMParser().parseFromString(html, "text/html").body.textContent ?? "";
}

function line(entry: SearchEntry, more: readonly (string | Node)[]): HTMLElement {
  const link = element("a", "", entry.title) as HTMLAnchorElement;
  link.href = entry.href;
  const head = element("p", "hit", link, " ", element("span", "more", entry.kind));
  const answer = element("p", "");
  if (entry.mark) {
    const { verdict, evidence } = entry.mark;
    const mark = element("span", `mk ${verdict === "workable" ? "works" : verdict === "conditional" ? "if" : "plain"}`);
    mark.innerHTML = verdictMark(verdict, verdict === "ruled-out" ? undefined : evidence, 20, { decorative: true });
    answer.append(mark, " ");
  }
  answer.append(entry.answer);
  if (entry.mark?.of?.kind === "answer" && entry.mark.of.says) answer.append(` (The mark: ${entry.mark.of.says}.)`);
  const item = element("li", "", head, answer);
  if (more.length > 0) item.append(element("p", "more", ...more));
  return item;
}

const byHref = new Map(entries.map((e) => [e.href, e]));
let turn = 0;

async function run(): Promise<void> {
  turn += 1;
  const mine = turn;
  const question = box.value.trim();
  const wanted = filters();
  const address = new URL(location.href);
  address.search = new URLSearchParams([...new FormData(form)].flatMap(([k, v]) => (v === "" ? [] : [[k, String(v)]]))).toString();
  history.replaceState(null, "", address);
  if (question === "") {
    found.replaceChildren();
    said.textContent = "";
    return;
  }
  const hits = known.find(question, wanted);
  const sure = hits.filter((h) => h.how !== "near");
  // What is known at once is shown at once; with nothing to show, the old list stays until the full text has been looked through.
  if (sure.length > 0) show(sure, [], "");
  else said.textContent = "Looking through the full text.";
  const engine = await pagefind();
  if (mine !== turn) return;
  const seen = new Set(sure.map((h) => h.entry.href));
  const texts: HTMLElement[] = [];
  if (engine) {
    // Together with a board a verdict is the one on that board, which only the small index knows.
    const asked = wanted.board === undefined ? wanted : { kind: wanted.kind, board: undefined, verdict: undefined };
    const picked = Object.fromEntries(Object.entries(asked).filter(([, v]) => v !== undefined)) as Record<string, string>;
    const { results } = await engine.search(question, { filters: picked });
    for (const result of results.slice(0, most - sure.length)) {
      const data = await result.data();
      if (mine !== turn) return;
      const href = new URL(data.url, document.baseURI).pathname.slice(new URL(".", document.baseURI).pathname.length);
      const entry = byHref.get(href);
      if (!entry || seen.has(href) || !fits(entry, wanted)) continue;
      seen.add(href);
      texts.push(line(entry, excerpt(data.excerpt)));
    }
  }
  const near = sure.length + texts.length < 5 ? hits.filter((h) => h.how === "near" && !seen.has(h.entry.href)) : [];
  const count = sure.length + texts.length;
  const word =
    count === 0
      ? near.length > 0
        ? "Nothing has just these words. The nearest:"
        : "Nothing found. Try fewer words, or take a filter away."
      : `${count === 1 ? "One page" : `${count} pages`}${near.length > 0 ? ", and some that come near" : ""}.`;
  show(sure, [...texts, ...near.slice(0, 12).map((h) => line(h.entry, symptomOf(h)))], word);
}

function symptomOf(hit: Hit<SearchEntry>): readonly string[] {
  return hit.symptom ? [`Seen: ${hit.symptom}`] : [];
}

function show(sure: readonly Hit<SearchEntry>[], rest: readonly HTMLElement[], word: string): void {
  found.replaceChildren(...sure.slice(0, most).map((h) => line(h.entry, symptomOf(h))), ...rest);
  said.textContent = word;
}

const asked = new URL(location.href).searchParams;
for (const name of ["q", "kind", "board", "verdict"]) {
  const field = form.elements.namedItem(name) as HTMLInputElement | HTMLSelectElement | null;
  if (field && asked.has(name)) field.value = asked.get(name) ?? "";
}
let waiting: ReturnType<typeof setTimeout> | undefined;
form.addEventListener("input", () => {
  clearTimeout(waiting);
  waiting = setTimeout(run, 150);
});
form.addEventListener("submit", (event) => {
  event.preventDefault();
  run();
});
if (box.value === "") box.focus();
run();
