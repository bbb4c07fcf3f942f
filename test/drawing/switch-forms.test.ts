// Every form of switch the schema allows is drawn with every contact it has, whatever lies on its common: on the demo's own machine,
// and on random machines with switches of every kind.
import { describe, expect, it } from "vitest";
import { layOutPanel, switchWiring } from "../../src/drawing/index.js";
import { sheetOf } from "../../src/pages/index.js";
import { sheetFile } from "../../src/publish/index.js";
import { type Build, Switch } from "../../src/records/index.js";
import { planWiring, type WiringPlan } from "../../src/wiring/index.js";
import { demo } from "../wiring/support/demo.js";
import { machine, Random } from "../wiring/support/random.js";
import { coded, combination, m27c010, m27c020, resistor, rotary, world } from "../wiring/support/world.js";
import { codedSample } from "./samples.js";

const described = (svg: string) => /<desc[^>]*>([^<]*)<\/desc>/.exec(svg)?.[1] ?? "";
const forms = (Switch.properties.form as unknown as { readonly enum: readonly Switch["form"][] }).enum;

function expectDrawn(plan: WiringPlan): void {
  const svg = switchWiring(plan, "x");
  expect(svg).not.toMatch(/NaN|undefined|Infinity/);
  for (const section of plan.switch.sections)
    for (const t of section.throws) expect(described(svg)).toContain(`${t.terminal}, joined in pos ${t.positions.join(", ")}, `);
}

describe("the switch of a plan", () => {
  it.each(
    forms.flatMap((form) => [
      { form, closing: "one throw a position" },
      { form, closing: "several at once" },
    ]),
  )("is drawn when it is a $form that closes $closing", ({ form, closing }) => {
    const part: Switch = { ...(closing === "several at once" ? coded(4) : rotary(1, 2, form)), id: "asked", form };
    const catalogue = world({ parts: [m27c010, m27c020, part, resistor], versions: { R5: 0x10000, R6: 0x10000 } });
    const wiring = planWiring(catalogue, combination([{ firmware: "R5" }, { firmware: "R6" }], []), { switch: { switch: "asked" } });
    if (wiring.kind !== "wiring") throw new Error(wiring.says);
    expectDrawn(wiring.plan);
  });

  it("is drawn on 300 random machines", () => {
    const bare = { common: 0, several: 0 };
    for (const seed of [2594, ...Array.from({ length: 300 }, (_, i) => i + 1)]) {
      const m = machine(new Random(seed));
      const wiring = planWiring(m.catalogue, m.combination, { ...m.options, tables: false });
      if (wiring.kind !== "wiring") continue;
      expectDrawn(wiring.plan);
      for (const { hubNet, throws } of wiring.plan.switch.sections) {
        if (hubNet === undefined) bare.common += 1;
        if (throws.some((t) => t.positions.length > 1)) bare.several += 1;
      }
    }
    expect(bare.common).toBeGreaterThan(0);
    expect(bare.several).toBeGreaterThan(5);
  });

  it("has a sheet with every switch of the demo", () => {
    const catalogue = demo();
    const switches = [...catalogue.parts.values()].flatMap((part) => (part.type === "switch" ? [part.id] : []));
    expect(switches.length).toBeGreaterThan(15);
    for (const id of switches) {
      const build: Build = {
        id: "asked",
        name: "Asked",
        board: "skerry-16t",
        revision: "D1",
        memory: "512K",
        cards: [],
        modes: [
          { id: "old", firmware: "R4A" },
          { id: "new", firmware: "R6" },
        ],
        switch: { switch: id },
      };
      const result = sheetOf(catalogue, build);
      if (result.kind === "none") throw new Error(`${id}: ${result.why.says}`);
      expect(sheetFile(result.page, "")).toContain("</html>");
    }
  });
});

it("a coded switch shows each contact that is closed, and that its common is not wired", () => {
  const svg = switchWiring(codedSample(), "x");
  expect(described(svg)).toContain("Pole 1, common C (not wired): 2, joined in pos 2, 3, 6, 7, goes to GND.");
  const blades = [...svg.matchAll(/<line[^>]*dw-blade[^>]*>/g)].map(([line]) => {
    const at = (name: string) => Number(new RegExp(` ${name}="([^"]*)"`).exec(line)?.[1]);
    return at("y1") === at("y2");
  });
  // Position 7 closes 1, 2 and 4 and leaves 8 open.
  expect(blades).toEqual([true, true, true, false]);
});

it("the labels of sixteen positions round a knob stand in sixteen places, and those beside a lever one below the other", () => {
  const places = (form: "rotary" | "lever", count: number) => {
    const positions = Array.from({ length: count }, (_, i) => `${i} m`);
    const panel = layOutPanel([{ id: "SW1", name: "S", hole: { kind: "round", diameter: 9 }, positions, form }]);
    if (panel.kind !== "panel") throw new Error(panel.problems.join());
    const found = panel.labels.filter((l) => l.says.endsWith(" m"));
    return new Set(found.map((l) => `${l.x.toFixed(1)} ${l.y.toFixed(1)}`)).size;
  };
  expect([places("rotary", 16), places("lever", 5)]).toEqual([16, 5]);
});
