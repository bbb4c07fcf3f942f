// slotwright burn on the demo club: the headline machine's device from dumps made by the firmware record's own recipe.
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { joinLanes, readMemoryFile, sameBytes, swapBytes, takeLane } from "../../src/images/index.js";
import { stream } from "../images/world.js";
import { image } from "../support/demo-images.js";
import { freshFolder, slotwright } from "../support/recorder.js";

const headline = "saltmarsh-three-mode-skerry";

function dumpsIn(folder: string): string[] {
  writeFileSync(join(folder, "r4a.bin"), swapBytes(image("R4A")));
  writeFileSync(join(folder, "r51.bin"), image("R5.1"));
  writeFileSync(join(folder, "r6.bin"), image("R6"));
  return ["r4a.bin", "r51.bin", "r6.bin"].flatMap((file) => ["--dump", file]);
}

describe("burning the headline machine", () => {
  it("writes a device that holds every image where its bank is, with a label, and reads it back", async () => {
    const folder = freshFolder();
    const { code, out, err } = await slotwright(["burn", headline, ...dumpsIn(folder), "--out", "burn", "--json"], { folder });
    expect(err).toBe("");
    expect(code).toBe(0);
    const told = JSON.parse(out);
    expect(
      told.identified.map((i: { matches: { version: string; order: string }[] }) => [i.matches[0]?.version, i.matches[0]?.order]),
    ).toEqual([
      ["R4A", "byte-swapped"],
      ["R5.1", "as-is"],
      ["R6", "as-is"],
    ]);
    expect(told.verified.length).toBe(told.devices.length);
    expect(told.verified.every((v: { same: boolean }) => v.same)).toBe(true);
    const device = told.devices[0];
    const written = readFileSync(join(folder, told.wrote[0]));
    const label = readFileSync(join(folder, told.wrote[1]), "utf8");
    expect(new Set(device.regions.map((r: { version: string }) => r.version))).toEqual(new Set(["R4A", "R5.1", "R6"]));
    for (const region of device.regions) {
      const wanted = image(region.version);
      for (let k = 0; k < region.repeats; k++)
        expect(sameBytes(written.subarray(region.offset + k * wanted.length, region.offset + (k + 1) * wanted.length), wanted)).toBe(true);
      expect(label).toContain(`${region.version}${region.repeats > 1 ? ` x${region.repeats}` : ""}  ${region.imageCrc32}`);
    }
    expect(label).toMatch(/burned \d{4}-\d\d-\d\d/);
  });

  it("gives the same bytes in every format, and verifies what was read back", async () => {
    const folder = freshFolder();
    const dumps = dumpsIn(folder);
    const bytes: Uint8Array[] = [];
    for (const format of ["bin", "hex", "srec"]) {
      const { code, out } = await slotwright(["burn", headline, ...dumps, "--out", format, "--format", format, "--json"], { folder });
      expect(code).toBe(0);
      const file = JSON.parse(out).wrote[0] as string;
      const read = readMemoryFile(readFileSync(join(folder, file)));
      expect(read.kind).toBe("read");
      if (read.kind === "read") bytes.push(read.bytes);
      if (format !== "srec") continue;
      const again = await slotwright(["burn", headline, ...dumps, "--verify", file], { folder });
      expect(again.code).toBe(0);
      expect(again.out).toContain("agree.");
    }
    expect(sameBytes(bytes[0]!, bytes[1]!) && sameBytes(bytes[0]!, bytes[2]!)).toBe(true);
    const spoiled = bytes[0]!.slice();
    spoiled[5]! ^= 4;
    writeFileSync(join(folder, "back.bin"), spoiled);
    const bad = await slotwright(["burn", headline, ...dumps, "--verify", "back.bin"], { folder });
    expect(bad.code).toBe(1);
    expect(bad.out).toMatch(/1 bytes differ, in bank \d/);
  });

  it("never writes over a file unasked, and then writes nothing at all", async () => {
    const folder = freshFolder();
    const dumps = dumpsIn(folder);
    const first = await slotwright(["burn", headline, ...dumps, "--out", "burn", "--json"], { folder });
    const [file, label] = JSON.parse(first.out).wrote as [string, string];
    writeFileSync(join(folder, label), "mine");
    const before = readFileSync(join(folder, file));
    const again = await slotwright(["burn", headline, ...dumps, "--out", "burn", "--fill", "00"], { folder });
    expect(again.code).toBe(2);
    expect(again.err).toContain("nothing was written");
    expect(readFileSync(join(folder, label), "utf8")).toBe("mine");
    expect(sameBytes(readFileSync(join(folder, file)), before)).toBe(true);
    const replaced = await slotwright(["burn", headline, ...dumps, "--out", "burn", "--replace"], { folder });
    expect(replaced.code).toBe(0);
    expect(readFileSync(join(folder, label), "utf8")).toContain("device CRC-32");
  });

  it("goes into no folder of other things unasked, and then leaves them and what was burned before", async () => {
    const folder = freshFolder();
    writeFileSync(join(folder, "r4a.bin"), image("R4A"));
    const ask = (out: string, ...more: string[]) =>
      slotwright(["burn", "tracer-r4a-16t-d1", "--dump", "r4a.bin", "--out", out, ...more], { folder });
    const refused = await ask(".");
    expect(refused.code).toBe(2);
    expect(refused.err).toContain(". holds files that slotwright burn did not write.");
    expect(readdirSync(folder)).toEqual(["r4a.bin"]);
    expect((await ask("burned")).code).toBe(0);
    const [first] = readdirSync(join(folder, "burned")).filter((name) => name.endsWith(".bin"));
    expect((await ask("burned", "--format", "hex", "--replace")).code).toBe(0);
    expect(readdirSync(join(folder, "burned"))).toContain(first);
    writeFileSync(join(folder, "burned", "notes.txt"), "mine");
    expect((await ask("burned", "--replace")).code).toBe(0);
    expect(readFileSync(join(folder, "burned", "notes.txt"), "utf8")).toBe("mine");
  });

  it("refuses with an image missing, and says which bank needs it", async () => {
    const folder = freshFolder();
    const dumps = dumpsIn(folder).slice(2);
    const { code, out, err } = await slotwright(["burn", headline, ...dumps, "--out", "burn"], { folder });
    expect(code).toBe(1);
    expect(out).toMatch(/There is no image of R4A; bank [\d, ]+ needs it\./);
    expect(err).toContain("Nothing was written.");
    expect(existsSync(join(folder, "burn"))).toBe(false);
  });
});

describe("burning for two sockets", () => {
  it("splits every image over the even and the odd device, takes halves as dumps, and notices exchanged devices", async () => {
    const folder = freshFolder();
    writeFileSync(join(folder, "r6.bin"), image("R6"));
    writeFileSync(join(folder, "ic21.bin"), takeLane(image("R5.1"), "even"));
    writeFileSync(join(folder, "ic22.bin"), takeLane(image("R5.1"), "odd"));
    const dumps = ["r6.bin", "ic22.bin", "ic21.bin"].flatMap((file) => ["--dump", file]);
    const { code, out } = await slotwright(["burn", "switched-skua-24-d1", ...dumps, "--out", "burn", "--json"], { folder });
    expect(code).toBe(0);
    const { devices, wrote } = JSON.parse(out);
    expect(devices.map((d: { socket: string; lane: string; size: number }) => [d.socket, d.lane, d.size])).toEqual([
      ["IC21", "even", 65536],
      ["IC22", "odd", 65536],
    ]);
    const [even, odd] = [wrote[0], wrote[2]].map((file) => new Uint8Array(readFileSync(join(folder, file)))) as [Uint8Array, Uint8Array];
    const joined = joinLanes(even, odd);
    for (const region of devices[0].regions)
      expect(sameBytes(joined.subarray(2 * region.offset, 2 * (region.offset + region.size)), image(region.version))).toBe(true);
    const crossed = await slotwright(["burn", "switched-skua-24-d1", ...dumps, "--verify", wrote[2], "--verify", wrote[0]], { folder });
    expect(crossed.code).toBe(1);
    expect(crossed.out).toContain("It is the device of socket IC22: the two are exchanged.");
  });
});

describe("saying what a dump is", () => {
  it("names known damaged and unknown ones, and exits 1", async () => {
    const folder = freshFolder();
    const bad = image("R4");
    bad.fill(0xff, 0, 16);
    writeFileSync(join(folder, "bad.bin"), bad);
    writeFileSync(join(folder, "blank.bin"), new Uint8Array(65536).fill(0xff));
    writeFileSync(join(folder, "cut.hex"), ":0100000001FE\n:0100010001FC\n:00000001FF\n");
    const { code, out } = await slotwright(["burn", "--dump", "bad.bin", "--dump", "blank.bin", "--dump", "cut.hex"], { folder });
    expect(code).toBe(1);
    expect(out).toContain("bad.bin: It is a file known to be damaged, of Skerry Monitor R4.");
    expect(out).toContain("blank.bin: Not an image the records know (64K");
    expect(out).toContain("an erased device");
    expect(out).toContain("cut.hex:2: The check byte is FC. Expected: FD for the bytes as they stand.");
  });

  it("takes bytes that miss the recorded checksum only when told twice", async () => {
    const folder = freshFolder();
    dumpsIn(folder);
    writeFileSync(join(folder, "own.bin"), stream(99, 65536));
    const args = ["burn", headline, "--dump", "r4a.bin", "--dump", "r51.bin", "--as", "R6=own.bin", "--out", "o"];
    const once = await slotwright(args, { folder });
    expect(once.code).toBe(1);
    expect(once.out).toContain(
      "own.bin is not taken for Skerry Monitor R6. The records know Skerry Monitor R6 by a checksum that these bytes do not have. If you know why they differ, say that too: --even-if-different R6",
    );
    expect(once.err).toContain("Nothing was written.");
    expect(once.err).not.toContain("is taken");
    expect(existsSync(join(folder, "o"))).toBe(false);
    const twice = await slotwright([...args, "--even-if-different", "R6"], { folder });
    expect(twice.code).toBe(0);
    expect(twice.err).toContain("own.bin is taken for R6 on your word.");
    expect(twice.out).toMatch(/bank \d+ at 0x[0-9A-F]+: R6(, \d times over)?; not checked: not the recorded checksum/);
    expect(twice.out).not.toMatch(/R5\.1[^\n]*not checked/);
  });

  it("never puts bytes that differ in the place of a dump that has the recorded checksum", async () => {
    const folder = freshFolder();
    dumpsIn(folder);
    writeFileSync(join(folder, "own.bin"), stream(99, 65536));
    const dumps = ["r4a.bin", "r51.bin", "r6.bin"].flatMap((name) => ["--dump", name]);
    const args = ["burn", headline, ...dumps, "--as", "R6=own.bin", "--even-if-different", "R6", "--out", "o"];
    const { code, out } = await slotwright(args, { folder });
    expect(code).toBe(1);
    expect(out).toContain("A file named with --dump has the recorded checksum of R6, and these bytes do not.");
    expect(existsSync(join(folder, "o"))).toBe(false);
  });

  it("takes a version without a recorded checksum when told once, and says that it was not checked", async () => {
    const folder = freshFolder();
    await slotwright(["start-club", "club"], { folder });
    writeFileSync(join(folder, "dump.bin"), stream(98, 32768));
    const args = ["burn", "example-machine", "--data", "club", "--as", "1.1=dump.bin", "--out", "o"];
    const { code, out, err } = await slotwright(args, { folder });
    expect([code, err]).toEqual([0, expect.stringMatching(/No checksum of .* 1\.1 is recorded: not checked\./)]);
    expect(out).toMatch(/: 1\.1(, \d times over)?; no checksum recorded: not checked/);
    const [label] = readdirSync(join(folder, "o")).filter((name) => name.endsWith(".label.txt"));
    expect(readFileSync(join(folder, "o", label!), "utf8")).toContain("no checksum recorded: not checked");
  });

  it.each([
    ["another version", image("R5.1"), "It is Skerry Monitor R5.1."],
    ["its own version with bytes exchanged", swapBytes(image("R6")), "with --dump, which puts it right"],
    ["its own bytes read with every bit inverted", image("R6").map((b) => 255 - b), "With every bit inverted it is Skerry Monitor R6"],
    ["a half of it", takeLane(image("R6"), "even"), "It has 32K, and the records know that version with 64K."],
    ["a device that was not read", new Uint8Array(65536).fill(0xff), "Every byte of it is FF: nothing was read there."],
    [
      "one half that was not read",
      joinLanes(stream(4, 32768), new Uint8Array(32768)),
      "Every odd byte of it is 00: nothing was read there.",
    ],
    ["a file known to be damaged", image("R4").fill(0xff, 0, 16), "It is a file known to be damaged, of Skerry Monitor R4."],
  ])("takes %s for no version, whatever the owner says, and writes nothing", async (_, bytes, says) => {
    const folder = freshFolder();
    dumpsIn(folder);
    writeFileSync(join(folder, "own.bin"), bytes);
    const args = ["burn", headline, "--dump", "r4a.bin", "--dump", "r51.bin", "--as", "R6=own.bin", "--out", "o"];
    const { code, out, err } = await slotwright(args, { folder });
    expect(code).toBe(1);
    expect(out).toContain("own.bin is not taken for Skerry Monitor R6.");
    expect(out).toContain(says);
    expect(err).toContain("Nothing was written.");
    expect(existsSync(join(folder, "o"))).toBe(false);
  });

  it("marks on the label what was not checked, and only that", async () => {
    const folder = freshFolder();
    dumpsIn(folder);
    writeFileSync(join(folder, "own.bin"), stream(99, 65536));
    const args = ["burn", headline, "--dump", "r4a.bin", "--as", "R5.1=r51.bin", "--as", "R6=own.bin", "--out", "o", "--json"];
    args.push("--even-if-different", "R6");
    const { code, out, err } = await slotwright(args, { folder });
    expect(code).toBe(0);
    expect(err).toContain("The records know Skerry Monitor R6 by a checksum that these bytes do not have.");
    const told = JSON.parse(out);
    expect([told.unchecked, told.different]).toEqual([["R6"], ["R6"]]);
    const banks = readFileSync(join(folder, told.wrote[1]), "utf8")
      .split("\n")
      .filter((line) => line.startsWith("bank "));
    expect(banks.length).toBeGreaterThan(2);
    for (const line of banks) expect(line.includes("not checked"), line).toBe(/ R6 /.test(line));
  });

  it.each([
    [["burn"], "No dump was named."],
    [["burn", "--dump", "nothing.bin"], "There is no file nothing.bin."],
    [["burn", "--dump", "x", "--out", "y"], "Without a build there is nothing to write or verify."],
    [["burn", headline, "--as", "R5.1=x", "--even-if-different", "R6"], "--even-if-different R6 speaks of no file."],
    [["burn", headline, "--as", "R6=x", "--as", "R6=y"], "--as names two files for R6: x and y."],
    [["burn", headline, "--dump", "x", "--format", "elf"], "--format elf is not a format."],
    [["burn", headline, "--dump", "x", "--fill", "999"], "--fill 999 is not one byte."],
    [["burn", "no-such-build", "--dump", "x"], "no build of that id"],
    [["burn", headline, "--dump", "x", "--combination", "99"], "There is no combination 99"],
  ])("%j is wrong use", async (args, says) => {
    const { code, err } = await slotwright(args, { folder: freshFolder() });
    expect(code).toBe(2);
    expect(err).toContain(says);
  });
});

describe("a card's own ROM", () => {
  /** A ROM the scan of the time finds: signature, 16K in blocks of 512, and a last byte that brings the sum to 0. */
  const good = () => {
    const rom = stream(77, 16 * 1024);
    rom.set([0x55, 0xaa, 32]);
    rom[rom.length - 1] = 0;
    rom[rom.length - 1] = -rom.reduce((sum, b) => sum + b, 0) & 0xff;
    return rom;
  };
  const changed = (at: number, value: number) => {
    const rom = good();
    rom[at] = value;
    return rom;
  };
  const ask = async (rom: Uint8Array, card = "gannet-fixed-disk-controller", more: readonly string[] = []) => {
    const folder = freshFolder();
    writeFileSync(join(folder, "rom.bin"), rom);
    return slotwright(["burn", "--card-rom", `${card}=rom.bin`, ...more], { folder });
  };

  it("is right when signature, length and sum are", async () => {
    const { code, out } = await ask(good());
    expect(out).toMatch(
      /^rom\.bin: option ROM for Gannet fixed-disk controller: signature, length \(16K\) and sum are right\. What it does was not checked\.$/m,
    );
    expect(code).toBe(0);
  });

  it.each([
    ["the signature is gone", changed(0, 0x54), /does not begin with 55 AA/],
    ["its bytes are swapped", swapBytes(good()), /byte-swapped/],
    ["it declares no length", changed(2, 0), /declares no length/],
    ["the dump is cut short", good().subarray(0, 8192), /declares 16384 bytes, and the file has 8192/],
    ["one bit is wrong", changed(5000, good()[5000]! ^ 4), /add up to \d+ modulo 256/],
    [
      "it declares more than the card shows",
      (() => {
        const rom = new Uint8Array(32 * 1024);
        rom.set([0x55, 0xaa, 64]);
        rom[rom.length - 1] = -(0x55 + 0xaa + 64) & 0xff;
        return rom;
      })(),
      /declares 32K, and the card's window shows 16K/,
    ],
  ] as const)("is told of when %s", async (_, rom, says) => {
    const { code, out } = await ask(rom);
    expect(out).toMatch(/^rom\.bin: bad option ROM for Gannet fixed-disk controller\. /m);
    expect(out).toMatch(says);
    expect(code).toBe(1);
    const told = JSON.parse((await ask(rom, undefined, ["--json"])).out);
    expect(told.cardRoms).toMatchObject([{ card: "gannet-fixed-disk-controller", file: "rom.bin", holds: false }]);
  });

  it("is asked for only where the record names one, and never instead of a device to write", async () => {
    const none = await ask(good(), "tallow-bus-tracer");
    expect(none.code).toBe(2);
    expect(none.err).toContain("names no option ROM");
    const unknown = await ask(good(), "ganet-fixed-disk-controller");
    expect(unknown.err).toContain("Did you mean gannet-fixed-disk-controller?");
    const folder = freshFolder();
    writeFileSync(join(folder, "rom.bin"), good());
    const out = await slotwright(["burn", headline, "--card-rom", "gannet-fixed-disk-controller=rom.bin", "--out", "x"], { folder });
    expect(out.code).toBe(2);
    expect(existsSync(join(folder, "x"))).toBe(false);
  });

  it("is recognised when it was named as a dump of the board", async () => {
    const folder = freshFolder();
    writeFileSync(join(folder, "rom.bin"), good());
    const { code, out } = await slotwright(["burn", "--dump", "rom.bin"], { folder });
    expect(out).toMatch(/begins as the option ROM of a card does, .*its sum is right/);
    expect(code).toBe(1);
  });
});
