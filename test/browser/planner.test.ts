// The planner in a real browser: answers, reasons, moves taken back, its address, files in and out, weight, and how quickly it reacts.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { describe, expect, it } from "vitest";
import { readOne } from "../../src/records/index.js";
import { siteFolder } from "../pages/site-folder.js";
import { addCard, answered } from "./open.js";
import { plannerPages, tracerAndDisk } from "./planner-page.js";

const { open, planner, visitor } = plannerPages();

describe("the planner", () => {
  it("answers after every choice, verdict first, and says the count", async () => {
    const { page, wrong, context } = await open();
    await page.getByLabel("Skerry 16T").check();
    await answered(page);
    expect(await page.locator("#answer .says").textContent()).toMatch(/^Yes: nothing is known against the board by itself/);
    await addCard(page, "gannet");
    expect(await page.locator("#answer").textContent()).toMatch(/7,872 combinations work\./);
    expect(await page.locator("#ways-title").textContent()).toBe("Combinations that work");
    expect(wrong).toEqual([]);
    await context.close();
  });

  it("shows an impossible value with its reason and a way out, one tap away", async () => {
    const { page, wrong, context } = await open("#b=skerry-16t&c=gannet-fixed-disk-controller&c=samphire-network-card");
    await answered(page);
    const r4 = page.getByRole("group", { name: "Firmware version" });
    await r4.getByRole("button", { name: "Why not? R4", exact: true }).click();
    await page.waitForSelector("#modes .because .why");
    expect(await page.locator("#modes .because").textContent()).toMatch(/Gannet fixed-disk controller needs Skerry Monitor from R5/);
    // With another card beside it the Gannet may go; alone it would take the whole question with it, and no such way out is offered.
    await page
      .locator("#modes .because .repair", { hasText: /leave out Gannet/i })
      .locator("button")
      .first()
      .click();
    await answered(page);
    expect(await page.locator("#answer .says").textContent()).toMatch(/^Yes/);
    expect(await r4.getByLabel(/^R4(?!A)/).isChecked()).toBe(true);
    expect(page.url()).toContain("f=R4");
    expect(wrong).toEqual([]);
    await context.close();
  });

  it("opens at an address that was cut or mistyped, and says what is not there", async () => {
    for (const [end, says] of [
      ["#100%", "Choose your board"],
      ["?build=zzz", 'No build here is called "zzz".'],
      ["#b=%", 'No board is called "%".'],
    ] as const) {
      const { page, wrong, context } = await visitor();
      await page.goto(`${planner()}${end}`);
      await page.locator("#answer", { hasText: says }).waitFor();
      expect(wrong, end).toEqual([]);
      await context.close();
    }
  });

  it("finds a card by another word, another language or with a typing error; Enter takes the first", async () => {
    const { page, wrong, context } = await open("#b=skerry-16t");
    const field = page.getByRole("combobox", { name: "Add a card" });
    for (const [typed, card] of [
      ["gannnet contrller", "Gannet fixed-disk controller"],
      ["modem", "Foghorn modem"],
      ["Netzwerkkarte", "Samphire network card"],
    ] as const) {
      await field.fill(typed);
      await page.getByRole("option").first().waitFor();
      expect(await page.getByRole("option").first().textContent(), typed).toContain(card);
      await field.press("Enter");
      await answered(page);
      expect(await page.locator("#cards .held").textContent(), typed).toContain(card);
    }
    await field.fill("zzzzqq");
    await page.getByText("Nothing matches. Try another word, or fewer.").waitFor();
    await field.press("Enter");
    expect(await page.locator("#cards .held > li").count()).toBe(3);
    expect(wrong).toEqual([]);
    await context.close();
  });

  it("takes choices back in any order, and back undoes the last one", async () => {
    const { page, wrong, context } = await open();
    await page.getByLabel("Skerry 16T").check();
    await answered(page);
    await addCard(page, "gannet");
    await page.getByLabel(/^D1\b/).check();
    await answered(page);
    await addCard(page, "samphire");
    const chosen = () => page.locator(".said li > span").allTextContents();
    expect(await chosen()).toEqual([
      "Board: Skerry 16T",
      "Gannet fixed-disk controller added",
      "Board is revision D1",
      "Samphire network card added",
    ]);
    await page.getByRole("button", { name: "Take back Gannet fixed-disk controller added" }).click();
    await answered(page);
    expect(await chosen()).toEqual(["Board: Skerry 16T", "Board is revision D1", "Samphire network card added"]);
    await page.goBack();
    await answered(page);
    expect(await chosen()).toContain("Gannet fixed-disk controller added");
    await page.goBack();
    await answered(page);
    expect(await chosen()).not.toContain("Samphire network card added");
    expect(await page.getByLabel(/^D1\b/).isChecked()).toBe(true);
    expect(wrong).toEqual([]);
    await context.close();
  });

  it("holds the whole build in its address, survives a reload with all its moves, and opens for another person", async () => {
    const { page, context } = await open();
    await page.getByLabel("Skerry 16T").check();
    await answered(page);
    await addCard(page, "gannet");
    const address = page.url();
    await page.reload();
    await answered(page);
    expect(await page.locator(".said li").count()).toBe(2);
    const other = await visitor();
    await other.page.goto(address);
    await answered(other.page);
    expect(await other.page.locator("#cards .card").count()).toBe(1);
    expect(await other.page.locator("#answer .sure").textContent()).toBe(await page.locator("#answer .sure").textContent());
    await other.context.close();
    await context.close();
  });

  it("gives a build file that the club's reader takes, and opens one, telling mistakes by line and column", async () => {
    const { page, wrong, context } = await open(tracerAndDisk, { acceptDownloads: true });
    await answered(page);
    await page.getByLabel("Name of this build").fill("Tracer and disk");
    await page.getByLabel("Name of this build").blur();
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "Download the build file" }).click(),
    ]);
    expect(download.suggestedFilename()).toBe("tracer-and-disk.yaml");
    const text = readFileSync(await download.path(), "utf8");
    const { record, findings } = readOne("build", text);
    expect(findings).toEqual([]);
    expect(record).toMatchObject({ id: "tracer-and-disk", name: "Tracer and disk", board: "skerry-16t" });
    await page.getByText("Open a build file").click();
    await page.getByLabel("Or paste its text").fill(text.replace("skerry-16t", "skerry-24"));
    await page.getByRole("button", { name: "Open it" }).click();
    await page.waitForFunction(() => location.hash.includes("b=skerry-24"));
    await page.getByLabel("Or paste its text").fill("id: x\nname: X\nboard: skerry-16t\ncards:\n  - crad: y\n");
    await page.getByRole("button", { name: "Open it" }).click();
    await page.waitForSelector(".findings li");
    expect(await page.locator(".findings li").first().textContent()).toMatch(/pasted\.yaml:5:\d+/);
    expect(page.url()).toContain("b=skerry-24");
    expect(wrong).toEqual([]);
    await context.close();
  });

  it("opens a file that is dropped anywhere on it, and a build that is pasted outside a field", async () => {
    const { page, wrong, context } = await open();
    const send = (kind: "drop" | "paste", text: string) =>
      page.evaluate(
        ([kind, text]) => {
          const moved = new DataTransfer();
          if (kind === "drop") moved.items.add(new File([text!], "dropped.yaml", { type: "text/yaml" }));
          else moved.setData("text/plain", text!);
          const how = { bubbles: true, cancelable: true };
          const at = document.querySelector("h1")!;
          const event =
            kind === "drop"
              ? new DragEvent("drop", { ...how, dataTransfer: moved })
              : new ClipboardEvent("paste", { ...how, clipboardData: moved });
          at.dispatchEvent(event);
          return event.defaultPrevented;
        },
        [kind, text],
      );
    expect(await send("drop", "id: dropped\nname: Dropped\nboard: skerry-16\ncards: []\n")).toBe(true);
    await page.waitForFunction(() => location.hash.includes("b=skerry-16&") || location.hash.endsWith("b=skerry-16"));
    await page.getByText("Dropped is opened.").waitFor();
    expect(await send("paste", "id: pasted\nname: Pasted\nboard: skerry-24\ncards: []\n")).toBe(true);
    await page.waitForFunction(() => location.hash.includes("b=skerry-24"));
    expect(await send("paste", "Something else from the clipboard.")).toBe(false);
    expect(wrong).toEqual([]);
    await context.close();
  });

  it("copies the answer as plain text", async () => {
    const { page, context } = await open(tracerAndDisk, { permissions: ["clipboard-read", "clipboard-write"] });
    await answered(page);
    await page.getByRole("button", { name: "Copy as text" }).click();
    await page.getByText("The text is copied").waitFor();
    const text = await page.evaluate(() => navigator.clipboard.readText());
    expect(text).toMatch(/^Machine: Skerry 16T/);
    expect(text).toContain("Why not: ");
    expect(text).toContain(planner(tracerAndDisk));
    await context.close();
  });

  it("narrows the ways and lays two side by side", async () => {
    const { page, context } = await open("#b=skerry-16t&c=gannet-fixed-disk-controller");
    await answered(page);
    const all = await page.locator(".ways-list > li").count();
    expect(all).toBeGreaterThan(3);
    await page.getByLabel("Compare combination 1", { exact: true }).check();
    await page.getByLabel("Compare combination 2", { exact: true }).check();
    // Choices are drawn after the next paint, so what they lead to is waited for.
    await page.waitForSelector(".compare tbody tr");
    // Every kind with how many combinations there are of it in all, not only of the ways shown.
    const sure = page.getByLabel("Sure by");
    const options = await sure.locator("option").allTextContents();
    expect(options[0]).toBe("any (7,872)");
    const bench = options.find((o) => o.startsWith("seen on a bench"))!;
    expect(Number(/\((\d+)\)$/.exec(bench)![1])).toBeGreaterThan(0);
    await sure.selectOption({ label: bench });
    await page.waitForFunction(() => document.querySelector(".ways-list")?.getAttribute("aria-busy") === "false");
    const shown = await page.locator(".ways-list > li summary .ev").allTextContents();
    expect(shown.length).toBeGreaterThan(0);
    for (const way of shown) expect(way).toContain("seen on a bench");
    await context.close();
  });
});

describe("quickness and weight", () => {
  it("first use stays under 110 KB of script, compressed", () => {
    const weight = ["early.js", "site.js", "planner.js", "planner-solve.js"].map(
      (f) => gzipSync(readFileSync(join(siteFolder, "assets", f)), { level: 9 }).length,
    );
    expect(weight.reduce((a, b) => a + b, 0)).toBeLessThan(110_000);
  });

  it("loads nothing else of script before it is asked for", async () => {
    const { page, context } = await visitor();
    const scripts: string[] = [];
    context.on("request", (r) => /\.js$/.test(r.url()) && scripts.push(r.url().split("/").at(-1)!));
    await page.goto(planner(tracerAndDisk));
    await answered(page);
    expect([...new Set(scripts)].filter((s) => s !== "offline.js").sort()).toEqual([
      "early.js",
      "planner-solve.js",
      "planner.js",
      "site.js",
    ]);
    await context.close();
  });
});
