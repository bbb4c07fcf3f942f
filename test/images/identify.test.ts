import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import {
  identify,
  identifyTogether,
  looksLike,
  repeatTo,
  sameBytes,
  swapBytes,
  swapWords,
  takeLane,
  writeIntelHex,
} from "../../src/images/index.js";
import type { Firmware } from "../../src/records/index.js";
import { damaged, family, one, stream, three, two } from "./world.js";

let firmware: Firmware[] = [];
beforeAll(async () => {
  firmware = [await family()];
});

function concat(...parts: Uint8Array[]): Uint8Array {
  return Uint8Array.from(parts.flatMap((p) => [...p]));
}

describe("a dump that was read wrongly", () => {
  const exchange = (value: number, a: number, b: number) => {
    const differ = ((value >> a) ^ (value >> b)) & 1;
    return value ^ (differ << a) ^ (differ << b);
  };
  const cases: readonly [string, Uint8Array, object, string][] = [
    ["inverted", two.map((b) => 255 - b), { how: "inverted", version: "V2" }, "With every bit inverted it is"],
    [
      "with its halves exchanged",
      concat(two.slice(32768), two.slice(0, 32768)),
      { how: "halves-exchanged", version: "V2" },
      "With its two halves exchanged it is",
    ],
    ["over crossed data lines", one.map((b) => exchange(b, 2, 7)), { how: "data-lines", lines: [2, 7] }, "With D2 and D7 exchanged it is"],
    [
      // V2 is an image of 16 bits: D3 and D12 lie in the low and the high byte of a word.
      "over crossed data lines of 16 bits",
      two.map((_, at) => {
        const word = exchange((two[at & ~1] ?? 0) | ((two[at | 1] ?? 0) << 8), 3, 12);
        return at % 2 === 0 ? word & 255 : word >> 8;
      }),
      { how: "data-lines", version: "V2", lines: [3, 12] },
      "With D3 and D12 exchanged it is",
    ],
    [
      "over crossed address lines, twice over",
      repeatTo(
        one.map((_, at) => one[exchange(at, 3, 14)] ?? 0),
        65536,
      ),
      { how: "address-lines", version: "V1", lines: [3, 14] },
      "With A3 and A14 exchanged it is",
    ],
  ];

  it.each(cases)("%s, is told and not taken", async (_, bytes, wanted, says) => {
    const found = await identify(bytes, firmware);
    expect(found.matches).toEqual([]);
    expect(found.misread).toMatchObject(wanted);
    expect(found.says).toContain(says);
    expect(found.says).toContain("Read the device again.");
  });

  it("bank by bank, where the device holds several", async () => {
    const crossed = (bytes: Uint8Array) => bytes.map((_, at) => bytes[exchange(at, 4, 11)] ?? 0);
    const found = await identify(concat(stream(41, 65536), crossed(two), crossed(three)), firmware);
    expect(found.misread).toMatchObject({ version: "V2", how: "address-lines" });
    expect(found.says).toContain("From 0x10000 on: with A");
    expect(found.matches).toEqual([]);
  });

  it("in two ways at once, or by another image, is not known", async () => {
    for (const bytes of [two.map((b) => 255 - exchange(b, 0, 1)), stream(41, 65536)])
      expect((await identify(bytes, firmware)).misread).toBeUndefined();
  });
});

describe("a dump of a device with several banks", () => {
  it("names every bank that is known, in order", async () => {
    const { says } = await identify(concat(stream(5, 65536), two, repeatTo(one, 65536), three), firmware);
    expect(says.match(/From 0x\w+ on it holds [^.]+\./g)).toEqual(
      [
        ["0x10000", "V2"],
        ["0x20000", "V1"],
        ["0x28000", "V1"],
        ["0x30000", "V3"],
      ].map(([at, version]) => `From ${at} on it holds ${firmware[0]?.name} ${version}.`),
    );
  });
});

describe("a dump is known", () => {
  const cases: readonly [string, () => Uint8Array, object, Uint8Array][] = [
    ["whole", () => one, { version: "V1", order: "as-is", lies: { kind: "whole" }, by: "sha256" }, one],
    ["whole, by CRC-32 alone when the record gives no more", () => two, { version: "V2", by: "crc32" }, two],
    ["held twice", () => repeatTo(one, 65536), { version: "V1", lies: { kind: "held", times: 2 } }, one],
    [
      "held eight times, bytes exchanged",
      () => swapBytes(repeatTo(one, 262144)),
      { order: "byte-swapped", lies: { kind: "held", times: 8 } },
      one,
    ],
    ["byte-swapped", () => swapBytes(three), { version: "V3", order: "byte-swapped", lies: { kind: "whole" } }, three],
    ["word-swapped", () => swapWords(three), { version: "V3", order: "word-swapped" }, three],
    ["both", () => swapWords(swapBytes(three)), { version: "V3", order: "byte-and-word-swapped" }, three],
    [
      "overdumped into FF",
      () => concat(one, new Uint8Array(32768).fill(0xff)),
      { version: "V1", lies: { kind: "inside", offset: 0 } },
      one,
    ],
    ["at the end of a larger dump", () => concat(stream(5, 32768), one), { version: "V1", lies: { kind: "inside", offset: 32768 } }, one],
  ];

  it.each(cases)("%s", async (_, make, wanted, image) => {
    const found = await identify(make(), firmware);
    expect(found.matches[0]).toMatchObject(wanted);
    expect(sameBytes(found.matches[0]!.image!, image)).toBe(true);
    expect(found.looks).toEqual([]);
  });

  it("in any order, repeated any number of times, at any place of a larger dump", async () => {
    const orders = {
      "as-is": (b: Uint8Array) => b,
      "byte-swapped": swapBytes,
      "word-swapped": swapWords,
      "byte-and-word-swapped": (b: Uint8Array) => swapBytes(swapWords(b)),
    };
    const known = { V1: one, V2: two, V3: three };
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(...(Object.keys(known) as (keyof typeof known)[])),
        fc.constantFrom(...(Object.keys(orders) as (keyof typeof orders)[])),
        fc.constantFrom(1, 2, 4),
        fc.integer({ min: 0, max: 3 }),
        async (version, order, times, before) => {
          const image = known[version];
          const held = repeatTo(image, image.length * times);
          const dump = orders[order](before === 0 ? held : concat(new Uint8Array(before * image.length).fill(0xff), held));
          const { matches } = await identify(dump, firmware);
          const match = matches.find((m) => m.version === version && m.order === order);
          expect(match?.lies.kind).toBe(before > 0 ? "inside" : times > 1 ? "held" : "whole");
          expect(sameBytes(match!.image!, image)).toBe(true);
          expect(matches.every((m) => m.version === version && m.order === order)).toBe(true);
        },
      ),
      { numRuns: 25 },
    );
  });

  it("bank by bank, when a switched device is read", async () => {
    const found = await identify(concat(two, three, repeatTo(one, 65536), two), firmware);
    expect(found.matches.map((m) => [m.version, m.lies])).toEqual(
      expect.arrayContaining([
        ["V2", { kind: "inside", offset: 0 }],
        ["V3", { kind: "inside", offset: 65536 }],
        ["V1", { kind: "inside", offset: 131072 }],
        ["V2", { kind: "inside", offset: 196608 }],
      ]),
    );
  });

  it("as half of an image, by the records' own list, and says that the other half is needed", async () => {
    const found = await identify(takeLane(three, "even"), firmware);
    expect(found.matches[0]).toMatchObject({ version: "V3", lies: { kind: "half", lane: "even" } });
    expect(found.matches[0]!.image).toBeUndefined();
    expect(found.says).toContain("The other half is needed too.");
  });

  it("as the two halves of an image, whichever is named first", async () => {
    const halves = [
      { name: "lower.bin", bytes: takeLane(two, "odd") },
      { name: "upper.bin", bytes: takeLane(two, "even") },
    ];
    for (const order of [halves, [...halves].reverse()]) {
      const found = await identifyTogether(order, firmware);
      for (const f of found) {
        expect(f.matches[0]).toMatchObject({ version: "V2", lies: { kind: "two-halves", even: "upper.bin", odd: "lower.bin" } });
        expect(sameBytes(f.matches[0]!.image!, two)).toBe(true);
      }
    }
  });

  it("as the two parts of an image, from sockets in a row", async () => {
    const parts = [
      { name: "high.bin", bytes: two.subarray(two.length / 2) },
      { name: "low.bin", bytes: two.subarray(0, two.length / 2) },
    ];
    const [found] = await identifyTogether(parts, firmware);
    expect(found!.matches[0]).toMatchObject({ version: "V2", lies: { kind: "two-halves", even: "low.bin", odd: "high.bin", by: "parts" } });
    expect(found!.says).toBe("low.bin and, after it, high.bin together are Test Monitor V2.");
    expect(sameBytes(found!.matches[0]!.image!, two)).toBe(true);
    const twice = await identifyTogether(
      [
        { name: "a", bytes: one },
        { name: "b", bytes: one },
      ],
      firmware,
    );
    expect(twice.flatMap((f) => f.matches.map((m) => m.lies.kind))).toEqual(["whole", "whole"]);
  });

  it("as a damaged file that goes round, and gives no image of it", async () => {
    const found = await identify(damaged, firmware);
    expect(found.matches).toHaveLength(1);
    expect(found.matches[0]).toMatchObject({ version: "V3", lies: { kind: "bad-dump" } });
    expect(found.matches[0]!.image).toBeUndefined();
    expect(found.says).toContain("Its end was not read.");
  });
});

describe("a dump is not taken for an image", () => {
  it("with one bit turned anywhere", async () => {
    for (const [at, bit] of [
      [0, 1],
      [16384, 128],
      [32767, 16],
    ] as const) {
      const bytes = one.slice();
      bytes[at]! ^= bit;
      const found = await identify(bytes, firmware);
      expect(found.matches).toEqual([]);
      expect(found.says).toContain("A known image has this size (32K), but other checksums.");
    }
  });

  it("when the CRC-32 agrees and the SHA does not", async () => {
    const forged = structuredClone(firmware);
    Object.assign(forged[0]!.versions[0]!.image, { sha256: "0".repeat(64) });
    expect((await identify(one, forged)).matches).toEqual([]);
  });

  it("by its size, when the record has no checksum; it says so", async () => {
    const found = await identify(stream(9, 131072), firmware);
    expect(found.matches).toEqual([]);
    expect(found.looks.join(" ")).toContain("Test Monitor V4, whose checksums are not recorded");
  });
});

describe("what an unknown dump looks like", () => {
  const text = (says: string) => Uint8Array.from(says, (c) => c.charCodeAt(0));
  const withBit = (bit: number) => stream(3, 4096).map((b) => b | (1 << bit));
  const withoutLine = (line: number) => {
    const source = stream(4, 4096);
    return source.map((_, i) => source[i & ~(1 << line)]!);
  };
  const cases: readonly [string, Uint8Array, string][] = [
    ["blank", new Uint8Array(65536).fill(0xff), "Every byte is FF: an erased device"],
    ["all zero", new Uint8Array(65536), "Every byte is 00: a device without supply"],
    ["empty", new Uint8Array(), "It is empty."],
    ["odd", stream(1, 4097), "is odd"],
    ["cut short", two.subarray(0, 65000), "536 bytes short of a known image of 64K"],
    ["with a header", concat(stream(1, 512), two), "512 bytes longer than a known image of 64K"],
    ["half", stream(11, 16384), "half as long as a known image of 32K"],
    ["repeated", repeatTo(stream(1, 4096), 16384), "4 times over"],
    ["a text", text("Dear reader, this is no image.\n".repeat(40)), "plain text"],
    ["a HEX file", text(writeIntelHex(one)), "Intel HEX"],
    ["an archive", concat(Uint8Array.of(0x50, 0x4b, 3, 4), stream(1, 1020)), "ZIP archive"],
    ["a data bit without contact", withBit(5), "Data bit D5 is always high"],
    ["an address line without contact", withoutLine(3), "Address line A3 makes no difference"],
    ["one half missing", stream(6, 4096).map((b, i) => (i % 2 === 1 ? 0xff : b)), "Every odd byte is FF"],
    ["padded", concat(stream(8, 4096), new Uint8Array(4096).fill(0xff)), "The last 4096 bytes, from 0x1000 on, are all FF"],
    ["nothing odd", stream(12, 4096), "Nothing about it is odd"],
  ];
  it.each(cases)("%s", (_, bytes, says) => {
    expect(looksLike(bytes, [32768, 65536]).join(" ")).toContain(says);
  });
});
