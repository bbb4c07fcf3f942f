// slotwright find: records by what they are called and by what is seen, in the order of the site's search.
import { describe, expect, it } from "vitest";
import { entriesOfRecords } from "../../src/pages/index.js";
import { finder } from "../../src/search/index.js";
import { afterwards, english, french, german, type Judged } from "../publish/judged-queries.js";
import { entries } from "../publish/search-entries.js";
import { demo } from "../support/demo.js";
import { slotwright } from "../support/recorder.js";

const records = finder(entriesOfRecords(demo()));
const site = finder(entries);
const first = (asked: string) => records.find(asked)[0]?.entry.href.replace(/\.html$/, "");

describe("slotwright find", () => {
  it.each([
    ["English", [...english, ...afterwards], 0.9],
    ["German and French", [...german, ...french], 0.85],
  ] as const)("serves first who asks in %s", (_, queries: readonly Judged[], share) => {
    const wrong = queries.filter(({ asked, useful }) => !useful.includes(first(asked) ?? ""));
    expect(1 - wrong.length / queries.length, wrong.map((w) => `${w.asked}: ${first(w.asked)}`).join("; ")).toBeGreaterThanOrEqual(share);
  });

  it("finds first what the site finds first", () => {
    const all = [...english, ...german, ...french, ...afterwards];
    const apart = all.filter(({ asked }) => site.find(asked)[0]?.entry.href !== records.find(asked)[0]?.entry.href);
    expect(apart.length / all.length, apart.map((a) => a.asked).join("; ")).toBeLessThan(0.1);
  });

  it("names each find with its file, and calls what only comes near so", async () => {
    const { code, out } = await slotwright(["find", "Gannnet", "fixed", "disc", "controler"]);
    expect(code).toBe(0);
    expect(out).toContain("Gannet fixed-disk controller (card)");
    expect(out).toContain("cards/gannet-fixed-disk-controller.yaml");
    const near = await slotwright(["find", "gannet", "zebra"]);
    expect(near.out).toContain('Nothing holds all of "gannet zebra"; these come near:');
  });

  it("counts on, and gives data to other programs", async () => {
    const { out } = await slotwright(["find", "disk", "--most", "2"]);
    expect(out).toMatch(/\d+ more; --most \d+ shows them\./);
    const { found, more } = JSON.parse((await slotwright(["find", "R5.1", "--json"])).out);
    expect(found[0]).toMatchObject({ kind: "firmware", id: "skerry-monitor", how: "exact" });
    expect(more).toBeGreaterThanOrEqual(0);
  });

  it("says when there is nothing, and what is wrong with a number", async () => {
    const none = await slotwright(["find", "zzzzqq"]);
    expect([none.code, none.out]).toEqual([1, expect.stringContaining('Nothing in the records speaks of "zzzzqq".')]);
    const wrong = await slotwright(["find", "disk", "--most", "none"]);
    expect([wrong.code, wrong.err]).toEqual([2, expect.stringContaining("--most none is no number of records.")]);
  });
});
