// The card for the lid: what the hand does between the modes of a switched machine, in the names the owner gave them.
import { describe, expect, it } from "vitest";
import { changeOverView, sheetOf } from "../../src/pages/index.js";
import { plan } from "../../src/planning/index.js";
import { demo } from "../support/demo.js";

const build = demo().builds.get("saltmarsh-three-mode-skerry")!;
const answer = plan(demo(), build, { brief: true, most: 1 });
const combination = answer.kind === "answer" ? answer.combinations[0]! : undefined;

describe("the card for the lid", () => {
  it("of the headline machine goes from each mode to each other, and touches nothing but firmware and enable contacts", () => {
    const view = changeOverView(demo(), build, combination!)!;
    expect(view.says).toMatch(
      /^By hand, without a switch: three ways, and two to four things to do between two of them\. Fewer ways cannot do, nor fewer things\.$/,
    );
    expect(view.ways.map((w) => w.firmware)).toEqual(["R4A", "R5.1", "R6"]);
    expect(view.changes).toHaveLength(6);
    for (const { steps } of view.changes) {
      expect(steps[0]).toBe("Switch off and pull the mains plug.");
      expect(steps.at(-1)).toMatch(/^Plug in, switch on, and see that R\d.* starts\.$/);
      for (const step of steps.slice(1, -1))
        expect(step).toMatch(/^Exchange the memory device with |^Switch .* (on|off): (open|close|put) /);
    }
    const names = (build.modes ?? []).map((m) => m.name ?? m.id);
    for (const { title } of view.changes)
      expect(
        names.some((name) => title.includes(name)),
        title,
      ).toBe(true);
  });

  it("stands on its sheet", () => {
    const made = sheetOf(demo(), build, combination);
    expect(made.kind === "sheet" && made.page.changeOver?.changes.length).toBe(6);
  });

  it("is none where one way is enough", () => {
    const { modes: _, ...rest } = build;
    const calm = { ...rest, cards: build.cards.slice(0, 1) };
    const asked = plan(demo(), calm, { brief: true, most: 1 });
    expect(asked.kind === "answer" && changeOverView(demo(), calm, asked.combinations[0]!)).toBeUndefined();
  });
});
