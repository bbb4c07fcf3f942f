// The demo club as a whole: every class of conflict has its example, most cards work on most boards,
// and the firmware images are those of the recipe in their record.
import { createHash } from "node:crypto";
import { describe, expect, it } from "vitest";
import { plan } from "../../src/planning/index.js";
import { bytes, conflictClasses, known } from "../../src/records/index.js";
import { demo } from "../support/demo.js";

const catalogue = demo();

describe("the catalogue", () => {
  it("has the size of a real club's", () => {
    expect(catalogue.cards.size).toBeGreaterThanOrEqual(44);
    expect(catalogue.conflicts.size).toBeGreaterThanOrEqual(64);
    expect([...catalogue.builds.values()].filter((b) => b.result).length).toBeGreaterThanOrEqual(40);
  });

  it("has an example of every class of conflict, and of every status and effect", () => {
    const all = [...catalogue.conflicts.values()];
    expect(conflictClasses.filter((c) => !all.some((x) => x.class === c && x.status !== "disproved"))).toEqual([]);
    expect(new Set(all.map((x) => x.status))).toEqual(new Set(["confirmed", "suspected", "disproved"]));
    expect(new Set(all.map((x) => x.effect))).toEqual(new Set(["blocks", "degrades", "cosmetic"]));
  });

  it("has cards of which most work by themselves on each board", () => {
    for (const board of catalogue.boards.keys()) {
      const fine = [...catalogue.cards.keys()].filter((card) => {
        const answer = plan(catalogue, { id: "one", name: "One", board, cards: [{ card }] }, { brief: true, most: 1 });
        return answer.kind === "answer" && answer.verdict !== "ruled-out" && answer.verdict !== "unknown";
      });
      expect(fine.length / catalogue.cards.size, board).toBeGreaterThan(0.6);
    }
  });
});

/** The stand-in image of a version, made as the notes of its record say. */
function standIn(seed: number, length: number): Buffer {
  const image = Buffer.alloc(length);
  let x = seed;
  for (let at = 0; at < length; at += 4) {
    x ^= x << 13;
    x ^= x >>> 17;
    x ^= x << 5;
    image.writeInt32LE(x, at);
  }
  return image;
}

/** CRC-32 bit by bit, as ISO 3309 defines it: slow, obvious, and not the one the project uses. */
function crc(data: Buffer): string {
  let sum = ~0;
  for (const byte of data) {
    sum ^= byte;
    for (let bit = 0; bit < 8; bit++) sum = (sum >>> 1) ^ (sum & 1 ? 0xedb88320 : 0);
  }
  return (~sum >>> 0).toString(16).padStart(8, "0");
}

const half = (b: Buffer, odd: number) => b.filter((_, i) => i % 2 === odd);
const circulating: Record<string, (b: Buffer) => Buffer> = {
  "held-twice": (b) => Buffer.concat([b, b]),
  "byte-swapped": (b) => Buffer.from(b).swap16(),
  "even-half": (b) => Buffer.from(half(b, 0)),
  "odd-half": (b) => Buffer.from(half(b, 1)),
  overdump: (b) => Buffer.concat([b, Buffer.alloc(b.length, 0xff)]),
  "bad-dump": (b) => Buffer.from(b).fill(0xff, 0, 16),
  "word-swapped": (b) => Buffer.from(b).swap32().swap16(),
};

describe("firmware images", () => {
  const seeds: [string, number][] = [
    ["skerry-monitor", 7],
    ["harbourlight-monitor", 507],
  ];
  for (const [family, first] of seeds)
    for (const [i, { id, image, circulating: files }] of (catalogue.firmware.get(family)?.versions ?? []).entries()) {
      const length = known(image.size);
      if (known(image.crc32) === "unknown" || length === "unknown") continue;
      const made = standIn(1000 * i + first, bytes(length));
      it(`${family} ${id} has the checksums of its recipe`, () => {
        expect(crc(made)).toBe(known(image.crc32));
        expect(createHash("sha1").update(made).digest("hex")).toBe(known(image.sha1));
        expect(createHash("sha256").update(made).digest("hex")).toBe(known(image.sha256));
      });
      for (const file of files ?? [])
        it(`${family} ${id} circulates ${file.as}`, () => {
          const passed = circulating[file.as]?.(made);
          expect(passed?.length).toBe(bytes(file.size));
          expect(passed && crc(passed)).toBe(file.crc32);
        });
    }
  it("are there for both families", () => expect(seeds.every(([family]) => catalogue.firmware.has(family))).toBe(true));
});
