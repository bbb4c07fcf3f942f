// Contact plans of a switch whose throws close in several positions or in none: every assignment of nets to terminals is tried, and
// for each every choice of versions that gives each position a mode and each mode a position.
import type { Switch } from "../../records/index.js";
import type { Demands } from "../demand/demands.js";
import { type ContactPlan, type ContactSearch, finish, hasStop, isOwn, type SectionUse, type TerminalUse } from "./contact-plan.js";
import { isSimple, type Section } from "./sections.js";
import { chooseVersions, modesAt } from "./version-choice.js";

/** Assignments looked at before an unusual switch is given up as too large. */
const mostAssignments = 400_000;
/** Lines an unusual switch is tried with. */
const mostLines = 4;
/** Cards an unusual switch is tried with: their nets and the lines are bits of one number. */
const mostCards = 6;

export function searchedPlans(part: Switch, sections: readonly Section[], demands: Demands, linesAvailable: number): ContactSearch {
  if (demands.cards.length > mostCards) {
    return { plans: [], complete: false, looked: 0, says: `${part.name} was not tried with more than ${mostCards} switched cards` };
  }
  const best = new Map<number, ContactPlan>();
  const positions = part.positions.map((p) => reached(part.closes[p] ?? []));
  const ownCards = demands.cards.filter(isOwn).length;
  let looked = 0;
  let complete = true;
  const least = Math.ceil(Math.log2(demands.versions.length));
  for (let lines = least; lines <= Math.min(linesAvailable, mostLines); lines += 1) {
    const uses: (SectionUse | undefined)[] = [];
    const walk = (s: number, own: ReadonlySet<number>): void => {
      // Each card with points of its own needs a section still to come.
      if (ownCards - own.size > sections.length - s) return;
      if (looked >= mostAssignments) {
        complete = false;
        return;
      }
      const section = sections[s];
      if (!section) {
        looked += 1;
        const plan = judge(part, positions, sections, uses, lines, demands);
        const before = best.get(lines);
        if (plan && (!before || plan.poles < before.poles || (plan.poles === before.poles && plan.contacts < before.contacts))) {
          best.set(lines, plan);
        }
        return;
      }
      const put = (use: SectionUse | undefined, taken: ReadonlySet<number>) => {
        uses.push(use);
        walk(s + 1, taken);
        uses.pop();
      };
      put(undefined, own);
      assign(section, [...sharedUses(demands, lines)], (use) => put(use, own));
      for (const [i, card] of demands.cards.entries()) {
        if (!isOwn(card) || own.has(i)) continue;
        const sides = card.kind === "pair" ? (["common", "closed"] as const) : (["common", "on", "off"] as const);
        assign(
          section,
          sides.map((side): TerminalUse => ({ kind: "card", card: i, side })),
          (use) => put(use, new Set([...own, i])),
        );
      }
    };
    walk(0, new Set());
  }
  const plans = [...best.values()].sort((a, b) => a.poles - b.poles || a.lines - b.lines);
  const front = plans.filter((p, i) => plans.slice(0, i).every((q) => p.lines < q.lines));
  const says = complete
    ? `no wiring of ${part.name} gives the modes at its positions`
    : `${part.name} has too many contacts to try them all`;
  return { plans: front, complete, looked, says: front.length > 0 ? undefined : says };
}

/** Ground, the lines and the grounding enables: they may share a section. Ground stands first. */
function sharedUses(demands: Demands, lines: number): TerminalUse[] {
  return [
    { kind: "ground" },
    ...Array.from({ length: lines }, (_, line): TerminalUse => ({ kind: "line", line })),
    ...demands.cards.flatMap((card, i): TerminalUse[] => (isOwn(card) ? [] : [{ kind: "card", card: i, side: "closed" }])),
  ];
}

/**
 * Every way to put some of the nets on the terminals of a section, two at least and the first net among them. Where each contact joins
 * the hub and one throw the first net goes to the hub: any wiring of such a section that does something can be turned round so.
 */
function assign(section: Section, nets: readonly TerminalUse[], take: (use: SectionUse) => void): void {
  const [first, ...others] = nets;
  const simple = isSimple(section);
  const terminals = simple ? section.throws.map((t) => t.terminal) : [section.hub, ...section.throws.map((t) => t.terminal)];
  const use = new Map<string, TerminalUse>(simple ? [[section.hub, first!]] : []);
  const offered = simple ? others : nets;
  const step = (i: number): void => {
    const terminal = terminals[i];
    if (terminal === undefined) {
      if (use.size >= 2 && [...use.values()].includes(first!)) take(new Map(use));
      return;
    }
    step(i + 1);
    for (const net of offered) {
      use.set(terminal, net);
      step(i + 1);
      use.delete(terminal);
    }
  };
  step(0);
}

/** The plan an assignment makes, when each position gives a mode and each mode has a position. */
function judge(
  part: Switch,
  positions: readonly (readonly (readonly string[])[])[],
  sections: readonly Section[],
  uses: readonly (SectionUse | undefined)[],
  lines: number,
  demands: Demands,
): ContactPlan | undefined {
  const place = new Map<string, TerminalUse>(uses.flatMap((use) => (use ? [...use] : [])));
  const wired = new Set([...place.values()].flatMap((u) => (u.kind === "card" ? [u.card] : [])));
  if (demands.cards.some((_, i) => !wired.has(i)) || !linesInOrder(place, lines)) return undefined;
  const nets = netNumbers(lines);
  const levelsAt: number[] = [];
  const wants: number[][] = [];
  for (const terminals of positions) {
    const groups = joined(terminals, place, nets);
    const of = (use: TerminalUse) => {
      const bit = 1 << nets(use);
      return groups.find((g) => g & bit) ?? bit;
    };
    const ground = of({ kind: "ground" });
    const levels = Array.from({ length: lines }, (_, line) => ((ground >> nets({ kind: "line", line })) & 1 ? 0 : 1 << line));
    const on = demands.cards.map((card, i) => {
      const to = (side: "common" | "closed" | "on" | "off") =>
        (of({ kind: "card", card: i, side: "common" }) >> nets({ kind: "card", card: i, side })) & 1;
      if (card.kind === "ground")
        return ((ground >> nets({ kind: "card", card: i, side: "closed" })) & 1) === (card.closedIs === "on" ? 1 : 0);
      if (card.kind === "pair") return (to("closed") === 1) === (card.closedIs === "on");
      return to("on") === to("off") ? undefined : to("on") === 1;
    });
    const fits = demands.modes.flatMap((mode, m) => (mode.on.every((want, i) => want === on[i]) ? [m] : []));
    if (fits.length === 0 && !hasStop(part)) return undefined;
    levelsAt.push(levels.reduce((sum, bit) => sum | bit, 0));
    wants.push(fits);
  }
  const versionAt = chooseVersions(levelsAt, wants, 2 ** lines - 1, demands, hasStop(part));
  if (!versionAt) return undefined;
  const modeAt = modesAt(levelsAt, wants, versionAt, demands);
  if (demands.modes.some((_, mode) => !modeAt.includes(mode))) return undefined;
  return finish({ part, sections, uses: [...uses], lines, modeAt, levelsAt, versionAt });
}

/** A number for each net: ground, lines, then four for each card. */
function netNumbers(lines: number): (use: TerminalUse) => number {
  const sides = ["common", "closed", "on", "off"];
  return (use) => (use.kind === "ground" ? 0 : use.kind === "line" ? 1 + use.line : 1 + lines + 4 * use.card + sides.indexOf(use.side));
}

/** Lines are alike: of assignments that differ in their names one is enough, and none that leaves a line out. */
function linesInOrder(place: ReadonlyMap<string, TerminalUse>, lines: number): boolean {
  let next = 0;
  for (const use of place.values()) {
    if (use.kind !== "line" || use.line < next) continue;
    if (use.line > next) return false;
    next += 1;
  }
  return next === lines;
}

/** Terminals that the closed contacts of a position join. */
function reached(pairs: readonly (readonly [string, string])[]): string[][] {
  let groups: Set<string>[] = [];
  for (const [a, b] of pairs) {
    const touching = groups.filter((g) => g.has(a) || g.has(b));
    groups = [...groups.filter((g) => !touching.includes(g)), new Set([a, b, ...touching.flatMap((g) => [...g])])];
  }
  return groups.map((g) => [...g]);
}

/** Sets of nets that a position joins, as bits. A net on two groups of terminals joins them. */
function joined(
  terminals: readonly (readonly string[])[],
  place: ReadonlyMap<string, TerminalUse>,
  nets: (use: TerminalUse) => number,
): number[] {
  let groups: number[] = [];
  for (const group of terminals) {
    let mask = 0;
    for (const terminal of group) {
      const use = place.get(terminal);
      if (use) mask |= 1 << nets(use);
    }
    if (mask === 0) continue;
    const apart: number[] = [];
    for (const other of groups) {
      if (other & mask) mask |= other;
      else apart.push(other);
    }
    groups = [...apart, mask];
  }
  return groups;
}
