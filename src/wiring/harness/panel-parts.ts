// What of a plan is fixed in the panel: the switch and the panel halves of the connectors, with their holes as the records give them.
import type { Catalogue } from "../../catalogue/index.js";
import { howToFind, known, type Part, unknown } from "../../records/index.js";
import type { WiringPlan } from "../types.js";

export interface PanelPart {
  /** SW1, J2. */
  readonly id: string;
  readonly name: string;
  readonly hole:
    | { readonly kind: "round"; readonly diameter: number }
    | { readonly kind: "cut-out"; readonly width: number; readonly height: number }
    | { readonly kind: "unknown"; readonly find?: string | undefined };
  /** Fixing holes left and right of the middle. */
  readonly screws?: { readonly apart: number; readonly diameter: number } | undefined;
  /** Room the part takes behind the panel. */
  readonly body?: { readonly width: number; readonly height: number } | undefined;
  /** Labels of the positions in the order of the lever or knob. */
  readonly positions?: readonly string[];
  readonly form?: "rotary" | "lever";
}

type Connector = Extract<Part, { type: "connector" }>;

function connectorHole(part: Connector): Pick<PanelPart, "hole" | "screws"> {
  const { round_mm, width_mm, height_mm, screws_mm, screw_hole_mm } = part.hole ?? {};
  const screws = screws_mm === undefined || screw_hole_mm === undefined ? undefined : { apart: screws_mm, diameter: screw_hole_mm };
  if (round_mm !== undefined) return { hole: { kind: "round", diameter: round_mm }, screws };
  if (width_mm !== undefined && height_mm !== undefined) return { hole: { kind: "cut-out", width: width_mm, height: height_mm }, screws };
  return { hole: { kind: "unknown", find: "Take it from the part's drawing." } };
}

/** "Trace" for "Tracing a card on the bench" would be a guess: the mode's own short name is what the label carries. */
function positionLabels(plan: WiringPlan): string[] {
  return plan.switch.positions.map((position) => {
    const row = plan.contacts.find((c) => c.position === position);
    return row === undefined ? position : `${position} ${row.mode}`;
  });
}

export function panelParts(catalogue: Catalogue, plan: WiringPlan): PanelPart[] {
  const found: PanelPart[] = [];
  const part = catalogue.parts.get(plan.switch.part);
  if (part?.type === "switch") {
    const hole = known(part.hole_mm);
    // A hole of 0 stands for a switch that sits on a board.
    if (hole !== 0)
      found.push({
        id: "SW1",
        name: part.name,
        hole: hole === unknown ? { kind: "unknown", find: howToFind(part.hole_mm) } : { kind: "round", diameter: hole },
        body: part.body_mm,
        positions: positionLabels(plan),
        form: part.form === "rotary" || part.form === "coded-rotary" ? "rotary" : "lever",
      });
  }
  for (const c of plan.connectors) {
    const record = catalogue.parts.get(c.part);
    if (c.panel && record?.type === "connector") found.push({ id: c.id, name: record.name, ...connectorHole(record) });
  }
  return found;
}
