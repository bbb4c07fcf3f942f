// What a contact plan is: the use of every section of a switch, the mode at each position, the version for each set of levels.
import { itemAt, type Switch } from "../../records/index.js";
import { closedIn, type Demands, type SwitchedCard } from "../demand/demands.js";
import type { Section } from "./sections.js";

/** What a terminal is wired to. `line` counts the switched lines from 0; `card` is a place in the demanded cards. */
export type TerminalUse =
  | { readonly kind: "ground" }
  | { readonly kind: "line"; readonly line: number }
  | { readonly kind: "card"; readonly card: number; readonly side: "common" | "closed" | "on" | "off" };

/** Uses of the terminals of a section, the hub among them; terminals that are not listed stay free. */
export type SectionUse = ReadonlyMap<string, TerminalUse>;

export interface ContactPlan {
  readonly part: Switch;
  readonly sections: readonly Section[];
  /** One entry a section; undefined: unused. */
  readonly uses: readonly (SectionUse | undefined)[];
  readonly poles: number;
  readonly lines: number;
  /** Wired terminals. */
  readonly contacts: number;
  /** Mode at each position; undefined: beyond the stop. */
  readonly modeAt: readonly (number | undefined)[];
  /** Levels of the switched lines at each position; bit j set: line j high. */
  readonly levelsAt: readonly number[];
  /** Version by levels; levels that are not listed hold the safest version. */
  readonly versionAt: ReadonlyMap<number, number>;
}

export interface ContactSearch {
  /** Best plans, none of which another beats in both poles and lines; fewest poles first. */
  readonly plans: readonly ContactPlan[];
  /** Every assignment of the class was looked at. */
  readonly complete: boolean;
  readonly looked: number;
  /** Why there is none. */
  readonly says?: string | undefined;
}

/** Positions past the modes of a knob are shut off by its stop ring; a lever has no stop. */
export function hasStop(part: Switch): boolean {
  return part.form === "rotary";
}

export function isOwn(card: SwitchedCard): boolean {
  return card.kind !== "ground";
}

/** Nets that the enables alone pull low in a mode. */
export function lowCards(demands: Demands, mode: number): number[] {
  const on = itemAt(demands.modes, mode).on;
  return demands.cards.flatMap((card, i) => (card.kind === "ground" && closedIn(card, itemAt(on, i)) ? [i] : []));
}

/** Counts what a plan uses. */
export function finish(plan: Omit<ContactPlan, "poles" | "contacts">): ContactPlan {
  const used = plan.uses.filter((u) => u !== undefined);
  return { ...plan, poles: used.length, contacts: used.reduce((sum, u) => sum + u.size, 0) };
}
