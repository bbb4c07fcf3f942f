// One face of a connector as the eye sees it, every contact numbered, and the list of what each carries.
// Which way round a face is seen was settled before; the drawing only says which face it is.
import { itemAt } from "../records/index.js";
import type { ConnectorPlan, Face } from "../wiring/index.js";
import { circle, drawing, join, path, rect, type Svg, text, tone, unitsFor, weight, widthOf, wrap } from "./svg.js";

const pixelsPerMm = 8;
const faceWidth = 300;

/** The outline that the contacts suggest: round, D-shaped with its wide row, or a box. */
function outline(face: Face, x: (mm: number) => number, y: (mm: number) => number): Svg {
  const radii = face.contacts.map((c) => Math.hypot(c.x_mm, c.y_mm)).filter((r) => r > 0.5);
  const far = Math.max(...radii, 1);
  const rows = [...new Set(face.contacts.map((c) => c.y_mm))].sort((a, b) => b - a);
  if (face.contacts.length > 2 && rows.length > 2 && radii.every((r) => r > far * 0.8))
    return circle(x(0), y(0), (far + 2.4) * scaleOf(face));
  const reach = (row: number) => Math.max(...face.contacts.filter((c) => c.y_mm === row).map((c) => Math.abs(c.x_mm)));
  const wide = Math.max(...face.contacts.map((c) => Math.abs(c.x_mm))) + 2.6;
  const [top, bottom] = [y(Math.max(...rows) + 2.2), y(Math.min(...rows) - 2.2)];
  if (rows.length === 2 && Math.abs(reach(itemAt(rows, 0)) - reach(itemAt(rows, 1))) > 0.5) {
    const slant = 1.2;
    const topWide = reach(itemAt(rows, 0)) > reach(itemAt(rows, 1)) ? wide : wide - slant;
    const bottomWide = reach(itemAt(rows, 0)) > reach(itemAt(rows, 1)) ? wide - slant : wide;
    return path(`M${x(-topWide)} ${top}H${x(topWide)}L${x(bottomWide)} ${bottom}H${x(-bottomWide)}Z`, { "stroke-linejoin": "round" });
  }
  return rect(x(-wide), top, x(wide) - x(-wide), bottom - top);
}

function scaleOf(face: Face): number {
  const wide = 2 * (Math.max(...face.contacts.map((c) => Math.abs(c.x_mm))) + 3);
  const nearest = Math.min(
    ...face.contacts.flatMap((a, i) => face.contacts.slice(i + 1).map((b) => Math.hypot(a.x_mm - b.x_mm, a.y_mm - b.y_mm))),
    10,
  );
  // Large enough that two numbers never touch, and no wider than the field where that can be had.
  return Math.max(23 / nearest, Math.min(pixelsPerMm, faceWidth / wide));
}

/** Where the contacts stand, in words: row by row from above, each from left to right. */
function rowsOf(face: Face): string {
  const rows = [...new Set(face.contacts.map((c) => c.y_mm))].sort((a, b) => b - a);
  const inRow = (y: number) => face.contacts.filter((c) => c.y_mm === y).sort((a, b) => a.x_mm - b.x_mm);
  return `From the top, each row from left to right: ${rows
    .map((y) =>
      inRow(y)
        .map((c) => c.contact)
        .join(", "),
    )
    .join("; ")}.`;
}

/** A part by itself has no designator, and its contacts carry nothing yet: then no list stands beside the face. */
export type FacedConnector = Pick<ConnectorPlan, "name" | "key"> & { readonly id?: string };

/** `listed`: with the list of what each contact carries beside it. */
export function connectorFace(connector: FacedConnector, face: Face, prefix: string, pixels = 640, listed = true): string {
  const within = unitsFor(pixels);
  const scale = scaleOf(face);
  const reach = (get: (c: Face["contacts"][number]) => number) => Math.max(...face.contacts.map((c) => Math.abs(get(c))), 0);
  const wide = 2 * (reach((c) => c.x_mm) + 3.4) * scale;
  const tall = 2 * (reach((c) => c.y_mm) + 3) * scale;
  const seen = connector.id === undefined ? face.says.replace(/^./, (c) => c.toUpperCase()) : `${connector.id}, ${face.says}`;
  const titles = wrap(seen, within - 8, { bold: true });
  const head = 15 + titles.length * 15;
  const fieldWidth = Math.max(wide, 200);
  const x = (mm: number) => fieldWidth / 2 + mm * scale;
  const y = (mm: number) => head + tall / 2 - mm * scale;
  const r = Math.min(10, Math.max(8.5, scale));
  const ordered = [...face.contacts].sort((a, b) => a.contact.localeCompare(b.contact, "en", { numeric: true }));
  const wired = ordered.filter((c) => c.net !== undefined || c.label !== undefined);
  const used = listed ? wired : [];
  const bare = used.length === 0;
  const spare = bare ? [] : ordered.filter((c) => !used.includes(c)).map((c) => c.contact);
  // A label cut short could name the wrong point: the list is as wide as it needs, else in more lines.
  const style = { small: true } as const;
  const widest = Math.max(150, ...used.map((c) => widthOf(c.label ?? "", style)));
  // On a narrow page it stands under the face.
  const narrow = bare || fieldWidth + 20 + 30 + widest > within;
  const listX = narrow ? 4 : fieldWidth + 20;
  const listTop = narrow ? head + tall + 26 : head + 16;
  const room = Math.min(widest, within - listX - 34);
  const entries = used.map((c) => ({ contact: c.contact, lines: wrap(c.label ?? "", room, style) }));
  const lineOf: number[] = [];
  let next = 0;
  for (const e of entries) {
    lineOf.push(next);
    next += e.lines.length;
  }
  const spareLines = spare.length === 0 ? [] : wrap(`not used: ${spare.join(", ")}`, room + 20, style);
  const width = Math.max(fieldWidth, bare ? 0 : listX + 34 + room, ...titles.map((t) => widthOf(t, { bold: true }) + 8));
  const height = Math.max(head + tall + 12, bare ? 0 : listTop + (next + spareLines.length) * 16);

  const contacts = face.contacts.map((c) =>
    join([
      circle(x(c.x_mm), y(c.y_mm), r, {
        ...(c.net === undefined ? {} : tone),
        "stroke-width": face.shape === "plug" ? weight.heavy : weight.line,
        "stroke-dasharray": c.net === undefined && wired.length > 0 ? "2 2" : undefined,
      }),
      text(x(c.x_mm), y(c.y_mm) + 4, c.contact, { mono: true, small: true, anchor: "middle" }),
    ]),
  );
  const list = entries.map((e, i) =>
    join([
      text(listX + 20, listTop + itemAt(lineOf, i) * 16, e.contact, { mono: true, small: true, anchor: "end" }),
      ...e.lines.map((l, k) => text(listX + 30, listTop + (itemAt(lineOf, i) + k) * 16, l, style)),
    ]),
  );
  const rest = spareLines.map((l, i) => text(listX + 8, listTop + (next + i) * 16, l, { small: true, class: "dw-quiet" }));
  const says =
    `${seen}. ${wired.length === 0 ? rowsOf(face) : ordered.map((c) => `Contact ${c.contact}: ${c.label ?? "not used"}.`).join(" ")} ${connector.key ?? ""}`.trimEnd();
  return drawing(
    { prefix, title: `${connector.name}: ${face.says}`, says, width, height, class: "dw-face" },
    ...titles.map((t, i) => text(4, 16 + i * 15, t, { bold: true })),
    outline(face, x, y),
    ...contacts,
    ...list,
    ...rest,
  );
}
