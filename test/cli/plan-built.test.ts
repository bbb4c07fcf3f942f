// Which combination is built: command line, sheet, site and planner all take the same one, and say why.
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { sheetOf } from "../../src/pages/index.js";
import { sheetOf as plannerSheet } from "../../src/planner/worker/sheet.js";
import { plan } from "../../src/planning/index.js";
import { demo } from "../support/demo.js";
import { freshFolder, slotwright } from "../support/recorder.js";

const id = "fast-disk-and-tape-24";
const build = demo().builds.get(id)!;

describe("the combination that is built", () => {
  it("changes less between its ways than the first that is told; the answer says which it is and why", async () => {
    const { wiring, built, combinations } = JSON.parse((await slotwright(["plan", id, "--json"])).out);
    const versions = combinations.map((c: { modes: { firmware: string }[] }) => c.modes.map((m) => m.firmware).join(" "));
    expect(versions[0]).toBe("R6 R5.1");
    expect(versions[built.combination - 1]).toBe("R5.1 R5.1");
    expect(built).toMatchObject({ figures: { cards: 1, versions: 0, poles: 1 }, proven: true });
    expect(built.says).toBe("One card changes between the ways, the firmware does not. No combination is better.");
    expect(wiring.plan.contacts.map((row: { version: string }) => row.version)).toEqual(["R5.1", "R5.1"]);
    const text = (await slotwright(["plan", id])).out.replaceAll(/\s+/g, " ");
    expect(text).toContain(`How it is switched Combination ${built.combination}: R5.1 in every way. One card changes`);
    expect(text).toContain("Next best: ");
  });

  it("is that of the sheet, from the command line, on the site and in the planner", async () => {
    const file = join(freshFolder(), "sheet.html");
    expect((await slotwright(["plan", id, "--sheet", file])).code).toBe(0);
    const site = sheetOf(demo(), build);
    if (site.kind !== "sheet") throw new Error(site.why.says);
    const says = "One card changes between the ways, the firmware does not. No combination is better.";
    expect(site.page.why[0]).toBe(says);
    expect(readFileSync(file, "utf8")).toContain(says);
    const planner = plannerSheet(demo(), build);
    expect(planner.kind === "switched" && planner.html).toContain(says);
    for (const row of site.page.sheet.contacts) expect(row.version).toBe("R5.1");
  });

  it("is told as JSON with its whole fault table, and in words with what one broken wire could do", async () => {
    const { wiring } = JSON.parse((await slotwright(["plan", "saltmarsh-three-mode-skerry", "--json"])).out);
    const { faults, doubleFaults } = wiring.plan;
    const told = faults.groups.flatMap((g: { faults: unknown[] }) => g.faults).length + faults.silent.length;
    expect(told).toBe(faults.faults);
    expect(told).toBeGreaterThan(150);
    expect(doubleFaults.groups.length).toBeGreaterThan(1);
    const text = (await slotwright(["plan", "saltmarsh-three-mode-skerry"])).out.replaceAll(/\s+/g, " ");
    expect(text).toMatch(
      /after wires [\d, ]+ open: R4A; Tallow, Gannet on; Plover off\. Cannot run so: Gannet .* needs Skerry Monitor from R5\./,
    );
  });

  it("is none where no switch can do it: said plainly, as JSON too, and told by the exit code", async () => {
    const folder = freshFolder();
    const asked = readFileSync("data/builds/saltmarsh-three-mode-skerry.yaml", "utf8").replace(
      "id: saltmarsh-three-mode-skerry",
      "id: mine",
    );
    writeFileSync(join(folder, "mine.yaml"), `${asked}switch: {switch: toggle-dpdt}\n`);
    const { code, out } = await slotwright(["plan", "mine.yaml"], { folder });
    expect(code).toBe(1);
    const text = out.replaceAll(/\s+/g, " ");
    expect(text).toContain("A switch is needed, and none can be built as asked");
    expect(text).toContain("without a switch the change from one to another is made by hand");
    const inJson = await slotwright(["plan", "mine.yaml", "--json"], { folder });
    expect(inJson.code).toBe(1);
    expect(JSON.parse(inJson.out)).toMatchObject({ verdict: "conditional", wiring: { kind: "refused" } });
  });

  it("is not forced on who asks for another: that sheet is theirs, and says what is better", () => {
    const answer = plan(demo(), build, { brief: true });
    const first = answer.kind === "answer" ? answer.combinations[0]! : undefined;
    const made = sheetOf(demo(), build, first);
    expect(made.kind === "sheet" && made.page.sheet.contacts.map((row) => row.version).sort()).toEqual(["R5.1", "R6"]);
    expect(made.kind === "sheet" && made.page.why.join(" ")).toContain("is: R5.1 in every way");
  });
});
