// The same panel as DXF for a milling machine or laser: millimetres, cuts on one layer, marks on another.
// Written here in the oldest dialect still read everywhere (AC1009, "R12"): circles, lines and text need forty lines,
// and the kept libraries write only newer dialects.
import type { Panel } from "./panel.js";
import { labelSize } from "./panel.js";

type Pair = readonly [code: number, value: string | number];

function number(value: number): string {
  return String(Math.round(value * 10000) / 10000);
}

function lineEntity(layer: string, x1: number, y1: number, x2: number, y2: number): Pair[] {
  return [
    [0, "LINE"],
    [8, layer],
    [10, number(x1)],
    [20, number(y1)],
    [11, number(x2)],
    [21, number(y2)],
  ];
}

function box(layer: string, left: number, bottom: number, width: number, height: number): Pair[] {
  const [right, top] = [left + width, bottom + height];
  return [
    ...lineEntity(layer, left, bottom, right, bottom),
    ...lineEntity(layer, right, bottom, right, top),
    ...lineEntity(layer, right, top, left, top),
    ...lineEntity(layer, left, top, left, bottom),
  ];
}

/** Horizontal justification of a text: 0 left, 1 middle, 2 right; when not left, the second point counts. */
const justify = { start: 0, middle: 1, end: 2 } as const;

export function panelDxf(panel: Extract<Panel, { kind: "panel" }>): string {
  const layer = (name: string, colour: number): Pair[] => [
    [0, "LAYER"],
    [2, name],
    [70, 0],
    [62, colour],
    [6, "CONTINUOUS"],
  ];
  const cuts = panel.cuts.flatMap((cut): Pair[] =>
    cut.kind === "circle"
      ? [
          [0, "CIRCLE"],
          [8, "CUT"],
          [10, number(cut.x)],
          [20, number(cut.y)],
          [40, number(cut.diameter / 2)],
        ]
      : box("CUT", cut.x - cut.width / 2, cut.y - cut.height / 2, cut.width, cut.height),
  );
  const labels = panel.labels.flatMap((l): Pair[] => [
    [0, "TEXT"],
    [8, "MARK"],
    [10, number(l.x)],
    [20, number(l.y)],
    [40, labelSize],
    // R12 knows no Unicode.
    [1, l.says.replace(/[^\x20-\x7e]/g, "?")],
    ...(l.anchor === "start"
      ? []
      : ([
          [72, justify[l.anchor]],
          [11, number(l.x)],
          [21, number(l.y)],
        ] as const)),
  ]);
  const pairs: Pair[] = [
    [0, "SECTION"],
    [2, "HEADER"],
    [9, "$ACADVER"],
    [1, "AC1009"],
    [9, "$EXTMIN"],
    [10, 0],
    [20, 0],
    [9, "$EXTMAX"],
    [10, number(panel.width)],
    [20, number(panel.height)],
    [0, "ENDSEC"],
    [0, "SECTION"],
    [2, "TABLES"],
    [0, "TABLE"],
    [2, "LAYER"],
    [70, 3],
    ...layer("EDGE", 7),
    ...layer("CUT", 1),
    ...layer("MARK", 5),
    [0, "ENDTAB"],
    [0, "ENDSEC"],
    [0, "SECTION"],
    [2, "ENTITIES"],
    ...box("EDGE", 0, 0, panel.width, panel.height),
    ...cuts,
    ...labels,
    [0, "ENDSEC"],
    [0, "EOF"],
  ];
  return pairs.map(([code, value]) => `${String(code).padStart(3)}\r\n${value}\r\n`).join("");
}
