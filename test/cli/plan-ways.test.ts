// slotwright plan with wishes: the ways are found, told, and carried on into the answer and its wiring.
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { freshFolder, slotwright } from "../support/recorder.js";

const cards = ["tallow-bus-tracer", "gannet-fixed-disk-controller", "plover-tape-interface"];
const three = ["plan", "--board", "skerry-16t", ...cards.flatMap((card) => ["--card", card])];

describe("plan with wishes", () => {
  it("finds that two ways do for tracer, disk and tape, says why one cannot, and wires them", async () => {
    const { code, out } = await slotwright([...three, "--ways"]);
    const text = out.replaceAll(/\s+/g, " ");
    expect(code).toBe(0);
    expect(text).toContain("It takes two ways to run it, with one switch.");
    expect(text).toContain("Fewer cannot do: Tallow bus tracer and Gannet fixed-disk controller need a way each.");
    expect(text).toMatch(/because Tallow bus tracer needs Skerry Monitor up to R4A\. \(data\/cards\/tallow-bus-tracer\.yaml:\d+:\d+\)/);
    expect(text).toContain("way-2: firmware R5.1; Gannet fixed-disk controller and Plover tape interface");
    expect(text).toContain("How it is switched");
    expect(text).toContain("By hand, without a switch: two ways, and four things to do between two of them.");
    expect(text).toContain(
      "From way-1 to way-2: 1. Switch off and pull the mains plug. 2. Switch Tallow bus tracer off: open the contact at J9-1 and J9-2.",
    );
    expect(text).toContain("5. Exchange the memory device with R4 for the one with R5.1. 6. Plug in, switch on, and see that R5.1 starts.");
    expect(text).toContain("Caution: Mains inside the supply.");
  });

  it("as JSON has number, proof and divisions; the answer beside them is that of the first", async () => {
    const { out } = await slotwright([...three, "--together", "gannet-fixed-disk-controller,plover-tape-interface@R5.1", "--json"]);
    const { ways, verdict, combinations, wiring } = JSON.parse(out);
    expect(ways).toMatchObject({ kind: "ways", outcome: "found", fewest: 2, tooMany: false, divisionsComplete: true });
    expect(ways.fewer).toMatchObject({ kind: "apart", wishes: ["together:0", "card:tallow-bus-tracer"] });
    expect(ways.divisions[0].ways.map((w: { on: string[] }) => w.on)).toEqual([["tallow-bus-tracer"], cards.slice(1)]);
    expect(verdict).toBe(ways.divisions[0].verdict);
    expect(combinations[0].modes.map((m: { firmware: string }) => m.firmware)).toEqual([expect.stringMatching(/^R4A?$/), "R5.1"]);
    expect(wiring.kind).toBe("wiring");
    expect(ways.byHand).toMatchObject({ kind: "change-over", fewestProven: true, stepsProven: true });
    expect(ways.byHand.changes.map((c: { from: string; to: string }) => [c.from, c.to])).toEqual([
      ["way-1", "way-2"],
      ["way-2", "way-1"],
    ]);
  });

  it("says when it takes more ways than would be put up with, and exits 1", async () => {
    const { code, out } = await slotwright([...three, "--ways", "1"]);
    expect(code).toBe(1);
    expect(out).toContain("That is more than you would put up with.");
  });

  it("says which wishes no number of ways grants, and exits 1", async () => {
    const { code, out } = await slotwright([...three, "--always", "tallow-bus-tracer", "--under", "R6"]);
    const text = out.replaceAll(/\s+/g, " ");
    expect(code).toBe(1);
    expect(text).toContain("No number of ways grants it.");
    expect(text).toContain("Tallow bus tracer always on");
  });

  it("takes wishes from a build file, and names one that cannot be read with its place", async () => {
    const folder = freshFolder();
    mkdirSync(folder, { recursive: true });
    const file = join(folder, "three.yaml");
    const build = (card: string) =>
      `id: three\nname: Three\nboard: skerry-16t\ncards:\n${cards.map((c) => `  - card: ${c}\n`).join("")}wishes:\n  alone: [${card}]\n  together:\n    - firmware: R6\n`;
    writeFileSync(file, build("plover-tape-interface"));
    const { ways } = JSON.parse((await slotwright(["plan", file, "--json"])).out);
    expect(ways).toMatchObject({ outcome: "found", fewest: 3 });
    for (const way of ways.divisions[0].ways as { on: string[] }[])
      expect(way.on.includes("plover-tape-interface") ? way.on.length : 1).toBe(1);
    writeFileSync(file, build("plover-tape"));
    const wrong = await slotwright(["plan", file]);
    expect(wrong.code).toBe(2);
    expect(wrong.err).toMatch(/three\.yaml:9:\d+.*plover-tape/s);
  });

  it.each([
    [["--together", "@"], "--together @ cannot be read."],
    [["--ways", "none"], "--ways none is no number of ways."],
    [["--always", "tallow"], 'No card in this build is called "tallow".'],
  ])("refuses %s", async (args, message) => {
    const { code, err } = await slotwright([...three, ...args]);
    expect(code).toBe(2);
    expect(err).toContain(message);
  });
});
