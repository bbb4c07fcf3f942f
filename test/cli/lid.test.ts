// slotwright plan --sheet where no switch is built: the card for the lid alone, or the word that there is nothing to write.
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { lidSheetOf } from "../../src/pages/index.js";
import type { Build } from "../../src/records/index.js";
import { demo } from "../support/demo.js";
import { freshFolder, slotwright } from "../support/recorder.js";

const cards = ["tallow-bus-tracer", "gannet-fixed-disk-controller", "plover-tape-interface"];
const three = ["plan", "--board", "skerry-16t", ...cards.flatMap((card) => ["--card", card])];

describe("the card for the lid alone", () => {
  it("is written of a machine that cannot run everything at once and that the hand can change over", async () => {
    const folder = freshFolder();
    const { code, err } = await slotwright([...three, "--sheet", "lid.html"], { folder });
    expect(code).toBe(1);
    expect(err).toContain("Wrote lid.html: the card for the lid alone. It cannot run as asked: No.");
    const page = readFileSync(join(folder, "lid.html"), "utf8");
    expect(page).not.toMatch(/<(script|link|img|iframe)\b/);
    const order = ["Before you start", "The machine in each way", "Changed over by hand", "What this and the other ways out cost"].map(
      (title) => page.indexOf(`<h2>${title}</h2>`),
    );
    expect(order.every((at) => at > 0)).toBe(true);
    expect(order).toEqual([...order].sort((a, b) => a - b));
    expect(page).toContain("Mains inside the supply");
    expect(page).toContain("Exchange the memory device with R4 for the one with R5.1.");
    expect(page).toContain("Tallow bus tracer in S3, J2 at 300, J3 at 5, off");
    expect(page).not.toContain("<h2>Wires</h2>");
    const costs = page
      .slice(page.indexOf('id="costs"'))
      .replaceAll(/<[^>]*>/g, " ")
      .replaceAll(/\s+/g, " ");
    expect(costs).toMatch(/change over by hand one part nothing four things nothing works one switch \w+ parts four poles, /);
  });

  it("is written where the modes are written down and the switch that was chosen cannot do it, with the reason", () => {
    const headline = demo().builds.get("saltmarsh-three-mode-skerry")!;
    const page = lidSheetOf(demo(), { ...headline, switch: { switch: "toggle-spst" } }, "No switch is built: too few positions.")!;
    expect(page.why).toBe("No switch is built: too few positions.");
    expect(page.changeOver.ways.length).toBe(3);
    expect(page.changeOver.changes).toHaveLength(6);
    // What a way asks to be done first is told with it, as its own answer has it.
    expect(page.ways.flatMap((way) => way.conditions).length).toBeGreaterThan(0);
    for (const text of page.ways.flatMap((way) => way.conditions))
      expect(text).toMatch(/^(To do first|What is lost|Good to know|To get first|To find out first): /);
  });

  it("is none where one way is enough, and where the hand cannot do it either", async () => {
    const one: Build = { id: "one", name: "One", board: "skerry-16t", cards: [{ card: cards[1]! }] };
    expect(lidSheetOf(demo(), one, "")).toBeUndefined();
    const folder = freshFolder();
    const { code, err } = await slotwright(
      ["plan", "--board", "skerry-16t", "--firmware", "R2", "--card", cards[1]!, "--sheet", "no.html"],
      { folder },
    );
    expect(code).toBe(2);
    expect(err).toContain("There is nothing to build: No.");
    expect(existsSync(join(folder, "no.html"))).toBe(false);
  });
});
