// The planner as an owner needs it, in a real browser: the answer in the first screenful of a phone, revisions that cannot be told apart, parts
// chosen for the switch, kinds of way, a page at twice the size.
import { describe, expect, it } from "vitest";
import { addCard, answered } from "./open.js";
import { plannerPages, tracerAndDisk } from "./planner-page.js";

const { open } = plannerPages();

describe("a stranger on a phone", () => {
  it("who picks a board and three cards has verdict, how and how sure in the same screenful", async () => {
    const { page, wrong, context } = await open();
    await page.getByLabel("Skerry 16T").check();
    for (const card of ["gannet", "samphire", "sandglass"]) await addCard(page, card);
    await page.locator("h1").click();
    const strip = page.locator(".strip");
    const text = (await strip.textContent())!;
    expect(text).toMatch(/^\s*works, \S.*\. [\d,]+ combinations work\./);
    expect(text).toMatch(/R\S+ on revision \S+, \d+K: Gannet fixed-disk controller in .*Samphire network card in /);
    const box = (await strip.boundingBox())!;
    expect([box.x, box.x + box.width <= 360, box.y > 370, box.y + box.height <= 741]).toEqual([0, true, true, true]);
    expect(wrong).toEqual([]);
    await context.close();
  });

  it("whose cards cannot stand together has why not and the cheapest way out there, and both one tap away", async () => {
    const { page, context } = await open(tracerAndDisk);
    await answered(page);
    const text = (await page.locator(".strip").textContent())!;
    expect(text).toMatch(/^\s*no.*needs Skerry Monitor/);
    expect(text).toMatch(/Way out: Two ways and one switch/);
    await page.locator(".strip").click();
    await page.waitForFunction(() => document.activeElement?.id === "answer-title");
    expect(
      await page
        .getByRole("button", { name: /^Two ways and one switch/ })
        .first()
        .isVisible(),
    ).toBe(true);
    await context.close();
  });
});

describe("a revision that cannot be told", () => {
  it("can be one of two: by keyboard, with how to tell each, in the address, the list and the file", async () => {
    const { page, wrong, context } = await open("#b=skerry-16t&c=gannet-fixed-disk-controller");
    await answered(page);
    const group = page.getByRole("group", { name: "Revision: the letter on the board" });
    const all = await page.locator("#answer .sure").textContent();
    const box = (name: RegExp) => group.getByRole("checkbox", { name });
    // How to tell the revision is read out with its box.
    const described = await box(/^D1/).evaluate((e) => document.getElementById(e.getAttribute("aria-describedby") ?? "")?.textContent);
    expect(described).toMatch(/D1 etched beside IC12/);
    await box(/^D1/).focus();
    await page.keyboard.press("Space");
    await answered(page);
    const one = await page.locator("#answer .sure").textContent();
    await page.keyboard.press("Tab");
    for (let i = 0; i < 3 && !(await box(/^D2/).evaluate((e) => e === document.activeElement)); i += 1) await page.keyboard.press("Tab");
    await page.keyboard.press("Space");
    await answered(page);
    expect([await box(/^C/).isChecked(), await box(/^D1/).isChecked(), await box(/^D2/).isChecked()]).toEqual([false, true, true]);
    expect(page.url()).toContain("r=D1,D2");
    expect(await page.locator(".said li > span").allTextContents()).toEqual(["Board is revision D1 or D2"]);
    const two = await page.locator("#answer .sure").textContent();
    const counts = [one, two, all].map((t) => Number(/([\d,]+) combinations work/.exec(t ?? "")![1]!.replaceAll(",", "")));
    expect(counts[0]).toBeLessThan(counts[1]!);
    expect(counts[1]).toBeLessThan(counts[2]!);
    for (const way of await page.locator(".ways-list summary .name").allTextContents()) expect(way).toMatch(/revision D[12]/);
    await page.reload();
    await answered(page);
    expect(await box(/^D2/).isChecked()).toBe(true);
    await group.getByRole("button", { name: "I cannot tell" }).click();
    await answered(page);
    expect(await page.locator("#answer .sure").textContent()).toBe(all);
    expect(wrong).toEqual([]);
    await context.close();
  });

  it("is a reason when neither can be, and the repair names another", async () => {
    const { page, context } = await open("#b=skerry-16t&r=D1,D2&c=gannet-fixed-disk-controller&m=always;f=R4");
    await answered(page);
    expect(await page.locator("#answer .says").textContent()).toMatch(/^No\./);
    expect(await page.locator(".said").count()).toBe(0);
    expect(await page.getByRole("checkbox", { name: /^D2/ }).isChecked()).toBe(true);
    await context.close();
  });
});

describe("parts for the switch", () => {
  it("chosen by the owner are what the plan is built from", async () => {
    const { page, wrong, context } = await open(tracerAndDisk, { viewport: { width: 1280, height: 900 } });
    await answered(page);
    await page
      .getByRole("button", { name: /^Two ways and one switch/ })
      .first()
      .click();
    await answered(page);
    const sheet = async () => {
      await page
        .getByRole("button", { name: /^Plan the switch/ })
        .first()
        .click();
      await page.waitForSelector("#faults");
      const text = (await page.locator("#sheet").textContent())!;
      await page.getByRole("button", { name: "Back to the combinations" }).click();
      await page.waitForSelector("#answer");
      return text;
    };
    const before = await sheet();
    await page.locator("#modes summary", { hasText: "Parts for the switch" }).click();
    const device = page.locator("#modes label", { hasText: "Memory device" }).locator("select").first();
    const names = (await device.locator("option").allTextContents()).slice(1);
    const other = names.find((name) => !before.includes(name) && /27C020|27C040|27C010/.test(name))!;
    await device.selectOption({ label: other });
    await answered(page);
    expect(page.url()).toContain("wd=");
    const after = await sheet();
    expect(before).not.toContain(other);
    expect(after).toContain(other);
    expect(wrong).toEqual([]);
    await context.close();
  });
});

describe("twice the size", () => {
  it("nothing is cut off and nothing scrolls sideways at 200 % of 1280 pixels, in every state", async () => {
    // Twice the size on a screen of 1280 by 900 leaves a page of 640 by 450.
    const { page, context } = await open(tracerAndDisk, { viewport: { width: 640, height: 450 }, deviceScaleFactor: 2 });
    const wide = () => page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    await answered(page);
    expect(await wide()).toBe(0);
    await page
      .getByRole("button", { name: /^Two ways and one switch/ })
      .first()
      .click();
    await answered(page);
    await page.locator("#cards details summary").first().click();
    expect(await wide()).toBe(0);
    // The strip leaves most of the page free.
    expect((await page.locator(".strip").boundingBox())!.height).toBeLessThan(150);
    await context.close();
  });
});

describe("a reader who asked for stillness", () => {
  it("sees nothing move, whatever is tapped", async () => {
    const { page, context } = await open(tracerAndDisk, { reducedMotion: "reduce" });
    const moving = () =>
      page.evaluate(() => document.getAnimations().filter((a) => Number(a.effect?.getComputedTiming().duration ?? 0) > 1).length);
    await answered(page);
    await page.locator("#cards details summary").first().click();
    expect(await moving()).toBe(0);
    await page.locator(".repair button").first().click();
    expect(await moving()).toBe(0);
    await context.close();
  });
});
