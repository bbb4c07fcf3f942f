// Search in the single file: the same index and the same order of finds as on the site, without the full text.
import { verdictMark } from "../../drawing/index.js";
import type { SearchEntry } from "../../pages/index.js";
import { type Finder, finder, type Hit } from "../../search/index.js";
import { piece } from "./pieces.js";

const most = 40;
let known: Promise<Finder<SearchEntry>> | undefined;

export function searching(): Promise<Finder<SearchEntry>> {
  known ??= piece("search").then((text) => finder(JSON.parse(text) as SearchEntry[]));
  return known;
}

function element(name: string, css: string, ...children: readonly (string | Node)[]): HTMLElement {
  const made = document.createElement(name);
  if (css) made.className = css;
  made.append(...children);
  return made;
}

function line({ entry, symptom }: Hit<SearchEntry>): HTMLElement {
  const link = element("a", "", entry.title) as HTMLAnchorElement;
  link.href = `#${entry.href}`;
  const answer = element("p", "");
  if (entry.mark) {
    const { verdict, evidence } = entry.mark;
    const mark = element("span", "mk");
    mark.innerHTML = verdictMark(verdict, verdict === "ruled-out" ? undefined : evidence, 20, { decorative: true });
    answer.append(mark, " ");
  }
  answer.append(entry.answer);
  if (entry.mark?.of?.kind === "answer" && entry.mark.of.says) answer.append(` (The mark: ${entry.mark.of.says}.)`);
  return element(
    "li",
    "",
    element("p", "hit", link, " ", element("span", "more", entry.kind)),
    answer,
    ...(symptom ? [element("p", "more", `Seen: ${symptom}`)] : []),
  );
}

/** Sets the page of results; `question` comes from the address. */
export async function showSearch(main: HTMLElement, question: string, go: (question: string) => void): Promise<void> {
  const box = element("input", "") as HTMLInputElement;
  box.type = "search";
  box.id = "q";
  box.value = question;
  box.autocomplete = "off";
  const label = element("label", "", "Look for") as HTMLLabelElement;
  label.htmlFor = "q";
  const button = element("button", "", "Find") as HTMLButtonElement;
  const form = element("form", "search", label, element("div", "line", box, button)) as HTMLFormElement;
  const said = element("p", "");
  said.setAttribute("role", "status");
  const found = element("ol", "found");
  main.replaceChildren(element("div", "title", element("h1", "", "Search")), form, said, found);
  const finds = await searching();
  const run = () => {
    const hits = box.value.trim() === "" ? [] : finds.find(box.value.trim());
    const sure = hits.filter((h) => h.how !== "near");
    const near = sure.length < 5 ? hits.filter((h) => h.how === "near").slice(0, 12) : [];
    found.replaceChildren(...[...sure.slice(0, most), ...near].map(line));
    const count = sure.length === 1 ? "One page." : `${sure.length} pages.`;
    said.textContent =
      box.value.trim() === ""
        ? ""
        : sure.length > 0
          ? count
          : near.length > 0
            ? "Nothing has just these words. The nearest:"
            : "Nothing found. Try fewer words.";
  };
  let waiting: ReturnType<typeof setTimeout> | undefined;
  form.addEventListener("input", () => {
    clearTimeout(waiting);
    waiting = setTimeout(run, 150);
  });
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    go(box.value.trim());
    run();
  });
  if (question === "") box.focus();
  run();
}
