// slotwright burn for machines that are not switched, and for one whose safest mode has every card off.
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { repeatTo, sameBytes } from "../../src/images/index.js";
import { image } from "../support/demo-images.js";
import { freshFolder, slotwright } from "../support/recorder.js";

describe("burning a machine whose safest mode has every card off", () => {
  it("holds the firmware of that mode where every bank line is open, and the card is off in it", async () => {
    const folder = freshFolder();
    writeFileSync(join(folder, "r4a.bin"), image("R4A"));
    writeFileSync(join(folder, "r6.bin"), image("R6"));
    const modes =
      "  - {id: safe, firmware: R4A, cards: [], safest: true}\n  - {id: daily, firmware: R6, cards: [gannet-fixed-disk-controller]}\n";
    const text = `id: mine\nname: Mine\nboard: skerry-16t\nrevision: D1\ncards:\n  - {card: gannet-fixed-disk-controller}\nmodes:\n${modes}`;
    writeFileSync(join(folder, "mine.yaml"), text);
    const planned = await slotwright(["plan", "mine.yaml", "--json"], { folder });
    const { wiring } = JSON.parse(planned.out);
    expect(wiring.kind).toBe("wiring");
    const { contacts, lines, pullUps } = wiring.plan;
    const safe = contacts.filter((row: { mode: string }) => row.mode === "safe");
    expect(safe.length).toBeGreaterThan(0);
    for (const row of safe) {
      expect(row.version).toBe("R4A");
      expect(row.cards).toEqual([{ card: "gannet-fixed-disk-controller", state: "off" }]);
      expect(row.levels.every(({ level }: { level: string }) => level === "high")).toBe(true);
    }
    expect(contacts.find((row: { mode: string }) => row.mode === "daily").cards).toEqual([
      { card: "gannet-fixed-disk-controller", state: "on" },
    ]);
    expect(lines.length).toBeGreaterThan(0);
    expect(pullUps.length).toBeGreaterThan(0);
    const args = ["burn", "mine.yaml", "--dump", "r4a.bin", "--dump", "r6.bin", "--out", "burned", "--json"];
    const { code, out } = await slotwright(args, { folder });
    expect(code).toBe(0);
    const { devices, wrote } = JSON.parse(out);
    const region = devices[0].regions.find((r: { bank: number }) => r.bank === safe[0].bank);
    expect(region.version).toBe("R4A");
    const burned = readFileSync(join(folder, wrote[0])).subarray(region.offset, region.offset + region.size);
    expect(sameBytes(burned, repeatTo(image("R4A"), region.size))).toBe(true);
  });
});

describe("burning one version for a machine that is not switched", () => {
  /** One mode, R6 on a Skerry 16T D1, with the device its owner named. */
  const folderWith = (device?: string) => {
    const folder = freshFolder();
    const named = device === undefined ? "" : `switch: {device: ${device}}\n`;
    const text = `id: mine\nname: Mine\nboard: skerry-16t\nrevision: D1\ncards: []\nmodes:\n  - {id: day, firmware: R6}\n${named}`;
    writeFileSync(join(folder, "mine.yaml"), text);
    writeFileSync(join(folder, "r6.bin"), image("R6"));
    return folder;
  };
  const burned = async (folder: string) => {
    const { code, out } = await slotwright(["burn", "mine.yaml", "--dump", "r6.bin", "--out", "burned", "--json"], { folder });
    return { code, told: JSON.parse(out) };
  };

  it("fills the device the socket was wired for, larger than the window as it is, and says what to do with the pin left open", async () => {
    const folder = freshFolder();
    writeFileSync(join(folder, "r4a.bin"), image("R4A"));
    const args = ["burn", "tracer-r4a-16t-d1", "--dump", "r4a.bin", "--out", "burned"];
    const { code, out } = await slotwright([...args, "--json"], { folder });
    expect(code).toBe(0);
    const { devices, wrote, pinWork } = JSON.parse(out);
    expect(devices[0].regions).toMatchObject([{ version: "R4A", repeats: 4, offset: 0, size: 131072 }]);
    expect(sameBytes(readFileSync(join(folder, wrote[0])), repeatTo(image("R4A"), 131072))).toBe(true);
    expect(pinWork).toMatchObject([{ socket: "IC12", pin: 2, signal: "A16", does: "tie", to: "ground" }]);
    const text = await slotwright([...args, "--replace"], { folder });
    expect(text.out).toContain("Tie pin 2 (A16) of the 27C010 in IC12 to ground. At socket pin 2 it meets nothing");
  });

  it("fills the device the owner named, and no pin of it is left without a level", async () => {
    const folder = folderWith("27c040");
    const { code, told } = await burned(folder);
    expect(code).toBe(0);
    expect(told.wrote).toEqual(["burned/IC12-27C040.bin", "burned/IC12-27C040.label.txt"]);
    expect(sameBytes(readFileSync(join(folder, told.wrote[0])), repeatTo(image("R6"), 512 * 1024))).toBe(true);
    expect(told.pinWork.map((w: { pin: number }) => w.pin)).toEqual([2, 30]);
    expect(readFileSync(join(folder, told.wrote[1]), "utf8")).toContain("27C040  512K");
  });

  it.each([
    ["27c256", "it is smaller than the window"],
    ["27c1024", "it has no 8-bit organisation"],
  ])("refuses %s, which does not stand there, with the reason and what to do, and writes nothing", async (device, says) => {
    const folder = folderWith(device);
    const { code, err } = await slotwright(["burn", "mine.yaml", "--dump", "r6.bin", "--out", "burned"], { folder });
    expect(code).toBe(2);
    expect(err).toContain(`mine.yaml cannot be burned. IC12: ${device.toUpperCase()}`);
    expect(err).toContain(says);
    expect(err).toContain("Name the device that will stand in it");
    expect(readdirSync(folder).sort()).toEqual(["mine.yaml", "r6.bin"]);
  });

  it("is told of the same device by plan: what to do to its pins, or why it does not go in", async () => {
    const works = await slotwright(["plan", "mine.yaml"], { folder: folderWith("27c040") });
    expect(works.code).toBe(0);
    const text = works.out.replaceAll(/\s+/g, " ");
    expect(text).toContain("The device 27C040 EPROM in IC12, filled with R6; grade -15");
    for (const pin of ["2 (A16)", "30 (A17)"]) expect(text).toContain(`to do: Tie pin ${pin} of the 27C040 in IC12 to ground.`);
    const refused = await slotwright(["plan", "mine.yaml", "--json"], { folder: folderWith("27c256") });
    expect(refused.code).toBe(1);
    expect(JSON.parse(refused.out).device).toMatchObject({ kind: "refused", reasons: [{ code: "device-unfit" }] });
    const words = (await slotwright(["plan", "mine.yaml"], { folder: folderWith("27c1024") })).out.replaceAll(/\s+/g, " ");
    expect(words).toContain("The device does not do IC12: 27C1024 EPROM: it has no 8-bit organisation.");
  });

  it("refuses to exchange the bytes of a device that has only eight bits", async () => {
    const { code, err } = await slotwright(["burn", "mine.yaml", "--dump", "r6.bin", "--high-byte-first"], { folder: folderWith() });
    expect(code).toBe(2);
    expect(err).toContain("no high byte");
  });
});
