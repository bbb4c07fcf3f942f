// A device in a socket wired for another: what lifts, what floats, which part of the device is seen. Derived by hand from the
// published pin lists (JEDEC 28- and 32-pin layouts); no source prints the outcomes.
import { describe, expect, it } from "vitest";
import type { LineFit } from "../../../src/switching/contacts/device.js";
import { fitOf, socketFor, unfitText } from "./devices.js";

/** First byte seen when nothing but resistors to +5 V is added. */
function seen(lines: readonly LineFit[], share: number): number {
  return lines.reduce((offset, l) => offset + (l.rest === "low" ? 0 : 2 ** l.bit * share), 0);
}

describe("27C040 in a socket wired for 27C010", () => {
  const socket = socketFor("27C010", 8, 0x20000, [
    { pin: 30, carries: "open" },
    { pin: 31, carries: "high" },
  ]);
  const fit = fitOf("27C040", socket);
  const [a17, a18] = fit.lines as [LineFit, LineFit];
  it("finds A17 floating on pin 30 and A18 held high on pin 31", () => {
    expect([a17.pin, a17.at[0]!.carries, a17.rest]).toEqual([30, "open", undefined]);
    expect([a18.pin, a18.at[0]!.carries, a18.rest]).toEqual([31, "high", "high"]);
  });
  it("must lift pin 31 to switch A18, and need not lift pin 30", () => expect([a17.liftsToSwitch, a18.liftsToSwitch]).toEqual([0, 1]));
  it("must tie pin 30 when A17 is not switched", () => expect([a17.worksToFix, a18.worksToFix]).toEqual([1, 0]));
  it("then shows 0x60000 to 0x7FFFF, and 0x40000 with pin 30 low", () => {
    expect(seen(fit.lines, 0x20000)).toBe(0x60000);
    expect(seen([{ ...a17, rest: "low" }, a18], 0x20000)).toBe(0x40000);
  });
});

it("27C512 in a socket wired for 27C256 shows its upper half: pin 1 is VPP there, held at +5 V, and A15 here", () => {
  const fit = fitOf("27C512", socketFor("27C256", 8, 0x8000));
  expect(fit.lines.map((l) => [l.line, l.pin, l.rest])).toEqual([["A15", 1, "high"]]);
  expect(seen(fit.lines, 0x8000)).toBe(0x8000);
});

it("27C256 in a socket wired for 27C512 needs pin 1 (VPP) lifted and wired to +5 V", () => {
  const fit = fitOf("27C256", socketFor("27C512", 8, 0x8000));
  expect(fit.pinWork.map((w) => [w.pin, w.signal, w.does])).toEqual([[1, "VPP", "lift-and-wire"]]);
  expect(fit.pinWork[0]!.to).toContain("+5 V");
});

describe("28 pins in a socket for 32", () => {
  it("stand two pins down: VCC (28) meets socket pin 30, which is not connected for a 27C010", () => {
    const fit = fitOf("27C256", socketFor("27C010", 8, 0x8000));
    expect(fit.pinWork.find((w) => w.signal === "VCC")).toMatchObject({ pin: 28, does: "lift-and-wire" });
    expect(fit.pinWork.find((w) => w.signal === "VCC")!.to).toContain("pin 32");
  });
  it("need no work on VCC where socket pin 30 carries +5 V", () => {
    const fit = fitOf("27C256", socketFor("27C010", 8, 0x8000, [{ pin: 30, carries: "supply" }]));
    expect(fit.pinWork.some((w) => w.signal === "VCC")).toBe(false);
  });
});

it("28C256 in a socket wired for 27C256 crosses A14 and /WE", () => {
  const fit = fitOf("28C256", socketFor("27C256", 8, 0x8000));
  expect(fit.pinWork.map((w) => [w.pin, w.signal])).toEqual([
    [1, "A14"],
    [27, "/WE"],
  ]);
});

it("a 27C160 hangs over a socket for 27C400 by pins 1 and 42, its bank lines A18 and A19", () => {
  const fit = fitOf("27C160", socketFor("27C400", 16, 0x80000));
  expect(fit.lines.map((l) => [l.line, l.pin, l.at[0]!.carries])).toEqual([
    ["A18", 1, "overhangs"],
    ["A19", 42, "overhangs"],
  ]);
  expect(fit.pinWork).toEqual([]);
});

it("a word-wide 27C4096 does not serve a byte-wide socket, whatever one page says", () => {
  expect(unfitText("27C4096", socketFor("27C040", 8, 0x10000))).toContain("8-bit");
});
