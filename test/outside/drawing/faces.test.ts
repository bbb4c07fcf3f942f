// Connector faces as drawn, read off the drawing itself, against the published numbering. The classic mistake is to solder from
// the mirror image, so what counts is where the ink is, not what a table says.
//
// Sources. 9-way D shell: DIN 41652 / IEC 60807-2, numbering as widely printed, from memory: pin 1 top left on the mating face of
// the plug, wide row on top; the socket is its mirror image. Circular 8-way 270: IEC 60130-9; encyclopaedia text and a symbol
// library agree that on the mating face of the socket, arc up and key below, the order runs 6 1 4 2 5 3 7 from left to right.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { link } from "../../../src/catalogue/index.js";
import { readData } from "../../../src/cli/reading/folders.js";
import { connectorFace } from "../../../src/drawing/index.js";
import { plan } from "../../../src/planning/index.js";
import { readRecords } from "../../../src/records/index.js";
import { type ConnectorPlan, planWiring } from "../../../src/wiring/index.js";

const top = fileURLToPath(new URL("../../..", import.meta.url));
const reading = readRecords(readData(join(top, "data")).map(({ file, bytes }) => ({ file, content: bytes })));
const { catalogue } = link(reading.records, { failed: reading.failed, today: "2026-01-01" });
const build = catalogue.builds.get("saltmarsh-three-mode-skerry")!;
const answer = plan(catalogue, build);
const best = answer.kind === "answer" ? answer.combinations[0]! : undefined;

/** The connector of the lead when this part is chosen for it. */
function lead(connector: string): ConnectorPlan {
  const wiring = planWiring(catalogue, best!, { switch: { connector }, tables: false });
  if (wiring.kind !== "wiring") throw new Error(JSON.stringify(wiring));
  const found = wiring.plan.connectors.find((c) => c.part === connector);
  if (!found) throw new Error(`${connector} was not taken: ${wiring.plan.connectors.map((c) => c.part).join(", ")}`);
  return found;
}

interface Drawn {
  readonly contact: string;
  readonly x: number;
  readonly y: number;
}

/** Numbers and places of the contacts, read off the SVG: the text in the middle of each circle. */
function drawn(connector: ConnectorPlan, face: ConnectorPlan["faces"][number]): Drawn[] {
  const svg = connectorFace(connector, face, "f");
  return [...svg.matchAll(/<text x="([\d.-]+)" y="([\d.-]+)"[^>]*text-anchor="middle"[^>]*>(\d+)<\/text>/g)].map((m) => ({
    contact: m[3]!,
    x: Number(m[1]),
    y: Number(m[2]),
  }));
}

/** Rows from the top, each from left to right. */
function rows(contacts: readonly Drawn[]): string[][] {
  const heights = [...new Set(contacts.map((c) => Math.round(c.y)))].sort((a, b) => a - b);
  return heights.map((h) =>
    contacts
      .filter((c) => Math.round(c.y) === h)
      .sort((a, b) => a.x - b.x)
      .map((c) => c.contact),
  );
}

/** Round the arc from the lower left over the top to the lower right; the one in the middle left out. */
function arc(contacts: readonly Drawn[]): string[] {
  const middle = {
    x: (Math.min(...contacts.map((c) => c.x)) + Math.max(...contacts.map((c) => c.x))) / 2,
    y: contacts.find((c) => c.contact === "8")!.y,
  };
  return contacts
    .filter((c) => c.contact !== "8")
    .map((c) => ({ ...c, angle: (Math.atan2(c.x - middle.x, middle.y - c.y) * 180) / Math.PI }))
    .sort((a, b) => a.angle - b.angle)
    .map((c) => c.contact);
}

const forwards = [
  ["1", "2", "3", "4", "5"],
  ["6", "7", "8", "9"],
];
const backwards = forwards.map((row) => [...row].reverse());

describe("the 9-way D shell as drawn", () => {
  const connector = lead("de-9-socket");
  const faces = connector.faces.map((face) => ({ name: `${face.half} ${face.shape} ${face.view}`, face }));

  it("is drawn from every side that is worked on", () => {
    const views = faces.map((f) => f.name);
    for (const name of ["panel socket mating", "panel socket solder", "cable plug mating", "cable plug solder"])
      expect(views).toContain(name);
  });

  it.each(faces)("$name", ({ face }) => {
    // Plug and socket are mirror images, and so are front and back: two mirrors make the same picture again.
    const front = face.view === "mating";
    const wanted = (face.shape === "plug") === front ? forwards : backwards;
    expect(rows(drawn(connector, face))).toEqual(wanted);
  });
});

describe("the circular 8-way 270 as drawn", () => {
  const connector = lead("din-8-270-socket");
  const order = ["6", "1", "4", "2", "5", "3", "7"];

  it.each(connector.faces.map((face) => ({ name: `${face.half} ${face.shape} ${face.view}`, face })))("$name", ({ face }) => {
    const front = face.view === "mating";
    const wanted = (face.shape === "socket") === front ? order : [...order].reverse();
    expect(arc(drawn(connector, face))).toEqual(wanted);
  });
});

describe("every face of every connector of the plan", () => {
  it("names itself in words and numbers every contact once", () => {
    for (const connector of [lead("de-9-socket"), lead("din-8-270-socket")])
      for (const face of connector.faces) {
        const numbers = drawn(connector, face).map((d) => d.contact);
        expect(new Set(numbers).size).toBe(connector.contacts.length);
        expect(connectorFace(connector, face, "f")).toContain(face.says);
      }
    expect(readFileSync(join(top, "data/parts/de-9-socket.yaml"), "utf8")).toContain("contact 1 is top right on this face");
  });
});
