// What is refused, why, and the way out that is offered.
import { describe, expect, it } from "vitest";
import type { Part } from "../../src/records/index.js";
import { planWiring, type WiringOptions } from "../../src/wiring/index.js";
import {
  cable,
  combination,
  grounding,
  header,
  m27c010,
  m27c020,
  m27c040,
  memory,
  pair,
  resistor,
  rotary,
  socket32,
  world,
} from "./support/world.js";

const parts: readonly Part[] = [m27c010, m27c020, m27c040, rotary(4, 3), rotary(3, 4), rotary(2, 2, "toggle"), resistor, cable(16)];
const modes = [
  { firmware: "R4", on: ["tallow"] },
  { firmware: "R5", on: ["gannet"] },
  { firmware: "R6", on: ["gannet", "tallow"] },
];
const cards = { tallow: pair(true), gannet: pair(false) };
const versions = { R4: 0x8000, R5: 0x10000, R6: 0x10000 };

function refusal(
  input: Partial<Parameters<typeof world>[0]>,
  options: WiringOptions = {},
  asked = combination(modes, ["tallow", "gannet"]),
) {
  const wiring = planWiring(world({ parts, cards, versions, ...input }), asked, options);
  if (wiring.kind !== "refused") throw new Error(`not refused: ${wiring.kind}`);
  return { code: wiring.reasons[0]!.code, says: wiring.says, ways: wiring.waysOut };
}

describe("refused", () => {
  it("a connector with too few contacts, with the smallest that does", () => {
    const all = [...parts, ...header(6), ...header(10), ...header(16)];
    const { code, says, ways } = refusal({ parts: all }, { switch: { connector: "header-6-plug" } });
    expect([code, says]).toEqual(["connector-unfit", "Header 6 plug has 6 contacts, 7 are needed."]);
    expect(ways).toContainEqual({ says: "Use Header 10 plug instead.", part: "header-10-plug" });
  });

  it("a cable with too few conductors", () => {
    const { code, ways } = refusal({ parts: [...parts, cable(4), cable(8)] }, { switch: { cable: "cable-4" } });
    expect(code).toBe("cable-unfit");
    expect(ways).toContainEqual({ says: "Use Cable 8 instead.", part: "cable-8" });
  });

  it("a switch with too few positions, naming one that does", () => {
    const { code, says, ways } = refusal({}, { switch: { switch: "toggle-2x2" } });
    expect(code).toBe("switch-unfit");
    expect(says).toContain("2 positions for 3 modes");
    expect(ways[0]!.part).toBe("rotary-3x4");
  });

  it("a switch rated for less than an enable sends through it", () => {
    const strong = {
      ...pair(true),
      points: [
        { id: "T1", role: "a" as const, current_mA: 900 },
        { id: "T2", role: "b" as const },
      ],
    };
    expect(refusal({ parts: [m27c010, m27c020, rotary(4, 3), resistor], cards: { tallow: strong, gannet: pair(false) } }).code).toBe(
      "rating",
    );
  });

  it("a cable in which a line can no longer be pulled low", () => {
    const strong = {
      ...pair(true),
      points: [
        { id: "T1", role: "a" as const, current_mA: 140 },
        { id: "T2", role: "b" as const },
      ],
    };
    const input = { parts: [m27c010, m27c020, rotary(4, 3), resistor, cable(16)], cards: { tallow: strong, gannet: pair(false) } };
    const { code, says, ways } = refusal(input, { length_m: 25 });
    expect(code).toBe("rating");
    expect(says).toContain("mV are lost in the cable");
    expect(ways[0]!.says).toContain("shorter cable");
    expect(planWiring(world({ versions, ...input }), combination(modes, ["tallow", "gannet"]), { length_m: 1 }).kind).toBe("wiring");
  });

  it("an image of unknown size", () => expect(refusal({ versions: { ...versions, R5: "unknown" } }).code).toBe("image-unknown"));
  it("an image larger than the window", () => expect(refusal({ versions: { ...versions, R5: 0x20000 } }).code).toBe("image-too-large"));
  it("an image that does not fill the window evenly", () =>
    expect(refusal({ versions: { ...versions, R5: 0x6000 } }).code).toBe("image-uneven"));

  it("a card that must change and has no way to be switched off", () => {
    expect(refusal({ cards: { tallow: undefined, gannet: pair(false) } }).code).toBe("enable-missing");
  });
  it("a card that is switched off by a setting", () => {
    const setting = { by: "setting" as const, setting: "J3", off: "out", releases: ["io" as const] };
    expect(refusal({ cards: { tallow: setting, gannet: pair(false) } }).code).toBe("enable-by-setting");
  });
  it("an enable of another revision of the card", () => {
    expect(refusal({ cards: { tallow: { ...pair(true), revisions: ["2"] }, gannet: pair(false) } }).code).toBe("enable-missing");
  });

  it("a device too slow for the socket", () => {
    const slow = memory(
      "27C040",
      m27c040.pins.map((p) => p.name),
      512,
      8,
      { grades_ns: [{ marking: "-25", access_ns: 250 }] },
    );
    const { code, says } = refusal({ parts: [m27c010, slow, rotary(4, 3), resistor] }, { switch: { device: "27c040" } });
    expect([code, says]).toEqual(["device-unfit", "27C040: no grade reaches 150 ns."]);
  });

  it("a socket wired for a device whose pins no record lists", () => {
    const { code, says } = refusal({ sockets: [{ ...socket32, wired_for: "MX9" }] });
    expect([code, says]).toEqual(["no-device", "The pin order of MX9, which IC7 is wired for, is in no part record."]);
  });

  it("two sockets whose windows do not follow one another", () => {
    expect(refusal({ sockets: [socket32, { ...socket32, id: "IC8", window: { base: 0xc0000, size: "64K" } }] }).code).toBe(
      "sockets-differ",
    );
  });

  it("more versions than any device has banks for", () => {
    const many = ["R1", "R2", "R3"];
    const asked = combination(
      many.map((firmware) => ({ firmware })),
      [],
    );
    const small = refusal(
      { parts: [m27c010, rotary(4, 3), resistor], versions: Object.fromEntries(many.map((v) => [v, 0x10000])) },
      {},
      asked,
    );
    expect([small.code, small.says]).toEqual(["no-device", "No device that fits has banks for 3 versions."]);
  });
});

it("without a connector large enough the loom is soldered, and a note says so", () => {
  const wiring = planWiring(world({ parts: [...parts, ...header(4)], cards, versions }), combination(modes, ["tallow", "gannet"]));
  if (wiring.kind !== "wiring") throw new Error(wiring.kind);
  expect(wiring.plan.connectors).toEqual([]);
  expect(wiring.plan.toDo.some((n) => n.includes("soldered at both ends"))).toBe(true);
  expect(wiring.plan.proof.cases.some((c) => c.kind === "pulled-plug")).toBe(false);
});

it("a card that never changes gets a note, not a wire", () => {
  const asked = combination(
    [
      { firmware: "R4", on: ["gannet"] },
      { firmware: "R5", on: ["gannet"] },
    ],
    ["tallow", "gannet"],
  );
  const wiring = planWiring(world({ parts, cards: { tallow: grounding(true), gannet: pair(false) }, versions }), asked);
  if (wiring.kind !== "wiring") throw new Error(wiring.kind);
  expect(wiring.plan.nets.every((n) => n.kind !== "enable")).toBe(true);
  expect(wiring.plan.toDo).toContain("tallow is off in every mode: leave J1-1 and J1-2 open.");
  expect(wiring.plan.toDo).toContain("gannet is on in every mode: leave J1-1 and J1-2 open.");
});
