// Before buying, what fits, and a failure turned into a draft conflict: the commands on the demo club and on a copy of it.
import { cpSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import type { Fitting, Purchase } from "../../src/planning/index.js";
import { type Finding, readOne } from "../../src/records/index.js";
import { freshFolder, slotwright } from "../support/recorder.js";

const machine = ["plan", "--board", "skerry-16t", "--revision", "D1", "--firmware", "R4A", "--card", "tallow-bus-tracer@S3"];

describe("before buying", () => {
  it("a disk controller for the tracer's machine: why not, under which firmware, what would help", async () => {
    const { code, out } = await slotwright([...machine, "--buy", "gannet-fixed-disk-controller"]);
    expect(code).toBe(1);
    expect(out).toMatch(/R4A: No\. .*from R5/s);
    expect(out).toContain("What you would have to get");
    expect(out).toContain(
      "Two ways and one switch: R4 or R4A with Tallow bus tracer; R5, R5.1 or R6 with Gannet fixed-disk\n  controller.",
    );
  });
  it("the same card for an empty machine under R4A: the firmware must change, and the answer says so", async () => {
    const asked = [
      "plan",
      "--board",
      "skerry-16t",
      "--revision",
      "D1",
      "--firmware",
      "R4A",
      "--buy",
      "gannet-fixed-disk-controller",
      "--json",
    ];
    const { code, out } = await slotwright(asked);
    const answer = JSON.parse(out) as Purchase;
    expect(code).toBe(0);
    expect(answer.kind).toBe("purchase");
    const under = (v: string) => answer.versions.find((x) => x.version === v)?.verdict;
    expect([under("R4A"), under("R5")]).toEqual(["ruled-out", "workable"]);
    expect(answer.changes.join(" ")).toMatch(/change the firmware to R/);
    expect(answer.shopping.map((s) => s.what)).toContain("Gannet fixed-disk controller");
  });
  it("a card nobody knows is wrong use, with the likely one", async () => {
    const { code, err } = await slotwright([...machine, "--buy", "gannet-fixed-disk-controler"]);
    expect(code).toBe(2);
    expect(err).toContain('Did you mean "gannet-fixed-disk-controller"?');
  });
});

describe("what fits", () => {
  it("lists the cards by the changes they ask for, and none twice", async () => {
    const { code, out } = await slotwright([...machine, "--fits", "1", "--json"]);
    const { cards, most } = JSON.parse(out) as { cards: Fitting[]; most: number };
    expect([code, most]).toEqual([0, 1]);
    expect(new Set(cards.map((c) => c.card)).size).toBe(cards.length);
    expect(cards.map((c) => c.changes)).toEqual(cards.map((c) => c.changes).sort());
    for (const c of cards) expect([c.card, c.says.length]).toEqual([c.card, c.changes]);
    // The disk controller needs newer firmware than the tracer takes: no single change helps.
    expect(cards.map((c) => c.card)).not.toContain("gannet-fixed-disk-controller");
  });
  it("takes a number, and not both questions at once", async () => {
    expect((await slotwright([...machine, "--fits", "some"])).code).toBe(2);
    expect((await slotwright([...machine, "--fits", "--buy", "knot-serial-pair"])).code).toBe(2);
  });
});

describe("bench against rules", () => {
  /** The demo's records in a folder of their own, the open questions of two builds taken out. */
  function clubWithout(...builds: readonly string[]): string {
    const folder = freshFolder();
    cpSync("data", join(folder, "data"), { recursive: true });
    for (const id of builds) {
      const file = join(folder, "data", "builds", `${id}.yaml`);
      const text = readFileSync(file, "utf8");
      const without = text.replace(/^ {2}open_question:.*\n(?: {4}.*\n)*/m, "");
      expect(without).not.toBe(text);
      writeFileSync(file, without);
    }
    return folder;
  }

  it("names the records to doubt, and how an unexplained failure becomes a conflict to finish", async () => {
    const folder = clubWithout("ternlet-r6-16t-d2", "bittern-24-d1");
    const { code, out } = await slotwright(["check", "--json"], { folder });
    const found = (JSON.parse(out).findings as Finding[]).filter((f) => f.code === "rule-bench-against-rules" && f.level === "warning");
    expect(code).toBe(1);
    const hint = (build: string) => found.find((f) => f.at.file.includes(build))?.hint ?? "";
    expect(found).toHaveLength(2);
    expect(hint("bittern-24-d1")).toMatch(/At least one of these records is wrong: builds\/bittern-24-d1, .*cards\/bittern-speech/);
    expect(hint("bittern-24-d1")).not.toContain("--from-build");
    expect(hint("ternlet-r6-16t-d2")).toContain("slotwright new conflict --from-build ternlet-r6-16t-d2");

    const made = await slotwright(["new", "conflict", "--from-build", "ternlet-r6-16t-d2"], { folder });
    expect(made).toMatchObject({ code: 0, err: "" });
    const file = join(folder, "data", "conflicts", "ternlet-r6-16t-d2-failure.yaml");
    const { record, findings } = readOne("conflict", readFileSync(file), "conflicts/ternlet-r6-16t-d2-failure.yaml");
    expect(findings).toEqual([]);
    expect(record).toMatchObject({ status: "suspected", evidence: [{ grade: "bench", build: "ternlet-r6-16t-d2" }] });
    // A second time it is not written over.
    expect((await slotwright(["new", "conflict", "--from-build", "ternlet-r6-16t-d2"], { folder })).code).toBe(2);
  });

  it.each([
    [["new", "conflict", "--from-build", "nobody"], /No build is called nobody/],
    [["new", "conflict", "--from-build", "gannet-r5-16t-c"], /worked on the bench/],
    [["new", "card", "--from-build", "ternlet-r6-16t-d2"], /not drafted from a build/],
    [["new", "conflict"], /needs an id/],
  ])("%j is wrong use", async (args, says) => {
    const { code, err } = await slotwright(args as string[], { folder: clubWithout() });
    expect(code).toBe(2);
    expect(err).toMatch(says as RegExp);
  });
});
