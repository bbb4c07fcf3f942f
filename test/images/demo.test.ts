// The demo club's stand-in images, made by the recipe the records give: each is known by its checksums, in every shape that goes round.
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import {
  crc32,
  identify,
  identifyTogether,
  joinLanes,
  repeatTo,
  sameBytes,
  swapBytes,
  swapWords,
  takeLane,
} from "../../src/images/index.js";
import { bytes, type Firmware, known, readOne } from "../../src/records/index.js";
import { stream } from "./world.js";

const folder = fileURLToPath(new URL("../../data/firmware", import.meta.url));
const firmware = readdirSync(folder)
  .filter((f) => f.endsWith(".yaml"))
  .map((f) => readOne("firmware", readFileSync(join(folder, f)), f).record as Firmware);

/** What each record's recipe adds to 1000 times the place in its list. */
const starts: Readonly<Record<string, number>> = { "skerry-monitor": 7, "harbourlight-monitor": 507 };

/** Images by the recipe; versions whose size is not recorded have none. */
const made = firmware.flatMap((family) =>
  family.versions.flatMap((version, place) => {
    const size = known(version.image.size);
    return size === "unknown" ? [] : [{ family, version, image: stream(1000 * place + starts[family.id]!, bytes(size)) }];
  }),
);
const recorded = made.filter(({ version }) => known(version.image.crc32) !== "unknown");

describe("the demo club's firmware", () => {
  it("is made by the recipe: every recorded checksum is that of the bytes", () => {
    expect(firmware.map((f) => f.id).sort()).toEqual(Object.keys(starts).sort());
    expect(recorded.length).toBeGreaterThanOrEqual(8);
    for (const { version, image } of recorded) expect(crc32(image), version.id).toBe(known(version.image.crc32));
  });

  it.each(recorded.map((m) => ({ name: `${m.family.id} ${m.version.id}`, ...m })))(
    "$name is known whole, by its strongest checksum",
    async ({ family, version, image }) => {
      const found = await identify(image, firmware);
      expect(found.matches[0]).toMatchObject({ family: family.id, version: version.id, order: "as-is", lies: { kind: "whole" } });
      const strongest = known(version.image.sha256) !== "unknown" ? "sha256" : known(version.image.sha1) !== "unknown" ? "sha1" : "crc32";
      expect(found.matches[0]!.by).toBe(strongest);
    },
  );

  const shapes = recorded.flatMap(({ family, version, image }) =>
    (version.circulating ?? []).map((file) => {
      const size = bytes(file.size);
      const shape = {
        "held-twice": () => repeatTo(image, size),
        "byte-swapped": () => swapBytes(image),
        "word-swapped": () => swapWords(image),
        "even-half": () => takeLane(image, "even"),
        "odd-half": () => takeLane(image, "odd"),
        overdump: () => {
          const out = new Uint8Array(size).fill(0xff);
          out.set(image);
          return out;
        },
        "bad-dump": () => undefined,
      }[file.as]();
      return { name: `${family.id} ${version.id} ${file.as}`, file, shape, version, image };
    }),
  );

  it("has every kind of file in circulation somewhere", () => {
    expect(new Set(shapes.map((s) => s.file.as))).toEqual(
      new Set(["held-twice", "byte-swapped", "word-swapped", "even-half", "odd-half", "overdump", "bad-dump"]),
    );
  });

  it.each(shapes.filter((s) => s.shape !== undefined))(
    "$name has the recorded checksum and is known for what it is",
    async ({ file, shape, version, image }) => {
      expect(crc32(shape!)).toBe(file.crc32);
      const [match] = (await identify(shape!, firmware)).matches;
      expect(match).toMatchObject({ version: version.id });
      if (file.as.endsWith("half")) expect(match!.lies.kind).toBe("half");
      else expect(sameBytes(match!.image!, image)).toBe(true);
    },
  );

  it("gives the image back from its two halves", async () => {
    const halves = shapes
      .filter((s) => s.file.as.endsWith("half") && s.version.id === "R5.1")
      .map((s) => ({ name: s.file.as, bytes: s.shape! }));
    expect(halves.map((h) => h.name)).toEqual(["even-half", "odd-half"]);
    const [first] = await identifyTogether([...halves].reverse(), firmware);
    expect(first!.matches[0]).toMatchObject({ version: "R5.1", lies: { kind: "two-halves", even: "even-half", odd: "odd-half" } });
    expect(sameBytes(first!.matches[0]!.image!, joinLanes(halves[0]!.bytes, halves[1]!.bytes))).toBe(true);
  });
});
