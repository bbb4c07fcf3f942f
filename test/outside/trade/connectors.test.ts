// Faces of connectors. DIN: order along the arc as an encyclopaedia gives it and a symbol library draws it (seen on the socket with the
// arc up and the key below, left to right). D-sub numbering: from memory of DIN 41652 / IEC 60807-2. Headers: common practice.
import { describe, expect, it } from "vitest";
import type { Connector } from "../../../src/records/index.js";
import { facesOf, mirrorMap } from "../../../src/wiring/harness/connectors.js";
import type { Face } from "../../../src/wiring/index.js";
import { demo } from "../../wiring/support/demo.js";

const { parts } = demo();
const connector = (id: string): Connector => {
  const part = parts.get(id);
  if (part?.type !== "connector") throw new Error(`no connector ${id}`);
  return part;
};
const none = new Map<string, never>();
function faces(id: string): readonly Face[] {
  const fixed = connector(id);
  return facesOf({ fixed, loose: connector(fixed.mates!) }, none);
}
const face = (id: string, half: Face["half"], view: Face["view"]) => faces(id).find((f) => f.half === half && f.view === view)!;
const rows = ({ contacts }: Face) => {
  const heights = [...new Set(contacts.map((c) => c.y_mm))].sort((a, b) => b - a);
  return heights.map((y) =>
    contacts
      .filter((c) => c.y_mm === y)
      .sort((a, b) => a.x_mm - b.x_mm)
      .map((c) => Number(c.contact)),
  );
};
/** Contacts on the circle from the left end of the arc over the top to the right end. */
const around = ({ contacts }: Face) =>
  contacts
    .filter((c) => Math.hypot(c.x_mm, c.y_mm) > 1)
    .sort((a, b) => turn(a) - turn(b))
    .map((c) => c.contact);
const turn = (c: { x_mm: number; y_mm: number }) => (Math.atan2(c.x_mm, c.y_mm) * 180) / Math.PI;

describe("DE-9", () => {
  it("plug, mating face: 1 to 5 above, 6 to 9 below, left to right", () => {
    expect(rows(face("de-9-socket", "cable", "mating"))).toEqual([
      [1, 2, 3, 4, 5],
      [6, 7, 8, 9],
    ]);
  });
  it("socket, mating face: the mirror image", () => {
    expect(rows(face("de-9-socket", "panel", "mating"))).toEqual([
      [5, 4, 3, 2, 1],
      [9, 8, 7, 6],
    ]);
  });
  it("socket, solder side and from behind: as the plug from the front", () => {
    for (const view of ["solder", "rear"] as const)
      expect(rows(face("de-9-socket", "panel", view))).toEqual([
        [1, 2, 3, 4, 5],
        [6, 7, 8, 9],
      ]);
  });
});

describe("DIN", () => {
  const orders: Readonly<Record<string, readonly string[]>> = {
    "din-5-180-socket": ["1", "4", "2", "5", "3"],
    "din-6-240-socket": ["1", "2", "3", "4", "5"],
    "din-8-262-socket": ["6", "1", "4", "2", "5", "3", "7"],
    "din-8-270-socket": ["6", "1", "4", "2", "5", "3", "7"],
  };
  for (const [id, order] of Object.entries(orders)) {
    it(`${id}: ${order.join(" ")} left to right on its mating face`, () => expect(around(face(id, "panel", "mating"))).toEqual(order));
    it(`${id}: right to left on the plug and on the solder side`, () => {
      const mirror = [...order].reverse();
      expect(around(face(id, "cable", "mating"))).toEqual(mirror);
      expect(around(face(id, "panel", "solder"))).toEqual(mirror);
      expect(around(face(id, "cable", "solder"))).toEqual(order);
    });
  }
  it("all but the middle contact lie on a circle of 7 mm", () => {
    for (const id of Object.keys(orders)) {
      for (const c of connector(id).face) expect([0, 3.5]).toContainEqual(Math.round(Math.hypot(c.x_mm, c.y_mm) * 100) / 100);
    }
  });
  it("keeps 1, 2 and 3 of the 3-way 180 in the 5-way 180: at 180, 90 and 0 degrees", () => {
    const at = (n: string) => connector("din-5-180-socket").face.find((c) => c.contact === n)!;
    expect([at("1"), at("2"), at("3")].map((c) => [c.x_mm, c.y_mm])).toEqual([
      [-3.5, 0],
      [0, 3.5],
      [3.5, 0],
    ]);
  });
});

it("every connector mates contact on contact: its other half is its mirror image", () => {
  const all = [...parts.values()].filter((p): p is Connector => p.type === "connector" && p.mates !== undefined);
  expect(all.length).toBeGreaterThan(10);
  for (const part of all) {
    const mate = connector(part.mates!);
    for (const c of part.face) {
      const other = mate.face.find((d) => d.contact === c.contact);
      expect([part.id, c.contact, other?.x_mm, other?.y_mm]).toEqual([part.id, c.contact, c.x_mm === 0 ? 0 : -c.x_mm, c.y_mm]);
    }
  }
});

it("wired as its mirror image a DE-9 exchanges 1 and 5, 6 and 9, and leaves 3 alone", () => {
  const map = mirrorMap(connector("de-9-socket"), "x");
  expect([map.get("1"), map.get("5"), map.get("6"), map.get("3")]).toEqual(["5", "1", "9", "3"]);
});

it("has the contacts each name says", () => {
  for (const [id, contacts] of [
    ["de-9-socket", 9],
    ["da-15-socket", 15],
    ["db-25-socket", 25],
    ["din-5-180-socket", 5],
    ["mini-din-6-socket", 6],
    ["mini-din-8-socket", 8],
  ] as const) {
    expect(connector(id).face).toHaveLength(contacts);
    expect(connector(id).contacts).toBe(contacts);
  }
});
