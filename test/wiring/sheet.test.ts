// The build sheet of a switched machine, as rows of text.
import { describe, expect, it } from "vitest";
import type { Catalogue } from "../../src/catalogue/index.js";
import type { Firmware } from "../../src/records/index.js";
import { buildSheet } from "../../src/sheet/index.js";
import { planWiring } from "../../src/wiring/index.js";
import { cable, combination, header, m27c010, m27c020, resistor, rotary, world } from "./support/world.js";

const parts = [m27c010, m27c020, rotary(2, 3), ...header(10), cable(10), resistor];
const sums: Record<string, Partial<Firmware["versions"][number]["image"]>> = {
  "1A": { crc32: "00c0ffee" },
  "1B": { crc32: { is: "unknown", find: "Read it twice." } },
  "1C": { crc32: "unknown", sha1: "0123456789012345678901234567890123456789" },
};

function withSums(catalogue: Catalogue): Catalogue {
  const monitor = catalogue.firmware.get("monitor")!;
  const versions = monitor.versions.map((v) => ({ ...v, image: { ...v.image, ...sums[v.id] } }));
  return { ...catalogue, firmware: new Map([["monitor", { ...monitor, versions }]]) };
}

describe("the images of a build sheet", () => {
  it("have the checksum to know them by, or the word that they were not checked", () => {
    const catalogue = withSums(world({ parts, versions: { "1A": 65536, "1B": 65536, "1C": 65536 } }));
    const modes = combination([{ firmware: "1A" }, { firmware: "1B" }, { firmware: "1C" }], []);
    const wiring = planWiring(catalogue, modes, { length_m: 0.5 });
    if (wiring.kind !== "wiring") throw new Error(JSON.stringify(wiring));
    const sheet = buildSheet(catalogue, modes, wiring.plan, "Skiff");
    const said = Object.fromEntries(sheet.burn!.banks.map((b) => [b.version, b.crc32]));
    expect(said).toEqual({
      "1A": "00c0ffee",
      "1B": "no checksum recorded: not checked",
      "1C": "not recorded; another checksum is",
    });
  });
});

describe("the parts of a build sheet", () => {
  it("hold what is not wire: a knob, sleeves for what is soldered, two labels a wire, a cover for the window, the other half of a plug", () => {
    const catalogue = withSums(world({ parts, versions: { "1A": 65536, "1B": 65536, "1C": 65536 } }));
    const modes = combination([{ firmware: "1A" }, { firmware: "1B" }, { firmware: "1C" }], []);
    const wiring = planWiring(catalogue, modes, { length_m: 0.5 });
    if (wiring.kind !== "wiring") throw new Error(JSON.stringify(wiring));
    const { plan } = wiring;
    const sheet = buildSheet(catalogue, modes, plan, "Skiff");
    const count = (name: string) => sheet.parts.filter((p) => p.name === name).reduce((sum, p) => sum + p.count, 0);
    expect(count("Knob with a pointer")).toBe(1);
    expect(count("Label for a wire")).toBe(2 * plan.wires.length);
    const soldered = plan.wires.flatMap((w) => [w.from, w.to]).filter((end) => end.at === "switch" || end.at === "connector");
    expect(count("Heat-shrink sleeve")).toBe(soldered.length);
    expect(sheet.parts.filter((p) => p.use === "J1, other half").map((p) => p.count)).toEqual([1]);
    for (const p of sheet.parts) expect(["yes", "to get", "look"]).toContain(p.atHand);
  });
});
