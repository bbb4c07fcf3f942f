// A generic part's page: what it is, its figures, its pins or contacts or terminals.
import { connectorFace, devicePins } from "../drawing/index.js";
import { bytes, type Part, sizeText } from "../records/index.js";
import { partFaces } from "../wiring/index.js";
import {
  type Context,
  type LinkView,
  listText,
  type PageHead,
  recordHead,
  recordLink,
  type SourceView,
  sourcesView,
  type ValueView,
  value,
  withUnit,
} from "./common.js";
import { type Figure, oneFigure } from "./marks.js";
import { partTypes } from "./part-types.js";
import { ownWords } from "./search/own-words.js";
import { type TestedView, testedWhere } from "./tested.js";

export interface PartTable {
  readonly title: string;
  readonly heads: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

export interface PartPage extends PageHead {
  readonly name: string;
  readonly type: string;
  readonly answer: string;
  readonly facts: readonly { readonly name: string; readonly value: ValueView; readonly code?: boolean }[];
  readonly pinDrawing?: Figure | undefined;
  /** The same as a list, in the order of the pins. */
  readonly pins: readonly PinView[];
  readonly faces: readonly { readonly title: string; readonly figure: Figure }[];
  readonly key?: string | undefined;
  readonly tables: readonly PartTable[];
  readonly mates?: LinkView | undefined;
  readonly used: readonly LinkView[];
  readonly tested: readonly TestedView[];
  readonly notes?: string | undefined;
  readonly sources: readonly SourceView[];
}

export interface PinView {
  readonly pin: number;
  readonly name: string;
}

const fact = (name: string, v: ValueView, code = false) => ({ name, value: v, code });
const plain = (text: string | number): ValueView => ({ text: String(text), known: true });

function factsOf(part: Part): PartPage["facts"] {
  switch (part.type) {
    case "memory":
      return [
        fact("Family", plain(part.family), true),
        fact("Capacity", plain(sizeText(bytes(part.capacity)))),
        fact(
          "Organised",
          plain(
            listText(
              part.organisations.map((o) => `${o.words} \u00d7 ${o.width}`),
              "or",
            ),
          ),
        ),
        fact("Technology", plain(part.technology.replace("-", " ").toUpperCase())),
        fact("Package", plain(part.package), true),
        ...(part.erase ? [fact("Erasing", plain(part.erase))] : []),
      ];
    case "switch":
      return [
        fact("Form", plain(part.form.replace("-", " "))),
        fact("Poles", plain(part.poles)),
        fact("Positions", plain(part.positions.join(", "))),
        fact("Between positions", plain(part.transit === "break-before-make" ? "breaks before it makes" : "makes before it breaks")),
        fact("Panel hole", value(part.hole_mm, "mm")),
        ...(part.rating_A === undefined ? [] : [fact("Rating", value(part.rating_A, "A"))]),
        ...(part.body_mm
          ? [fact("Room behind the panel", plain(`${part.body_mm.width} \u00d7 ${withUnit(part.body_mm.height, "mm")}`))]
          : []),
        ...(part.lever ? [fact("Lever", plain(part.lever))] : []),
      ];
    case "connector":
      return [
        fact("Family", plain(part.family)),
        fact("Contacts", plain(part.contacts)),
        fact("Half", plain(part.half)),
        fact("For a panel", plain(part.panel ? "yes" : "no")),
        ...(part.rating_A === undefined ? [] : [fact("Rating, each contact", value(part.rating_A, "A"))]),
        ...(part.hole ? [fact("Panel cut-out", plain(holeText(part.hole)))] : []),
      ];
    case "cable":
      return [
        fact("Conductors", plain(part.conductors)),
        fact("Gauge", plain(`AWG ${part.awg}`)),
        fact("Stranded", plain(part.stranded ? "yes" : "no")),
        fact("Screen", plain(part.screen ? "yes" : "no")),
        ...(part.ribbon ? [fact("Form", plain("flat ribbon"))] : []),
      ];
    case "resistor":
      return [
        fact("Resistance", plain(withUnit(part.ohms, "\u03a9"))),
        ...(part.network ? [fact("In a network of", plain(part.network))] : []),
      ];
    case "sundry":
      return [fact("What it is", plain(part.what))];
    default:
      return part satisfies never;
  }
}

function holeText(hole: NonNullable<Extract<Part, { type: "connector" }>["hole"]>): string {
  return [
    hole.round_mm === undefined ? "" : `round, ${withUnit(hole.round_mm, "mm")}`,
    hole.width_mm === undefined ? "" : `${hole.width_mm} \u00d7 ${withUnit(hole.height_mm ?? 0, "mm")}`,
    hole.screws_mm === undefined
      ? ""
      : `fixing holes ${withUnit(hole.screws_mm, "mm")} apart${hole.screw_hole_mm === undefined ? "" : `, ${withUnit(hole.screw_hole_mm, "mm")} each`}`,
  ]
    .filter(Boolean)
    .join("; ");
}

function pinFigure(part: Part): Figure | undefined {
  if (part.type !== "memory" || part.pins.length % 2 !== 0) return undefined;
  const { family, package: housing, pins } = part;
  return oneFigure(
    (prefix, width) => devicePins({ family, package: housing, pins, lines: [], work: [] }, prefix, width),
    `pins-${part.id}`,
  );
}

function facesOf(part: Part): PartPage["faces"] {
  if (part.type !== "connector") return [];
  const { name, key } = part;
  return partFaces(part).map((face) => ({
    title: face.says,
    figure: oneFigure((prefix, width) => connectorFace({ name, key }, face, prefix, width), `face-${part.id}-${face.view}`),
  }));
}

function tablesOf(part: Part): readonly PartTable[] {
  if (part.type === "memory") {
    const held = part.read_pins ?? [];
    return [
      {
        title: "Speed grades",
        heads: ["Marking", "Access time"],
        rows: part.grades_ns.map((g) => [g.marking, withUnit(g.access_ns, "ns")]),
      },
      ...(held.length > 0 ? [{ title: "Held while reading", heads: ["Pin", "Level"], rows: held.map((p) => [String(p.pin), p.at]) }] : []),
    ];
  }
  if (part.type === "switch") {
    const rows = part.positions.map((p) => [p, (part.closes[p] ?? []).map(([a, b]) => `${a}\u2013${b}`).join(", ") || "nothing"]);
    return [{ title: "What is joined in each position", heads: ["Position", "Joined"], rows }];
  }
  return [];
}

function answerOf(part: Part): string {
  if (part.summary) return part.summary;
  switch (part.type) {
    case "memory":
      return `Holds ${sizeText(bytes(part.capacity))} in a ${part.package}.`;
    case "switch":
      return `${part.poles} ${part.poles === 1 ? "pole" : "poles"}, ${part.positions.length} positions.`;
    case "connector":
      return `${part.contacts} contacts, ${part.half}.`;
    case "cable":
      return `${part.conductors} conductors.`;
    case "resistor":
      return withUnit(part.ohms, "\u03a9");
    case "sundry":
      return part.what;
    default:
      return part satisfies never;
  }
}

export function partPage(ctx: Context, part: Part): PartPage {
  const answer = answerOf(part);
  const uses = (b: {
    readonly switch?: Readonly<Record<string, string | undefined>>;
    readonly at_hand?: { readonly parts?: readonly string[] };
  }) => Object.values(b.switch ?? {}).includes(part.id) || (b.at_hand?.parts?.includes(part.id) ?? false);
  return {
    ...recordHead(ctx, "part", part.id, part.name, answer, "parts"),
    name: part.name,
    type: partTypes[part.type],
    answer,
    facts: factsOf(part),
    pinDrawing: pinFigure(part),
    pins: part.type === "memory" ? [...part.pins].sort((a, b) => a.pin - b.pin) : [],
    faces: facesOf(part),
    key: part.type === "connector" ? part.key : undefined,
    tables: tablesOf(part),
    mates:
      part.type === "connector" && part.mates && ctx.catalogue.parts.has(part.mates)
        ? recordLink(ctx.catalogue, "part", part.mates)
        : undefined,
    used: [...ctx.catalogue.conflicts.values()]
      .filter((c) => c.remedies?.some((r) => r.part === part.id))
      .map((c) => recordLink(ctx.catalogue, "conflict", c.id)),
    tested: testedWhere(ctx, uses),
    notes: part.notes,
    sources: sourcesView(part.sources),
    search: {
      ...ownWords.part(part),
      answer,
      boards: [],
    },
  };
}
