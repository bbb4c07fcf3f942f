// The site as built: every page is whole, leads nowhere dead, loads nothing from elsewhere, and every record can be reached and found.
import { posix } from "node:path";
import { gzipSync } from "node:zlib";
import { describe, expect, it } from "vitest";
import { policy } from "../../src/pages/index.js";
import { readRecords } from "../../src/records/index.js";
import { verdictWords } from "../../src/words/index.js";
import { demoFiles } from "../support/demo.js";
import { type Element, files, type Page, pages, read } from "./built.js";

const { records } = readRecords(demoFiles());
const byName = new Map(pages.map((p) => [p.name, p]));
const known = new Set(files);

/** Where an address on a page leads: a file of the site and perhaps a place in it; undefined when it leaves the site. */
function target(page: Page, address: string): { file: string; place: string } | undefined {
  if (/^[a-z]+:/i.test(address)) return undefined;
  const [path = "", place = ""] = address.split("#");
  const file = path.split("?")[0] === "" ? page.name : posix.normalize(posix.join(posix.dirname(page.name), path.split("?")[0]!));
  return { file, place };
}

const links = (page: Page) => page.find("a").flatMap((a) => (a.attributes.href === undefined ? [] : [a.attributes.href]));
const ids = new Map(pages.map((p) => [p.name, new Set(p.all.flatMap((e) => (e.attributes.id === undefined ? [] : [e.attributes.id])))]));

function labelled(page: Page, field: Element): boolean {
  for (let at = field.parent; at; at = at.parent) if (at.name === "label") return true;
  if (field.attributes["aria-label"]) return true;
  return page.find("label").some((l) => l.attributes.for !== undefined && l.attributes.for === field.attributes.id);
}

const every = (wrong: (page: Page) => readonly string[]) => pages.flatMap((p) => wrong(p).map((w) => `${p.name}: ${w}`));

describe("every page", () => {
  it("exists in number", () => {
    expect(pages.length).toBeGreaterThan(records.length);
  });

  it("has one first heading, a title, a description, a language and a way to the content", () => {
    expect(
      every((p) => [
        ...(p.find("h1").length === 1 && p.find("h1")[0]!.text !== "" ? [] : [`${p.find("h1").length} h1`]),
        ...(p.find("title")[0]?.text ? [] : ["no title"]),
        ...(p.find("meta").some((m) => m.attributes.name === "description" && m.attributes.content) ? [] : ["no description"]),
        ...(p.find("html")[0]?.attributes.lang === "en" ? [] : ["no language"]),
        ...(p.find("main")[0]?.attributes.id === "content" ? [] : ["no content"]),
      ]),
    ).toEqual([]);
  });

  it("keeps the order of its headings", () => {
    expect(
      every((p) => {
        const levels = p.all.filter((e) => /^h[1-6]$/.test(e.name)).map((e) => Number(e.name[1]));
        return levels.flatMap((level, i) => (i > 0 && level > levels[i - 1]! + 1 ? [`h${levels[i - 1]} then h${level}`] : []));
      }),
    ).toEqual([]);
  });

  it("labels every field and names every button", () => {
    expect(
      every((p) => [
        ...[...p.find("input"), ...p.find("select"), ...p.find("textarea")]
          .filter((f) => !labelled(p, f))
          .map((f) => `${f.name} ${f.attributes.name} has no label`),
        ...p.find("button").flatMap((b) => (b.text || b.attributes["aria-label"] ? [] : ["a button without a word"])),
      ]),
    ).toEqual([]);
  });

  it("gives each id once", () => {
    expect(
      every((p) => {
        const seen = p.all.flatMap((e) => (e.attributes.id === undefined ? [] : [e.attributes.id]));
        return seen.filter((id, i) => seen.indexOf(id) !== i);
      }),
    ).toEqual([]);
  });

  it("leads nowhere dead, neither to a missing file nor to a missing place on a page", () => {
    const dead = every((p) =>
      links(p).flatMap((address) => {
        const to = target(p, address);
        if (!to) return [];
        if (!known.has(to.file)) return [`${address} leads to no file`];
        return to.place === "" || !byName.has(to.file) || ids.get(to.file)!.has(to.place) ? [] : [`${address} leads to no place`];
      }),
    );
    expect(dead).toEqual([]);
  });

  it("names files in full and from where it stands, so that the folder also reads from a disk", () => {
    expect(every((p) => links(p).filter((a) => a.startsWith("/") || (/^[^:#?]*$/.test(a) && a.endsWith("/"))))).toEqual([]);
  });

  it("loads nothing from another host and holds no script or style of its own", () => {
    const loads = (p: Page) => [
      ...[...p.find("script"), ...p.find("img"), ...p.find("iframe")].map((e) => e.attributes.src ?? "inline"),
      ...p
        .find("link")
        .filter((l) => l.attributes.rel !== "alternate")
        .map((l) => l.attributes.href ?? ""),
      ...p.find("form").map((f) => f.attributes.action ?? "#"),
    ];
    expect(every((p) => loads(p).filter((address) => address === "inline" || /^([a-z]+:|\/)/i.test(address)))).toEqual([]);
    expect(every((p) => p.find("style").map(() => "a style element"))).toEqual([]);
    expect(every((p) => p.all.flatMap((e) => Object.keys(e.attributes).filter((a) => a === "style" || a.startsWith("on"))))).toEqual([]);
    expect(every((p) => (p.html.includes(`content="${policy}"`) ? [] : ["no content security policy"]))).toEqual([]);
    expect(policy).not.toMatch(/unsafe-inline|unsafe-eval'(?<!wasm-unsafe-eval')|https?:/);
  });

  it("says nothing that a program says", () => {
    // "Undefined levels" is what an electrician says.
    const words = /\bundefined\b(?! level)|\[object |\bNaN\b|\bnull\b/;
    const own = pages.filter((p) => !p.name.startsWith("source/") && !p.name.startsWith("data/guide/"));
    expect(own.flatMap((p) => (words.test(p.find("body")[0]!.text) ? [`${p.name}: ${words.exec(p.find("body")[0]!.text)}`] : []))).toEqual(
      [],
    );
  });

  it("weighs under 60 KB with its style sheet, as it is sent", () => {
    const sheet = gzipSync(read("assets/site.css")).length;
    expect(every((p) => (gzipSync(p.html).length + sheet > 60_000 ? [`${gzipSync(p.html).length + sheet} bytes`] : []))).toEqual([]);
  });
});

describe("every record", () => {
  const reached = new Set<string>();
  const queue = ["index.html"];
  while (queue.length > 0) {
    const name = queue.pop()!;
    if (reached.has(name)) continue;
    reached.add(name);
    const page = byName.get(name);
    if (page) queue.push(...links(page).flatMap((a) => target(page, a)?.file ?? []));
  }
  const folder = {
    bus: "buses",
    board: "boards",
    firmware: "firmware",
    card: "cards",
    conflict: "conflicts",
    build: "builds",
    part: "parts",
  };
  const wanted = records.flatMap(({ kind, record }) => (kind === "club" ? [] : [`${folder[kind]}/${record.id}.html`]));

  it("has a page that can be reached from the start", () => {
    expect(wanted.length).toBeGreaterThan(150);
    expect(wanted.filter((name) => !reached.has(name) || !byName.has(name))).toEqual([]);
  });

  it("is shown as it is written, with every line", () => {
    const lines = records.map(
      ({ file, text }) => [`source/${file.replace(/\.yaml$/, ".html")}`, text!.trimEnd().split("\n").length] as const,
    );
    expect(lines.filter(([name, count]) => byName.get(name)?.find("ol")[0]?.children.length !== count)).toEqual([]);
  });

  it("no page is an orphan", () => {
    const apart = new Set(["404.html"]);
    expect(pages.map((p) => p.name).filter((name) => !reached.has(name) && !apart.has(name))).toEqual([]);
  });

  it("is in the search index with its answer", () => {
    const found = new Map(
      (
        JSON.parse(
          read("assets/search-data.js")
            .replace(/^[^[]*/, "")
            .replace(/;\s*$/, ""),
        ) as { href: string; answer: string }[]
      ).map((e) => [e.href, e.answer]),
    );
    expect(wanted.filter((name) => !found.get(name))).toEqual([]);
    const entry = JSON.parse(read("pagefind/pagefind-entry.json")) as { languages: Record<string, { page_count: number }> };
    expect(entry.languages.en!.page_count).toBe(pages.filter((p) => p.html.includes("data-pagefind-body")).length);
    expect(found.size).toBe(entry.languages.en!.page_count);
  });
});

describe("drawings of parts and firmware", () => {
  const drawn = (page: (typeof pages)[number], css: string) => page.find("svg").filter((e) => e.attributes.class?.split(" ").includes(css));

  it("draws the pins of every memory device, and lists them", () => {
    const devices = pages.filter((p) => p.name.startsWith("parts/") && p.html.includes("Part: memory device"));
    expect(devices.length).toBeGreaterThan(5);
    for (const page of devices) {
      expect(drawn(page, "dw-pins").length, page.name).toBe(1);
      const list = page.find("ol").find((e) => e.attributes.class === "pins")!;
      const numbers = list.children.map((li) => Number(li.attributes.value));
      expect(numbers.length, page.name).toBeGreaterThan(23);
      expect(numbers, page.name).toEqual(numbers.map((_, i) => i + 1));
      // What is drawn is what is listed.
      const said = page.find("desc")[0]!.text;
      for (const li of list.children) expect(said, page.name).toContain(`Pin ${li.attributes.value} ${li.text}.`);
    }
  });

  it("draws both faces of every connector", () => {
    const connectors = pages.filter((p) => p.name.startsWith("parts/") && p.html.includes("Part: connector"));
    expect(connectors.length).toBeGreaterThan(5);
    for (const page of connectors) expect(drawn(page, "dw-face").length, page.name).toBe(2);
  });

  it("draws the line of releases for the cards tied to it, and names for each the releases it asks for", () => {
    const families = pages.filter((p) => p.name.startsWith("firmware/") && p.html.includes('id="bound"'));
    expect(families.length).toBeGreaterThan(1);
    for (const page of families) {
      const bound = page.all.find((e) => e.attributes.id === "bound")!;
      const under = (e: typeof bound): (typeof bound)[] => [e, ...e.children.flatMap(under)];
      const rows = under(bound).filter((e) => e.attributes.class === "card");
      const heads = under(bound).filter((e) => e.name === "th" && e.parent?.parent?.name === "thead");
      const links = under(bound).filter((e) => e.name === "li" && e.children[0]?.name === "a");
      expect(rows.length, page.name).toBeGreaterThan(0);
      expect(rows.map((r) => r.children[0]!.text)).toEqual(links.map((l) => l.children[0]!.text));
      // The bar shows what the hidden statements, which are asked again elsewhere, say of each release.
      for (const [i, row] of rows.entries()) {
        const drawn = row.children.filter((e) => e.name === "td" && e.attributes.class !== "said").map((td) => td.text);
        expect(drawn).toHaveLength(heads.length - 2);
        const said = links[i]!.children.flatMap((e) => e.attributes["data-verdict"] ?? []) as (keyof typeof verdictWords)[];
        for (const [k, verdict] of said.entries()) expect(drawn[k]).toMatch(new RegExp(`^[a-z]?${verdictWords[verdict].word}(?:,|$)`));
      }
    }
  });
});

describe("pictures", () => {
  it("shows one that a record names where it is there, in a box that keeps its place, and only words elsewhere", () => {
    const shown = pages.filter((p) => p.name.startsWith("builds/") && p.find("img").length > 0);
    expect(shown.length).toBeGreaterThan(1);
    for (const page of shown) {
      const [image] = page.find("img");
      expect(files, page.name).toContain(image!.attributes.src!.replace("../", ""));
      expect(image!.attributes.alt, page.name).toMatch(/^Picture of /);
      expect(image!.attributes.width && image!.attributes.height, page.name).toBeTruthy();
    }
    const words = pages.find((p) => p.name === "builds/everyday-office.html")!;
    expect(words.find("img")).toEqual([]);
    expect(words.html).toContain("Print 051 in the machine book, Maud Stellick");
  });
});
