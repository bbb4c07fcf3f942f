// slotwright plan --sheet: one self-contained page for the headline machine, held against its wiring plan.
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { freshFolder, slotwright } from "../support/recorder.js";

const headline = "saltmarsh-three-mode-skerry";

describe("the build sheet", () => {
  it("stands alone, opens with the machine, and holds every wire, bank, position and step", async () => {
    const folder = freshFolder();
    const { code, err } = await slotwright(["plan", headline, "--sheet", "sheet.html", "--json"], { folder });
    expect(err).toBe("Wrote sheet.html.");
    expect(code).toBe(0);
    const page = readFileSync(join(folder, "sheet.html"), "utf8");
    expect(page).not.toMatch(/<(script|link|img|iframe)\b/);
    expect(page).not.toMatch(/url\((?!data:)/);
    const order = [
      "Switch",
      "Memory device",
      "Order of work",
      "Before you start",
      "Parts",
      "Slots and settings",
      "Wires",
      "Connector faces",
      "Pins and resistors",
      "Panel",
      "Bench test",
      "Finding a fault",
      "If something else is seen",
      "What this rests on",
      "Further cautions",
    ];
    const places = order.map((title) => page.indexOf(`<h2>${title}</h2>`));
    expect(places.every((at) => at > 0)).toBe(true);
    expect(places).toEqual([...places].sort((a, b) => a - b));
    for (const version of ["R6", "R4A", "R5.1"]) expect(page).toContain(version);
    // CRC-32 of the images as the firmware record gives them.
    expect(page).toContain("7960b84a");
    expect(page.match(/class="box"/g)?.length).toBeGreaterThan(60);
    for (const title of [
      "Wiring of the",
      "Banks of the",
      "Pins of the",
      "Panel template, full size",
      "Slots of the",
      "Memory addresses of the",
      "Load of the supply rails",
    ])
      expect(page).toContain(title);
    for (const face of ["solder side"]) expect(page).toContain(face);
    const ids = [...page.matchAll(/ id="([^"]+)"/g)].map((m) => m[1]);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it("is not written over a file unasked", async () => {
    const folder = freshFolder();
    writeFileSync(join(folder, "mine.html"), "mine");
    const { code, err } = await slotwright(["plan", headline, "--sheet", "mine.html"], { folder });
    expect(code).toBe(2);
    expect(err).toContain("mine.html is there already.");
    expect(readFileSync(join(folder, "mine.html"), "utf8")).toBe("mine");
  });

  it("is refused in words for a machine that needs no switch, and for one that cannot be", async () => {
    const folder = freshFolder();
    const one = await slotwright(
      ["plan", "--board", "skerry-16t", "--revision", "D1", "--card", "gannet-fixed-disk-controller", "--sheet", "s.html"],
      { folder },
    );
    expect(one.code).toBe(2);
    expect(one.err).toContain("There is no build sheet:");
    const none = await slotwright(
      ["plan", "--board", "skerry-16t", "--firmware", "R2", "--card", "gannet-fixed-disk-controller", "--sheet", "s.html"],
      { folder },
    );
    expect(none.code).toBe(2);
    expect(none.err).toContain("There is nothing to build: No.");
  });
});
