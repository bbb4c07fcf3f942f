// The ways of a machine in the planner, for somebody who never heard of them: three cards that cannot stand together, the first proposal taken,
// the grid it fills, the sheet, and all of it taken back; by tapping, by keyboard, on a phone and on a desk.
import { AxeBuilder } from "@axe-core/playwright";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { addCard, answered } from "./open.js";
import { plannerPages } from "./planner-page.js";

const { open } = plannerPages();
const [tracer, disk, tape] = ["Tallow bus tracer", "Gannet fixed-disk controller", "Plover tape interface"];
const three = "#b=skerry-16t&c=tallow-bus-tracer&c=gannet-fixed-disk-controller&c=plover-tape-interface";
const tags = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];
const desk = { viewport: { width: 1280, height: 900 } };

const proposal = (page: Page) => page.getByRole("button", { name: /^Two ways and one switch: R4 or R4A with Tallow/ });
const box = (page: Page, card: string, way: string) => page.getByRole("checkbox", { name: new RegExp(`^${card} in ${way}:`) });
const why = (page: Page, card: string, way: string) => page.getByRole("button", { name: `Why not? ${card} in ${way}`, exact: true });
/** What is on in a way, as its boxes say. */
const on = (page: Page, way: string) =>
  page
    .locator("#modes .cell input:checked")
    .evaluateAll(
      (boxes, way) => boxes.map((b) => (b as HTMLInputElement).labels![0]!.textContent!).filter((t) => t.includes(` in ${way}: `)),
      way,
    );

describe.each([360, 1280])("three cards that cannot stand together, at %d pixels", (width) => {
  it("are two ways after one tap, a sheet within five, and one card too many again when that is taken back", async () => {
    const { page, wrong, context } = await open("", { viewport: { width, height: width === 360 ? 740 : 900 } });
    await page.getByLabel("Skerry 16T").check();
    await answered(page);
    for (const card of ["tallow", "gannet", "plover"]) await addCard(page, card);
    const before = page.url();
    expect(await page.locator("#answer .says").textContent()).toMatch(/^No\./);
    expect(await page.locator("#modes table").count()).toBe(0);
    let taps = 0;
    const tap = async (name: RegExp) => {
      await page.getByRole("button", { name }).first().click();
      taps += 1;
    };
    if (width === 360) {
      expect(await page.locator(".strip").textContent()).toMatch(/Way out: Two ways and one switch/);
      await page.locator(".strip").click();
      taps += 1;
    }
    // What helps is told ways first.
    expect(await page.locator(".helps .repair").first().textContent()).toMatch(
      /^Two ways and one switch: R4 or R4A with Tallow bus tracer;/,
    );
    await tap(/^Two ways and one switch/);
    await answered(page);
    expect(await page.locator("#answer .says").textContent()).toMatch(/^Yes/);
    await tap(/^See and change what is on in which way/);
    await page.waitForFunction(() => document.activeElement?.id === "modes-title");
    expect(await on(page, "Way 1")).toEqual([`${tracer} in Way 1: on`]);
    if (width === 360) {
      expect(await page.getByRole("tab").allTextContents()).toEqual(["Way 1", "Way 2"]);
      expect(await page.locator("#modes thead th").count()).toBe(1);
      await page.getByRole("tab", { name: "Way 2" }).click();
    } else expect(await page.locator("#modes thead th").count()).toBe(2);
    expect(await on(page, "Way 2")).toEqual([`${disk} in Way 2: on`, `${tape} in Way 2: on`]);
    expect(await why(page, tracer!, "Way 2").count()).toBe(1);
    await tap(/^Plan the switch/);
    await page.waitForSelector("#faults");
    expect(taps).toBeLessThanOrEqual(5);
    const sheet = (await page.locator("#sheet").textContent())!;
    for (const card of [tracer, disk, tape]) expect(sheet).toContain(card);
    await page.getByRole("button", { name: "Back to the combinations" }).click();
    await page.goBack();
    await answered(page);
    expect(page.url()).toBe(before);
    expect(await page.locator("#modes table").count()).toBe(0);
    expect(await page.locator("#answer .says").textContent()).toMatch(/^No\./);
    // The same by its line in what was chosen.
    await proposal(page).click();
    await answered(page);
    await page.getByRole("button", { name: /^Take back Two ways and one switch/ }).click();
    await answered(page);
    expect(page.url()).toBe(before);
    expect(wrong).toEqual([]);
    await context.close();
  });

  it("have no violation of WCAG 2.2 AA in the grid, and none of it scrolls sideways or is too small for a thumb", async () => {
    for (const colorScheme of process.env.LONG ? (["light", "dark"] as const) : [width === 360 ? ("light" as const) : ("dark" as const)]) {
      const { page, context } = await open(three, { colorScheme, viewport: { width, height: 900 } });
      await answered(page);
      await proposal(page).click();
      await answered(page);
      // The theme changes colours and nothing else, so only colours are judged again, once all is open.
      const check = async (state: string, last = false) => {
        if (colorScheme === "dark" && !last) return;
        await page.setViewportSize({ width, height: await page.evaluate(() => document.documentElement.scrollHeight) });
        const axe = new AxeBuilder({ page }).setLegacyMode();
        const { violations } = await (colorScheme === "light" ? axe.withTags(tags) : axe.withRules("color-contrast")).analyze();
        expect(violations.map((v) => `${state}: ${v.id} ${v.nodes.map((n) => n.target.join(" ")).join(", ")}`)).toEqual([]);
        expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBe(0);
      };
      await check("filled");
      await why(page, disk!, "Way 1").click();
      await page.waitForSelector("#modes .because .why");
      await check("why not");
      await page.getByRole("button", { name: "Why not others? Firmware of Way 1" }).click();
      await page.getByRole("group", { name: "Firmware, Way 1" }).waitFor();
      await check("firmware", true);
      const small = await page
        .locator("#modes button, #modes select, #modes label.pick, #modes input[type=text]")
        .evaluateAll((all) => all.filter((e) => e.getBoundingClientRect().height < 43.5).map((e) => e.textContent));
      expect(small).toEqual([]);
      await context.close();
    }
  });
});

describe("a cell of the grid", () => {
  it("tells why a card cannot be on there, and its way out switches the other one off", async () => {
    const { page, wrong, context } = await open(three, desk);
    await answered(page);
    await proposal(page).click();
    await answered(page);
    await why(page, disk!, "Way 1").click();
    await page.waitForSelector("#modes .because .why");
    expect(await page.locator("#modes .because").textContent()).toMatch(/Tallow bus tracer needs Skerry Monitor up to R4A/);
    await page
      .getByRole("button", { name: "Switch Gannet fixed-disk controller on in Way 1 and: switch Tallow bus tracer off in Way 1." })
      .click();
    await answered(page);
    expect(await on(page, "Way 1")).toEqual([`${disk} in Way 1: on`]);
    expect(await page.locator("#answer .says").textContent()).toMatch(/^Yes/);
    // Taken all the same, it is a no, and the cell says what helps.
    await box(page, tracer!, "Way 1").click();
    await answered(page);
    expect(await page.locator("#answer .says").textContent()).toMatch(/^No\./);
    expect(await page.locator(".said li > span").last().textContent()).toBe("Tallow bus tracer on in Way 1");
    expect(await on(page, "Way 1")).toEqual([`${tracer} in Way 1: on; off, it works`, `${disk} in Way 1: on; off, it works`]);
    await page.goBack();
    await answered(page);
    expect(await on(page, "Way 1")).toEqual([`${disk} in Way 1: on`]);
    expect(wrong).toEqual([]);
    await context.close();
  });

  it("leaves it open whether a card is on, says what the answer takes it as, and keeps that in the address", async () => {
    const { page, wrong, context } = await open(three, desk);
    await proposal(page).click();
    await answered(page);
    const cell = box(page, tape!, "Way 2");
    expect(await cell.isChecked()).toBe(true);
    await page.getByRole("button", { name: `Does not matter ${tape} in Way 2`, exact: true }).click();
    await answered(page);
    // It may be on beside the disk and off elsewhere, but then something has to switch it.
    expect(await page.locator("#answer").textContent()).toContain(`Where it does not matter: ${tape} is taken as off in Way 2.`);
    expect(await cell.evaluate((el) => (el as HTMLInputElement).indeterminate)).toBe(true);
    const address = page.url();
    await page.goto("about:blank");
    await page.goto(address);
    await answered(page);
    expect(await cell.evaluate((el) => (el as HTMLInputElement).indeterminate)).toBe(true);
    expect(await page.locator("#modes").textContent()).toContain("does not matter: off");
    // A tap on it says on; what was said is taken back by its line.
    await cell.click();
    await answered(page);
    expect(await cell.isChecked()).toBe(true);
    expect(await page.locator("#answer").textContent()).not.toContain("Where it does not matter");
    expect(wrong).toEqual([]);
    await context.close();
  });

  it("sets side by side what each way out costs, when it is asked for", async () => {
    const { page, wrong, context } = await open(three, desk);
    await answered(page);
    await page.getByText("What each way out costs").click();
    const rows = page.locator(".costs tbody tr");
    await rows.first().waitFor();
    expect(await rows.locator(":first-child").allTextContents()).toEqual(["change over by hand", "one switch", "leave out"]);
    expect(await rows.nth(1).textContent()).toMatch(/poles?, \d+ wires/);
    expect(wrong).toEqual([]);
    await context.close();
  });

  it("of a card that nothing switches off says so", async () => {
    const { page, context } = await open(`${three}&c=samphire-network-card`, desk);
    await answered(page);
    await proposal(page).click();
    await answered(page);
    await page.getByRole("button", { name: "Why? Samphire network card in Way 1 is always on" }).click();
    expect(await page.locator("#modes .because").textContent()).toMatch(
      /^Nothing switches Samphire network card off from outside the case/,
    );
    expect(await box(page, "Samphire network card", "Way 1").count()).toBe(0);
    await context.close();
  });
});

describe("the grid", () => {
  it("names ways, chooses firmware with what each version comes to, and marks the safest; the address holds all of it", async () => {
    const { page, wrong, context } = await open(three, desk);
    await answered(page);
    await proposal(page).click();
    await answered(page);
    const name = page.getByLabel("Name of this way").first();
    await name.fill("Tracing");
    await name.blur();
    const firmware = page.getByLabel("Firmware of Tracing");
    await firmware.waitFor();
    expect((await firmware.locator("option").allTextContents()).slice(0, 4)).toEqual(["any: R4, R4A", "R2 (no)", "R4", "R4A"]);
    await firmware.selectOption("R4A");
    await page.getByRole("radio", { name: "Tracing: safest" }).check();
    await answered(page);
    expect(await page.locator("#answer .how").textContent()).toContain("R4A and R5.1");
    const address = page.url();
    await page.goto("about:blank");
    await page.goto(address);
    await answered(page);
    expect(await page.getByLabel("Firmware of Tracing").inputValue()).toBe("R4A");
    expect(await page.getByRole("radio", { name: "Tracing: safest" }).isChecked()).toBe(true);
    expect(await on(page, "Tracing")).toEqual([`${tracer} in Tracing: on`]);
    // What was said of the safest can be left open again, and a way taken out.
    await page.getByRole("radio", { name: "left open" }).check();
    await answered(page);
    expect(await page.getByRole("radio", { name: "left open" }).isChecked()).toBe(true);
    // A way added has every card off and changes nothing for the others; one step back, and it is gone.
    await page.getByRole("button", { name: "Add another way to run it" }).click();
    await answered(page);
    expect(await page.locator("#answer .says").textContent()).toMatch(/^Yes/);
    expect(await page.locator("#modes thead th").count()).toBe(3);
    expect(await box(page, disk!, "Way 3").evaluate((e) => (e as HTMLInputElement).labels![0]!.textContent)).toBe(
      `${disk} in Way 3: off, could be on`,
    );
    await page.goBack();
    await answered(page);
    expect(await page.locator("#modes thead th").count()).toBe(2);
    await page.getByRole("button", { name: "Take out Tracing" }).click();
    await answered(page);
    expect(await page.locator("#modes thead th").count()).toBe(1);
    expect(await on(page, "Way 2")).toEqual([`${disk} in Way 2: on`, `${tape} in Way 2: on`]);
    expect(wrong).toEqual([]);
    await context.close();
  });

  it("is the same seen one way at a time and all at once", async () => {
    const { page, context } = await open(three);
    await answered(page);
    await proposal(page).click();
    await answered(page);
    await page.getByRole("tab", { name: "Way 2" }).click();
    await box(page, tape!, "Way 2").click();
    await answered(page);
    await page.setViewportSize({ width: 1280, height: 900 });
    await page.getByRole("tab").first().waitFor({ state: "detached" });
    expect(await on(page, "Way 1")).toEqual([`${tracer} in Way 1: on`]);
    expect(await on(page, "Way 2")).toEqual([`${disk} in Way 2: on`]);
    expect(await box(page, tape!, "Way 2").evaluate((e) => (e as HTMLInputElement).labels![0]!.textContent)).toBe(
      `${tape} in Way 2: off, could be on`,
    );
    await context.close();
  });

  it("is filled, read and changed by keyboard alone", async () => {
    const { page, wrong, context } = await open(three);
    await answered(page);
    const focused = () =>
      page.evaluate(() => {
        const at = document.activeElement as HTMLInputElement | null;
        return (at?.labels?.[0] ?? at)?.textContent?.trim() ?? "";
      });
    const tabTo = async (what: RegExp) => {
      for (let i = 0; i < 90 && !what.test(await focused()); i += 1) await page.keyboard.press("Tab");
      expect(await focused()).toMatch(what);
    };
    await page.locator("#answer-title").focus();
    await tabTo(/^Two ways and one switch/);
    await page.keyboard.press("Enter");
    await answered(page);
    await page.waitForFunction(() => document.activeElement?.id === "answer-title");
    await tabTo(/^See and change what is on/);
    await page.keyboard.press("Enter");
    await tabTo(/^Way 1$/);
    await page.keyboard.press("ArrowRight");
    await page.getByRole("tab", { name: "Way 2", selected: true }).waitFor();
    expect(await focused()).toBe("Way 2");
    await tabTo(/^Why not\? Tallow bus tracer in Way 2$/);
    await page.keyboard.press("Enter");
    await page.waitForSelector("#modes .because .why");
    await tabTo(/^Plover tape interface in Way 2: on$/);
    await page.keyboard.press("Space");
    await answered(page);
    expect(await focused()).toBe("Plover tape interface in Way 2: off, could be on");
    expect(wrong).toEqual([]);
    await context.close();
  });
});

describe("a change-over by hand", () => {
  it("shows its steps where it is offered, and prints them alone as the card for the lid", async () => {
    const { page, wrong, context } = await open(three);
    await answered(page);
    await page.getByText("Step by step, and a card for the lid").click();
    await page.locator(".by-hand .lid-card").nth(3).waitFor();
    expect(await page.locator(".by-hand .lid-card ol").first().locator("li").first().textContent()).toBe(
      "Switch off and pull the mains plug.",
    );
    await page.setViewportSize({ width: 360, height: await page.evaluate(() => document.documentElement.scrollHeight) });
    const { violations } = await new AxeBuilder({ page }).setLegacyMode().withTags(tags).analyze();
    expect(violations.map((v) => v.id)).toEqual([]);
    await page.evaluate(() => {
      window.print = () => document.body.setAttribute("data-printed", "");
    });
    await page.getByRole("button", { name: "Print the card for the lid" }).click();
    expect(await page.locator("body[data-printed]").count()).toBe(1);
    await page.emulateMedia({ media: "print" });
    // biome-ignore lint/performance/useDomNodeTextContent: what is hidden on paper does not count.
    const printed = () => page.evaluate(() => document.body.innerText);
    expect(await printed()).toMatch(/^R4 with Tallow bus tracer\n/);
    expect(await printed()).toContain("see that R5.1 starts.");
    expect(await printed()).not.toContain("What would help");
    await page.evaluate(() => dispatchEvent(new Event("afterprint")));
    expect(await printed()).toContain("What would help");
    expect(wrong).toEqual([]);
    await context.close();
  });
});
