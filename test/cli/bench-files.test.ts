// The files for the bench of a switched machine, read back: every wire, part, measurement and fault of the plan, and no formula.
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { benchFiles } from "../../src/publish/index.js";
import type { WiringPlan } from "../../src/wiring/index.js";
import { freshFolder, slotwright } from "../support/recorder.js";

const id = "saltmarsh-three-mode-skerry";

/** The rows of a CSV file, as RFC 4180 has them. */
function rowsOf(text: string): string[][] {
  const rows: string[][] = [];
  for (const line of text.split("\r\n").slice(0, -1))
    rows.push([...line.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^,]*))/g)].map((m) => (m[1] ?? m[2] ?? "").replaceAll('""', '"')));
  return rows;
}

/** What a spreadsheet could take for a formula stands behind an apostrophe. */
const guarded = (says: string) => (/^[=+@-]/.test(says) ? `'${says}` : says);

it("hold the whole plan, and are not written over", async () => {
  const folder = freshFolder();
  const made = await slotwright(["plan", id, "--files", "bench", "--json"], { folder });
  expect(made.code).toBe(0);
  expect(readdirSync(join(folder, "bench")).sort()).toEqual(["continuity.csv", "faults.csv", "labels.html", "parts.csv", "wires.csv"]);
  const plan: WiringPlan = JSON.parse(made.out).wiring.plan;
  const read = (name: string) => rowsOf(readFileSync(join(folder, "bench", name), "utf8")).slice(1);
  expect(read("wires.csv").map((r) => r.slice(0, 4))).toEqual(
    plan.wires.map((w) => [String(w.number), ...[w.label, w.fromText, w.toText].map(guarded)]),
  );
  expect(read("parts.csv").map((r) => [r[0], r[2]])).toEqual(plan.parts.map((p) => [String(p.count), p.name]));
  expect(read("continuity.csv").map((r) => [r[4], r[5], r[6]])).toEqual(plan.continuity.map((r) => [r.from, guarded(r.to), r.must]));
  const faults = read("faults.csv");
  expect(faults).toHaveLength(plan.faults.faults);
  expect(faults.filter((r) => r[4] === "meter").length).toBeGreaterThan(100);
  for (const row of faults) expect(row[4]).not.toBe("");
  const labels = readFileSync(join(folder, "bench", "labels.html"), "utf8");
  for (const w of plan.wires) for (const end of [w.fromText, w.toText]) expect(labels).toContain(`<b>${w.number}</b> ${w.label}: ${end}`);
  for (const mode of plan.modes) expect(labels).toContain(mode.name);

  writeFileSync(join(folder, "bench", "wires.csv"), "mine");
  const again = await slotwright(["plan", id, "--files", "bench"], { folder });
  expect(again.code).toBe(2);
  expect(again.err).toContain("wires.csv is there already.");
  expect(readFileSync(join(folder, "bench", "wires.csv"), "utf8")).toBe("mine");

  // A name that a spreadsheet would take for a formula.
  const wire = { ...plan.wires[0]!, label: "=1+1", fromText: "@x", toText: "-y" };
  const [wires] = benchFiles({ ...plan, wires: [wire] }, "Mine", "one record could not be read");
  expect(rowsOf(wires!.content)[1]!.slice(1, 4)).toEqual(["'=1+1", "'@x", "'-y"]);
  expect(wires!.content).toContain("one record could not be read");
});

it("are refused in words for a machine that needs no switch", async () => {
  const { code, err } = await slotwright(
    ["plan", "--board", "skerry-16t", "--revision", "D1", "--card", "gannet-fixed-disk-controller", "--files", "bench"],
    { folder: freshFolder() },
  );
  expect(code).toBe(2);
  expect(err).toContain("There are no files for the bench: no switch is wanted.");
});
