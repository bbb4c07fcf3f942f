// The generic parts: faces that mirror each other, measures of the standards, pins that add up, switches that close what their words say.
// Measures: DIN 41652 / IEC 60807-2 (D-subminiature, from memory), IEC 60130-9 (circular DIN, as published pages give it).
import { describe, expect, it } from "vitest";
import type { Connector, MemoryDevice, Switch } from "../../src/records/index.js";
import { demo } from "../support/demo.js";

const catalogue = demo();

const parts = [...catalogue.parts.values()];
const connectors = parts.filter((p): p is Connector => p.type === "connector");
const devices = parts.filter((p): p is MemoryDevice => p.type === "memory");
const switches = parts.filter((p): p is Switch => p.type === "switch");
const at = (connector: Connector, contact: string) => connector.face.find((f) => f.contact === contact)!;
const connector = (id: string) => connectors.find((c) => c.id === id)!;

describe("connectors", () => {
  it.each(connectors.map((c) => [c.id, c] as const))("%s mates with the other half, whose face is its mirror image", (_, own) => {
    const other = connector(own.mates ?? "");
    expect(other?.mates).toBe(own.id);
    expect(new Set([own.half, other.half])).toEqual(new Set(["plug", "socket"]));
    expect(own.face).toHaveLength(own.contacts);
    for (const f of own.face) {
      expect(at(other, f.contact).x_mm).toBeCloseTo(-f.x_mm, 3);
      expect(at(other, f.contact).y_mm).toBeCloseTo(f.y_mm, 3);
    }
  });

  it.each([
    ["de-9-plug", 5],
    ["da-15-plug", 8],
    ["db-25-plug", 13],
  ] as const)("%s: contact 1 top left, 2.77 mm apart, rows 2.84 mm apart, the lower row half a step in", (id, wide) => {
    const plug = connector(id);
    for (let n = 2; n <= wide; n++) expect(at(plug, `${n}`).x_mm - at(plug, `${n - 1}`).x_mm).toBeCloseTo(2.77, 3);
    const below = at(plug, `${wide + 1}`);
    expect(at(plug, "1").y_mm - below.y_mm).toBeCloseTo(2.84, 3);
    expect(below.x_mm - at(plug, "1").x_mm).toBeCloseTo(2.77 / 2, 3);
    expect(at(plug, "1").x_mm).toBeLessThan(0);
  });

  it("DIN 5-way 180: 1 4 2 5 3 from left to right on the socket, on a circle of 7 mm, and the 3-way plug's places kept", () => {
    const socket = connector("din-5-180-socket");
    const order = [...socket.face].sort((a, b) => a.x_mm - b.x_mm).map((f) => f.contact);
    expect(order).toEqual(["1", "4", "2", "5", "3"]);
    for (const f of socket.face) expect(Math.hypot(f.x_mm, f.y_mm)).toBeCloseTo(3.5, 2);
    expect([at(socket, "1").y_mm, at(socket, "2").x_mm, at(socket, "3").y_mm]).toEqual([0, 0, 0]);
  });

  it("DIN 8-way 262 and 270 differ only in the outer two contacts", () => {
    const [a, b] = [connector("din-8-262-socket"), connector("din-8-270-socket")];
    const moved = a.face.filter((f) => Math.hypot(f.x_mm - at(b, f.contact).x_mm, f.y_mm - at(b, f.contact).y_mm) > 0.01);
    expect(moved.map((f) => f.contact)).toEqual(["6", "7"]);
  });

  it("mini-DIN: contact 1 bottom right on the socket", () => {
    for (const id of ["mini-din-6-socket", "mini-din-8-socket"]) {
      const lowest = Math.min(...connector(id).face.map((f) => f.y_mm));
      expect(at(connector(id), "1")).toMatchObject({ y_mm: lowest });
      expect(at(connector(id), "1").x_mm).toBeGreaterThan(at(connector(id), "2").x_mm);
    }
  });
});

describe("memory devices", () => {
  it.each(devices.map((d) => [d.id, d] as const))("%s has the address and data lines its capacity needs", (_, device) => {
    const names = device.pins.map((p) => p.name);
    const widest = Math.max(...device.organisations.map((o) => o.width));
    const words = device.organisations.find((o) => o.width === widest)!.words;
    expect(names.filter((n) => /^A\d+$/.test(n))).toHaveLength(Math.log2(words));
    expect(names.filter((n) => /^D\d+$/.test(n))).toHaveLength(widest);
    expect(new Set(device.pins.map((p) => p.pin)).size).toBe(Number(/\d+$/.exec(device.package)![0]));
    for (const { pin, at: level } of device.read_pins ?? []) {
      expect(device.pins.find((p) => p.pin === pin)?.name).toMatch(/^(VPP|\/PGM|\/WE|\/BYTE)$/);
      expect(level).toBe("high");
    }
  });

  it("no upper address line of one family falls on a read pin of a smaller one without a word in its notes", () => {
    // The classic trap of a larger device in a smaller socket, as the data sheets' comparison columns show it.
    const traps = [
      ["27c040", 31, "A18", "27c010", "/PGM"],
      ["39sf040", 1, "A18", "27c010", "VPP"],
      ["27c512", 1, "A15", "27c256", "VPP"],
      ["28c256", 27, "/WE", "27c256", "A14"],
    ] as const;
    for (const [large, pin, line, small, was] of traps) {
      const of = (id: string) => devices.find((d) => d.id === id)!;
      expect(of(large).pins.find((p) => p.pin === pin)?.name).toBe(line);
      expect(of(small).pins.find((p) => p.pin === pin)?.name).toBe(was);
      expect(of(large).notes).toMatch(/pin/);
    }
  });

  it("pin lists taken from the symbol library carry their licence and lie in their own folder", () => {
    const folder = (id: string) => catalogue.files.get(`part/${id}`) ?? "";
    const taken = devices.filter((d) => d.notes?.includes("CC-BY-SA-4.0"));
    expect(taken.length).toBeGreaterThan(0);
    expect(devices.filter((d) => folder(d.id).includes("kicad-derived")).map((d) => d.id)).toEqual(taken.map((d) => d.id));
    for (const d of taken) expect(d.sources?.some((s) => s.by?.includes("KiCad") && s.says.includes("CC-BY-SA-4.0"))).toBe(true);
  });
});

describe("switches", () => {
  it.each(switches.filter((s) => s.form === "rotary").map((s) => [s.id, s] as const))("%s: every pole has one way a position", (_, own) => {
    expect(own.terminals).toHaveLength(own.poles * (own.positions.length + 1));
    for (const p of own.positions)
      expect(own.closes[p]).toEqual(Array.from({ length: own.poles }, (_, i) => [`${i + 1}C`, `${i + 1}.${p}`]));
  });

  it("coded switches close the bits of their position, complement ones the others", () => {
    for (const own of switches.filter((s) => s.form === "coded-rotary"))
      for (const [value, position] of own.positions.entries()) {
        const bits = own.closes[position]!.reduce((sum, [, bit]) => sum + Number(bit), 0);
        expect(bits).toBe(own.id.endsWith("complement") ? 15 - value : value);
      }
  });
});

it("every part names its sources", () => {
  expect(parts.filter((p) => !p.sources?.length).map((p) => p.id)).toEqual([]);
});
