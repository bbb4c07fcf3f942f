// The built site in a real browser: it opens and stays quiet, fits a small phone, is accessible in light and dark,
// prints, and its search finds a problem by what people see.
import { AxeBuilder } from "@axe-core/playwright";
import { type Browser, type BrowserContext, chromium, type Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { files, read, siteFolder } from "../pages/site-folder.js";
import { ensureChromium, launchArguments } from "../support/chromium.mjs";
import { serveFolder } from "./serve.mjs";

const byKind = new Map<string, { name: string; weight: number }[]>();
for (const name of files.filter((file) => file.endsWith(".html") && !file.startsWith("pagefind/")).sort()) {
  const folder = name.endsWith("index.html") || !name.includes("/") ? name : name.endsWith("-sheet.html") ? "sheets" : name.split("/")[0]!;
  byKind.set(folder, [...(byKind.get(folder) ?? []), { name, weight: read(name).length }]);
}
const sorted = [...byKind.values()].map((of) => of.sort((a, b) => b.weight - a.weight));
/** The heaviest page of each kind: what fits there fits everywhere. */
const kinds = sorted.map((of) => of[0]!.name);
/** The middle one, for what looks at every element and takes its time. */
const middling = sorted.map((of) => of[Math.floor(of.length / 2)]!.name);

let browser: Browser;
let server: { address: string; close: () => void };

beforeAll(async () => {
  server = await serveFolder(siteFolder);
  browser = await chromium.launch({ executablePath: ensureChromium(), args: [...launchArguments] });
});
afterAll(async () => {
  await browser?.close();
  server?.close();
});

/** Leaves four of what stands side by side and is marked alike: the fifth has the shape of the others. Whole pages are for the long run. */
function oneOfEachShape(): void {
  const shape = (e: Element) => `${e.tagName} ${e.getAttribute("class")} ${e.getAttribute("role")}`;
  for (const parent of document.querySelectorAll("body *")) {
    const seen = new Map<string, number>();
    for (const child of [...parent.children]) {
      const count = (seen.get(shape(child)) ?? 0) + 1;
      seen.set(shape(child), count);
      // Headings say how the page is built, and drawings are one picture.
      if (count > 4 && !/^(H[1-6]|svg)$/.test(child.tagName) && !parent.closest("svg")) child.remove();
    }
  }
}

type Options = NonNullable<Parameters<Browser["newContext"]>[0]>;

async function withPage(options: Options, work: (page: Page, context: BrowserContext) => Promise<void>): Promise<void> {
  // The copy for reading without a network is made only where a test is about what the page does with it (see open.ts).
  const context = await browser.newContext({ serviceWorkers: "block", ...options });
  context.setDefaultTimeout(600_000);
  try {
    await work(await context.newPage(), context);
  } finally {
    await context.close();
  }
}

describe("every kind of page", () => {
  it("is there to be looked at", () => {
    expect(kinds.length).toBeGreaterThan(18);
  });

  /** What one visit to each page tells: on a small phone, from its first moment to all it loads, then turned to twice the size of text. */
  interface Seen {
    readonly name: string;
    readonly over: number;
    readonly overAtTwice: number;
    readonly shift: number;
    readonly small: readonly string[];
  }
  const seen: Seen[] = [];
  const said: string[] = [];
  const hosts = new Set<string>();

  beforeAll(async () => {
    await withPage({ viewport: { width: 320, height: 640 }, hasTouch: true, serviceWorkers: "allow" }, async (page, context) => {
      page.on("console", (m) => said.push(`${page.url()} ${m.type()}: ${m.text()}`));
      page.on("pageerror", (e) => said.push(`${page.url()}: ${e.message}`));
      context.on("request", (r) => hosts.add(new URL(r.url()).host));
      await page.addInitScript(() => {
        (globalThis as { shift?: number }).shift = 0;
        new PerformanceObserver((list) => {
          for (const entry of list.getEntries() as unknown as { value: number }[]) (globalThis as { shift?: number }).shift! += entry.value;
        }).observe({ type: "layout-shift", buffered: true });
      });
      for (const name of kinds) {
        await page.setViewportSize({ width: 320, height: 640 });
        await page.goto(`${server.address}/${name}`, { waitUntil: "networkidle" });
        const { shift, over, small } = await page.evaluate(() => ({
          shift: (globalThis as { shift?: number }).shift ?? 0,
          over: document.documentElement.scrollWidth - document.documentElement.clientWidth,
          small: [
            ...document.querySelectorAll<HTMLElement>(
              "header a, footer a, button, select, input, summary, .matrix tr.card, .act, .machines h2 a, .ways a, .revs a",
            ),
          ]
            // A field is hit by its label as well.
            .filter((e) => e.offsetParent !== null && !((e.closest("label")?.getBoundingClientRect().height ?? 0) >= 43.5))
            .map((e) => ({ text: `${e.tagName} ${e.textContent?.trim().slice(0, 30)}`, box: e.getBoundingClientRect() }))
            .filter(({ box }) => box.height < 43.5)
            .map(({ text, box }) => `${text}: ${box.height.toFixed(1)}`),
        }));
        await page.setViewportSize({ width: 640, height: 800 });
        const overAtTwice = await page.evaluate(() => {
          document.documentElement.style.fontSize = "34px";
          return document.documentElement.scrollWidth - document.documentElement.clientWidth;
        });
        seen.push({ name, over, overAtTwice, shift, small });
      }
    });
  });

  it("was looked at", () => {
    expect(seen.map(({ name }) => name)).toEqual(kinds);
  });

  it("opens without a word on the console and without asking any other host", () => {
    expect(said).toEqual([]);
    expect([...hosts]).toEqual([new URL(server.address).host]);
  });

  it("fits 320 px without moving sideways, and at twice the size of text", () => {
    expect(seen.filter(({ over }) => over > 0).map(({ name, over }) => `${name}: ${over} px`)).toEqual([]);
    expect(seen.filter(({ overAtTwice }) => overAtTwice > 0).map((s) => `${s.name} at 200 %: ${s.overAtTwice} px`)).toEqual([]);
  });

  it("fits as well with the letters of the machine, where the page's own have not come yet", async () => {
    const over: string[] = [];
    await withPage({ viewport: { width: 320, height: 640 }, hasTouch: true }, async (page) => {
      await page.route("**/*.woff2", (route) => route.abort());
      for (const name of kinds) {
        await page.setViewportSize({ width: 320, height: 640 });
        await page.goto(`${server.address}/${name}`, { waitUntil: "load" });
        const sideways = () => page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
        const small = await sideways();
        await page.setViewportSize({ width: 640, height: 800 });
        await page.evaluate(() => {
          document.documentElement.style.fontSize = "34px";
        });
        const large = await sideways();
        if (small > 0 || large > 0) over.push(`${name}: ${small} px, at 200 %: ${large} px`);
      }
    });
    expect(over).toEqual([]);
  });

  it("moves by no more than 0.02 while it loads", () => {
    expect(seen.filter(({ shift }) => shift > 0.02).map(({ name, shift }) => `${name}: ${shift.toFixed(3)}`)).toEqual([]);
  });

  it("gives links and fields that stand alone 44 px to be hit", () => {
    expect(seen.flatMap(({ name, small }) => small.slice(0, 3).map((f) => `${name}: ${f}`))).toEqual([]);
  });

  it("has no accessibility violation", async () => {
    const rules = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];
    // The strictest level of contrast, 7:1, is asked for beside all else.
    const strict = { "color-contrast-enhanced": { enabled: true } };
    // The theme changes colours and nothing else; those of both are held to the same contrast without a browser (outside/pages/contrast).
    const themes = process.env.LONG ? (["light", "dark"] as const) : (["light"] as const);
    const found: string[] = [];
    await withPage({ viewport: { width: 1280, height: 900 } }, async (page) => {
      for (const name of middling) {
        await page.emulateMedia({ colorScheme: "light" });
        await page.goto(`${server.address}/${name}`, { waitUntil: "load" });
        if (!process.env.LONG) await page.evaluate(oneOfEachShape);
        for (const theme of themes) {
          await page.emulateMedia({ colorScheme: theme });
          // No page holds another one: all is judged at once, in the page itself.
          const axe = new AxeBuilder({ page }).setLegacyMode().options({ resultTypes: ["violations"], rules: strict });
          const { violations } = await (theme === "light" ? axe.withTags(rules) : axe.withRules(Object.keys(strict))).analyze();
          found.push(...violations.map((v) => `${name}, ${theme}: ${v.id}: ${v.nodes[0]?.html.slice(0, 160)}`));
        }
      }
    });
    expect(found).toEqual([]);
  });

  it("prints on white, without menu and fields, with every reason of a part that was opened", async () => {
    await withPage({}, async (page) => {
      await page.emulateMedia({ media: "print" });
      await page.goto(`${server.address}/${kinds.find((k) => k.startsWith("cards/") && !k.endsWith("index.html"))}`);
      // A part that is folded stays so; in one that was opened nothing is.
      const folds = page.locator(".reasons-of, .fold > details");
      await folds.evaluateAll((all) => {
        for (const fold of all) (fold as HTMLDetailsElement).open = true;
      });
      const seen = await page.evaluate(() => ({
        menu: getComputedStyle(document.querySelector("header.top")!).display,
        paper: getComputedStyle(document.body).backgroundColor,
        folded: [...document.querySelectorAll<HTMLElement>(".reasons")].filter((e) => e.getBoundingClientRect().height === 0).length,
        reasons: document.querySelectorAll(".reasons").length,
        // Paper drops backgrounds: what a bar is filled with must be an edge.
        bar: getComputedStyle(document.querySelector(".ink:is(.bench, .documented, .reported, .inferred)")!).borderBottomStyle,
      }));
      expect(seen).toEqual({ menu: "none", paper: "rgb(255, 255, 255)", folded: 0, reasons: seen.reasons, bar: "solid" });
      expect(seen.reasons).toBeGreaterThan(0);
      const paper = await page.pdf({ format: "A4" });
      expect(paper.length).toBeGreaterThan(10_000);
    });
  });

  it("reads from a folder on a disk, with its style and without a word on the console", async () => {
    await withPage({}, async (page) => {
      const said: string[] = [];
      page.on("console", (m) => said.push(m.text()));
      for (const name of kinds.slice(0, 6)) {
        await page.goto(`file://${siteFolder}/${name}`, { waitUntil: "load" });
        expect(await page.evaluate(() => getComputedStyle(document.querySelector("header.top")!).borderBottomStyle)).toBe("solid");
      }
      expect(said).toEqual([]);
    });
  });
});

describe("search", () => {
  const first = (page: Page) => page.textContent("#found > li a");

  it("finds a problem by what people see, in words that are not the record's", async () => {
    await withPage({}, async (page) => {
      await page.goto(`${server.address}/index.html`);
      await page.keyboard.press("/");
      expect(await page.evaluate(() => document.activeElement?.id)).toBe("find");
      await page.keyboard.type("disk freezes when somebody types");
      await page.keyboard.press("Enter");
      await page.waitForSelector("#found > li");
      await page.waitForFunction(() => /page/.test(document.querySelector("#said")?.textContent ?? ""));
      expect(await page.$$eval("#found > li a", (links) => links.slice(0, 3).map((l) => l.getAttribute("href")))).toContainEqual(
        expect.stringMatching(/^conflicts\//),
      );
      expect(await page.textContent("#found > li p:nth-of-type(2)")).not.toBe("");
      await page.click("#found > li a");
      expect(await page.textContent("h1")).toBeTruthy();
    });
  });

  it("uses Pagefind's full text when served, and its filters", async () => {
    await withPage({}, async (page) => {
      const asked: string[] = [];
      page.on("request", (r) => asked.push(r.url()));
      await page.goto(`${server.address}/search.html?q=photograph`);
      await page.waitForFunction(() => /page|Nothing/.test(document.querySelector("#said")?.textContent ?? ""));
      expect(asked.some((url) => url.includes("/pagefind/index/"))).toBe(true);
      const all = await page.$$eval("#found > li", (l) => l.length);
      expect(all).toBeGreaterThan(1);
      await page.selectOption("select[name=kind]", "board");
      await page.waitForFunction(
        (n) => document.querySelectorAll("#found > li").length < n && /page/.test(document.querySelector("#said")?.textContent ?? ""),
        all,
      );
      expect(new Set(await page.$$eval("#found > li .hit .more", (l) => l.map((e) => e.textContent)))).toEqual(new Set(["board"]));
      expect(new URL(page.url()).searchParams.get("kind")).toBe("board");
    });
  });

  it("works in a folder on a disk, for an exact number and for a typing error", async () => {
    expect(files).toContain("assets/search-data.js");
    await withPage({}, async (page) => {
      await page.goto(`file://${siteFolder}/search.html?q=27C040`);
      await page.waitForSelector("#found > li");
      expect(await first(page)).toMatch(/27C040/);
      await page.goto(`file://${siteFolder}/search.html?q=Ganet+fixed+disk`);
      await page.waitForSelector("#found > li");
      expect(await first(page)).toMatch(/^Gannet/);
    });
  });
});

describe("a card's page", () => {
  const card = kinds.find((k) => k.startsWith("cards/") && !k.endsWith("index.html"))!;

  it("answers for the reader's own board and firmware", async () => {
    await withPage({ viewport: { width: 360, height: 740 } }, async (page) => {
      await page.goto(`${server.address}/${card}`);
      const board = await page.$$eval("select[name=board] option", (o) => (o[1] as HTMLOptionElement).value);
      await page.selectOption("select[name=board]", board);
      expect(await page.locator(".picker output .asked").count()).toBeGreaterThan(0);
      expect(await page.textContent(".picker output .open")).toMatch(
        /^You left open its firmware, its memory and the revision of the card\. /,
      );
      const pick = async (name: string, text: string) => page.selectOption(`select[name=${name}]`, { label: text });
      await pick("board", "Skerry 16 C");
      await pick("version", "R5");
      const marks = () => page.$$eval(".picker output .case .having", (all) => all.map((p) => p.textContent?.replace(/\s+/g, " ").trim()));
      expect(await marks()).toEqual([
        "works, seen on a bench with revision A of the card and 256K, 512K or 640K of memory",
        "works, documented with revision B of the card and 256K, 512K or 640K of memory",
        "no with 128K of memory",
      ]);
      await pick("memory", "128K");
      expect(await marks()).toEqual(["no with 128K of memory"]);
      await pick("memory", "512K");
      await pick("card", "B");
      expect(await marks()).toEqual(["works, documented with revision B of the card and 256K, 512K or 640K of memory"]);
      expect(await page.textContent(".picker output .open")).toMatch(/^Slot and settings are yours to choose/);
      await pick("version", "R4A");
      expect(await page.locator(".picker output .asked .of .word").textContent()).toBe("no");
    });
  });

  it("opens the reason that a cell of the matrix leads to", async () => {
    await withPage({}, async (page) => {
      await page.goto(`${server.address}/${kinds.find((k) => k.startsWith("matrix/"))}`);
      await page.click(".matrix tr.card:nth-child(3) td:nth-last-child(2) a");
      await page.waitForFunction(() => location.pathname.includes("/cards/"));
      await page.waitForSelector(".run:has(.anchor:target) details[open]");
      expect(await page.$$eval(".run:has(.anchor:target) details[open]", (d) => d.length)).toBe(1);
    });
  });

  it("is whole without any script", async () => {
    await withPage({ javaScriptEnabled: false }, async (page) => {
      await page.goto(`${server.address}/${card}`);
      expect(await page.locator(".run summary").count()).toBeGreaterThan(2);
      expect(await page.locator("form.picker").isVisible()).toBe(false);
      await page.goto(`${server.address}/search.html`);
      expect(await page.locator("noscript").count()).toBe(1);
    });
  });
});

describe("the matrix", () => {
  it("keeps its heads in view, and can be narrowed by answer and certainty", async () => {
    await withPage({ viewport: { width: 1280, height: 700 } }, async (page) => {
      await page.goto(`${server.address}/${kinds.find((k) => k.startsWith("matrix/"))}`);
      const rows = await page.locator(".matrix tr.card:visible").count();
      await page.click(".filters summary");
      await page.selectOption("select[name=verdict]", "unknown");
      const left = await page.locator(".matrix tr.card:visible").count();
      expect(left).toBeGreaterThan(0);
      expect(left).toBeLessThan(rows);
      expect(await page.textContent(".filters output")).toBe(`${left} of ${rows} cards`);
      await page.click(".filters button[type=reset]");
      await page.waitForFunction((n) => document.querySelectorAll(".matrix tr.card:not([hidden])").length === n, rows);
      await page.evaluate(() => scrollTo(0, 600));
      const head = await page.locator(".matrix thead th").last().boundingBox();
      expect(head!.y).toBeGreaterThanOrEqual(0);
      expect(head!.y).toBeLessThan(200);
      const legend = (await page.locator(".ink-legend").boundingBox())!;
      expect(legend.y).toBeGreaterThanOrEqual(0);
      expect(legend.y + legend.height).toBeLessThanOrEqual(head!.y);
    });
  });
});
