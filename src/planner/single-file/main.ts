// The single file at work: what stands after "#" in the address says which page is shown. Links between pages are led there.

import { pageOf, sectionOf } from "../../pages/index.js";
import { must } from "../../records/index.js";
import { anchored, boardPicker, matrixFilters, unfold } from "../../scripts/index.js";
import { type Surroundings, startPlanner } from "../start.js";
import { connect } from "../worker/engine.js";
import type { BenchTasks, Tasks } from "../worker/protocol.js";
import { type Book, type PocketPage, pageIn } from "./book.js";
import { isMade, madePage } from "./made.js";
import { piece, scriptFrom } from "./pieces.js";
import { showSearch } from "./search.js";

const main = must(document.getElementById("content"), "document.getElementById(…)");
const plannerPrefix = "#planner.html?";
const menu = [...document.querySelectorAll<HTMLAnchorElement>(".top nav a")];

let opened: Promise<Book> | undefined;
let planner: { readonly at: HTMLElement; readonly end: Promise<() => void> } | undefined;
let surroundings: Promise<Surroundings> | undefined;
let shown = "index.html";
let turn = 0;

function book(): Promise<Book> {
  opened ??= piece("pages").then((text) => JSON.parse(text) as Book);
  return opened;
}

function around(): Promise<Surroundings> {
  surroundings ??= piece("records").then((text) => ({
    solve: connect<Tasks>("solve", scriptFrom, { text }),
    bench: connect<BenchTasks>("bench", scriptFrom, { text }),
    places: { record: (ref) => `#${pageOf(ref.kind, ref.id)}${sectionOf(ref)}`, page: (name) => `#${name}.html` },
    prefix: plannerPrefix,
  }));
  return surroundings;
}

interface Place {
  readonly page: string;
  readonly query: string;
  readonly anchor: string;
}

function placeOf(hash: string): Place {
  const [, page = "", query = "", anchor = ""] = /^#?([^?#]*)(?:\?([^#]*))?(?:#(.*))?$/s.exec(hash) ?? [];
  return { page: page || "index.html", query, anchor };
}

async function route(): Promise<void> {
  turn += 1;
  const mine = turn;
  const place = placeOf(location.hash);
  if (place.page === "content") return main.focus();
  if (place.page !== "planner.html") await leavePlanner();
  if (place.page === "planner.html") await showPlanner();
  else if (place.page === "search.html") {
    setTitle("Search");
    const question = new URLSearchParams(place.query).get("q") ?? "";
    await showSearch(main, question, (q) => history.replaceState(null, "", `#search.html?q=${encodeURIComponent(q)}`));
  } else if (place.page !== shown || main.dataset.page !== place.page) {
    const made = await isMade(place.page);
    if (mine !== turn) return;
    const page = await (made ? making(place.page) : book().then((all) => pageIn(all, place.page)));
    if (mine !== turn) return;
    showPage(place.page, page);
  }
  shown = place.page;
  for (const a of menu) {
    const part = must(a.getAttribute("href"), "a.getAttribute(…)").slice(1).split("/")[0];
    if (place.page.split("/")[0] === part) a.setAttribute("aria-current", "true");
    else a.removeAttribute("aria-current");
  }
  toAnchor(place.anchor);
}

/** Says so while it is made; a sheet takes a moment. */
function making(name: string): Promise<PocketPage | undefined> {
  const said = document.createElement("p");
  said.setAttribute("role", "status");
  said.textContent = "Making this page.";
  main.replaceChildren(said);
  main.dataset.page = "";
  return madePage(name, around);
}

function setTitle(title: string): void {
  document.title = title.includes("Slotwright") ? title : `${title} \u2013 Slotwright`;
}

function showPage(name: string, page: PocketPage | undefined): void {
  const [title, html] = page ?? [
    "Not in this file",
    "<div class='title'><h1>Not in this file</h1></div><p>The club's site has this page; the single file leaves it out.</p>",
  ];
  setTitle(new DOMParser().parseFromString(title, "text/html").body.textContent ?? "");
  main.innerHTML = html;
  main.dataset.page = name;
  matrixFilters();
  boardPicker();
  scrollTo(0, 0);
  main.focus({ preventScroll: true });
}

function toAnchor(anchor: string): void {
  const at = anchored(anchor);
  for (const old of document.querySelectorAll(".source .at")) old.classList.remove("at");
  at?.classList.toggle("at", at.parentElement?.classList.contains("source") ?? false);
  unfold(at);
  const details = at?.classList.contains("anchor") ? at.parentElement?.querySelector("details") : undefined;
  if (details) details.open = true;
  at?.scrollIntoView({ block: "start" });
}

async function showPlanner(): Promise<void> {
  if (planner?.at.isConnected) return;
  const at = document.createElement("div");
  at.id = "planner";
  const said = document.createElement("p");
  said.setAttribute("role", "status");
  said.textContent = "Opening the records.";
  at.append(said);
  const head = document.createElement("div");
  head.className = "title";
  head.innerHTML = "<h1>Planner</h1>";
  document.body.classList.add("wide");
  main.replaceChildren(head, at);
  main.dataset.page = "planner.html";
  setTitle("Planner");
  planner = { at, end: around().then((s) => startPlanner(at, s)) };
  await planner.end;
}

async function leavePlanner(): Promise<void> {
  const had = planner;
  planner = undefined;
  document.body.classList.remove("wide");
  if (had) (await had.end)();
}

/** Pages name one another as they do on the site, from where they stand. */
document.addEventListener("click", (event) => {
  const link = (event.target as Element | null)?.closest?.("a[href]");
  const href = link?.getAttribute("href");
  if (!link || !href || event.defaultPrevented || /^[a-z]+:/i.test(href)) return;
  if (/^#[^?#]*\.html/.test(href) || href === "#content") return;
  event.preventDefault();
  const to = new URL(href, `https://pocket.invalid/${shown}`);
  location.hash = `${to.pathname.slice(1)}${to.search}${to.hash}`;
});

document.querySelector<HTMLFormElement>(".find form")?.addEventListener("submit", (event) => {
  event.preventDefault();
  const box = document.getElementById("find") as HTMLInputElement;
  location.hash = `search.html?q=${encodeURIComponent(box.value)}`;
});

document.addEventListener("keydown", (event) => {
  const at = event.target as HTMLElement;
  if (event.key !== "/" || event.ctrlKey || event.metaKey || event.altKey || /^(input|textarea|select)$/i.test(at.tagName)) return;
  event.preventDefault();
  (document.getElementById("q") ?? document.getElementById("find"))?.focus();
});

addEventListener("hashchange", () => void route());
main.dataset.page = "index.html";
if (placeOf(location.hash).page !== "index.html") void route();
