// Records with errors: what would answer or publish from them stops, unless it is told to go on even so; and a conflict nobody can read
// makes what it could bear on not known, never better.
import { cpSync, existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { catalogueFrom } from "../../src/planner/worker/serve.js";
import type { Answer } from "../../src/planning/index.js";
import { freshFolder, slotwright } from "../support/recorder.js";

const demo = fileURLToPath(new URL("../../data", import.meta.url));
const question = ["plan", "--board", "skerry-16t", "--revision", "D1", "--firmware", "R6"];
const gannet = ["--card", "gannet-fixed-disk-controller"];

/** The demo club with one word of one record changed. */
function spoiled(record: string, from: string, to: string): string {
  const folder = freshFolder();
  cpSync(demo, join(folder, "data"), { recursive: true });
  const file = join(folder, "data", record);
  const text = readFileSync(file, "utf8");
  expect(text).toContain(from);
  writeFileSync(file, text.replace(from, to));
  return folder;
}

const conflict = () => spoiled("conflicts/gannet-a-hangs-under-r6.yaml", "effect: blocks", "effect: block");

describe("a confirmed conflict with a typing error", () => {
  it("stops the answer, with the place and the word that was meant", async () => {
    const { code, out, err } = await slotwright([...question, ...gannet], { folder: conflict() });
    expect([code, out]).toEqual([1, ""]);
    expect(err).toContain("data/conflicts/gannet-a-hangs-under-r6.yaml:10:9");
    expect(err).toContain("--even-so");
  });

  it("leaves the answer not known when told to go on, and names the file", async () => {
    const { code, out } = await slotwright([...question, ...gannet, "--even-so", "--json"], { folder: conflict() });
    const answer = JSON.parse(out) as Answer;
    expect([code, answer.verdict, answer.count]).toEqual([1, "unknown", "0"]);
    expect(answer.unknowns.map((u) => u.says).join()).toContain("conflicts/gannet-a-hangs-under-r6.yaml:10:9");
  });

  it("says nothing of a machine that has not the card it speaks of", async () => {
    const { out } = await slotwright([...question, "--card", "plover-tape-interface", "--even-so", "--json"], { folder: conflict() });
    const { out: before } = await slotwright([...question, "--card", "plover-tape-interface", "--json"], { folder: process.cwd() });
    expect((JSON.parse(out) as Answer).verdict).toBe((JSON.parse(before) as Answer).verdict);
  });

  it("may speak of any machine when it cannot even be read as YAML", async () => {
    const folder = spoiled("conflicts/gannet-a-hangs-under-r6.yaml", "effect: blocks", "effect: [blocks");
    const { out } = await slotwright([...question, "--card", "plover-tape-interface", "--even-so", "--json"], { folder });
    expect(["unknown", "ruled-out"]).toContain((JSON.parse(out) as Answer).verdict);
  });

  it.each([
    ["site", "_site"],
    ["pocket", "slotwright-pocket.html"],
  ])("stops %s before anything is written", async (command, file) => {
    const folder = conflict();
    const { code, err } = await slotwright([command], { folder });
    expect(code).toBe(1);
    expect(err).toContain("gannet-a-hangs-under-r6.yaml:10:9");
    expect(existsSync(join(folder, file))).toBe(false);
  });
});

describe("a site made even so", () => {
  it("says on every page what could not be read, and gives it to the planner", { timeout: 600_000 }, async () => {
    const folder = conflict();
    const { code } = await slotwright(["site", "--even-so"], { folder });
    expect(code).toBe(0);
    for (const page of ["index.html", "boards/skerry-16t.html", "cards/gannet-fixed-disk-controller.html", "planner.html"])
      expect(readFileSync(join(folder, "_site", page), "utf8"), page).toContain("conflicts/gannet-a-hangs-under-r6.yaml:10");
    const url = readFileSync(join(folder, "_site", "data", "planner.json"), "utf8");
    const catalogue = await catalogueFrom({ text: url });
    expect(catalogue.unread?.map((f) => f.id)).toEqual(["gannet-a-hangs-under-r6"]);
  });
});

describe("a card with a typing error", () => {
  it("is not said to be missing", async () => {
    const folder = spoiled("cards/gannet-fixed-disk-controller.yaml", "edge: ", "egde: ");
    const stopped = await slotwright([...question, ...gannet], { folder });
    expect([stopped.code, stopped.out]).toEqual([1, ""]);
    const { code, err } = await slotwright([...question, ...gannet, "--even-so"], { folder });
    expect(code).not.toBe(0);
    expect(err).toMatch(/could not be read \(cards\/gannet-fixed-disk-controller\.yaml:\d+:\d+\)/);
    expect(err).not.toContain("No card is called");
  });
});
