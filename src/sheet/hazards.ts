// What one broken wire, or the pulled plug, can leave the machine in, in words.
import type { Hazard, WiringPlan } from "../wiring/index.js";
import type { BuildSheet } from "./types.js";

/** What one open wire, or the pulled plug, can leave, with why the rules do not call it workable. */
export function hazardRows(plan: WiringPlan): BuildSheet["hazards"] {
  return plan.proof.hazards.map((h) => ({ says: h.says, why: hazardText(h), after: afterText(plan, h) }));
}

const hazardWords = { "ruled-out": "Cannot run so", conditional: "Runs only if", unknown: "Not known", workable: "Works" } as const;

function hazardText({ verdict, why }: Hazard): string {
  return `${hazardWords[verdict]}${why.length > 0 ? `: ${why.map((says) => says.replace(/[.]$/, "")).join("; ")}` : ""}.`;
}

function afterText({ proof }: WiringPlan, { after, wires }: Hazard): string {
  // An open wire is told by its number, together with the others.
  const ofWires = new Set(proof.cases.filter((c) => c.wire !== undefined).map((c) => c.says));
  const others = after.filter((says) => !ofWires.has(says));
  const open = wires.length === 0 ? [] : [`wire${wires.length === 1 ? "" : "s"} ${wires.join(", ")} open`];
  return [...open, ...others.map((says) => says.charAt(0).toLowerCase() + says.slice(1))].join("; ");
}
