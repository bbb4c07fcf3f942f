import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  formatOf,
  joinLanes,
  readIntelHex,
  readMemoryFile,
  readSRecords,
  sameBytes,
  swapBytes,
  swapWords,
  takeLane,
  timesHeld,
  writeIntelHex,
  writeMemoryFile,
  writeSRecords,
} from "../../src/images/index.js";
import { stream } from "./world.js";

const someBytes = fc.uint8Array({ minLength: 1, maxLength: 300 });
const someBase = fc.oneof(
  fc.integer({ min: 0, max: 0xffffff }),
  fc.integer({ min: 0, max: 0xffff }),
  fc.constantFrom(0xfff8, 0xffff8, 0xfffffff0),
);

describe("what is written is read again", () => {
  it("as Intel HEX, at any address", () => {
    fc.assert(
      fc.property(someBytes, someBase, (bytes, base) => {
        const file = readIntelHex(writeIntelHex(bytes, base));
        expect(file.kind === "read" ? [file.base, [...file.bytes]] : file.problems).toEqual([base, [...bytes]]);
      }),
    );
  });

  it("as S-records, at any address", () => {
    fc.assert(
      fc.property(someBytes, someBase, (bytes, base) => {
        const file = readSRecords(writeSRecords(bytes, base, "IC7 R4A"));
        expect(file.kind === "read" ? [file.base, file.header, [...file.bytes]] : file.problems).toEqual([base, "IC7 R4A", [...bytes]]);
      }),
    );
  });

  it("in each format the file itself tells which it is", () => {
    for (const format of ["bin", "hex", "srec"] as const) {
      const file = writeMemoryFile(stream(3, 70000), format, "x");
      expect(formatOf(file)).toBe(format);
      const read = readMemoryFile(file);
      expect(read.kind === "read" && sameBytes(read.bytes, stream(3, 70000))).toBe(true);
    }
  });
});

describe("a damaged file is refused with its line", () => {
  const good = writeIntelHex(stream(1, 64)).trimEnd().split("\n");
  const records = writeSRecords(stream(1, 64)).trimEnd().split("\n");
  const broken = (lines: readonly string[], at: number, line: string) => lines.map((l, i) => (i === at ? line : l)).join("\n");
  const cases: readonly [string, "hex" | "srec", string, number, string, string][] = [
    ["a check byte", "hex", broken(good, 2, good[2]!.replace(/..$/, "00")), 3, "The check byte is 00.", "for the bytes as they stand"],
    ["a digit", "hex", broken(good, 1, good[1]!.replace(/.$/, "G")), 2, "not a pair of hex digits", "0-9 and A-F"],
    ["a lost character", "hex", broken(good, 1, good[1]!.slice(0, -2)), 2, "says 16 data bytes and holds 15", "16 data bytes"],
    ["no colon", "hex", broken(good, 0, "hello"), 1, "does not begin with a colon", "begins with :"],
    ["an unknown type", "hex", `:00000009F7\n${good.join("\n")}`, 1, "Record type 09", "type 00 to 05"],
    ["a lost end", "hex", good.slice(0, -1).join("\n"), 0, "no end record", ":00000001FF"],
    ["something after the end", "hex", `${good.join("\n")}\n${good[0]}`, 6, "after the end record of line 5", "nothing after"],
    ["an address given twice", "hex", `:0100000001FE\n:0100000002FD\n:00000001FF`, 2, "0x0000 is given twice", "each address once"],
    ["far apart", "hex", `:0100000001FE\n:0200000480007A\n:0100000001FE\n:00000001FF`, 3, "bytes apart", "at most"],
    ["no data", "hex", ":00000001FF", 0, "holds no data", "at least one data record"],
    [
      "a check byte",
      "srec",
      broken(records, 2, records[2]!.replace(/..$/, "00")),
      3,
      "The check byte is 00.",
      "for the bytes as they stand",
    ],
    ["a lost line", "srec", records.filter((_, i) => i !== 2).join("\n"), 5, "says 4 data records; 3 came", "3"],
    ["a lost end", "srec", records.slice(0, -2).join("\n"), 0, "no end record", "S5 to S9"],
    ["an unused type", "srec", "S4030000FC", 1, "S4 is not in use", "S0 to S3"],
    ["a count too small", "srec", "S1020000", 1, "counts 2 bytes", "at least 3"],
  ];
  it.each(cases)("%s (%s)", (_, format, text, line, says, expected) => {
    const file = readMemoryFile(
      Uint8Array.from(text, (c) => c.charCodeAt(0)),
      format,
    );
    expect(file.kind).toBe("refused");
    if (file.kind !== "refused") return;
    expect(file.problems[0]!.line).toBe(line);
    expect(file.problems[0]!.says).toContain(says);
    expect(file.problems[0]!.expected).toContain(expected);
  });

  it("and a gap between records is told, holding FF", () => {
    const file = readIntelHex(":0100000001FE\n:0100040002F9\n:00000001FF");
    expect(file).toMatchObject({ kind: "read", gaps: [{ from: 1, to: 4 }], bytes: Uint8Array.of(1, 255, 255, 255, 2) });
  });

  it("and an offset past the end of a segment wraps to its start", () => {
    const file = readIntelHex(":020000021000EC\n:02FFFF000102FD\n:00000001FF");
    expect(file.kind === "read" && [file.base, file.bytes[0], file.bytes[0xffff]]).toEqual([0x10000, 2, 1]);
  });
});

describe("rearranging", () => {
  it("undoes itself", () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 64 }), (bytes) => {
        expect(swapBytes(swapBytes(bytes))).toEqual(bytes);
        expect(swapWords(swapWords(bytes))).toEqual(bytes);
        if (bytes.length % 2 === 0) expect(joinLanes(takeLane(bytes, "even"), takeLane(bytes, "odd"))).toEqual(bytes);
      }),
    );
  });

  it("counts how often a run is held", () => {
    const run = stream(1, 64);
    expect(timesHeld(run)).toBe(1);
    expect(timesHeld(Uint8Array.from([...run, ...run]))).toBe(2);
    expect(timesHeld(Uint8Array.from([...run, ...run, ...run, ...run]))).toBe(4);
    expect(timesHeld(Uint8Array.from([...run, ...run.subarray(0, 63), 0]))).toBe(1);
  });
});
