// Splitting, swapping, padding and banking against what SRecord and binutils make of the same inputs: always against
// their recorded checksums, and against the tools themselves where they are installed.
import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import {
  checksums,
  crc32,
  joinLanes,
  layOut,
  type MemoryFile,
  readIntelHex,
  readMemoryFile,
  readSRecords,
  sameBytes,
  swapBytes,
  takeLane,
  writeIntelHex,
  writeSRecords,
} from "../../../src/images/index.js";
import { inputs, outputs, stream } from "./published.js";

const bank = (index: number, version: string) => ({
  index,
  offset: index * 8192,
  size: 8192,
  version,
  repeats: 1,
  use: "mode" as const,
  modes: [],
});
const plan = {
  device: { family: "27C256", capacity: 32768, width: 8, sockets: [{ socket: "IC1", lane: "whole" as const }] },
  banks: [bank(0, "a"), bank(1, "b"), bank(3, "c")],
};
const images = new Map([
  ["a", inputs.a.make()],
  ["b", inputs.b.make()],
  ["c", inputs.c.make()],
]);

describe("recorded checksums", () => {
  it.each(Object.entries(inputs))("the input %s is made as it was", (_, input) => {
    expect(crc32(input.make())).toBe(input.crc32);
  });

  it("of the two halves and the swapped image", async () => {
    const whole = inputs.in1.make();
    expect(await checksums(takeLane(whole, "even"))).toMatchObject(outputs.even);
    expect(await checksums(takeLane(whole, "odd"))).toMatchObject(outputs.odd);
    expect(await checksums(swapBytes(whole))).toMatchObject(outputs.swapped);
    expect(joinLanes(takeLane(whole, "even"), takeLane(whole, "odd"))).toEqual(whole);
  });

  it("of an image padded into a larger bank, then split", () => {
    const padded = new Uint8Array(8192).fill(0xff);
    padded.set(inputs.in2.make());
    expect(crc32(padded)).toBe(outputs.padded.crc32);
    expect(crc32(takeLane(padded, "even"))).toBe(outputs.padded.even);
    expect(crc32(takeLane(padded, "odd"))).toBe(outputs.padded.odd);
  });

  it("of a device of four banks with one left empty", async () => {
    const layout = layOut(plan, images);
    expect(layout.kind).toBe("layout");
    if (layout.kind === "layout") expect(await checksums(layout.devices[0]!.bytes)).toMatchObject(outputs.device);
  });
});

const has = (tool: string) => spawnSync(tool, ["--version"], { stdio: "ignore" }).status === 0;
/** toEqual on 100,000 numbers takes seconds; this takes none. */
function expectRead(file: MemoryFile, bytes: Uint8Array, base = 0) {
  expect(file.kind === "read" ? file.base : file.problems).toBe(base);
  expect(file.kind === "read" && sameBytes(file.bytes, bytes)).toBe(true);
}
const expectSame = (a: Uint8Array, b: Uint8Array) => expect(sameBytes(a, b)).toBe(true);

const srecCat = has("srec_cat");
const objcopy = has("objcopy");
const missing = (there: boolean, tool: string) =>
  there ? "" : ` [skipped: ${tool} is not installed; the recorded checksums above stand in]`;

describe("the tools themselves", () => {
  let folder = "";
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), "slotwright-images-"));
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  const put = (name: string, content: Uint8Array | string) => writeFileSync(join(folder, name), content);
  const get = (name: string) => new Uint8Array(readFileSync(join(folder, name)));
  const run = (tool: string, ...args: string[]) => execFileSync(tool, args, { cwd: folder, stdio: "pipe" });

  it.skipIf(!srecCat)(`srec_cat splits, swaps and banks as we do${missing(srecCat, "srec_cat")}`, () => {
    put("in.bin", inputs.in1.make());
    run("srec_cat", "in.bin", "-binary", "-split", "2", "0", "-o", "even.bin", "-binary");
    run("srec_cat", "in.bin", "-binary", "-byte-swap", "-o", "swap.bin", "-binary");
    expect(get("even.bin")).toEqual(takeLane(inputs.in1.make(), "even"));
    expect(get("swap.bin")).toEqual(swapBytes(inputs.in1.make()));
    for (const [name, image] of images) put(`${name}.bin`, image);
    const parts = ["(", "a.bin", "-binary", "b.bin", "-binary", "-offset", "0x2000", "c.bin", "-binary", "-offset", "0x6000", ")"];
    run("srec_cat", ...parts, "-fill", "0xFF", "0", "0x8000", "-o", "dev.bin", "-binary");
    const layout = layOut(plan, images);
    expect(layout.kind === "layout" && get("dev.bin")).toEqual(layout.kind === "layout" && layout.devices[0]!.bytes);
  });

  it.skipIf(!objcopy)(`objcopy splits and swaps as we do${missing(objcopy, "objcopy")}`, () => {
    put("in.bin", inputs.in1.make());
    run("objcopy", "-I", "binary", "-O", "binary", "-b", "1", "-i", "2", "in.bin", "odd.bin");
    run("objcopy", "-I", "binary", "-O", "binary", "--reverse-bytes=2", "in.bin", "swap.bin");
    expect(get("odd.bin")).toEqual(takeLane(inputs.in1.make(), "odd"));
    expect(get("swap.bin")).toEqual(swapBytes(inputs.in1.make()));
  });

  const lengths = [1, 15, 16, 17, 255, 0xffff, 0x10000, 0x10001, 0x28003];

  it.skipIf(!srecCat)(`srec_cat reads what we write, and we read what it writes${missing(srecCat, "srec_cat")}`, () => {
    for (const length of lengths) {
      const image = stream(length, length);
      put("in.bin", image);
      put("ours.hex", writeIntelHex(image));
      put("ours.s19", writeSRecords(image, 0, "IC7"));
      for (const [name, kind] of [
        ["ours.hex", "-intel"],
        ["ours.s19", "-motorola"],
      ] as const) {
        run("srec_cat", name, kind, "-o", "back.bin", "-binary");
        expectSame(get("back.bin"), image);
      }
      for (const [name, kind] of [
        ["theirs.hex", "-intel"],
        ["theirs.s19", "-motorola"],
      ] as const) {
        run("srec_cat", "in.bin", "-binary", "-o", name, kind);
        expectRead(readMemoryFile(get(name)), image);
      }
    }
  });

  it.skipIf(!srecCat)(`srec_cat's segmented Intel HEX and its 32-bit S-records are read${missing(srecCat, "srec_cat")}`, () => {
    const image = stream(77, 0x18000);
    put("in.bin", image);
    run("srec_cat", "in.bin", "-binary", "-o", "seg.hex", "-intel", "--address-length=3");
    expect(readFileSync(join(folder, "seg.hex"), "latin1")).toMatch(/^:02000002/m);
    expectRead(readMemoryFile(get("seg.hex")), image);
    run("srec_cat", "in.bin", "-binary", "-offset", "0x80000000", "-o", "far.s37", "-motorola", "--address-length=4");
    expectRead(readMemoryFile(get("far.s37")), image, 0x80000000);
  });

  it.skipIf(!objcopy)(`objcopy reads what we write, and we read what it writes${missing(objcopy, "objcopy")}`, () => {
    for (const length of lengths) {
      const image = stream(length, length);
      put("in.bin", image);
      put("ours.hex", writeIntelHex(image));
      put("ours.s19", writeSRecords(image));
      run("objcopy", "-I", "ihex", "-O", "binary", "ours.hex", "back.bin");
      expectSame(get("back.bin"), image);
      run("objcopy", "-I", "srec", "-O", "binary", "ours.s19", "back.bin");
      expectSame(get("back.bin"), image);
      run("objcopy", "-I", "binary", "-O", "ihex", "in.bin", "theirs.hex");
      expectRead(readIntelHex(readFileSync(join(folder, "theirs.hex"), "latin1")), image);
      run("objcopy", "-I", "binary", "-O", "srec", "in.bin", "theirs.s19");
      expectRead(readSRecords(readFileSync(join(folder, "theirs.s19"), "latin1")), image);
    }
  });
});
