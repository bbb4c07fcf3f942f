// What the drawings say in words, and the sums behind them; how they look is tested in a browser.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  addressMap,
  bankMap,
  type Cut,
  cardFace,
  connectorFace,
  layOutPanel,
  type PanelItem,
  panelDxf,
  panelTemplate,
  railWords,
  slotPlan,
  switchWiring,
  verdictMark,
  webBetween,
} from "../../src/drawing/index.js";
import { everyDrawing, face, panel, slots, switchSample } from "./samples.js";

const described = (svg: string) => /<desc[^>]*>([^<]*)<\/desc>/.exec(svg)?.[1] ?? "";

describe("every drawing", () => {
  it("is well-formed and keeps text that could be markup as text", () => {
    const mean = `<script>"&'`;
    const drawn = slotPlan({ ...slots, board: mean, cards: [{ ...slots.cards[0]!, name: mean }] }, "x");
    expect(drawn).not.toContain("<script>");
    expect(drawn).toContain("&#60;script&#62;");
    for (const [name, svg] of everyDrawing(640)) {
      const open = svg.match(/<[a-z]+/g)?.length ?? 0;
      const closed = (svg.match(/<\/[a-z]+>/g)?.length ?? 0) + (svg.match(/\/>/g)?.length ?? 0);
      expect(closed, name).toBe(open);
      expect(svg, name).not.toMatch(/NaN|undefined|Infinity/);
    }
  });

  it("is in the colour of the text around it, so that it prints black", () => {
    for (const [name, svg] of everyDrawing(640)) {
      const colours = new Set([...svg.matchAll(/ (?:fill|stroke)="([^"]*)"/g)].map((m) => m[1]));
      expect(
        [...colours].filter((c) => !["none", "currentColor"].includes(c!)),
        name,
      ).toEqual([]);
    }
  });

  it("draws text in two sizes and lines in three weights only, the panel in its own", () => {
    for (const [name, svg] of everyDrawing(640).filter(([n]) => n !== "panel")) {
      const sizes = new Set([...svg.matchAll(/font-size="([^"]*)"/g)].map((m) => m[1]));
      const weights = new Set([...svg.matchAll(/stroke-width="([^"]*)"/g)].map((m) => m[1]));
      for (const s of sizes) expect(["13", "11"], name).toContain(s);
      for (const w of weights) expect(["0.75", "1.25", "2.5"], name).toContain(w);
    }
  });
});

describe("the address map", () => {
  const map = (windows: Parameters<typeof addressMap>[0]["windows"]) =>
    described(addressMap({ title: "t", space: "ports", from: 0, to: 0x400, windows }, "m"));

  it("names what is free and never counts a taken address as free", () => {
    fc.assert(
      fc.property(
        fc.array(fc.record({ base: fc.integer({ min: 0, max: 0x3ff }), size: fc.integer({ min: 1, max: 64 }) }), {
          minLength: 1,
          maxLength: 8,
        }),
        (windows) => {
          const says = map(windows.map((w) => ({ ...w, owner: "x" })));
          const free = [...says.matchAll(/Free: 0x([0-9A-F]+) to 0x([0-9A-F]+)/g)].map((m) => [
            Number.parseInt(m[1]!, 16),
            Number.parseInt(m[2]!, 16),
          ]);
          for (let at = 0; at < 0x400; at++) {
            const taken = windows.some((w) => at >= w.base && at < w.base + w.size);
            const drawnFree = free.some(([a, b]) => at >= a! && at <= b!);
            expect(drawnFree).toBe(!taken);
          }
        },
      ),
      { numRuns: 30 },
    );
  });

  it("says where two answer at once, not counting one that is off", () => {
    const two = [
      { base: 0x300, size: 16, owner: "A" },
      { base: 0x308, size: 16, owner: "B" },
    ];
    expect(map(two)).toContain("0x308 to 0x30F: 2 answer at once.");
    expect(map([two[0]!, { ...two[1]!, off: true }])).not.toContain("at once");
    expect(
      map([
        { ...two[0]!, modes: ["x"] },
        { ...two[1]!, modes: ["y"] },
      ]),
    ).not.toContain("at once");
    expect(
      map([
        { ...two[0]!, modes: ["x"] },
        { ...two[1]!, modes: ["x", "y"] },
      ]),
    ).toContain("2 answer at once");
    expect(map([two[0]!, { ...two[1]!, modes: ["y"] }])).toContain("2 answer at once");
  });
});

describe("rail loads", () => {
  it("never make nothing of what is not known", () => {
    expect(railWords({ rail: "+5", used_A: "unknown", limit_A: 6 })).toBe("load not known of 6\u2009A");
    expect(railWords({ rail: "+5", used_A: "unknown", atLeast_A: 1.5, limit_A: "unknown", unknownFrom: ["X"] })).toBe(
      "at least 1.5\u2009A, limit not known; not known: X",
    );
    expect(railWords({ rail: "+5", used_A: 7, limit_A: 6 })).toBe("7\u2009A of 6\u2009A, over by 1\u2009A");
    expect(railWords({ rail: "+5", used_A: 2, limit_A: 6 })).toBe("2\u2009A of 6\u2009A, 4\u2009A to spare");
  });
});

describe("the card on the bench", () => {
  it("tells its size, or that nobody wrote it down, and where each block left the factory", () => {
    const blocks = [{ id: "J2", positions: ["5", "10"].map((id) => ({ id, factory: id === "10" })) }];
    expect(described(cardFace({ name: "C", length: 206, edge: "long", plate: true, blocks }, "c"))).toBe(
      "A card with the long edge, 206\u202fmm long, height not known, with a back plate. J2 has the places 5, 10, from the factory 10.",
    );
    const open = blocks.map((b) => ({ ...b, positions: b.positions.map(({ id }) => ({ id, factory: false })) }));
    expect(described(cardFace({ name: "C", edge: "short", plate: false, blocks: open }, "c"))).toBe(
      "A card with the short edge, length not known, height not known. J2 has the places 5, 10.",
    );
  });
});

describe("switch, connector and banks in words", () => {
  it("tell every throw of every pole and where it goes", () => {
    const sample = switchSample(4, 3, 5);
    const says = described(switchWiring(sample, "s"));
    for (const s of sample.switch.sections)
      for (const t of s.throws)
        expect(says).toContain(
          `${t.terminal}, joined in pos ${t.positions[0]}, ${t.net === undefined ? "is not connected" : `goes to ${t.net.replace(":", " ")}`}.`,
        );
  });

  it("tell every contact, used or not, and which face is seen", () => {
    const contacts = Array.from({ length: 9 }, (_, i) => ({ contact: String(i + 1), x_mm: i, y_mm: 0 }));
    const svg = connectorFace({ id: "J1", name: "Nine" }, face(contacts, 2), "f");
    expect(described(svg)).toContain("solder side: the view while soldering");
    expect(described(svg)).toContain("Contact 1: A0.");
    expect(described(svg)).toContain("Contact 9: not used.");
  });

  it("never cut a label short: it could then name the wrong point", () => {
    for (const width of [640, 330])
      for (const [name, svg] of everyDrawing(width).filter(([n]) => /switch|shell|circle|header/.test(n)))
        expect(svg, name).not.toContain("…");
    const long = "a-card-with-a-very-long-name-indeed-and-more J12-3";
    const svg = connectorFace(
      { id: "J1", name: "One" },
      {
        ...face(
          [
            { contact: "1", x_mm: 0, y_mm: 0 },
            { contact: "2", x_mm: 3, y_mm: 0 },
          ],
          0,
        ),
        contacts: [{ contact: "1", x_mm: 0, y_mm: 0, net: "n", label: long }],
      },
      "f",
      330,
    );
    const drawn = [...svg.matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map((m) => m[1]).join(" ");
    expect(drawn.replace(/\s/g, "")).toContain(long.replace(/\s/g, ""));
  });

  it("tell the levels that choose a bank: an open line is high", () => {
    const svg = bankMap(
      {
        device: { name: "D", family: "D", capacity: 4096 } as Parameters<typeof bankMap>[0]["device"],
        lines: [
          { line: "A10", bit: 0, pin: 1, carries: "driven", role: "switched", says: "" },
          { line: "A11", bit: 1, pin: 2, carries: "driven", role: "switched", says: "" },
        ],
        modes: [],
        banks: [{ index: 2, offset: 2048, size: 1024, version: "V", repeats: 1, use: "mode", modes: [] }],
      },
      "b",
    );
    expect(described(svg)).toContain("chosen by A11 high, A10 low");
  });
});

describe("the mark", () => {
  it("draws each of the sixteen differently", () => {
    const verdicts = ["workable", "conditional", "ruled-out", "unknown"] as const;
    const evidence = ["bench", "documented", "reported", "inferred"] as const;
    const shapes = verdicts.flatMap((v) => evidence.map((e) => verdictMark(v, e, 14, { decorative: true }).replace(/class="[^"]*"/g, "")));
    expect(new Set(shapes).size).toBe(16);
  });
});

describe("the panel", () => {
  const round = (id: string, diameter: number, positions?: string[]): PanelItem => ({
    id,
    name: id,
    hole: { kind: "round", diameter },
    ...(positions ? { positions } : {}),
    form: "lever",
  });

  it("keeps the asked-for metal between all holes and to the edge, whatever is fixed in it", () => {
    const item = fc.oneof(
      fc
        .record({ d: fc.integer({ min: 3, max: 30 }), labels: fc.array(fc.string({ maxLength: 12 }), { maxLength: 4 }) })
        .map(({ d, labels }) => round("A", d, labels)),
      fc
        .record({ width: fc.integer({ min: 5, max: 50 }), height: fc.integer({ min: 5, max: 20 }), apart: fc.integer({ min: 0, max: 10 }) })
        .map(
          ({ width, height, apart }): PanelItem => ({
            id: "B",
            name: "B",
            hole: { kind: "cut-out", width, height },
            screws: { apart: width + 6 + apart, diameter: 3 },
          }),
        ),
    );
    fc.assert(
      fc.property(fc.array(item, { minLength: 1, maxLength: 5 }), fc.integer({ min: 2, max: 10 }), (items, web) => {
        const named = items.map((it, i) => ({ ...it, id: `${it.id}${i}` }));
        const laid = layOutPanel(named, { web_mm: web });
        expect(laid.kind).toBe("panel");
        if (laid.kind === "panel") expect(laid.leastWeb).toBeGreaterThanOrEqual(web - 1e-9);
      }),
    );
  });

  it("begins a second row where a sheet of paper would end", () => {
    const laid = layOutPanel(Array.from({ length: 9 }, (_, i) => round(`SW${i}`, 20)));
    if (laid.kind !== "panel") throw new Error("refused");
    expect(laid.width).toBeLessThanOrEqual(170);
    expect(new Set(laid.cuts.map((c) => c.y)).size).toBe(2);
    expect(laid.cuts.every((c) => c.x > 0 && c.x < laid.width && c.y > 0 && c.y < laid.height)).toBe(true);
  });

  it("measures metal between two holes as a ruler would", () => {
    const c = (x: number, y: number, diameter: number): Cut => ({ kind: "circle", x, y, diameter, item: "a" });
    const r = (x: number, y: number, width: number, height: number): Cut => ({ kind: "rect", x, y, width, height, item: "b" });
    expect(webBetween(c(0, 0, 10), c(30, 40, 20))).toBe(35);
    expect(webBetween(c(0, 0, 10), r(20, 0, 10, 30))).toBe(10);
    expect(webBetween(r(0, 0, 10, 10), r(13, 14, 10, 10))).toBe(5);
    expect(webBetween(r(0, 0, 10, 10), r(5, 0, 10, 10))).toBeLessThan(0);
  });

  it("is refused when a hole is not known, saying how to find it out", () => {
    const laid = layOutPanel([round("SW1", 9), { id: "J1", name: "Odd plug", hole: { kind: "unknown", find: "Measure its shell." } }]);
    expect(laid).toEqual({ kind: "refused", problems: ["The hole for Odd plug (J1) is not known. Measure its shell."] });
    expect(layOutPanel([]).kind).toBe("refused");
  });

  it("has the same holes in SVG and DXF", () => {
    if (panel.kind !== "panel") throw new Error("the sample panel was refused");
    const pairs = panelDxf(panel).trimEnd().split("\r\n");
    expect(pairs.length % 2).toBe(0);
    const codes = pairs.flatMap((line, i) => (i % 2 === 0 ? [[Number(line), pairs[i + 1]!] as const] : []));
    for (const [code] of codes) expect(Number.isInteger(code)).toBe(true);
    expect(codes[0]).toEqual([0, "SECTION"]);
    expect(codes.at(-1)).toEqual([0, "EOF"]);
    expect(codes).toContainEqual([1, "AC1009"]);
    // Entities: a code 0 opens each; circles with middle and radius.
    const circles: Record<number, number>[] = [];
    let open: Record<number, number> | undefined;
    for (const [code, value] of codes) {
      if (code === 0) {
        open = value === "CIRCLE" ? {} : undefined;
        if (open) circles.push(open);
      } else if (open && code >= 10) open[code] = Number(value);
    }
    const wanted = panel.cuts.flatMap((cut) => (cut.kind === "circle" ? [{ 10: cut.x, 20: cut.y, 40: cut.diameter / 2 }] : []));
    expect(circles.length).toBe(wanted.length);
    for (const [i, w] of wanted.entries()) for (const code of [10, 20, 40] as const) expect(circles[i]![code]).toBeCloseTo(w[code], 3);
    const lines = codes.filter(([code, value]) => code === 0 && value === "LINE").length;
    expect(lines).toBe(4 * (1 + panel.cuts.filter((c) => c.kind === "rect").length));
    const svg = panelTemplate(panel, "p");
    const drawn = [...svg.matchAll(/<circle cx="([^"]*)" cy="([^"]*)" r="([^"]*)"/g)].map((m) => Number(m[3]) * 2);
    expect(drawn).toEqual(panel.cuts.flatMap((cut) => (cut.kind === "circle" ? [cut.diameter] : [])));
    expect(svg).toMatch(/width="[\d.]+mm" height="[\d.]+mm"/);
  });
});

describe("a connector by itself", () => {
  const shell = face(
    [
      { contact: "1", x_mm: 2.8, y_mm: 1.4 },
      { contact: "2", x_mm: 0, y_mm: 1.4 },
      { contact: "3", x_mm: 1.4, y_mm: -1.4 },
    ],
    0,
  );

  it("says where each contact stands, and calls none of them unused", () => {
    const drawn = connectorFace({ name: "Shell" }, shell, "x");
    expect(described(drawn)).toContain("From the top, each row from left to right: 2, 1; 3.");
    expect(drawn).not.toMatch(/not used|stroke-dasharray/);
  });
});
