// What the modes ask of the switch: one firmware a mode, and every card whose on and off differs between modes, in its own sense.
// Cards that never change get a note; a card that must change and cannot be wired is a reason to refuse.

import type { Catalogue } from "../../catalogue/index.js";
import type { Combination } from "../../planning/index.js";
import { itemAt } from "../../records/index.js";
import type { WayOut, WiringOptions, WiringReason } from "../types.js";
import { type Called, calledIn } from "./called.js";

/** A contact that grounds one point of a card. */
export interface GroundCard {
  readonly kind: "ground";
  readonly card: string;
  readonly point: string;
  /** The card's own ground point, when it names one. */
  readonly groundPoint?: string;
  readonly closedIs: "on" | "off";
  readonly current_mA: number | "unknown";
}

/** A contact between two points that belong to the card alone. */
export interface PairCard {
  readonly kind: "pair";
  readonly card: string;
  readonly points: readonly [string, string];
  readonly closedIs: "on" | "off";
  readonly current_mA: number | "unknown";
}

/** A common point that goes to one of two others. */
export interface ChangeOverCard {
  readonly kind: "change-over";
  readonly card: string;
  readonly common: string;
  readonly on: string;
  readonly off: string;
  readonly current_mA: number | "unknown";
}

export type SwitchedCard = GroundCard | PairCard | ChangeOverCard;

export interface DemandedMode {
  readonly id: string;
  readonly name: string;
  readonly firmware: string;
  readonly enabled: readonly string[];
  /** One entry a switched card, in the order of `cards`. */
  readonly on: readonly boolean[];
}

export interface Demands {
  readonly modes: readonly DemandedMode[];
  /** Place of the safest mode in `modes`. */
  readonly safest: number;
  readonly safestWhy: string;
  readonly cards: readonly SwitchedCard[];
  /** Different versions, the safest mode's first. */
  readonly versions: readonly string[];
  readonly called: Called;
  readonly notes: readonly string[];
}

export function demandsOf(
  catalogue: Catalogue,
  combination: Combination,
  options: WiringOptions,
):
  | { readonly kind: "demands"; readonly demands: Demands }
  | { readonly kind: "refused"; readonly reasons: readonly WiringReason[]; readonly waysOut: readonly WayOut[] } {
  const reasons: WiringReason[] = [];
  const waysOut: WayOut[] = [];
  const notes: string[] = [];
  const cards: SwitchedCard[] = [];
  const called = calledIn(catalogue, combination);
  for (const placed of combination.cards) {
    const states = combination.modes.map((mode) => mode.enabled.includes(placed.as));
    const record = catalogue.cards.get(placed.card);
    // An enable that only some revisions have counts for those alone.
    const enable = !record?.enable?.revisions || record.enable.revisions.includes(placed.revision) ? record?.enable : undefined;
    const differs = states.some((s) => s !== states[0]);
    if (!differs) {
      const note = enable && fixedNote(called(placed.as), enable, states[0] === true);
      if (note) notes.push(note);
      continue;
    }
    const made = switchedCard(placed.as, called(placed.as), placed.card, enable);
    if ("reason" in made) {
      reasons.push(made.reason);
      waysOut.push({ says: `Choose modes in which ${called(placed.as)} is always on, or leave it out.` });
    } else cards.push(made);
  }
  if (reasons.length > 0) return { kind: "refused", reasons, waysOut };

  const modes = combination.modes.map(
    (mode): DemandedMode => ({
      id: mode.id,
      name: mode.name,
      firmware: mode.firmware,
      enabled: mode.enabled,
      on: cards.map((card) => mode.enabled.includes(card.card)),
    }),
  );
  const flagged = modes.findIndex((mode) => mode.id === options.safest);
  const fewest = modes.reduce((best, mode, i) => (mode.enabled.length < itemAt(modes, best).enabled.length ? i : best), 0);
  const safest = flagged >= 0 ? flagged : fewest;
  const safestWhy = flagged >= 0 ? "the build names it the safest" : "it has the fewest cards switched on";
  const first = itemAt(modes, safest).firmware;
  const versions = [first, ...new Set(modes.map((mode) => mode.firmware).filter((f) => f !== first))];
  return { kind: "demands", demands: { modes, safest, safestWhy, cards, versions, called, notes } };
}

/** Whether a contact of the card stands closed in a mode. Change-over: closed means its common goes to "on". */
export function closedIn(card: SwitchedCard, on: boolean): boolean {
  return card.kind === "change-over" ? on : on === (card.closedIs === "on");
}

type EnableRecord = NonNullable<NonNullable<ReturnType<Catalogue["cards"]["get"]>>["enable"]>;

function switchedCard(
  as: string,
  name: string,
  id: string,
  enable: EnableRecord | undefined,
): SwitchedCard | { readonly reason: WiringReason } {
  const reason = (code: WiringReason["code"], says: string) => ({
    reason: { code, says, refs: [{ kind: "card", id, pointer: "/enable" }] },
  });
  if (!enable)
    return reason("enable-missing", `${name} is on in some modes and off in others, and its record names no way to switch it off.`);
  if (enable.by === "setting") {
    return reason(
      "enable-by-setting",
      `${name} is switched off by setting ${enable.setting ?? ""}, not over contacts a switch could reach.`,
    );
  }
  const points = enable.points ?? [];
  const point = (role: string) => points.filter((p) => p.role === role);
  const current = points.reduce<number | "unknown">(
    (most, p) => (p.current_mA === undefined ? most : most === "unknown" ? p.current_mA : Math.max(most, p.current_mA)),
    "unknown",
  );
  const [a] = point("a");
  const [b] = point("b");
  const [ground] = point("ground");
  const [common] = point("common");
  const [on] = point("on");
  const [off] = point("off");
  switch (enable.sense) {
    case "closed-enables":
    case "open-enables": {
      const closedIs = enable.sense === "closed-enables" ? "on" : "off";
      const live = a ?? b;
      if (a && b) return { kind: "pair", card: as, points: [a.id, b.id], closedIs, current_mA: current };
      if (live && ground) return { kind: "ground", card: as, point: live.id, groundPoint: ground.id, closedIs, current_mA: current };
      return reason("enable-points", `The record of ${name} does not name the two points of its enable contact.`);
    }
    case "change-over":
      if (common && on && off) return { kind: "change-over", card: as, common: common.id, on: on.id, off: off.id, current_mA: current };
      return reason("enable-points", `The record of ${name} does not name common, on and off of its change-over.`);
    default:
      return reason("enable-points", `The record of ${name} does not say in which sense its contact enables it.`);
  }
}

function fixedNote(card: string, enable: EnableRecord, on: boolean): string | undefined {
  if (enable.by === "setting")
    return on ? undefined : `Leave ${card} switched off by setting ${enable.setting ?? ""}: ${enable.off ?? "off"}.`;
  const ids = (enable.points ?? []).filter((p) => ["a", "b", "common", "on", "off", "ground"].includes(p.role));
  const name = (role: string) => ids.find((p) => p.role === role)?.id ?? role;
  const state = on ? "on" : "off";
  if (enable.sense === "change-over") return `${card} is ${state} in every mode: join ${name("common")} to ${name(state)} for good.`;
  const closed = on === (enable.sense === "closed-enables");
  const ends = ids.filter((p) => p.role !== "common").slice(0, 2);
  const pair = ends.map((p) => p.id).join(" and ");
  return closed ? `${card} is ${state} in every mode: join ${pair} for good.` : `${card} is ${state} in every mode: leave ${pair} open.`;
}
